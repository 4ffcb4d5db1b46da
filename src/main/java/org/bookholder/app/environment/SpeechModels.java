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
        Optional<Path> found = known(here, wanted, script);
        if (found.isEmpty()) {
            throw new ProblemException(
                    missing(script), script.source(), remedy(here) + "; with a window it is read steadily until then");
        }
        return found.get();
    }

    /** The same; empty if no model hears the script's language. */
    public static Optional<Path> known(Environment here, Path wanted, Script script) throws ProblemException {
        String language = language(script);
        return !wanted.equals(here.model()) || language.equals("en")
                ? Optional.of(wanted)
                : find(folder(here), language);
    }

    /** What to say of a script whose language no model hears: which one is missing, and where to put it. */
    public static String advice(Environment here, Script script) {
        return missing(script) + "; " + remedy(here);
    }

    private static String missing(Script script) {
        String name = Locale.forLanguageTag(language(script)).getDisplayLanguage(Locale.ENGLISH);
        return "there is no speech model for " + name + " here";
    }

    private static String remedy(Environment here) {
        return "put one into " + folder(here) + " (README.md there says how)";
    }

    private static String language(Script script) {
        return Locale.forLanguageTag(script.settings().language()).getLanguage();
    }

    private static Path folder(Environment here) {
        return here.home().resolve("models");
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
