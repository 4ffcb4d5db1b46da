package org.bookholder.app.reading;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Warnings;
import org.bookholder.files.FileNames;
import org.bookholder.problem.ProblemException;
import org.bookholder.settings.SettingsFile;
import org.bookholder.settings.SettingsText.Values;
import org.bookholder.view.settings.WindowForm;
import org.bookholder.view.settings.WindowPlace;
import org.bookholder.view.settings.WindowSettings;
import org.bookholder.view.settings.WindowWish;

/**
 * Saves the reading window's settings: most of them per machine, type size and row length per script. Only changes made
 * in the window are saved; options on the command line apply to one run only.
 */
public final class WindowPreferences {
    private static final String WHAT = "the window's settings";

    private final SettingsFile machine;
    private final SettingsFile script;
    private final Warnings warnings;

    private WindowPreferences(Path machine, Path script, Warnings warnings) {
        this.machine = new SettingsFile(machine, WHAT);
        this.script = new SettingsFile(script, WHAT);
        this.warnings = warnings;
    }

    /** The settings for a script; its full path distinguishes it from others of the same name. */
    public static WindowPreferences of(Environment here, Path script) {
        Path full = script.toAbsolutePath().normalize();
        String name = FileNames.ofTitle(
                script.getFileName() == null ? "" : script.getFileName().toString());
        String file =
                String.format(Locale.ROOT, "%s-%08x.txt", name, full.toString().hashCode());
        return new WindowPreferences(
                ofMachine(here).path(), here.settings().resolve("scripts").resolve(file), here.warnings());
    }

    /** The file of what is kept for the machine. */
    public static SettingsFile ofMachine(Environment here) {
        return new SettingsFile(here.settings().resolve("window.txt"), WHAT);
    }

    /** How the window opens for a script that was not read before. */
    public static WindowWish usual(Environment here) throws ProblemException {
        Path none = here.settings().resolve("scripts").resolve("none.txt");
        return new WindowPreferences(ofMachine(here).path(), none, here.warnings()).wish();
    }

    /** The settings as last saved; the window fills its screen until it has been opened otherwise. */
    public WindowWish wish() throws ProblemException {
        WindowWish first = new WindowWish(WindowSettings.defaults(), WindowPlace.fullScreen(1));
        return over(over(first, machine), script);
    }

    private WindowWish over(WindowWish before, SettingsFile file) throws ProblemException {
        Values<UnaryOperator<WindowWish>> values = file.read(WindowForm.FORM);
        warnings.leftOut(values.wrong());
        WindowWish wish = before;
        for (UnaryOperator<WindowWish> change : values.values().values()) {
            wish = change.apply(wish);
        }
        return wish;
    }

    /** Saves what was changed between opening and closing the window. */
    public void keep(WindowWish opened, WindowWish closed) throws ProblemException {
        Map<String, String> before = WindowForm.values(opened);
        Map<String, String> after = WindowForm.values(closed);
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
            // A new script starts with the type size and row length chosen last.
            machine.change(WindowForm.FORM, changed, gone);
        }
        changed.keySet().retainAll(WindowForm.OF_SCRIPT);
        if (!changed.isEmpty()) {
            script.change(WindowForm.FORM, changed, Set.of());
        }
    }
}
