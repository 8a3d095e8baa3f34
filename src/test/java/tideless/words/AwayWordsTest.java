package tideless.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.study.Away;
import tideless.study.Band;
import tideless.study.Outlook;
import tideless.study.Size;

/** What may be counted on comes first; what kills is named. */
class AwayWordsTest {
    private static final LocalDate FROM = LocalDate.of(2026, 4, 3);

    private static final VesselId BASIL = VesselId.tray("basil");

    private static String leave(double low, double middle, double high) {
        Away.Lasting lasting =
                new Away.Lasting(new Band(low, middle, high, 0, 40), Optional.empty());
        return AwayWords.leave(new Away.Leave(FROM, Optional.empty(), lasting, lasting));
    }

    @Test
    void the_lower_end_is_told_first_and_the_middle_behind_it() {
        assertEquals(
                "from Fri 3 Apr on you may be away 22 days (half of the rigs bear 35).",
                leave(22.4, 35.9, 68));
        assertEquals("from Fri 3 Apr on you may be away 1 day.", leave(1.1, 1.9, 3));
        assertEquals(
                "from Fri 3 Apr on you may be away 8 days (half of the rigs to the end of the run).",
                leave(8, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY));
        assertEquals(
                "from Fri 3 Apr on you may be away to the end of the run.",
                leave(
                        Double.POSITIVE_INFINITY,
                        Double.POSITIVE_INFINITY,
                        Double.POSITIVE_INFINITY));
    }

    private static Outlook.LikelyHarm death(String by) {
        return new Outlook.LikelyHarm(
                Event.Kind.DIED, BASIL, 0.1, Band.of(new double[] {86_400}), Optional.empty(), by);
    }

    @ParameterizedTest
    @CsvSource({
        "frost, to frost",
        "heat, to heat",
        "dark, for want of light",
        "salt, to salt",
    })
    void what_a_crop_is_lost_to_is_told(String by, String told) {
        assertEquals("tray basil is lost " + told, AwayWords.harm(death(by)));
    }

    @Test
    void a_loss_of_no_known_cause_is_told_as_one() {
        assertEquals("tray basil is lost", AwayWords.harm(death("")));
    }

    private static String noReservoir(Outlook.LikelyHarm why) {
        Size size =
                new Size(
                        Size.What.RESERVOIR,
                        Optional.of(VesselId.reservoir("drum")),
                        50,
                        Optional.empty(),
                        false,
                        0.2,
                        Optional.of(why),
                        1600,
                        Optional.empty(),
                        Optional.empty());
        Size.Goal goal = new Size.Goal(OptionalInt.empty(), 0.9, 40, 1);
        return SizeWords.answer(size, goal, FROM);
    }

    @Test
    void no_reservoir_cures_salt_and_nobody_is_sent_to_the_valve_for_it() {
        assertEquals(
                "No reservoir helps, not even one of 1600 L usable: tray basil is lost to salt about 4"
                        + " Apr. What fails is not its litres: look at the feed's strength, at flushes"
                        + " and at the water.",
                noReservoir(death(Event.SALT)));
        assertEquals(
                "No reservoir helps, not even one of 1600 L usable: tray basil is lost about 4 Apr."
                        + " What fails is not its litres: look at valve, tube, level and roots.",
                noReservoir(death("")));
    }
}
