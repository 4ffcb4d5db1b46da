package org.bookholder.app.environment;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;

/** The recogniser's models in the program's folder, by the language that they hear. */
public final class SpeechModels {
    private SpeechModels() {}

    /**
     * The model with which a script is heard.
     *
     * @param wanted the model that was asked for, or the one that comes with the program
     * @throws ProblemException if the one that comes with the program does not hear the script's language, and no other does
     */
    public static Path forScript(Environment here, Path wanted, Script script) throws ProblemException {
        String language = Locale.forLanguageTag(script.settings().language()).getLanguage();
        if (!wanted.equals(here.model()) || language.equals("en")) {
            return wanted;
        }
        Path folder = here.home().resolve("models");
        Optional<Path> found = find(folder, language);
        if (found.isEmpty()) {
            String name = Locale.forLanguageTag(language).getDisplayLanguage(Locale.ENGLISH);
            throw new ProblemException(
                    "there is no speech model for " + name + " here",
                    script.source(),
                    "put one into " + folder + " (README.md there says how), or read without a microphone: by hand or "
                            + "steadily");
        }
        return found.get();
    }

    /** A model for a language, by the name of its folder, as its makers name it: vosk-model-small-de-0.15. */
    static Optional<Path> find(Path folder, String language) throws ProblemException {
        if (!Files.isDirectory(folder)) {
            return Optional.empty();
        }
        try (Stream<Path> entries = Files.list(folder)) {
            List<Path> models = entries.filter(Files::isDirectory)
                    .filter(model -> String.valueOf(model.getFileName())
                            .matches("vosk-model-(?:small-)?" + language + "(?:-.*)?"))
                    .sorted()
                    .toList();
            return models.stream().findFirst();
        } catch (IOException e) {
            throw new ProblemException("the folder cannot be read", folder.toString(), "check its permissions", e);
        }
    }
}
