package tideless.scenario;

import static tideless.scenario.Measure.plain;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.util.FastMath;
import tideless.crop.CropTraits;
import tideless.crop.Transplant;
import tideless.rig.Displacement;
import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.Limits;
import tideless.rig.Liquid;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.Shape;
import tideless.rig.Thirst;
import tideless.rig.Tray;
import tideless.rig.Tube;
import tideless.rig.ValveFaults;

/** Reads one tray, and finds what cannot be true of it. */
final class TrayReader {
    private static final double DAY_S = 86400;
    private static final String ONE_PLANTING = "one of crop, crop_file, thirst or thirst_file";

    private final Table tray;
    private final Table reservoirs;
    private final List<Reservoir> goodReservoirs;
    private final CropReader crops;
    private final NamedFiles files;
    private final LocalDate start;
    private final int days;

    TrayReader(
            Table tray,
            Table reservoirs,
            List<Reservoir> goodReservoirs,
            CropReader crops,
            NamedFiles files,
            LocalDate start,
            int days) {
        this.tray = tray;
        this.reservoirs = reservoirs;
        this.goodReservoirs = goodReservoirs;
        this.crops = crops;
        this.files = files;
        this.start = start;
        this.days = days;
    }

    /**
     * The tray, or null when it is faulty.
     *
     * @param feed null when faulty
     */
    Tray read(Liquid feed, Lamp lampForAll) {
        Shape shape = VesselReader.shape(tray);
        double depthM = tray.quietly("depth");
        double overflowM = tray.quantityOr("overflow", depthM, rim(depthM));
        double boreM = tray.has("overflow_bore") ? tray.quantity("overflow_bore") : Double.NaN;
        double cupM = tray.quantityOr("cup_bottom", cupDefault(depthM), "5 cm below the rim");
        double floorM = tray.quantity("floor_above_bench");
        double gapM2 = gap(shape);
        boolean heights =
                VesselReader.atMost(tray, "overflow", overflowM, "the rim", "depth", depthM, "");
        if (!VesselReader.below(
                tray,
                "cup_bottom",
                cupM,
                "the deck",
                "depth",
                depthM,
                "The cups hang from the deck into the tray.")) {
            heights = false;
        }
        heights &= overflowBore(boreM, overflowM, depthM);
        Filling filling = filling(overflowM, depthM, floorM);
        double startM = startLevel(filling, overflowM, cupM);
        Planting planting = planting(shape);
        Lamp lamp =
                tray.child("lamp").exists()
                        ? LampReader.read(tray.child("lamp"), start)
                        : lampForAll;
        Limits limits = limits(planting);
        DisplacementReader inside = new DisplacementReader(tray);
        Displacement displacement =
                inside.read(
                        heights ? shape : null, cupM, planting == null ? -1 : planting.plants());
        if (shape == null
                || !heights
                || displacement == null
                || filling == null
                || planting == null
                || limits == null
                || feed == null
                || Double.isNaN(overflowM + cupM + floorM + gapM2 + startM)) {
            return null;
        }
        if (planting instanceof Planting.OfCrop crop && crop.plants() > 0) {
            noteDryCup(startM, cupM);
        }
        return new Tray(
                tray.name(),
                shape.with(displacement),
                overflowM,
                boreM,
                cupM,
                floorM,
                gapM2,
                startM,
                feed,
                planting,
                filling,
                lamp,
                limits);
    }

    /**
     * Wet depth of a cup below which a seedling is called dry, m; a judgement: a valve's level
     * hovers this much below its setting, and a seedling's roots end in its cup (Kratky 2010, CTAHR
     * VC-1, wets about 13 mm).
     */
    private static final double WET_CUP_M = 0.003;

    private void noteDryCup(double startM, double cupM) {
        double wetM = startM - cupM;
        if (!(wetM < WET_CUP_M)) {
            return;
        }
        String at = tray.has("start_level") ? "start_level" : "cup_bottom";
        String where =
                wetM < 0
                        ? "the cups hang %s above the solution at the start; a seedling's roots end"
                                        .formatted(VesselReader.cm(-wetM))
                                + " in its cup and do not reach it yet"
                        : "the cups dip %s into the solution at the start; a seedling's roots end"
                                        .formatted(VesselReader.cm(wetM))
                                + " in its cup, and the least fall leaves them dry";
        tray.note(at, where + "; usual is a cup wet by about 1.3 cm (Kratky 2010)");
    }

    private static String rim(double depthM) {
        return VesselReader.cm(depthM) + ", the rim";
    }

    /** False when the hole is faulty; what is not stated is not. */
    private boolean overflowBore(double boreM, double overflowM, double depthM) {
        if (Double.isNaN(boreM)) {
            return !tray.has("overflow_bore");
        }
        if (overflowM + boreM > depthM + 1e-9) {
            tray.faultyValue(
                    "overflow_bore",
                    "up to %s, from the overflow (%s) to the rim (%s)"
                            .formatted(
                                    VesselReader.cm(Math.max(0, depthM - overflowM)),
                                    VesselReader.where(tray, "overflow", overflowM),
                                    VesselReader.where(tray, "depth", depthM)),
                    "Maybe lower the overflow. Of a wider standpipe state that much: it passes more.");
            return false;
        }
        return true;
    }

    private static double cupDefault(double depthM) {
        return Math.max(0, depthM - 0.05);
    }

    private double gap(Shape shape) {
        Measure.Read gap = tray.measure("gap");
        if (!gap.good() || shape == null) {
            return Double.NaN;
        }
        double deckM2 = shape.rimAreaM2();
        double gapM2 = gap.table() == UnitTable.AREA ? gap.value() : gap.value() * deckM2;
        if (gapM2 > deckM2) {
            tray.faultyValue("gap", "up to the deck itself (%s)".formatted(area(deckM2)), "");
            return Double.NaN;
        }
        return gapM2;
    }

    private static String area(double areaM2) {
        return plain(areaM2, UnitTable.AREA, areaM2 < 0.1 ? "cm2" : "m2");
    }

    // How it gets its solution.

    private Filling filling(double overflowM, double depthM, double floorM) {
        boolean valve = tray.meant("valve");
        boolean hand = tray.meant("hand");
        String kind;
        if (tray.meant("filling")) {
            kind = tray.choice("filling");
        } else {
            kind = valve ? "valve" : hand ? "hand" : "sealed";
            tray.holds("filling", kind);
        }
        if (kind == null) {
            return null;
        }
        for (String other : new String[] {"valve", "hand"}) {
            if (!other.equals(kind) && tray.has(other)) {
                tray.fault(
                        other,
                        "a table beside filling = " + Key.quoted(kind),
                        "one way of filling",
                        "");
            }
        }
        return switch (kind) {
            case "valve" -> valve(tray.child("valve"), overflowM, depthM, floorM);
            case "hand" -> hand(tray.child("hand"), overflowM);
            case "sealed" -> new Filling.Sealed();
            default -> throw new AssertionError("no filling for " + kind);
        };
    }

    private Filling valve(Table valve, double overflowM, double depthM, double floorM) {
        String from = reservoirName(valve);
        double settingM = valve.quantity("setting");
        double bandM = valve.quantity("band");
        Boolean snap = valve.flag("snap");
        double seatM = valve.quantity("seat");
        double coefficient = valve.quantity("discharge_coefficient");
        double seatHeightM = valve.quantityOr("seat_height", depthM, rim(depthM));
        Tube branch = VesselReader.tube(valve.child("tubing"), Fitting.TEE_BRANCH);
        boolean good = true;
        if (settingM >= depthM) {
            valve.fault(
                    "setting",
                    Key.quoted(valve.words("setting")),
                    "below the deck (%s)".formatted(VesselReader.where(tray, "depth", depthM)),
                    "Maybe lower the valve; the deck lies on the rim.");
            good = false;
        } else if (settingM >= overflowM) {
            valve.fault(
                    "setting",
                    Key.quoted(valve.words("setting")),
                    "below the overflow (%s)"
                            .formatted(VesselReader.where(tray, "overflow", overflowM)),
                    "Maybe lower the valve or raise the overflow.");
            good = false;
        }
        if (bandM > settingM) {
            valve.fault(
                    "band",
                    VesselReader.found(valve, "band", bandM),
                    "up to the setting (%s)"
                            .formatted(VesselReader.where(valve, "setting", settingM)),
                    "");
            good = false;
        }
        Reservoir reservoir = reservoir(from);
        if (reservoir != null && good) {
            good = checkHead(valve, reservoir, settingM, seatHeightM, floorM);
        }
        ValveReader more = new ValveReader(valve, start, days);
        ValveFaults faults = more.faults();
        good &= faults != null;
        double highestM =
                reservoir == null
                        ? Double.NaN
                        : reservoir.floorAboveBenchM() + reservoir.fullLevelM() - floorM;
        good &= more.shuts(highestM - seatHeightM, seatM);
        if (seatHeightM < settingM) {
            valve.note(
                    "seat_height",
                    "the feed enters below the setting: without an air gap a line can draw solution"
                            + " back; the run takes it that a check valve prevents that");
        }
        if (from == null
                || snap == null
                || branch == null
                || !good
                || Double.isNaN(settingM + bandM + seatM + coefficient + seatHeightM)) {
            return null;
        }
        return new Filling.ByValve(
                from, settingM, bandM, snap, seatM, coefficient, seatHeightM, branch, faults);
    }

    private Reservoir reservoir(String name) {
        for (Reservoir one : goodReservoirs) {
            if (one.name().equals(name)) {
                return one;
            }
        }
        return null;
    }

    private String reservoirName(Table valve) {
        List<String> names = new ArrayList<>();
        for (Table one : reservoirs.named()) {
            names.add(one.name());
        }
        String written = valve.text("from");
        if (reservoirs.source().isExcused("reservoir")) {
            return null; // misspelt as a whole, which has been said
        }
        if (valve.meant("from")) {
            if (written == null || names.contains(written)) {
                return written;
            }
            String meant = KeyTable.nearest(written, names);
            valve.faultyValue(
                    "from",
                    names.isEmpty()
                            ? "the name of a reservoir; there is none"
                            : String.join(", ", names.stream().map(Key::quoted).toList()),
                    meant.isEmpty() ? "" : "Did you mean " + Key.quoted(meant) + "?");
            return null;
        }
        if (names.size() == 1) {
            valve.holds("from", names.get(0) + ", the only reservoir");
            return names.get(0);
        }
        valve.fault(
                "from",
                "nothing",
                names.isEmpty()
                        ? "the name of a reservoir; there is none"
                        : String.join(", ", names.stream().map(Key::quoted).toList()),
                names.isEmpty() ? "Maybe add a table [reservoir.shelf]." : "");
        return null;
    }

    /** Gravity feeds only downhill. */
    private boolean checkHead(
            Table valve, Reservoir reservoir, double settingM, double seatHeightM, double floorM) {
        double outletM = reservoir.floorAboveBenchM() + reservoir.outletLevelM();
        double levelM = floorM + settingM;
        if (outletM < levelM - 1e-9) {
            valve.fault(
                    "setting",
                    "%s, which is %s above the bench"
                            .formatted(Key.quoted(valve.words("setting")), VesselReader.cm(levelM)),
                    "below the outlet of reservoir %s (%s above the bench)"
                            .formatted(Key.quoted(reservoir.name()), VesselReader.cm(outletM)),
                    "Nothing flows uphill: maybe raise the reservoir's floor_above_bench.");
            return false;
        }
        double seatM = floorM + seatHeightM;
        double fullM = reservoir.floorAboveBenchM() + reservoir.fullLevelM();
        if (fullM <= seatM) {
            valve.fault(
                    "seat_height",
                    "a feed that enters %s above the bench".formatted(VesselReader.cm(seatM)),
                    "below the full line of reservoir %s (%s above the bench)"
                            .formatted(Key.quoted(reservoir.name()), VesselReader.cm(fullM)),
                    "Nothing flows uphill: maybe raise the reservoir's floor_above_bench.");
            return false;
        }
        if (outletM < seatM) {
            valve.note(
                    "seat_height",
                    "the seat lies %s above the outlet of reservoir \"%s\": the last of it cannot flow"
                            .formatted(VesselReader.cm(seatM - outletM), reservoir.name()));
        }
        return true;
    }

    private Filling hand(Table hand, double overflowM) {
        double toM = hand.quantity("to");
        List<LocalDate> on = hand.dates("days");
        String with = hand.choice("with");
        if (!hand.has("days")) {
            hand.holds("days", "every visit");
        }
        if (toM > overflowM + 1e-9) {
            hand.faultyValue(
                    "to",
                    "up to the overflow (%s)"
                            .formatted(VesselReader.where(tray, "overflow", overflowM)),
                    "");
            return null;
        }
        return on == null || with == null || Double.isNaN(toM)
                ? null
                : new Filling.ByHand(toM, on, with.equals("water"));
    }

    private double startLevel(Filling filling, double overflowM, double cupM) {
        if (!tray.meant("start_level")) {
            double level;
            String why;
            if (filling instanceof Filling.ByValve valve) {
                level = valve.settingM();
                why = "the valve's setting";
            } else if (filling instanceof Filling.ByHand hand) {
                level = hand.toLevelM();
                why = "the level topped up to";
            } else if (filling instanceof Filling.Sealed) {
                // Kratky (2010), CTAHR VC-1: about 1.3 cm of the cup wet at first.
                level = Math.min(overflowM, cupM + 0.013);
                why = "1.3 cm above the cups' underside";
            } else {
                return Double.NaN; // the filling is faulty, which has been said
            }
            tray.holds("start_level", VesselReader.cm(level) + ", " + why);
            return Math.min(level, overflowM);
        }
        double startM = tray.quantityOr("start_level", Double.NaN, "");
        return VesselReader.atMost(
                        tray, "start_level", startM, "the overflow", "overflow", overflowM, "")
                ? startM
                : Double.NaN;
    }

    // What grows in it.

    private Planting planting(Shape shape) {
        List<String> stated = new ArrayList<>();
        for (String way : new String[] {"crop", "crop_file", "thirst", "thirst_file"}) {
            if (tray.has(way)) {
                stated.add(way);
            }
        }
        boolean misspelt =
                tray.source().isExcused(tray.full("crop"))
                        || tray.source().isExcused(tray.full("crop_file"))
                        || tray.source().isExcused(tray.full("thirst"))
                        || tray.source().isExcused(tray.full("thirst_file"));
        if (stated.size() > 1) {
            // A name beside a measured use is a mere name.
            boolean named =
                    stated.size() == 2
                            && stated.get(0).equals("crop")
                            && stated.get(1).startsWith("thirst");
            String second = stated.get(1);
            tray.fault(
                    second,
                    Key.quoted(tray.words(second)) + " beside " + stated.get(0),
                    ONE_PLANTING,
                    named ? "A measured thirst takes the place of a crop." : "");
            return null;
        }
        if (stated.isEmpty()) {
            if (!misspelt) {
                tray.fault("crop", "nothing", ONE_PLANTING, "Maybe add crop = \"lettuce\".");
            }
            return null;
        }
        return stated.get(0).startsWith("crop")
                ? ofCrop(stated.get(0), shape)
                : measured(stated.get(0));
    }

    private Planting measured(String way) {
        for (String key :
                new String[] {
                    "sown",
                    "nursery_age",
                    "transplant",
                    "ground",
                    "thirst_model",
                    "harvest_after",
                    CropReader.OVERRIDE
                }) {
            if (tray.has(key)) {
                tray.fault(key, tray.words(key) + " beside " + way, "only with a crop", "");
            }
        }
        int plants = 0;
        if (tray.has("plants")) {
            plants = tray.count("plants");
        } else {
            tray.holds("plants", "0, not stated");
        }
        Thirst thirst = null;
        if (way.equals("thirst")) {
            double use = tray.quantity("thirst");
            thirst = Double.isNaN(use) ? null : Thirst.constant(use);
        } else {
            NamedFiles.Named file =
                    files.open(tray, "thirst_file", TextFile.MEBIBYTE, "a CSV file");
            thirst =
                    file == null || start == null
                            ? null
                            : ThirstFile.read(file, tray.source(), start, days);
        }
        return thirst == null || plants < 0
                ? null
                : new Planting.MeasuredThirst("measured", plants, thirst);
    }

    private Planting ofCrop(String way, Shape shape) {
        CropTraits traits = crops.ofTray(tray, way, files);
        int plants = -1;
        if (tray.meant("plants")) {
            plants = tray.has("plants") ? tray.count("plants") : -1;
        } else {
            tray.missing("plants");
        }
        double age = age(traits);
        Transplant transplant = transplant(tray.child("transplant"));
        double deckM2 = shape == null ? Double.NaN : shape.rimAreaM2();
        double groundM2 = tray.quantityOr("ground", deckM2, area(deckM2) + ", the deck");
        if (groundM2 < deckM2 * (1 - 1e-9)) {
            tray.faultyValue(
                    "ground",
                    "at least the deck (%s)".formatted(area(deckM2)),
                    "Plants that do not use the whole deck still have it.");
            groundM2 = Double.NaN;
        }
        String model = tray.choice("thirst_model");
        int harvest = harvestAfter();
        if (traits == null
                || plants < 0
                || model == null
                || transplant == null
                || harvest < -1
                || Double.isNaN(age + groundM2)) {
            return null;
        }
        return new Planting.OfCrop(
                traits, plants, groundM2, age, transplant, ThirstModels.named(model), harvest);
    }

    /** The young plant as it was found; null when faulty. */
    private static Transplant transplant(Table young) {
        double[] found = new double[5];
        String[] keys = {"leaves", "leaf_area", "fresh", "height", "root_length"};
        for (int i = 0; i < keys.length; i++) {
            found[i] = young.has(keys[i]) ? young.quantity(keys[i]) : Double.NaN;
            if (young.has(keys[i]) && Double.isNaN(found[i])) {
                return null;
            }
        }
        return new Transplant(found[0], found[1], found[2], found[3], found[4]);
    }

    private double age(CropTraits traits) {
        if (tray.has("sown")) {
            LocalDate sown = tray.date("sown");
            if (tray.has("nursery_age")) {
                tray.faultyValue("nursery_age", "either sown or nursery_age", "");
                return Double.NaN;
            }
            if (sown == null || start == null) {
                return Double.NaN;
            }
            long age = ChronoUnit.DAYS.between(sown, start);
            if (age < 0 || age > 365) {
                tray.faultyValue("sown", "a day up to 365 days before the start, " + start, "");
                return Double.NaN;
            }
            return age;
        }
        double usual = traits == null ? 14 : traits.nursery().days();
        return tray.quantityOr("nursery_age", usual * DAY_S, plain(usual) + " days, as usual")
                / DAY_S;
    }

    /** Days; -1 for the crop's own ripeness; below that when faulty. */
    private int harvestAfter() {
        if (!tray.meant("harvest_after")) {
            tray.holds("harvest_after", "when the crop is ripe");
            return -1;
        }
        double afterS = tray.quantityOr("harvest_after", Double.NaN, "");
        if (Double.isNaN(afterS)) {
            return -2;
        }
        int after = (int) FastMath.round(afterS / DAY_S);
        if (after > days && days > 0) {
            tray.note(
                    "harvest_after",
                    "the harvest on day %s comes after the run ends on day %s"
                            .formatted(after, days));
        }
        return after;
    }

    // Bands.

    /** Loss of growth at which salt is harm, share; assumed. */
    private static final double HARMFUL_LOSS_FRAC = 0.05;

    /**
     * The EC of a loss that counts, or the upper end of the band it is fed in where that is more.
     */
    private static double highMsPerCm(Planting.OfCrop crop) {
        double harm = crop.traits().salinity().lossMsPerCm(HARMFUL_LOSS_FRAC);
        return Math.max(crop.traits().needs().ecHighMsPerCm(), 0.1 * FastMath.round(10 * harm));
    }

    private Limits limits(Planting planting) {
        Table limits = tray.child("limits");
        CropTraits.Needs needs =
                planting instanceof Planting.OfCrop crop ? crop.traits().needs() : null;
        String whose = needs == null ? ", common practice" : ", the crop's own";
        // For measured thirst, common practice, no source.
        double ecLow =
                band(limits, "ec_low", needs == null ? 0 : needs.ecLowMsPerCm(), " mS/cm" + whose);
        double ecHigh =
                band(
                        limits,
                        "ec_high",
                        needs == null ? 4 : highMsPerCm((Planting.OfCrop) planting),
                        needs == null
                                ? " mS/cm" + whose
                                : " mS/cm, where salt costs 5 % of growth");
        double phLow = band(limits, "ph_low", needs == null ? 5 : needs.phLow(), whose);
        double phHigh = band(limits, "ph_high", needs == null ? 7 : needs.phHigh(), whose);
        double sodium =
                band(
                        limits,
                        "sodium_high",
                        needs == null ? 10 : needs.sodiumHighMolPerM3(),
                        " mmol/L" + whose);
        double chloride =
                band(
                        limits,
                        "chloride_high",
                        needs == null ? 10 : needs.chlorideHighMolPerM3(),
                        " mmol/L" + whose);
        boolean good = rises(limits, "ec_low", ecLow, "ec_high", ecHigh);
        good &= rises(limits, "ph_low", phLow, "ph_high", phHigh);
        return !good || Double.isNaN(ecLow + ecHigh + phLow + phHigh + sodium + chloride)
                ? null
                : new Limits(ecLow, ecHigh, phLow, phHigh, sodium, chloride);
    }

    private static double band(Table limits, String key, double usual, String words) {
        return limits.quantityOr(key, usual, plain(usual) + words);
    }

    private static boolean rises(
            Table limits, String low, double lowest, String high, double highest) {
        if (lowest >= highest) {
            String key = limits.has(high) ? high : low;
            limits.faultyValue(key, "%s below %s".formatted(low, high), "");
            return false;
        }
        return true;
    }
}
