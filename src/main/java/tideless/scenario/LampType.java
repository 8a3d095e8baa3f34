package tideless.scenario;

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

    /** What shines, as the physics knows it. */
    Light.Source light() {
        return source;
    }

    /** Whether a lux meter says anything about it. */
    boolean hasLux() {
        return !Double.isNaN(source.luxPerPpfd());
    }
}
