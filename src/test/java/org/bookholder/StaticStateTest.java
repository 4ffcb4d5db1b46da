package org.bookholder;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.syntax.ArchRuleDefinition;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

final class StaticStateTest {
    @Test
    void findsMutableContentsOfFinalFields() {
        assertThat(ArchRuleDefinition.fields()
                        .that()
                        .areStatic()
                        .should(StaticState.NEVER_CHANGE)
                        .evaluate(new ClassFileImporter().importClasses(Planted.class))
                        .getFailureReport()
                        .getDetails())
                .extracting(detail -> detail.replaceAll(".*[.](\\w+) is final.*", "$1"))
                .containsExactlyInAnyOrder("LIST", "MAP", "COUNT", "TEXT", "REGISTRY", "COUNTER");
    }

    @SuppressWarnings("unused")
    private static final class Planted {
        private static final List<String> LIST = new ArrayList<>();
        private static final Map<String, String> MAP = new TreeMap<>();
        private static final AtomicInteger COUNT = new AtomicInteger();
        private static final Appendable TEXT = new StringBuilder();
        private static final Registry REGISTRY = new Registry(new HashSet<>());
        private static final Counter COUNTER = new Counter();

        private static final List<String> FIXED_LIST = List.of("a");
        private static final String FIXED_TEXT = "a";
        private static final int FIXED_NUMBER = 1;
        private static final Registry FIXED_REGISTRY = new Registry(Set.of());
    }

    private record Registry(Set<String> names) {}

    private static final class Counter {
        @SuppressWarnings("unused")
        private int count;
    }
}
