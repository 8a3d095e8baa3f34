package tideless.scenario;

/** One tray under a roomy reservoir, in which a crop has all it wants. */
public final class GrowingBench {
    private GrowingBench() {}

    /**
     * Its scenario.
     *
     * @param days of the run
     * @param visits keys of [visits] beside the hour, dotted, as visits.days = "daily"
     * @param dayC of the room by day, degC
     * @param ppfd of the lamp, umol/m2/s
     * @param crop its name
     * @param more keys of the tray
     */
    public static String text(
            int days, String visits, int dayC, int ppfd, String crop, String more) {
        return """
                title = "t"
                start = 2026-03-02
                length = "%d days"
                visits.at = "08:00"
                %s
                climate.kind = "room"
                climate.day_temperature = "%d degC"
                climate.night_temperature = "20 degC"
                lamp.ppfd = "%d umol/m2/s"
                feed.recipe = "steiner"
                feed.ec = "1.6 mS/cm"
                [reservoir.drum]
                length = "60 cm"
                width = "60 cm"
                depth = "60 cm"
                floor_above_bench = "80 cm"
                refill = "when low at a visit"
                [tray.bench]
                length = "60 cm"
                width = "40 cm"
                depth = "14 cm"
                aerated = true
                valve.setting = "9.5 cm"
                crop = "%s"
                %s
                """
                .formatted(days, visits, dayC, ppfd, crop, more);
    }
}
