package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.physics.Time;
import tideless.rig.Log;
import tideless.rig.LogEntry;
import tideless.rig.VesselId;

/** Logs as people keep them: what reads, what is refused with its place, and what is only said. */
class LogReaderTest {
    private static final Path BENCH = Path.of("scenarios/science-room-bench.toml");
    private static final String HEAD = "date,time,where,what,value,remark,use\n";

    @TempDir Path folder;

    private Reading read(String log) throws IOException {
        Path file = Files.writeString(folder.resolve("log.csv"), log);
        return ScenarioReader.read(BENCH, Beside.files(file, null));
    }

    private Log log(String text) throws IOException {
        return good(text).scenario().log();
    }

    private Reading.Good good(String text) throws IOException {
        Reading reading = read(text);
        assertThat(reading).as("%s", reading).isInstanceOf(Reading.Good.class);
        return (Reading.Good) reading;
    }

    private String notes(String text) throws IOException {
        return good(text).notes().stream().map(Note::toString).collect(Collectors.joining("\n"));
    }

    private String faults(String text) throws IOException {
        Reading reading = read(text);
        assertThat(reading).as("%s", reading).isInstanceOf(Reading.Faulty.class);
        return ((Reading.Faulty) reading)
                .problems().stream().map(Problem::toString).collect(Collectors.joining("\n"));
    }

    @Test
    void a_long_table_reads_with_its_units() throws IOException {
        Log log =
                log(
                        HEAD
                                + "2026-03-04,08:00,shelf,level,22.1 cm,,\n"
                                + "2026-03-04,08:00,basil,EC,1720 uS/cm,,\n"
                                + "2026-03-05,7:30 pm,tray tomato,fresh weight,0.2 kg,a guess,no\n"
                                + "2026-03-09,18.15,shelf,refill,4.5 L,,\n"
                                + "2026-03-10,,,nothing to see,,,\n");
        assertThat(log.entries())
                .containsExactly(
                        new LogEntry.Reading(
                                2 * Time.DAY_S + 8 * Time.HOUR_S,
                                VesselId.reservoir("shelf"),
                                LogEntry.Quantity.LEVEL,
                                22.1 * 1e-2,
                                true,
                                2),
                        new LogEntry.Reading(
                                2 * Time.DAY_S + 8 * Time.HOUR_S,
                                VesselId.tray("basil"),
                                LogEntry.Quantity.EC,
                                1.72,
                                true,
                                3),
                        new LogEntry.Reading(
                                3 * Time.DAY_S + 19.5 * Time.HOUR_S,
                                VesselId.tray("tomato"),
                                LogEntry.Quantity.FRESH_MASS,
                                200,
                                false,
                                4),
                        new LogEntry.Reading(
                                7 * Time.DAY_S + 18.25 * Time.HOUR_S,
                                VesselId.reservoir("shelf"),
                                LogEntry.Quantity.POURED,
                                4.5 * 1e-3,
                                true,
                                5),
                        new LogEntry.FilledUp(
                                7 * Time.DAY_S + 18.25 * Time.HOUR_S, VesselId.reservoir("shelf")),
                        new LogEntry.Looked(8 * Time.DAY_S + 8 * Time.HOUR_S));
    }

    @Test
    void leaves_picked_are_no_harvest_and_of_a_crop_picked_as_it_grows_nor_is_what_was_taken()
            throws IOException {
        String rows =
                HEAD
                        + "2026-04-04,08:00,basil,leaves picked,60 g,,\n"
                        + "2026-04-11,08:00,basil,harvest,0.05 kg,,\n"
                        + "2026-04-13,08:00,tomato,picked,40 g,,\n"
                        + "2026-05-04,08:00,basil,harvest,,,\n";
        VesselId basil = VesselId.tray("basil");
        double eight = 8 * Time.HOUR_S;
        // The bench states a day on which its basil is cut: what was taken then is the crop.
        assertThat(log(rows).entries())
                .contains(
                        new LogEntry.LeavesPicked(33 * Time.DAY_S + eight, basil, 60),
                        new LogEntry.Harvested(40 * Time.DAY_S + eight, basil));
        Path bench = folder.resolve("bench.toml");
        Files.writeString(
                bench, Files.readString(BENCH).replaceFirst("harvest_after = \"42 days\"\\n", ""));
        Path file = Files.writeString(folder.resolve("log.csv"), rows);
        Reading reading = ScenarioReader.read(bench, Beside.files(file, null));
        assertThat(reading).as("%s", reading).isInstanceOf(Reading.Good.class);
        Reading.Good good = (Reading.Good) reading;
        assertThat(good.scenario().log().entries())
                .containsExactly(
                        new LogEntry.LeavesPicked(33 * Time.DAY_S + eight, basil, 60),
                        new LogEntry.LeavesPicked(40 * Time.DAY_S + eight, basil, 50),
                        new LogEntry.Looked(42 * Time.DAY_S + eight),
                        new LogEntry.Harvested(63 * Time.DAY_S + eight, basil));
        assertThat(good.notes())
                .extracting(Note::toString)
                .anyMatch(note -> note.contains("this crop is picked as it grows"));
    }

    @Test
    void wide_tables_say_the_same_as_long_ones() throws IOException {
        Log byVessel =
                log(
                        "date,time,shelf level (cm),basil EC [mS/cm],shelf refill (L)\n"
                                + "2026-03-04,08:00,22.1,1.72,\n"
                                + "2026-03-09,08:00,,,4.5\n"
                                + "2026-03-10,08:00,,,\n");
        Log byColumn =
                log(
                        "date,time,where,level (cm),EC,refill\n"
                                + "2026-03-04,08:00,shelf,22.1,,\n"
                                + "2026-03-04,08:00,basil,,1.72 mS/cm,\n"
                                + "2026-03-09,08:00,shelf,,,4.5 L\n"
                                + "2026-03-10,08:00,,,,\n");
        assertThat(byVessel.readings()).hasSize(3);
        assertThat(byColumn.readings()).hasSize(3);
        for (int i = 0; i < 3; i++) {
            LogEntry.Reading one = byVessel.readings().get(i);
            LogEntry.Reading other = byColumn.readings().get(i);
            assertThat(one.where()).isEqualTo(other.where());
            assertThat(one.what()).isEqualTo(other.what());
            assertThat(one.value()).isCloseTo(other.value(), within(1e-15));
        }
        assertThat(byVessel.lastS()).isEqualTo(8 * Time.DAY_S + 8 * Time.HOUR_S);
    }

    @Test
    void decimal_commas_read_between_semicolons_and_are_explained_between_commas()
            throws IOException {
        Log log = log("date;time;where;what;value\n04.03.2026;08:00;shelf;level;22,1 cm\n");
        assertThat(log.readings().get(0).value()).isCloseTo(0.221, within(1e-12));
        assertThat(faults("date,time,where,what,value\n2026-03-04,08:00,shelf,level,22,1 cm\n"))
                .contains("log.csv:2:6")
                .contains("decimal comma");
        // With room for a remark behind it, 1 cm would be taken for one.
        assertThat(faults(HEAD + "2026-03-04,08:00,shelf,level,22,1 cm,,\n"))
                .contains("log.csv:2:5: value: found \"22,1 cm\"")
                .contains("decimal comma");
        assertThat(faults(HEAD + "2026-03-04,08:00,shelf,level,\"22,1 cm\",,\n"))
                .contains("log.csv:2:5: value: found \"22,1 cm\"")
                .contains("decimal sign as a point");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2026-03-11,08:00,shlef,level,20 cm|2:3: where: found \"shlef\"|mean \"shelf\"?",
                "2026-03-11,08:00,,level,20 cm|2:3: where: found nothing|shelf, basil",
                "2026-03-11,08:00,shelf,levl,20 cm|2:4: what: found \"levl\"|mean \"level\"?",
                "2026-03-11,08:00,shelf,level,44 cm|2:5: value: found \"44 cm\", above its rim|0 cm to 28 cm",
                "2026-03-11,08:00,shelf,level,20|2:5: value: found \"20\"|with its unit: cm",
                "2026-03-11,08:00,shelf,level,|2:5: value: found nothing|with its unit: cm",
                "2026-03-11,08:00,shelf,level,-1 cm|2:5: value: found \"-1 cm\"|from 0 cm",
                "2026-03-11,08:00,basil,ec,100 mS/cm|2:5: value: found \"100 mS/cm\"|up to 20 mS/cm",
                "2026-03-11,08:00,basil,ph,17|2:5: value: found \"17\"|from 1 to 13",
                "2026-03-11,08:00,shelf,refill,90 L|2:5: value: found \"90 L\", more than it holds|up to 31.36 L",
                "2026-03-11,08:00,basil,refill,1 L|2:4: what: found a refill of a tray|litres in",
                "2026-03-11,08:00,shelf,valve moved,4 cm|2:3: where: found \"shelf\"|a tray: basil",
                "2026-03-11,08:00,basil,valve moved,9 cm|2:5: value: found \"9 cm\"|overflow, 70 mm",
                "2026-03-11,08:00,basil,plants lost,9|2:5: value: found \"9\"|from 1 to 8",
                "2026-03-11,25:00,shelf,level,20 cm|2:2: time: found \"25:00\"|08:00 or 8:00 pm",
                "2025-03-11,08:00,shelf,level,20 cm|2:1: date: found \"2025-03-11\"|mean 2026-03-11?",
                "soon,08:00,shelf,level,20 cm|2:1: date: found \"soon\"|2026-03-09",
                "2026-03-11,08:00,shelf,level,20 cm,,maybe|2:7: use: found \"maybe\"|yes, no",
            })
    void what_cannot_be_is_refused_with_its_place_and_what_may_stand_there(
            String line, String place, String allowed) throws IOException {
        assertThat(faults(HEAD + line + "\n")).contains("log.csv:" + place).contains(allowed);
    }

    @Test
    void every_fault_is_told_at_once() throws IOException {
        String told =
                faults(
                        HEAD
                                + "2026-03-11,08:00,shlef,level,20 cm,,\n"
                                + "2026-03-12,08:00,shelf,levl,20 cm,,\n"
                                + "2025-03-13,08:00,shelf,level,20 cm,,\n");
        assertThat(told).contains("csv:2:3").contains("csv:3:4").contains("csv:4:1");
    }

    @Test
    void columns_that_are_misspelt_or_missing_are_told() throws IOException {
        assertThat(faults("date,time,wehre,what,value\n2026-03-11,08:00,shelf,level,20 cm\n"))
                .contains("csv:1:3")
                .contains("Did you mean \"where\"?");
        assertThat(faults("day,hour\n2,3\n")).contains("date: found no column of this name");
        assertThat(faults("date,time\n2026-03-11,08:00\n")).contains("what: found no column");
    }

    @Test
    void nothing_that_stands_below_no_name_is_lost() throws IOException {
        String level = "date,shelf level (cm),\n2026-03-04,23.2,\n2026-03-06,22,";
        assertThat(log(level + "\n").readings()).hasSize(2);
        assertThat(faults(level + "1.4\n"))
                .isEqualTo(
                        folder.resolve("log.csv")
                                + ":3:3: found \"1.4\" in a column without a name, allowed: a name"
                                + " above each column");
        assertThat(faults(HEAD.strip() + ",\n2026-03-04,08:00,shelf,level,23 cm,,,22\n"))
                .contains(":2:8: found \"22\"");
    }

    @Test
    void five_thousand_lines_are_read_and_more_are_refused_at_once() throws IOException {
        StringBuilder text = new StringBuilder(HEAD);
        for (int i = 0; i < 4999; i++) {
            text.append(
                    String.format(
                            Locale.ROOT,
                            "2026-03-%02d,%02d:%02d,shelf,level,%.1f cm,,\n",
                            3 + i / 1440,
                            i / 60 % 24,
                            i % 60,
                            22 - i * 0.001));
        }
        assertThat(log(text.toString()).readings()).hasSize(4999);
        for (int i = 0; i < 5001; i++) {
            text.append("2026-04-01,08:00,shlef,level,23 cm,,\n");
        }
        assertThat(faults(text.toString())).contains("found more than 5000 lines").hasLineCount(2);
    }

    /** The file that is not used may be gone: nothing is said of it. */
    @Test
    void a_log_in_place_of_the_scenarios_own_is_the_only_one_that_is_judged() throws IOException {
        Path bench = folder.resolve("bench.toml");
        Files.writeString(bench, Files.readString(BENCH) + "\n[log]\nfile = \"gone.csv\"\n");
        Path log =
                Files.writeString(
                        folder.resolve("log.csv"), HEAD + "2026-03-04,08:00,shlef,level,1 cm,,\n");
        Reading reading = ScenarioReader.read(bench, Beside.files(log, null));
        assertThat(((Reading.Faulty) reading).problems())
                .singleElement()
                .satisfies(p -> assertThat(p.toString()).contains("Did you mean \"shelf\"?"));
        Files.writeString(folder.resolve("gone.csv"), HEAD);
        Files.writeString(log, HEAD + "2026-03-04,08:00,shelf,level,22 cm,,\n");
        Reading.Good good = (Reading.Good) ScenarioReader.read(bench, Beside.files(log, null));
        assertThat(good.files()).as("never written over").anyMatch(f -> f.endsWith("gone.csv"));
        assertThat(good.scenario().log().readings()).hasSize(1);
    }

    @Test
    void an_empty_file_is_a_fault_and_an_empty_log_is_none() throws IOException {
        assertThat(faults("")).contains("nothing: the file is empty");
        assertThat(notes(HEAD)).contains("nothing is written in this log yet");
        assertThat(log(HEAD).isEmpty()).isTrue();
    }

    @Test
    void entries_out_of_order_are_sorted_and_said() throws IOException {
        String text =
                HEAD
                        + "2026-03-06,08:00,shelf,level,21 cm,,\n"
                        + "2026-03-04,08:00,shelf,level,22 cm,,\n";
        assertThat(log(text).readings().stream().map(LogEntry.Reading::line)).containsExactly(3, 2);
        assertThat(notes(text)).contains("log.csv:3: stands after a later entry");
    }

    @Test
    void what_stands_twice_counts_once_and_what_contradicts_itself_is_refused() throws IOException {
        String once = "2026-03-06,08:00,shelf,refill,4 L,,\n";
        assertThat(log(HEAD + once + once).entries()).hasSize(2); // the litres and the deed
        assertThat(notes(HEAD + once + once)).contains("csv:3: the same as line 2");
        assertThat(faults(HEAD + once + "2026-03-06,08:00,shelf,refill,6 L,,\n"))
                .contains("csv:3:5: value: found 6 L, but line 2 of the same time says 4 L")
                .contains("Which of the two?");
    }

    @Test
    void a_level_before_a_refill_and_one_after_it_are_no_contradiction() throws IOException {
        String text =
                HEAD
                        + "2026-03-06,08:00,shelf,level,9 cm,,\n"
                        + "2026-03-06,08:00,shelf,refill,,,\n"
                        + "2026-03-06,08:00,shelf,level,25 cm,,\n";
        assertThat(log(text).entries()).hasSize(3);
    }

    @Test
    void two_clocks_that_wrote_down_one_deed_are_told() throws IOException {
        String text =
                HEAD
                        + "2026-03-06,08:00,shelf,litres in,4 L,,\n"
                        + "2026-03-06,09:00,shelf,litres in,4 L,,\n";
        assertThat(log(text).entries()).hasSize(2);
        assertThat(notes(text))
                .contains("csv:3: the same litres in as in line 2")
                .contains("clocks");
    }

    @Test
    void a_rise_without_a_refill_is_told_and_stands() throws IOException {
        String text =
                HEAD
                        + "2026-03-04,08:00,shelf,level,12 cm,,\n"
                        + "2026-03-06,08:00,shelf,level,24 cm,,\n";
        assertThat(notes(text)).contains("csv:3: the level rose by 12 cm since line 2");
        assertThat(log(text).readings()).hasSize(2);
    }

    @Test
    void what_lies_after_the_runs_end_is_said_and_left_out() throws IOException {
        String text =
                HEAD
                        + "2026-03-04,08:00,shelf,level,22 cm,,\n"
                        + "2026-07-04,08:00,shelf,level,22 cm,,\n"
                        + "2026-07-05,08:00,shelf,refill,2 L,,\n";
        assertThat(log(text).entries()).hasSize(1);
        assertThat(notes(text)).contains("2 entries lie outside the run, 2026-03-02 to 2026-05-10");
    }

    @Test
    void an_unlikely_reading_counts_unless_it_is_said_not_to() throws IOException {
        String text = HEAD + "2026-03-04,08:00,basil,ec,7.5 mS/cm,,\n";
        assertThat(notes(text)).contains("csv:2: ec 7.5 mS/cm is unlikely, and counts");
        assertThat(log(text).readings().get(0).counts()).isTrue();
        assertThat(log(text.replace(",,\n", ",,no\n")).readings().get(0).counts()).isFalse();
    }

    @Test
    void a_lamp_that_was_changed_burns_so_from_its_day_on() throws IOException {
        var scenario = good(HEAD + "2026-03-12,08:00,all,lamp changed,50 %,,\n").scenario();
        double noon = 12 * Time.HOUR_S;
        assertThat(scenario.trays().get(0).lamp().ppfdUmolPerM2S(9 * Time.DAY_S + noon))
                .isCloseTo(240, within(1e-9));
        assertThat(scenario.trays().get(0).lamp().ppfdUmolPerM2S(10 * Time.DAY_S + noon))
                .isCloseTo(120, within(1e-9));
        var brighter =
                good(HEAD + "2026-03-12,08:00,basil,lamp changed,300 umol/m2/s,,\n").scenario();
        assertThat(brighter.trays().get(0).lamp().ppfdUmolPerM2S(9 * Time.DAY_S + noon))
                .isCloseTo(240, within(1e-9));
        assertThat(brighter.trays().get(0).lamp().ppfdUmolPerM2S(30 * Time.DAY_S + noon))
                .isCloseTo(300, within(1e-9));
    }

    @Test
    void a_log_that_is_not_there_is_told_by_its_name() {
        Reading reading =
                ScenarioReader.read(BENCH, Beside.files(folder.resolve("none.csv"), null));
        assertThat(((Reading.Faulty) reading).problems().get(0).toString())
                .contains("none.csv: found there is no such file");
    }

    @Test
    void a_log_counts_into_the_digest_and_is_named_among_the_files() throws IOException {
        Reading.Good with = good(HEAD);
        Reading.Good without = (Reading.Good) ScenarioReader.read(BENCH);
        assertThat(with.scenario().digest()).isNotEqualTo(without.scenario().digest());
        assertThat(with.files()).contains(folder.resolve("log.csv").toString());
    }

    @Test
    void corrections_are_read_and_applied() throws IOException {
        Path file =
                Files.writeString(
                        folder.resolve("corrected.toml"),
                        """
                        [crop.basil]
                        thirst = { times = 1.24, doubt_left = "30 %" }
                        [feed]
                        times = 1.1
                        [tray.basil.valve]
                        higher = "3 mm"
                        [reservoir.shelf.litres]
                        times = 0.9
                        [reservoir.shelf.leak]
                        loses = "0.5 L/day"
                        """);
        Reading reading = ScenarioReader.read(BENCH, Beside.files(null, file));
        assertThat(reading).as("%s", reading).isInstanceOf(Reading.Good.class);
        var now = ((Reading.Good) reading).scenario();
        var was = ((Reading.Good) ScenarioReader.read(BENCH)).scenario();
        assertThat(now.correction().of("basil").thirst()).isEqualTo(1.24);
        assertThat(now.correction().left("thirst", "basil")).isCloseTo(0.3, within(1e-12));
        assertThat(now.feed().composition().molPerM3(0))
                .isCloseTo(1.1 * was.feed().composition().molPerM3(0), within(1e-12));
        assertThat(now.reservoirs().get(0).fullM3())
                .isCloseTo(0.9 * was.reservoirs().get(0).fullM3(), within(1e-12));
        assertThat(
                        ((tideless.rig.Filling.ByValve) now.trays().get(0).filling()).settingM()
                                - ((tideless.rig.Filling.ByValve) was.trays().get(0).filling())
                                        .settingM())
                .isCloseTo(0.003, within(1e-12));
        assertThat(now.correction().leakM3PerS("shelf"))
                .isCloseTo(0.5e-3 / Time.DAY_S, within(1e-15));
    }

    /** Named once, they go along wherever the scenario goes; who learns anew leaves them aside. */
    @Test
    void corrections_that_the_scenario_names_are_applied_but_to_a_fit() throws IOException {
        Path log = Files.writeString(folder.resolve("log.csv"), HEAD);
        Files.writeString(
                folder.resolve("corrected.toml"),
                "[crop.basil]\nthirst = { times = 1.1, doubt_left = \"60 %\" }\nsize = { times = 1.4 }\n");
        Path scenario =
                Files.writeString(
                        folder.resolve("bench.toml"),
                        Files.readString(BENCH)
                                + "\n[log]\nfile = \"log.csv\"\ncorrected = \"corrected.toml\"\n");
        var named = ((Reading.Good) ScenarioReader.read(scenario)).scenario().correction();
        assertThat(named.of("basil").thirst()).isEqualTo(1.1);
        assertThat(named.of("basil").size()).isEqualTo(1.4);
        assertThat(named.left("thirst", "basil")).isCloseTo(0.6, within(1e-12));
        Reading anew = ScenarioReader.read(scenario, Beside.asStated(log));
        assertThat(((Reading.Good) anew).scenario().correction())
                .isEqualTo(tideless.rig.Correction.NONE);
        Files.delete(folder.resolve("corrected.toml"));
        assertThat(((Reading.Faulty) ScenarioReader.read(scenario)).problems())
                .singleElement()
                .satisfies(p -> assertThat(p.toString()).contains("log.corrected"));
    }

    @Test
    void corrections_of_another_rig_are_refused_with_a_suggestion() throws IOException {
        Path file =
                Files.writeString(
                        folder.resolve("corrected.toml"),
                        "[crop.basli.thirst]\ntimes = 1.2\n[meter]\ntimes = 99\n");
        Reading reading = ScenarioReader.read(BENCH, Beside.files(null, file));
        List<String> told =
                ((Reading.Faulty) reading).problems().stream().map(Problem::toString).toList();
        assertThat(told).hasSize(2);
        assertThat(told.get(0)).contains("corrected.toml:1:1").contains("Did you mean \"basil\"?");
        assertThat(told.get(1)).contains("meter.times: found 99").contains("0.05");
    }
}
