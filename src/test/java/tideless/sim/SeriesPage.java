package tideless.sim;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** The page on the columns of the hourly files, made from the series themselves. */
public final class SeriesPage {
    static final Path PAGE = Path.of("docs", "series.md");

    private SeriesPage() {}

    /** Writes it, from the project's folder. */
    public static void main(String[] args) throws IOException {
        Files.writeString(PAGE, text());
    }

    static String text() {
        return """
                # Hourly series

                What `run` writes for each vessel, one row an hour; `time` is the end of the hour. A state holds at that
                moment, a flow is the total over the hour, a meter reads at that moment and leaves the cell empty where
                there is nothing to read. Plants grow at midnight: the row at 00:00 holds them before that midnight's
                growth, the row at 01:00 after it. After these come the dissolved components, in mmol/L.
                Made by `SeriesPage.main` of the tests.

                ## tray-NAME.csv

                %s
                `ph_lowest` and `ph_highest`, which come next, are the pH of the same hour over what is not known of the
                crop's contents: the run is done twice more, with the contents of the crop's file moved towards little
                nitrogen and much potassium, calcium and magnesium, and the other way, so that nine crops of ten lie
                between. `result.json` tells the least and the greatest of each while roots live (`ph_while_rooted`).

                ## daily-NAME.csv

                One row a day and tray: totals of the day; level, EC and pH at its 24:00 with the least and the greatest
                of its 24 hours; means of air and solution; fresh mass at 24:00, before that midnight's growth;
                `growth_at_0h`, what the midnight at its 00:00 brought, from the light of the day before (0 on the
                first day, and less than 0 where fruit was picked or leaves were lost); what the plants took up of each
                component in mmol, and in mmol for each litre they drank; of each component what was brought (by the
                valve, poured, found by a reading of a log), what was lost (run over, drained, fallen out as a crust or
                dried on the floor, missed by a reading; less than 0 where what had dried dissolves again) and what is
                dissolved at 24:00, in mmol.

                So each day closes from its row and the one before: solution at 24:00 is that of the day before, plus
                `inflow`, `poured` and `set_by_reading`, less `drunk`, `evaporation`, `spill` and `drained`; a component
                at 24:00 is that of the day before, plus brought, less lost and uptake.

                ## reservoir-NAME.csv

                %s"""
                .formatted(
                        table(List.of(TraySeries.values())),
                        table(List.of(ReservoirSeries.values())));
    }

    private static String table(List<? extends HourlySeries> all) {
        StringBuilder text =
                new StringBuilder("| column | unit | | what |\n| --- | --- | --- | --- |\n");
        for (HourlySeries one : all) {
            HourlySeries.Column column = one.column();
            text.append(
                    "| `%s` | %s | %s | %s |\n"
                            .formatted(
                                    column.name(),
                                    column.unit(),
                                    switch (one.kind()) {
                                        case STATE -> "state";
                                        case FLOW, ACCOUNT -> "flow";
                                        case METER -> "meter";
                                    },
                                    column.about()));
        }
        return text.toString();
    }
}
