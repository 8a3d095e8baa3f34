package tideless.study;

import java.util.List;
import tideless.crop.CropTraits;
import tideless.rig.Scenario;

/**
 * What light every tray gets from lamp and sun over a run, and what warmth comes with it.
 *
 * @param scenario what was run
 * @param trays in the scenario's order
 */
public record Lighting(Scenario scenario, List<OfTray> trays) {
    public Lighting {
        trays = List.copyOf(trays);
    }

    /**
     * One tray.
     *
     * @param tray its name
     * @param crop its crop, or crops in turn
     * @param lampPpfdUmolPerM2S of the lamp at full strength, umol/m2/s; 0 without a lamp
     * @param isDimmed whether it burns below that by the hour or by date
     * @param lampOnS switched on, seconds after midnight
     * @param lampOffS switched off, seconds after midnight
     * @param lampLitH hours a day
     * @param highestPpfdUmolPerM2S most at the end of any hour, lamp and sun, umol/m2/s
     * @param stages in order
     * @param lampWPerM2 light and near infrared of the lamp at the canopy while it burns, W/m2
     * @param lampMjPerM2Day the same over a day, MJ/m2/d
     * @param sunPeakWPerM2 most of any hour, all of the sun's spectrum, W/m2
     * @param sunMjPerM2Day mean of the run, MJ/m2/d
     * @param rimAreaM2 the tray's own area, m2
     */
    public record OfTray(
            String tray,
            String crop,
            double lampPpfdUmolPerM2S,
            boolean isDimmed,
            double lampOnS,
            double lampOffS,
            double lampLitH,
            double highestPpfdUmolPerM2S,
            List<Stage> stages,
            double lampWPerM2,
            double lampMjPerM2Day,
            double sunPeakWPerM2,
            double sunMjPerM2Day,
            double rimAreaM2) {
        public OfTray {
            stages = List.copyOf(stages);
        }
    }

    /**
     * Days of one stage, as means.
     *
     * @param name what the crop does
     * @param firstDay days since the start
     * @param days how many
     * @param lampMolPerM2Day daily light integral of the lamp, mol/m2/d
     * @param sunMolPerM2Day daily light integral of the sun, mol/m2/d
     * @param needLowMolPerM2Day least daily light the crop wants, mol/m2/d; NaN when its needs are
     *     not known
     * @param needHighMolPerM2Day most of use, mol/m2/d
     */
    public record Stage(
            String name,
            int firstDay,
            int days,
            double lampMolPerM2Day,
            double sunMolPerM2Day,
            double needLowMolPerM2Day,
            double needHighMolPerM2Day) {
        /** Lamp and sun, mol/m2/d. */
        public double molPerM2Day() {
            return lampMolPerM2Day + sunMolPerM2Day;
        }

        /** Whether it is less than the crop wants, by more than a cheap meter tells. */
        public boolean isTooLittle() {
            return CropTraits.Needs.isShortOfLight(molPerM2Day(), needLowMolPerM2Day);
        }
    }

    /**
     * Hours a day the lamp would have to burn for the least the crop wants in a stage.
     *
     * @return h; above 24 when longer hours cannot do it, infinite without a lamp
     */
    public static double hoursForNeed(OfTray tray, Stage stage) {
        return tray.lampLitH() * timesForNeed(stage);
    }

    /** Hours a day after which the lamp gives more than the crop can use in a stage; at most 24. */
    public static double hoursForMost(OfTray tray, Stage stage) {
        double hours =
                tray.lampLitH()
                        * (stage.needHighMolPerM2Day() - stage.sunMolPerM2Day())
                        / stage.lampMolPerM2Day();
        return Math.max(0, Math.min(24, hours));
    }

    /**
     * PPFD the lamp would have to give in its present hours for the least the crop wants.
     *
     * @return umol/m2/s; infinite without hours
     */
    public static double ppfdForNeed(OfTray tray, Stage stage) {
        return tray.lampPpfdUmolPerM2S() * timesForNeed(stage);
    }

    /** How many times the lamp's present light would be enough. */
    private static double timesForNeed(Stage stage) {
        return (stage.needLowMolPerM2Day() - stage.sunMolPerM2Day()) / stage.lampMolPerM2Day();
    }
}
