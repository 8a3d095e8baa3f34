package tideless.rig;

/**
 * Where the rig stands.
 *
 * @param latitudeDeg north positive, -90 to 90
 * @param longitudeDeg east positive, -180 to 180
 * @param altitudeM above sea level, -450 to 6000; sets the air pressure
 */
public record Place(double latitudeDeg, double longitudeDeg, double altitudeM) {
    public Place {
        if (!(Math.abs(latitudeDeg) <= 90)) {
            throw new IllegalArgumentException(
                    "latitudeDeg must lie in -90 to 90, was " + latitudeDeg);
        }
        if (!(Math.abs(longitudeDeg) <= 180)) {
            throw new IllegalArgumentException(
                    "longitudeDeg must lie in -180 to 180, was " + longitudeDeg);
        }
        if (!(altitudeM >= -450 && altitudeM <= 6000)) {
            throw new IllegalArgumentException(
                    "altitudeM must lie in -450 to 6000, was " + altitudeM);
        }
    }
}
