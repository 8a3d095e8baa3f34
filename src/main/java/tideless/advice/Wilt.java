package tideless.advice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tideless.physics.Time;
import tideless.sim.Event;

/**
 * A spell of wilting.
 *
 * @param kind {@link Warning.Kind#SALT_WILTED} of a solution that is too strong, else {@link
 *     Warning.Kind#WILTED}
 * @param isDrunkDown whether what is left is strong because it is little: then it is water that is
 *     wanted
 * @param fromS seconds since the start
 * @param toS when it is over, or the crop's end
 */
record Wilt(Warning.Kind kind, boolean isDrunkDown, double fromS, double toS) {
    /** Wilting longer than this is harm, h; fixed by what {@code result.json} promises. */
    static final double BORNE_H = 6;

    /** All of a crop, those of roots in want of water first. */
    static List<Wilt> of(TrayCase tray) {
        List<Wilt> wilts = new ArrayList<>();
        addSpells(tray, Event.Kind.WILTED, Event.Kind.RECOVERED, wilts);
        addSpells(tray, Event.Kind.SALT_WILTED, Event.Kind.SALT_BORNE, wilts);
        return wilts;
    }

    /** The first that harms of a vessel that was drunk down; empty for none. */
    static Optional<Wilt> firstDrunkDown(TrayCase tray) {
        return of(tray).stream().filter(w -> w.isDrunkDown() && w.isHarm()).findFirst();
    }

    /** Of one cause, from one kind of event to another or the crop's end. */
    private static void addSpells(
            TrayCase tray, Event.Kind begins, Event.Kind ends, List<Wilt> wilts) {
        Optional<Event> began = Optional.empty();
        for (Event event : tray.events()) {
            if (event.kind() == begins) {
                began = Optional.of(event);
            } else if (event.kind() == ends) {
                began.ifPresent(from -> wilts.add(of(from, event.atS())));
                began = Optional.empty();
            }
        }
        began.ifPresent(from -> wilts.add(of(from, (tray.lastHour + 1) * Time.HOUR_S)));
    }

    private static Wilt of(Event began, double toS) {
        boolean isDrunkDown = began.detail().equals(Event.DRUNK_DOWN);
        boolean isOfSalt = began.kind() == Event.Kind.SALT_WILTED && !isDrunkDown;
        return new Wilt(
                isOfSalt ? Warning.Kind.SALT_WILTED : Warning.Kind.WILTED,
                isDrunkDown,
                began.atS(),
                toS);
    }

    /** Whether no crop gets over it. */
    boolean isHarm() {
        return toS - fromS > BORNE_H * Time.HOUR_S;
    }
}
