package tideless.study;

import java.util.Optional;
import tideless.rig.Liquid;
import tideless.solution.Acidity;
import tideless.solution.Component;
import tideless.solution.Composition;
import tideless.solution.Contact;
import tideless.solution.ElectricalConductivity;
import tideless.solution.Feed;
import tideless.solution.Reagent;

/**
 * Makes a feed again in another strength or water: what it holds beyond its water is scaled, and
 * brought back to its pH in air.
 */
final class FeedMaker {
    /** To which growers bring a feed; common practice, no source. */
    private static final double USUAL_PH = 5.8;

    /** Phosphoric acid stops there, a full feed's phosphate, and what rounding adds, mmol/L. */
    private static final double MOST_PHOSPHORIC_MOL_PER_M3 = 1.05;

    private final Composition salts;
    private final double ph;

    /**
     * @param feed as it is
     * @param water it was made with
     */
    FeedMaker(Composition feed, Composition water) {
        double[] beyond = feed.toArray();
        for (int i = 0; i < beyond.length; i++) {
            beyond[i] = Math.max(0, beyond[i] - water.molPerM3(i));
        }
        salts = Composition.of(beyond).with(Component.C, 0);
        ph = Acidity.phInAir(feed, 25, ElectricalConductivity.AIR_CO2_PPM);
    }

    /** The same for a water without lime: without the acid that took it, to the usual pH. */
    FeedMaker inSoftWater() {
        double acid = Math.max(0, -salts.fixedChargeMolPerM3() + salts.molPerM3(Component.P));
        boolean isPhosphoric =
                acid <= MOST_PHOSPHORIC_MOL_PER_M3 && salts.molPerM3(Component.P) > acid;
        Component of = isPhosphoric ? Component.P : Component.NO3;
        Composition without = salts.with(of, Math.max(0, salts.molPerM3(of) - acid));
        return new FeedMaker(without, Math.min(ph, USUAL_PH));
    }

    private FeedMaker(Composition salts, double ph) {
        this.salts = salts;
        this.ph = ph;
    }

    /** The feed of an EC in a water; empty where it cannot be made. */
    Optional<Composition> made(double ecMsPerCm, Composition water) {
        for (Reagent reagent :
                new Reagent[] {
                    Reagent.named("phosphoric-30").orElseThrow(),
                    Reagent.named("potassium-bicarbonate-10").orElseThrow()
                }) {
            Optional<Feed.Made> made =
                    Feed.madeWithinCap(salts, water, ecMsPerCm, ph, reagent, Contact.OUTDOOR_AIR)
                            .made();
            boolean stopped = made.isPresent() && made.get().reagentMolPerM3() > 0;
            if (stopped || made.isPresent() && made.get().phReached()) {
                return Optional.of(made.get().composition());
            }
        }
        return Optional.empty();
    }

    /** The same by its old name. */
    Optional<Liquid> made(double ecMsPerCm, Liquid feed, Composition water) {
        return made(ecMsPerCm, water).map(made -> new Liquid(feed.name(), made));
    }
}
