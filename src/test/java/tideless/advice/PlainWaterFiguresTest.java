package tideless.advice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tideless.rig.Filling;
import tideless.rig.Pouring;
import tideless.sim.Event;
import tideless.sim.Rigs;
import tideless.sim.TraySeries;
import tideless.solution.ElectricalConductivity;

/**
 * Litres of plain water worked out by hand. The tray of 10 L reads 2 and from hour 72 on 3.2 mS/cm
 * and holds twice the feed's cations, 42 mol/m3 of charge to 21; the water brings 0.5. The reading
 * is to come to the middle of the feed's and the limit of 3.
 */
class PlainWaterFiguresTest {
    private static final double FEED_EC = ElectricalConductivity.at25MsPerCm(Rigs.FEED);
    private static final double POWER = Math.log(3.2 / FEED_EC) / Math.log(2);
    private static final double AIM = 42 * Math.pow(0.5 * (FEED_EC + 3) / 3.2, 1 / POWER);
    private static final double DRUNK = 1e-4; // m3/h

    private static MadeTrace salty(int days) {
        return new MadeTrace(days)
                .with(TraySeries.EC, h -> h < 72 ? 2 : 3.2)
                .holding(Rigs.FEED.times(2))
                .with(TraySeries.TRANSPIRATION, h -> DRUNK)
                .with(TraySeries.INFLOW, h -> DRUNK);
    }

    private static Optional<Cure> water(MadeTrace trace) {
        return trace.advice().warnings().stream()
                .filter(w -> w.kind() == Warning.Kind.TOO_SALTY)
                .flatMap(w -> w.cures().stream())
                .filter(
                        c ->
                                c.kind() == Cure.Kind.WATER_IN_THE_NEXT_REFILL
                                        || c.kind() == Cure.Kind.TOP_UP_WITH_WATER)
                .findFirst();
    }

    private static double litres(MadeTrace trace) {
        return water(trace).orElseThrow().facts().get(Quantity.WATER);
    }

    /** Of what the reservoir gives a quarter comes here: four times the water has to go in. */
    @Test
    void a_reservoir_of_two_trays_is_given_this_trays_water_over_its_share() {
        double alone = 10 * (42 - AIM) / (21 - 0.5);
        assertEquals(alone, litres(salty(30)), 1e-6);
        assertEquals(4 * alone, litres(salty(30).beside(3 * DRUNK)), 1e-6);
    }

    /**
     * The tray rose by 9 mm, 1.8 L, in 7.2 L that left: of the feed's 21 three quarters were taken.
     * A tenth of 32 L of feed stand in the reservoir and are drunk along, half of it here: 1.6 L
     * that each add what is not taken.
     */
    private static MadeTrace rising(int days) {
        return salty(days)
                .with(TraySeries.LEVEL, h -> h < 1 ? 0.041 : 0.05)
                .reservoirAt(0.1)
                .beside(DRUNK);
    }

    @Test
    void feed_that_still_stands_in_the_reservoir_is_drunk_along() {
        double taken = 0.75 * 21;
        double here = (10 * (42 - AIM) + 1.6 * (21 - taken)) / (taken - 0.5);
        assertEquals(2 * here, litres(rising(30)), 1e-6);
    }

    /** Then so much water that what is taken comes: 5.25 of the 20.5 by which feed is richer. */
    @Test
    void later_feed_is_thinned_to_what_is_taken_where_that_is_worth_it() {
        Facts told = water(rising(30)).orElseThrow().facts();
        assertEquals(0.25 * 21 / (21 - 0.5), told.get(Quantity.LATER_SHARE), 1e-9);
        assertFalse(water(salty(30)).orElseThrow().facts().has(Quantity.LATER_SHARE));
    }

    /**
     * Seven days: 96 hours of 0.1 L from hour 72 on, less 1.6 L of feed, do for part of the fall.
     */
    @Test
    void no_more_water_is_told_than_is_drunk_to_the_end_and_so_little_falls() {
        Cure cure = water(rising(7)).orElseThrow();
        double here = 0.1 * 96 - 1.6;
        assertEquals(2 * here, cure.facts().get(Quantity.WATER), 1e-9);
        double taken = 0.75 * 21;
        double after = 42 - (here * (taken - 0.5) - 1.6 * (21 - taken)) / 10;
        double ec = 3.2 * Math.pow(after / 42, POWER);
        assertEquals(ec, cure.facts().get(Quantity.EC_AFTER), 1e-9);
        assertEquals(0.4 * (3.2 - ec), cure.facts().get(Quantity.EC_AFTER_DOUBT), 1e-9);
    }

    /**
     * The balance begins with what was poured in last; after less than two days it tells nothing.
     */
    @Test
    void a_balance_needs_two_days_since_the_last_change() {
        assertTrue(water(salty(30).event(flush(24))).isPresent());
        // At the next visit, in the 80th hour, what was poured in by the 31st tells enough.
        assertTrue(water(salty(30).event(flush(31))).isPresent());
        assertTrue(water(salty(30).event(flush(32))).isEmpty());
        double alone = 10 * (42 - AIM) / (21 - 0.5);
        MadeTrace rose = salty(30).with(TraySeries.LEVEL, h -> h < 20 ? 0.041 : 0.05);
        assertEquals(alone, litres(rose.event(flush(21))), 1e-6);
    }

    private static Event flush(double hour) {
        return new Event(Event.Kind.FLUSH, hour * 3600, MadeTrace.TRAY, 0.01, 0, 0.01, 3, 0, "");
    }

    /** The whole week before counts, and nothing older. */
    @Test
    void a_balance_looks_back_a_week() {
        MadeTrace late =
                new MadeTrace(30)
                        .with(TraySeries.EC, h -> h < 200 ? 2 : 3.2)
                        .holding(Rigs.FEED.times(2))
                        .with(TraySeries.TRANSPIRATION, h -> DRUNK)
                        .with(TraySeries.INFLOW, h -> DRUNK)
                        .with(TraySeries.LEVEL, h -> h < 32 ? 0.041 : 0.05);
        assertEquals(10 * (42 - AIM) / (21 - 0.5), litres(late), 1e-6);
    }

    @Test
    void by_hand_the_water_goes_into_the_tray_and_a_sealed_one_gets_none() {
        Filling hand = new Filling.ByHand(0.05, List.of(), Pouring.FEED);
        Cure cure = water(salty(30).filled(hand)).orElseThrow();
        assertEquals(Cure.Kind.TOP_UP_WITH_WATER, cure.kind());
        assertEquals(10 * (42 - AIM) / (21 - 0.5), cure.facts().get(Quantity.WATER), 1e-6);
        assertTrue(water(salty(30).filled(new Filling.Sealed())).isEmpty());
    }

    /** What is taken is 21 a litre: water that brings as much, or more, helps nothing. */
    @Test
    void water_as_salty_as_what_the_crop_takes_is_no_cure() {
        assertTrue(water(salty(30).from(Rigs.FEED)).isEmpty());
        assertTrue(water(salty(30).from(Rigs.FEED.times(0.5))).isPresent());
    }
}
