package org.bookholder.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.PrivateFiles;
import org.bookholder.problem.ProblemException;
import org.bookholder.view.settings.SettingsText;
import org.bookholder.view.settings.WindowPlace;
import org.bookholder.view.settings.WindowSettings;

/**
 * How the reading window was left: for this machine, and for one script the size of its type and the length of its rows.
 * Only what was changed in the window is kept; what was given on the command line goes for that time alone.
 */
final class KeptWindow {
    private static final Set<String> OF_SCRIPT = Set.of("type-arc-minutes", "type-pixels", "words");
    private static final String FULL_SCREEN = "full-screen";
    private static final String MONITOR = "monitor";

    private final Path machine;
    private final Path script;

    private KeptWindow(Path machine, Path script) {
        this.machine = machine;
        this.script = script;
    }

    /** What is kept for a script; its full path tells it from others of the same name. */
    static KeptWindow of(Surroundings here, Path script) {
        Path full = script.toAbsolutePath().normalize();
        String name = SessionPlace.plain(
                script.getFileName() == null ? "" : script.getFileName().toString());
        String file =
                String.format(Locale.ROOT, "%s-%08x.txt", name, full.toString().hashCode());
        return new KeptWindow(
                here.settings().resolve("window.txt"),
                here.settings().resolve("scripts").resolve(file));
    }

    /** How the window was left. */
    WindowWish wish() throws ProblemException {
        Map<String, String> kept = read(machine);
        boolean filling = "yes".equals(kept.remove(FULL_SCREEN));
        String number = kept.getOrDefault(MONITOR, "1");
        kept.remove(MONITOR);
        if (!number.matches("[1-9]\\d?")) {
            throw new ProblemException("'" + number + "' is not a monitor", machine.toString(), "give a number from 1");
        }
        WindowSettings settings = SettingsText.over(WindowSettings.defaults(), kept, machine.toString());
        settings = SettingsText.over(settings, read(script), script.toString());
        WindowPlace place = WindowPlace.windowed().on(Integer.parseInt(number));
        return new WindowWish(settings, filling ? place.filled() : place);
    }

    /** Keeps what was changed between opening and closing the window. */
    void keep(WindowWish opened, WindowWish closed) throws ProblemException {
        Map<String, String> before = values(opened);
        Map<String, String> after = values(closed);
        Map<String, String> changed = new LinkedHashMap<>();
        after.forEach((name, value) -> {
            if (!value.equals(before.get(name))) {
                changed.put(name, value);
            }
        });
        Set<String> gone = before.keySet().stream()
                .filter(name -> !after.containsKey(name))
                .collect(Collectors.toSet());
        if (!changed.isEmpty() || !gone.isEmpty()) {
            // A new script begins with the size and the rows that were chosen last.
            write(machine, changed, gone);
        }
        changed.keySet().retainAll(OF_SCRIPT);
        if (!changed.isEmpty()) {
            write(script, changed, Set.of());
        }
    }

    private static Map<String, String> values(WindowWish wish) {
        Map<String, String> values = new LinkedHashMap<>(SettingsText.of(wish.settings()));
        values.put(FULL_SCREEN, wish.place().fullScreen() ? "yes" : "no");
        values.put(MONITOR, Integer.toString(wish.place().monitor()));
        return values;
    }

    private static Map<String, String> read(Path file) throws ProblemException {
        Map<String, String> values = new LinkedHashMap<>();
        if (!Files.exists(file)) {
            return values;
        }
        try {
            for (String line : Files.readAllLines(file, StandardCharsets.UTF_8)) {
                int colon = line.lastIndexOf(':');
                if (!line.isBlank() && !line.startsWith("#")) {
                    values.put(
                            colon < 1 ? line : line.substring(0, colon),
                            colon < 1 ? "" : line.substring(colon + 1).strip());
                }
            }
            return values;
        } catch (IOException e) {
            throw new ProblemException(
                    "the window's settings cannot be read",
                    file.toString(),
                    "make it a file that you may read, or remove it",
                    e);
        }
    }

    private static void write(Path file, Map<String, String> changed, Set<String> gone) throws ProblemException {
        Map<String, String> values = read(file);
        values.keySet().removeAll(gone);
        values.putAll(changed);
        try {
            PrivateFiles.createFolder(file.getParent());
            new AtomicFiles(Access.OWNER).write(file, text(values));
        } catch (IOException e) {
            throw new ProblemException(
                    "the window's settings cannot be kept",
                    file.toString(),
                    "see that the folder can be written to",
                    e);
        }
    }

    private static String text(Map<String, String> values) {
        return values.entrySet().stream()
                .map(value -> value.getKey() + ": " + value.getValue() + "\n")
                .collect(Collectors.joining());
    }
}
