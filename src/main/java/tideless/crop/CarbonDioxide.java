package tideless.crop;

/** What the air's carbon dioxide does to stomata and to growth; both are 1 at 400 ppm. */
public final class CarbonDioxide {
    /** Air at which stomata and light use of the crop files were measured, umol/mol. */
    public static final double AMBIENT_PPM = 400;

    /** The concentration at which {@link CropTraits.Thirst} states the conductance, umol/mol. */
    private static final double RICH_PPM = 1000;

    /** Carbon dioxide inside a leaf over that of the air: Vanthoor (2011), Table 9.1. */
    private static final double IN_LEAF_FRAC = 0.67;

    /** Compensation point at 20 degC, umol/mol: 1.7 per degC, Vanthoor (2011), Table 9.1. */
    private static final double COMPENSATION_PPM = 1.7 * 20;

    private CarbonDioxide() {}

    /**
     * What a lit leaf's stomatal resistance is multiplied by: 1 + a (c - 200)^2, at most 1.5.
     *
     * <p>Stanghellini (1987), thesis Wageningen, as in Vanthoor (2011), thesis Wageningen, Table
     * 8.1, a = 6.1e-7 per ppm2 by day; there is no effect by night.
     *
     * @param ppm c, umol/mol; at 200 and below 1
     */
    public static double stanghelliniFactor(double ppm) {
        double above = Math.max(0, ppm - 200);
        return Math.min(1.5, 1 + 6.1e-7 * above * above);
    }

    /**
     * The same against 400 ppm for one crop: its rise above 1 goes with Stanghellini's, as much
     * stronger or weaker as the crop's conductance at 1000 ppm says.
     *
     * @param conductanceAt1000PpmFrac stomatal conductance at 1000 ppm over that at 400, above 0
     * @param ppm umol/mol
     * @return 1 at 400 ppm, above 0
     */
    public static double resistanceFrac(double conductanceAt1000PpmFrac, double ppm) {
        double ambient = stanghelliniFactor(AMBIENT_PPM);
        double strength =
                (1 / conductanceAt1000PpmFrac - 1) / (stanghelliniFactor(RICH_PPM) / ambient - 1);
        return 1 + strength * (stanghelliniFactor(ppm) / ambient - 1);
    }

    /**
     * What light use is multiplied by: (i - G) / (i + 2 G) for i of the air inside the leaf and G
     * the compensation point, scaled to 1 at 400 ppm; 1.13, 1.19 and 1.24 at 600, 800 and 1000 ppm.
     *
     * <p>Assimilation that is limited by the transport of electrons, as a canopy's mostly is
     * (Farquhar, von Caemmerer and Berry 1980, from memory), with the constants of Vanthoor (2011),
     * thesis Wageningen, Table 9.1: i = 0.67 c and G = 1.7 ppm per degC, here at 20 degC. Further
     * losses to photorespiration, which that thesis takes off once more, are left out. The rule
     * that a crop gains 1.5 (1000 / c)^2 % for each 100 ppm (Nederhoff 1994, thesis Wageningen,
     * from memory) gives 1.13, 1.21 and 1.25.
     *
     * @param ppm c, umol/mol; nothing grows at 51 and below
     */
    public static double growthFrac(double ppm) {
        return electronTransportFrac(ppm) / electronTransportFrac(AMBIENT_PPM);
    }

    private static double electronTransportFrac(double ppm) {
        double inLeafPpm = IN_LEAF_FRAC * ppm;
        return Math.max(0, inLeafPpm - COMPENSATION_PPM) / (inLeafPpm + 2 * COMPENSATION_PPM);
    }
}
