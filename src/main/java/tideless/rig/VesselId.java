package tideless.rig;

import java.util.Objects;

/**
 * Which vessel of a rig is meant: a tray and a reservoir may bear one name, two trays may not.
 *
 * @param kind tray or reservoir
 * @param name the user's name for it
 */
public record VesselId(Kind kind, String name) {

    /** Kinds of vessel. */
    public enum Kind {
        TRAY,
        RESERVOIR
    }

    public VesselId {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(name, "name");
    }

    /** The tray of that name. */
    public static VesselId tray(String name) {
        return new VesselId(Kind.TRAY, name);
    }

    /** The reservoir of that name. */
    public static VesselId reservoir(String name) {
        return new VesselId(Kind.RESERVOIR, name);
    }
}
