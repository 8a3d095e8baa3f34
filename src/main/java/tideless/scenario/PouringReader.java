package tideless.scenario;

import java.util.List;
import tideless.rig.Pouring;

/** Reads what a vessel is refilled or topped up with. */
final class PouringReader {
    private PouringReader() {}

    /**
     * @param with feed or water, always
     * @param water doses of it beside feed
     * @param share of it in each filling
     */
    static Read<Pouring> read(
            Table table,
            Key<String> with,
            Key<List<Pouring.Dose>> water,
            Key<List<DatedShare>> share,
            Run run) {
        Read<String> always = table.get(with);
        Read<List<Pouring.Dose>> doses = table.getOr(water, Read.of(List.of()), none -> "none");
        Read<List<DatedShare>> shares = table.getOr(share, Read.of(List.of()), none -> "none");
        if (!Read.allSound(always, doses, shares)) {
            return Read.faulty();
        }
        boolean onlyWater = always.value().equals("water");
        if (onlyWater && !shares.value().isEmpty()) {
            table.faultyValue(
                    share, "only beside with = \"solution\": with = \"water\" is all water", "");
            return Read.faulty();
        }
        if (onlyWater && !doses.value().isEmpty()) {
            table.faultyValue(
                    water, "only beside with = \"solution\": with = \"water\" is all water", "");
            return Read.faulty();
        }
        for (Pouring.Dose dose : doses.value()) {
            if (!run.outside(List.of(dose.from())).isEmpty()) {
                table.fault(
                        water,
                        "water from %s on".formatted(dose.from()),
                        "a day of the run (%s to %s)"
                                .formatted(run.start().value(), run.last().value()),
                        "");
                return Read.faulty();
            }
        }
        return Read.of(
                new Pouring(
                        onlyWater,
                        doses.value(),
                        shares.value().stream()
                                .map(of -> new Pouring.Share(of.from(), of.frac()))
                                .toList()));
    }
}
