package tideless.sim;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import tideless.physics.LiquidWater;
import tideless.physics.Orifice;
import tideless.physics.RigLoad;
import tideless.physics.Time;
import tideless.rig.Filling;
import tideless.rig.Lamp;
import tideless.rig.Planting;
import tideless.rig.Reservoir;
import tideless.rig.Scenario;
import tideless.rig.Shape;
import tideless.rig.Tray;

/**
 * What can be said of a rig without a season.
 *
 * @param reservoir which
 * @param deadM3 lies below the outlet, m3
 * @param usableM3 feeds all its trays when full, m3; see {@link Scenario#feedingM3}
 * @param weightN of what it holds when full, N
 * @param tippingAngleRad tilt at which the full water falls over the longer side of a stand whose
 *     four feet are under the vessel's floor, rad; see {@link Shape#floorNarrowSideM}
 * @param tippingPushN push at the full level that does it, N
 * @param trays those it feeds
 */
public record RigCheck(
        Reservoir reservoir,
        double deadM3,
        double usableM3,
        double weightN,
        double tippingAngleRad,
        double tippingPushN,
        List<Feed> trays) {
    /** A hole that carries a hung valve less than so many times has little to spare; assumed. */
    public static final double HOLE_MARGIN = 1.5;

    /** A tray counts as filled this far below its setting, m. */
    public static final double FILLED_M = 0.001;

    /** Warmth of the solution, degC; assumed. */
    private static final double TEMP_C = 20;

    private static final int ALL_OPEN = -1;

    private static final double LONGEST_S = 30 * Time.DAY_S;

    public RigCheck {
        trays = List.copyOf(trays);
    }

    /**
     * One tray's feed, all valves of the reservoir wide open together.
     *
     * @param tray which
     * @param fillS from dry to {@link #FILLED_M} below the setting on opening the tap of the full
     *     reservoir, all trays at once, nothing drunk, s; NaN when it never does
     * @param fullM3PerS flow with the reservoir full, m3/s
     * @param lowM3PerS flow with the surface at the outlet, m3/s
     * @param stuckM3PerS flow of its valve hung wide open alone, with the reservoir full and the
     *     tray full to the rim, m3/s
     * @param holeM3PerS what the hole or standpipe of its overflow passes with the tray full to the
     *     rim, m3/s; NaN where none is stated
     * @param peakThirstM3PerS largest thirst to reckon with, m3/s: the largest measured one, or a
     *     closed canopy at the crop's greatest leaf area in the run's thirstiest air under its lamp
     */
    public record Feed(
            Tray tray,
            double fillS,
            double fullM3PerS,
            double lowM3PerS,
            double stuckM3PerS,
            double holeM3PerS,
            double peakThirstM3PerS) {
        /** Flow at the lowest usable level over the peak thirst; infinite without thirst. */
        public double margin() {
            return lowM3PerS / peakThirstM3PerS;
        }

        /**
         * Whether so little comes at the lowest usable level that the tray falls at peak thirst.
         */
        public boolean isTooSlow() {
            return margin() < 1;
        }

        /** What the hole passes over what the hung valve brings; NaN without a hole. */
        public double holeMargin() {
            return holeM3PerS / stuckM3PerS;
        }
    }

    /** Checks every reservoir of a scenario. */
    public static List<RigCheck> of(Scenario scenario) {
        List<RigCheck> checks = new ArrayList<>();
        Timeline timeline = Timeline.of(scenario);
        AirSeries air = AirSeries.of(scenario, timeline);
        for (Reservoir reservoir : scenario.reservoirs()) {
            List<Tray> fed =
                    scenario.trays().stream()
                            .filter(tray -> tray.isFedBy(reservoir.name()))
                            .toList();
            checks.add(of(scenario, reservoir, fed, timeline, air));
        }
        return checks;
    }

    private static RigCheck of(
            Scenario scenario,
            Reservoir reservoir,
            List<Tray> fed,
            Timeline timeline,
            AirSeries air) {
        double[] fillS = fillTimesS(reservoir, fed);
        double[] full = flows(reservoir, fed, reservoir.fullLevelM(), ALL_OPEN);
        double[] low = flows(reservoir, fed, reservoir.outletLevelM(), ALL_OPEN);
        List<Feed> feeds = new ArrayList<>();
        for (int i = 0; i < fed.size(); i++) {
            Tray tray = fed.get(i);
            feeds.add(
                    new Feed(
                            tray,
                            fillS[i],
                            full[i],
                            low[i],
                            flows(reservoir, fed, reservoir.fullLevelM(), i)[i],
                            holeM3PerS(tray),
                            peakThirstM3PerS(tray, timeline, air)));
        }
        double halfM = 0.5 * reservoir.shape().floorNarrowSideM();
        // Below the bench nobody knows how high it stands: as if on the ground.
        double standM = Math.max(0, reservoir.floorAboveBenchM());
        double centreM = standM + 0.5 * reservoir.fullLevelM();
        double massKg = reservoir.fullM3() * LiquidWater.KG_PER_M3;
        return new RigCheck(
                reservoir,
                reservoir.deadM3(),
                scenario.feedingM3(reservoir),
                RigLoad.weightN(reservoir.fullM3(), LiquidWater.KG_PER_M3),
                RigLoad.tippingAngleRad(halfM, centreM),
                RigLoad.tippingPushN(massKg, halfM, standM + reservoir.fullLevelM()),
                feeds);
    }

    private static double[] fillTimesS(Reservoir reservoir, List<Tray> fed) {
        double[] fillS = new double[fed.size()];
        Arrays.fill(fillS, Double.NaN);
        FeedWater water =
                new FeedWater(
                        reservoir,
                        fed,
                        new VesselWater(reservoir.fullM3()),
                        fed.stream().map(tray -> new VesselWater(0)).toList(),
                        GravityFeed.BEND_MOST);
        water.viscosityM2PerS = LiquidWater.kinematicViscosityM2PerS(TEMP_C);
        double doneS = 0;
        int left = fed.size();
        while (left > 0 && doneS < LONGEST_S && !water.reservoir.uncovered) {
            // A minute at a time: fine enough to tell a filling time by.
            doneS += water.advance(60);
            for (int i = 0; i < fillS.length; i++) {
                Tray tray = fed.get(i);
                double setting = ((Filling.ByValve) tray.filling()).settingM();
                if (Double.isNaN(fillS[i])
                        && tray.shape().levelM(water.trays[i].m3) >= setting - FILLED_M) {
                    fillS[i] = doneS;
                    left--;
                }
            }
        }
        return fillS;
    }

    /**
     * What the overflow's hole passes with the tray full to the rim: the orifice law on the head
     * over the hole's middle. It overstates a hole that reaches up to the rim by 4 % (integrated
     * over the circle); a standpipe has half a bore more of head, but may pass no more than Borda's
     * mouthpiece, 0.5 in place of 0.61 (from memory).
     */
    private static double holeM3PerS(Tray tray) {
        double boreM = tray.overflowBoreM().orElse(Double.NaN);
        double headM = tray.shape().depthM() - tray.overflowM() - 0.5 * boreM;
        return Orifice.flowM3PerS(headM, boreM, Orifice.SHARP_EDGE_COEFFICIENT);
    }

    /**
     * @param alone the one tray whose valve is open, itself full to the rim; or {@link #ALL_OPEN}
     */
    private static double[] flows(Reservoir reservoir, List<Tray> fed, double levelM, int alone) {
        List<Filling.ByValve> valves = new ArrayList<>();
        double[] outletM = new double[fed.size()];
        double[] opening = new double[fed.size()];
        for (int i = 0; i < outletM.length; i++) {
            Filling.ByValve valve = (Filling.ByValve) fed.get(i).filling();
            valves.add(valve);
            // A drowned outlet works against the highest level at which it is wide open; a valve
            // that hangs open works against a tray full to its rim.
            double wideM = valve.settingM() - valve.bandM();
            double againstM = i == alone ? fed.get(i).shape().depthM() : wideM;
            outletM[i] =
                    fed.get(i).floorAboveBenchM() + Math.max(valve.seatAboveFloorM(), againstM);
            opening[i] = alone == ALL_OPEN || i == alone ? 1 : 0;
        }
        if (valves.isEmpty()) {
            return outletM;
        }
        FeedLines lines = FeedLines.of(reservoir, valves);
        lines.solve(
                reservoir.floorAboveBenchM() + levelM,
                outletM,
                opening,
                LiquidWater.kinematicViscosityM2PerS(TEMP_C));
        return lines.flowM3PerS.clone();
    }

    /** Of the thirstiest of its crops. */
    private static double peakThirstM3PerS(Tray tray, Timeline timeline, AirSeries air) {
        double peak = 0;
        for (int number = 0; number < tray.plantings(); number++) {
            peak = Math.max(peak, peakM3PerS(tray.planted(number), timeline, air));
        }
        return peak;
    }

    private static double peakM3PerS(Tray tray, Timeline timeline, AirSeries air) {
        double peak = 0;
        Lamp lamp = tray.lamp();
        for (int step = 0; step < timeline.steps; step++) {
            double timeS = timeline.instantS[step];
            if (tray.planting() instanceof Planting.MeasuredThirst measured) {
                double endS = timeline.instantS[step + 1];
                peak = Math.max(peak, measured.thirst().meanM3PerS(timeS, endS));
                continue;
            }
            Planting.OfCrop crop = (Planting.OfCrop) tray.planting();
            double ppfd = lamp.ppfdUmolPerM2S(timeS);
            double lampWPerM2 = ppfd / lamp.umolPerJ();
            double kgPerM2S =
                    PlantThirst.ofFullCanopy(crop)
                            .kgPerS(
                                    lampWPerM2 + air.parWPerM2(step),
                                    ppfd + air.ppfdUmolPerM2S(step),
                                    lampWPerM2 * lamp.nearInfraredPerPar()
                                            + air.infraredWPerM2(step),
                                    air.sunFrac((int) (timeS / Time.DAY_S), lamp),
                                    air,
                                    step);
            double ground = crop.plants() > 0 ? crop.mostGroundM2() : 0;
            peak = Math.max(peak, kgPerM2S * ground / LiquidWater.KG_PER_M3);
        }
        return peak;
    }
}
