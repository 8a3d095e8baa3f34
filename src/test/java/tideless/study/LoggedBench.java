package tideless.study;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import tideless.physics.Time;
import tideless.rig.Correction;
import tideless.rig.Log;
import tideless.rig.LogEntry;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.scenario.Beside;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.sim.Departures;

/** Invents the log of {@code scenarios/logged-bench.toml}; {@code main} writes it anew. */
final class LoggedBench {
    static final Path SCENARIO = Path.of("scenarios/logged-bench.toml");
    static final Path LOG = Path.of("scenarios/logged-bench-log.csv");

    private static final int DAYS = 56;
    private static final long SEED = 56;

    /** What the log hides. */
    static final Correction HIDDEN =
            new Correction(
                    Map.of(
                            "dwarf-tomato", new Correction.OfCrop(1.24, 1, 1.1, 1),
                            "basil", new Correction.OfCrop(0.9, 1, 1, 1),
                            "lettuce", new Correction.OfCrop(1.05, 1.05, 1, 1)),
                    1.02,
                    1.1,
                    1.01,
                    Map.of("tomato", 0.004),
                    Map.of("shelf", 1.02),
                    Map.of("shelf", 0.5e-3 / Time.DAY_S),
                    Map.of());

    private LoggedBench() {}

    public static void main(String[] args) throws IOException {
        Files.writeString(LOG, text());
    }

    /** The scenario without its log. */
    static Scenario stated() {
        Path none = Path.of("src/test/resources/tideless/study/empty-log.csv");
        Reading reading = ScenarioReader.read(SCENARIO, Beside.files(none, null));
        return ((Reading.Good) reading).scenario();
    }

    static String text() {
        Scenario stated = Ensemble.atEnsembleStep(stated());
        DemandDoubt days = new DemandDoubt(0, 0.08, 0.5, 0.12);
        SplittableRandom random = new SplittableRandom(SEED);
        double[][] thirst = new double[stated.plantings().size()][];
        for (int i = 0; i < thirst.length; i++) {
            thirst[i] = days.factors(stated.days(), 0.5, random);
        }
        Departures departures = new Departures(new double[0], thirst, new boolean[0], 1);
        Log log =
                new InventedLog(HIDDEN.applied(stated), departures, DAYS, random.split())
                        .log(plan(stated));
        StringBuilder text =
                new StringBuilder(
                        """
                        # An invented log of an invented bench, eight weeks of it; made by tideless.study.LoggedBench.
                        date,time,where,what,value,remark,use
                        """);
        int refills = 0;
        LogEntry.Reading litres = null;
        for (LogEntry entry : log.entries()) {
            if (entry instanceof LogEntry.Reading r && r.what() == LogEntry.Quantity.POURED) {
                litres = r;
                continue;
            }
            String remark = "";
            if (entry instanceof LogEntry.FilledUp && ++refills == LATE) {
                remark = "three days late: the key was away";
            }
            text.append(line(stated, entry, litres, remark));
        }
        return text.toString();
    }

    private static final int LATE = 3;

    private static InventedLog.Plan plan(Scenario rig) {
        InventedLog.Plan usual = InventedLog.usual(rig);
        return new InventedLog.Plan() {
            @Override
            public List<LogEntry.Reading> readings(int day, double atS) {
                List<LogEntry.Reading> all = new ArrayList<>(usual.readings(day, atS));
                if (day % 14 == 6) {
                    all.add(
                            InventedLog.wanted(
                                    atS, VesselId.tray("tomato"), LogEntry.Quantity.LEVEL));
                }
                if (day == 27) {
                    all.add(
                            InventedLog.wanted(
                                    atS, VesselId.tray("lettuce"), LogEntry.Quantity.FRESH_MASS));
                }
                return all;
            }

            @Override
            public int late(int refill) {
                return refill == LATE ? 3 : 0;
            }
        };
    }

    private static String line(
            Scenario rig, LogEntry entry, LogEntry.Reading litres, String remark) {
        LocalDateTime at = rig.start().atStartOfDay().plusSeconds((long) entry.atS());
        String where = "";
        String what = "nothing to see";
        String value = "";
        if (entry instanceof LogEntry.Reading reading) {
            where = reading.where().name();
            double v = reading.value();
            switch (reading.what()) {
                case LEVEL -> {
                    what = "level";
                    value = text("%.1f cm", 100 * v);
                }
                case EC -> {
                    what = "EC";
                    value = text("%.2f mS/cm", v);
                }
                case FRESH_MASS -> {
                    what = "fresh weight";
                    value = text("%.0f g", v);
                }
                default -> throw new IllegalStateException("not in this log: " + reading);
            }
        } else if (entry instanceof LogEntry.FilledUp filled) {
            where = filled.where().name();
            what = "refill";
            value = text("%.1f L", 1000 * litres.value());
        } else if (entry instanceof LogEntry.Harvested harvested) {
            where = harvested.where().name();
            what = "crop taken";
        }
        return "%s,%s,%s,%s,%s,%s,%n"
                .formatted(
                        at.toLocalDate(),
                        Time.clock(entry.atS() % Time.DAY_S),
                        where,
                        what,
                        value,
                        remark)
                .replace("\r\n", "\n");
    }

    private static String text(String format, double value) {
        return String.format(Locale.ROOT, format, value);
    }
}
