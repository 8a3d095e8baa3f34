package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tideless.rig.Climate;
import tideless.rig.InsideAir;
import tideless.rig.InsideAir.Quantity;
import tideless.sim.Simulation;
import tideless.sim.TraySeries;
import tideless.sim.TrayTrace;

class InsideFileTest {
    private static final LocalDate START = LocalDate.of(2026, 3, 2);

    @TempDir Path folder;
    private final TomlFile source = new TomlFile("bench.toml");

    private static InsideFile.Rules rules(
            InsideFile.LightFrom from, Gaps gaps, Read<Integer> offsetS, String... stated) {
        return new InsideFile.Rules(
                Map.of(),
                gaps,
                offsetS,
                from,
                LampType.HIGH_PRESSURE_SODIUM,
                Read.of(187.0),
                420,
                0.2,
                Set.of(stated));
    }

    private InsideAir read(String text, int days, InsideFile.Rules rules) {
        return InsideFile.read(new NamedFiles.Named("in.csv", text), source, START, days, rules)
                .orElse(null);
    }

    private InsideAir read(String text, int days) {
        return read(text, days, rules(InsideFile.LightFrom.SUN, new Gaps(3, false), Read.of(0)));
    }

    private List<String> faults() {
        return source.problems().stream().map(Problem::toString).toList();
    }

    private List<String> notes() {
        return source.notes().stream().map(Note::toString).toList();
    }

    /** Rows of one text an hour, from the start's midnight. */
    private static String rows(String head, int hours, String rest) {
        StringBuilder text = new StringBuilder(head);
        for (int h = 0; h < hours; h++) {
            LocalDateTime at = START.atStartOfDay().plusHours(h);
            text.append(at.toString().replace('T', ' ')).append(',').append(rest).append('\n');
        }
        return text.toString();
    }

    // FAO 56 (Allen et al. 1998), eq. 11: saturation at 20 degC 2338 Pa; 60 % of it 1403 Pa. Sun of
    // 457 umol/m2/s at 4.57 umol/J is 100 W/m2; half of 187 umol/m2/s is 93.5.
    @Test
    void columns_become_air_sun_and_lamps() {
        InsideAir air =
                read(
                        rows(
                                "time,temperature,humidity,ppfd,lamp,co2,air_speed,solution_temperature\n"
                                        + "local,degC,%,umol/m2/s,%,ppm,m/s,degC\n",
                                24, "20,60,457,50,800,0.35,19"),
                        1);
        assertEquals(List.of(), faults());
        assertEquals(24, air.hours());
        assertEquals(20, air.at(Quantity.TEMP_C, 3));
        assertEquals(1403, air.at(Quantity.VAPOUR_PA, 3), 0.5);
        assertEquals(100, air.at(Quantity.SUN_PAR_W_PER_M2, 3), 1e-9);
        assertEquals(93.5, air.at(Quantity.LAMP_PPFD_UMOL_PER_M2_S, 3), 1e-9);
        assertEquals(800, air.at(Quantity.CO2_PPM, 3));
        assertEquals(0.35, air.at(Quantity.AIR_SPEED_M_PER_S, 3));
        assertEquals(19, air.at(Quantity.SOLUTION_TEMP_C, 3));
        assertTrue(air.recordsLamps());
        assertEquals(LampType.HIGH_PRESSURE_SODIUM.light().umolPerJ(), air.lampUmolPerJ());
    }

    // 1 kPa below 2338 Pa. By density: 2338 Pa at 293.15 K is 17.28 g/m3 (461.52 J/kg/K), so 5 g/m3
    // less are 676 Pa less.
    @Test
    void moisture_may_be_a_deficit_of_pressure_or_of_density_or_a_vapour_pressure() {
        String head = "time,temperature,deficit\nlocal,degC,";
        assertEquals(
                1338, read(rows(head + "kPa\n", 24, "20,1"), 1).at(Quantity.VAPOUR_PA, 0), 0.5);
        assertEquals(
                2338 - 676.5,
                read(rows(head + "g/m3\n", 24, "20,5"), 1).at(Quantity.VAPOUR_PA, 0),
                0.6);
        String ea = head.replace("deficit", "vapour_pressure");
        assertEquals(900, read(rows(ea + "hPa\n", 24, "20,9"), 1).at(Quantity.VAPOUR_PA, 0), 1e-9);
        assertEquals(List.of(), faults());
    }

    @Test
    void light_may_be_global_or_photosynthetic_power() {
        String head = "time,temperature,humidity,";
        String units = "\nlocal,degC,%,W/m2\n";
        assertEquals(
                45,
                read(rows(head + "global" + units, 24, "20,60,100"), 1)
                        .at(Quantity.SUN_PAR_W_PER_M2, 0),
                1e-9);
        assertEquals(
                100,
                read(rows(head + "par" + units, 24, "20,60,100"), 1)
                        .at(Quantity.SUN_PAR_W_PER_M2, 0),
                1e-9);
    }

    // A sensor under sun and lamps reads 457 + 187 umol/m2/s: the sun is what the lamps leave over.
    @Test
    void a_sensor_under_sun_and_lamps_is_told_apart_by_the_lamp_column() {
        String text =
                rows(
                        "time,temperature,humidity,ppfd,lamp\nlocal,degC,%,umol/m2/s,fraction\n",
                        24, "20,60,644,1");
        InsideAir both =
                read(text, 1, rules(InsideFile.LightFrom.BOTH, new Gaps(3, false), Read.of(0)));
        assertEquals(100, both.at(Quantity.SUN_PAR_W_PER_M2, 0), 1e-9);
        assertEquals(187, both.at(Quantity.LAMP_PPFD_UMOL_PER_M2_S, 0), 1e-9);
        InsideAir lamps =
                read(
                        text.replace(",lamp", ",x"),
                        1,
                        rules(InsideFile.LightFrom.LAMPS, new Gaps(3, false), Read.of(0)));
        assertEquals(0, lamps.at(Quantity.SUN_PAR_W_PER_M2, 0));
        assertEquals(644, lamps.at(Quantity.LAMP_PPFD_UMOL_PER_M2_S, 0), 1e-9);
        assertFalse(lamps.isSunlit());
        assertNull(
                read(
                        text.replace(",lamp", ",x"),
                        1,
                        rules(InsideFile.LightFrom.BOTH, new Gaps(3, false), Read.of(0))));
        assertThat(faults()).singleElement().asString().contains("no column lamp");
    }

    // Twelve rows an hour; the lamp's minutes of each row add up to 30 of 60: half of 187.
    @Test
    void rows_of_five_minutes_become_means_and_minutes_on_are_added_up() {
        StringBuilder text =
                new StringBuilder("time,temperature,humidity,lamp\nlocal,degC,%,min\n");
        for (int row = 0; row < 288; row++) {
            text.append(START.atStartOfDay().plusMinutes(5L * row))
                    .append(',')
                    .append(row % 2 == 0 ? "19,50" : "21,70")
                    .append(row % 12 < 6 ? ",5\n" : ",0\n");
        }
        InsideAir air = read(text.toString(), 1);
        assertEquals(List.of(), faults());
        assertEquals(20, air.at(Quantity.TEMP_C, 23), 1e-12);
        assertEquals(93.5, air.at(Quantity.LAMP_PPFD_UMOL_PER_M2_S, 7), 1e-9);
    }

    // From 20 degC at 04:00 to 24 degC at 08:00: 22 degC at 06:00.
    @Test
    void a_gap_of_three_hours_is_bridged_counted_and_told_once_for_all_columns() {
        StringBuilder text = new StringBuilder("time,temperature,humidity\nlocal,degC,%\n");
        for (int h = 0; h < 24; h++) {
            if (h < 5 || h > 7) {
                text.append(START.atStartOfDay().plusHours(h)).append(h < 8 ? ",20" : ",24");
                text.append(",60\n");
            }
        }
        InsideAir air = read(text.toString(), 1);
        assertEquals(List.of(), faults());
        assertEquals(22, air.at(Quantity.TEMP_C, 6), 1e-12);
        String told =
                "temperature, humidity: 3 h missing from 2026-03-02T05:00, filled by a straight"
                        + " line";
        assertEquals(told, air.filled());
        assertEquals(List.of("in.csv:7: " + told), notes());
    }

    @Test
    void a_missing_day_is_refused_with_its_line_and_times_and_filled_where_allowed() {
        StringBuilder text = new StringBuilder("time,temperature,humidity\nlocal,degC,%\n");
        for (int h = 0; h < 72; h++) {
            if (h / 24 != 1) {
                text.append(START.atStartOfDay().plusHours(h)).append(',').append(h % 24 + h / 24);
                text.append(",60\n");
            }
        }
        assertNull(read(text.toString(), 3));
        assertThat(faults())
                .containsExactly(
                        "in.csv:26:2: temperature, humidity: found a gap of 24 h from"
                                + " 2026-03-03T00:00 to 2026-03-04T00:00, allowed: gaps of up to 3"
                                + " h between two readings\n"
                                + "    "
                                + new Gaps(3, false).hint());
        InsideAir air =
                InsideFile.read(
                                new NamedFiles.Named("in.csv", text.toString()),
                                new TomlFile("again.toml"),
                                START,
                                3,
                                rules(InsideFile.LightFrom.SUN, new Gaps(3, true), Read.of(0)))
                        .orElse(null);
        assertNotNull(air);
        assertEquals(11, air.at(Quantity.TEMP_C, 34), 1e-12); // between 10 and 12
        assertThat(air.filled())
                .contains(
                        "temperature, humidity: 24 h missing from 2026-03-03T00:00, filled from the"
                                + " same hours of the days beside");
    }

    @Test
    void a_loggers_own_names_and_spellings_are_read_without_a_row_of_units() {
        InsideAir air =
                InsideFile.read(
                                new NamedFiles.Named(
                                        "in.csv",
                                        rows("Date,Tair (C),RHair,CO2air\n", 24, "20,60,700")
                                                .replaceAll(
                                                        "2026-03-02 (\\d\\d):00",
                                                        "02.03.2026 $1:00:00")),
                                source,
                                START,
                                1,
                                new InsideFile.Rules(
                                        Map.of(
                                                "time",
                                                new CsvColumns.Named("Date", "local"),
                                                "temperature",
                                                new CsvColumns.Named("Tair (C)", "degC"),
                                                "humidity",
                                                new CsvColumns.Named("RHair", "%")),
                                        new Gaps(3, false),
                                        Read.absent(),
                                        InsideFile.LightFrom.SUN,
                                        LampType.WHITE_LED,
                                        Read.absent(),
                                        420,
                                        0.2,
                                        Set.of()))
                        .orElse(null);
        assertEquals(List.of(), faults());
        assertEquals(20, air.at(Quantity.TEMP_C, 0));
        assertEquals(420, air.at(Quantity.CO2_PPM, 0)); // not named, so not used, and said:
        assertThat(notes())
                .singleElement()
                .asString()
                .contains("columns that are not used: CO2air")
                .contains("co2 = \"CO2air\"");
    }

    @Test
    void a_file_in_universal_time_needs_the_rigs_own_clock() {
        String text = rows("time,temperature,humidity\nUTC,degC,%\n", 24, "20,60");
        assertNull(
                read(text, 1, rules(InsideFile.LightFrom.SUN, new Gaps(3, false), Read.absent())));
        assertThat(faults()).singleElement().asString().contains("utc_offset = \"+01:00\"");
    }

    private static final String SCENARIO =
            """
            title = "t"
            start = 2026-03-02
            length = "2 days"
            [climate]
            kind = "weather"
            cover = "inside"
            file = "in.csv"
            light_from = "sun"
            lamps_full = "187 umol/m2/s"
            lamps_type = "high-pressure-sodium"
            [climate.columns]
            temperature = "Tair in degC"
            [feed]
            recipe = "steiner"
            [tray.a]
            length = "60 cm"
            width = "35 cm"
            depth = "8 cm"
            crop = "basil"
            plants = 8
            hand = { to = "5 cm" }
            aerated = false
            """;

    private Reading scenario(String toml) throws IOException {
        return scenario(
                toml, "time,Tair,humidity,ppfd,lamp\nlocal,,%,umol/m2/s,%\n", "20,60,100,50");
    }

    private Reading scenario(String toml, String head, String row) throws IOException {
        Files.writeString(folder.resolve("in.csv"), rows(head, 48, row));
        Files.writeString(folder.resolve("a.toml"), toml);
        return ScenarioReader.read(folder.resolve("a.toml"), TestCrops.LIBRARY);
    }

    // 100 of sun and 93.5 of lamps for 24 h: 193.5e-6 x 86400 = 16.72 mol/m2/d.
    @Test
    void lamps_of_the_file_light_the_trays() throws IOException {
        Reading.Good good = assertInstanceOf(Reading.Good.class, scenario(SCENARIO));
        assertInstanceOf(Climate.Inside.class, good.scenario().climate());
        TrayTrace tray = Simulation.run(good.scenario()).trays().get(0);
        assertEquals(16.72, tray.lightMolPerM2().sum(0, 24), 0.005);
        assertEquals(20, tray.of(TraySeries.AIR_TEMP).at(5), 1e-12);
    }

    @Test
    void a_measured_solution_temperature_is_the_trays() throws IOException {
        Reading.Good good =
                assertInstanceOf(
                        Reading.Good.class,
                        scenario(
                                SCENARIO,
                                "time,Tair,humidity,solution_temperature\nlocal,,%,degC\n",
                                "20,60,16.5"));
        TrayTrace tray = Simulation.run(good.scenario()).trays().get(0);
        assertEquals(16.5, tray.solutionTempC().at(0), 1e-12);
        assertEquals(16.5, tray.solutionTempC().at(47), 1e-12);
    }

    @Test
    void a_tray_lamp_beside_recorded_lamps_is_a_fault() throws IOException {
        Reading.Faulty faulty =
                assertInstanceOf(
                        Reading.Faulty.class,
                        scenario(SCENARIO + "[lamp]\nppfd = \"200 umol/m2/s\"\n"));
        assertThat(faulty.problems())
                .singleElement()
                .asString()
                .contains("lamp.ppfd: found a lamp beside the lamps that the weather file records")
                .contains("counted twice");
    }

    @Test
    void a_tray_lamp_beside_measured_sun_adds_to_it_and_is_said() throws IOException {
        Reading.Good good =
                assertInstanceOf(
                        Reading.Good.class,
                        scenario(
                                SCENARIO.replaceAll("lamps_.*\n", "")
                                                .replace(
                                                        "Tair in degC\"",
                                                        "Tair in degC\"\nppfd = \"x\"")
                                        + "[lamp]\nppfd = \"200 umol/m2/s\"\n",
                                "time,Tair,humidity,x\nlocal,,%,umol/m2/s\n",
                                "20,60,100"));
        assertThat(good.notes()).singleElement().asString().contains("counts them twice");
        // 100 for 24 h and 200 for 14 h: (100 x 24 + 200 x 14) x 3600e-6 = 18.72 mol/m2/d.
        TrayTrace tray = Simulation.run(good.scenario()).trays().get(0);
        assertEquals(18.72, tray.lightMolPerM2().sum(0, 24), 1e-9);
    }

    @Test
    void glass_keys_beside_inside_air_are_faults_with_a_suggestion() throws IOException {
        Reading.Faulty faulty =
                assertInstanceOf(
                        Reading.Faulty.class,
                        scenario(
                                SCENARIO.replace(
                                        "cover = \"inside\"",
                                        "cover = \"inside\"\ntransmission = \"70 %\"")));
        assertThat(faulty.problems())
                .singleElement()
                .asString()
                .contains("climate.transmission: found \"70 %\" beside cover = \"inside\"")
                .contains("Maybe take it out");
        assertInstanceOf(
                Reading.Faulty.class,
                scenario(SCENARIO.replace("cover = \"inside\"", "cover = \"glass\"")));
    }

    @Test
    void who_says_nothing_of_air_at_the_roots_is_asked() throws IOException {
        Reading.Good asked =
                assertInstanceOf(
                        Reading.Good.class, scenario(SCENARIO.replace("aerated = false\n", "")));
        assertThat(asked.notes())
                .singleElement()
                .asString()
                .contains("a.toml:", "tray.a.aerated", "set aerated = true", "10 to 20 % less");
        assertThat(assertInstanceOf(Reading.Good.class, scenario(SCENARIO)).notes()).isEmpty();
        assertThat(
                        assertInstanceOf(
                                        Reading.Good.class,
                                        scenario(SCENARIO.replace("false", "true")))
                                .notes())
                .isEmpty();
    }

    @Test
    void a_column_without_a_unit_is_a_fault_that_says_how_to_state_it() {
        assertNull(read(rows("time,temperature,humidity,co2 [ppm]\n", 24, "20,60,700"), 1));
        assertThat(faults())
                .hasSize(2)
                .first()
                .asString()
                .contains("temperature = \"temperature in degC\"");
    }

    private static String from(LocalDateTime first, int hours) {
        StringBuilder text = new StringBuilder("time,temperature,humidity\nlocal,degC,%\n");
        for (int h = 0; h < hours; h++) {
            text.append(first.plusHours(h)).append(',').append(h % 24).append(",60\n");
        }
        return text.toString();
    }

    private InsideAir filled(String text, int days) {
        return read(text, days, rules(InsideFile.LightFrom.SUN, new Gaps(3, true), Read.of(0)));
    }

    @Test
    void a_file_that_begins_after_the_run_or_ends_before_it_is_one_fault_with_what_would_fit() {
        assertNull(read(from(START.atTime(5, 0), 24 * 4), 4));
        assertThat(faults())
                .containsExactly(
                        "in.csv:3:1: time: found rows from 2026-03-02T05:00 to 2026-03-06T05:00,"
                                + " allowed: rows of every hour of the run, 2026-03-02T00:00 to"
                                + " 2026-03-06T00:00\n    Maybe start = 2026-03-03 and length = \"3"
                                + " days\"; or longer_gaps = \"days beside\" in [climate], which"
                                + " repeats the nearest day.");
        assertNull(read(from(START.atStartOfDay(), 50), 4));
        assertThat(faults())
                .hasSize(2)
                .last()
                .asString()
                .startsWith("in.csv:52:1: time: found rows from 2026-03-02T00:00 to")
                .contains("Maybe start = 2026-03-02 and length = \"2 days\"");
    }

    @Test
    void a_file_of_another_year_is_refused_even_where_days_beside_fill_it() {
        assertNull(filled(from(START.minusYears(1).atStartOfDay(), 48), 2));
        assertThat(faults())
                .singleElement()
                .asString()
                .contains("found rows from 2025-03-02T00:00 to 2025-03-04T00:00")
                .endsWith("Maybe start = 2025-03-02 and length = \"2 days\".");
    }

    @Test
    void days_beyond_the_file_are_told_to_be_the_nearest_over_and_over() {
        InsideAir air = filled(from(START.plusDays(1).atStartOfDay(), 24), 4);
        assertEquals(List.of(), faults());
        assertEquals(7, air.at(Quantity.TEMP_C, 7));
        assertEquals(7, air.at(Quantity.TEMP_C, 79));
        assertThat(notes())
                .anyMatch(
                        note ->
                                note.contains(
                                                "24 h missing from 2026-03-02T00:00, before its"
                                                        + " first")
                                        && note.contains(
                                                "with the day that follows, over and over"))
                .anyMatch(
                        note ->
                                note.contains("48 h missing from 2026-03-04T00:00, after its last")
                                        && note.contains("with the day before, over and over"));
    }

    @Test
    void a_gap_that_no_other_day_can_fill_is_told_as_that() {
        assertNull(filled(from(START.atStartOfDay(), 6), 1));
        assertThat(faults())
                .singleElement()
                .asString()
                .contains("temperature, humidity: found a gap of 18 h from 2026-03-02T06:00")
                .endsWith("No other day of the file has a reading at these hours of the clock.");
    }

    // At 22 degC air holds 2.64 kPa (Allen et al. 1998, eq. 11): 9 hPa under a unit of kPa is more.
    @Test
    void moisture_that_no_air_holds_is_asked_about() {
        String head = "time,temperature,deficit\nlocal,degC,";
        assertNotNull(read(rows(head + "kPa\n", 24, "22,9"), 1));
        assertThat(notes())
                .containsExactly(
                        "in.csv:2: deficit: in 24 of 24 hours more than air of that warmth can hold;"
                                + " is its unit as meant?");
        read(rows(head + "hPa\n", 24, "22,9"), 1);
        read(rows(head.replace("deficit", "vapour_pressure") + "kPa\n", 24, "22,2.7"), 1);
        assertThat(notes()).hasSize(1);
    }

    @Test
    void dates_of_which_no_row_tells_day_from_month_are_told_three_times() {
        String text =
                rows("time,temperature,humidity\nlocal,degC,%\n", 24, "20,60")
                        .replace("2026-03-02", "03/02/2026");
        assertNull(read(text, 1));
        assertThat(faults())
                .hasSize(3)
                .last()
                .asString()
                .startsWith("in.csv:5:1: time: found \"03/02/2026 02:00\"")
                .endsWith("Maybe write the year first: no row of this file tells day from month.");
    }

    @Test
    void a_column_without_a_value_is_told_as_that() {
        assertNull(read(rows("time,temperature,humidity,lamp\nlocal,degC,%,%\n", 24, "20,60,"), 1));
        assertThat(faults())
                .containsExactly(
                        "in.csv:1:4: lamp: found a column without a value, allowed: values in it\n"
                                + "    Maybe take the column out.");
    }

    @Test
    void keys_that_the_file_leaves_without_use_are_said() {
        String[] all = {"co2", "air_speed", "light_from", "lamps_type", "lamps_full"};
        InsideFile.Rules stated =
                rules(InsideFile.LightFrom.SUN, new Gaps(3, false), Read.of(0), all);
        read(rows("time,temperature,humidity,co2\nlocal,degC,%,ppm\n", 24, "20,60,700"), 1, stated);
        assertThat(notes())
                .containsExactly(
                        "in.csv:1: climate.co2: not used: the file has a column of it",
                        "in.csv:1: climate.light_from: not used: the file has no column of light",
                        "in.csv:1: climate.lamps_type: not used: the file records no lamps",
                        "in.csv:1: climate.lamps_full: not used: the file has no column lamp");
        TomlFile used = new TomlFile("used.toml");
        InsideFile.read(
                new NamedFiles.Named(
                        "in.csv",
                        rows(
                                "time,temperature,humidity,ppfd,lamp\nlocal,degC,%,umol/m2/s,%\n",
                                24, "20,60,9,50")),
                used,
                START,
                1,
                stated);
        assertThat(used.notes()).isEmpty();
    }

    // 187 of lamps and 10 of sun for 24 h, as a sensor below them reads it; by night it would be 0
    // if it saw the sun alone. Where the user says what it saw, nobody asks.
    @Test
    void a_sensor_never_darker_than_the_burning_lamps_is_asked_whether_it_saw_them() {
        String head = "time,temperature,humidity,ppfd,lamp\nlocal,degC,%,umol/m2/s,%\n";
        assertNotNull(read(rows(head, 24, "20,60,197,100"), 1));
        assertThat(notes())
                .singleElement()
                .asString()
                .contains("in.csv:1: ppfd: never darker than the lamps while they burn")
                .contains("light_from = \"sun and lamps\"");
        read(
                rows(head, 24, "20,60,197,100"),
                1,
                rules(InsideFile.LightFrom.SUN, new Gaps(3, false), Read.of(0), "light_from"));
        read(rows(head, 24, "20,60,197,100").replace("23:00,20,60,197", "23:00,20,60,0"), 1);
        read(rows(head, 24, "20,60,197,0"), 1);
        assertThat(notes()).hasSize(1);
    }

    @Test
    void a_wrong_unit_is_told_three_times_in_its_own_unit_with_the_one_that_fits() {
        assertNull(read(rows("time,temperature,humidity\nlocal,K,%\n", 24, "20,60"), 1));
        assertThat(faults())
                .hasSize(3)
                .last()
                .asString()
                .contains(
                        "in.csv:5:2: temperature: found \"20\", allowed: from 253.1 K up to 333.2"
                                + " K")
                .contains("More may follow in this column: only the first 3 are shown.")
                .endsWith("Maybe the unit is meant to be degC.");
    }

    @Test
    void a_level_in_per_cent_under_a_fraction_is_told_so() {
        String head = "time,temperature,humidity,lamp\nlocal,degC,%,fraction\n";
        assertNull(read(rows(head, 24, "20,60,100"), 1));
        assertThat(faults())
                .hasSize(3)
                .last()
                .asString()
                .contains("found \"100\", allowed: from 0 up to 1.05")
                .endsWith("Maybe the unit is meant to be %.");
    }

    @Test
    void a_logger_s_sign_for_no_reading_is_told_to_be_left_empty() {
        for (String sign : List.of("-9999", "n/a", "NaN", "---", "999.9", "32767")) {
            TomlFile one = new TomlFile("one.toml");
            InsideFile.read(
                    new NamedFiles.Named(
                            "in.csv",
                            rows("time,temperature,humidity\nlocal,degC,%\n", 24, "20,60")
                                    .replace("05:00,20", "05:00," + sign)),
                    one,
                    START,
                    1,
                    rules(InsideFile.LightFrom.SUN, new Gaps(3, false), Read.of(0)));
            assertThat(one.problems().stream().map(Problem::toString))
                    .as(sign)
                    .singleElement()
                    .asString()
                    .startsWith("in.csv:8:2: temperature: found \"" + sign + "\"")
                    .endsWith("Maybe a logger's sign for no reading: leave such cells empty.");
        }
    }

    @Test
    void decimal_commas_between_commas_are_told_three_times() {
        assertNull(read(rows("time,temperature,humidity\nlocal,degC,%\n", 24, "20,5,60"), 1));
        assertThat(faults()).hasSize(3).first().asString().contains("Maybe a decimal comma");
    }

    @Test
    void a_column_that_two_names_claim_or_that_is_not_there_is_told_so() throws IOException {
        String head = "time,Tair,humidity,Quantum 1\nlocal,,%,umol/m2/s\n";
        Reading twice =
                scenario(
                        SCENARIO.replace(
                                "Tair in degC\"",
                                "Tair in degC\"\nppfd = \"Quantum 1\"\npar = \"Quantum 1 in W/m2\""),
                        head,
                        "20,60,100");
        assertThat(assertInstanceOf(Reading.Faulty.class, twice).problems())
                .singleElement()
                .asString()
                .contains(
                        "in.csv:1:4: par: found the column \"Quantum 1\", which another name has");
        Reading none =
                scenario(
                        SCENARIO.replace("Tair in degC\"", "Tair in degC\"\nppfd = \"PPFD\""),
                        head,
                        "20,60,100");
        assertThat(assertInstanceOf(Reading.Faulty.class, none).problems())
                .singleElement()
                .asString()
                .contains("ppfd: found no column \"PPFD\", allowed: one of the file's other")
                .endsWith("Did you mean \"Quantum 1\"?");
    }

    @Test
    void a_room_beside_a_file_is_one_fault() throws IOException {
        Reading reading = scenario(SCENARIO.replace("kind = \"weather\"", "kind = \"room\""));
        assertThat(assertInstanceOf(Reading.Faulty.class, reading).problems())
                .singleElement()
                .asString()
                .contains("climate.kind: found \"room\", allowed: \"weather\" beside file");
    }
}
