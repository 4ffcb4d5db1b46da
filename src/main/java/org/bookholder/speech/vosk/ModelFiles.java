package org.bookholder.speech.vosk;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.problem.ProblemException;

/**
 * Checks a model's files before the recogniser opens them. It takes what it finds at its word: a file that was cut short
 * can end the whole process with an abort.
 *
 * <p>Of the model that comes with the program each file's size is known. Of others, only how their files begin and end
 * is checked.
 */
final class ModelFiles {
    private static final String SIZES = "model-sizes.txt";
    private static final Path UUID = Path.of("uuid");

    /** Beginning of OpenFst's files, as bytes. */
    private static final String FST = "\u00d6\u00fd\u00b2~";

    /** Beginning of Kaldi's binary files. */
    private static final String KALDI = "\0B";

    private static final List<Form> FORMS = List.of(
            new Form("am/final.mdl", KALDI, ""),
            new Form("graph/Gr.fst", FST, ""),
            new Form("graph/HCLr.fst", FST, ""),
            new Form("ivector/final.dubm", KALDI, "</DiagGMM> "),
            new Form("ivector/final.ie", KALDI, "</IvectorExtractor> "),
            new Form("ivector/final.mat", KALDI, ""),
            new Form("ivector/splice.conf", "", ""));

    private final Path folder;

    private ModelFiles(Path folder) {
        this.folder = folder;
    }

    /** How a file begins and ends, each byte as a character. */
    private record Form(String file, String begin, String end) {}

    /** What is known of a model: its uuid, and the sizes of its files. */
    private record Known(String uuid, List<Size> sizes) {
        private record Size(String file, long bytes) {}

        static Known ofTheProgram() {
            try (InputStream in = ModelFiles.class.getResourceAsStream(SIZES)) {
                if (in == null) {
                    throw new IllegalStateException("the program has no " + SIZES);
                }
                String uuid = "";
                List<Size> sizes = new ArrayList<>();
                for (String line : new String(in.readAllBytes(), StandardCharsets.UTF_8)
                        .lines()
                        .toList()) {
                    String[] parts = line.split(" ", 2);
                    if (parts[0].equals("uuid")) {
                        uuid = parts[1];
                    } else if (!parts[0].equals("#")) {
                        sizes.add(new Size(parts[1], Long.parseLong(parts[0])));
                    }
                }
                return new Known(uuid, sizes);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    /**
     * Refuses a model with damaged files.
     *
     * @throws IOException if a file cannot be read
     */
    static void check(Path folder) throws ProblemException, IOException {
        new ModelFiles(folder).check(Known.ofTheProgram());
    }

    private void check(Known known) throws ProblemException, IOException {
        Path uuid = folder.resolve(UUID);
        if (Files.isRegularFile(uuid)
                && new String(Files.readAllBytes(uuid), StandardCharsets.ISO_8859_1)
                        .strip()
                        .equals(known.uuid())) {
            for (Known.Size size : known.sizes()) {
                Path file = folder.resolve(size.file());
                long bytes = Files.exists(file) ? Files.size(file) : 0;
                if (bytes != size.bytes()) {
                    throw damaged(size.file() + " has " + bytes + " bytes instead of " + size.bytes());
                }
            }
        }
        for (Form form : FORMS) {
            Path file = folder.resolve(form.file());
            if (Files.exists(file)) {
                check(form, file);
            }
        }
    }

    private void check(Form form, Path file) throws ProblemException, IOException {
        long bytes = Files.size(file);
        if (bytes == 0) {
            throw damaged(form.file() + " is empty");
        }
        if (!read(file, 0, form.begin().length()).equals(form.begin())) {
            throw damaged(form.file() + " is of another kind");
        }
        if (!read(file, Math.max(0, bytes - form.end().length()), form.end().length())
                .equals(form.end())) {
            throw damaged(form.file() + " breaks off");
        }
    }

    private static String read(Path file, long from, int most) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            in.skipNBytes(from);
            return new String(in.readNBytes(most), StandardCharsets.ISO_8859_1);
        }
    }

    private ProblemException damaged(String how) {
        return new ProblemException(
                "the speech model is damaged: " + how,
                folder.toString(),
                "delete the folder and unpack the program, or the model, again");
    }
}
