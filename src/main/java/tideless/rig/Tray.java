package tideless.rig;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.function.UnaryOperator;

/**
 * A tray: a shallow vessel under an opaque deck from which the plants hang.
 *
 * <p>All heights are above the tray's own inside floor, except {@code floorAboveBenchM}.
 *
 * @param name the user's name for it
 * @param shape its inside, from the floor to the rim
 * @param overflowM level at which solution runs out over an overflow hole or the rim, m
 * @param overflowBoreM bore of the hole whose lower edge, or of the standpipe whose mouth, lies
 *     there, m; empty when none is stated, as where it is the rim
 * @param cupBottomM height of the net cups' underside, m
 * @param floorAboveBenchM height of its floor above the bench, m
 * @param openAreaM2 water surface open to the room through gaps of the deck, m2
 * @param startLevelM level when the run starts, m
 * @param startLiquid what it is filled with at the start
 * @param planting what grows in it at first
 * @param filling how it gets its solution
 * @param lamp the lamp over it
 * @param limits bands its solution must keep
 * @param deck how the plants hang over the solution
 * @param next crops that follow in it, in their order; only after a crop
 */
@RecordBuilder
public record Tray(
        String name,
        Shape shape,
        double overflowM,
        OptionalDouble overflowBoreM,
        double cupBottomM,
        double floorAboveBenchM,
        double openAreaM2,
        double startLevelM,
        Liquid startLiquid,
        Planting planting,
        Filling filling,
        Lamp lamp,
        Limits limits,
        Deck deck,
        List<NextPlanting> next)
        implements TrayBuilder.With {
    /** Wet depth of a cup at first, m; Kratky (2010), CTAHR VC-1. */
    public static final double CUP_WET_M = 0.013;

    /**
     * Wet deeper than this for good a cup is under water, m: more than twice what growers wet it
     * by; assumed.
     */
    public static final double CUP_DEEP_M = 0.03;

    public Tray {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(shape, "shape");
        Objects.requireNonNull(overflowBoreM, "overflowBoreM");
        Objects.requireNonNull(startLiquid, "startLiquid");
        Objects.requireNonNull(planting, "planting");
        Objects.requireNonNull(filling, "filling");
        Objects.requireNonNull(lamp, "lamp");
        Objects.requireNonNull(limits, "limits");
        Objects.requireNonNull(deck, "deck");
        next = List.copyOf(next);
        if (!next.isEmpty() && !(planting instanceof Planting.OfCrop)) {
            throw new IllegalArgumentException("crops follow a crop alone, not a measured thirst");
        }
        if (!(overflowM > 0 && overflowM <= shape.depthM())) {
            throw new IllegalArgumentException(
                    "overflowM must lie in (0, depth], was " + overflowM);
        }
        if (overflowBoreM.isPresent()) {
            double boreM = overflowBoreM.getAsDouble();
            if (!(boreM > 0 && overflowM + boreM <= shape.depthM() + 1e-9)) {
                throw new IllegalArgumentException(
                        "overflowBoreM must lie in (0, depth - overflowM], was " + boreM);
            }
        }
        if (!(cupBottomM >= 0)) {
            throw new IllegalArgumentException("cupBottomM must be at least 0, was " + cupBottomM);
        }
        if (!(startLevelM >= 0 && startLevelM <= overflowM)) {
            throw new IllegalArgumentException(
                    "startLevelM must lie in [0, overflowM], was " + startLevelM);
        }
        if (!(openAreaM2 >= 0)) {
            throw new IllegalArgumentException("openAreaM2 must be at least 0, was " + openAreaM2);
        }
    }

    /** Which vessel of the rig it is. */
    public VesselId id() {
        return VesselId.tray(name);
    }

    /** Whether a float valve fills it from the reservoir of that name. */
    public boolean isFedBy(String reservoir) {
        return filling instanceof Filling.ByValve valve && valve.reservoir().equals(reservoir);
    }

    /** How many crops it has, one after the other. */
    public int plantings() {
        return 1 + next.size();
    }

    /** What one of its crops is called where it has several, counted from 0; else empty. */
    public String cropOf(int number) {
        return next.isEmpty() ? "" : planted(number).planting().cropName();
    }

    /**
     * The same as it is planted with one of its crops: with that crop, its limits and its level.
     *
     * @param number which, counted from 0
     */
    public Tray planted(int number) {
        if (number == 0) {
            return this;
        }
        NextPlanting now = next.get(number - 1);
        return withPlanting(now.crop()).withLimits(now.limits()).withStartLevelM(now.startLevelM());
    }

    /** The same with each of its crops changed; what was measured stays. */
    public Tray withCrops(UnaryOperator<Planting.OfCrop> change) {
        return withPlanting(
                        planting instanceof Planting.OfCrop crop ? change.apply(crop) : planting)
                .withNext(
                        next.stream()
                                .map(then -> then.withCrop(change.apply(then.crop())))
                                .toList());
    }

    /** Level that it is kept at, m: by a valve its lowest, by hand its mark; empty filled once. */
    public OptionalDouble keptLevelM() {
        if (filling instanceof Filling.ByValve valve) {
            double lowestM = valve.settingM();
            for (Filling.Move move : valve.moves()) {
                lowestM = Math.min(lowestM, move.settingM());
            }
            return OptionalDouble.of(lowestM);
        }
        return filling instanceof Filling.ByHand hand
                ? OptionalDouble.of(hand.toLevelM())
                : OptionalDouble.empty();
    }

    /**
     * Whether cups stand under water at a level; a deck that floats holds them as it was made, and
     * is not asked.
     */
    public boolean hasCupsUnder(double levelM) {
        boolean isPlanted = planting instanceof Planting.OfCrop crop && crop.plants() > 0;
        return isPlanted && !deck.floats() && levelM - cupBottomM > CUP_DEEP_M;
    }

    /** Whether they do for good. */
    public boolean keepsCupsUnder() {
        return keptLevelM().isPresent() && hasCupsUnder(keptLevelM().getAsDouble());
    }

    /** Level that wets its cups as they are at first, m; may lie above its overflow. */
    public double wetCupM() {
        return cupBottomM + CUP_WET_M;
    }
}
