package tideless.drawing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.study.Forecast;
import tideless.study.Forecasts;

/** Draws the rig of a scenario into a folder, to be looked at: scenario, folder. */
final class DrawRig {
    private DrawRig() {}

    public static void main(String[] args) throws IOException {
        for (RigPicture.Drawing drawing : RigPicture.scenes(forecast(args[0]), 0.1)) {
            Files.writeString(Path.of(args[1], drawing.name() + ".svg"), drawing.svg());
        }
    }

    static Forecast forecast(String scenario) {
        Reading reading = ScenarioReader.read(Path.of(scenario));
        if (reading instanceof Reading.Good good) {
            return Forecasts.of(good.scenario(), 1);
        }
        throw new IllegalArgumentException(reading.toString());
    }
}
