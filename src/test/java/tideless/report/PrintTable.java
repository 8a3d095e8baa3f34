package tideless.report;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;

/** Prints the made-up forecast's table, for a look at it: width as the only argument. */
final class PrintTable {
    private PrintTable() {}

    public static void main(String[] args) {
        ForecastTable.print(
                new PrintWriter(System.out, true, StandardCharsets.UTF_8),
                MadeUpForecast.threeTrays(),
                false,
                Integer.parseInt(args[0]),
                ForecastTable.Depth.ALL,
                Telling.METRIC);
    }
}
