package tideless.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tideless.advice.Task;
import tideless.advice.Verdict;
import tideless.advice.Warning;
import tideless.scenario.FilesInMemory;
import tideless.scenario.Reading;
import tideless.scenario.ScenarioReader;
import tideless.scenario.Starter;
import tideless.scenario.StarterQuestion;
import tideless.study.Forecasts;
import tideless.study.InTurn;
import tideless.study.Outlook;
import tideless.words.VerdictWords;
import tideless.words.WarningWords;

/** Looks for a first rig that warns of nothing: by its care, and failing that by other answers. */
final class FirstRig {
    /**
     * So many times as deep, or as large a reservoir, is tried; common sizes are that far apart.
     */
    private static final double[] TIMES = {1.25, 1.5, 2, 3, 4, 6};

    /** Feeds that are tried with another answer: all of them would take a minute. */
    private static final int MOST_FEEDS = 3;

    /** So many feeds that a run warns nothing of are asked of a whole forecast: seconds each. */
    private static final int MOST_JUDGED = 4;

    /** Rigs in which a change is tried before it is named; chosen. */
    private static final int MEMBERS = 20;

    /** A crop that loses so much less of its growth is not told apart by a grower; assumed. */
    private static final double AS_GOOD_FRAC = 0.05;

    private final String name;
    private final Starter.Written written;

    /**
     * @param name of the file
     * @param written in which units
     */
    FirstRig(String name, Starter.Written written) {
        this.name = name;
        this.written = written;
    }

    /**
     * A scenario that was tried.
     *
     * @param care with which it is tended
     * @param text as it is written
     * @param reading faulty where the answers make no rig
     * @param run empty then
     */
    record Tried(Starter.Care care, String text, Reading reading, Optional<Forecasts.Sketch> run) {
        private List<Warning> warnings() {
            return run.map(of -> of.advice().warnings()).orElse(List.of());
        }

        boolean isSound() {
            return survives() && warnings().isEmpty();
        }

        /** Whether no other feed needs to be looked for. */
        private boolean suits() {
            return isSound() && feedTookFrac() <= AS_GOOD_FRAC;
        }

        private boolean survives() {
            return run.map(of -> of.advice().verdict().survives()).orElse(false);
        }

        private double feedTookFrac() {
            return run.map(Forecasts.Sketch::feedTookFrac).orElse(1.0);
        }

        /** Whether nine in ten of the rigs that this one might be come through. */
        boolean isSure() {
            return reading instanceof Reading.Good good
                    && Outlook.of(good.scenario(), MEMBERS, 1, new InTurn())
                            .map(Outlook::survives)
                            .orElse(false);
        }

        /** Lost for want of water, and not by salt. */
        private boolean isDry() {
            return !survives()
                    && warnings().stream()
                            .noneMatch(
                                    warning ->
                                            warning.kind() == Warning.Kind.SALT_WILTED
                                                    || warning.kind() == Warning.Kind.TOO_SALTY);
        }

        private double drainedLitres() {
            return changed().mapToDouble(Task::drainLitres).sum();
        }

        private long changes() {
            return changed().count();
        }

        private Stream<Task> changed() {
            return run.stream().flatMap(of -> of.advice().tasks().stream()).filter(Task::isChange);
        }

        /** What is to be known of it before it is built. */
        List<String> told() {
            if (warnings().isEmpty() && survives()) {
                return changes() > 0
                        ? List.of(
                                "Its solution is to be poured away and mixed anew, "
                                        + changes()
                                        + (changes() > 1 ? " times" : " time")
                                        + " in this run, which says when.")
                        : List.of();
            }
            Verdict verdict = run.orElseThrow().advice().verdict();
            return List.of(
                    verdict.survives()
                            ? "As it stands it warns: "
                                    + warnings().stream()
                                            .map(warning -> WarningWords.head(warning, true))
                                            .collect(Collectors.joining("; "))
                                    + "."
                            : VerdictWords.lines(verdict).get(0));
        }
    }

    /**
     * The first care with which a rig of these answers warns of nothing and that costs its crops
     * next to nothing; failing that, of those with which they lose least by salt and hunger the one
     * that warns least, and pours away least where it takes fresh solution. Where the plants are
     * lost no other feed is tried: they are lost for want of water.
     */
    Tried tried(Map<StarterQuestion, String> answers) {
        Tried best = judged(tried(answers, Starter.feeds(answers)));
        if (best.isSound()) {
            return best;
        }
        Tried said = tried(answers, best.care().unsuited());
        return new Tried(said.care(), said.text(), said.reading(), best.run());
    }

    private Tried tried(Map<StarterQuestion, String> answers, List<Starter.Feed> feeds) {
        List<Tried> all = new ArrayList<>();
        int judged = 0;
        for (boolean isChanged : new boolean[] {false, true}) {
            for (Starter.Feed feed : feeds) {
                Tried tried = tried(answers, new Starter.Care(feed, isChanged, true));
                if (!isChanged && tried.suits() && judged++ < MOST_JUDGED) {
                    tried = judged(tried);
                }
                all.add(tried);
                if (!isChanged && (tried.suits() || tried.isDry())) {
                    return best(all);
                }
            }
            if (StarterQuestion.isFilledOnce(answers)) {
                break;
            }
        }
        return best(all);
    }

    /**
     * The same as a forecast tells it, which runs what is not known of the crop at both ends: a pH
     * that comes out of its band either way is a warning then, and in one run it is none.
     */
    private static Tried judged(Tried tried) {
        return tried.reading() instanceof Reading.Good good
                ? new Tried(
                        tried.care(),
                        tried.text(),
                        tried.reading(),
                        Optional.of(
                                new Forecasts.Sketch(
                                        Forecasts.of(good.scenario(), 1).advice(),
                                        tried.feedTookFrac())))
                : tried;
    }

    /** A strength that growers use comes first of those that are as good. */
    static Tried best(List<Tried> all) {
        boolean survive = all.stream().anyMatch(Tried::survives);
        List<Tried> left = all.stream().filter(tried -> tried.survives() == survive).toList();
        double least = left.stream().mapToDouble(Tried::feedTookFrac).min().orElseThrow();
        return left.stream()
                .filter(tried -> tried.feedTookFrac() <= least + AS_GOOD_FRAC)
                .min(
                        Comparator.comparingInt((Tried tried) -> tried.warnings().size())
                                .thenComparing(tried -> tried.care().isChanged())
                                .thenComparingDouble(Tried::drainedLitres))
                .orElseThrow();
    }

    private Tried tried(Map<StarterQuestion, String> answers, Starter.Care care) {
        String text = Starter.of(answers, care, written);
        Reading reading = ScenarioReader.read(name, new FilesInMemory(text));
        return new Tried(
                care,
                text,
                reading,
                reading instanceof Reading.Good good
                        ? Optional.of(Forecasts.sketch(good.scenario()))
                        : Optional.empty());
    }

    /**
     * Options, each of which by itself makes a rig that warns of nothing.
     *
     * @param feed of the rig as it was answered
     */
    List<String> instead(Map<StarterQuestion, String> answers, Starter.Feed feed) {
        List<String> softer =
                StarterQuestion.softer(answers.getOrDefault(StarterQuestion.WATER, "rain"), feed);
        Optional<String> water = first(answers, StarterQuestion.WATER, softer);
        if (water.isPresent()) {
            return List.of(water.get());
        }
        List<String> options = new ArrayList<>();
        fewerPlants(answers).ifPresent(options::add);
        String size = answers.get(StarterQuestion.SIZE);
        first(answers, StarterQuestion.SIZE, deeper(size)).ifPresent(options::add);
        if (answers.containsKey(StarterQuestion.RESERVOIR)) {
            String volume = answers.get(StarterQuestion.RESERVOIR);
            first(answers, StarterQuestion.RESERVOIR, larger(volume)).ifPresent(options::add);
        } else if (StarterQuestion.isFilledOnce(answers)) {
            first(answers, StarterQuestion.FILLING, List.of("hand")).ifPresent(options::add);
        }
        if (!StarterQuestion.isFilledOnce(answers)) {
            first(answers, StarterQuestion.VISITS, List.of("daily")).ifPresent(options::add);
        }
        return options;
    }

    private Optional<String> fewerPlants(Map<StarterQuestion, String> answers) {
        int most = 0;
        int tooMany = Starter.mostPlants(answers);
        while (tooMany - most > 1) {
            int middle = (most + tooMany) / 2;
            if (isSound(answers, StarterQuestion.PLANTS, Starter.fewerPlants(answers, middle))) {
                most = middle;
            } else {
                tooMany = middle;
            }
        }
        return most > 0
                ? Optional.of(option(StarterQuestion.PLANTS, Starter.fewerPlants(answers, most)))
                : Optional.empty();
    }

    private static List<String> deeper(String size) {
        List<String> sizes = new ArrayList<>();
        for (double times : TIMES) {
            StarterQuestion.deeper(size, times).ifPresent(sizes::add);
        }
        return sizes;
    }

    private static List<String> larger(String volume) {
        List<String> volumes = new ArrayList<>();
        for (double times : TIMES) {
            StarterQuestion.larger(volume, times).ifPresent(volumes::add);
        }
        return volumes;
    }

    /** The option of the first answer that makes a sound rig. */
    private Optional<String> first(
            Map<StarterQuestion, String> answers, StarterQuestion question, List<String> others) {
        return others.stream()
                .filter(other -> isSound(answers, question, other))
                .findFirst()
                .map(other -> option(question, other));
    }

    private static String option(StarterQuestion question, String answer) {
        return question.option() + (answer.contains(" ") ? " \"" + answer + '"' : " " + answer);
    }

    private boolean isSound(
            Map<StarterQuestion, String> answers, StarterQuestion question, String other) {
        Map<StarterQuestion, String> changed = new EnumMap<>(answers);
        changed.put(question, other);
        List<Starter.Feed> feeds = Starter.feeds(changed);
        Tried tried = tried(changed, feeds.subList(0, Math.min(MOST_FEEDS, feeds.size())));
        return tried.isSound() && tried.isSure() && judged(tried).isSound();
    }
}
