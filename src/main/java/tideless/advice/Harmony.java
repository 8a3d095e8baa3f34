package tideless.advice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.BiPredicate;
import tideless.rig.VesselId;

/**
 * Keeps one output from asking for a stronger and a leaner feed at once.
 *
 * <p>A tray in which salts pile up while no nutrient runs short is not fed too lean, whatever its
 * EC was before. Where one tray wants the feed stronger and another wants it leaner, both are told
 * that they do not share a feed.
 */
final class Harmony {
    private Harmony() {}

    static void bringTo(Findings out, BiPredicate<VesselId, VesselId> hangOnOne) {
        Set<VesselId> salty = vessels(out.warnings, Warning.Kind.TOO_SALTY);
        out.tasks.stream()
                .filter(t -> t.kind() == Task.Kind.FLUSH)
                .forEach(t -> salty.add(t.vessel()));
        Set<VesselId> shortOfOne = vessels(out.warnings, Warning.Kind.SHORT_OF_ONE);
        out.warnings.removeIf(
                w ->
                        w.kind() == Warning.Kind.TOO_LEAN
                                && salty.contains(w.vessel())
                                && !shortOfOne.contains(w.vessel()));
        out.tasks.removeIf(
                t ->
                        t.kind() == Task.Kind.FRESH_SOLUTION
                                && !t.isDone()
                                && salty.contains(t.vessel())
                                && !shortOfOne.contains(t.vessel()));
        Set<VesselId> stronger = asking(out, Cure.Kind.STRONGER_FEED);
        Set<VesselId> leaner = asking(out, Cure.Kind.LEANER_FEED);
        if (stronger.isEmpty() || leaner.isEmpty()) {
            return;
        }
        boolean isOneReservoir =
                stronger.stream()
                        .anyMatch(one -> leaner.stream().anyMatch(b -> hangOnOne.test(one, b)));
        Cure apart =
                new Cure(
                        isOneReservoir ? Cure.Kind.DO_NOT_SHARE_A_FEED : Cure.Kind.OWN_FEED,
                        Facts.NONE.named(names(stronger) + " / " + names(leaner)));
        out.tasks.replaceAll(
                t -> t.withCures(withoutFeed(t.cures(), stronger.equals(leaner) ? null : apart)));
        out.warnings.replaceAll(
                w -> w.withCures(withoutFeed(w.cures(), stronger.equals(leaner) ? null : apart)));
    }

    private static List<Cure> withoutFeed(List<Cure> cures, Cure apart) {
        List<Cure> kept = new ArrayList<>();
        for (Cure cure : cures) {
            boolean ofFeed =
                    cure.kind() == Cure.Kind.STRONGER_FEED || cure.kind() == Cure.Kind.LEANER_FEED;
            if (!ofFeed) {
                kept.add(cure);
            } else if (apart != null && !kept.contains(apart)) {
                kept.add(apart);
            }
        }
        return kept;
    }

    private static Set<VesselId> vessels(List<Warning> warnings, Warning.Kind kind) {
        Set<VesselId> found = ordered();
        warnings.stream().filter(w -> w.kind() == kind).forEach(w -> found.add(w.vessel()));
        return found;
    }

    private static Set<VesselId> asking(Findings out, Cure.Kind kind) {
        Set<VesselId> found = ordered();
        out.warnings.stream()
                .filter(w -> w.cures().stream().anyMatch(c -> c.kind() == kind))
                .forEach(w -> found.add(w.vessel()));
        out.tasks.stream()
                .filter(t -> t.cures().stream().anyMatch(c -> c.kind() == kind))
                .forEach(t -> found.add(t.vessel()));
        return found;
    }

    private static Set<VesselId> ordered() {
        return new TreeSet<>(Comparator.comparing(VesselId::kind).thenComparing(VesselId::name));
    }

    private static String names(Set<VesselId> vessels) {
        return String.join(", ", vessels.stream().map(VesselId::name).toList());
    }
}
