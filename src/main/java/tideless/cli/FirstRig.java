package tideless.cli;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tideless.advice.Advice;
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

    /** Rigs in which a change is tried before it is named; chosen. */
    private static final int MEMBERS = 20;

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
     * @param advice empty then
     */
    record Tried(Starter.Care care, String text, Reading reading, Optional<Advice> advice) {
        private List<Warning> warnings() {
            return advice.map(Advice::warnings).orElse(List.of());
        }

        boolean isSound() {
            return survives() && warnings().isEmpty();
        }

        private boolean survives() {
            return advice.map(of -> of.verdict().survives()).orElse(false);
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
            return advice.stream().flatMap(of -> of.tasks().stream()).filter(Task::isChange);
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
            Verdict verdict = advice.orElseThrow().verdict();
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
     * The first care with which a rig of these answers warns of nothing, or warns least; the one
     * that pours away least where it takes fresh solution. Where the plants are lost no other feed
     * is tried: they are lost for want of water.
     */
    Tried tried(Map<StarterQuestion, String> answers) {
        Tried best = tried(answers, Starter.feeds(answers));
        return best.isSound() ? best : tried(answers, best.care().unsuited());
    }

    private Tried tried(Map<StarterQuestion, String> answers, List<Starter.Feed> feeds) {
        Tried best = null;
        for (Starter.Feed feed : feeds) {
            Tried tried = tried(answers, new Starter.Care(feed, false, true));
            best = best == null || isBetter(tried, best) ? tried : best;
            if (best.isSound() || tried.isDry()) {
                return best;
            }
        }
        if (StarterQuestion.isFilledOnce(answers)) {
            return best;
        }
        for (Starter.Feed feed : feeds) {
            Tried tried = tried(answers, new Starter.Care(feed, true, true));
            best = isBetter(tried, best) ? tried : best;
        }
        return best;
    }

    private static boolean isBetter(Tried one, Tried other) {
        if (one.survives() != other.survives()) {
            return one.survives();
        }
        int fewer = Integer.compare(other.warnings().size(), one.warnings().size());
        return fewer > 0
                || fewer == 0
                        && one.care().isChanged()
                        && other.care().isChanged()
                        && one.drainedLitres() < other.drainedLitres();
    }

    private Tried tried(Map<StarterQuestion, String> answers, Starter.Care care) {
        String text = Starter.of(answers, care, written);
        Reading reading = ScenarioReader.read(name, new FilesInMemory(text));
        return new Tried(
                care,
                text,
                reading,
                reading instanceof Reading.Good good
                        ? Optional.of(Forecasts.adviceOf(good.scenario()))
                        : Optional.empty());
    }

    /** Options, each of which by itself makes a rig that warns of nothing. */
    List<String> instead(Map<StarterQuestion, String> answers) {
        List<String> softer =
                StarterQuestion.softer(answers.getOrDefault(StarterQuestion.WATER, "rain"));
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
        return tried.isSound() && tried.isSure();
    }
}
