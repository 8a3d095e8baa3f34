package tideless.scenario;

import java.util.Arrays;
import java.util.List;
import tideless.physics.Light;

/** What kind of light a lamp gives: the words of a scenario for {@link Light.Source}. */
enum LampType {
    WHITE_LED("white-led", Light.Source.WHITE_LED),
    RED_BLUE_LED("red-blue-led", Light.Source.RED_BLUE_LED),
    FLUORESCENT("fluorescent", Light.Source.COOL_WHITE_FLUORESCENT),
    HIGH_PRESSURE_SODIUM("high-pressure-sodium", Light.Source.HIGH_PRESSURE_SODIUM),
    METAL_HALIDE("metal-halide", Light.Source.METAL_HALIDE),
    INCANDESCENT("incandescent", Light.Source.INCANDESCENT),
    SUN("sun", Light.Source.SUN_AND_SKY);

    private final String spelling;
    private final Light.Source source;

    LampType(String spelling, Light.Source source) {
        this.spelling = spelling;
        this.source = source;
    }

    String spelling() {
        return spelling;
    }

    /** Lux for each umol/m2/s; NaN where lux is no measure of it. */
    double luxPerUmolPerM2S() {
        return source.luxPerPpfd();
    }

    /** Photons of 400-700 nm per joule of 400-700 nm light, umol/J. */
    double umolPerJ() {
        return source.umolPerJ();
    }

    /** W/W. */
    double nearInfraredPerPar() {
        return source.nearInfraredPerPar();
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
