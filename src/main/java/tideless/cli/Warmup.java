package tideless.cli;

import java.util.List;
import tideless.scenario.FirstParse;

/**
 * Loads what a run will need while its command line is still being read: a run is short, and much
 * of it is the loading of classes, which another processor can do meanwhile. What is printed and
 * written does not depend on it.
 */
final class Warmup {
    private Warmup() {}

    static void begin(List<String> args) {
        if (!args.isEmpty() && args.get(0).equals("run") && !args.contains("--help")) {
            start(FirstParse::unfold);
            if (!args.contains("--no-plots")) {
                start(tideless.report.Warmup::drawOnce);
            }
        }
    }

    private static void start(Runnable load) {
        Thread thread = new Thread(load, "warm-up");
        thread.setDaemon(true);
        // What fails here fails again where it is told of.
        thread.setUncaughtExceptionHandler((one, failure) -> {});
        thread.start();
    }
}
