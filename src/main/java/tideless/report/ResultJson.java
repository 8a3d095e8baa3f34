package tideless.report;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tideless.advice.Cause;
import tideless.advice.Caution;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Measure;
import tideless.advice.Quantity;
import tideless.advice.Sizing;
import tideless.advice.Task;
import tideless.advice.Verdict;
import tideless.advice.Warning;
import tideless.physics.Time;
import tideless.rig.Climate;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.sim.HourlySeries;
import tideless.sim.Ledger;
import tideless.sim.Picked;
import tideless.sim.PlantingTrace;
import tideless.sim.ReservoirSeries;
import tideless.sim.ReservoirTrace;
import tideless.sim.Series;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;
import tideless.study.Band;
import tideless.study.Expected;
import tideless.study.Forecast;
import tideless.study.Outlook;
import tideless.study.PhCourse;
import tideless.study.StepError;
import tideless.words.CureWords;
import tideless.words.MachineWords;
import tideless.words.TaskWords;
import tideless.words.VerdictWords;
import tideless.words.WarningWords;

/**
 * A forecast as one JSON object. Keys stand in a fixed order, numbers have ten significant digits,
 * and nothing in it tells of the clock, the machine or a path: the same input gives the same bytes.
 */
final class ResultJson {
    private static final double L_PER_M3 = 1000;
    private static final double MM_PER_M = 1000;

    /** Raised when a key is renamed, removed or changes its meaning. */
    private static final int FORMAT = 2;

    // What stands in a summary, in its order: key and series.
    private static final List<Map.Entry<String, TraySeries>> TRAY_TOTALS =
            List.of(
                    Map.entry("thirst_litres", TraySeries.THIRST),
                    Map.entry("transpired_litres", TraySeries.TRANSPIRATION),
                    Map.entry("evaporated_litres", TraySeries.EVAPORATION),
                    Map.entry("fed_litres", TraySeries.INFLOW),
                    Map.entry("spilled_litres", TraySeries.SPILL));

    private static final List<Map.Entry<String, TraySeries>> TRAY_AT_END =
            List.of(
                    Map.entry("litres", TraySeries.VOLUME),
                    Map.entry("level_mm", TraySeries.LEVEL),
                    Map.entry("ec_ms_per_cm", TraySeries.EC),
                    Map.entry("ph", TraySeries.PH),
                    Map.entry("fresh_g_per_plant", TraySeries.FRESH_MASS),
                    Map.entry("fruit_fresh_g_per_plant", TraySeries.FRUIT_FRESH_MASS));

    private static final List<Map.Entry<String, ReservoirSeries>> RESERVOIR_TOTALS =
            List.of(
                    Map.entry("refilled_litres", ReservoirSeries.REFILL),
                    Map.entry("fed_litres", ReservoirSeries.OUTFLOW),
                    Map.entry("evaporated_litres", ReservoirSeries.EVAPORATION));

    private static final List<Map.Entry<String, ReservoirSeries>> RESERVOIR_AT_END =
            List.of(
                    Map.entry("litres", ReservoirSeries.VOLUME),
                    Map.entry("usable_litres", ReservoirSeries.USABLE),
                    Map.entry("ec_ms_per_cm", ReservoirSeries.EC),
                    Map.entry("ph", ReservoirSeries.PH));

    private ResultJson() {}

    /** The program's version, as the build wrote it. */
    static String version() {
        try (InputStream in = ResultJson.class.getResourceAsStream("/tideless/version.txt")) {
            if (in == null) {
                throw new IllegalStateException("/tideless/version.txt is not in the program");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8).strip();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * @param trayFiles the plain name of each tray, as its files carry it
     * @param reservoirFiles likewise for reservoirs
     */
    static byte[] of(Forecast forecast, List<String> trayFiles, List<String> reservoirFiles) {
        StringWriter text = new StringWriter(1 << 16);
        try (JsonGenerator json = new JsonFactory().createGenerator(text)) {
            json.setPrettyPrinter(
                    new DefaultPrettyPrinter(
                                    Separators.createDefaultInstance()
                                            .withObjectFieldValueSpacing(Separators.Spacing.AFTER))
                            .withObjectIndenter(new DefaultIndenter("  ", "\n")));
            write(json, forecast, trayFiles, reservoirFiles);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // A string takes all it is given.
        }
        return text.append('\n').toString().getBytes(StandardCharsets.UTF_8);
    }

    private static void write(
            JsonGenerator json,
            Forecast forecast,
            List<String> trayFiles,
            List<String> reservoirFiles)
            throws IOException {
        Trace trace = forecast.trace();
        Scenario scenario = trace.scenario();
        json.writeStartObject();
        json.writeObjectFieldStart("program");
        json.writeStringField("name", "Tideless");
        json.writeStringField("version", version());
        json.writeEndObject();
        json.writeNumberField("format", FORMAT);
        json.writeObjectFieldStart("scenario");
        json.writeStringField("title", scenario.title());
        json.writeStringField("digest", scenario.digest());
        json.writeStringField("start", scenario.start().toString());
        json.writeNumberField("days", scenario.days());
        if (scenario.climate() instanceof Climate.Inside inside) {
            json.writeStringField("climate_filled", inside.air().filled());
        }
        json.writeEndObject();
        json.writeNumberField("seed", forecast.seed());

        writeVerdict(json, forecast);
        json.writeArrayFieldStart("tasks");
        for (Task task : forecast.advice().tasks()) {
            writeTask(json, task, forecast);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("warnings");
        for (Warning warning : forecast.advice().warnings()) {
            writeWarning(json, warning);
        }
        json.writeEndArray();
        json.writeArrayFieldStart("sizings");
        for (Sizing sizing : forecast.advice().sizings()) {
            writeSizing(json, sizing);
        }
        json.writeEndArray();

        json.writeArrayFieldStart("reservoirs");
        for (int i = 0; i < trace.reservoirs().size(); i++) {
            writeReservoir(
                    json,
                    trace.reservoirs().get(i),
                    twin(forecast.unlimited().reservoirs(), i),
                    reservoirFiles.get(i));
        }
        json.writeEndArray();
        json.writeArrayFieldStart("trays");
        for (int i = 0; i < trace.trays().size(); i++) {
            writeTray(
                    json,
                    trace.trays().get(i),
                    twin(forecast.unlimited().trays(), i),
                    trayFiles.get(i),
                    forecast.ph().get(i),
                    trace);
        }
        json.writeEndArray();

        if (forecast.outlook().isPresent()) {
            writeYields(json, forecast.outlook().get());
        }

        json.writeArrayFieldStart("ledgers");
        List<Ledger> ledgers = new ArrayList<>();
        ledgers.add(trace.water());
        ledgers.addAll(trace.components());
        for (Ledger ledger : ledgers) {
            writeLedger(json, ledger);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void writeYields(JsonGenerator json, Outlook outlook) throws IOException {
        json.writeObjectFieldStart("likely");
        writeBand(json, "poured_litres", outlook.feedLitres());
        json.writeArrayFieldStart("yields");
        for (Outlook.Yield yield : outlook.yields()) {
            json.writeStartObject();
            writeVessel(json, "vessel", yield.tray());
            writeCrop(json, yield.crop());
            if (yield.freshG().isPresent()) {
                writeBand(json, "fresh_g_per_plant", yield.freshG().get());
            }
            if (yield.fruitG().isPresent()) {
                writeBand(json, "fruit_fresh_g_per_plant", yield.fruitG().get());
            }
            if (yield.lostFrac().isPresent()) {
                writeBand(json, "loss", yield.lostFrac().get());
                number(json, "chance_of_great_loss", yield.poorShare());
            }
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void writeStepError(JsonGenerator json, StepError error) throws IOException {
        json.writeObjectFieldStart("step_error");
        number(json, "step_h", error.stepS() / Time.HOUR_S);
        number(json, "weight_share", error.weightFrac());
        number(json, "water_share", error.waterFrac());
        number(json, "date_shift_h", error.shiftS() / Time.HOUR_S);
        json.writeNumberField("dates_told_by_one_alone", error.unmatched());
        json.writeEndObject();
    }

    private static <T> T twin(List<T> twins, int i) {
        return i < twins.size() ? twins.get(i) : null;
    }

    private static void writeVerdict(JsonGenerator json, Forecast forecast) throws IOException {
        Verdict verdict = forecast.advice().verdict();
        Optional<Outlook> outlook = forecast.outlook();
        LocalDateTime start = forecast.trace().scenario().start().atStartOfDay();
        json.writeObjectFieldStart("verdict");
        json.writeBooleanField("survives", forecast.survives());
        if (outlook.isPresent()) {
            number(json, "chance", outlook.get().chance());
            json.writeNumberField("members", outlook.get().members());
            writeStepError(json, forecast.stepError().orElseThrow());
        }
        if (verdict.firstHarm().isEmpty() && !forecast.survives()) {
            Outlook.LikelyHarm harm = outlook.orElseThrow().harms().get(0);
            writeHarm(json, harm.kind(), harm.tray(), at(start, harm.atS().middle()));
        } else if (verdict.firstHarm().isEmpty()) {
            json.writeNullField("first_harm");
        } else {
            Verdict.Harm harm = verdict.firstHarm().get();
            writeHarm(json, harm.kind(), harm.vessel(), harm.at());
        }
        if (outlook.isPresent()) {
            json.writeArrayFieldStart("likely_harms");
            for (Outlook.LikelyHarm harm : outlook.get().harms()) {
                json.writeStartObject();
                json.writeStringField("kind", MachineWords.of(harm.kind()));
                writeVessel(json, "vessel", harm.tray());
                number(json, "share", harm.share());
                writeTimes(json, start, harm.atS());
                json.writeEndObject();
            }
            json.writeEndArray();
        }
        json.writeArrayFieldStart("absences");
        for (Verdict.Absence absence : verdict.absences()) {
            json.writeStartObject();
            json.writeStringField("from", absence.from().toString());
            json.writeStringField("to", absence.to().toString());
            json.writeBooleanField("survives", absence.survives());
            json.writeStringField(
                    "fill_up_on",
                    absence.fillUpOn() == null ? null : absence.fillUpOn().toString());
            number(json, "lowest_level_mm", MM_PER_M * absence.lowestLevelM());
            writeVessel(json, "lowest_in", absence.lowestIn());
            if (absence.filledUp().isPresent()) {
                json.writeObjectFieldStart("filled_up");
                json.writeBooleanField("survives", absence.filledUp().get().survives());
                number(json, "lowest_level_mm", MM_PER_M * absence.filledUp().get().lowestLevelM());
                json.writeEndObject();
            }
            if (outlook.isPresent()) {
                writeChance(json, outlook.get(), absence);
            }
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("water_left");
        for (Verdict.WaterLeft left : verdict.waterLeft()) {
            json.writeStartObject();
            writeVessel(json, "vessel", left.tray());
            json.writeStringField("at", CsvFiles.minute(left.at()));
            number(json, "hours", left.hours());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("losses");
        for (Verdict.Loss loss : verdict.losses()) {
            json.writeStartObject();
            writeVessel(json, "vessel", loss.tray());
            json.writeStringField("crop", loss.cropName());
            number(json, "share", loss.frac());
            json.writeStringField("most", MachineWords.of(loss.most()));
            number(json, "most_share", loss.mostFrac());
            number(json, "g_per_plant", loss.ownG());
            number(json, "unharmed_g_per_plant", loss.unharmedG());
            json.writeEndObject();
        }
        json.writeEndArray();
        json.writeArrayFieldStart("text");
        for (String line : VerdictWords.lines(forecast)) {
            json.writeString(line);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void writeHarm(
            JsonGenerator json, Enum<?> kind, VesselId vessel, LocalDateTime at)
            throws IOException {
        json.writeObjectFieldStart("first_harm");
        json.writeStringField("kind", MachineWords.of(kind));
        writeVessel(json, "vessel", vessel);
        json.writeStringField("at", CsvFiles.minute(at));
        json.writeEndObject();
    }

    private static void writeChance(JsonGenerator json, Outlook outlook, Verdict.Absence absence)
            throws IOException {
        for (Outlook.Absence one : outlook.absences()) {
            if (one.absence().from().equals(absence.from())
                    && one.absence().to().equals(absence.to())) {
                number(json, "chance", one.chance());
                if (one.lowestMm().isPresent()) {
                    writeBand(json, "lowest_level_mm_likely", one.lowestMm().get());
                }
            }
        }
    }

    /** Instants of a band: null where so many members never see it. */
    private static void writeTimes(JsonGenerator json, LocalDateTime start, Band atS)
            throws IOException {
        json.writeStringField("early", clock(start, atS.low()));
        json.writeStringField("middle", clock(start, atS.middle()));
        json.writeStringField("late", clock(start, atS.high()));
        number(json, "never_share", atS.neverFrac());
    }

    private static void writeBand(JsonGenerator json, String key, Band band) throws IOException {
        json.writeObjectFieldStart(key);
        number(json, "low", band.low());
        number(json, "middle", band.middle());
        number(json, "high", band.high());
        json.writeEndObject();
    }

    private static String clock(LocalDateTime start, double atS) {
        return atS < Double.POSITIVE_INFINITY ? CsvFiles.minute(at(start, atS)) : null;
    }

    private static LocalDateTime at(LocalDateTime start, double atS) {
        return start.plusSeconds(Math.round(atS));
    }

    private static void writeVessel(JsonGenerator json, String key, VesselId vessel)
            throws IOException {
        if (vessel == null) {
            json.writeNullField(key);
            return;
        }
        json.writeObjectFieldStart(key);
        json.writeStringField("kind", MachineWords.of(vessel.kind()));
        json.writeStringField("name", vessel.name());
        json.writeEndObject();
    }

    private static void writeTask(JsonGenerator json, Task task, Forecast forecast)
            throws IOException {
        json.writeStartObject();
        json.writeStringField("kind", MachineWords.of(task.kind()));
        writeVessel(json, "vessel", task.vessel());
        writeCrop(json, task.crop());
        json.writeStringField("due", CsvFiles.minute(task.due()));
        number(json, "pour_litres", task.litres());
        number(json, "drain_first_litres", task.drainLitres());
        json.writeBooleanField("done_in_run", task.isDone());
        Optional<Expected> expected = forecast.expected(task);
        if (expected.isPresent()) {
            json.writeObjectFieldStart("likely");
            writeTimes(
                    json, forecast.trace().scenario().start().atStartOfDay(), expected.get().atS());
            writeBand(json, "pour_litres", expected.get().litres());
            json.writeEndObject();
        }
        writeReason(json, task.measure(), task.cause(), task.cures());
        json.writeArrayFieldStart("cautions");
        for (Caution caution : task.cautions()) {
            json.writeString(MachineWords.of(caution));
        }
        json.writeEndArray();
        json.writeStringField("text", TaskWords.text(task));
        json.writeEndObject();
    }

    /** Of one crop among several in a tray; nothing where it has one. */
    private static void writeCrop(JsonGenerator json, String crop) throws IOException {
        if (!crop.isEmpty()) {
            json.writeStringField("crop", crop);
        }
    }

    private static void writeWarning(JsonGenerator json, Warning warning) throws IOException {
        json.writeStartObject();
        json.writeStringField("kind", MachineWords.of(warning.kind()));
        writeVessel(json, "vessel", warning.vessel());
        writeCrop(json, warning.crop());
        json.writeStringField("from", CsvFiles.minute(warning.from()));
        json.writeStringField("until", CsvFiles.minute(warning.until()));
        writeReason(json, warning.measure(), warning.cause(), warning.cures());
        json.writeStringField("text", WarningWords.text(warning));
        json.writeEndObject();
    }

    private static void writeReason(
            JsonGenerator json, Measure measure, Cause cause, List<Cure> cures) throws IOException {
        number(json, "value", measure.value());
        number(json, "limit", measure.limit());
        json.writeStringField("unit", measure.unit().symbol());
        json.writeStringField("cause", MachineWords.of(cause.kind()));
        writeFacts(json, "cause_figures", cause.facts());
        json.writeStringField(
                "cure", cures.isEmpty() ? null : MachineWords.of(cures.get(0).kind()));
        json.writeArrayFieldStart("cures");
        for (Cure cure : cures) {
            json.writeStartObject();
            json.writeStringField("cure", MachineWords.of(cure.kind()));
            writeFacts(json, "figures", cure.facts());
            if (!cure.then().isEmpty()) {
                json.writeArrayFieldStart("then");
                for (Cure then : cure.then()) {
                    json.writeStartObject();
                    json.writeStringField("cure", MachineWords.of(then.kind()));
                    writeFacts(json, "figures", then.facts());
                    json.writeEndObject();
                }
                json.writeEndArray();
            }
            json.writeStringField("text", CureWords.of(cure));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void writeFacts(JsonGenerator json, String key, Facts facts) throws IOException {
        json.writeObjectFieldStart(key);
        for (Map.Entry<Quantity, Double> figure : facts.figures().entrySet()) {
            number(json, MachineWords.of(figure.getKey()), figure.getValue());
        }
        if (facts.on() != null) {
            json.writeStringField("on", CsvFiles.minute(facts.on()));
        }
        if (!facts.of().isEmpty()) {
            json.writeStringField("of", facts.of());
        }
        if (!facts.litresInto().isEmpty()) {
            json.writeObjectFieldStart("litres_into");
            for (Map.Entry<VesselId, Double> one : facts.litresInto().entrySet()) {
                number(
                        json,
                        MachineWords.of(one.getKey().kind()) + "." + one.getKey().name(),
                        one.getValue());
            }
            json.writeEndObject();
        }
        json.writeEndObject();
    }

    private static void writeSizing(JsonGenerator json, Sizing sizing) throws IOException {
        json.writeStartObject();
        json.writeStringField("reservoir", sizing.reservoir());
        number(json, "usable_litres", sizing.usableLitres());
        number(json, "enough_usable_litres", sizing.enoughUsableLitres());
        number(json, "longest_gap_days", sizing.longestGapDays());
        if (sizing.outgrownFrom() == null) {
            json.writeNullField("outgrown_from");
        } else {
            json.writeStringField("outgrown_from", sizing.outgrownFrom().toString());
        }
        json.writeArrayFieldStart("days_when_full");
        for (double days : sizing.daysWhenFull()) {
            number(json, days);
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    private static void writeReservoir(
            JsonGenerator json, ReservoirTrace run, ReservoirTrace twin, String file)
            throws IOException {
        json.writeStartObject();
        json.writeStringField("name", run.reservoir().name());
        json.writeStringField("csv", "reservoir-" + file + ".csv");
        number(json, "full_litres", L_PER_M3 * run.reservoir().fullM3());
        number(json, "usable_litres", L_PER_M3 * run.reservoir().usableM3());
        number(json, "dead_litres", L_PER_M3 * run.reservoir().deadM3());
        for (Map.Entry<String, ReservoirSeries> total : RESERVOIR_TOTALS) {
            number(json, total.getKey(), sum(total.getValue(), run.of(total.getValue())));
        }
        number(
                json,
                "fed_litres_if_never_dry",
                twin == null ? Double.NaN : sum(ReservoirSeries.OUTFLOW, twin.outflowM3()));
        json.writeObjectFieldStart("at_end");
        for (Map.Entry<String, ReservoirSeries> state : RESERVOIR_AT_END) {
            number(json, state.getKey(), last(state.getValue(), run.of(state.getValue())));
        }
        json.writeEndObject();
        json.writeEndObject();
    }

    private static void writeTray(
            JsonGenerator json,
            TrayTrace run,
            TrayTrace twin,
            String file,
            PhCourse ph,
            Trace trace)
            throws IOException {
        json.writeStartObject();
        json.writeStringField("name", run.tray().name());
        json.writeStringField("csv", "tray-" + file + ".csv");
        json.writeStringField("crop", run.tray().planting().cropName());
        json.writeNumberField("plants", run.tray().planting().plants());
        for (Map.Entry<String, TraySeries> total : TRAY_TOTALS) {
            number(json, total.getKey(), sum(total.getValue(), run.of(total.getValue())));
        }
        number(
                json,
                "transpired_litres_if_never_dry",
                twin == null ? Double.NaN : sum(TraySeries.TRANSPIRATION, twin.transpirationM3()));
        json.writeObjectFieldStart("at_end");
        for (Map.Entry<String, TraySeries> state : TRAY_AT_END) {
            number(json, state.getKey(), last(state.getValue(), run.of(state.getValue())));
        }
        json.writeEndObject();
        writePh(json, run, ph, trace);
        writePicked(json, trace.plantings(run), trace);
        if (run.tray().plantings() > 1) {
            writePlantings(json, run, trace);
        }
        json.writeEndObject();
    }

    /**
     * What hands took from crops that stand on, in all and by the weeks of each crop; whole tray.
     */
    private static void writePicked(JsonGenerator json, List<PlantingTrace> plantings, Trace trace)
            throws IOException {
        double leavesG = 0;
        double fruitG = 0;
        List<Picked> pickedOf = plantings.stream().map(Picked::of).toList();
        for (Picked picked : pickedOf) {
            leavesG += picked.allLeavesG();
            fruitG += picked.allFruitG();
        }
        json.writeObjectFieldStart("picked");
        number(json, "leaves_g", leavesG);
        number(json, "ripe_fruit_g", fruitG);
        json.writeArrayFieldStart("by_week");
        for (int i = 0; i < pickedOf.size(); i++) {
            PlantingTrace planting = plantings.get(i);
            Picked picked = pickedOf.get(i);
            for (int week = 0; week < picked.leavesG().size(); week++) {
                if (picked.leavesG().get(week) + picked.fruitG().get(week) > 0) {
                    json.writeStartObject();
                    json.writeStringField(
                            "from",
                            CsvFiles.minute(
                                    trace.clockAt(planting.fromS() + 7 * week * Time.DAY_S)));
                    json.writeStringField("crop", planting.tray().planting().cropName());
                    number(json, "leaves_g", picked.leavesG().get(week));
                    number(json, "ripe_fruit_g", picked.fruitG().get(week));
                    json.writeEndObject();
                }
            }
        }
        json.writeEndArray();
        json.writeEndObject();
    }

    /** Each crop of a tray in which several follow one another; those never set out with nulls. */
    private static void writePlantings(JsonGenerator json, TrayTrace run, Trace trace)
            throws IOException {
        List<PlantingTrace> plantings = trace.plantings(run);
        json.writeArrayFieldStart("plantings");
        for (int i = 0; i < run.tray().plantings(); i++) {
            PlantingTrace planting = i < plantings.size() ? plantings.get(i) : null;
            Planting crop = run.tray().planted(i).planting();
            json.writeStartObject();
            json.writeStringField("crop", crop.cropName());
            json.writeNumberField("plants", crop.plants());
            json.writeStringField(
                    "planted",
                    planting == null ? null : CsvFiles.minute(trace.clockAt(planting.fromS())));
            json.writeStringField("harvested", clockOf(planting, Event.Kind.HARVEST, trace));
            json.writeStringField("lost", clockOf(planting, Event.Kind.DIED, trace));
            number(
                    json,
                    "fresh_g_per_plant",
                    grams(planting, TraySeries.FRESH_MASS) + pickedG(planting));
            number(json, "fruit_fresh_g_per_plant", grams(planting, TraySeries.FRUIT_FRESH_MASS));
            number(
                    json,
                    "transpired_litres",
                    planting == null
                            ? Double.NaN
                            : L_PER_M3
                                    * run.transpirationM3()
                                            .sum(planting.firstHour(), planting.endHour()));
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static String clockOf(PlantingTrace planting, Event.Kind kind, Trace trace) {
        if (planting != null) {
            for (Event event : planting.events()) {
                if (event.kind() == kind) {
                    return CsvFiles.minute(trace.clockAt(event.atS()));
                }
            }
        }
        return null;
    }

    /** Leaves picked from a plant, g. */
    private static double pickedG(PlantingTrace planting) {
        return planting == null
                ? 0
                : Picked.of(planting).allLeavesG()
                        / Math.max(1, planting.tray().planting().plants());
    }

    private static double grams(PlantingTrace planting, TraySeries series) {
        return planting == null ? Double.NaN : planting.run().of(series).at(planting.lastHour());
    }

    /**
     * Lowest and highest pH of the run and of all that is plausible, while roots live in the tray.
     */
    private static void writePh(JsonGenerator json, TrayTrace run, PhCourse ph, Trace trace)
            throws IOException {
        int hours = trace.lastLivingHour(run) + 1;
        json.writeObjectFieldStart("ph_while_rooted");
        number(json, "lowest", least(run.ph(), hours));
        number(json, "highest", greatest(run.ph(), hours));
        number(json, "lowest_plausible", least(ph.lowest(), hours));
        number(json, "highest_plausible", greatest(ph.highest(), hours));
        json.writeEndObject();
    }

    private static double least(Series series, int hours) {
        return CsvFiles.readable(series, 0, hours).min().orElse(Double.NaN);
    }

    private static double greatest(Series series, int hours) {
        return CsvFiles.readable(series, 0, hours).max().orElse(Double.NaN);
    }

    private static double sum(HourlySeries of, Series series) {
        return of.column().factor() * series.sum();
    }

    private static double last(HourlySeries of, Series series) {
        return series.size() == 0
                ? Double.NaN
                : of.column().factor() * series.at(series.size() - 1);
    }

    private static void writeLedger(JsonGenerator json, Ledger ledger) throws IOException {
        json.writeStartObject();
        json.writeStringField("of", ledger.name());
        json.writeStringField("unit", ledger.unit());
        number(json, "start", ledger.start());
        writeEntries(json, "in", ledger.in());
        number(json, "end", ledger.end());
        writeEntries(json, "out", ledger.out());
        number(json, "residual", ledger.residual());
        number(json, "relative_residual", ledger.relativeResidual());
        json.writeEndObject();
    }

    private static void writeEntries(JsonGenerator json, String key, List<Ledger.Entry> entries)
            throws IOException {
        json.writeArrayFieldStart(key);
        for (Ledger.Entry entry : entries) {
            json.writeStartObject();
            json.writeStringField("what", entry.what());
            number(json, "amount", entry.amount());
            json.writeEndObject();
        }
        json.writeEndArray();
    }

    private static void number(JsonGenerator json, String key, double value) throws IOException {
        json.writeFieldName(key);
        number(json, value);
    }

    private static void number(JsonGenerator json, double value) throws IOException {
        BigDecimal rounded = SignificantDigits.ten(value);
        if (rounded == null) {
            json.writeNull();
        } else {
            json.writeNumber(rounded);
        }
    }
}
