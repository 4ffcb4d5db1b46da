package org.bookholder.app.sound;

import java.util.List;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.problem.ProblemException;
import org.bookholder.settings.Form;
import org.bookholder.settings.Form.Field;
import org.bookholder.settings.Setting;
import org.bookholder.settings.SettingsFile;

/** The microphone that was chosen for this machine, kept by its name in {@code home.txt}. Confined to one thread. */
public final class MachineMicrophone {
    private static final String NAME = "microphone";

    private static final Form<String> FORM = new Form<>(
            "setting", List.of(new Field<>(NAME, "its name; empty for the system's default", Setting::text)));

    private final SettingsFile file;

    public MachineMicrophone(Environment here) {
        file = new SettingsFile(here.settings().resolve("home.txt"), "the settings");
    }

    /**
     * Its name; empty for the system's default.
     *
     * @throws ProblemException if the file can't be read
     */
    public Optional<String> chosen() throws ProblemException {
        return Optional.ofNullable(file.read(FORM).values().get(NAME)).filter(name -> !name.isEmpty());
    }

    /**
     * Sets one of the settings beside which it is kept.
     *
     * @throws ProblemException if there is no such setting, or the file can't be written
     */
    public void set(String setting, String value) throws ProblemException {
        file.set(FORM, setting, value);
    }
}
