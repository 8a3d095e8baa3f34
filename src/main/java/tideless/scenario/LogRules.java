package tideless.scenario;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.apache.commons.math3.util.FastMath;
import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.LogEntry;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.rig.VesselId;

/** What an entry of a log may say of a vessel of a rig, and what it then is. */
final class LogRules {
    private static final double NO_MORE_M = 1e-9;

    /** A number without its unit. */
    private static final Pattern BARE = Pattern.compile("[0-9]+(?:\\.[0-9]+)?");

    /** Three deviations of a jug of 5 %, by which a vessel may seem to hold more; assumed. */
    private static final double JUG = 1.15;

    private final Scenario scenario;
    private final LogReader reader;
    private final Map<VesselId, Integer> lost = new HashMap<>();

    LogRules(Scenario scenario, LogReader reader) {
        this.scenario = scenario;
        this.reader = reader;
    }

    /** The entries of a line; none where it is at fault, which has then been said. */
    List<LogEntry> entries(LogWhat what, LogTable.Line line, double atS, boolean use) {
        if (what == LogWhat.NOTHING) {
            return List.of(new LogEntry.Looked(atS));
        }
        List<VesselId> where = where(what, line);
        Read<Double> value = value(what, line);
        if (where.isEmpty() || value.isFaulty()) {
            return List.of();
        }
        List<LogEntry> entries = new ArrayList<>();
        for (VesselId vessel : where) {
            entries.addAll(
                    vessel.kind() == VesselId.Kind.RESERVOIR
                            ? ofReservoir(
                                    what,
                                    line,
                                    atS,
                                    use,
                                    scenario.reservoir(vessel).orElseThrow(),
                                    value)
                            : ofTray(
                                    what,
                                    line,
                                    atS,
                                    use,
                                    scenario.tray(vessel).orElseThrow(),
                                    value));
        }
        return entries;
    }

    private List<VesselId> where(LogWhat what, LogTable.Line line) {
        String text = line.where().text().toLowerCase(Locale.ROOT).strip();
        String name = text.replaceFirst("^(tray|reservoir) +", "");
        List<VesselId> trays =
                scenario.trays().stream()
                        .map(Tray::id)
                        .filter(id -> id.name().toLowerCase(Locale.ROOT).equals(name))
                        .toList();
        List<VesselId> reservoirs =
                what.isOfTrays()
                        ? List.of()
                        : scenario.reservoirs().stream()
                                .map(Reservoir::id)
                                .filter(id -> id.name().toLowerCase(Locale.ROOT).equals(name))
                                .toList();
        boolean saysTray = text.startsWith("tray ");
        boolean saysReservoir = text.startsWith("reservoir ");
        if (!trays.isEmpty() && !saysReservoir && (reservoirs.isEmpty() || saysTray)) {
            return List.of(trays.get(0));
        }
        if (!reservoirs.isEmpty() && !saysTray && (trays.isEmpty() || saysReservoir)) {
            return List.of(reservoirs.get(0));
        }
        if (what == LogWhat.LAMP_CHANGED && (text.isEmpty() || text.equals("all"))) {
            return scenario.trays().stream().map(Tray::id).toList();
        }
        if (text.isEmpty()
                && scenario.trays().size() == 1
                && (what.isOfTrays() || scenario.reservoirs().isEmpty())) {
            return List.of(scenario.trays().get(0).id());
        }
        boolean twice = !trays.isEmpty() && !reservoirs.isEmpty();
        List<String> names = LogReader.vessels(scenario);
        String meant = Spelling.nearest(name, names);
        reader.problem(
                line.line(),
                line.where(),
                LogTable.WHERE,
                text.isEmpty() ? "nothing" : Key.quoted(TomlFile.shown(line.where().text())),
                twice ? "tray " + name + ", reservoir " + name : allowedNames(what, names),
                meant.isEmpty() || twice || meant.equals(name)
                        ? ""
                        : "Did you mean " + Key.quoted(meant) + "?");
        return List.of();
    }

    private String allowedNames(LogWhat what, List<String> names) {
        return what.isOfTrays()
                ? "a tray: " + String.join(", ", scenario.trays().stream().map(Tray::name).toList())
                : String.join(", ", names);
    }

    private Read<Double> value(LogWhat what, LogTable.Line line) {
        LogTable.Cell cell = line.value();
        if (cell.isEmpty() && !what.needsValue()) {
            return Read.absent();
        }
        if (!cell.isEmpty() && !what.mayHaveValue()) {
            reader.note(line.line(), "what stands under value is kept as a remark: " + what.word());
            return Read.absent();
        }
        Read<Measure> read =
                cell.isEmpty()
                        ? Read.faulty()
                        : Measure.of(cell.text(), what.tables(), what.tables().isEmpty());
        double[] possible = what.possible();
        boolean fits =
                read.holds(
                        m ->
                                shares(what, m)
                                        || (m.value() >= possible[0] && m.value() <= possible[1]));
        if (!fits) {
            String hint = read instanceof Read.Faulty<Measure> fault ? fault.hint() : "";
            if (hint.isEmpty() && !what.tables().isEmpty() && BARE.matcher(cell.text()).matches()) {
                hint =
                        "As "
                                + Key.quoted(
                                        cell.text() + " " + what.tables().get(0).shown().get(0))
                                + ".";
            }
            reader.problem(
                    line.line(),
                    cell,
                    LogTable.VALUE,
                    cell.isEmpty() ? "nothing" : Key.quoted(TomlFile.shown(cell.text())),
                    allowed(what),
                    hint);
            return Read.faulty();
        }
        double value = read.value().value();
        double[] likely = what.likely();
        if (value < likely[0] || value > likely[1]) {
            reader.note(
                    line.line(),
                    "%s %s is unlikely, and counts; write no under use to keep it out"
                            .formatted(what.word(), TomlFile.shown(cell.text())));
        }
        return Read.of(shares(what, read.value()) ? -value : value);
    }

    /** A share of a lamp's own strength, which is told from a flux by its sign. */
    private static boolean shares(LogWhat what, Measure measure) {
        return what == LogWhat.LAMP_CHANGED
                && measure.table() == UnitTable.SHARE
                && measure.value() >= 0;
    }

    private static String allowed(LogWhat what) {
        if (what.tables().isEmpty()) {
            return what == LogWhat.PLANTS_LOST
                    ? "how many plants"
                    : "a number from %s to %s"
                            .formatted(
                                    Measure.plain(what.possible()[0]),
                                    Measure.plain(what.possible()[1]));
        }
        UnitTable table = what.tables().get(0);
        List<String> units = new ArrayList<>();
        what.tables().forEach(t -> units.addAll(t.shown()));
        String most =
                what.possible()[1] < Double.POSITIVE_INFINITY
                        ? " up to " + Measure.plain(what.possible()[1], table, units.get(0))
                        : "";
        return "a number from "
                + Measure.plain(what.possible()[0], table, units.get(0))
                + most
                + " with its unit: "
                + String.join(", ", units);
    }

    private List<LogEntry> ofReservoir(
            LogWhat what,
            LogTable.Line line,
            double atS,
            boolean use,
            Reservoir reservoir,
            Read<Double> value) {
        VesselId id = reservoir.id();
        Shape shape = reservoir.shape();
        double rimM3 = shape.volumeM3(shape.depthM());
        return switch (what) {
            case LEVEL -> level(line, atS, use, id, shape, reservoir.fullLevelM(), value.value());
            case EC, PH, TEMPERATURE -> reading(what, line, atS, use, id, value.value());
            case REFILL -> refill(line, atS, use, id, rimM3, value);
            case LITRES_IN, WATER_IN -> poured(what, line, atS, use, id, rimM3, value.value());
            default -> throw new IllegalStateException(what + " of a reservoir");
        };
    }

    private List<LogEntry> ofTray(
            LogWhat what,
            LogTable.Line line,
            double atS,
            boolean use,
            Tray tray,
            Read<Double> value) {
        VesselId id = tray.id();
        Shape shape = tray.shape();
        double rimM3 = shape.volumeM3(shape.depthM());
        return switch (what) {
            case LEVEL -> level(line, atS, use, id, shape, tray.overflowM(), value.value());
            case EC, PH, TEMPERATURE, FRESH_WEIGHT, ROOT_LENGTH ->
                    reading(what, line, atS, use, id, value.value());
            case REFILL -> {
                if (tray.filling() instanceof Filling.ByHand) {
                    yield refill(line, atS, use, id, rimM3, value);
                }
                refuse(
                        line,
                        line.what(),
                        LogTable.WHAT,
                        "a refill of a tray that is not topped up by hand",
                        "a refill of a reservoir or of a tray with [tray.NAME.hand]",
                        "What was poured into it by hand is \"litres in\".");
                yield List.of();
            }
            case LITRES_IN, WATER_IN -> poured(what, line, atS, use, id, rimM3, value.value());
            case FLUSH, FRESH_SOLUTION ->
                    used(use, new LogEntry.Renewed(atS, id, what == LogWhat.FLUSH));
            case VALVE_MOVED -> valve(line, atS, use, tray, value.value());
            case LAMP_CHANGED -> lamp(line, atS, use, tray, value.value());
            case PLANTS_LOST -> lost(line, atS, use, tray, value.value());
            case CROP_TAKEN -> taken(line, atS, use, tray, value);
            case LEAVES_PICKED -> picked(line, atS, use, tray, value.value());
            case NOTHING -> throw new IllegalStateException("said before");
        };
    }

    private static List<LogEntry> used(boolean use, LogEntry entry) {
        return use ? List.of(entry) : List.of(new LogEntry.Looked(entry.atS()));
    }

    private void refuse(
            LogTable.Line line,
            LogTable.Cell cell,
            String key,
            String found,
            String allowed,
            String hint) {
        reader.problem(line.line(), cell, key, found, allowed, hint);
    }

    private List<LogEntry> reading(
            LogWhat what, LogTable.Line line, double atS, boolean use, VesselId id, double value) {
        return List.of(new LogEntry.Reading(atS, id, what.quantity(), value, use, line.line()));
    }

    private List<LogEntry> level(
            LogTable.Line line,
            double atS,
            boolean use,
            VesselId id,
            Shape shape,
            double fullM,
            double levelM) {
        if (levelM > shape.depthM() + NO_MORE_M) {
            refuse(
                    line,
                    line.value(),
                    LogTable.VALUE,
                    Key.quoted(TomlFile.shown(line.value().text())) + ", above its rim",
                    "0 cm to " + Measure.plain(shape.depthM(), UnitTable.LENGTH, "cm"),
                    "Level is the depth of the solution, from the floor up.");
            return List.of();
        }
        if (levelM > fullM + 0.005) {
            reader.note(
                    line.line(),
                    "level %s stands above the full mark or overflow, %s; it counts: write no under use to keep it out"
                            .formatted(
                                    TomlFile.shown(line.value().text()),
                                    Measure.plain(fullM, UnitTable.LENGTH, "cm")));
        }
        return reading(LogWhat.LEVEL, line, atS, use, id, levelM);
    }

    private boolean isTooMuch(LogTable.Line line, double rimM3, double m3) {
        if (m3 <= JUG * rimM3) {
            return false;
        }
        refuse(
                line,
                line.value(),
                LogTable.VALUE,
                Key.quoted(TomlFile.shown(line.value().text())) + ", more than it holds",
                "up to " + Measure.plain(rimM3, UnitTable.VOLUME, "L"),
                "");
        return true;
    }

    private List<LogEntry> refill(
            LogTable.Line line,
            double atS,
            boolean use,
            VesselId id,
            double rimM3,
            Read<Double> value) {
        LogEntry filled = new LogEntry.FilledUp(atS, id);
        if (value.isAbsent()) {
            return used(use, filled);
        }
        if (isTooMuch(line, rimM3, value.value())) {
            return List.of();
        }
        // Filled it was; only the litres may be doubted.
        return List.of(
                new LogEntry.Reading(
                        atS, id, LogEntry.Quantity.POURED, value.value(), use, line.line()),
                filled);
    }

    private List<LogEntry> poured(
            LogWhat what,
            LogTable.Line line,
            double atS,
            boolean use,
            VesselId id,
            double rimM3,
            double m3) {
        return isTooMuch(line, rimM3, m3)
                ? List.of()
                : used(use, new LogEntry.Poured(atS, id, m3, what == LogWhat.WATER_IN));
    }

    private List<LogEntry> valve(
            LogTable.Line line, double atS, boolean use, Tray tray, double toM) {
        if (!(tray.filling() instanceof Filling.ByValve valve)) {
            refuse(
                    line,
                    line.where(),
                    LogTable.WHERE,
                    "tray " + tray.name() + ", which has no valve",
                    "a tray with a float valve",
                    "");
            return List.of();
        }
        if (toM < valve.bandM() || toM > tray.overflowM()) {
            refuse(
                    line,
                    line.value(),
                    LogTable.VALUE,
                    Key.quoted(TomlFile.shown(line.value().text())),
                    "from its band, %s, up to the overflow, %s"
                            .formatted(
                                    Measure.plain(valve.bandM(), UnitTable.LENGTH, "mm"),
                                    Measure.plain(tray.overflowM(), UnitTable.LENGTH, "mm")),
                    "The level at which it shuts, above the tray's floor.");
            return List.of();
        }
        return used(use, new LogEntry.ValveMoved(atS, tray.id(), toM));
    }

    private List<LogEntry> lamp(
            LogTable.Line line, double atS, boolean use, Tray tray, double value) {
        double ppfd = value < 0 ? -value * tray.lamp().ppfdUmolPerM2S() : value;
        if (tray.lamp().ppfdUmolPerM2S() == 0) {
            refuse(
                    line,
                    line.where(),
                    LogTable.WHERE,
                    "tray " + tray.name() + ", which has no lamp",
                    "a tray under a lamp",
                    "Its hours stand in the scenario, under [lamp] or [tray.NAME.lamp].");
            return List.of();
        }
        if (ppfd > Lamp.MOST_UMOL_PER_M2_S) {
            refuse(
                    line,
                    line.value(),
                    LogTable.VALUE,
                    Key.quoted(TomlFile.shown(line.value().text())),
                    "up to " + Measure.plain(Lamp.MOST_UMOL_PER_M2_S) + " umol/m2/s",
                    "");
            return List.of();
        }
        return used(use, new LogEntry.LampChanged(atS, tray.id(), ppfd));
    }

    private List<LogEntry> lost(
            LogTable.Line line, double atS, boolean use, Tray tray, double count) {
        Optional<Planting.OfCrop> crop = crop(tray);
        int before = lost.getOrDefault(tray.id(), 0);
        int most = crop.map(Planting.OfCrop::plants).orElse(0) - before;
        if (count != FastMath.rint(count) || count < 1 || count > most) {
            refuse(
                    line,
                    line.value(),
                    LogTable.VALUE,
                    Key.quoted(TomlFile.shown(line.value().text())),
                    crop.isEmpty()
                            ? "nothing: this tray's thirst is stated for all its plants"
                            : most > 0 ? "a whole number from 1 to " + most : "none: all are lost",
                    "");
            return List.of();
        }
        if (use) {
            lost.put(tray.id(), before + (int) count);
        }
        return used(use, new LogEntry.PlantsLost(atS, tray.id(), (int) count));
    }

    private static Optional<Planting.OfCrop> crop(Tray tray) {
        return tray.planting() instanceof Planting.OfCrop crop
                ? Optional.of(crop)
                : Optional.empty();
    }

    private List<LogEntry> picked(
            LogTable.Line line, double atS, boolean use, Tray tray, double grams) {
        return tray.planting().fruits()
                ? fruitPicked(line, atS)
                : used(use, new LogEntry.LeavesPicked(atS, tray.id(), grams));
    }

    private List<LogEntry> fruitPicked(LogTable.Line line, double atS) {
        reader.note(
                line.line(),
                "fruit that was picked is kept as a remark: the run picks what is ripe by itself");
        return List.of(new LogEntry.Looked(atS));
    }

    private List<LogEntry> taken(
            LogTable.Line line, double atS, boolean use, Tray tray, Read<Double> grams) {
        if (tray.planting().fruits()) {
            return fruitPicked(line, atS);
        }
        if (grams.isSound() && crop(tray).map(Planting.OfCrop::isPickedForLeaves).orElse(false)) {
            reader.note(
                    line.line(),
                    "this crop is picked as it grows, so its plants are taken to stand on; that they were cut is said by crop taken without a weight");
            return picked(line, atS, use, tray, grams.value());
        }
        LogEntry harvested = new LogEntry.Harvested(atS, tray.id());
        int plants =
                crop(tray).map(Planting.OfCrop::plants).orElse(0) - lost.getOrDefault(tray.id(), 0);
        if (grams.isAbsent() || plants < 1 || !use) {
            return used(use, harvested);
        }
        return List.of(
                new LogEntry.Reading(
                        atS,
                        tray.id(),
                        LogEntry.Quantity.FRESH_MASS,
                        grams.value() / plants,
                        true,
                        line.line()),
                harvested);
    }
}
