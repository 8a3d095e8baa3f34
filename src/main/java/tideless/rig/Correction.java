package tideless.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * What a grower's own rig and plants do otherwise than stated, as their readings say.
 *
 * @param crops by the crop's name
 * @param feed strength of the feed over the stated one
 * @param gaps open water over the stated one
 * @param meter EC the meter shows over the true one
 * @param valveM by tray: how much higher its valve shuts than stated, m
 * @param litres by reservoir: litres of a centimetre over those stated
 * @param leakM3PerS by reservoir: what runs out where nothing drinks it, m3/s
 * @param left by what was corrected, in the words of {@link #name}: share of the doubt before that
 *     is left
 */
public record Correction(
        Map<String, OfCrop> crops,
        double feed,
        double gaps,
        double meter,
        Map<String, Double> valveM,
        Map<String, Double> litres,
        Map<String, Double> leakM3PerS,
        Map<String, Double> left) {
    public static final String THIRST = "thirst";
    public static final String GROWTH = "growth";
    public static final String UPTAKE = "uptake";
    public static final String SIZE = "size";
    public static final String FEED = "feed";
    public static final String GAPS = "gaps";
    public static final String METER = "meter";
    public static final String VALVE = "valve";
    public static final String LITRES = "litres";
    public static final String LEAK = "leak";

    /** Everything as stated. */
    public static final Correction NONE =
            new Correction(Map.of(), 1, 1, 1, Map.of(), Map.of(), Map.of(), Map.of());

    /**
     * Of the plants of a crop.
     *
     * @param thirst over the library's
     * @param growth dry matter from light over the library's
     * @param uptake nutrients in the tissue over the library's
     * @param size of the young plants when they are set out over what was stated
     */
    public record OfCrop(double thirst, double growth, double uptake, double size) {
        /** As the library has it. */
        public static final OfCrop NONE = new OfCrop(1, 1, 1, 1);

        public OfCrop {
            requirePositive(thirst);
            requirePositive(growth);
            requirePositive(uptake);
            requirePositive(size);
        }
    }

    public Correction {
        crops = Map.copyOf(crops);
        valveM = Map.copyOf(valveM);
        litres = Map.copyOf(litres);
        leakM3PerS = Map.copyOf(leakM3PerS);
        left = Map.copyOf(left);
        requirePositive(feed);
        requirePositive(gaps);
        requirePositive(meter);
        litres.values().forEach(Correction::requirePositive);
    }

    private static void requirePositive(double share) {
        if (!(share > 0 && share < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("a share must be above 0, was " + share);
        }
    }

    /** How {@link #left} calls something of a crop, a tray or a reservoir, as "thirst basil". */
    public static String name(String what, String of) {
        return of.isEmpty() ? what : what + " " + of;
    }

    /** Share of the doubt before that is left, 0-1; 1 where nothing was learned. */
    public double left(String what, String of) {
        return left.getOrDefault(name(what, of), 1.0);
    }

    /** Of the plants of a crop. */
    public OfCrop of(String cropName) {
        return crops.getOrDefault(cropName, OfCrop.NONE);
    }

    /** What runs out of a reservoir where nothing drinks it, m3/s. */
    public double leakM3PerS(String reservoir) {
        return leakM3PerS.getOrDefault(reservoir, 0.0);
    }

    /**
     * A scenario as corrected. Thirst, meter and leaks, which no part of a scenario states, are
     * read by the run from the correction itself.
     */
    public Scenario applied(Scenario scenario) {
        Objects.requireNonNull(scenario, "scenario");
        List<Tray> trays = new ArrayList<>();
        for (Tray tray : scenario.trays()) {
            trays.add(
                    tray.withCrops(this::corrected)
                            .withFilling(filling(tray))
                            .withOpenAreaM2(gaps * tray.openAreaM2()));
        }
        List<Reservoir> reservoirs = new ArrayList<>();
        for (Reservoir reservoir : scenario.reservoirs()) {
            double times = litres.getOrDefault(reservoir.name(), 1.0);
            reservoirs.add(times == 1 ? reservoir : reservoir.holding(times));
        }
        return scenario.withReservoirs(reservoirs)
                .withTrays(trays)
                .withFeeds(mixed -> feed == 1 ? mixed : mixed.times(feed))
                .withCorrection(this);
    }

    private Planting.OfCrop corrected(Planting.OfCrop crop) {
        OfCrop own = of(crop.cropName());
        Planting.OfCrop sized =
                own.size() != 1 ? crop.withTransplant(crop.transplant().times(own.size())) : crop;
        return own.growth() != 1 || own.uptake() != 1
                ? sized.withTraits(crop.traits().times(own.growth(), 1, own.uptake(), 1))
                : sized;
    }

    private Filling filling(Tray tray) {
        double shiftM = valveM.getOrDefault(tray.name(), 0.0);
        return shiftM != 0 && tray.filling() instanceof Filling.ByValve valve
                ? valve.shifted(shiftM, tray.overflowM())
                : tray.filling();
    }
}
