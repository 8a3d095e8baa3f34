package tideless.page;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;

/**
 * How long the first thread of each process of a browser, on which its page runs, was ready and had
 * no core of the machine: told by Linux ({@code /proc/PID/task/PID/schedstat}: ns on a core, ns
 * ready without one), looked at many times a second. Nothing is told elsewhere.
 */
final class Waits implements AutoCloseable {
    private static final int EVERY_MS = 20;
    private static final double NS_PER_MS = 1e6;

    private final Running running;
    private final Map<Long, TreeMap<Long, Spent>> seen = new ConcurrentHashMap<>();
    private final Thread watcher;
    private volatile boolean isOver;

    /** What a thread has used and waited for since it began, ns. */
    private record Spent(long onCore, long ready) {}

    private Waits(Running running) {
        this.running = running;
        watcher = new Thread(this::watch, "waits");
        watcher.setDaemon(true);
    }

    /** Begins to look. */
    static Waits of(Running running) {
        Waits waits = new Waits(running);
        waits.watcher.start();
        return waits;
    }

    private void watch() {
        while (!isOver) {
            long now = System.currentTimeMillis();
            for (long process : processes()) {
                Spent spent = spent(process);
                if (spent != null) {
                    TreeMap<Long, Spent> its = seen.computeIfAbsent(process, p -> new TreeMap<>());
                    synchronized (its) {
                        its.put(now, spent);
                    }
                }
            }
            try {
                Thread.sleep(EVERY_MS);
            } catch (InterruptedException e) {
                return;
            }
        }
    }

    private List<Long> processes() {
        return Stream.concat(
                        Stream.of(running.process().toHandle()), running.process().descendants())
                .map(ProcessHandle::pid)
                .toList();
    }

    private static Spent spent(long process) {
        try {
            Path file = Path.of("/proc/" + process + "/task/" + process + "/schedstat");
            String[] told = Files.readString(file).strip().split(" ");
            return new Spent(Long.parseLong(told[0]), Long.parseLong(told[1]));
        } catch (IOException e) {
            return null; // gone, or no Linux
        }
    }

    /** What each thread of all its processes has used so far, ms by process, thread and name. */
    Map<String, Double> onCoreMs() {
        Map<String, Double> used = new TreeMap<>();
        processes().forEach(process -> used.putAll(threads(process)));
        return used;
    }

    private static Map<String, Double> threads(long process) {
        Map<String, Double> used = new TreeMap<>();
        try (Stream<Path> all = Files.list(Path.of("/proc/" + process + "/task"))) {
            for (Path thread : all.toList()) {
                String told = Files.readString(thread.resolve("schedstat"));
                String name = Files.readString(thread.resolve("comm")).strip();
                used.put(
                        process + " " + thread.getFileName() + " " + name,
                        Long.parseLong(told.substring(0, told.indexOf(' '))) / NS_PER_MS);
            }
            return used;
        } catch (IOException e) {
            return Map.of(); // gone, or no Linux
        }
    }

    /**
     * Of a span of time, how long the thread that had most to do in it was ready without a core, as
     * far as it was looked at: rather too little than too much.
     *
     * @param fromMs since 1970, ms
     */
    double waitedMs(double fromMs, double toMs) {
        long most = 0;
        long ready = 0;
        for (TreeMap<Long, Spent> its : new ArrayList<>(seen.values())) {
            synchronized (its) {
                var first = its.ceilingEntry((long) Math.ceil(fromMs));
                var last = its.floorEntry((long) toMs);
                if (first != null && last != null && first.getKey() < last.getKey()) {
                    long waited = last.getValue().ready() - first.getValue().ready();
                    long busy = waited + last.getValue().onCore() - first.getValue().onCore();
                    ready = busy > most ? waited : ready;
                    most = Math.max(most, busy);
                }
            }
        }
        return ready / NS_PER_MS;
    }

    @Override
    public void close() {
        isOver = true;
    }
}
