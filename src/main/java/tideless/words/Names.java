package tideless.words;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import tideless.advice.Task;
import tideless.advice.Warning;
import tideless.rig.Tray;
import tideless.rig.VesselId;
import tideless.sim.Stress;

/** What a grower calls kinds of tasks, warnings and vessels. */
public final class Names {
    /** Names told one by one. */
    private static final int LISTED = 5;

    /** Names that say what stands there. */
    private static final List<String> VESSELS =
            List.of(
                    "tray", "bucket", "pail", "tub", "trough", "tank", "jar", "barrel", "crate",
                    "tote", "bath");

    private Names() {}

    /** The same as the beginning of a sentence. */
    public static String begun(String text) {
        return text.startsWith("pH")
                ? text
                : text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    /** As "fresh solution". */
    public static String of(Task.Kind kind) {
        if (kind == Task.Kind.TRANSPLANT) {
            return "ready to transplant";
        }
        return MachineWords.of(kind).replace('-', ' ');
    }

    /** As "too salty". */
    public static String of(Warning.Kind kind) {
        return switch (kind) {
            case DIED -> "crop lost";
            case STRANDED -> "roots stranded";
            case DROWNED -> "air roots drowned";
            case CUPS_UNDER -> "cups under water";
            case SHORT_OF_ONE -> "short of one nutrient";
            case PH_OUT -> "pH out";
            default -> MachineWords.of(kind).replace('-', ' ');
        };
    }

    /** What takes of a crop's growth. */
    public static String of(Stress stress) {
        return switch (stress) {
            case SALT -> "salt";
            case WATER -> "want of water";
            case AIR -> "want of air at the roots";
            case WARMTH -> "a solution too warm or too cold";
            case HUNGER -> "hunger";
        };
    }

    /** As "tray basil"; as "bucket-2" where a tray's name says what it is. */
    public static String of(VesselId vessel) {
        return vessel.kind() == VesselId.Kind.TRAY
                ? tray(vessel.name())
                : MachineWords.of(vessel.kind()) + " " + clean(vessel.name());
    }

    /** As "tray basil", or "bucket-2". */
    public static String tray(String name) {
        return trays(List.of(clean(name)));
    }

    /** As "trays left and right", or "bucket-1 and bucket-2". */
    public static String trays(List<String> names) {
        return vessels(VesselId.Kind.TRAY, names, names);
    }

    /**
     * Vessels of a kind.
     *
     * @param names of each
     * @param shown how each is shown, as with its crop; equal ones once
     */
    static String vessels(VesselId.Kind kind, Collection<String> names, List<String> shown) {
        boolean told = kind == VesselId.Kind.TRAY && names.stream().allMatch(Names::isVessel);
        String word = MachineWords.of(kind) + (shown.size() > 1 ? "s " : " ");
        return (told ? "" : word) + list(shown);
    }

    /** As "bucket", "Bucket-2" or "tub b". */
    private static boolean isVessel(String name) {
        String plain = name.toLowerCase(Locale.ROOT);
        for (String vessel : VESSELS) {
            if (plain.startsWith(vessel) && isNumber(plain.substring(vessel.length()))) {
                return true;
            }
        }
        return false;
    }

    /** Whether a name's end tells one of several: as "", "2", "-2" or "_b". */
    private static boolean isNumber(String end) {
        boolean apart = !end.isEmpty() && "-_ ".indexOf(end.charAt(0)) >= 0;
        String bare = apart ? end.substring(1) : end;
        return bare.chars().allMatch(c -> c >= '0' && c <= '9') || apart && bare.length() == 1;
    }

    /** As "tray left (basil)"; without a crop as {@link #of(VesselId)}. */
    public static String of(VesselId vessel, String crop) {
        return of(vessel) + ofCrop(crop);
    }

    /** Vessels of one kind that are done alike, as "trays left and right (basil), each". */
    public static String each(List<VesselId> alike, String crop) {
        VesselId first = alike.get(0);
        if (alike.size() == 1) {
            return of(first, crop);
        }
        List<String> names = alike.stream().map(VesselId::name).map(Names::clean).toList();
        return vessels(first.kind(), names, names) + ofCrop(crop) + ", each";
    }

    /** As " (basil)"; nothing without a crop. */
    public static String ofCrop(String crop) {
        return crop.isEmpty() ? "" : " (" + clean(crop) + ")";
    }

    /** What grows in a tray, as "lettuce" or "lettuce, then basil". */
    public static String crops(Tray tray) {
        List<String> crops = new ArrayList<>();
        for (int i = 0; i < tray.plantings(); i++) {
            crops.add(clean(tray.planted(i).planting().cropName()));
        }
        return String.join(", then ", crops);
    }

    /** As "a, b and c"; from six on as "a, b, c and 9 more". */
    public static String list(List<String> names) {
        int told = names.size() > LISTED ? LISTED - 2 : names.size() - 1;
        String last =
                names.size() > LISTED ? names.size() - told + " more" : names.get(names.size() - 1);
        return told == 0 ? last : String.join(", ", names.subList(0, told)) + " and " + last;
    }

    /** A user's text without what could command a terminal. */
    public static String clean(String text) {
        StringBuilder clean = new StringBuilder();
        text.codePoints()
                .map(c -> Character.isISOControl(c) ? ' ' : c)
                .forEach(clean::appendCodePoint);
        return clean.toString().strip();
    }
}
