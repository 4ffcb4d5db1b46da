package org.bookholder.speech.vosk;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitOption;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.bookholder.problem.ProblemException;

/**
 * A language model on disk, and a copy with tuned settings that leaves the original alone.
 *
 * <p>The tuned view is a folder with rewritten settings and links to all other files. The recogniser reads it
 * only once, while loading the model.
 */
final class ModelFolder {
    private static final String REMEDY = "unpack a Vosk model there, see models/README.md";
    private static final Path MODEL_CONF = Path.of("conf", "model.conf");
    private static final Path FEATURE_CONF = Path.of("conf", "mfcc.conf");
    private static final List<Path> SETTINGS = List.of(MODEL_CONF, FEATURE_CONF);
    private static final List<Path> PARTS =
            List.of(Path.of("am", "final.mdl"), MODEL_CONF, FEATURE_CONF, Path.of("graph"));
    private static final Path WORD_GRAPH = Path.of("graph", "Gr.fst");

    /**
     * Rule 5 would cut an utterance in the middle of a word; smaller chunks deliver words sooner at slightly more cost.
     */
    private static final List<String> TUNING =
            List.of("--endpoint.rule5.min-utterance-length=300", "--frames-per-chunk=20");

    /** Without this, a source below the model's sample rate yields no words at all, only a line on stderr. */
    private static final List<String> FEATURE_TUNING = List.of("--allow-upsample=true");

    private final Path original;

    private ModelFolder(Path original) {
        this.original = original;
    }

    /** Checks that a folder holds a model that accepts a grammar. */
    static ModelFolder check(Path folder) throws ProblemException {
        if (!Files.isDirectory(folder)) {
            throw new ProblemException("there is no model folder", folder.toString(), REMEDY);
        }
        for (Path part : PARTS) {
            if (!Files.isReadable(folder.resolve(part))) {
                throw new ProblemException("this is not a speech model: it has no " + part, folder.toString(), REMEDY);
            }
        }
        if (!Files.isReadable(folder.resolve(WORD_GRAPH))) {
            throw new ProblemException(
                    "this model cannot be told what to expect: it has no " + WORD_GRAPH,
                    folder.toString(),
                    "use a model with a dynamic graph, see models/README.md");
        }
        return new ModelFolder(folder.toAbsolutePath());
    }

    /** Creates the tuned view; {@code view} is a new folder. */
    void tunedView(Path view) throws IOException {
        try (Stream<Path> files = Files.walk(original, FileVisitOption.FOLLOW_LINKS)) {
            for (Path file : files.toList()) {
                Path part = original.relativize(file);
                if (Files.isDirectory(file)) {
                    Files.createDirectories(view.resolve(part));
                } else if (!SETTINGS.contains(part)) {
                    link(file, view.resolve(part));
                }
            }
            tune(view, MODEL_CONF, TUNING);
            tune(view, FEATURE_CONF, FEATURE_TUNING);
        }
    }

    private void tune(Path view, Path part, List<String> tuning) throws IOException {
        List<String> lines = new ArrayList<>();
        for (String line : Files.readAllLines(original.resolve(part), StandardCharsets.UTF_8)) {
            if (tuning.stream().noneMatch(t -> option(t).equals(option(line.strip())))) {
                lines.add(line);
            }
        }
        lines.addAll(tuning);
        Files.write(view.resolve(part), lines, StandardCharsets.UTF_8);
    }

    private static String option(String line) {
        return line.replaceFirst("\\s*=.*", "");
    }

    /** Links in the cheapest way that the file system allows: not every system lets every user create links. */
    private static void link(Path file, Path place) throws IOException {
        try {
            Files.createSymbolicLink(place, file);
        } catch (IOException | UnsupportedOperationException e) {
            try {
                Files.createLink(place, file);
            } catch (IOException | UnsupportedOperationException e2) {
                Files.copy(file, place);
            }
        }
    }
}
