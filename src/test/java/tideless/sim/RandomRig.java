package tideless.sim;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.rig.Reservoir;
import tideless.rig.Shape;
import tideless.rig.TestTray;
import tideless.rig.TestValve;
import tideless.rig.Tray;
import tideless.rig.Tube;
import tideless.rig.ValveFaults;

/** A reservoir over one to four valve trays, and what is taken from them, drawn from a seed. */
final class RandomRig {
    final Reservoir reservoir;
    final List<Tray> trays = new ArrayList<>();
    final double durationS;

    /** Loss of each tray in each span between changes, m3/s. */
    final double[][] evapotranspirationM3PerS;

    /** Every loss changes after this, s; a multiple of ten minutes. */
    final double changeS;

    final double evaporationM3PerS;

    /** A bench of three trays that hold their level, three days, thirst by day and night. */
    RandomRig() {
        reservoir = Rigs.reservoir(0.1, 0.32, Reservoir.Refill.When.NEVER);
        changeS = 6 * 3600;
        durationS = 12 * changeS;
        evaporationM3PerS = 1e-9;
        evapotranspirationM3PerS = new double[12][3];
        for (int i = 0; i < 3; i++) {
            trays.add(Rigs.tray("tray-" + i, Rigs.valve(), Rigs.drinking(1), 0));
            for (int c = 0; c < 12; c++) {
                evapotranspirationM3PerS[c][i] = (0.5 + 0.5 * i) * (c % 4 < 2 ? 2e-8 : 2e-9);
            }
        }
    }

    RandomRig(long seed, int changes) {
        SplittableRandom random = new SplittableRandom(seed);
        double full = between(random, 0.08, 0.5);
        double area = between(random, 0.01, 0.3);
        double outlet = random.nextDouble() < 0.3 ? between(random, 0, 0.8 * full) : 0.01;
        Shape inside =
                random.nextBoolean()
                        ? Rigs.box(area, full)
                        : bucket(area, between(random, 0.6, 1), full);
        reservoir =
                new Reservoir(
                        "wall",
                        inside,
                        full,
                        outlet,
                        between(random, 0.05, 1),
                        0,
                        random.nextBoolean() ? full : between(random, 0, full),
                        new Reservoir.Refill(Reservoir.Refill.When.NEVER, 0.5, Pouring.FEED),
                        random.nextDouble() < 0.1
                                ? new Tube(0.006, 0, 0)
                                : new Tube(
                                        between(random, 0.004, 0.012),
                                        between(random, 0.05, 3),
                                        between(random, 0, 3)));
        int count = 1 + random.nextInt(4);
        for (int i = 0; i < count; i++) {
            trays.add(tray("tray-" + i, random));
        }
        changeS = 600 * (1 + random.nextInt(6));
        durationS = changes * changeS;
        evapotranspirationM3PerS = new double[changes][count];
        double[] thirst = new double[count];
        for (int i = 0; i < count; i++) {
            thirst[i] = Math.pow(10, between(random, -9.5, -6)); // 0.03 to 86 L/day
        }
        for (int c = 0; c < changes; c++) {
            for (int i = 0; i < count; i++) {
                evapotranspirationM3PerS[c][i] =
                        random.nextDouble() < 0.2 ? 0 : thirst[i] * random.nextDouble();
            }
        }
        evaporationM3PerS = random.nextBoolean() ? 0 : between(random, 0, 2e-8);
    }

    /** Nothing drawn: as stated. */
    RandomRig(
            Reservoir reservoir,
            List<Tray> trays,
            double[][] evapotranspirationM3PerS,
            double changeS,
            double evaporationM3PerS) {
        this.reservoir = reservoir;
        this.trays.addAll(trays);
        this.evapotranspirationM3PerS = evapotranspirationM3PerS;
        this.changeS = changeS;
        this.evaporationM3PerS = evaporationM3PerS;
        durationS = evapotranspirationM3PerS.length * changeS;
    }

    private RandomRig with(Reservoir other, List<Integer> order) {
        double[][] asked = new double[evapotranspirationM3PerS.length][order.size()];
        for (int c = 0; c < asked.length; c++) {
            for (int i = 0; i < order.size(); i++) {
                asked[c][i] = evapotranspirationM3PerS[c][order.get(i)];
            }
        }
        List<Tray> chosen = order.stream().map(trays::get).toList();
        return new RandomRig(other, chosen, asked, changeS, evaporationM3PerS);
    }

    /** The same trays in another order. */
    RandomRig reordered(List<Integer> order) {
        return with(reservoir, order);
    }

    /** The same with a reservoir of as many times the section, and the same heights. */
    RandomRig withReservoirTimes(double times) {
        Shape inside = reservoir.shape();
        Reservoir larger =
                new Reservoir(
                        reservoir.name(),
                        bucket(
                                times * inside.rimAreaM2(),
                                inside.floorAreaM2() / inside.rimAreaM2(),
                                inside.depthM()),
                        reservoir.fullLevelM(),
                        reservoir.outletLevelM(),
                        reservoir.floorAboveBenchM(),
                        reservoir.openAreaM2(),
                        reservoir.startLevelM(),
                        reservoir.refill(),
                        reservoir.trunk());
        List<Integer> order = new ArrayList<>();
        for (int i = 0; i < trays.size(); i++) {
            order.add(i);
        }
        return with(larger, order);
    }

    /** Round, its area at the floor a stated share of that at the rim. */
    private static Shape bucket(double rimM2, double floorFrac, double depthM) {
        double rimM = Math.sqrt(4 * rimM2 / Math.PI);
        return Shape.bucket(rimM, Math.sqrt(floorFrac) * rimM, depthM);
    }

    private static Tray tray(String name, SplittableRandom random) {
        double area = between(random, 0.02, 0.4);
        double depth = between(random, 0.05, 0.2);
        double overflow = between(random, 0.8, 1) * depth;
        double setting = between(random, 0.3, 0.95) * overflow;
        double band = Math.min(setting, between(random, 0.002, 0.02));
        Shape shape =
                random.nextDouble() < 0.6
                        ? Rigs.box(area, depth)
                        : bucket(area, between(random, 0.7, 1), depth);
        double seatHeight = random.nextDouble() < 0.8 ? depth : between(random, 0, 0.9) * setting;
        ValveFaults faults = ValveFaults.NONE;
        double fault = random.nextDouble();
        if (fault < 0.25) {
            faults =
                    new ValveFaults(
                            fault < 0.08
                                    ? ValveFaults.Stuck.OPEN
                                    : fault < 0.12 ? ValveFaults.Stuck.SHUT : ValveFaults.Stuck.NOT,
                            Rigs.START,
                            Rigs.START.plusDays(1000),
                            fault > 0.10 && fault < 0.2 ? Math.pow(10, -9 + 3 * fault) : 0,
                            Rigs.START,
                            0,
                            Rigs.START);
        }
        Filling valve =
                new TestValve()
                        .settingM(setting)
                        .bandM(band)
                        .snaps(random.nextDouble() < 0.25)
                        .seatBoreM(between(random, 0.001, 0.004))
                        .seatAboveFloorM(seatHeight)
                        .branch(
                                new Tube(
                                        between(random, 0.003, 0.008),
                                        between(random, 0.05, 3),
                                        between(random, 1, 6)))
                        .faults(faults)
                        .make();
        double start =
                random.nextDouble() < 0.6
                        ? Math.min(overflow, setting * between(random, 0.97, 1.02))
                        : between(random, 0, 1) * overflow;
        return new TestTray()
                .name(name)
                .shape(shape)
                .overflowM(overflow)
                .cupBottomM(0)
                .floorAboveBenchM(between(random, 0, 0.3))
                .startLevelM(start)
                .startLiquid(Rigs.FEED_LIQUID)
                .planting(Rigs.drinking(1))
                .filling(valve)
                .limits(Rigs.WIDE)
                .make();
    }

    private static double between(SplittableRandom random, double low, double high) {
        return low + (high - low) * random.nextDouble();
    }
}
