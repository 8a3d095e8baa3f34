package tideless.scenario;

import static tideless.scenario.TrayKeys.CUP_BOTTOM;
import static tideless.scenario.TrayKeys.CUP_WATER;
import static tideless.scenario.TrayKeys.DEPTH;
import static tideless.scenario.TrayKeys.DROWNING_KILLS;
import static tideless.scenario.TrayKeys.FLOATS_DOWN_TO;
import static tideless.scenario.TrayKeys.FLOOR_ABOVE_BENCH;
import static tideless.scenario.TrayKeys.GAP;
import static tideless.scenario.TrayKeys.OVERFLOW;
import static tideless.scenario.TrayKeys.OVERFLOW_BORE;
import static tideless.scenario.TrayKeys.START_LEVEL;

import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import tideless.rig.Deck;
import tideless.rig.Displacement;
import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.Limits;
import tideless.rig.Liquid;
import tideless.rig.NextPlanting;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.RootReach;
import tideless.rig.Shape;
import tideless.rig.Tray;
import tideless.rig.Visits;

/** Reads one tray, and finds what cannot be true of it. */
final class TrayReader {
    /** Of the cups where nothing is stated, below the rim, m; common practice, no source. */
    private static final double USUAL_CUP_M = 0.05;

    private final Table tray;
    private final Read<Shape> shape;
    private final Read<Double> depth;
    private final Read<Double> overflow;
    private final Read<Double> cupBottom;

    private TrayReader(Table tray) {
        this.tray = tray;
        shape = VesselReader.shape(tray, DEPTH);
        depth = tray.get(DEPTH);
        overflow = tray.getOr(OVERFLOW, depth, Heights::rim);
        cupBottom =
                tray.getOr(
                        CUP_BOTTOM,
                        depth.map(depthM -> Math.max(0, depthM - USUAL_CUP_M)),
                        cupM -> "5 cm below the rim");
    }

    /**
     * The tray.
     *
     * @param reservoirs tables of the reservoirs
     * @param good those of them that could be read
     */
    static Read<Tray> read(
            Table tray,
            Table reservoirs,
            List<Reservoir> good,
            CropReader crops,
            NamedFiles files,
            Run run,
            Read<Visits> visits,
            Read<Liquid> feed,
            Lamp lampForAll) {
        TrayReader reader = new TrayReader(tray);
        Read<Filling> filling =
                new FillingReader(
                                tray,
                                reservoirs,
                                good,
                                run,
                                visits,
                                reader.overflow,
                                reader.cupBottom)
                        .read();
        Read<Planting> planting =
                new PlantingReader(
                                tray,
                                reader.shape,
                                crops,
                                files,
                                run,
                                NextReader.makesRoom(tray.listed(NextReader.NEXT), 0))
                        .read();
        Table lamp = tray.child("lamp");
        if (lamp.exists() && lampForAll.plug().daylight()) {
            lamp.note(
                    LampKeys.TYPE,
                    "stands in place of the daylight of [lamp], and this tray has no sun; state"
                            + " climate.window_light in place of that lamp to have both");
        }
        return reader.read(
                feed,
                filling,
                planting,
                new NextReader(tray, reader.shape, crops, files, run, visits),
                lamp.exists() ? LampReader.read(lamp, run) : lampForAll);
    }

    private Read<Tray> read(
            Read<Liquid> feed,
            Read<Filling> filling,
            Read<Planting> planting,
            NextReader following,
            Lamp lamp) {
        boolean sound = tray.isSound();
        boolean heights = heightsRise();
        Read<Double> gap = gapM2();
        Read<Double> start = startLevelM(filling);
        Read<Limits> limits = new LimitsReader(tray.child("limits"), planting).read();
        Read<List<NextPlanting>> next = following.read(planting, start, overflow);
        Read<Displacement> displacement =
                new DisplacementReader(tray)
                        .read(
                                heights ? shape : Read.faulty(),
                                cupBottom,
                                Read.both(planting, next, TrayReader::mostPlants));
        if (!sound
                || !heights
                || !Read.allSound(
                        shape,
                        overflow,
                        cupBottom,
                        gap,
                        start,
                        feed,
                        planting,
                        filling,
                        limits,
                        next,
                        displacement)) {
            return Read.faulty();
        }
        if (planting.value() instanceof Planting.OfCrop crop && crop.plants() > 0) {
            noteDryRoots(
                    crop,
                    start.value(),
                    "at the start",
                    tray,
                    tray.has(START_LEVEL) ? START_LEVEL : CUP_BOTTOM);
        }
        List<Table> tables = tray.listed(NextReader.NEXT);
        for (int i = 0; i < tables.size(); i++) {
            NextPlanting then = next.value().get(i);
            if (then.crop().plants() > 0) {
                noteDryRoots(
                        then.crop(),
                        then.startLevelM(),
                        "when the " + then.crop().cropName() + " is set out",
                        tables.get(i),
                        NextKeys.START_LEVEL);
            }
        }
        Read<Double> bore = tray.get(OVERFLOW_BORE);
        return Read.of(
                new Tray(
                        tray.name(),
                        shape.value().with(displacement.value()),
                        overflow.value(),
                        bore.isSound() ? OptionalDouble.of(bore.value()) : OptionalDouble.empty(),
                        cupBottom.value(),
                        tray.value(FLOOR_ABOVE_BENCH),
                        gap.value(),
                        start.value(),
                        feed.value(),
                        planting.value(),
                        filling.value(),
                        lamp,
                        limits.value(),
                        deck(),
                        next.value()));
    }

    private static int mostPlants(Planting first, List<NextPlanting> next) {
        return next.stream().mapToInt(n -> n.crop().plants()).reduce(first.plants(), Math::max);
    }

    private Deck deck() {
        Read<Double> floats = tray.get(FLOATS_DOWN_TO);
        Read<Double> cupWater = tray.get(CUP_WATER);
        Read<Double> co2 = tray.get(TrayKeys.SOLUTION_CO2);
        return new Deck(
                floats.isSound() ? floats.value() : Double.POSITIVE_INFINITY,
                cupWater.isSound() ? OptionalDouble.of(cupWater.value()) : OptionalDouble.empty(),
                co2.isSound() ? co2.value() : 0,
                tray.value(DROWNING_KILLS),
                tray.value(TrayKeys.AERATED));
    }

    private void noteDryRoots(
            Planting.OfCrop crop, double startM, String when, Table table, Key<?> key) {
        double cupM = deck().cupBottomM(startM, depth.value(), cupBottom.value());
        double rootM = crop.plantAtStart().rootLengthM();
        double wetM = startM - cupM + rootM;
        if (!(wetM < RootReach.WET_M)) {
            return;
        }
        String roots = rootM > 0 ? "roots of " + Heights.cm(rootM) : "a seedling's roots";
        String where =
                wetM < 0
                        ? "the cups hang %s above the solution %s; %s do not reach it yet"
                                .formatted(Heights.cm(cupM - startM), when, roots)
                        : "%s dip %s into the solution %s, and the least fall leaves them dry"
                                .formatted(rootM > 0 ? roots : "the cups", Heights.cm(wetM), when);
        OptionalInt days = RootReach.of(crop, cupM - startM).days();
        String ready =
                days.isEmpty()
                        ? "Its roots never grow so long"
                        : "With their roots hanging they are ready for this level after "
                                + (days.getAsInt() == 1
                                        ? "one more day"
                                        : days.getAsInt() + " more days")
                                + " in the nursery";
        table.graveNote(
                key,
                where
                        + "; usual is a cup wet by about 1.3 cm (Kratky 2010). "
                        + ready
                        + ": fill higher until then, hang a wick, or state transplant.root_length"
                        + " where they hang lower");
    }

    /** Whether overflow, cups and hole stand where they can. */
    private boolean heightsRise() {
        boolean rise = Heights.atMost(tray, OVERFLOW, overflow, "the rim", DEPTH, depth);
        rise &=
                Heights.below(
                        tray,
                        CUP_BOTTOM,
                        cupBottom,
                        "the deck",
                        DEPTH,
                        depth,
                        "The cups hang from the deck into the tray.");
        Read<Double> bore = tray.get(OVERFLOW_BORE);
        if (Read.allSound(bore, overflow, depth)
                && overflow.value() + bore.value() > depth.value() + 1e-9) {
            tray.faultyValue(
                    OVERFLOW_BORE,
                    "up to %s, from the overflow (%s) to the rim (%s)"
                            .formatted(
                                    Heights.cm(Math.max(0, depth.value() - overflow.value())),
                                    Heights.where(tray, OVERFLOW, overflow.value()),
                                    Heights.where(tray, DEPTH, depth.value())),
                    "Maybe lower the overflow. Of a wider standpipe state that much: it passes more.");
            rise = false;
        }
        return rise;
    }

    private Read<Double> gapM2() {
        Read<Measure> gap = tray.get(GAP);
        if (!Read.allSound(gap, shape)) {
            return Read.faulty();
        }
        double deckM2 = shape.value().rimAreaM2();
        double stated = gap.value().value();
        double gapM2 = gap.value().table() == UnitTable.AREA ? stated : stated * deckM2;
        if (gapM2 > deckM2) {
            tray.faultyValue(
                    GAP, "up to the deck itself (%s)".formatted(PlantingReader.area(deckM2)), "");
            return Read.faulty();
        }
        return Read.of(gapM2);
    }

    private Read<Double> startLevelM(Read<Filling> filling) {
        Read<Double> stated = tray.get(START_LEVEL);
        if (!stated.isAbsent()) {
            return Heights.atMost(tray, START_LEVEL, stated, "the overflow", OVERFLOW, overflow)
                    ? stated
                    : Read.faulty();
        }
        if (!Read.allSound(filling, overflow, cupBottom)) {
            return Read.faulty();
        }
        double overflowM = overflow.value();
        double level;
        String why;
        if (filling.value() instanceof Filling.ByValve valve) {
            level = valve.settingM();
            why = "the valve's setting";
        } else if (filling.value() instanceof Filling.ByHand hand
                && hand.toLevelM() >= cupBottom.value()) {
            level = hand.toLevelM();
            why = "the level topped up to";
        } else {
            level = Math.min(overflowM, cupBottom.value() + Tray.CUP_WET_M);
            why = "1.3 cm above the cups' underside";
        }
        tray.holds(START_LEVEL, Heights.cm(level) + ", " + why);
        return Read.of(Math.min(level, overflowM));
    }
}
