package tideless.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tideless.rig.Planting;
import tideless.rig.Shape;
import tideless.rig.Tray;

class StarterTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 2);
    private static final Starter.Written METRIC = new Starter.Written(false, null);

    /** What is told by options, and for the rest what is usual. */
    private static Map<StarterQuestion, String> answers(String... told) {
        Map<StarterQuestion, String> answers = new EnumMap<>(StarterQuestion.class);
        for (StarterQuestion question : StarterQuestion.values()) {
            String answer = question.isAsked(answers) ? question.usual(false) : "";
            for (int i = 0; i < told.length; i += 2) {
                answer = told[i].equals(question.option()) ? told[i + 1] : answer;
            }
            if (!answer.isEmpty()) {
                List<String> faults = new ArrayList<>();
                answers.putAll(question.read(answer, answers, TODAY, faults));
                assertThat(faults).isEmpty();
            }
        }
        return answers;
    }

    private static String written(Map<StarterQuestion, String> answers) {
        Starter.Written in = new Starter.Written(Starter.isUs(answers), null);
        Starter.Feed feed = Starter.feeds(answers).get(0);
        return Starter.of(answers, new Starter.Care(feed, false, true), in);
    }

    private static Tray tray(Map<StarterQuestion, String> answers) {
        Reading reading = ScenarioReader.read("new.toml", new FilesInMemory(written(answers)));
        return ((Reading.Good) reading).scenario().trays().get(0);
    }

    /** Each as somebody has answered it, and the line it becomes. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "--crop; bok choy; crop = \"pak-choi\"",
                "--crop; 12 lettuces; plants = 12",
                "--crop; lettuce, 4 plants; plants = 4",
                "--crop; 2 tomatoes per tray; crop = \"tomato\"",
                "--crop; a cucumber plant; plants = 1",
                "--plants; 1 plant; plants = 1",
                "--plants; three; plants = 3",
                "--trays; 2 trays; [tray.bench-2]",
                "--size; 2 of 60 x 35 x 9 cm; [tray.bench-2]",
                "--size; two trays of 12 x 14 in; [tray.bucket-2]",
                "--size; 2 5-gallon buckets; [tray.bucket-2]",
                "--size; 12 x 14 inches; diameter = \"12 in\"",
                "--size; 12in by 14in; depth = \"14 in\"",
                "--size; '12\" x 14\"'; cup_bottom = \"10.9 in\"",
                "--crop; Dwarf tomato; crop = \"dwarf-tomato\"",
                "--size; 5 gallon bucket; floor_diameter = \"25.3 cm\"",
                "--size; a 10 L bucket; floor_diameter = \"20.5 cm\"",
                "--size; 5 gal straight bucket; diameter = \"27.2 cm\"",
                "--light; 24 W 14 h; off = \"20:00\"",
                "--light; 2 x 12 watts for 12 hours; watts = \"24 W\"",
                "--light; a sunny window; # told: window; assumed: so much, as in the mean days of March to April in",
                "--light; 24 W 14 h and a window; window_light = \"",
                "--light; window + 24 W lamp 14 h; watts = \"24 W\"",
                "--light; balcony; glasshouse-tomato-trough.toml",
                "--light; balcony; air_speed = \"1 m/s\"",
                "--light; 12 klux 14 h; lux = \"12000 lux\"",
                "--light; 200 umol; ppfd = \"200 umol/m2/s\"",
                "--size; 1.2 m x 60 cm x 20 cm; length = \"120 cm\"",
                "--size; 60,5 x 35 x 8 cm; length = \"60.5 cm\"",
                "--size; 2 ft x 14 in x 4 in; length = \"24 in\"",
                "--filling; float valve; setting =",
                "--filling; by hand; .hand]",
                "--filling; filled once; filling = \"sealed\"",
                "--start; May 1, 2027; start = 2027-05-01",
                "--start; 11 January 2027; start = 2027-01-11",
                "--start; 1st of June 2027; start = 2027-06-01",
                "--visits; every day; days = \"daily\"",
                "--visits; monday to friday; \"mon\", \"tue\", \"wed\", \"thu\", \"fri\"]",
                "--visits; sat-mon; [\"sat\", \"sun\", \"mon\"]",
                "--visits; sat-mon and thursdays; [\"sat\", \"sun\", \"mon\", \"thu\"]",
                "--visits; Tuesdays and Thursdays; [\"tue\", \"thu\"]",
                "--visits; school days; \"fri\"]",
                "--away; 21 Mar 2026 to 29 March 2026; from = 2026-03-21, to = 2026-03-29",
                "--away; Mar 21, 2026 until Mar 29, 2026; from = 2026-03-21, to = 2026-03-29",
                "--away; 21.3.2026 - 29.3.2026; from = 2026-03-21, to = 2026-03-29",
                "--away; 15 to 19 March; from = 2026-03-15, to = 2026-03-19",
                "--away; 15 to 19 Mar 2026; from = 2026-03-15, to = 2026-03-19",
                "--away; March 15-19, 2026; from = 2026-03-15, to = 2026-03-19",
                "--away; March 28 to April 3, 2026; from = 2026-03-28, to = 2026-04-03",
                "--away; 5 days from March 15, 2026; from = 2026-03-15, to = 2026-03-19",
                "--away; March 15 for 1 week; from = 2026-03-15, to = 2026-03-21",
                "--away; 5-7 Mar and 15-19 Mar; '2026-03-07 }, { from = 2026-03-15, to = 2026-03-19'",
                "--away; no; at = \"08:00\"",
                "--away; half-term 15 to 19 Mar; from = 2026-03-15, to = 2026-03-19",
                "--away; half-term: 15-19 March 2026; from = 2026-03-15, to = 2026-03-19",
                "--away; we are away from 15 March for a week; from = 2026-03-15, to = 2026-03-21",
                "--away; a fortnight from 15 March; from = 2026-03-15, to = 2026-03-28",
                "--away; half-term, 5 to 7 Mar, 15 to 19 Mar; '2026-03-07 }, { from = 2026-03-15'",
                "--crop; 6 lettuce, 6 basil; [tray.bench-2]",
                "--crop; lettuce and basil; plants = 4 # assumed",
                "--crop; 4 kale + 4 chard + 4 mint; [tray.bench-3]",
                "--water; hard; source = \"hard-tap\"",
                "--water; rain water; source = \"rain\"",
                "--water; our tap reads 0.4 mS/cm; ec = \"0.4 mS/cm\"",
                "--water; 200 ppm-500; ec = \"200 ppm-500\"",
                "--reservoir; 60 L hard tap; source = \"hard-tap\"",
                "--reservoir; '30,5 L'; volume = \"30.5 L\"",
                "--reservoir; 20 gal, rain; source = \"rain\"",
                "--reservoir; 60 L 0.3 mS/cm; ec = \"0.3 mS/cm\"",
                "--water; hard tap and half rain; rain_share = \"50 %\"",
                "--water; hard tap with 70 % rain; rain_share = \"70 %\"",
                "--feed; two bottles; bought = true",
                "--feed; bought 1.8 mS/cm; ec = \"1.8 mS/cm\" # told",
                "--feed; steiner at 1.5 mS/cm; recipe = \"steiner\" # told",
                "--light; polytunnel; window_light = \"16 mol/m2/day\"",
                "--light; polytunnel; the mean days of March to",
                "--light; south window; window_light = \"4.5 mol/m2/day\"",
                "--start; mid April; start = 2026-04-15",
                "--start; end of April; start = 2026-04-30",
                "--start; early May 2027; start = 2027-05-05",
                "--start; 1 May to 30 June; length = \"61 days\"",
                "--start; 1 April for 10 weeks; length = \"70 days\"",
                "--end; 12 weeks; length = \"84 days\"",
                "--end; 1 May; length = \"61 days\"",
                "--visits; every weekend; [\"sat\", \"sun\"]",
                "--visits; twice a week; [\"mon\", \"thu\"]",
                "--visits; 3 times a week; [\"mon\", \"wed\", \"fri\"]",
                "--visits; once a week; [\"mon\"]",
                "--visits; every other day; [\"mon\", \"wed\", \"fri\"]",
                "--visits; every Tuesday & Friday; [\"tue\", \"fri\"]"
            })
    void answers_are_understood_as_people_give_them(String option, String answer, String line) {
        Map<StarterQuestion, String> answers = answers(option, answer);
        assertThat(written(answers)).contains(line.replace("'", ""));
        assertThat(tray(answers)).isNotNull();
        answers.forEach(
                (question, kept) ->
                        assertThat(question.read(kept, answers, TODAY, new ArrayList<>()))
                                .as("what is kept is read again: " + kept)
                                .containsEntry(question, kept));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "24 W 14 h each; 2100",
                "24 W 14 h per tray; 2100",
                "24 W 14 h over both; 4200",
                "one 24 W lamp for two trays, 14 h; 4200",
                "24 W 14 h over all; 8400",
                "24 W for 14 h in total over all four trays; 8400"
            })
    void a_lamp_lights_as_many_trays_as_it_is_told_to(String light, String cm2) {
        assertThat(
                        written(
                                answers(
                                        "--size",
                                        "4 of 60 x 35 x 8 cm",
                                        "--reservoir",
                                        "60 L",
                                        "--light",
                                        light)))
                .contains("area = \"" + cm2 + " cm2\"");
    }

    /** 5 US gallons are 18.93 L, exact; its sides are written to a tenth of an inch. */
    @Test
    void a_bucket_told_by_its_volume_holds_that_to_the_rim() {
        Tray bucket =
                tray(answers("--crop", "1 kale", "--size", "5 gallon bucket", "--filling", "hand"));
        Shape shape = bucket.shape();
        assertThat(1000 * shape.volumeM3(shape.depthM())).isCloseTo(18.93, within(0.25));
        assertThat(shape.rimAreaM2()).isGreaterThan(shape.floorAreaM2());
        // A lone plant spreads over the rim as far as its crop does: kale over 0.12 m2.
        Planting.OfCrop kale = (Planting.OfCrop) bucket.planting();
        assertThat(kale.groundM2()).isCloseTo(0.12, within(0.00093)); // written to 0.01 ft2
    }

    // A row of three dwarf tomatoes in a trough 15 cm wide: a crown is 34 cm across (spread of 0.09
    // m2), and over 90 cm there is room for all three; of two troughs nobody said how they stand.
    @Test
    void a_row_with_room_around_spreads_over_its_sides() {
        Map<StarterQuestion, String> one =
                answers("--crop", "3 dwarf-tomato", "--size", "90 x 15 x 12 cm");
        assertThat(written(one)).contains("ground = \"2700 cm2\" # assumed: room");
        assertThat(Starter.crowd(one)).isEmpty();
        Map<StarterQuestion, String> two =
                answers("--crop", "3 dwarf-tomato", "--size", "2 of 85 x 15 x 12 cm");
        assertThat(written(two)).doesNotContain("ground =");
        assertThat(Starter.crowd(two).orElseThrow())
                .contains("3 plants on 0.1275 m2", "stay small; 1 would have room");
    }

    // Of 2100 cm2 each basil gets the 500 growers give it, so four have room.
    @Test
    void as_many_have_room_as_growers_give_ground() {
        assertThat(written(answers("--crop", "basil"))).contains("plants = 4 # assumed");
        assertThat(written(answers("--crop", "12 basil"))).contains("plants = 12\n");
    }

    // A lamp of 60 W over one tray of 60 by 35 cm.
    @Test
    void a_lamp_that_was_told_lights_the_tray_and_nothing_is_assumed_of_it() {
        Map<StarterQuestion, String> lamp = answers("--crop", "4 basil", "--light", "60 W 16 h");
        assertThat(written(lamp))
                .contains("watts = \"60 W\"", "area = \"2100 cm2\"", "off = \"22:00\"");
        assertThat(Starter.remarks(lamp, METRIC)).isEmpty();
        assertThat(Starter.remarks(answers("--crop", "4 basil"), METRIC))
                .singleElement()
                .asString()
                .startsWith("assumed: light as the crop needs");
        Map<StarterQuestion, String> window = answers("--crop", "4 basil", "--light", "window");
        assertThat(written(window)).contains("window_light").doesNotContain("[lamp]");
        assertThat(Starter.remarks(window, METRIC))
                .containsExactly(
                        "assumed: window gives 4.5 mol/m2 of light a day, as in the mean days of March to April in a mild place at 50 degrees north (south of the equator the seasons are the other way round); measure it");
    }

    // What new understands and a file does not is answered with what stands for it.
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "end = 2026-04-20; 'Maybe length = \"49 days\": a run is told by its first day and how long it lasts.'",
                "climate.kind = \"polytunnel\"; 'Maybe \"weather\" with a file, or \"room\" with window_light and your own warmth.'",
                "feed.ec = \"900 ppm\"; write \"900 ppm-500\" or \"900 ppm-700\"",
                "water.ec = \"150 ppm\"; write \"150 ppm-500\" or \"150 ppm-700\"",
                "visits.days = \"twice a week\"; 'Maybe [\"mon\", \"thu\"].'",
                "visits.days = \"weekends\"; 'Maybe [\"sat\", \"sun\"].'"
            })
    void what_a_file_does_not_understand_is_answered_with_what_it_does(String line, String hint) {
        Reading reading = ScenarioReader.read("new.toml", new FilesInMemory(line + "\n"));
        assertThat(((Reading.Faulty) reading).problems())
                .anySatisfy(fault -> assertThat(fault.hint()).contains(hint.replace("'", "")));
    }

    // In a file a date has one form; who writes another is told it.
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "start = 15 April 2027; 2027-04-15",
                "start = 15.2.2027; 2027-02-15",
                "start = April 15, 2027; 2027-04-15",
                "away = [{ from = 15.2.2027, to = 19.2.2027 }]; 2027-02-15"
            })
    void a_date_that_no_file_may_hold_is_answered_with_the_one_it_may(String line, String date) {
        Reading reading = ScenarioReader.read("new.toml", new FilesInMemory(line + "\n"));
        assertThat(((Reading.Faulty) reading).problems().get(0).hint())
                .isEqualTo("Maybe write the date as " + date + ".");
    }

    /** Filled to its level at once after an absence it drowned the roots that had grown in air. */
    @Test
    void a_tray_that_nobody_tops_up_for_a_while_is_raised_in_steps() {
        String away = "2026-03-15 to 2026-03-19";
        assertThat(written(answers("--filling", "hand", "--away", away)))
                .contains("in_steps = true # assumed");
        assertThat(written(answers("--filling", "hand"))).doesNotContain("in_steps");
        assertThat(written(answers("--away", away))).doesNotContain("in_steps");
    }
}
