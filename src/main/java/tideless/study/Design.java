package tideless.study;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tideless.physics.Time;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.sim.Season;
import tideless.sim.TraySeason;

/**
 * What a design gives and costs: figures of its season, or their bands over the rigs it might be.
 *
 * @param members how many rigs it was run as; 1 for the rig as stated
 * @param chance share of them in which every crop survives, 0-1
 * @param chanceUnharmed share of them in which besides none loses a good part of its harvest, 0-1
 * @param figures a band of each; no yield where a thirst was measured
 * @param yields of each tray
 * @param firstRefillS when a reservoir is first filled up or a tray topped up, s since the start
 * @param lastHarvestS when the last crop is cut, s since the start; never where none is
 * @param firstHarm what harms first in most of those that are harmed
 * @param start its first day, from which its seconds count
 * @param cupsUnder whether a tray is kept at a level far above its cups: plugs and stems rot, which
 *     no season shows
 */
public record Design(
        int members,
        double chance,
        double chanceUnharmed,
        Map<Figure, Band> figures,
        List<Outlook.Yield> yields,
        Band firstRefillS,
        Band lastHarvestS,
        Optional<Outlook.LikelyHarm> firstHarm,
        LocalDate start,
        boolean cupsUnder) {

    /** Hours of wilting that a crop gets over, h; see {@link Fate}. */
    private static final double WILT_BORNE_H = 6;

    /** What is compared. Hours are summed over trays. */
    public enum Figure {
        /** Trays with less than a film that feeds anybody, h. */
        DRY,
        /** Every root of living plants out of the water, h. */
        STRANDED,
        /** Living plants wilted, h. */
        WILTED,
        /** Air roots drowned, h. */
        DROWNED,
        /** Days on which want of oxygen cost growth, h. */
        SHORT_OF_AIR,
        /** Refills of reservoirs and top-ups of trays. */
        REFILLS,
        /** Poured after the start, L. */
        LITRES,
        /** Flushes. */
        FLUSHES,
        /** Fresh mass of all plants, of a fruit crop its fruit, g. */
        YIELD
    }

    public Design {
        figures = Map.copyOf(figures);
        yields = List.copyOf(yields);
    }

    /** Middle of a figure; NaN where there is none. */
    public double of(Figure figure) {
        Band band = figures.get(figure);
        return band == null ? Double.NaN : band.middle();
    }

    /** Whether the crops survive: all of them, in nine members of ten. */
    public boolean survives() {
        return chance >= Outlook.SURE;
    }

    /**
     * Whether nothing is harmed: the crops survive, in nine members of ten none loses a good part
     * of its harvest to salt, hunger or want of water, no tray falls dry, no root hangs or drowns,
     * no wilting lasts and no cup stands under water for good. Want of oxygen costs growth and
     * shows in the yield.
     */
    public boolean isHarmless() {
        return survives()
                && chanceUnharmed >= Outlook.SURE
                && of(Figure.DRY) == 0
                && of(Figure.STRANDED) == 0
                && of(Figure.DROWNED) == 0
                && of(Figure.WILTED) <= WILT_BORNE_H
                && !cupsUnder;
    }

    /** One season of a design. */
    record Run(Fate fate, Map<Figure, Double> figures, double firstRefillS, double lastHarvestS) {
        static Run of(Scenario scenario, Season season) {
            Fate fate = Fate.of(scenario, season);
            Map<Figure, Double> sums = new EnumMap<>(Figure.class);
            for (Figure figure : Figure.values()) {
                sums.put(figure, 0.0);
            }
            double firstS = Double.POSITIVE_INFINITY;
            double lastS = Double.NEGATIVE_INFINITY;
            for (Map.Entry<Expected.What, Fate.Dated> event : fate.dated().entrySet()) {
                switch (event.getKey().kind()) {
                    case REFILL, TOP_UP -> {
                        sums.merge(Figure.REFILLS, 1.0, Double::sum);
                        firstS = Math.min(firstS, event.getValue().atS());
                    }
                    case HARVEST -> lastS = Math.max(lastS, event.getValue().atS());
                    case FLUSH -> sums.merge(Figure.FLUSHES, 1.0, Double::sum);
                    default -> {
                        // not compared
                    }
                }
            }
            sums.put(Figure.LITRES, 1000 * fate.feedM3());
            for (int i = 0; i < season.trays().size(); i++) {
                TraySeason tray = season.trays().get(i);
                sums.merge(Figure.DRY, tray.dryH(), Double::sum);
                sums.merge(Figure.STRANDED, tray.strandedH(), Double::sum);
                sums.merge(Figure.WILTED, tray.wiltedH(), Double::sum);
                sums.merge(Figure.DROWNED, tray.drownedH(), Double::sum);
                sums.merge(Figure.SHORT_OF_AIR, tray.shortOfAirH(), Double::sum);
                for (int n = 0; n < tray.yields().size(); n++) {
                    sums.merge(
                            Figure.YIELD,
                            grams(scenario.trays().get(i).planted(n), tray.yields().get(n)),
                            Double::sum);
                }
            }
            return new Run(fate, sums, firstS, lastS < 0 ? Double.POSITIVE_INFINITY : lastS);
        }

        private static double grams(Tray tray, TraySeason.Yield yield) {
            if (!(tray.planting() instanceof Planting.OfCrop crop)) {
                return yield.freshG();
            }
            boolean fruits = crop.traits().stages().fruits();
            return crop.plants() * (fruits ? yield.fruitFreshG() : yield.allG());
        }
    }

    static Design of(Scenario scenario, List<Run> runs) {
        Map<Figure, Band> figures = new HashMap<>();
        for (Figure figure : Figure.values()) {
            double[] values = runs.stream().mapToDouble(r -> r.figures().get(figure)).toArray();
            if (!Double.isNaN(values[0])) {
                figures.put(figure, Band.of(values));
            }
        }
        Outlook outlook = Outlook.of(scenario, runs.stream().map(Run::fate).toList());
        List<Fate> fates = runs.stream().map(Run::fate).toList();
        return new Design(
                runs.size(),
                outlook.chance(),
                fates.stream().filter(Fate::isUnharmed).count() / (double) runs.size(),
                figures,
                outlook.yields(),
                Band.of(runs.stream().mapToDouble(Run::firstRefillS).toArray()),
                Band.of(runs.stream().mapToDouble(Run::lastHarvestS).toArray()),
                Outlook.harms(
                                fates.stream()
                                        .flatMap(f -> f.harmsAndLosses().stream().limit(1))
                                        .toList(),
                                runs.size())
                        .stream()
                        .findFirst(),
                scenario.start(),
                scenario.trays().stream().anyMatch(Tray::keepsCupsUnder));
    }

    /** Whether another harms and yields the same, as near as a step of an ensemble tells. */
    boolean isLike(Design other) {
        for (Figure figure : Figure.values()) {
            double mine = of(figure);
            double its = other.of(figure);
            double allowed =
                    switch (figure) {
                        case REFILLS, FLUSHES -> 0;
                        case LITRES, YIELD -> 0.005 * Math.abs(mine);
                        default -> Ensemble.STEP_S / Time.HOUR_S;
                    };
            if (!Double.isNaN(mine) && !(Math.abs(mine - its) <= allowed)) {
                return false;
            }
        }
        return survives() == other.survives() && isHarmless() == other.isHarmless();
    }
}
