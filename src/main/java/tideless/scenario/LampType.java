package tideless.scenario;

import java.util.Arrays;
import java.util.List;

/**
 * What kind of light a lamp gives.
 *
 * <p>Lux and photons: Thimijan and Heins (1983), HortScience 18(6):818-822, quoted second-hand,
 * except where a constant says otherwise. Near infrared per unit of 400-700 nm power: from memory,
 * within half.
 */
enum LampType {
    /** Phosphor-converted white LED of ordinary colour rendering: 60 to 80 lux, from memory. */
    WHITE_LED("white-led", 70, 4.7, 0.03),
    /**
     * Red and blue diodes: lux says nothing of them. Four red photons (660 nm) to one blue (450
     * nm).
     */
    RED_BLUE_LED("red-blue-led", Double.NaN, 5.1, 0.02),
    FLUORESCENT("fluorescent", 74, 4.59, 0.1),
    HIGH_PRESSURE_SODIUM("high-pressure-sodium", 82, 4.98, 0.6),
    METAL_HALIDE("metal-halide", 71, 4.59, 0.5),
    INCANDESCENT("incandescent", 50, 5.0, 8.0),
    SUN("sun", 54, 4.57, 1.1);

    private final String spelling;
    private final double luxPerUmolPerM2S;
    private final double umolPerJ;
    private final double nearInfraredPerPar;

    LampType(String spelling, double luxPerUmolPerM2S, double umolPerJ, double nearInfraredPerPar) {
        this.spelling = spelling;
        this.luxPerUmolPerM2S = luxPerUmolPerM2S;
        this.umolPerJ = umolPerJ;
        this.nearInfraredPerPar = nearInfraredPerPar;
    }

    String spelling() {
        return spelling;
    }

    /** Lux for each umol/m2/s; NaN where lux is no measure of it. */
    double luxPerUmolPerM2S() {
        return luxPerUmolPerM2S;
    }

    /** Photons of 400-700 nm per joule of 400-700 nm light, umol/J. */
    double umolPerJ() {
        return umolPerJ;
    }

    /** W/W. */
    double nearInfraredPerPar() {
        return nearInfraredPerPar;
    }

    static List<String> spellings() {
        return Arrays.stream(values()).map(LampType::spelling).toList();
    }

    static LampType of(String spelling) {
        for (LampType type : values()) {
            if (type.spelling.equals(spelling)) {
                return type;
            }
        }
        throw new IllegalArgumentException("no lamp type " + spelling);
    }
}
