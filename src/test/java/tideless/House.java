package tideless;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaMethodCall;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import tideless.sim.Simulation;

/** What the code says of its own build: which room uses which, and what one step calls. */
final class House {
    private final JavaClasses classes =
            new ClassFileImporter()
                    .importPackages("tideless")
                    .that(DescribedPredicate.describe("are of the program", House::isOfProgram));

    private static boolean isOfProgram(JavaClass one) {
        String file = one.getName().replaceFirst("\\$.*", "").replace('.', '/') + ".java";
        return Files.exists(Path.of("src/main/java", file));
    }

    /** The classes of the program. */
    Stream<JavaClass> classes() {
        return classes.stream();
    }

    /** Their methods. */
    Stream<JavaMethod> methods() {
        return classes.stream().flatMap(one -> one.getMethods().stream());
    }

    boolean isOwn(JavaClass one) {
        return classes.contain(one.getName());
    }

    /** For each room those it uses, in the order of {@link Rooms#NAMES}. */
    Map<String, List<String>> uses() {
        Map<String, Set<String>> found = new TreeMap<>();
        for (JavaClass one : classes) {
            String room = room(one);
            for (Dependency dependency : one.getDirectDependenciesFromSelf()) {
                String other = room(dependency.getTargetClass().getBaseComponentType());
                if (Rooms.NAMES.contains(other) && !other.equals(room)) {
                    found.computeIfAbsent(room, r -> new TreeSet<>()).add(other);
                }
            }
        }
        Map<String, List<String>> uses = new TreeMap<>();
        for (String room : Rooms.NAMES) {
            Set<String> of = found.getOrDefault(room, Set.of());
            uses.put(room, Rooms.NAMES.stream().filter(of::contains).toList());
        }
        return uses;
    }

    /** The same without what follows: no arrow from a to c where a uses b and b, by itself, c. */
    static Map<String, List<String>> arrows(Map<String, List<String>> uses) {
        Map<String, List<String>> arrows = new TreeMap<>();
        uses.forEach(
                (room, others) ->
                        arrows.put(
                                room,
                                others.stream()
                                        .filter(
                                                other ->
                                                        others.stream()
                                                                .noneMatch(
                                                                        by ->
                                                                                reaches(
                                                                                        uses, by,
                                                                                        other)))
                                        .toList()));
        return arrows;
    }

    private static boolean reaches(Map<String, List<String>> uses, String from, String to) {
        return uses.get(from).stream().anyMatch(by -> by.equals(to) || reaches(uses, by, to));
    }

    private static String room(JavaClass one) {
        return one.getPackageName().replaceFirst("^tideless\\.", "");
    }

    /**
     * What a run does in one step, in the order of the code, as "Class.method": calls of the loop's
     * method on objects that hold state, those of the plain getters left out.
     */
    List<String> step() {
        JavaMethod loop = classes.get(Simulation.class).getMethod("goThrough");
        List<JavaMethodCall> calls = new ArrayList<>(loop.getMethodCallsFromSelf());
        calls.sort(Comparator.comparingInt(JavaMethodCall::getLineNumber));
        List<String> step = new ArrayList<>();
        for (JavaMethodCall call : calls) {
            JavaClass owner = call.getTargetOwner();
            String name = owner.getSimpleName() + "." + call.getName();
            if (owner.getPackageName().equals("tideless.sim") && !step.contains(name)) {
                step.add(name);
            }
        }
        return step;
    }
}
