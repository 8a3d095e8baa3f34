package tideless.words;

import java.util.Locale;
import tideless.advice.Quantity;
import tideless.advice.Unit;
import tideless.study.Outlook;

/** Names as a program reads them out of {@code result.json}. */
public final class MachineWords {
    private MachineWords() {}

    /** In lower case with hyphens, as "dried-out". */
    public static String of(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Of a harm, as "dried-out", "harvest-lost-to-salt" or "growth-lost-to-hunger". */
    public static String of(Outlook.LikelyHarm harm) {
        return harm.taken()
                .map(taken -> of(taken.of()) + "-lost-to-" + of(taken.by()))
                .orElse(of(harm.kind()));
    }

    /** With its unit, as "feed_ec_ms_per_cm". */
    public static String of(Quantity quantity) {
        String name = quantity.name().toLowerCase(Locale.ROOT);
        return quantity.unit() == Unit.NONE || quantity.unit() == Unit.FRACTION
                ? name
                : name + "_" + quantity.unit().name().toLowerCase(Locale.ROOT);
    }
}
