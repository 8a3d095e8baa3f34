package tideless;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaMember;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * What nothing but tests reaches goes, or moves to the tests: from the door's commands on, every
 * method of the program is reached, but for what is named here with its reason.
 */
class OnlyWhatRunsTest {
    private static final House HOUSE = new House();

    /** Ways in beside the door: a room, a class, or one method, and who comes in there. */
    private static final Map<String, String> WAYS_IN = waysIn();

    /** Reached by nothing, and kept. */
    private static final Map<String, String> KEPT = kept();

    private static Map<String, String> kept() {
        Map<String, String> kept = new TreeMap<>();
        String looked = "how a test looks at what was read";
        kept.put("rig.HourlyWeather.rainMPerH", looked);
        kept.put("rig.HourlyWeather.source", looked);
        kept.put("rig.InsideAir.source", looked);
        kept.put("study.Sensitivity.of", looked);
        kept.put("scenario.ChangedScenario.read", "a change with nothing beside it, for tests");
        String whole = "in one call what a step works out in parts";
        kept.put("physics.OpenWater.forcedMassTransferMPerS", whole);
        kept.put("physics.OpenWater.massTransferMPerS", whole);
        kept.put("solution.Speciation.molPerM3", "held against published speciations");
        kept.put("solution.Speciation.tempC", "held against published speciations");
        kept.put("solution.Speciation.worstResidual", "how well a solve ended");
        return kept;
    }

    private static Map<String, String> waysIn() {
        Map<String, String> ways = new TreeMap<>();
        String page = "the page (src/browser)";
        ways.put("scenario.ScenarioReader.read", page);
        ways.put("scenario.Rereading", page);
        ways.put("study.Forecasts.of", page);
        ways.put("drawing.RigPicture.of", page);
        ways.put("drawing.RigPicture.at", page);
        ways.put("sim.HourlySeries$Column", page);
        ways.put("sim.Series.toArray", page);
        ways.put("sim.TrayTrace", page);
        ways.put("sim.ReservoirTrace", page);
        ways.put("scenario.Beside.of", page);
        ways.put("words.LookWords.harmful", page);
        ways.put("words.LookWords.tooSlow", page);
        ways.put("scenario.FilesInMemory", page + ", where no folder is");
        ways.put("scenario.ScenarioReference.markdown", "makes docs/scenario-reference.md");
        ways.put("scenario.ScenarioSchema.json", "makes scenarios/scenario.schema.json");
        String bench = "the benchmark of seasons draws its rigs from it";
        ways.put("study.Tolerances", bench);
        ways.put("study.Ensemble", bench);
        ways.put("study.Posterior", "what a log of readings says of unknowns, before its command");
        return ways;
    }

    @Test
    void everything_is_reached_from_the_door_or_a_named_way_in() {
        Reach reach = new Reach(HOUSE);
        assertTrue(reach.reached.size() > 2000, "methods reached: " + reach.reached.size());
        Set<String> idle = reach.idle();
        Set<String> wrong = new TreeSet<>(idle);
        wrong.removeAll(KEPT.keySet());
        assertEquals("", String.join("\n", wrong), "reached by tests alone, or by nothing");
        Set<String> needless = new TreeSet<>(KEPT.keySet());
        needless.removeAll(idle);
        assertEquals(Set.of(), needless, "named as kept, and reached or gone");
    }

    @Test
    void every_way_in_is_there_and_needed() {
        Set<String> missing = new TreeSet<>(WAYS_IN.keySet());
        HOUSE.methods().forEach(method -> missing.remove(wayOf(method)));
        HOUSE.methods().forEach(method -> missing.remove(name(method.getOwner())));
        HOUSE.methods().forEach(method -> missing.remove(room(method.getOwner())));
        assertEquals(Set.of(), missing);
    }

    private static String wayOf(JavaMethod method) {
        return name(method.getOwner()) + "." + method.getName();
    }

    private static String room(JavaClass one) {
        return one.getPackageName().replaceFirst("^tideless\\.", "");
    }

    private static String name(JavaClass one) {
        return one.getName().replaceFirst("^tideless\\.", "");
    }

    /** What runs when somebody comes in: by calls, references and the classes they touch. */
    private static final class Reach {
        private final House house;
        private final Set<JavaCodeUnit> reached = new HashSet<>();
        private final Set<JavaClass> touched = new HashSet<>();
        private final Deque<JavaCodeUnit> left = new ArrayDeque<>();

        Reach(House house) {
            this.house = house;
            house.methods().filter(Reach::isWayIn).forEach(this::reach);
            house.classes().filter(Reach::isOfTheDoor).forEach(this::touch);
            while (!left.isEmpty()) {
                follow(left.pop());
            }
        }

        private static boolean isOfTheDoor(JavaClass one) {
            return one.getPackageName().equals("tideless.cli");
        }

        private static boolean isWayIn(JavaMethod method) {
            boolean isHidden = method.getModifiers().contains(JavaModifier.PRIVATE);
            return !isHidden
                            && (WAYS_IN.containsKey(wayOf(method))
                                    || WAYS_IN.containsKey(name(method.getOwner()))
                                    || WAYS_IN.containsKey(room(method.getOwner())))
                    || isOfTheDoor(method.getOwner()) && method.getName().equals("main");
        }

        private void reach(JavaCodeUnit unit) {
            if (reached.add(unit)) {
                left.add(unit);
            }
        }

        private void follow(JavaCodeUnit unit) {
            touch(unit.getOwner());
            for (JavaAccess<?> access : unit.getAccessesFromSelf()) {
                touch(access.getTargetOwner());
                JavaMember member =
                        house.isOwn(access.getTargetOwner())
                                ? access.getTarget().resolveMember().orElse(null)
                                : null;
                if (member != null) {
                    touch(member.getOwner());
                }
                if (member instanceof JavaCodeUnit called && house.isOwn(called.getOwner())) {
                    call(called);
                }
            }
            unit.getReferencedClassObjects().forEach(object -> touch(object.getRawType()));
        }

        private void call(JavaCodeUnit called) {
            if (reached.contains(called)) {
                return;
            }
            reach(called);
            for (JavaClass below : called.getOwner().getAllSubclasses()) {
                if (touched.contains(below)) {
                    below.getMethods().stream()
                            .filter(method -> isLike(method, called))
                            .forEach(this::reach);
                }
            }
        }

        /** A class that something runs: what others may call of it without naming it runs too. */
        private void touch(JavaClass one) {
            if (!house.isOwn(one) || !touched.add(one)) {
                return;
            }
            one.getRawSuperclass().ifPresent(this::touch);
            one.getRawInterfaces().forEach(this::touch);
            one.getStaticInitializer().ifPresent(this::reach);
            if (isOfTheDoor(one)) {
                one.getConstructors().forEach(this::reach); // made by picocli
            }
            one.getMethods().stream()
                    .filter(method -> above(one).anyMatch(up -> isCalledAs(up, method)))
                    .forEach(this::reach);
            if (isOfTheDoor(one)) {
                one.getMethods().stream()
                        .filter(method -> !method.getAnnotations().isEmpty()) // called by picocli
                        .forEach(this::reach);
            }
        }

        private boolean isCalledAs(JavaClass up, JavaMethod method) {
            return up.getMethods().stream()
                    .anyMatch(
                            known ->
                                    isLike(method, known)
                                            && (!house.isOwn(up) || reached.contains(known)));
        }

        private static Stream<JavaClass> above(JavaClass one) {
            return Stream.concat(
                    one.getAllRawSuperclasses().stream(), one.getAllRawInterfaces().stream());
        }

        private static boolean isLike(JavaMethod one, JavaCodeUnit other) {
            return one.getName().equals(other.getName())
                    && one.getRawParameterTypes().size() == other.getRawParameterTypes().size()
                    && !one.getModifiers().contains(JavaModifier.STATIC);
        }

        /** Methods that nobody reaches; what the compiler adds and a record's components not. */
        Set<String> idle() {
            Set<String> idle = new TreeSet<>();
            house.methods()
                    .filter(method -> !reached.contains(method))
                    .filter(method -> !isMadeByTheCompiler(method))
                    .filter(method -> !isToldByObject(method))
                    .forEach(method -> idle.add(wayOf(method)));
            return idle;
        }

        private static boolean isMadeByTheCompiler(JavaMethod method) {
            JavaClass owner = method.getOwner();
            boolean isComponent =
                    owner.isRecord()
                            && method.getRawParameterTypes().isEmpty()
                            && owner.tryGetField(method.getName()).isPresent();
            boolean isOfEnum =
                    owner.isEnum() && Set.of("values", "valueOf").contains(method.getName());
            return isComponent
                    || isOfEnum
                    || method.getModifiers().contains(JavaModifier.ABSTRACT)
                    || method.getModifiers().contains(JavaModifier.SYNTHETIC)
                    || method.getModifiers().contains(JavaModifier.BRIDGE);
        }

        private static boolean isToldByObject(JavaMethod method) {
            return Set.of("toString", "equals", "hashCode").contains(method.getName());
        }
    }
}
