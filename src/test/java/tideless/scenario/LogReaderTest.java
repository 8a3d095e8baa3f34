package tideless.scenario;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.assertj.core.api.Assertions.as;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.assertj.core.api.InstanceOfAssertFactories;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
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
                "2026-03-11,08:00,shelf,refill,37 L|2:5: value: found \"37 L\", more than it holds|up to 31.36 L",
                "2026-03-11,08:00,basil,ec,1.7|2:5: value: found \"1.7\"|As \"1.7 mS/cm\".",
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
        assertThat(faults("week,hour\n2,3\n")).contains("date: found no column of this name");
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

    /** The newest on top: in one minute the level was read, and then it was filled. */
    @Test
    void a_log_written_from_the_bottom_up_reads_as_one_from_the_top_down() throws IOException {
        String level = "2026-03-09,08:00,shelf,level,12 cm,,\n";
        String refill = "2026-03-09,08:00,shelf,refill,,,\n";
        String next = "2026-03-11,08:00,shelf,level,20 cm,,\n";
        String last = "2026-03-13,08:00,shelf,level,18 cm,,\n";
        Log down = log(HEAD + level + refill + next + last);
        Log up = log(HEAD + last + next + refill + level);
        assertThat(up.entries()).hasSize(4);
        for (int i = 0; i < 4; i++) {
            assertThat(up.entries().get(i).getClass()).isEqualTo(down.entries().get(i).getClass());
            assertThat(up.entries().get(i).atS()).isEqualTo(down.entries().get(i).atS());
        }
        assertThat(notes(HEAD + last + next + refill + level))
                .contains("stands after a later entry")
                .doesNotContain("the level rose");
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
    void two_levels_of_one_instant_that_are_near_are_one_and_which_counts_is_told()
            throws IOException {
        String text =
                HEAD
                        + "2026-03-06,08:00,shelf,level,22.4 cm,,\n"
                        + "2026-03-06,08:00,shelf,level,22.1 cm,,\n";
        assertThat(log(text).entries()).hasSize(1);
        assertThat(notes(text)).contains("csv:3: read twice at one time: 22.4 cm of line 2 counts");
    }

    @Test
    void litres_that_do_not_agree_with_the_level_before_them_are_told_and_stand()
            throws IOException {
        String level = HEAD + "2026-03-06,08:00,shelf,level,20.9 cm,,\n";
        // From 20.9 cm to the mark at 25 cm of a box of 40 by 28 cm go 4.6 L, to its rim 8.0 L.
        assertThat(notes(level + "2026-03-06,08:10,shelf,refill,20 L,,\n"))
                .contains("csv:3: this refill took 20 L, but from the level in line 2")
                .contains("to the mark go 4.6 L");
        assertThat(notes(level + "2026-03-06,08:10,shelf,refill,5 L,,\n"))
                .doesNotContain("this refill took");
        assertThat(notes(level + "2026-03-06,08:10,shelf,litres in,30 L,,\n"))
                .contains("csv:3: 30 L were poured in, but from the level in line 2 to the rim go");
        assertThat(notes(level + "2026-03-06,08:10,shelf,litres in,9 L,,\n"))
                .doesNotContain("were poured in");
        // A level of the day before is no longer that before the refill.
        assertThat(notes(level + "2026-03-07,08:10,shelf,refill,20 L,,\n"))
                .doesNotContain("this refill took");
        String twice = "2026-03-06,08:10,shelf,refill,4 L,,\n2026-03-06,08:20,shelf,refill,3 L,,\n";
        assertThat(notes(HEAD + twice))
                .contains("csv:3: a second refill shortly after that in line 2, of other litres");
        assertThat(log(HEAD + twice).readings()).hasSize(2);
        assertThat(notes(HEAD + twice.replace("08:20", "18:20"))).doesNotContain("a second refill");
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

    @ParameterizedTest
    @ValueSource(
            strings = {
                "2026-03-04",
                "04.03.2026",
                "4.3.",
                "4.3",
                "4.3.26",
                "4 Mar",
                "4. March",
                "4-Mar-26",
                "Mar 4th",
                "\"March 4, 2026\"",
                "Wed 4 Mar",
                "\"Wednesday, 4.3.\"",
                "Wed 2026-03-04"
            })
    void dates_read_as_people_write_them(String date) throws IOException {
        assertThat(log("date,time,where,what,value\n" + date + ",7am,shelf,level,22 cm\n").lastS())
                .isEqualTo(2 * Time.DAY_S + 7 * Time.HOUR_S);
    }

    @Test
    void the_order_of_day_and_month_is_told_by_any_row_and_else_asked_for() throws IOException {
        String rows = "date,time,where,what,value\n3/4,8:00,shelf,level,22 cm\n";
        assertThat(log(rows + "3/18/26,8:00,shelf,level,20 cm\n").readings())
                .extracting(LogEntry.Reading::atS)
                .containsExactly(
                        2 * Time.DAY_S + 8 * Time.HOUR_S, 16 * Time.DAY_S + 8 * Time.HOUR_S);
        assertThat(faults(rows))
                .contains("found \"3/4\"")
                .contains("No date of this log tells whether the day or the month comes first.");
        assertThat(faults("date,time,where,what,value\nMon,8:00,shelf,level,22 cm\n"))
                .contains("A day of the week does not tell which week: write the date.");
    }

    /**
     * The bench runs from 2 March to May: the first of May lies in it, the fifth of January not.
     */
    @Test
    void a_date_that_lies_in_the_run_by_one_order_alone_is_read_so() throws IOException {
        assertThat(
                        log("date,where,what,value\n5/1/2026,shelf,level,20 cm\n2026-05-02,shelf,level,19 cm\n")
                                .entries()
                                .get(0)
                                .atS())
                .isEqualTo(60 * Time.DAY_S + 8 * Time.HOUR_S);
        assertThat(log("date,where,what,value\n5/1/2026 10:30,shelf,level,20 cm\n").lastS())
                .isEqualTo(60 * Time.DAY_S + 10.5 * Time.HOUR_S);
        assertThat(faults("date,where,what,value\n3/4/2026,shelf,level,20 cm\n"))
                .contains("whether the day or the month comes first");
    }

    @Test
    void a_log_of_another_year_is_told_once() throws IOException {
        String told =
                faults(
                        "date,where,what,value\n2025-03-04,shelf,level,20 cm\n"
                                + "2025-03-05,shelf,level,19 cm\n2026-03-06,shelf,level,18 cm\n");
        assertThat(told)
                .contains("csv:2:1: date: found \"2025-03-04\"")
                .contains("Did you mean 2026-03-04? One more line is of another year.")
                .doesNotContain("2025-03-05");
    }

    /** As the scenario writes it, and nothing is guessed where it does not. */
    @Test
    void a_pens_ppm_is_that_of_the_scenario() throws IOException {
        Path bench = folder.resolve("bench.toml");
        String toml =
                Files.readString(BENCH).replaceAll("ec = \"1.6 mS/cm\"", "ec = \"600 ppm-500\"");
        assertThat(toml).contains("ppm-500");
        Files.writeString(bench, toml);
        Path log =
                Files.writeString(
                        folder.resolve("log.csv"),
                        "date,where,what,value\n4 Mar,basil,EC,880 ppm\n5 Mar,basil,ppm,880\n");
        Reading reading = ScenarioReader.read(bench, Beside.files(log, null));
        assertThat(((Reading.Good) reading).scenario().log().readings())
                .extracting(LogEntry.Reading::value)
                .containsExactly(1.76, 1.76);
        assertThat(faults("date,where,what,value\n4 Mar,basil,EC,880 ppm\n"))
                .contains("by 500 or by 700");
    }

    @Test
    void a_pens_ppm_is_that_of_who_asks_before_that_of_the_scenario() throws IOException {
        Path log =
                Files.writeString(
                        folder.resolve("log.csv"),
                        "date,where,what,value\n4 Mar,basil,EC,700 ppm\n");
        for (int scale : new int[] {500, 700}) {
            Beside pen = Beside.files(log, null).withPen("ppm-" + scale);
            assertThat(((Reading.Good) ScenarioReader.read(BENCH, pen)).scenario().log().readings())
                    .singleElement()
                    .satisfies(r -> assertThat(r.value()).isCloseTo(700.0 / scale, within(1e-9)));
        }
    }

    /** A jug of 5 % may fill more into a vessel than it holds. */
    @Test
    void litres_a_jugs_error_beyond_what_a_vessel_holds_are_read() throws IOException {
        assertThat(log("date,where,what,value\n4 Mar,shelf,refill,35 L\n").readings())
                .singleElement()
                .extracting(LogEntry.Reading::value)
                .isEqualTo(0.035);
    }

    @Test
    void a_column_is_known_by_all_that_people_call_it() throws IOException {
        for (String names :
                List.of(
                        "level of shelf (cm);EC of basil (mS/cm)",
                        "shelf level cm;basil EC mS/cm",
                        "Level shelf in cm;ec basil [mS/cm]")) {
            assertThat(log("date;" + names + "\n4.3.2026;22,1;1,72\n").readings())
                    .as(names)
                    .extracting(LogEntry.Reading::what)
                    .containsExactly(LogEntry.Quantity.LEVEL, LogEntry.Quantity.EC);
        }
    }

    @Test
    void a_column_of_a_vessel_that_is_not_understood_is_no_column_that_is_not_used()
            throws IOException {
        assertThat(faults("date,EC of basil (mS/cm),second level near shelf\n4 Mar,1.7,22.1\n"))
                .contains("csv:1:3: found a column \"second level near shelf\"")
                .contains("as \"shelf level (cm)\"")
                .contains("The vessels here are shelf, basil");
    }

    @Test
    void a_date_without_a_year_lies_in_the_run_where_it_can() {
        LocalDateTime begin = LocalDateTime.of(2026, 11, 20, 0, 0);
        LogDates dates = LogDates.of(begin, begin.plusDays(60), List.of("3.1."));
        assertThat(dates.read("3.1.", "08:00").value())
                .isEqualTo(LocalDateTime.of(2027, 1, 3, 8, 0));
        assertThat(dates.read("3 Dec", "08:00").value())
                .isEqualTo(LocalDateTime.of(2026, 12, 3, 8, 0));
        assertThat(dates.read("3.1.26", "08:00").value())
                .as("a year that is written is not thought better of")
                .isEqualTo(LocalDateTime.of(2026, 1, 3, 8, 0));
        assertThat(dates.read("3 Oct", "08:00").value())
                .isEqualTo(LocalDateTime.of(2026, 10, 3, 8, 0));
        assertThat(dates.read("31.2.", "08:00").isFaulty()).isTrue();
    }

    @Test
    void a_column_is_known_by_its_vessel_and_unit_and_in_either_order() throws IOException {
        Log log =
                log(
                        "Date,Shelf (cm),shelf added (L),EC basil (mS/cm),Plant height (cm),Notes\n"
                                + "4 Mar,22.1,3,1.72,12,\"tall, green\"\n");
        assertThat(log.readings())
                .extracting(LogEntry.Reading::what)
                .containsExactly(LogEntry.Quantity.LEVEL, LogEntry.Quantity.EC);
        assertThat(log.entries())
                .contains(
                        new LogEntry.Poured(
                                2 * Time.DAY_S + 8 * Time.HOUR_S,
                                VesselId.reservoir("shelf"),
                                0.003,
                                false));
        assertThat(notes("date,shelf (cm),Plant height (cm)\n4 Mar,22.1,12\n"))
                .contains("a column that is not used: Plant height (cm)");
    }

    @Test
    void a_column_without_a_unit_is_told_once_and_not_with_each_of_its_cells() throws IOException {
        String told =
                faults(
                        "date,shelf level (cm),basil EC\n4 Mar,22.1,1.7\n6 Mar,21,1.7\n8 Mar,20,1.6\n");
        assertThat(told.lines())
                .hasSize(2)
                .element(0)
                .asString()
                .startsWith(
                        folder.resolve("log.csv")
                                + ":1:3: found \"basil EC\", and numbers without a unit below it");
        assertThat(told).endsWith("As \"basil EC (mS/cm)\".");
    }

    @Test
    void what_spreadsheets_put_around_a_table_is_passed_over() throws IOException {
        String table =
                "sep=;\ndate;time;where;what;value;;remark\n4.3.;08:00:00;shelf;level;22,1 cm;;"
                        + "\"a; b\"\n;;;;;;\n";
        assertThat(log("\ufeff" + table.replace("\n", "\r\n")).readings().get(0).value())
                .isCloseTo(0.221, within(1e-12));
        assertThat(
                        log("date\ttime\twhere\twhat\tvalue\n4.3.\t8:00\tshelf\tlevel\t22,1 cm\n")
                                .readings())
                .extracting(LogEntry.Reading::value)
                .containsExactly(22.1 * 1e-2);
        assertThat(faults("Datum;Ort;Was;Wert\n4.3.;shelf;level;22,1 cm\n"))
                .contains("The first row says \"Datum, Ort, Was, Wert\"");
        Path latin = folder.resolve("latin.csv");
        Files.write(latin, (HEAD + "4.3.,,shelf,level,22 cm,gr\u00fcn,\n").getBytes(ISO_8859_1));
        Reading reading = ScenarioReader.read(BENCH, Beside.files(latin, null));
        assertThat(((Reading.Faulty) reading).problems().toString())
                .contains("not UTF-8 text")
                .contains("CSV UTF-8");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "shelf,level,8 1/2 in|0.2159",
                "shelf,level,7/8 in|0.022225",
                "shelf,refill,1 gal|0.003785411784",
                "basil,EC,1720 uS|1.72",
                "basil,EC,1720 \u00b5S|1.72",
                "basil,EC,1.72 mS|1.72",
                "basil,EC,860 ppm-500|1.72"
            })
    void values_read_as_rulers_and_pens_show_them(String entry, double value) throws IOException {
        assertThat(log("date,where,what,value\n4 Mar," + entry + "\n").readings())
                .singleElement()
                .extracting(LogEntry.Reading::value, as(InstanceOfAssertFactories.DOUBLE))
                .isCloseTo(value, within(1e-9));
    }

    @Test
    void litres_need_no_unit_where_the_word_has_it() throws IOException {
        assertThat(log("date,where,what,value\n4 Mar,shelf,litres in,3\n").entries())
                .containsExactly(
                        new LogEntry.Poured(
                                2 * Time.DAY_S + 8 * Time.HOUR_S,
                                VesselId.reservoir("shelf"),
                                0.003,
                                false));
        assertThat(faults("date,where,what,value\n4 Mar,shelf,added,3\n")).contains("found \"3\"");
    }

    @Test
    void a_remark_at_the_end_may_hold_a_comma_and_a_number_may_not() throws IOException {
        String names = "date,time,where,what,value,remark\n4 Mar,8:00,shelf,level,";
        assertThat(log(names + "22 cm,Anna, with Ben\n").readings()).hasSize(1);
        assertThat(faults(names + "22,1 cm,Anna, with Ben\n")).contains("decimal comma");
        assertThat(faults(names + "22 cm,,5,7\n")).contains("found 8 cells");
    }

    @Test
    void a_log_that_is_not_there_is_told_by_its_name() {
        Reading reading =
                ScenarioReader.read(BENCH, Beside.files(folder.resolve("none.csv"), null));
        assertThat(((Reading.Unreadable) reading).toString())
                .endsWith("none.csv: there is no such file");
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
