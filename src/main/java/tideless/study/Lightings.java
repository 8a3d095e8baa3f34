package tideless.study;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.util.FastMath;
import tideless.crop.CropTraits;
import tideless.crop.Growing;
import tideless.physics.Light;
import tideless.physics.Time;
import tideless.rig.Climate;
import tideless.rig.InsideAir;
import tideless.rig.Lamp;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.sim.Event;
import tideless.sim.PlantingTrace;
import tideless.sim.Simulation;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;

/** Runs a scenario for its light. */
public final class Lightings {
    private Lightings() {}

    /** Runs it, so that stages fall on the days on which the crop reaches them. */
    public static Lighting of(Scenario scenario) {
        Trace trace = Simulation.run(scenario);
        List<Lighting.OfTray> trays = new ArrayList<>();
        for (TrayTrace tray : trace.trays()) {
            trays.add(ofTray(trace, tray));
        }
        return new Lighting(scenario, trays);
    }

    private static Lighting.OfTray ofTray(Trace trace, TrayTrace of) {
        Tray tray = of.tray();
        Lamp lamp = electric(tray);
        double lampWPerM2 =
                lamp.ppfdUmolPerM2S() / lamp.umolPerJ() * (1 + lamp.nearInfraredPerPar());
        double[] sunWPerM2 = new double[trace.hours()];
        double peak = 0;
        double sum = 0;
        for (int h = 0; h < sunWPerM2.length; h++) {
            double sunMol =
                    of.lightMolPerM2().at(h) - lampMolPerM2(trace.scenario(), lamp, h, h + 1);
            // What is left of a lamp after taking it away again is rounding, not sun.
            sunWPerM2[h] = sunMol > 1e-9 ? sunMol * 1e6 / Time.HOUR_S / PPFD_PER_GLOBAL_W : 0;
            peak = Math.max(peak, sunWPerM2[h]);
            sum += sunWPerM2[h];
        }
        return new Lighting.OfTray(
                tray.name(),
                String.join(
                        ", then ",
                        IntStream.range(0, tray.plantings())
                                .mapToObj(i -> tray.planted(i).planting().cropName())
                                .toList()),
                lamp.ppfdUmolPerM2S(),
                !lamp.levels().isEmpty() || !lamp.strengths().isEmpty(),
                lamp.onS(),
                lamp.offS(),
                lamp.litS() / Time.HOUR_S,
                of.ppfdUmolPerM2S().max(0, trace.hours()),
                stages(trace, of, sunWPerM2),
                lampWPerM2,
                lampWPerM2
                        * (lamp.ppfdUmolPerM2S() > 0
                                ? lamp.molPerM2(0, trace.hours() * Time.HOUR_S)
                                        / (lamp.ppfdUmolPerM2S() * (trace.hours() / 24.0))
                                : 0),
                peak,
                sum * Time.HOUR_S * 1e-6 / (trace.hours() / 24.0),
                tray.shape().rimAreaM2());
    }

    /** The lamp over it; none where that is daylight, which counts as sun. */
    private static Lamp electric(Tray tray) {
        return tray.lamp().isElectric() ? tray.lamp() : Lamp.NONE;
    }

    /** umol/m2/s for each W/m2 of sun. */
    private static final double PPFD_PER_GLOBAL_W = Light.globalToPpfdUmolPerM2S(1);

    /** What lamps bring to a tray from an hour to another, mol/m2. */
    private static double lampMolPerM2(Scenario scenario, Lamp lamp, int fromHour, int toHour) {
        double mol = lamp.molPerM2(fromHour * Time.HOUR_S, toHour * Time.HOUR_S);
        if (scenario.climate() instanceof Climate.Inside inside) {
            for (int h = fromHour; h < toHour; h++) {
                double ppfd = inside.air().at(InsideAir.Quantity.LAMP_PPFD_UMOL_PER_M2_S, h);
                mol += Light.dailyLightMolPerM2(ppfd, Time.HOUR_S);
            }
        }
        return mol;
    }

    private static List<Lighting.Stage> stages(Trace trace, TrayTrace of, double[] sunWPerM2) {
        List<Lighting.Stage> stages = new ArrayList<>();
        for (PlantingTrace planting : trace.plantings(of)) {
            addStages(trace, planting, sunWPerM2, stages);
        }
        return stages;
    }

    private static void addStages(
            Trace trace, PlantingTrace planting, double[] sunWPerM2, List<Lighting.Stage> stages) {
        Tray tray = planting.tray();
        CropTraits traits = tray.planting() instanceof Planting.OfCrop crop ? crop.traits() : null;
        String whose = planting.crop().isEmpty() ? "" : planting.crop() + ", ";
        int last = planting.endHour() / 24;
        List<String> names = new ArrayList<>(List.of("growing"));
        List<Integer> begins = new ArrayList<>(List.of(planting.firstHour() / 24));
        if (tray.planting() instanceof Planting.OfCrop crop && crop.traits().stages().fruits()) {
            boolean flowers = Growing.isFlowering(crop.traits(), crop.plantAtStart());
            names.set(0, flowers ? "in flower and fruit" : "before flowering");
        }
        for (Event event : planting.events()) {
            int day = (int) FastMath.round(event.atS() / Time.DAY_S);
            if (event.kind() == Event.Kind.FLOWERING && !names.contains("in flower and fruit")) {
                names.add("in flower and fruit");
                begins.add(day);
            } else if (event.kind() == Event.Kind.FIRST_RIPE) {
                names.add("picking");
                begins.add(day);
            } else if (event.kind() == Event.Kind.HARVEST) {
                last = Math.min(last, day);
            }
        }
        for (int i = 0; i < names.size(); i++) {
            int from = begins.get(i);
            int to = Math.min(last, i + 1 < begins.size() ? begins.get(i + 1) : last);
            if (to > from) {
                double sun = 0;
                for (int h = from * 24; h < to * 24; h++) {
                    sun += sunWPerM2[h];
                }
                stages.add(
                        new Lighting.Stage(
                                whose + names.get(i),
                                from,
                                to - from,
                                lampMolPerM2(trace.scenario(), electric(tray), from * 24, to * 24)
                                        / (to - from),
                                sun * PPFD_PER_GLOBAL_W * 0.0036 / (to - from),
                                traits == null ? Double.NaN : traits.needs().lightLowMolPerM2Day(),
                                traits == null
                                        ? Double.NaN
                                        : traits.needs().lightHighMolPerM2Day()));
            }
        }
    }
}
