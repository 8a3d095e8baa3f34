package tideless.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import tideless.advice.Cure;
import tideless.scenario.ChangedScenario;
import tideless.scenario.ChangedScenario.Change;
import tideless.scenario.Reading;

/** A tomato in a bucket with more air at its roots drinks more of it. */
class AirStonesTest {
    private static final Path BUCKET = ObeyingRigs.still("tomato-bucket");

    private static final int MEMBERS = 40;

    private static Forecast run(String days, boolean aerated) throws InterruptedException {
        Reading reading =
                ChangedScenario.read(
                        BUCKET,
                        List.of(
                                new Change("feed.ec", "1.1 mS/cm"),
                                new Change("tray.bucket.hand.to", "23 cm"),
                                new Change("tray.bucket.aerated", Boolean.toString(aerated)),
                                new Change("visits.days", days)));
        assertThat(reading).isInstanceOf(Reading.Good.class);
        return Forecasts.of(((Reading.Good) reading).scenario(), 1, MEMBERS, new InTurn());
    }

    private static List<Cure> stones(Forecast forecast) {
        return forecast.advice().warnings().stream()
                .flatMap(w -> w.cures().stream())
                .filter(c -> c.kind() == Cure.Kind.AIR_STONE)
                .toList();
    }

    private static double chance(Forecast forecast) {
        return forecast.outlook().orElseThrow().chance();
    }

    @Test
    void an_air_stone_is_told_with_the_visits_it_takes() throws InterruptedException {
        String days = "[\"mon\", \"wed\", \"fri\", \"sun\"]";
        Forecast still = run(days, false);
        assertThat(stones(still)).isNotEmpty().allMatch(stone -> !stone.then().isEmpty());
        Forecast alone = run(days, true);
        assertThat(chance(alone)).isLessThan(Outlook.SURE).isLessThan(chance(still));
    }

    @Test
    void it_is_told_alone_where_somebody_comes_often_enough() throws InterruptedException {
        Forecast still = run("daily", false);
        assertThat(stones(still)).isNotEmpty().allMatch(stone -> stone.then().isEmpty());
        assertThat(chance(run("daily", true))).isGreaterThanOrEqualTo(Outlook.SURE);
    }
}
