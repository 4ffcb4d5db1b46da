package org.bookholder.app.session;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.bookholder.app.environment.Environment;
import org.bookholder.files.FileNames;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.AcceptedReading;
import org.bookholder.settings.Form;
import org.bookholder.settings.Form.Field;
import org.bookholder.settings.Setting;
import org.bookholder.settings.SettingsFile;
import org.bookholder.settings.SettingsText.Values;

/**
 * Words of scripts that are heard as something else when a presenter reads them, as people have decided in that presenter's sessions. They
 * stand in a file of the presenter's, one line for each word, which a person may edit.
 */
public final class HeardAs {
    private static final String WORD = "word ";
    private static final String ENDING = ".heard.txt";

    /** What can be set in the file. */
    static final Form<List<String>> FORM = new Form<>(
            "word",
            List.of(new Field<>(
                    WORD, "what is heard when this presenter reads it; it isn't called misread then", HeardAs::heard)));

    private final Environment here;
    private final String presenter;

    /** What is known of a presenter, who is told from others by name. */
    public HeardAs(Environment here, String presenter) {
        this.here = here;
        this.presenter = presenter;
    }

    /** The presenters of whom something is known, by name; those whose names make the same file's name are one. */
    public static List<String> presenters(Environment here) {
        try (Stream<Path> files = Files.list(folder(here))) {
            return files.map(file -> String.valueOf(file.getFileName()))
                    .filter(name -> name.endsWith(ENDING) && !name.startsWith("."))
                    .map(name -> name.substring(0, name.length() - ENDING.length()))
                    .sorted()
                    .toList();
        } catch (IOException none) {
            return List.of();
        }
    }

    /** All that is known, in the order of the file; lines that can't be understood are warned of and left out. */
    public List<AcceptedReading> known() {
        List<AcceptedReading> known = new ArrayList<>();
        try {
            Values<List<String>> read = file().read(FORM);
            here.warnings().leftOut(read.wrong());
            read.values()
                    .forEach((name, heard) ->
                            heard.forEach(said -> known.add(AcceptedReading.heardAs(word(name), said))));
        } catch (ProblemException e) {
            here.warnings().of(e);
        }
        return known;
    }

    /**
     * Learns some and forgets others; the rest of the file stays as it is.
     *
     * @throws ProblemException if the file can't be read or written; it stays as it was then
     */
    public void change(Collection<AcceptedReading> learnt, Collection<AcceptedReading> forgotten)
            throws ProblemException {
        Map<String, List<String>> read = file().read(FORM).values();
        Map<String, Set<String>> before = byWord(read);
        Map<String, Set<String>> after = byWord(read);
        learnt.forEach(one -> after.computeIfAbsent(line(after.keySet(), one), word -> new LinkedHashSet<>())
                .add(one.said()));
        forgotten.forEach(one -> after.getOrDefault(line(after.keySet(), one), new LinkedHashSet<>())
                .remove(one.said()));
        Map<String, String> changed = new LinkedHashMap<>();
        Set<String> gone = new LinkedHashSet<>();
        after.forEach((word, heard) -> {
            if (heard.isEmpty()) {
                gone.add(word);
            } else if (!heard.equals(before.get(word))) {
                changed.put(word, String.join(", ", heard));
            }
        });
        if (!changed.isEmpty() || !gone.isEmpty()) {
            file().change(FORM, changed, gone);
        }
    }

    /**
     * Forgets that a word is heard as something else.
     *
     * @throws ProblemException if that isn't known, or can't be forgotten
     */
    public void forget(String written, String said) throws ProblemException {
        AcceptedReading one = AcceptedReading.heardAs(written.strip(), said.strip());
        if (!known().contains(one)) {
            throw new ProblemException(
                    "\"" + written + "\" is not known to be heard as \"" + said + "\"",
                    file().path().toString(),
                    "take one of the words that are listed as heard as something else");
        }
        change(List.of(), List.of(one));
    }

    /** The name of the line for its word: the one that is there, as somebody may have written it, or a new one. */
    private static String line(Set<String> names, AcceptedReading one) {
        return names.stream()
                .filter(name -> word(name).equals(one.written()))
                .findFirst()
                .orElse(WORD + one.written());
    }

    private static String word(String name) {
        return name.substring(WORD.length()).strip().toLowerCase(Locale.ROOT);
    }

    private static Map<String, Set<String>> byWord(Map<String, List<String>> values) {
        Map<String, Set<String>> words = new LinkedHashMap<>();
        values.forEach((word, heard) -> words.put(word, new LinkedHashSet<>(heard)));
        return words;
    }

    private SettingsFile file() {
        return new SettingsFile(
                folder(here).resolve(FileNames.ofTitle(presenter) + ENDING), "what is heard when a presenter reads");
    }

    private static Path folder(Environment here) {
        return here.settings().resolve("presenters");
    }

    private static List<String> heard(Setting setting) throws ProblemException {
        List<String> heard = setting.parts().stream()
                .map(Setting::text)
                .filter(said -> !said.isEmpty())
                .map(said -> said.toLowerCase(Locale.ROOT))
                .toList();
        if (heard.isEmpty()) {
            throw setting.problem("it is not said what is heard", "write it behind the colon, or remove the line");
        }
        return heard;
    }
}
