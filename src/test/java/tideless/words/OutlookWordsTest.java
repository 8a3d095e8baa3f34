package tideless.words;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.VesselId;
import tideless.rig.Visits;
import tideless.sim.Event;
import tideless.study.Band;
import tideless.study.Expected;
import tideless.study.Outlook;
import tideless.study.StepError;

class OutlookWordsTest {
    private static final LocalDate START = LocalDate.of(2026, 3, 2);
    private static final double NEVER = Double.POSITIVE_INFINITY;
    private static final VesselId BASIL = VesselId.tray("basil");

    private static Outlook outlook(double chance, Outlook.LikelyHarm... harms) {
        return new Outlook(
                100, chance, List.of(harms), List.of(), List.of(), List.of(), days(0, 0, 0, 0));
    }

    /** A band of days since the start. */
    private static Band days(double low, double middle, double high, double never) {
        return new Band(86400 * low, 86400 * middle, 86400 * high, never, 100);
    }

    private static Expected expected(Band at) {
        return new Expected(
                new Expected.What(Event.Kind.REFILL, VesselId.reservoir("shelf"), 1), at, at);
    }

    @Test
    void a_sure_crop_is_said_to_be_sure() {
        assertThat(OutlookWords.chance(outlook(1), START, true))
                .isEqualTo("All of 100 rigs that yours might be come through.");
    }

    @Test
    void what_harms_some_is_named_with_its_day() {
        Outlook.LikelyHarm wilts =
                new Outlook.LikelyHarm(Event.Kind.WILTED, BASIL, 0.08, days(38, 40.6, 42, 0));
        assertThat(OutlookWords.chance(outlook(0.92, wilts), START, true))
                .isEqualTo(
                        "92 of 100 rigs that yours might be come through; in 8 of them tray basil wilts"
                                + " for hours about 11 Apr.");
        assertThat(OutlookWords.chance(outlook(0.86, wilts), START, true))
                .startsWith("Not surely, though: 86 of 100");
    }

    @Test
    void the_members_step_states_what_it_costs() {
        assertThat(OutlookWords.step(new StepError(10800, 0.000234, 0.000099, 61, 0)))
                .isEqualTo(
                        "The rigs that yours might be are stepped by 3 hours: this run, stepped so,"
                                + " differs by 0.02 % in weight at harvest, less than 0.01 % in water and 2 minutes in its dates.");
        assertThat(OutlookWords.step(new StepError(3600, 0.0001, 0.01, 60, 2)))
                .isEqualTo(
                        "The rigs that yours might be are stepped by 1 hour: this run, stepped so,"
                                + " differs by 0.01 % in weight at harvest, 1.00 % in water and 1 minute in its dates, of which 2"
                                + " come or go.");
    }

    @Test
    void a_crop_that_does_not_survive_is_not_said_to_be_saved() {
        assertThat(OutlookWords.chance(outlook(0), START, false)).startsWith("None of 100");
        assertThat(OutlookWords.chance(outlook(0.12), START, false))
                .isEqualTo("Yet 12 of 100 rigs that yours might be come through.");
    }

    @Test
    void a_date_gets_its_days_unless_all_agree() {
        assertThat(OutlookWords.days(expected(days(16.3, 18.3, 22.3, 0)), START))
                .isEqualTo("likely 18 to 24 Mar");
        assertThat(OutlookWords.days(expected(days(16.1, 16.2, 16.3, 0)), START)).isEmpty();
    }

    @Test
    void what_some_never_see_is_said_with_their_share() {
        assertThat(OutlookWords.days(expected(days(16.3, 30, NEVER, 0.2)), START))
                .isEqualTo("18 Mar or later, in 20 % of rigs like yours not at all");
        assertThat(OutlookWords.days(expected(days(NEVER, NEVER, NEVER, 0.95)), START))
                .isEqualTo("in 5 % of rigs like yours only");
    }

    @Test
    void an_absence_that_all_get_over_needs_no_share() {
        Visits.Absence away = new Visits.Absence(START, START.plusDays(9));
        assertThat(
                        OutlookWords.absence(
                                outlook(1), new Outlook.Absence(away, 1, Optional.empty()), true))
                .isEmpty();
        assertThat(
                        OutlookWords.absence(
                                outlook(1),
                                new Outlook.Absence(away, 0.86, Optional.empty()),
                                true))
                .isEqualTo("in 86 of 100 rigs that yours might be");
    }

    /** "does NOT survive (in 54 of 100)" was read as of those that do not. */
    @ParameterizedTest
    @CsvSource({
        "0.54, false, harmed in 46 of 100 rigs that yours might be",
        "0.54, true, in 54 of 100 rigs that yours might be",
        "0.37, false, lived through in only 37 of 100 rigs that yours might be",
        "0.37, true, lived through in only 37 of 100 rigs that yours might be"
    })
    void of_an_absence_it_is_said_which_rigs_are_counted(
            double chance, boolean survives, String told) {
        Visits.Absence away = new Visits.Absence(START, START.plusDays(9));
        assertThat(
                        OutlookWords.absence(
                                outlook(1),
                                new Outlook.Absence(away, chance, Optional.empty()),
                                survives))
                .isEqualTo(told);
    }
}
