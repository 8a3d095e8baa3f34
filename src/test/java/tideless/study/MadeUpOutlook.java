package tideless.study;

import java.util.List;

/** What a hundred rigs might be, of which only a chance and harms are told. */
public final class MadeUpOutlook {
    private MadeUpOutlook() {}

    /** Of so many that come through; the likeliest of harms first. */
    public static Outlook of(double chance, Outlook.LikelyHarm... harms) {
        return new Outlook(
                100,
                chance,
                List.of(harms),
                List.of(),
                List.of(),
                List.of(),
                Band.of(new double[] {50}));
    }
}
