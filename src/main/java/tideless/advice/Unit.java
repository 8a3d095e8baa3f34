package tideless.advice;

/** Units in which advice gives its figures. */
public enum Unit {
    NONE(""),
    MILLIMETRES("mm"),
    SQUARE_CENTIMETRES("cm2"),
    LITRES("L"),
    MS_PER_CM("mS/cm"),
    MMOL_PER_L("mmol/L"),
    PH("pH"),
    CELSIUS("degC"),
    MG_PER_L("mg/L"),
    HOURS("h"),
    DAYS("d"),
    TIMES("times"),
    GRAMS("g"),
    FRACTION("1"),
    M_PER_S("m/s"),
    MOL_PER_M2_DAY("mol/m2/d");

    private final String symbol;

    Unit(String symbol) {
        this.symbol = symbol;
    }

    /** As a file of results gives it; "1" for a share from 0 to 1, empty for none. */
    public String symbol() {
        return symbol;
    }
}
