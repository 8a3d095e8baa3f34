package tideless.page;

import tideless.advice.Measure;
import tideless.advice.Sizing;
import tideless.advice.Task;
import tideless.advice.Verdict;
import tideless.advice.Warning;
import tideless.sim.Event;
import tideless.sim.Ledger;
import tideless.sim.ReservoirSeries;
import tideless.sim.ReservoirTrace;
import tideless.sim.Series;
import tideless.sim.Trace;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;
import tideless.solution.Component;
import tideless.study.Forecast;
import tideless.words.TaskWords;
import tideless.words.VerdictWords;
import tideless.words.WarningWords;

/**
 * All that a forecast holds as lines of words and numbers, every number as the sixteen hexadecimal
 * digits of its bits: what two machines must agree upon.
 */
final class EveryBit {
    private final StringBuilder text = new StringBuilder();

    private EveryBit() {}

    static String of(Forecast forecast) {
        EveryBit bits = new EveryBit();
        bits.word(forecast.trace().scenario().digest()).endLine();
        bits.trace(forecast.trace());
        bits.trace(forecast.unlimited());
        bits.verdict(forecast.advice().verdict());
        forecast.advice().tasks().forEach(bits::task);
        forecast.advice().warnings().forEach(bits::warning);
        forecast.advice().sizings().forEach(bits::sizing);
        return bits.text.toString();
    }

    private void trace(Trace trace) {
        for (TrayTrace tray : trace.trays()) {
            String name = tray.tray().name();
            for (TraySeries kind : TraySeries.values()) {
                series("tray", name, kind.column().name(), tray.of(kind));
            }
            for (int i = 0; i < Component.COUNT; i++) {
                series("tray", name, Component.at(i).symbol(), tray.componentMol().get(i));
            }
        }
        for (ReservoirTrace reservoir : trace.reservoirs()) {
            String name = reservoir.reservoir().name();
            for (ReservoirSeries kind : ReservoirSeries.values()) {
                series("reservoir", name, kind.column().name(), reservoir.of(kind));
            }
            for (int i = 0; i < Component.COUNT; i++) {
                Series mol = reservoir.componentMol().get(i);
                series("reservoir", name, Component.at(i).symbol(), mol);
            }
        }
        trace.events().forEach(this::event);
        ledger(trace.water());
        trace.components().forEach(this::ledger);
    }

    private void series(String kind, String vessel, String name, Series series) {
        word(kind).word(vessel).word(name);
        for (int i = 0; i < series.size(); i++) {
            number(series.at(i));
        }
        endLine();
    }

    private void event(Event event) {
        word("event").word(event.kind().name()).number(event.atS()).word(event.vessel().toString());
        number(event.volumeM3()).number(event.drainedM3()).number(event.ecMsPerCm());
        number(event.freshG()).word(event.detail()).endLine();
    }

    private void ledger(Ledger ledger) {
        word("ledger").word(ledger.name()).number(ledger.start()).number(ledger.end());
        for (Ledger.Entry entry : ledger.in()) {
            word(entry.what()).number(entry.amount());
        }
        for (Ledger.Entry entry : ledger.out()) {
            word(entry.what()).number(entry.amount());
        }
        endLine();
    }

    private void verdict(Verdict verdict) {
        VerdictWords.lines(verdict).forEach(line -> word("verdict").word(line).endLine());
        for (Verdict.Absence absence : verdict.absences()) {
            word("absence").word(absence.from().toString()).word(absence.to().toString());
            number(absence.lowestLevelM()).word(String.valueOf(absence.lowestIn())).endLine();
        }
        for (Verdict.WaterLeft left : verdict.waterLeft()) {
            word("water left").word(left.tray().toString()).word(left.at().toString());
            number(left.hours()).endLine();
        }
    }

    private void task(Task task) {
        word("task").word(task.kind().name()).word(task.vessel().toString());
        word(task.due().toString()).number(task.litres()).number(task.drainLitres());
        measure(task.measure()).word(TaskWords.text(task)).endLine();
    }

    private void warning(Warning warning) {
        word("warning").word(warning.kind().name()).word(warning.vessel().toString());
        word(warning.from().toString()).word(warning.until().toString());
        measure(warning.measure()).word(WarningWords.text(warning)).endLine();
    }

    private EveryBit measure(Measure measure) {
        return number(measure.value()).number(measure.limit()).word(measure.unit().name());
    }

    private void sizing(Sizing sizing) {
        word("sizing").word(sizing.reservoir()).number(sizing.longestGapDays());
        number(sizing.enoughUsableLitres()).number(sizing.usableLitres());
        word(String.valueOf(sizing.outgrownFrom()));
        sizing.daysWhenFull().forEach(this::number);
        endLine();
    }

    private EveryBit word(String word) {
        text.append(word).append('\t');
        return this;
    }

    private EveryBit number(double value) {
        long bits = Double.doubleToLongBits(value); // one NaN, whichever the machine made
        for (int shift = 60; shift >= 0; shift -= 4) {
            text.append("0123456789abcdef".charAt((int) (bits >>> shift) & 15));
        }
        text.append('\t');
        return this;
    }

    private void endLine() {
        text.append('\n');
    }
}
