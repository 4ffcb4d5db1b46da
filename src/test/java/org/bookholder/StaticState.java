package org.bookholder;

import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.util.BitSet;
import java.util.Collection;
import java.util.Collections;
import java.util.IdentityHashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.regex.Matcher;
import org.jspecify.annotations.Nullable;

/** Finds static fields that are final but whose value can change, such as a map that is filled while the program runs. */
final class StaticState {
    /** Types of which every instance changes. */
    private static final List<Class<?>> CHANGING = List.of(
            StringBuilder.class,
            StringBuffer.class,
            BitSet.class,
            Random.class,
            Iterator.class,
            Matcher.class,
            ThreadLocal.class,
            java.nio.Buffer.class);

    /** Collections of the Java library that refuse changes. */
    private static final List<String> UNCHANGING_COLLECTIONS = List.of(
            "java.util.ImmutableCollections$",
            "java.util.Collections$Unmodifiable",
            "java.util.Collections$Empty",
            "java.util.Collections$Singleton",
            "org.pcollections.");

    /**
     * Holds of objects that have nothing to change: collections that refuse it, and objects of ours whose fields are final
     * and hold such objects in turn. Arrays, and what lies in collections, are left to review.
     */
    static final ArchCondition<JavaField> NEVER_CHANGE = new ArchCondition<>("hold what never changes") {
        @Override
        public void check(JavaField field, ConditionEvents events) {
            boolean byCompiler = field.getModifiers().contains(JavaModifier.SYNTHETIC);
            if (!byCompiler && !field.getRawType().isPrimitive() && changes(value(field.reflect(), null), nothing())) {
                events.add(SimpleConditionEvent.violated(
                        field, field.getFullName() + " is final, but what it holds can change"));
            }
        }
    };

    private StaticState() {}

    private static Set<Object> nothing() {
        return Collections.newSetFromMap(new IdentityHashMap<>());
    }

    private static boolean changes(@Nullable Object held, Set<Object> seen) {
        if (held == null || !seen.add(held)) {
            return false;
        }
        String type = held.getClass().getName();
        if (held instanceof Collection<?> || held instanceof Map<?, ?>) {
            return UNCHANGING_COLLECTIONS.stream().noneMatch(type::startsWith);
        }
        return type.startsWith("java.util.concurrent.")
                || CHANGING.stream().anyMatch(c -> c.isInstance(held))
                || (type.startsWith("org.bookholder.") && hasFieldsThatChange(held, seen));
    }

    private static boolean hasFieldsThatChange(Object held, Set<Object> seen) {
        if (held.getClass().isHidden()) {
            return false;
        }
        for (Class<?> c = held.getClass(); c.getName().startsWith("org.bookholder."); c = c.getSuperclass()) {
            for (Field field : c.getDeclaredFields()) {
                boolean ofInstances = !Modifier.isStatic(field.getModifiers());
                if (ofInstances && (!Modifier.isFinal(field.getModifiers()) || changes(value(field, held), seen))) {
                    return true;
                }
            }
        }
        return false;
    }

    private static @Nullable Object value(Field field, @Nullable Object of) {
        try {
            field.setAccessible(true);
            return field.get(of);
        } catch (IllegalAccessException e) {
            throw new IllegalStateException("a field of the program must be readable", e);
        }
    }
}
