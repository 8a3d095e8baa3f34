package tideless.scenario;

import static tideless.scenario.Key.ASSUMED;
import static tideless.scenario.UnitTable.LENGTH;

/** Where the rig stands. */
final class PlaceKeys {
    static final KeyGroup KEYS = new KeyGroup();
    static final Key<Double> LATITUDE =
            KEYS.add(
                    Key.quantity("latitude", UnitTable.LATITUDE)
                            .from("-90 deg", "90 deg")
                            .optional("45.0 N")
                            .about("where the rig stands; needed with weather"));
    static final Key<Double> LONGITUDE =
            KEYS.add(
                    Key.quantity("longitude", UnitTable.LONGITUDE)
                            .from("-180 deg", "180 deg")
                            .optional("8.0 E")
                            .about("where the rig stands; needed with weather"));
    static final Key<Double> ALTITUDE =
            KEYS.add(
                    Key.quantity("altitude", LENGTH)
                            .from("-450 m", "6000 m")
                            .fallsTo("0 m", ASSUMED)
                            .about("above sea level; sets the air pressure"));
    static final Key<String> UTC_OFFSET =
            KEYS.add(
                    Key.text("utc_offset")
                            .workedOut("the whole hour nearest to the longitude", "+01:00")
                            .about("the rig's own clock against UTC, the same all the year"));

    private PlaceKeys() {}
}
