package tideless.words;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import tideless.advice.Caution;
import tideless.rig.Scenario;

/** Cautions in one sentence each. */
public final class CautionWords {
    private static final String MAINS =
            "Mains beside water: a residual-current device of 30 mA or less, a metal frame"
                    + " earthed, plugs above the trays and never below them. Electrical work"
                    + " belongs to a licensed person.";
    private static final String HEIGHT =
            "A litre weighs a kilogram: fix a high reservoir to the wall, and let somebody"
                    + " who knows the wall judge the fixings.";
    private static final String CHEMICALS =
            "Never mix acid with bleach, never pour two concentrates together, lock both"
                    + " away from children.";
    private static final String LAMPS = "Do not look into bright lamps. ";
    private static final String HYGIENE = "Clean hands, vessels made for food.";

    /** What holds for every rig, as the project's first page has it. */
    public static final List<String> ALWAYS = List.of(MAINS, HEIGHT, CHEMICALS, LAMPS + HYGIENE);

    private CautionWords() {}

    /** What holds for a rig whatever is done: nothing of lamps or a high reservoir it has not. */
    public static List<String> always(Scenario scenario) {
        List<String> all = new ArrayList<>(List.of(MAINS));
        if (!scenario.reservoirs().isEmpty()) {
            all.add(HEIGHT);
        }
        all.add(CHEMICALS);
        all.add((scenario.hasLamps() ? LAMPS : "") + HYGIENE);
        return all;
    }

    /** All of them in a line or two. */
    public static String brief(Collection<Caution> cautions) {
        return "Care: "
                + String.join("; ", cautions.stream().map(CautionWords::inShort).toList())
                + ".";
    }

    private static String inShort(Caution caution) {
        return switch (caution) {
            case CHEMICALS -> "gloves, goggles, acid into water";
            case NO_BRASS_OR_ZINC -> "no brass or zinc";
            case LIGHT_TIGHT -> "light-tight";
            case MOSQUITO_MESH -> "mosquito mesh";
            case LAMP_DRIVERS -> "plugs off the deck, residual-current device";
            case TAP_AND_TRAY -> "a tap at the reservoir, a basin below";
            case DRAINED_FEED -> "old feed on beds, not in ditches";
            case NO_SPRAY -> "do not spray";
            case ROOF_RAIN -> "no roof rain on raw leaves";
        };
    }

    /** The sentence, without a full stop. */
    public static String of(Caution caution) {
        return switch (caution) {
            case CHEMICALS ->
                    "gloves and goggles with salts, acids and bases, acid into water; in a school"
                            + " its own chemical assessment comes first";
            case NO_BRASS_OR_ZINC -> "no brass, copper or galvanised parts: they poison the feed";
            case LIGHT_TIGHT -> "deck, tray and reservoir light-tight, or algae take over";
            case MOSQUITO_MESH -> "fine mesh over every opening, against mosquitoes";
            case LAMP_DRIVERS ->
                    "lamp drivers and plugs off the deck, drip loops, a residual-current device";
            case TAP_AND_TRAY ->
                    "a tap at the reservoir, and below the bench what catches all it holds: a valve"
                            + " that sticks empties it";
            case DRAINED_FEED ->
                    "drained feed goes on beds or lawn like a watering, never into ditch or stream;"
                            + " ask what local rules say";
            case NO_SPRAY -> "warm still water can carry legionella: do not spray or splash it";
            case ROOF_RAIN -> "rain off a roof must not touch leaves that are eaten raw";
        };
    }
}
