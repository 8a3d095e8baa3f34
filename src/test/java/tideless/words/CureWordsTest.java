package tideless.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.advice.Cure;
import tideless.advice.Facts;
import tideless.advice.Quantity;

/** What is to be written into a file, the first of it first. */
class CureWordsTest {
    private static final Facts FEED = Facts.of(Quantity.FEED_EC, 2.2).and(Quantity.WANTED_EC, 1.2);

    private static Cure kept(Facts facts, Cure... then) {
        return new Cure(Cure.Kind.KEEP_OTHERWISE, facts, List.of(then));
    }

    @Test
    void what_brings_most_is_told_first_and_the_rest_behind_it() {
        Cure cure =
                kept(
                        Facts.NONE
                                .named("mon, tue, wed, thu, fri, sat, sun")
                                .and(Quantity.GIVES_NOW, 1679)
                                .and(Quantity.GIVES_THEN, 5737)
                                .and(Quantity.CHANCE, 0.99),
                        kept(Facts.of(Quantity.EC_LIMIT, 4).and(Quantity.BAND_FROM, 2)),
                        kept(Facts.of(Quantity.LEVEL, 198)));
        assertEquals(
                "a visit every day (visits.days = \"daily\"), and then fresh solution whenever a"
                        + " nutrient is nearly gone or it reads less than 2.00 mS/cm or more than"
                        + " 4.00 mS/cm (visits.flush = \"at limit\") and top-ups to 198 mm (hand.to):"
                        + " 5737 g a plant in place of 1679 g, and 99 % of the rigs that yours might be"
                        + " come through",
                CureWords.of(cure));
    }

    @Test
    void a_feed_below_the_band_of_its_crop_is_said_to_have_no_trial_behind_it() {
        assertEquals(
                "a feed of 1.20 mS/cm in place of 2.20 mS/cm (feed.ec, or the vessel's feed_ec; the"
                        + " crop's band begins at 2.00 mS/cm: no trial stands behind less, only this"
                        + " model; a reading below that is then no reason to pour it away)",
                CureWords.of(kept(FEED.and(Quantity.BAND_FROM, 2))));
        assertEquals(
                "a feed of 1.20 mS/cm in place of 2.20 mS/cm (feed.ec, or the vessel's feed_ec)",
                CureWords.of(kept(FEED)));
        assertEquals(
                "a feed of 1.20 mS/cm in place of 2.20 mS/cm (feed.ec, or the vessel's feed_ec; more"
                        + " than growers feed it, which is up to 1.00 mS/cm)",
                CureWords.of(kept(FEED.and(Quantity.BAND_TO, 1))));
    }

    /** Or a leaner tray would be poured away at its first reading. */
    @Test
    void a_feed_below_the_band_is_not_changed_for_a_reading_below_it() {
        assertEquals(
                "fresh solution whenever a nutrient is nearly gone (the tasks say when) or it reads"
                        + " more than 4.00 mS/cm (visits.flush = \"at limit\")",
                CureWords.of(kept(Facts.of(Quantity.EC_LIMIT, 4))));
        assertEquals(
                "a leaner feed than 2.20 mS/cm: about 1.20 mS/cm (the crop's band begins at 2.00"
                        + " mS/cm; a reading below that is then no reason to pour it away)",
                CureWords.of(new Cure(Cure.Kind.LEANER_FEED, FEED.and(Quantity.BAND_FROM, 2))));
    }

    @Test
    void plain_water_for_a_share_of_top_ups_is_told_as_its_file_has_it() {
        assertEquals(
                "plain water for 70 % of each top-up (hand.water_share, from = 2026-02-01)",
                CureWords.of(
                        kept(
                                Facts.of(Quantity.LATER_SHARE, 0.7)
                                        .on(LocalDate.of(2026, 2, 1).atStartOfDay()))));
        assertEquals(
                "top-ups of feed in place of plain water (hand.with = \"solution\")",
                CureWords.of(kept(Facts.of(Quantity.LATER_SHARE, 0))));
    }

    /** A mark in the reservoir says "not low"; days that it lasts do not. */
    @Test
    void a_reservoir_refilled_by_what_it_lasts_is_not_said_not_to_be_low() {
        Facts before = Facts.NONE.named("tank").on(LocalDate.of(2026, 6, 3).atStartOfDay());
        assertEquals(
                "refill on Wed 3 Jun, the visit before (reservoir.tank.refill = \"at every visit\")",
                CureWords.of(new Cure(Cure.Kind.FILL_AT_THE_VISIT_BEFORE, before)));
        assertEquals(
                "refill on Wed 3 Jun, the visit before, though it is not low then"
                        + " (reservoir.tank.refill = \"at every visit\", without refill_below)",
                CureWords.of(
                        new Cure(
                                Cure.Kind.FILL_AT_THE_VISIT_BEFORE,
                                before.and(Quantity.REFILL_BELOW, 0.5))));
    }

    @Test
    void how_surely_it_comes_through_is_told_where_no_harvest_is() {
        assertEquals(
                "top-ups to 230 mm (hand.to): then 92 % of the rigs that yours might be come through",
                CureWords.of(kept(Facts.of(Quantity.LEVEL, 230).and(Quantity.CHANCE, 0.92))));
    }
}
