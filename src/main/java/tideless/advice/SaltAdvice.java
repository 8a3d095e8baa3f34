package tideless.advice;

import java.util.List;
import tideless.rig.Limits;
import tideless.rig.VesselId;
import tideless.sim.Event;
import tideless.sim.Trace;
import tideless.sim.TrayTrace;
import tideless.solution.Component;
import tideless.solution.ElectricalConductivity;

/** Sodium, chloride and crusts of one vessel, and what would keep salts from building up. */
final class SaltAdvice {
    private final Trace trace;
    private final TrayTrace of;
    private final List<Warning> warnings;
    private final int lastHour;

    SaltAdvice(Trace trace, TrayTrace of, List<Warning> warnings, int lastHour) {
        this.trace = trace;
        this.of = of;
        this.warnings = warnings;
        this.lastHour = lastHour;
    }

    void add() {
        Limits limits = of.tray().limits();
        addIon(Warning.Kind.TOO_MUCH_SODIUM, Component.NA, limits.sodiumHighMolPerM3());
        addIon(Warning.Kind.TOO_MUCH_CHLORIDE, Component.CL, limits.chlorideHighMolPerM3());
        addPrecipitates(trace, of.tray().id(), warnings);
    }

    private void addIon(Warning.Kind kind, Component ion, double high) {
        int i = ion.ordinal();
        int from = Spells.first(lastHour, Spells.PATIENCE_H, h -> of.molPerM3(i, h) > high);
        if (from < 0) {
            return;
        }
        double feed = trace.scenario().feed().composition().molPerM3(ion);
        double water = trace.scenario().sourceWater().composition().molPerM3(ion);
        warnings.add(
                new Warning(
                        kind,
                        trace.clockAt((from + 1) * 3600.0),
                        of.tray().name(),
                        false,
                        "up to " + Figures.one(most(i, from)) + " mmol/L of " + ion.title(),
                        "above " + Figures.one(high) + " mmol/L",
                        "the crop leaves most of it behind; the feed brings "
                                + Figures.two(feed)
                                + " mmol/L, "
                                + Figures.two(water)
                                + " of it from the water",
                        water > 0.5 * feed
                                ? "rain or reverse-osmosis water in place of this water"
                                : "a feed without it"));
    }

    private double most(int component, int from) {
        double most = 0;
        for (int h = from; h <= lastHour; h++) {
            double held = of.molPerM3(component, h);
            if (held > most) {
                most = held;
            }
        }
        return most;
    }

    /** A crust in a tray or a reservoir, one warning a mineral. */
    static void addPrecipitates(Trace trace, VesselId vessel, List<Warning> warnings) {
        for (Event event : trace.events()) {
            if (event.kind() == Event.Kind.PRECIPITATE && event.vessel().equals(vessel)) {
                warnings.add(
                        new Warning(
                                Warning.Kind.PRECIPITATE,
                                trace.clockAt(event.atS()),
                                vessel.name(),
                                vessel.isReservoir(),
                                event.detail(),
                                "nothing may fall out",
                                "the solution stands far above what it can hold, so calcium and"
                                        + " its partner drop out of the crop's reach and onto"
                                        + " valve and roots",
                                event.detail().startsWith("gypsum")
                                        ? "a leaner feed or fresh solution sooner"
                                        : "keep the pH in its band, with softer water or acid by"
                                                + " the meter (gloves, goggles, acid into water)"));
            }
        }
    }

    /** What would make a flush come later or not at all, with its figure. */
    String cure() {
        StringBuilder text = new StringBuilder();
        double feedEc = ElectricalConductivity.at25MsPerCm(trace.scenario().feed().composition());
        text.append("a leaner feed than ").append(Figures.ec(feedEc));
        double evaporated = of.evaporationM3().sum(0, lastHour + 1);
        double left = evaporated + of.transpirationM3().sum(0, lastHour + 1);
        double share = left > 0 ? evaporated / left : 0;
        if (of.tray().openAreaM2() > 0 && share >= 0.01) {
            text.append("; a lid on the gaps of the deck, through which ")
                    .append(Figures.percent(share))
                    .append(" of the water leaves");
        }
        double waterEc =
                ElectricalConductivity.at25MsPerCm(trace.scenario().sourceWater().composition());
        if (waterEc > 0.25) {
            text.append("; rain in place of the tap, which alone reads ")
                    .append(Figures.ec(waterEc));
        }
        return text.toString();
    }
}
