package tideless;

import java.lang.reflect.AnnotatedElement;
import java.util.Optional;
import net.jqwik.api.lifecycle.AroundPropertyHook;
import net.jqwik.api.lifecycle.PropagationMode;
import net.jqwik.api.lifecycle.PropertyAttributes;
import net.jqwik.api.lifecycle.PropertyExecutionResult;
import net.jqwik.api.lifecycle.PropertyExecutor;
import net.jqwik.api.lifecycle.PropertyLifecycleContext;

/**
 * How laws draw their cases: from the seed of the system property {@code tideless.seed} where it is
 * set, afresh where not; {@code tideless.tries} times as many as they ask for. A law that names its
 * own seed keeps it.
 */
public final class Draws implements AroundPropertyHook {
    private static final int JQWIK_TRIES = 1000;

    @Override
    public boolean appliesTo(Optional<AnnotatedElement> element) {
        return true;
    }

    @Override
    public PropagationMode propagateTo() {
        return PropagationMode.ALL_DESCENDANTS;
    }

    @Override
    public PropertyExecutionResult aroundProperty(
            PropertyLifecycleContext context, PropertyExecutor property) {
        set(context.attributes());
        return property.execute();
    }

    static void set(PropertyAttributes attributes) {
        String seed = System.getProperty("tideless.seed", "");
        if (!seed.isEmpty() && attributes.seed().orElse("").isEmpty()) {
            attributes.setSeed(seed);
        }
        int times = Integer.getInteger("tideless.tries", 1);
        if (times > 1) {
            attributes.setTries(times * attributes.tries().orElse(JQWIK_TRIES));
        }
    }
}
