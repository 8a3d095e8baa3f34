package tideless.scenario;

import java.nio.file.Path;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.util.FastMath;
import tideless.crop.CropTraits;
import tideless.physics.Time;
import tideless.rig.Climate;
import tideless.rig.Correction;
import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.Liquid;
import tideless.rig.Log;
import tideless.rig.Numerics;
import tideless.rig.Place;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.rig.Visits;

/**
 * Reads a scenario file: the door through which everything a user writes comes in. Whatever stands
 * in the file, the result is a {@link Reading}; nothing is thrown.
 */
public final class ScenarioReader {
    private static final int MOST_VESSELS = 200;

    private final TomlFile file;
    private final NamedFiles files;
    private final CropReader crops;
    private final Beside beside;

    private ScenarioReader(TomlFile file, NamedFiles files, CropLibrary library, Beside beside) {
        this.beside = beside;
        this.file = file;
        this.files = files;
        this.crops = new CropReader(new CropLibrary.Once(library, files.once()));
    }

    /**
     * Reads a file and the files it names, which are looked for beside it.
     *
     * @param path a TOML file in UTF-8 of up to 1 MB
     * @return the scenario, or all its faults, or why it could not be read
     */
    public static Reading read(Path path) {
        return read(path, CropLibrary.SHIPPED);
    }

    /**
     * The same with files it does not name.
     *
     * @param beside a log, corrections
     */
    public static Reading read(Path path, Beside beside) {
        return read(path.toString(), new FilesOnDisk(path), beside);
    }

    static Reading read(Path path, CropLibrary library) {
        return read(
                path.toString(), new FilesOnDisk(path), library, Beside.NOTHING, new MadeOnce());
    }

    /**
     * Reads a scenario whose files do not stand on a disk.
     *
     * @param name how the scenario is called in messages
     * @param files gives the scenario itself by an empty name, and the files it names by theirs
     */
    public static Reading read(String name, ScenarioFiles files) {
        return read(name, files, Beside.NOTHING);
    }

    static Reading read(String name, ScenarioFiles files, Beside beside) {
        return read(name, files, beside, new MadeOnce());
    }

    /**
     * The same for one of several readings.
     *
     * @param once what they share; they must name the same files
     */
    static Reading read(String name, ScenarioFiles files, Beside beside, MadeOnce once) {
        return read(name, files, CropLibrary.SHIPPED, beside, once);
    }

    private static Reading read(
            String name, ScenarioFiles files, CropLibrary library, Beside beside, MadeOnce once) {
        TextFile text = TextFile.of(files.read("", TextFile.MEBIBYTE + 1), TextFile.MEBIBYTE);
        if (!text.unreadable().isEmpty()) {
            return new Reading.Unreadable(name, text.unreadable());
        }
        for (ScenarioFiles other : beside.files()) {
            String unreadable = other.read("", 1).unreadable();
            if (!unreadable.isEmpty()) {
                return new Reading.Unreadable(other.label(""), unreadable);
            }
        }
        TomlFile file = new TomlFile(name);
        if (!text.fault().isEmpty()) {
            file.problem(
                    0, 0, "", text.fault(), TextFile.allowed("a TOML file", TextFile.MEBIBYTE), "");
            return new Reading.Faulty(file.problems());
        }
        if (!file.parse(text.text())) {
            return new Reading.Faulty(file.problems());
        }
        ScenarioReader reader =
                new ScenarioReader(file, new NamedFiles(files, once), library, beside);
        Read<Scenario> scenario = reader.scenario(text.bytes());
        return scenario.isSound()
                ? new Reading.Good(
                        scenario.value(), file.values(), file.notes(), reader.files.labels(name))
                : new Reading.Faulty(file.problems());
    }

    private Read<Scenario> scenario(byte[] bytes) {
        Table root = Table.root(file, ScenarioKeys.TABLE);
        Read<String> title = root.get(TopKeys.TITLE);
        Run run = new Run(root.get(TopKeys.START), days(root));
        Table climateTable = root.child("climate");
        boolean weather = "weather".equals(climateTable.raw(ClimateKeys.KIND.name()));
        Table placeTable = root.child("place");
        Read<Place> place =
                ClimateReader.place(placeTable, weather && !ClimateReader.isInside(climateTable));
        if (!weather) {
            ClimateReader.utcOffsetS(placeTable, place);
        }
        Table lampTable = root.child("lamp");
        Read<Lamp> lamp =
                lampTable.exists() ? Read.of(LampReader.read(lampTable, run)) : Read.absent();
        Read<Climate> climate =
                ClimateReader.climate(climateTable, placeTable, place, lamp, files, run);
        Solutions solutions = new Solutions.Once(Solutions.CURRENT, files.once());
        Read<Liquid> water = LiquidReader.water(root.child("water"), solutions);
        Read<Liquid> feed =
                LiquidReader.feed(
                        root.child("feed"),
                        water,
                        root.child("water").get(LiquidKeys.RAIN_SHARE).orElse(0.0),
                        solutions,
                        () -> middleEc(root));
        List<Reservoir> reservoirs = reservoirs(root.child("reservoir"), run);
        Read<Visits> visits = visits(root.child("visits"), run);
        List<Tray> trays = trays(root, reservoirs, feed, lamp.orElse(Lamp.NONE), run, visits);
        if (climate.isSound() && climate.value() instanceof Climate.Inside inside) {
            refuseLampsTwice(inside, lampTable, root.child("tray").named());
        }
        Map<VesselId, Liquid> own = ownFeeds(root, reservoirs, trays, feed, water, solutions);
        Read<Double> step = root.child("run").get(RunKeys.STEP);
        if (file.isFaulty()
                || !Read.allSound(
                        title,
                        run.start(),
                        run.days(),
                        place,
                        climate,
                        water,
                        feed,
                        visits,
                        step)) {
            return Read.faulty();
        }
        refuseIdleReservoirs(root.child("reservoir"), trays);
        new RunCost(root, run.days().value(), reservoirs.size() + trays.size()).check(step.value());
        if (file.isFaulty()) {
            return Read.faulty();
        }
        noteDarkness(climate.value(), trays);
        noteLampsAdded(climate.value(), trays);
        noteStillRoots(climate.value(), trays, root.child("tray"));
        if (climate.value() instanceof Climate.Weather outside) {
            noteRain(outside, trays, run.days().value());
        }
        Scenario stated =
                new Scenario(
                                title.value(),
                                run.start().value(),
                                run.days().value(),
                                place.value(),
                                climate.value(),
                                feed.value(),
                                Map.of(),
                                water.value(),
                                reservoirs,
                                trays,
                                visits.value(),
                                new Numerics(step.value()),
                                "",
                                Log.NONE,
                                Correction.NONE)
                        .withOwnFeeds(own);
        Table log = root.child("log");
        Read<Scenario> lived = corrected(log, logged(log, stated));
        return lived.map(scenario -> scenario.withDigest(files.digest(bytes)));
    }

    private Read<Scenario> logged(Table table, Scenario stated) {
        Read<NamedFiles.Named> named =
                files.openOr(beside.log(), table, LogKeys.FILE, "a log", file);
        if (named.isAbsent()) {
            return Read.of(stated);
        }
        return named.then(log -> LogReader.read(log.label(), log.text(), file, stated, pensPpm()))
                .map(log -> LogReader.relit(stated, log).withLog(log));
    }

    private String pensPpm() {
        return beside.pensPpm().isEmpty() ? file.pensPpm() : beside.pensPpm();
    }

    private Read<Scenario> corrected(Table table, Read<Scenario> stated) {
        Read<NamedFiles.Named> named =
                files.openOr(beside.corrected(), table, LogKeys.CORRECTED, "corrections", file);
        if (named.isAbsent() || beside.asStated() || !stated.isSound()) {
            return stated;
        }
        return named.then(
                        text -> {
                            TomlFile own = new TomlFile(text.label());
                            Read<Correction> read =
                                    CorrectionReader.read(own, text.text(), stated.value());
                            own.problems().forEach(file::add);
                            return read;
                        })
                .map(correction -> correction.applied(stated.value()));
    }

    /** A crop that comes with the program. */
    private record Shipped(String name) {}

    /** The middle between the greatest low end and the least high end of the named crops' bands. */
    private Read<Double> middleEc(Table root) {
        double low = 0;
        double high = Double.POSITIVE_INFINITY;
        for (Table tray : root.child("tray").named()) {
            if (tray.raw(TrayKeys.CROP.name()) instanceof String name
                    && Crops.names().contains(name)) {
                CropTraits.Needs needs =
                        files.once().get(new Shipped(name), () -> Crops.named(name)).needs();
                low = Math.max(low, needs.ecLowMsPerCm());
                high = Math.min(high, needs.ecHighMsPerCm());
            }
        }
        return Double.isInfinite(high) ? Read.absent() : Read.of((low + high) / 2);
    }

    private static Read<Integer> days(Table root) {
        Read<Double> days = root.get(TopKeys.LENGTH).map(lengthS -> lengthS / Time.DAY_S);
        if (days.holds(length -> Math.abs(length - FastMath.rint(length)) > 1e-9)) {
            root.faultyValue(TopKeys.LENGTH, "whole days", "");
            return Read.faulty();
        }
        return days.map(length -> (int) FastMath.rint(length));
    }

    private static List<Reservoir> reservoirs(Table tables, Run run) {
        List<Reservoir> good = new ArrayList<>();
        for (Table table : atMost(tables.named(), ReservoirKeys.DEPTH)) {
            Read<Reservoir> reservoir = ReservoirReader.read(table, run);
            if (reservoir.isSound()) {
                good.add(reservoir.value());
            }
        }
        return good;
    }

    private static Map<VesselId, Liquid> ownFeeds(
            Table root,
            List<Reservoir> reservoirs,
            List<Tray> trays,
            Read<Liquid> feed,
            Read<Liquid> water,
            Solutions solutions) {
        Map<VesselId, Liquid> own = new LinkedHashMap<>();
        if (!Read.allSound(feed, water)) {
            return own;
        }
        Table made = root.child("feed");
        for (Reservoir of : reservoirs) {
            Table table = root.child("reservoir").child(of.name());
            LiquidReader.feedOf(table, made, water.value(), solutions)
                    .ifSound(liquid -> own.put(of.id(), liquid));
        }
        for (Tray of : trays) {
            Table table = root.child("tray").child(of.name());
            if (table.has(VesselKeys.FEED_EC) && of.filling() instanceof Filling.ByValve valve) {
                table.faultyValue(
                        VesselKeys.FEED_EC,
                        "only of a tray that is filled by hand or once",
                        "Maybe [reservoir." + valve.reservoir() + "] feed_ec.");
            } else {
                LiquidReader.feedOf(table, made, water.value(), solutions)
                        .ifSound(liquid -> own.put(of.id(), liquid));
            }
        }
        return own;
    }

    private List<Tray> trays(
            Table root,
            List<Reservoir> reservoirs,
            Read<Liquid> feed,
            Lamp lamp,
            Run run,
            Read<Visits> visits) {
        List<Tray> good = new ArrayList<>();
        List<Table> named = root.child("tray").named();
        if (named.isEmpty() && !file.isExcused("tray")) {
            root.fault("tray", "nothing", "at least one tray", "Maybe add a table [tray.bench].");
        }
        for (Table table : atMost(named, TrayKeys.DEPTH)) {
            Read<Tray> tray =
                    TrayReader.read(
                            table,
                            root.child("reservoir"),
                            reservoirs,
                            crops,
                            files,
                            run,
                            visits,
                            feed,
                            lamp);
            if (tray.isSound()) {
                good.add(tray.value());
            }
        }
        return good;
    }

    private static List<Table> atMost(List<Table> tables, Key<?> where) {
        if (tables.size() <= MOST_VESSELS) {
            return tables;
        }
        tables.get(MOST_VESSELS)
                .fault(where, "one more than " + MOST_VESSELS, "up to " + MOST_VESSELS, "");
        return tables.subList(0, MOST_VESSELS);
    }

    /** An absence that is longer is asked about: it may be a slip of the year; assumed. */
    private static final int LONG_AWAY_DAYS = 60;

    private static Read<Visits> visits(Table visits, Run run) {
        boolean sound = visits.isSound();
        Read<List<Visits.Absence>> away =
                visits.getOr(VisitKeys.AWAY, Read.of(List.of()), none -> "none");
        for (Visits.Absence absence : away.orElse(List.of())) {
            long days = 1 + ChronoUnit.DAYS.between(absence.from(), absence.to());
            if (days > LONG_AWAY_DAYS) {
                visits.note(
                        VisitKeys.AWAY,
                        "the absence from %s to %s lasts %d days; are the years as meant?"
                                .formatted(absence.from(), absence.to(), days));
            }
            if (run.outside(List.of(absence.from(), absence.to())).size() == 2
                    && !run.start()
                            .holds(
                                    first ->
                                            absence.from().isBefore(first)
                                                    && !absence.to().isBefore(first))) {
                visits.note(
                        VisitKeys.AWAY,
                        "the absence from %s to %s lies outside the run and changes nothing"
                                .formatted(absence.from(), absence.to()));
            } else if (run.end().holds(end -> absence.to().isAfter(end))) {
                visits.note(
                        VisitKeys.AWAY,
                        ("the absence from %s to %s outlasts the run, which ends on %s: how it ends"
                                        + " is not foreseen; a longer length shows it")
                                .formatted(absence.from(), absence.to(), run.last().value()));
            }
        }
        return sound && away.isSound()
                ? Read.of(
                        new Visits(
                                visits.value(VisitKeys.DAYS),
                                visits.value(VisitKeys.AT),
                                away.value(),
                                visits.value(VisitKeys.FLUSH)))
                : Read.faulty();
    }

    /** Lamps that the inside air holds already must not stand over the trays once more. */
    private static void refuseLampsTwice(
            Climate.Inside inside, Table lampForAll, List<Table> trays) {
        if (!inside.air().recordsLamps()) {
            return;
        }
        List<Table> lamps = new ArrayList<>(List.of(lampForAll));
        trays.forEach(tray -> lamps.add(tray.child("lamp")));
        for (Table lamp : lamps) {
            if (lamp.exists()) {
                lamp.fault(
                        lamp.has(LampKeys.PPFD)
                                ? LampKeys.PPFD
                                : lamp.has(LampKeys.WATTS) ? LampKeys.WATTS : LampKeys.LUX,
                        "a lamp beside the lamps that the weather file records",
                        "one of the two: they would be counted twice",
                        "Maybe take this table out, or the column lamp and light_from.");
            }
        }
    }

    private void noteDarkness(Climate climate, List<Tray> trays) {
        for (Tray tray : trays) {
            boolean sunless =
                    climate.isDark()
                            || (climate instanceof Climate.Inside inside
                                    && !inside.air().isSunlit()
                                    && !inside.air().recordsLamps());
            if (sunless
                    && tray.lamp().ppfdUmolPerM2S() == 0
                    && tray.planting() instanceof Planting.OfCrop) {
                file.note(
                        new Note(
                                file.name(),
                                file.line(List.of("tray", tray.name())),
                                "tray." + tray.name(),
                                climate instanceof Climate.Room
                                        ? "no light reaches this tray: no daylight is stated of the room"
                                                + " (climate.window_light), and there is no lamp over it"
                                        : "no light reaches this tray: the file of inside air has none, and there is no lamp over it",
                                true));
            }
        }
    }

    private void noteLampsAdded(Climate climate, List<Tray> trays) {
        boolean adds =
                climate instanceof Climate.Inside inside
                        && inside.air().isSunlit()
                        && trays.stream().anyMatch(tray -> tray.lamp().ppfdUmolPerM2S() > 0);
        if (adds) {
            file.note(
                    new Note(
                            file.name(),
                            file.line(List.of("climate")),
                            "climate",
                            "the light of the file is taken as sun, and the lamps over the trays"
                                    + " are added to it; a sensor that saw them counts them twice"));
        }
    }

    /**
     * Air is measured at plants where crops are grown for a living, and most such stands are
     * drained or aerated: whoever does not know of the key gets the thirst of a still tray.
     */
    private static void noteStillRoots(Climate climate, List<Tray> trays, Table tables) {
        if (!(climate instanceof Climate.Inside)) {
            return;
        }
        for (Tray tray : trays) {
            Table table = tables.child(tray.name());
            if (tray.planting() instanceof Planting.OfCrop && !table.has(TrayKeys.AERATED)) {
                table.note(
                        TrayKeys.AERATED,
                        "does this crop stand on a slab or in a bed that drains, or with an air stone?"
                                + " Then set aerated = true: without it the roots use up the air of"
                                + " a still solution, and a grown crop drinks some 10 to 20 % less;"
                                + " aerated = false says that the tray is still");
            }
        }
    }

    private void noteRain(Climate.Weather climate, List<Tray> trays, int days) {
        double rainM = climate.weather().rainM(days * 24);
        double openM2 = trays.stream().mapToDouble(Tray::openAreaM2).sum();
        if (climate.cover().kind().isOpen() && rainM > 0) {
            file.note(
                    new Note(
                            file.name(),
                            file.line(List.of("climate")),
                            "climate",
                            String.format(
                                    java.util.Locale.ROOT,
                                    "%.0f mm of rain fall during the run and are not added to any"
                                            + " vessel: through the gaps of the decks they would"
                                            + " bring up to %.1f L",
                                    1000 * rainM,
                                    1000 * rainM * openM2)));
        }
    }

    /** A reservoir that feeds nothing is a slip: a valve forgotten, or a tray's table misnamed. */
    private void refuseIdleReservoirs(Table tables, List<Tray> trays) {
        for (Table reservoir : tables.named()) {
            if (trays.stream().noneMatch(tray -> tray.isFedBy(reservoir.name()))) {
                tables.faultyName(
                        reservoir.name(),
                        "a reservoir that no valve names",
                        "a reservoir that feeds a tray",
                        "Maybe add a table [tray.%s.valve] with its setting, or leave the reservoir"
                                        .formatted(trays.get(0).name())
                                + " out.");
            }
        }
    }
}
