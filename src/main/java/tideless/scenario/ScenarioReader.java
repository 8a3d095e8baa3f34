package tideless.scenario;

import java.nio.file.Path;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.apache.commons.math3.util.FastMath;
import tideless.rig.Climate;
import tideless.rig.Cover;
import tideless.rig.Lamp;
import tideless.rig.Liquid;
import tideless.rig.Place;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Settings;
import tideless.rig.Tray;
import tideless.rig.Visits;

/**
 * Reads a scenario file: the door through which everything a user writes comes in. Whatever stands
 * in the file, the result is a {@link Reading}; nothing is thrown.
 */
public final class ScenarioReader {
    private static final double DAY_S = 86400;
    private static final int MOST_VESSELS = 200;

    private final Source source;
    private final NamedFiles files;
    private final CropReader crops;

    private ScenarioReader(Source source, NamedFiles files, CropLibrary library) {
        this.source = source;
        this.files = files;
        this.crops = new CropReader(library);
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

    static Reading read(Path path, CropLibrary library) {
        TextFile file = TextFile.read(path, TextFile.MEBIBYTE);
        if (!file.unreadable().isEmpty()) {
            return new Reading.Unreadable(path.toString(), file.unreadable());
        }
        Source source = new Source(path.toString());
        if (!file.fault().isEmpty()) {
            source.problem(
                    0, 0, "", file.fault(), TextFile.allowed("a TOML file", TextFile.MEBIBYTE), "");
            return new Reading.Faulty(source.problems());
        }
        NamedFiles files = new NamedFiles(path);
        if (!source.parse(file.text())) {
            return new Reading.Faulty(source.problems());
        }
        Scenario scenario = new ScenarioReader(source, files, library).scenario(file.bytes());
        if (source.isFaulty()) {
            return new Reading.Faulty(source.problems());
        }
        return new Reading.Good(scenario, source.settings(), source.notes());
    }

    /** Null when faulty. */
    private Scenario scenario(byte[] bytes) {
        Table root = Table.root(source, ScenarioKeys.TABLE);
        String title = root.text("title");
        LocalDate start = root.date("start");
        int days = days(root);
        Table climateTable = root.child("climate");
        boolean weather = "weather".equals(climateTable.raw("kind"));
        Table placeTable = root.child("place");
        Place place =
                ClimateReader.place(placeTable, weather && !ClimateReader.isInside(climateTable));
        if (!weather) {
            ClimateReader.utcOffsetS(placeTable, place);
        }
        Table lampTable = root.child("lamp");
        Lamp lamp = lampTable.exists() ? LampReader.read(lampTable, start) : Lamp.NONE;
        Climate climate =
                ClimateReader.climate(
                        climateTable,
                        placeTable,
                        place,
                        lampTable.exists() ? lamp : null,
                        files,
                        start,
                        days);
        Liquid water = LiquidReader.water(root.child("water"), Solutions.CURRENT);
        Liquid feed = LiquidReader.feed(root.child("feed"), water, Solutions.CURRENT);
        Table reservoirTables = root.child("reservoir");
        List<Reservoir> reservoirs = reservoirs(reservoirTables);
        List<Tray> trays = trays(root, reservoirTables, reservoirs, feed, lamp, start, days);
        Visits visits = visits(root.child("visits"));
        if (climate instanceof Climate.Inside inside) {
            refuseLampsTwice(inside, lampTable, root.child("tray").named());
        }
        Settings settings = settings(root.child("run"));
        if (source.isFaulty()) {
            return null;
        }
        noteDarkness(climate, trays);
        noteLampsAdded(climate, trays);
        if (climate instanceof Climate.Weather outside) {
            noteRain(outside, trays, days);
        }
        noteIdleReservoirs(reservoirs, trays);
        return new Scenario(
                title,
                start,
                days,
                place,
                climate,
                feed,
                water,
                reservoirs,
                trays,
                visits,
                settings,
                files.digest(bytes));
    }

    private static int days(Table root) {
        double lengthS = root.quantity("length");
        if (Double.isNaN(lengthS)) {
            return 0;
        }
        double days = lengthS / DAY_S;
        if (Math.abs(days - FastMath.rint(days)) > 1e-9) {
            root.faultyValue("length", "whole days", "");
            return 0;
        }
        return (int) FastMath.rint(days);
    }

    private List<Reservoir> reservoirs(Table tables) {
        List<Reservoir> good = new ArrayList<>();
        for (Table table : atMost(tables.named(), tables)) {
            Reservoir reservoir = VesselReader.reservoir(table);
            if (reservoir != null) {
                good.add(reservoir);
            }
        }
        return good;
    }

    private List<Tray> trays(
            Table root,
            Table reservoirTables,
            List<Reservoir> reservoirs,
            Liquid feed,
            Lamp lamp,
            LocalDate start,
            int days) {
        Table tables = root.child("tray");
        List<Tray> good = new ArrayList<>();
        List<Table> named = tables.named();
        if (named.isEmpty() && !source.isExcused("tray")) {
            root.fault("tray", "nothing", "at least one tray", "Maybe add a table [tray.bench].");
        }
        for (Table table : atMost(named, tables)) {
            Tray tray =
                    new TrayReader(table, reservoirTables, reservoirs, crops, files, start, days)
                            .read(feed, lamp);
            if (tray != null) {
                good.add(tray);
            }
        }
        return good;
    }

    private static List<Table> atMost(List<Table> tables, Table parent) {
        if (tables.size() <= MOST_VESSELS) {
            return tables;
        }
        tables.get(MOST_VESSELS)
                .fault("depth", "one more than " + MOST_VESSELS, "up to " + MOST_VESSELS, "");
        return tables.subList(0, MOST_VESSELS);
    }

    private static Visits visits(Table visits) {
        Set<DayOfWeek> weekdays = visits.weekdays("days");
        double atS = visits.clock("at");
        List<Visits.Absence> away = visits.spans("away");
        if (!visits.has("away")) {
            visits.holds("away", "none");
        }
        String flush = visits.choice("flush");
        if (weekdays == null || away == null || flush == null || Double.isNaN(atS)) {
            return null;
        }
        return new Visits(
                weekdays,
                atS,
                away,
                flush.equals("at limit") ? Visits.Flush.AT_LIMIT : Visits.Flush.NEVER);
    }

    private static Settings settings(Table run) {
        double stepS = run.quantity("step");
        return Double.isNaN(stepS) ? null : new Settings(stepS);
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
                        lamp.has("ppfd") ? "ppfd" : lamp.has("watts") ? "watts" : "lux",
                        "a lamp beside the lamps that the weather file records",
                        "one of the two: they would be counted twice",
                        "Maybe take this table out, or the column lamp and light_from.");
            }
        }
    }

    private void noteDarkness(Climate climate, List<Tray> trays) {
        for (Tray tray : trays) {
            boolean sunless =
                    climate instanceof Climate.Room
                            || (climate instanceof Climate.Inside inside
                                    && !inside.air().isSunlit()
                                    && !inside.air().recordsLamps());
            if (sunless
                    && tray.lamp().ppfdUmolPerM2S() == 0
                    && tray.planting() instanceof Planting.OfCrop) {
                source.note(
                        new Note(
                                source.file(),
                                source.line(List.of("tray", tray.name())),
                                "tray." + tray.name(),
                                climate instanceof Climate.Room
                                        ? "no light reaches this tray: a room has no sun, and there is no"
                                                + " lamp over it"
                                        : "no light reaches this tray: the file of inside air has none, and there is no lamp over it"));
            }
        }
    }

    private void noteLampsAdded(Climate climate, List<Tray> trays) {
        boolean adds =
                climate instanceof Climate.Inside inside
                        && inside.air().isSunlit()
                        && trays.stream().anyMatch(tray -> tray.lamp().ppfdUmolPerM2S() > 0);
        if (adds) {
            source.note(
                    new Note(
                            source.file(),
                            source.line(List.of("climate")),
                            "climate",
                            "the light of the file is taken as sun, and the lamps over the trays"
                                    + " are added to it; a sensor that saw them counts them twice"));
        }
    }

    private void noteRain(Climate.Weather climate, List<Tray> trays, int days) {
        Cover.Kind cover = climate.cover().kind();
        double rainM = climate.weather().rainM(days * 24);
        double openM2 = trays.stream().mapToDouble(Tray::openAreaM2).sum();
        if ((cover == Cover.Kind.OPEN || cover == Cover.Kind.SHADE) && rainM > 0) {
            source.note(
                    new Note(
                            source.file(),
                            source.line(List.of("climate")),
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

    private void noteIdleReservoirs(List<Reservoir> reservoirs, List<Tray> trays) {
        for (Reservoir reservoir : reservoirs) {
            boolean used = trays.stream().anyMatch(tray -> tray.isFedBy(reservoir.name()));
            if (!used) {
                source.note(
                        new Note(
                                source.file(),
                                source.line(List.of("reservoir", reservoir.name())),
                                "reservoir." + reservoir.name(),
                                "no valve names this reservoir"));
            }
        }
    }
}
