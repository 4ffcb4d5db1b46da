package org.bookholder.desk.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A page names all its modules, so that a browser fetches them at once and not one import after the other. */
final class PreloadedModulesTest {
    private static final Pattern IMPORTED =
            Pattern.compile("^(?:import|\\}|export).*?'\\./([\\w.]+)';", Pattern.MULTILINE);
    private static final Pattern NAMED = Pattern.compile("<link rel=\"modulepreload\" href=\"([\\w.]+)\">");

    private final Assets assets = new Assets();

    @ParameterizedTest
    @CsvSource({"home.html, home.js", "course.html, course.js", "index.html, main.js"})
    void everyModuleOfAPageIsNamedInIt(String page, String first) {
        Set<String> needed = new TreeSet<>();
        Deque<String> toRead = new ArrayDeque<>(List.of(first));
        while (!toRead.isEmpty()) {
            found(IMPORTED, toRead.remove()).stream().filter(needed::add).forEach(toRead::add);
        }
        assertThat(needed).isNotEmpty();
        assertThat(found(NAMED, page)).containsExactlyElementsOf(needed);
    }

    private List<String> found(Pattern pattern, String file) {
        String text = StandardCharsets.UTF_8
                .decode(assets.find("/" + file).orElseThrow().bytes().duplicate())
                .toString();
        List<String> found = new ArrayList<>();
        Matcher matches = pattern.matcher(text);
        while (matches.find()) {
            found.add(matches.group(1));
        }
        return found;
    }
}
