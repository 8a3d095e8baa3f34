package tideless.report;

import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.Locale;
import tideless.physics.Time;
import tideless.rig.Climate;
import tideless.rig.Planting;
import tideless.rig.Scenario;
import tideless.rig.Tray;
import tideless.study.Lighting;
import tideless.words.Dates;
import tideless.words.Names;
import tideless.words.Numbers;

/** The light of every tray as a short table for a terminal, in plain ASCII. */
public final class LightTable {
    private static final String STAGE = "  %-22s%-22s%7s%7s%7s  %-9s %s";

    private final PrintWriter out;
    private final Lighting lighting;

    private LightTable(PrintWriter out, Lighting lighting) {
        this.out = out;
        this.lighting = lighting;
    }

    /** Prints the table. */
    public static void print(PrintWriter out, Lighting lighting) {
        LightTable table = new LightTable(out, lighting);
        table.line(Names.clean(lighting.scenario().title()));
        table.line(Dates.span(lighting.scenario().start(), lighting.scenario().lastDay()));
        for (Lighting.OfTray tray : lighting.trays()) {
            table.line("");
            table.print(tray);
        }
        table.line("");
        table.line(
                "Light is 400-700 nm, as a mean over the leaves; the figures are means of the stage's days.");
        if (lighting.trays().stream().anyMatch(tray -> tray.lampPpfdUmolPerM2S() > 0)) {
            table.line(
                    "All of a lamp's watts end as warmth in the room, beside what falls on the tray.");
        }
        out.flush();
    }

    private void print(Lighting.OfTray tray) {
        line(
                Names.begun(Names.tray(tray.tray()))
                        + (tray.crop().equals(tray.tray())
                                ? ""
                                : " (" + Names.clean(tray.crop()) + ")"));
        if (tray.lampPpfdUmolPerM2S() > 0) {
            line(
                    text(
                            "  lamp: %.0f umol/m2/s%s, %s h a day by its clock (%s to %s)",
                            tray.lampPpfdUmolPerM2S(),
                            tray.isDimmed() ? " at full strength, dimmed by its schedule" : "",
                            Numbers.label(tray.lampLitH()),
                            Time.clock(tray.lampOnS() % Time.DAY_S),
                            Time.clock(tray.lampOffS() % Time.DAY_S)));
            line(
                    text(
                            "  warmth of the lamp's light on the tray: %.0f W/m2, %.1f W over its"
                                    + " %s m2, %.1f MJ/m2/day",
                            tray.lampWPerM2(),
                            tray.lampWPerM2() * tray.rimAreaM2(),
                            Numbers.label(tray.rimAreaM2()),
                            tray.lampMjPerM2Day()));
        } else if (recordsLamps()) {
            line("  lamps as the file of inside air records them");
        } else {
            line("  no lamp");
        }
        if (tray.sunPeakWPerM2() > 0) {
            line(
                    text(
                            "  sun at the leaves: up to %.0f W/m2, %.1f MJ/m2/day on average;"
                                    + " brightest %.0f umol/m2/s%s",
                            tray.sunPeakWPerM2(),
                            tray.sunMjPerM2Day(),
                            tray.highestPpfdUmolPerM2S(),
                            tray.lampPpfdUmolPerM2S() > 0 ? " with lamp" : ""));
        }
        line(text(STAGE, "STAGE", "DAYS", "LAMP", "SUN", "BOTH", "NEED", "mol/m2/day"));
        for (Lighting.Stage stage : tray.stages()) {
            LocalDate from = lighting.scenario().start().plusDays(stage.firstDay());
            line(
                    text(
                            STAGE,
                            stage.name(),
                            Dates.dayMonth(from)
                                    + " to "
                                    + Dates.dayMonth(from.plusDays(stage.days() - 1L)),
                            text("%.1f", stage.lampMolPerM2Day()),
                            text("%.1f", stage.sunMolPerM2Day()),
                            text("%.1f", stage.molPerM2Day()),
                            Double.isNaN(stage.needLowMolPerM2Day())
                                    ? "not known"
                                    : Numbers.label(stage.needLowMolPerM2Day())
                                            + "-"
                                            + Numbers.label(stage.needHighMolPerM2Day()),
                            verdict(stage)));
            if (stage.isTooLittle()) {
                line("    " + cure(tray, stage, longestH(lighting.scenario(), tray.tray())));
            }
        }
    }

    private boolean recordsLamps() {
        return lighting.scenario().climate() instanceof Climate.Inside inside
                && inside.air().recordsLamps();
    }

    private static String verdict(Lighting.Stage stage) {
        if (Double.isNaN(stage.needLowMolPerM2Day())) {
            return "";
        }
        if (stage.isTooLittle()) {
            return "too little";
        }
        return stage.molPerM2Day() > stage.needHighMolPerM2Day() ? "more than of use" : "enough";
    }

    private static String cure(Lighting.OfTray tray, Lighting.Stage stage, double longestH) {
        if (!(tray.lampLitH() > 0)) {
            return text(
                    "a lamp of %.1f mol/m2/day would make up for it",
                    stage.needLowMolPerM2Day() - stage.molPerM2Day());
        }
        double hours = Math.ceil(10 * Lighting.hoursForNeed(tray, stage)) / 10; // as it is told
        String brighter =
                text(
                        "%.0f umol/m2/s in the same hours",
                        Math.ceil(Lighting.ppfdForNeed(tray, stage)));
        return hours <= longestH
                ? text("%.1f h of this lamp, or %s, would be enough", hours, brighter)
                : brighter
                        + text(
                                " would be enough; longer hours would not: it bears %.0f h a day",
                                longestH);
    }

    /** Longest day worth giving, h: most fruit crops suffer without a night; common practice. */
    static final double LONGEST_DAY_H = 18;

    /** Hours of light a day that the crop of a tray bears and that are worth giving. */
    static double longestH(Scenario scenario, String name) {
        double longestH = LONGEST_DAY_H;
        for (Tray tray : scenario.trays()) {
            if (tray.name().equals(name) && tray.planting() instanceof Planting.OfCrop crop) {
                longestH = Math.min(longestH, crop.traits().response().longestDayH());
            }
        }
        return longestH;
    }

    private void line(String text) {
        out.print(text.stripTrailing() + "\n"); // not println: the same bytes on every system
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
