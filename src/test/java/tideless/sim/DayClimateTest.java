package tideless.sim;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class DayClimateTest {
    private static final double STEP_S = 600;

    private final DayClimate day = new DayClimate();

    private void add(double ppfd) {
        day.add(ppfd, ppfd * STEP_S * 1e-6, ppfd / 4.57, 20, 400, STEP_S);
    }

    @Test
    void flowers_set_as_the_lit_hours_let_them_and_all_without_any() {
        assertEquals(1, day.setFrac());
        day.addFlowers(0.5, STEP_S);
        day.addFlowers(1, 3 * STEP_S);
        assertEquals(0.875, day.setFrac());
        day.clear();
        assertEquals(1, day.setFrac());
    }

    @Test
    void the_mean_photon_of_a_lamp_falls_in_its_own_light() {
        for (int i = 0; i < 144; i++) {
            add(i < 96 ? 230 : 0);
        }
        assertEquals(230, day.litPpfdUmolPerM2S(), 1e-9);
    }

    // Half-sine of 12 hours with a midday of 800: mean 2 / pi of that, the mean photon's pi / 4.
    @Test
    void the_mean_photon_of_a_day_of_sun_falls_in_more_than_the_mean_light() {
        for (int i = 0; i < 72; i++) {
            add(800 * Math.sin(Math.PI * (i + 0.5) / 72));
        }
        assertEquals(800 * Math.PI / 4, day.litPpfdUmolPerM2S(), 0.2);
    }

    @Test
    void a_day_without_light_has_none() {
        add(0);
        assertEquals(0, day.litPpfdUmolPerM2S());
    }
}
