package org.bookholder.speech.vosk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import org.bookholder.files.RunFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.Ear;
import org.bookholder.testing.Needs;
import org.bookholder.testing.Wav;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

@Execution(ExecutionMode.CONCURRENT)
final class VoskLifeTest {
    @TempDir
    private Path folder;

    private RunFolder views;

    @BeforeEach
    void makeRoomForViews() throws IOException {
        views = RunFolder.temporary();
    }

    @AfterEach
    void deleteViews() throws IOException {
        views.close();
    }

    @Test
    void oneModelServesTwoEarsInTwoThreads() throws InterruptedException, Exception {
        Hearing.needs();
        short[] sound = Hearing.twoSentences();
        ExecutorService threads = Executors.newFixedThreadPool(2);
        try (VoskEars ears = VoskEars.load(Hearing.MODEL)) {
            Future<List<String>> script = threads.submit(() -> heard(ears.scriptEar(Hearing.grammar(), 16_000), sound));
            Future<List<String>> open = threads.submit(() -> heard(ears.openEar(16_000), sound));
            assertThat(script.get(60, TimeUnit.SECONDS))
                    .isEqualTo(Hearing.together(Hearing.YOUNG_MAN, Hearing.SELFISH));
            assertThat(open.get(60, TimeUnit.SECONDS)).contains("selfish");
        } finally {
            threads.shutdownNow();
        }
    }

    private static List<String> heard(Ear ear, short[] sound) {
        try (ear) {
            return Hearing.texts(Hearing.finals(Hearing.hear(ear, Hearing.RATE, sound)));
        }
    }

    @Test
    void anEarWorksAfterItsModelIsClosed() throws Exception {
        Hearing.needs();
        VoskEars ears = VoskEars.load(Hearing.MODEL);
        Ear ear = ears.scriptEar(Hearing.grammar(), Hearing.RATE);
        ears.close();
        ears.close();
        assertThat(heard(ear, Wav.samples(Hearing.clip(880)))).isEqualTo(Hearing.YOUNG_MAN);
        assertThrows(IllegalStateException.class, () -> ears.openEar(Hearing.RATE));
        assertThrows(IllegalStateException.class, () -> ears.vocabulary().contains("flour"));
    }

    @Test
    void aClosedEarHearsNothingMore() throws Exception {
        Hearing.needs();
        try (VoskEars ears = VoskEars.load(Hearing.MODEL)) {
            Ear ear = ears.openEar(Hearing.RATE);
            AudioBlock block = new AudioBlock(StreamTime.ZERO, Hearing.RATE, new short[640]);
            ear.hear(block);
            ear.close();
            ear.close();
            assertThrows(IllegalStateException.class, () -> ear.hear(block));
            assertThrows(IllegalStateException.class, ear::finish);
        }
    }

    @Test
    void theModelFolderIsLeftAsItIs() throws Exception {
        Needs.file(Hearing.MODEL, "unpacked by the build");
        Path conf = Hearing.MODEL.resolve("conf").resolve("model.conf");
        String before = Files.readString(conf);
        Path view = views.path().resolve("view");
        ModelFolder.check(Hearing.MODEL).tunedView(view);
        assertThat(Files.readString(view.resolve("conf").resolve("model.conf")))
                .contains("--endpoint.rule5.min-utterance-length=300")
                .contains("--beam=");
        assertThat(Files.readString(conf)).isEqualTo(before);
        assertThat(Hearing.MODEL.resolve("am").resolve("final.mdl")).exists();
    }

    @Test
    void aTunedOptionReplacesTheModelsOwn() throws Exception {
        model("--beam=10.0\n--frames-per-chunk=51\n");
        Path view = views.path().resolve("view");
        ModelFolder.check(folder).tunedView(view);
        assertThat(Files.readAllLines(view.resolve("conf").resolve("model.conf")))
                .containsExactlyInAnyOrder(
                        "--beam=10.0", "--endpoint.rule5.min-utterance-length=300", "--frames-per-chunk=20");
    }

    @Test
    void aModelFolderMayBeALink() throws Exception {
        model("--beam=10.0\n");
        Path link = folder.resolveSibling(folder.getFileName() + "-link");
        Files.createSymbolicLink(link, folder);
        try {
            Path view = views.path().resolve("view");
            ModelFolder.check(link).tunedView(view);
            assertThat(view.resolve("graph").resolve("Gr.fst")).exists();
            assertThat(view.resolve("conf").resolve("model.conf"))
                    .content()
                    .contains("--beam=10.0")
                    .contains("--frames-per-chunk=20");
        } finally {
            Files.delete(link);
        }
        assertThat(folder.resolve("graph").resolve("Gr.fst")).exists();
    }

    @Test
    void saysWhatIsWrongWithAModelFolder() throws Exception {
        assertProblem(folder.resolve("nothing"), "no model folder");
        assertProblem(folder, "no speech model|not a speech model");
        model("--beam=10.0\n");
        Files.delete(folder.resolve("graph").resolve("Gr.fst"));
        assertProblem(folder, "cannot be told what to expect");
    }

    @Test
    void aDamagedModelIsAProblemAndLeavesNothingBehind() throws Exception {
        model("--beam=10.0\n");
        assertProblem(folder, "is damaged: am.final.mdl is empty");
    }

    private void model(String conf) throws IOException {
        for (String part : List.of("am/final.mdl", "conf/mfcc.conf", "graph/Gr.fst", "graph/HCLr.fst")) {
            Path file = folder.resolve(part);
            Files.createDirectories(file.getParent());
            Files.writeString(file, "");
        }
        Files.writeString(folder.resolve("conf").resolve("model.conf"), conf);
    }

    private static void assertProblem(Path folder, String what) {
        ProblemException problem = assertThrows(ProblemException.class, () -> VoskEars.load(folder));
        assertThat(problem.what()).containsPattern(what);
        assertThat(problem.where()).isEqualTo(folder.toString());
    }
}
