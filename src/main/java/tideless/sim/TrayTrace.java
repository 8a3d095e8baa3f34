package tideless.sim;

import java.util.List;
import tideless.rig.Tray;
import tideless.solution.Composition;

/**
 * One tray over a run. States hold at the end of each hour; flows are totals over the hour.
 *
 * @param tray what it is
 * @param levelM solution level above the tray's floor, m
 * @param volumeM3 solution, m3
 * @param solutionTempC degC
 * @param thirstM3 what the plants would drink with every root they want in the water, m3 in the
 *     hour
 * @param transpirationM3 what they did drink, m3 in the hour
 * @param evaporationM3 lost through the gaps of the deck, m3 in the hour
 * @param inflowM3 through the valve, m3 in the hour
 * @param spillM3 over the overflow, m3 in the hour
 * @param airTempC air at the leaves, degC
 * @param airDeficitPa vapour pressure deficit of that air, Pa
 * @param ppfdUmolPerM2S light on the canopy at the end of the hour, umol/m2/s
 * @param lightMolPerM2 light in the hour, mol/m2
 * @param leafAreaIndex m2 leaf per m2 ground
 * @param freshG fresh mass of shoot and fruit of one plant, g
 * @param fruitFreshG of which fruit, g
 * @param rootTipM height of the root tips above the tray's floor, m
 * @param wetRootFrac share of the root's hanging span below the level, 0-1
 * @param usedToLevelM highest level the roots bear without drowning, m
 * @param ecMsPerCm EC of the solution at 25 degC, mS/cm; NaN when there is none
 * @param ph pH of the solution in contact with air; NaN when there is none
 * @param componentMol a series for each {@link tideless.solution.Component}, mol in the tray
 */
public record TrayTrace(
        Tray tray,
        Series levelM,
        Series volumeM3,
        Series solutionTempC,
        Series thirstM3,
        Series transpirationM3,
        Series evaporationM3,
        Series inflowM3,
        Series spillM3,
        Series airTempC,
        Series airDeficitPa,
        Series ppfdUmolPerM2S,
        Series lightMolPerM2,
        Series leafAreaIndex,
        Series freshG,
        Series fruitFreshG,
        Series rootTipM,
        Series wetRootFrac,
        Series usedToLevelM,
        Series ecMsPerCm,
        Series ph,
        List<Series> componentMol) {

    public TrayTrace {
        componentMol = List.copyOf(componentMol);
    }

    /**
     * One component at the end of an hour, mol/m3; NaN in a dry tray, which compares as neither too
     * much nor too little.
     *
     * @param component its place in {@link tideless.solution.Component}
     */
    public double molPerM3(int component, int hour) {
        double volume = volumeM3.at(hour);
        return volume > 0 ? componentMol.get(component).at(hour) / volume : Double.NaN;
    }

    /** What is dissolved at the end of an hour; pure water when the tray is dry. */
    public Composition compositionAt(int hour) {
        return compositionOf(componentMol, volumeM3.at(hour), hour);
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
