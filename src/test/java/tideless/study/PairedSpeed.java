package tideless.study;

import java.io.File;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.lang.reflect.Method;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/**
 * How long a season takes in two builds of this project, turn by turn in one process, by the CPU
 * time of the thread: a busy machine slows both alike, so that their ratio holds where neither time
 * does.
 *
 * <p>{@code java -cp target/test-classes tideless.study.PairedSpeed OLD OLD.toml NEW NEW.toml
 * STEP_S MEMBERS ROUNDS}; OLD and NEW are class paths with all they need, the library of
 * mathematics among it.
 */
public final class PairedSpeed {
    private final Method season;
    private final Object surroundings;
    private final Object[] members;

    private PairedSpeed(String classPath, String scenarioFile, double stepS, int size)
            throws ReflectiveOperationException, IOException {
        List<URL> urls = new ArrayList<>();
        for (String part : classPath.split(File.pathSeparator)) {
            urls.add(Path.of(part).toUri().toURL());
        }
        ClassLoader loader =
                new URLClassLoader(urls.toArray(URL[]::new), ClassLoader.getPlatformClassLoader());
        Class<?> reader = loader.loadClass("tideless.scenario.ScenarioReader");
        Object good = reader.getMethod("read", Path.class).invoke(null, Path.of(scenarioFile));
        Object scenario = good.getClass().getMethod("scenario").invoke(good);
        Class<?> kind = scenario.getClass();
        for (Method method : kind.getMethods()) {
            // Older builds call the step's record otherwise.
            if (List.of("withNumerics", "withSettings").contains(method.getName())) {
                Object step =
                        method.getParameterTypes()[0]
                                .getConstructor(double.class)
                                .newInstance(stepS);
                scenario = method.invoke(scenario, step);
            }
        }
        Class<?> around = loader.loadClass("tideless.sim.Surroundings");
        surroundings = around.getMethod("forSeasons", kind).invoke(null, scenario);
        season = loader.loadClass("tideless.sim.Simulation").getMethod("season", kind, around);
        Class<?> tolerances = loader.loadClass("tideless.study.Tolerances");
        Object usual = tolerances.getField("USUAL").get(null);
        Method draw = tolerances.getMethod("member", kind, SplittableRandom.class);
        long[] seeds = new SplittableRandom(1).longs(size).toArray();
        members = new Object[size];
        for (int i = 0; i < size; i++) {
            members[i] = draw.invoke(usual, scenario, new SplittableRandom(seeds[i]));
        }
    }

    private void run() throws ReflectiveOperationException {
        for (Object member : members) {
            season.invoke(null, member, surroundings);
        }
    }

    public static void main(String[] args) throws ReflectiveOperationException, IOException {
        double stepS = Double.parseDouble(args[4]);
        int size = Integer.parseInt(args[5]);
        int rounds = Integer.parseInt(args[6]);
        PairedSpeed[] builds = {
            new PairedSpeed(args[0], args[1], stepS, size),
            new PairedSpeed(args[2], args[3], stepS, size)
        };
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        double[][] ms = new double[2][rounds];
        double[] ratio = new double[rounds];
        for (int round = -rounds / 3; round < rounds; round++) { // the first ones only warm up
            for (int turn = 0; turn < 2; turn++) {
                int which = (round & 1) ^ turn;
                long fromNs = threads.getCurrentThreadCpuTime();
                builds[which].run();
                double took = (threads.getCurrentThreadCpuTime() - fromNs) / 1e6 / size;
                if (round >= 0) {
                    ms[which][round] = took;
                }
            }
            if (round >= 0) {
                ratio[round] = ms[1][round] / ms[0][round];
            }
        }
        Arrays.sort(ms[0]);
        Arrays.sort(ms[1]);
        Arrays.sort(ratio);
        System.out.printf(
                Locale.ROOT,
                "step %.0f s: old %.2f (least %.2f), new %.2f (least %.2f) ms a season;"
                        + " ratio %.3f, quartiles %.3f and %.3f%n",
                stepS,
                ms[0][rounds / 2],
                ms[0][0],
                ms[1][rounds / 2],
                ms[1][0],
                ratio[rounds / 2],
                ratio[rounds / 4],
                ratio[3 * rounds / 4]);
    }
}
