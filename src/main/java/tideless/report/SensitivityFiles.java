package tideless.report;

import de.siegmar.fastcsv.writer.CsvWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Collection;
import java.util.Map;
import tideless.physics.Time;
import tideless.study.Sensitivity;
import tideless.words.MachineWords;
import tideless.words.SensitivityWords;

/** Which unknown moves what, as a table for a spreadsheet. */
public final class SensitivityFiles {
    private SensitivityFiles() {}

    /**
     * Writes {@code sensitivity.csv}, or nothing.
     *
     * @param folder where to; made when it is not there
     * @param inputs files that were read for it, which none may take the place of
     */
    public static WriteResult write(Sensitivity of, Path folder, Collection<Path> inputs) {
        return ResultFiles.put(folder, () -> Map.of("sensitivity.csv", csv(of)), inputs);
    }

    /** One row for each question and group. */
    static byte[] csv(Sensitivity of) {
        StringWriter text = new StringWriter();
        CsvWriter csv = CsvFiles.writerOf(text);
        csv.writeRecord(
                "asked",
                "unknown",
                "of",
                "total",
                "total_error",
                "alone",
                "alone_error",
                "found_out_with",
                "low",
                "middle",
                "high",
                "never_share",
                "unit",
                "rigs");
        for (Sensitivity.Answer answer : of.answers()) {
            double unit = answer.asked().isTime() ? Time.DAY_S : 1;
            for (Sensitivity.Share share : answer.shares()) {
                csv.writeRecord(
                        MachineWords.of(answer.asked()),
                        MachineWords.of(share.group().kind()),
                        share.group().of(),
                        SignificantDigits.six(share.total()),
                        SignificantDigits.six(share.totalError()),
                        SignificantDigits.six(share.alone()),
                        SignificantDigits.six(share.aloneError()),
                        SensitivityWords.tool(share.group().kind()),
                        figure(answer.band().low() / unit),
                        figure(answer.band().middle() / unit),
                        figure(answer.band().high() / unit),
                        figure(answer.band().neverFrac()),
                        switch (answer.asked()) {
                            case NEXT_REFILL, FIRST_HARVEST -> "d";
                            case COMES_THROUGH -> "";
                            case LITRES -> "L";
                        },
                        Integer.toString(answer.band().members()));
            }
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private static String figure(double value) {
        return Double.isInfinite(value) ? "" : SignificantDigits.six(value);
    }
}
