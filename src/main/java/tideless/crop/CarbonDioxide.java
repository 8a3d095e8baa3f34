package tideless.crop;

/** What the air's carbon dioxide does to stomata and to growth; both are 1 at 400 ppm. */
public final class CarbonDioxide {
    /** Air at which stomata and light use of the crop files were measured, umol/mol. */
    public static final double AMBIENT_PPM = 400;

    /** The concentration at which {@link CropTraits.Thirst} states the conductance, umol/mol. */
    private static final double RICH_PPM = 1000;

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
     * What light use is multiplied by: 1.35 (c - 45) / (c - 45 + 124), scaled to 1 at 400 ppm;
     * 1.10, 1.16 and 1.19 at 600, 800 and 1000 ppm.
     *
     * <p>Own curve between the rows of electron-transport limited canopies (constants of Vanthoor
     * 2011, Table 9.1) and of enriched crops (Nederhoff 1994, second hand): 1.10 to 1.35 at 1000
     * ppm; derived.
     *
     * @param ppm c, umol/mol; nothing grows at 45 and below
     */
    public static double growthFrac(double ppm) {
        double above = Math.max(0, ppm - 45);
        return above / (above + 124) * (AMBIENT_PPM - 45 + 124) / (AMBIENT_PPM - 45);
    }
}
