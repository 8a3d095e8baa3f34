package tideless;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.AccessTarget;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaCall;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.properties.HasName;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.Location;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ArchRule;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.EvaluationResult;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.io.IOException;
import java.time.LocalDate;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;

/** Holds the signs on the doors: which room may know which, and what each says of itself. */
@AnalyzeClasses(
        packages = "tideless",
        importOptions = {ImportOption.DoNotIncludeTests.class, RoomsTest.WrittenByHand.class})
class RoomsTest {
    /** Without what an annotation processor makes of the records. */
    static final class WrittenByHand implements ImportOption {
        @Override
        public boolean includes(Location location) {
            return !location.matches(
                    Pattern.compile(".*/tideless/\\w+/\\w+Builder(\\$\\w+)?\\.class"));
        }
    }

    /** Shown by a room though no other room of the program names it. */
    private static final Map<String, String> SHOWN =
            Map.of(
                    "study.InTurn", "the page (src/browser)",
                    "scenario.TomlLines", "the page (src/browser)",
                    "report.CsvFiles", "likewise",
                    "scenario.Rereading", "likewise",
                    "scenario.ScenarioReference", "makes a page of the docs",
                    "scenario.Note", "what is said of a scenario, printed by lambdas of the door",
                    "solution.MolarMass", "constants, which the compiler copies",
                    "study.Ensemble", "the benchmark of seasons (src/jmh)",
                    "study.Tolerances", "likewise",
                    "report.OutputFolder", "tests of other rooms look into it");

    @ArchTest
    static void what_a_room_shows_is_used_next_door(JavaClasses all) {
        Set<String> idle = new TreeSet<>();
        for (JavaClass one : all) {
            if (isShown(one) && !isKnownNextDoor(one)) {
                idle.add(one.getName().replaceFirst("^tideless\\.", ""));
            }
        }
        idle.removeAll(SHOWN.keySet());
        assertEquals(Set.of(), idle, "public, and no other room names them");
    }

    private static boolean isShown(JavaClass one) {
        return one.getModifiers().contains(JavaModifier.PUBLIC)
                && one.isTopLevelClass()
                && !one.getPackageName().equals("tideless.cli");
    }

    /** Itself, or a type within it. */
    private static boolean isKnownNextDoor(JavaClass one) {
        return one.getDirectDependenciesToSelf().stream()
                .anyMatch(
                        use -> !use.getOriginClass().getPackageName().equals(one.getPackageName()));
    }

    /** Rooms of the engine's side: they must also run in a browser. */
    private static final String[] ENGINE = {
        "tideless.physics",
        "tideless.solution",
        "tideless.crop",
        "tideless.rig",
        "tideless.sim",
        "tideless.advice",
        "tideless.study",
        "tideless.words",
        "tideless.drawing",
        "tideless.scenario"
    };

    /** The engine's side without the reader: no file, clock or chance of its own. */
    private static final String[] PURE = {
        "tideless.physics",
        "tideless.solution",
        "tideless.crop",
        "tideless.rig",
        "tideless.sim",
        "tideless.advice",
        "tideless.study",
        "tideless.words",
        "tideless.drawing"
    };

    /** What a browser gives to the last bit as this machine does, or what is only arithmetic. */
    private static final Map<String, Set<String>> ALLOWED_MEMBERS =
            Map.of(
                    "java.lang.Math",
                    Set.of(
                            "sqrt",
                            "abs",
                            "min",
                            "max",
                            "floor",
                            "ceil",
                            "signum",
                            "copySign",
                            "floorMod",
                            "floorDiv",
                            "toIntExact",
                            "PI"),
                    "java.lang.StrictMath",
                    Set.of(),
                    "java.lang.System",
                    Set.of("arraycopy"),
                    "java.lang.Class",
                    Set.of("getSimpleName", "getName", "getResourceAsStream"));

    private static final Map<String, Set<String>> FORBIDDEN_MEMBERS =
            Map.of(
                    "java.lang.String",
                    Set.of("lines"),
                    "java.time.LocalDate",
                    Set.of("EPOCH", "now"),
                    "java.time.LocalTime",
                    Set.of("now"),
                    "java.time.LocalDateTime",
                    Set.of("now"),
                    "java.time.Instant",
                    Set.of("now"));

    private static final Set<String> FORBIDDEN_CLASSES =
            Set.of(
                    "java.lang.Thread",
                    "java.lang.ThreadLocal",
                    "java.lang.Runtime",
                    "java.lang.Process",
                    "java.lang.ProcessBuilder",
                    "java.lang.ClassLoader",
                    "java.time.Clock",
                    "java.util.HexFormat",
                    "java.util.Random",
                    "java.util.StringJoiner",
                    "java.util.Timer",
                    "java.util.UUID");

    private static ArchRule runsInABrowser(DescribedPredicate<JavaClass> which) {
        return noClasses()
                .that(which)
                .should()
                .dependOnClassesThat()
                .resideInAnyPackage(
                        "java.util.concurrent..",
                        "java.security..",
                        "java.lang.reflect..",
                        "java.net..",
                        "java.text..",
                        "java.awt..",
                        "javax..",
                        "com.fasterxml..")
                .orShould(touchWhatABrowserLacks())
                .because("the page must run, and give the bytes of the command line");
    }

    @ArchTest
    static void every_room_has_a_sign_and_classes_in_it(JavaClasses all) throws IOException {
        Set<String> rooms = new TreeSet<>(Rooms.NAMES);
        Set<String> found = new TreeSet<>();
        for (JavaClass one : all) {
            if (!one.getSimpleName().equals("package-info")) {
                found.add(one.getPackageName().replaceFirst("^tideless\\.", ""));
            }
        }
        assertEquals(rooms, found, "the rooms of Rooms.NAMES, and those of the code");
        for (String room : rooms) {
            assertFalse(Rooms.sign(room).isEmpty(), room + " has no \"May import\" on its door");
        }
    }

    @ArchTest
    static void a_room_knows_only_what_its_sign_allows(JavaClasses all) throws IOException {
        for (String room : Rooms.NAMES) {
            rule(room, Rooms.sign(room)).check(all);
        }
    }

    @ArchTest
    static void a_sign_names_only_rooms_that_lie_below(JavaClasses all) throws IOException {
        for (String room : Rooms.NAMES) {
            List<String> below = Rooms.NAMES.subList(0, Rooms.NAMES.indexOf(room));
            for (String named : Rooms.sign(room)) {
                if (Rooms.NAMES.contains(named)) {
                    assertTrue(below.contains(named), room + " lies below " + named);
                }
            }
        }
    }

    @ArchTest
    static final ArchRule rooms_form_no_circle =
            slices().matching("tideless.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule the_engines_side_runs_in_a_browser = runsInABrowser(resideIn(ENGINE));

    @ArchTest
    static void the_rule_for_the_browser_sees_what_it_forbids(JavaClasses all) {
        JavaClasses offender = new ClassFileImporter().importClasses(Offender.class);
        EvaluationResult result =
                runsInABrowser(DescribedPredicate.alwaysTrue()).evaluate(offender);
        String report = result.getFailureReport().toString();
        for (String seen :
                List.of(
                        "String.lines()",
                        "LocalDate.EPOCH",
                        "HexFormat",
                        "Math.exp(double)",
                        "Math.log1p(double)",
                        "Thread",
                        "System.nanoTime()",
                        "Class.getDeclaredMethods()")) {
            assertTrue(report.contains(seen), "not seen: " + seen + " in\n" + report);
        }
        assertFalse(report.contains("Math.sqrt"), report);
    }

    /** Holds one of each of what the rule forbids. */
    private static final class Offender {
        static final LocalDate DAY = LocalDate.EPOCH;

        @SuppressWarnings("UnusedMethod") // read by the rule
        String lines(String text) {
            return text.lines().findFirst().orElse(HexFormat.of().toString())
                    + Math.sqrt(2)
                    + Math.exp(1)
                    + List.of(1.0).stream().mapToDouble(x -> x).map(Math::log1p).sum()
                    + Thread.currentThread()
                    + System.nanoTime()
                    + Offender.class.getDeclaredMethods().length
                    + DAY;
        }
    }

    @ArchTest
    static final ArchRule the_pure_rooms_touch_no_file =
            noClasses()
                    .that()
                    .resideInAnyPackage(PURE)
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage("java.io..", "java.nio..");

    @ArchTest
    static final ArchRule files_are_opened_by_the_reader_and_the_report =
            noClasses()
                    .that()
                    .resideOutsideOfPackages("tideless.scenario", "tideless.report")
                    .and()
                    .doNotHaveFullyQualifiedName("tideless.cli.Main") // libraries, standard output
                    .should()
                    .dependOnClassesThat()
                    .haveFullyQualifiedName("java.nio.file.Files")
                    .orShould()
                    .dependOnClassesThat()
                    .haveNameMatching("java\\.io\\.(File|RandomAccess).*");

    @ArchTest
    static final ArchRule no_room_but_the_outer_ones_holds_a_mutable_static =
            fields().that()
                    .areDeclaredInClassesThat()
                    .resideInAnyPackage(ENGINE)
                    .and()
                    .areStatic()
                    .should()
                    .beFinal();

    @ArchTest
    static final ArchRule physics_solution_crop_and_rig_hold_no_state =
            fields().that()
                    .areDeclaredInClassesThat(
                            resideIn("tideless.physics", "tideless.crop", "tideless.rig"))
                    .should()
                    .beFinal()
                    .because("they are pure functions and immutable records");

    @ArchTest
    static final ArchRule advice_makes_no_sentences =
            noClasses()
                    .that()
                    .resideInAPackage("tideless.advice")
                    .should()
                    .callMethodWhere(
                            JavaCall.Predicates.target(
                                    HasName.Predicates.nameMatching("format(ted)?")))
                    .because("it holds figures; the words are made of them elsewhere");

    @ArchTest
    static final ArchRule the_report_runs_and_judges_nothing =
            noClasses()
                    .that()
                    .resideInAPackage("tideless.report")
                    .should()
                    .dependOnClassesThat()
                    .haveFullyQualifiedName("tideless.sim.Simulation")
                    .orShould()
                    .dependOnClassesThat()
                    .haveFullyQualifiedName("tideless.advice.Advisor")
                    .orShould()
                    .dependOnClassesThat()
                    .haveFullyQualifiedName("tideless.study.Forecasts")
                    .orShould()
                    .dependOnClassesThat()
                    .haveFullyQualifiedName("tideless.study.Ensemble")
                    .because("it lays out finished results");

    @ArchTest
    static final ArchRule the_door_reckons_nothing =
            noClasses()
                    .that()
                    .resideInAPackage("tideless.cli")
                    .should()
                    .dependOnClassesThat()
                    .resideInAPackage("org.apache.commons.math3..")
                    .orShould()
                    .dependOnClassesThat()
                    .haveFullyQualifiedName("tideless.sim.Simulation");

    private static ArchRule rule(String room, List<String> sign) {
        Set<String> packages = new TreeSet<>(Set.of("tideless." + room));
        for (String named : sign) {
            packages.add(Rooms.NAMES.contains(named) ? "tideless." + named : named);
        }
        return classes()
                .that()
                .resideInAPackage("tideless." + room)
                .should()
                .onlyDependOnClassesThat()
                .resideInAnyPackage(packages.toArray(String[]::new))
                .because("the sign in its package-info.java says so");
    }

    private static DescribedPredicate<JavaClass> resideIn(String... packages) {
        return JavaClass.Predicates.resideInAnyPackage(packages);
    }

    /** Accesses of members and classes that a browser has not, or not to the last bit. */
    private static ArchCondition<JavaClass> touchWhatABrowserLacks() {
        return new ArchCondition<>("touch what a browser lacks") {
            @Override
            public void check(JavaClass one, ConditionEvents events) {
                for (JavaAccess<?> access : one.getAccessesFromSelf()) {
                    if (isLacking(access.getTarget())) {
                        events.add(SimpleConditionEvent.satisfied(access, access.getDescription()));
                    }
                }
            }
        };
    }

    private static boolean isLacking(AccessTarget target) {
        String owner = target.getOwner().getName();
        String member = target.getName();
        Set<String> allowed = ALLOWED_MEMBERS.get(owner);
        return FORBIDDEN_CLASSES.contains(owner)
                || (allowed != null && !allowed.contains(member))
                || FORBIDDEN_MEMBERS.getOrDefault(owner, Set.of()).contains(member);
    }
}
