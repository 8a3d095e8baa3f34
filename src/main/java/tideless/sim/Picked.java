package tideless.sim;

import java.util.ArrayList;
import java.util.List;
import tideless.crop.CropTraits;
import tideless.crop.Growing;
import tideless.physics.Time;
import tideless.rig.Planting;

/**
 * What hands take from a crop that stands on, by weeks from its first day in the tray.
 *
 * <p>Leaves as they were picked. Fruit as it ripens: growth of a day goes evenly to all fruit on
 * the plant, each of which grows from its flower for as many degree-days as from the crop's first
 * flower to its first ripe fruit, and is picked when it is ripe (even shares are assumed). What has
 * not ripened when the crop leaves is not picked.
 *
 * @param leavesG fresh leaves of the whole tray in each week, g
 * @param fruitG ripe fruit of the whole tray in each week, g
 */
public record Picked(List<Double> leavesG, List<Double> fruitG) {
    private static final int DAYS = 7;
    private static final int HOURS = 24;

    public Picked {
        leavesG = List.copyOf(leavesG);
        fruitG = List.copyOf(fruitG);
    }

    /** Of one crop of a run. */
    public static Picked of(PlantingTrace planting) {
        int days = (planting.lastHour() - planting.firstHour()) / HOURS + 1;
        double[] fruit = new double[days];
        if (planting.tray().planting() instanceof Planting.OfCrop crop
                && crop.traits().stages().fruits()) {
            fruit =
                    ripe(
                            grownFruitG(planting, days),
                            warmthCd(planting, crop, days),
                            crop.traits());
        }
        return new Picked(weekly(leaves(planting, days)), weekly(fruit));
    }

    /** All leaves, g. */
    public double allLeavesG() {
        return leavesG.stream().mapToDouble(g -> g).sum();
    }

    /** All ripe fruit, g. */
    public double allFruitG() {
        return fruitG.stream().mapToDouble(g -> g).sum();
    }

    private static double[] leaves(PlantingTrace planting, int days) {
        double[] leaves = new double[days];
        for (Event event : planting.events()) {
            if (event.kind() == Event.Kind.LEAVES_PICKED) {
                int day = (int) ((event.atS() - planting.fromS()) / Time.DAY_S);
                leaves[Math.min(days - 1, Math.max(0, day))] += event.freshG();
            }
        }
        return leaves;
    }

    // Fruit of a plant times the plants there are; grown at midnight.
    private static double[] grownFruitG(PlantingTrace planting, int days) {
        double[] grown = new double[days];
        Series fruit = planting.run().fruitFreshG();
        for (int h = planting.firstHour() + 1; h <= planting.lastHour(); h++) {
            int day = (h - planting.firstHour()) / HOURS;
            grown[day] += Math.max(0, fruit.at(h) - fruit.at(h - 1)) * plantsAt(planting, h);
        }
        return grown;
    }

    private static int plantsAt(PlantingTrace planting, int hour) {
        int plants = planting.tray().planting().plants();
        for (Event event : planting.events()) {
            if (event.kind() == Event.Kind.THINNED && event.atS() <= hour * Time.HOUR_S) {
                plants = Integer.parseInt(event.detail());
            }
        }
        return plants;
    }

    // Degree-days since sowing at the end of each day, by its mean air.
    private static double[] warmthCd(PlantingTrace planting, Planting.OfCrop crop, int days) {
        Series air = planting.run().of(TraySeries.AIR_TEMP);
        double[] warmth = new double[days];
        double sum = crop.plantAtStart().thermalTimeCd();
        for (int day = 0; day < days; day++) {
            int from = planting.firstHour() + HOURS * day;
            int to = Math.min(from + HOURS, planting.lastHour() + 1);
            double mean = air.sum(from, to) / (to - from);
            sum += Growing.warmthCd(crop.traits(), sum, mean);
            warmth[day] = sum;
        }
        return warmth;
    }

    /**
     * Ripe fruit of each day, g.
     *
     * @param grownG growth of all fruit by day, g
     * @param warmthCd degree-days since sowing at the end of each day
     */
    static double[] ripe(double[] grownG, double[] warmthCd, CropTraits traits) {
        double[] picked = new double[grownG.length];
        double before = 0;
        for (int day = 0; day < picked.length; day++) {
            double all = 0;
            for (int grown = 0; grown <= day; grown++) {
                all += grownG[grown] * ripeFrac(warmthCd[grown], warmthCd[day], traits.stages());
            }
            picked[day] = all - before;
            before = all;
        }
        return picked;
    }

    // Of what grew at one warmth, the share in fruit that is ripe at another.
    private static double ripeFrac(double grownCd, double nowCd, CropTraits.Stages stages) {
        double span = stages.firstHarvestCd() - stages.floweringCd();
        double oldest = Math.max(stages.floweringCd(), grownCd - span);
        if (nowCd - span <= oldest) {
            return 0;
        }
        return grownCd <= oldest ? 1 : Math.min(1, (nowCd - span - oldest) / (grownCd - oldest));
    }

    private static List<Double> weekly(double[] daily) {
        List<Double> weeks = new ArrayList<>();
        for (int from = 0; from < daily.length; from += DAYS) {
            double sum = 0;
            for (int day = from; day < Math.min(daily.length, from + DAYS); day++) {
                sum += daily[day];
            }
            weeks.add(sum);
        }
        return weeks;
    }
}
