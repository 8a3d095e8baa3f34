package tideless.words;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tideless.advice.Verdict;
import tideless.rig.VesselId;

class CropWordsTest {
    private static final VesselId TRAY = VesselId.tray("salad");

    @Test
    void a_crop_that_is_not_ready_says_how_long_it_takes_or_that_it_never_will() {
        assertEquals(
                "tray salad is not ready by the end of the run: about 12 days more in such air.",
                CropWords.notReady(TRAY, "", 11.2));
        assertEquals(
                "tray salad is not ready by the end of the run: it would never be, in such air.",
                CropWords.notReady(TRAY, "", Double.POSITIVE_INFINITY));
    }

    @Test
    void a_fruit_crop_says_that_none_is_ripe() {
        assertEquals(
                "tray salad (chilli) bears no ripe fruit by the end of the run: about 30 days more in"
                        + " such air.",
                CropWords.notRipe(TRAY, "chilli", 29.2));
    }

    @Test
    void where_no_tray_drinks_nothing_is_said_to_survive() {
        Verdict empty = new Verdict(true, Optional.empty(), List.of(), List.of(), Optional.empty());
        assertEquals(List.of("Nothing grows here: no tray drinks."), VerdictWords.lines(empty));
    }
}
