package tideless.scenario;

import static tideless.scenario.TrayKeys.CROP;
import static tideless.scenario.TrayKeys.CROP_FILE;
import static tideless.scenario.TrayKeys.GROUND;
import static tideless.scenario.TrayKeys.HARVEST;
import static tideless.scenario.TrayKeys.HARVEST_AFTER;
import static tideless.scenario.TrayKeys.HARVEST_WEIGHT;
import static tideless.scenario.TrayKeys.NURSERY_AGE;
import static tideless.scenario.TrayKeys.PLANTS;
import static tideless.scenario.TrayKeys.PLANTS_PER_M2;
import static tideless.scenario.TrayKeys.RESPACING;
import static tideless.scenario.TrayKeys.SOWN;
import static tideless.scenario.TrayKeys.STEMS;
import static tideless.scenario.TrayKeys.STEMS_PER_M2;
import static tideless.scenario.TrayKeys.THINNING;
import static tideless.scenario.TrayKeys.THIRST;
import static tideless.scenario.TrayKeys.THIRST_FILE;
import static tideless.scenario.TrayKeys.THIRST_MODEL;
import static tideless.scenario.TrayKeys.TOPPED;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.apache.commons.math3.util.FastMath;
import tideless.crop.CropTraits;
import tideless.crop.Transplant;
import tideless.physics.Time;
import tideless.rig.Planting;
import tideless.rig.Shape;
import tideless.rig.Tending;
import tideless.rig.Thirst;

/** Reads what grows in a tray. */
final class PlantingReader {
    /** Plants with less than this share of the usual ground are called crowded; assumed. */
    private static final double CROWDED_FRAC = 0.5;

    /** Days between pickings of a crop whose file names none; common practice, no source. */
    private static final double USUAL_DAYS = 7;

    private static final int OLDEST_DAYS = 365;
    private static final String ONE = "one of crop, crop_file, thirst or thirst_file";
    private static final List<Key<String>> CROPS = List.of(CROP, CROP_FILE);

    private final Table tray;
    private final Read<Shape> shape;
    private final CropReader crops;
    private final NamedFiles files;
    private final Run run;
    private final boolean makesRoom;

    /**
     * @param makesRoom whether another crop is set out as this one is cut
     */
    PlantingReader(
            Table tray,
            Read<Shape> shape,
            CropReader crops,
            NamedFiles files,
            Run run,
            boolean makesRoom) {
        this.tray = tray;
        this.shape = shape;
        this.crops = crops;
        this.files = files;
        this.run = run;
        this.makesRoom = makesRoom;
    }

    Read<Planting> read() {
        List<Key<?>> stated = new ArrayList<>();
        boolean misspelt = false;
        for (Key<?> way : List.of(CROP, CROP_FILE, THIRST, THIRST_FILE)) {
            if (tray.has(way)) {
                stated.add(way);
            }
            misspelt |= tray.meant(way) && !tray.has(way);
        }
        if (stated.size() > 1) {
            Key<?> second = stated.get(1);
            // A name beside a measured use is a mere name.
            boolean named =
                    stated.size() == 2
                            && stated.get(0) == CROP
                            && (second == THIRST || second == THIRST_FILE);
            tray.fault(
                    second,
                    Key.quoted(tray.words(second)) + " beside " + stated.get(0).name(),
                    ONE,
                    named ? "A measured thirst takes the place of a crop." : "");
            return Read.faulty();
        }
        if (stated.isEmpty()) {
            if (!misspelt) {
                tray.fault(CROP, "nothing", ONE, "Maybe add crop = \"lettuce\".");
            }
            return Read.faulty();
        }
        for (Key<String> way : CROPS) {
            if (stated.get(0) == way) {
                return ofCrop(way);
            }
        }
        return measured(stated.get(0));
    }

    /** As {@link #read} where nothing but a crop may stand. */
    Read<Planting> readCrop() {
        List<Key<String>> stated = CROPS.stream().filter(tray::has).toList();
        if (stated.size() == 1) {
            return ofCrop(stated.get(0));
        }
        if (stated.size() > 1) {
            tray.fault(
                    CROP_FILE,
                    Key.quoted(tray.words(CROP_FILE)) + " beside crop",
                    "one of crop and crop_file",
                    "");
        } else if (CROPS.stream().noneMatch(tray::meant)) {
            tray.fault(
                    CROP, "nothing", "one of crop and crop_file", "Maybe add crop = \"lettuce\".");
        }
        return Read.faulty();
    }

    private Read<Planting> measured(Key<?> way) {
        for (Key<?> key :
                List.of(
                        PLANTS_PER_M2,
                        STEMS_PER_M2,
                        STEMS,
                        RESPACING,
                        THINNING,
                        TOPPED,
                        SOWN,
                        NURSERY_AGE,
                        GROUND,
                        THIRST_MODEL,
                        HARVEST,
                        HARVEST_AFTER,
                        HARVEST_WEIGHT)) {
            refuseBesideThirst(key.name(), way);
        }
        refuseBesideThirst("transplant", way);
        refuseBesideThirst("leaf_picking", way);
        refuseBesideThirst(CropReader.OVERRIDE, way);
        Read<Integer> plants = tray.getOr(PLANTS, Read.of(0), none -> "0, not stated");
        Read<Thirst> thirst =
                way == THIRST ? tray.get(THIRST).map(Thirst::constant) : thirstFromFile();
        return Read.both(
                plants,
                thirst,
                (count, use) -> new Planting.MeasuredThirst("measured", count, use));
    }

    private void refuseBesideThirst(String name, Key<?> way) {
        if (tray.has(name)) {
            tray.fault(name, tray.words(name) + " beside " + way.name(), "only with a crop", "");
        }
    }

    private Read<Thirst> thirstFromFile() {
        Read<NamedFiles.Named> file =
                files.open(tray, THIRST_FILE, TextFile.MEBIBYTE, "a CSV file");
        return Read.allSound(file, run.start())
                ? ThirstFile.read(
                        file.value(), tray.file(), run.start().value(), run.days().orElse(0))
                : Read.faulty();
    }

    private Read<Planting> ofCrop(Key<String> way) {
        Read<CropTraits> traits = crops.ofTray(tray, way, files);
        Read<Integer> stems = stems(traits);
        Read<Double> deck = shape.map(Shape::rimAreaM2);
        Read<Stand> stand = new StandReader(tray, deck, stems).read();
        Read<Double> ageDays = ageDays(traits);
        Read<Transplant> transplant = TransplantReader.read(tray.child("transplant"));
        Read<Planting.ThirstModel> model = tray.get(THIRST_MODEL);
        Read<OptionalInt> harvest = harvestAfterDays();
        TendingReader tending = new TendingReader(tray, run);
        Read<Optional<Tending.Picking>> picking = picking(traits, tending.picksLeaves());
        Read<OptionalDouble> wanted = harvestFreshG(traits, tending.picksLeaves(), picking);
        Read<Tending> acts = tending.read(traits, stand.map(Stand::plants), deck, picking);
        if (!Read.allSound(
                traits, stems, stand, ageDays, transplant, model, harvest, wanted, acts)) {
            return Read.faulty();
        }
        noteOld(traits.value(), ageDays.value(), transplant.value());
        if (!tending.picksLeaves()) {
            traits.value()
                    .harvest()
                    .groundM2()
                    .ifPresent(usual -> noteCrowd(usual, stand.value(), acts.value()));
        }
        return Read.of(
                new Planting.OfCrop(
                        stems.value() > 1 ? traits.value().onStems(stems.value()) : traits.value(),
                        stand.value().plants(),
                        stand.value().groundM2(),
                        ageDays.value(),
                        transplant.value(),
                        model.value(),
                        harvest.value(),
                        wanted.value(),
                        acts.value()));
    }

    /** Seedlings so many times as old as usual are told; assumed. */
    private static final double OLD_TIMES = 2;

    // What a nursery's own plant does in a cell too small for it nobody has stated, and no run
    // knows.
    private void noteOld(CropTraits crop, double ageDays, Transplant found) {
        double usualDays = crop.nursery().days();
        if (ageDays > OLD_TIMES * usualDays && !found.statesSize()) {
            tray.note(
                    tray.has(NURSERY_AGE) ? NURSERY_AGE : SOWN,
                    "seedlings of %s days, and growers set this crop out at %s: so old in a small cell they are root-bound, and may bolt or stand still, which no run counts; younger ones, or state how large they are ([tray.NAME.transplant])"
                            .formatted(
                                    Measure.plain(Math.floor(ageDays)), Measure.plain(usualDays)));
        }
    }

    // As they stand in the end, thinned and spaced apart.
    private void noteCrowd(double usualM2, Stand stand, Tending tending) {
        Tending.Stand end = tending.madeOf(new Tending.Stand(stand.plants(), stand.groundM2()));
        crowd(end.plants(), end.groundM2(), usualM2)
                .ifPresent(text -> tray.graveNote(tray.has(PLANTS) ? PLANTS : GROUND, text));
    }

    /** What is said of plants that stand too close, or nothing. */
    static Optional<String> crowd(int plants, double groundM2, double usualM2) {
        return plants > 1 && groundM2 / plants < CROWDED_FRAC * usualM2 * (1 - 1e-9)
                ? Optional.of(
                        "%d plants on %s have %s each, and growers give this crop %s: they shade each other and stay small; %d would have room. Is that meant?"
                                .formatted(
                                        plants,
                                        area(groundM2),
                                        area(groundM2 / plants),
                                        area(usualM2),
                                        room(groundM2, usualM2)))
                : Optional.empty();
    }

    /** How many plants have room; a lone one always has. */
    static int room(double groundM2, double usualM2) {
        return (int) Math.max(1, Math.floor(groundM2 / usualM2 + 1e-9));
    }

    private Read<Integer> stems(Read<CropTraits> traits) {
        if (tray.has(STEMS) && traits.holds(crop -> !crop.stages().fruits())) {
            tray.faultyValue(STEMS, "only with a fruit crop", "");
            return Read.faulty();
        }
        return tray.getOr(STEMS, Read.of(1), one -> "1");
    }

    /** An area of a tray in words. */
    static String area(double areaM2) {
        return Measure.plain(areaM2, UnitTable.AREA, areaM2 < 0.1 ? "cm2" : "m2");
    }

    private Read<Double> ageDays(Read<CropTraits> traits) {
        Read<LocalDate> sown = tray.get(SOWN);
        if (sown.isAbsent()) {
            return tray.getOr(
                            NURSERY_AGE,
                            traits.map(crop -> crop.nursery().days() * Time.DAY_S),
                            ageS -> Measure.plain(ageS / Time.DAY_S) + " days, as usual")
                    .map(ageS -> ageS / Time.DAY_S);
        }
        if (tray.has(NURSERY_AGE)) {
            tray.faultyValue(NURSERY_AGE, "either sown or nursery_age", "");
            return Read.faulty();
        }
        Read<Double> age =
                Read.both(
                        sown,
                        run.start(),
                        (from, to) -> (double) ChronoUnit.DAYS.between(from, to));
        if (age.holds(days -> days < 0 || days > OLDEST_DAYS)) {
            tray.faultyValue(
                    SOWN, "a day up to 365 days before the start, " + run.start().value(), "");
            return Read.faulty();
        }
        return age;
    }

    /** How leaves are taken as they grow; empty where the crop is cut once, or picked by date. */
    private Read<Optional<Tending.Picking>> picking(Read<CropTraits> traits, boolean isDated) {
        Read<String> stated = tray.get(HARVEST);
        if (stated.isFaulty()) {
            return Read.faulty();
        }
        if (stated.isSound() && traits.holds(crop -> crop.stages().fruits())) {
            tray.faultyValue(HARVEST, "only with a leaf crop", "Fruit is picked as it ripens.");
            return Read.faulty();
        }
        if (isDated && stated.holds(TrayKeys.ONCE::equals)) {
            tray.faultyValue(
                    HARVEST, "leaf_picking or harvest = \"once\"", "State one of the two.");
            return Read.faulty();
        }
        boolean once =
                isDated
                        || (stated.isSound()
                                ? stated.value().equals(TrayKeys.ONCE)
                                : makesRoom || tray.has(HARVEST_AFTER) || tray.has(HARVEST_WEIGHT));
        Read<Optional<Tending.Picking>> picking =
                traits.map(crop -> once ? Optional.empty() : asUsed(crop, stated.isSound()));
        if (picking.isSound() && stated.isAbsent()) {
            tray.holds(HARVEST, isDated ? "leaf_picking decides" : told(picking.value()));
        }
        return picking;
    }

    /**
     * @param wanted whether the scenario asks for it, whatever the crop's use is
     */
    private static Optional<Tending.Picking> asUsed(CropTraits crop, boolean wanted) {
        OptionalDouble everyDays = crop.harvest().pickedEveryDays();
        return crop.stages().fruits() || everyDays.isEmpty() && !wanted
                ? Optional.empty()
                : Optional.of(
                        new Tending.Picking(
                                (int) Math.max(1, FastMath.round(everyDays.orElse(USUAL_DAYS))),
                                crop.harvest().pickedShareFrac()));
    }

    private static String told(Optional<Tending.Picking> picking) {
        return picking.map(
                        one ->
                                "picked, %s of the leaf every %d days"
                                        .formatted(
                                                Measure.plain(100 * one.shareFrac()) + " %",
                                                one.everyDays()))
                .orElse(TrayKeys.ONCE);
    }

    /** Fresh weight of a plant to wait for, g; empty where the stage alone decides. */
    private Read<OptionalDouble> harvestFreshG(
            Read<CropTraits> traits, boolean isPicked, Read<Optional<Tending.Picking>> asItGrows) {
        if (tray.has(HARVEST_WEIGHT) && isPicked) {
            tray.faultyValue(
                    HARVEST_WEIGHT,
                    "leaf_picking or harvest_weight",
                    "Plants that are picked leaf by leaf stand until they bolt or to"
                            + " harvest_after.");
            return Read.faulty();
        }
        if (tray.has(HARVEST_WEIGHT) && tray.has(HARVEST_AFTER)) {
            tray.faultyValue(
                    HARVEST_WEIGHT, "harvest_after or harvest_weight", "State one of the two.");
            return Read.faulty();
        }
        if (tray.has(HARVEST_WEIGHT) && traits.holds(crop -> crop.stages().fruits())) {
            tray.faultyValue(
                    HARVEST_WEIGHT, "only with a leaf crop", "Fruit is picked as it ripens.");
            return Read.faulty();
        }
        if (tray.has(HARVEST_WEIGHT)) {
            return tray.get(HARVEST_WEIGHT).map(OptionalDouble::of);
        }
        tray.holds(
                HARVEST_WEIGHT,
                isPicked
                        ? "none: leaves are picked"
                        : tray.has(HARVEST_AFTER)
                                ? "none: harvest_after decides"
                                : "the crop's own");
        return isPicked
                ? Read.of(OptionalDouble.empty())
                : traits.map(
                        crop ->
                                asItGrows.holds(Optional::isPresent)
                                                && crop.harvest().pickedFromG().isPresent()
                                        ? crop.harvest().pickedFromG()
                                        : crop.harvest().freshG());
    }

    /** Empty for the crop's own ripeness. */
    private Read<OptionalInt> harvestAfterDays() {
        Read<Double> afterS = tray.get(HARVEST_AFTER);
        if (afterS.isAbsent()) {
            tray.holds(HARVEST_AFTER, "when the crop is ripe");
            return Read.of(OptionalInt.empty());
        }
        Read<Integer> after = afterS.map(s -> (int) FastMath.round(s / Time.DAY_S));
        if (after.holds(day -> run.days().holds(days -> day > days))) {
            tray.note(
                    HARVEST_AFTER,
                    "the harvest on day %s comes after the run ends on day %s"
                            .formatted(after.value(), run.days().value()));
        }
        return after.map(OptionalInt::of);
    }
}
