package tideless.scenario;

import static tideless.scenario.Key.ASSUMED;
import static tideless.scenario.Key.COMMON_PRACTICE;
import static tideless.scenario.Key.LEFT_OUT;
import static tideless.scenario.UnitTable.DURATION;

import java.util.List;
import tideless.rig.Lamp;

/** A lamp, over one tray or over all. */
final class LampKeys {
    static final KeyGroup KEYS = new KeyGroup();
    static final Key<LampType> TYPE =
            KEYS.add(
                    Key.choice("type", Spellings.of(LampType.values(), LampType::spelling))
                            .fallsTo("white-led", COMMON_PRACTICE)
                            .about("kind of light"));
    static final Key<Double> PPFD =
            KEYS.add(
                    Key.quantity("ppfd", UnitTable.PHOTON_FLUX)
                            .from("0 umol/m2/s", "3000 umol/m2/s")
                            .optional("220 umol/m2/s")
                            .about(
                                    "photon flux density at the canopy; or state lux, or watts and area"));
    static final Key<Double> LUX =
            KEYS.add(
                    Key.quantity("lux", UnitTable.ILLUMINANCE)
                            .from("0 lux", "200000 lux")
                            .optional("12 klux")
                            .about("mean illuminance over the tray"));
    static final Key<Double> WATTS =
            KEYS.add(
                    Key.quantity("watts", UnitTable.POWER)
                            .above("0 W", "20000 W")
                            .optional("24 W")
                            .about("electrical power over the lit area"));
    static final Key<Measure> EFFICACY =
            KEYS.add(
                    Key.measure("efficacy", UnitTable.LUMENS_PER_WATT, UnitTable.PHOTONS_PER_JOULE)
                            .above("0 lm/W", "370 lm/W")
                            .fallsTo("100 lm/W", "80 to 120 lm/W for a household lamp, from memory")
                            .beside(WATTS)
                            .about("light per electrical watt; used with watts"));
    static final Key<Double> AREA =
            KEYS.add(
                    Key.quantity("area", UnitTable.AREA)
                            .above("0 cm2", "1000 m2")
                            .optional("0.25 m2")
                            .about("area the lamp lights; needed with watts"));
    static final Key<Double> ON_TARGET =
            KEYS.add(
                    Key.share("on_target")
                            .above("0 %", "100 %")
                            .fallsTo("100 %", LEFT_OUT)
                            .beside(WATTS)
                            .about("share of the light that lands on that area"));
    static final Key<Double> ON =
            KEYS.add(Key.clock("on").fallsTo("06:00", ASSUMED).about("switched on"));
    static final Key<Double> OFF =
            KEYS.add(Key.clock("off").fallsTo("20:00", ASSUMED).about("switched off"));
    static final Key<Double> HOURS =
            KEYS.add(
                    Key.quantity("hours", DURATION)
                            .from("0 h", "24 h")
                            .optional("14 h")
                            .about("hours of light you count on; held against on and off"));

    static final Key<List<Lamp.Level>> LEVELS =
            KEYS.add(
                    Key.levels("levels")
                            .optional(
                                    "[{ from = \"06:00\", share = \"50 %\" },"
                                            + " { from = \"09:00\", share = \"100 %\" }]")
                            .about(
                                    "dimming by the hour, while it is on: each share holds from its"
                                            + " time to the next one's, round the clock; full strength"
                                            + " when left out"));
    static final Key<List<DatedShare>> STRENGTHS =
            KEYS.add(
                    Key.strengths("strengths")
                            .optional("[{ from = 2026-03-20, share = \"80 %\" }]")
                            .about(
                                    "strength by date: each share holds from its date on, on top of"
                                            + " levels; full strength before the first"));

    private LampKeys() {}
}
