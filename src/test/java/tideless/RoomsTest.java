package tideless;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** Holds the signs on the doors: which room may know which. */
@AnalyzeClasses(packages = "tideless", importOptions = ImportOption.DoNotIncludeTests.class)
class RoomsTest {
    private static final String[] PURE = {
        "tideless.physics..", "tideless.solution..", "tideless.crop..", "tideless.sim.."
    };

    @ArchTest
    static void every_room_has_classes_in_it(JavaClasses all) {
        for (String room :
                new String[] {
                    "physics",
                    "solution",
                    "crop",
                    "scenario",
                    "sim",
                    "advice",
                    "study",
                    "report",
                    "cli"
                }) {
            assertTrue(
                    all.stream()
                            .anyMatch(
                                    c ->
                                            c.getPackageName().equals("tideless." + room)
                                                    && !c.getSimpleName().equals("package-info")),
                    "no class seen in tideless."
                            + room
                            + ": the rules below would hold of nothing");
        }
    }

    @ArchTest
    static final ArchRule physics_knows_only_the_language_and_root_finders =
            classes()
                    .that()
                    .resideInAPackage("tideless.physics..")
                    .should()
                    .onlyDependOnClassesThat()
                    .resideInAnyPackage(
                            "tideless.physics..",
                            "java.lang",
                            "java.util",
                            "java.util.function",
                            "org.apache.commons.math3..")
                    .because("it must run anywhere and be checked against a handbook line by line");

    @ArchTest
    static final ArchRule solution_knows_physics =
            classes()
                    .that()
                    .resideInAPackage("tideless.solution..")
                    .should()
                    .onlyDependOnClassesThat()
                    .resideInAnyPackage(
                            "tideless.solution..",
                            "tideless.physics..",
                            "java.lang..",
                            "java.util",
                            "java.util.function",
                            "java.util.stream",
                            "org.apache.commons.math3..");

    @ArchTest
    static final ArchRule crop_knows_solution_and_physics =
            classes()
                    .that()
                    .resideInAPackage("tideless.crop..")
                    .should()
                    .onlyDependOnClassesThat()
                    .resideInAnyPackage(
                            "tideless.crop..",
                            "tideless.solution..",
                            "tideless.physics..",
                            "java.lang..",
                            "java.util",
                            "java.util.function",
                            "java.util.stream",
                            "org.apache.commons.math3..");

    @ArchTest
    static final ArchRule scenario_knows_no_run =
            noClasses()
                    .that()
                    .resideInAPackage("tideless.scenario..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(
                            "tideless.sim..",
                            "tideless.advice..",
                            "tideless.study..",
                            "tideless.report..",
                            "tideless.cli..");

    @ArchTest
    static final ArchRule sim_knows_no_judgement =
            noClasses()
                    .that()
                    .resideInAPackage("tideless.sim..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(
                            "tideless.advice..",
                            "tideless.study..",
                            "tideless.report..",
                            "tideless.cli..");

    @ArchTest
    static final ArchRule advice_knows_one_run =
            noClasses()
                    .that()
                    .resideInAPackage("tideless.advice..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage("tideless.study..", "tideless.report..", "tideless.cli..");

    @ArchTest
    static final ArchRule study_prints_nothing =
            noClasses()
                    .that()
                    .resideInAPackage("tideless.study..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage("tideless.report..", "tideless.cli..");

    @ArchTest
    static final ArchRule report_does_not_know_the_door =
            noClasses()
                    .that()
                    .resideInAPackage("tideless.report..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage("tideless.cli..");

    @ArchTest
    static final ArchRule rooms_form_no_circle =
            slices().matching("tideless.(*)..").should().beFreeOfCycles();

    @ArchTest
    static final ArchRule the_pure_rooms_touch_no_file_clock_thread_or_reflection =
            noClasses()
                    .that()
                    .resideInAnyPackage(PURE)
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage(
                            "java.io..",
                            "java.nio..",
                            "java.net..",
                            "java.lang.reflect..",
                            "java.util.concurrent..",
                            "javax..",
                            "java.awt..")
                    .orShould()
                    .dependOnClassesThat()
                    .haveFullyQualifiedName("java.lang.Thread")
                    .orShould()
                    .dependOnClassesThat()
                    .haveFullyQualifiedName("java.time.Clock")
                    .orShould()
                    .dependOnClassesThat()
                    .haveFullyQualifiedName("java.util.Random")
                    .orShould()
                    .callMethod(System.class, "currentTimeMillis")
                    .orShould()
                    .callMethod(System.class, "nanoTime")
                    .orShould()
                    .callMethod(Math.class, "random")
                    .orShould()
                    .callMethod(java.time.LocalDate.class, "now")
                    .orShould()
                    .callMethod(java.time.LocalDateTime.class, "now")
                    .because("they must also run where there are none, and give the same bytes");

    @ArchTest
    static final ArchRule the_pure_rooms_hold_no_mutable_static =
            fields().that()
                    .areDeclaredInClassesThat()
                    .resideInAnyPackage(PURE)
                    .and()
                    .areStatic()
                    .should()
                    .beFinal();

    @ArchTest
    static final ArchRule one_room_knows_the_charts =
            noClasses()
                    .that()
                    .resideOutsideOfPackage("tideless.report..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAnyPackage("org.jfree..", "org.apache.batik..", "java.awt..");

    @ArchTest
    static final ArchRule one_room_knows_the_command_line_reader =
            noClasses()
                    .that()
                    .resideOutsideOfPackage("tideless.cli..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAPackage("picocli..");

    @ArchTest
    static final ArchRule one_room_knows_toml =
            noClasses()
                    .that()
                    .resideOutsideOfPackage("tideless.scenario..")
                    .should()
                    .dependOnClassesThat()
                    .resideInAPackage("org.tomlj..");
}
