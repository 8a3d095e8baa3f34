package tideless.report;

/** The units in which a table is told. */
public interface Telling {
    /** As everything is worked out. */
    Telling METRIC =
            new Telling() {
                @Override
                public String told(String sentence) {
                    return sentence;
                }

                @Override
                public String litres(String litres) {
                    return litres;
                }

                @Override
                public String litresHead() {
                    return "LITRES";
                }
            };

    /** A sentence with every quantity turned. */
    String told(String sentence);

    /** A number of litres as it is told, or two of them, without the unit. */
    String litres(String litres);

    /** Head of a column of them. */
    String litresHead();
}
