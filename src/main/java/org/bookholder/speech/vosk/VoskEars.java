package org.bookholder.speech.vosk;

import java.io.IOException;
import java.nio.file.Path;
import org.bookholder.files.RunFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.pronounce.Vocabulary;
import org.bookholder.speech.Ear;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Ears;
import org.bookholder.speech.Grammar;
import org.jspecify.annotations.Nullable;
import org.vosk.Model;
import org.vosk.Recognizer;

/**
 * Ears that use a Vosk model.
 *
 * <p>Thread-safe. The model's memory is freed when the model and its last ear are both closed, in either order. Using
 * it after {@link #close()} is an {@link IllegalStateException}.
 */
public final class VoskEars implements Ears {
    private static final int MIN_RATE = 8_000;
    private static final long RENEW_SECONDS = 300;

    private final Object lock = new Object();
    private final Model model;
    private final long renewSeconds;
    private int openEars;
    private boolean closed;

    private VoskEars(Model model, long renewSeconds) {
        this.model = model;
        this.renewSeconds = renewSeconds;
    }

    /**
     * Loads a model; takes about a second.
     *
     * @param modelFolder the folder with {@code am}, {@code conf} and {@code graph} in it; it is not changed
     * @throws ProblemException if the folder is missing, does not hold a model, or holds one that does not accept a
     *     grammar, or if the recogniser does not run on this kind of machine
     */
    public static VoskEars load(Path modelFolder) throws ProblemException {
        return load(modelFolder, RENEW_SECONDS);
    }

    /** The same, but replaces each recogniser after {@code renewSeconds} of listening. */
    static VoskEars load(Path modelFolder, long renewSeconds) throws ProblemException {
        ModelFolder folder = ModelFolder.check(modelFolder);
        try {
            VoskLibrary.load();
        } catch (LinkageError e) {
            throw new ProblemException(
                    "speech recognition does not run on this kind of machine",
                    System.getProperty("os.name") + " on " + System.getProperty("os.arch"),
                    "use Linux or Windows on x86-64 or macOS, or read without a microphone",
                    e);
        }
        try {
            ModelFiles.check(modelFolder);
            try (RunFolder run = RunFolder.temporary()) {
                Path view = run.path().resolve("model");
                folder.tunedView(view);
                return new VoskEars(new Model(view.toString()), renewSeconds);
            }
        } catch (IOException e) {
            throw new ProblemException(
                    "the speech model cannot be loaded",
                    modelFolder.toString(),
                    "unpack it again, and check that the disk has room",
                    e);
        }
    }

    @Override
    public Vocabulary vocabulary() {
        return word -> {
            synchronized (lock) {
                checkOpen();
                return VoskLibrary.knows(model, word);
            }
        };
    }

    @Override
    public Ear scriptEar(Grammar grammar, int rate) {
        Vocabulary vocabulary = vocabulary();
        grammar.phrases().stream().flatMap(p -> p.stream()).distinct().forEach(word -> {
            if (!vocabulary.contains(word)) {
                throw new IllegalArgumentException("grammar word ('" + word + "') must be in the model's vocabulary");
            }
        });
        return ear(EarKind.SCRIPT, VoskJson.grammar(grammar), rate);
    }

    @Override
    public Ear openEar(int rate) {
        return ear(EarKind.OPEN, null, rate);
    }

    private Ear ear(EarKind kind, @Nullable String grammar, int rate) {
        if (rate < MIN_RATE) {
            throw new IllegalArgumentException("rate (" + rate + ") must be " + MIN_RATE + " or more");
        }
        synchronized (lock) {
            checkOpen();
            openEars++;
        }
        long renewAfter = renewSeconds * rate;
        return new VoskEar(
                kind,
                rate,
                start -> new ContinuousRecognizer(() -> recognizer(grammar, rate), rate, start, renewAfter),
                this::release);
    }

    private Recognizer recognizer(@Nullable String grammar, int rate) {
        try {
            Recognizer recognizer =
                    grammar == null ? new Recognizer(model, rate) : new Recognizer(model, rate, grammar);
            recognizer.setWords(true);
            // Asking for partial words would delay every partial result by a second.
            recognizer.setPartialWords(false);
            return recognizer;
        } catch (IOException e) {
            throw new IllegalStateException("the model made no recogniser", e);
        }
    }

    private void release() {
        synchronized (lock) {
            openEars--;
            if (closed && openEars == 0) {
                model.close();
            }
        }
    }

    private void checkOpen() {
        if (closed) {
            throw new IllegalStateException("ears are closed");
        }
    }

    @Override
    public void close() {
        synchronized (lock) {
            if (!closed) {
                closed = true;
                if (openEars == 0) {
                    model.close();
                }
            }
        }
    }
}
