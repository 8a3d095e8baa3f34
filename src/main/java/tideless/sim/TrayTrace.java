package tideless.sim;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import tideless.rig.Tray;
import tideless.solution.Composition;

/**
 * One tray over a run. States hold at the end of each hour; flows are totals over the hour.
 *
 * @param tray what it is
 * @param series one for each {@link TraySeries}
 * @param componentMol a series for each {@link tideless.solution.Component}, mol in the tray
 * @param uptakeMol a series for each of them, mol the plants have taken up since the start
 * @param broughtMol likewise, what came in: through the valve, poured, or found by a reading
 * @param lostMol likewise, what left it beside uptake: spilt, drained, dried or fallen out
 * @param lost what its root zone took of each crop that was set out, in their order; empty of a
 *     measured thirst
 */
public record TrayTrace(
        Tray tray,
        Map<TraySeries, Series> series,
        List<Series> componentMol,
        List<Series> uptakeMol,
        List<Series> broughtMol,
        List<Series> lostMol,
        List<GrowthLost> lost) {

    public TrayTrace {
        for (TraySeries kind : TraySeries.values()) {
            if (series.get(kind) == null) {
                throw new IllegalArgumentException("no series of " + kind);
            }
        }
        series = Collections.unmodifiableMap(new EnumMap<>(series));
        componentMol = List.copyOf(componentMol);
        uptakeMol = List.copyOf(uptakeMol);
        broughtMol = List.copyOf(broughtMol);
        lostMol = List.copyOf(lostMol);
        lost = List.copyOf(lost);
    }

    /** One series. */
    public Series of(TraySeries kind) {
        return series.get(kind);
    }

    /** {@link TraySeries#LEVEL}. */
    public Series levelM() {
        return of(TraySeries.LEVEL);
    }

    /** {@link TraySeries#VOLUME}. */
    public Series volumeM3() {
        return of(TraySeries.VOLUME);
    }

    /** {@link TraySeries#SOLUTION_TEMP}. */
    public Series solutionTempC() {
        return of(TraySeries.SOLUTION_TEMP);
    }

    /** {@link TraySeries#THIRST}. */
    public Series thirstM3() {
        return of(TraySeries.THIRST);
    }

    /** {@link TraySeries#TRANSPIRATION}. */
    public Series transpirationM3() {
        return of(TraySeries.TRANSPIRATION);
    }

    /** {@link TraySeries#EVAPORATION}. */
    public Series evaporationM3() {
        return of(TraySeries.EVAPORATION);
    }

    /** {@link TraySeries#INFLOW}. */
    public Series inflowM3() {
        return of(TraySeries.INFLOW);
    }

    /** {@link TraySeries#SPILL}. */
    public Series spillM3() {
        return of(TraySeries.SPILL);
    }

    /** {@link TraySeries#PPFD}. */
    public Series ppfdUmolPerM2S() {
        return of(TraySeries.PPFD);
    }

    /** {@link TraySeries#LIGHT}. */
    public Series lightMolPerM2() {
        return of(TraySeries.LIGHT);
    }

    /** {@link TraySeries#LEAF_AREA_INDEX}. */
    public Series leafAreaIndex() {
        return of(TraySeries.LEAF_AREA_INDEX);
    }

    /** {@link TraySeries#FRESH_MASS}. */
    public Series freshG() {
        return of(TraySeries.FRESH_MASS);
    }

    /** {@link TraySeries#FRUIT_FRESH_MASS}. */
    public Series fruitFreshG() {
        return of(TraySeries.FRUIT_FRESH_MASS);
    }

    /** {@link TraySeries#ROOT_TIP}. */
    public Series rootTipM() {
        return of(TraySeries.ROOT_TIP);
    }

    /** {@link TraySeries#WET_ROOT}. */
    public Series wetRootFrac() {
        return of(TraySeries.WET_ROOT);
    }

    /** {@link TraySeries#USED_TO_LEVEL}. */
    public Series usedToLevelM() {
        return of(TraySeries.USED_TO_LEVEL);
    }

    /** {@link TraySeries#EC}. */
    public Series ecMsPerCm() {
        return of(TraySeries.EC);
    }

    /** {@link TraySeries#PH}. */
    public Series ph() {
        return of(TraySeries.PH);
    }

    /**
     * One component at the end of an hour, mol/m3; NaN in a dry tray, which compares as neither too
     * much nor too little.
     *
     * @param component its place in {@link tideless.solution.Component}
     */
    public double molPerM3(int component, int hour) {
        double volume = volumeM3().at(hour);
        return volume > 0 ? componentMol.get(component).at(hour) / volume : Double.NaN;
    }

    /**
     * What the plants take up of a component from an hour to another, mol.
     *
     * @param component its place in {@link tideless.solution.Component}
     * @param fromHour first hour
     * @param toHour end, not included
     */
    public double uptakeMol(int component, int fromHour, int toHour) {
        return grown(uptakeMol.get(component), fromHour, toHour);
    }

    /** As {@link #uptakeMol(int, int, int)}, of {@link #broughtMol}. */
    public double broughtMol(int component, int fromHour, int toHour) {
        return grown(broughtMol.get(component), fromHour, toHour);
    }

    /** As {@link #uptakeMol(int, int, int)}, of {@link #lostMol}. */
    public double lostMol(int component, int fromHour, int toHour) {
        return grown(lostMol.get(component), fromHour, toHour);
    }

    private static double grown(Series total, int fromHour, int toHour) {
        return total.at(toHour - 1) - (fromHour > 0 ? total.at(fromHour - 1) : 0);
    }

    /** EC that the sum of the ions stands for at the end of an hour, mS/cm; NaN in a dry tray. */
    public double osmoticMsPerCm(int hour) {
        return volumeM3().at(hour) > 0
                ? TraySalts.equivalentMsPerCm(compositionAt(hour))
                : Double.NaN;
    }

    /** What is dissolved at the end of an hour; pure water when the tray is dry. */
    public Composition compositionAt(int hour) {
        return compositionOf(componentMol, volumeM3().at(hour), hour);
    }

    static Composition compositionOf(List<Series> componentMol, double volumeM3, int hour) {
        if (!(volumeM3 > 0)) {
            return Composition.WATER;
        }
        double[] values = new double[componentMol.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = componentMol.get(i).at(hour) / volumeM3;
        }
        return Composition.of(values);
    }
}
