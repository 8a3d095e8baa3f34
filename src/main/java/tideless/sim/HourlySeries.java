package tideless.sim;

/**
 * A kind of hourly series: what its column in a file is called and in which unit it stands there. A
 * series itself is in SI units, as its Javadoc says.
 */
public sealed interface HourlySeries permits TraySeries, ReservoirSeries {

    /** How the value of an hour comes about. */
    enum Kind {
        /** As it stands at the end of the hour. */
        STATE,
        /** What all steps of the hour add up to. */
        FLOW,
        /** What an account of the run has grown by since the hour before. */
        ACCOUNT,
        /** Read by a meter at the end of the hour; no number where there is nothing to read. */
        METER
    }

    /** What stands over it in a file. */
    Column column();

    Kind kind();

    /**
     * A column of a file.
     *
     * @param name of the column
     * @param unit of the column
     * @param factor what a value in SI units is multiplied by to stand in that unit
     * @param about a line about it
     */
    record Column(String name, String unit, double factor, String about) {
        /** As it stands in the first row of a file. */
        public String header() {
            return name + " [" + unit + "]";
        }
    }
}
