package org.bookholder.app.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Warnings;
import org.bookholder.journal.ReadRightNotes;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.AcceptedReading;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is heard as something else when a presenter reads: the file, and what sessions put into it. */
final class HeardAsTest {
    private static final AcceptedReading SPOKES = AcceptedReading.heardAs("spokes", "folks");
    private static final AcceptedReading HUB = AcceptedReading.heardAs("hub", "hop");

    @TempDir
    private Path folder;

    private final List<String> told = new ArrayList<>();
    private Environment here;
    private HeardAs ann;
    private Path file;

    @BeforeEach
    void presenter() {
        Environment usual = StoredExamples.here(folder);
        here = new Environment(
                usual.clock(),
                usual.nanoTime(),
                usual.zone(),
                folder,
                folder,
                folder,
                usual.locks(),
                new Warnings(told::add),
                usual.sideBySide(),
                usual.equipment());
        ann = new HeardAs(here, "Ann");
        file = here.settings().resolve("presenters/ann.heard.txt");
    }

    @Test
    void isKeptForThePresenterInLinesThatAPersonCanRead() throws ProblemException {
        ann.change(List.of(HUB), List.of());
        ann.change(List.of(SPOKES), List.of());
        ann.change(List.of(AcceptedReading.heardAs("Hub", "a Pub")), List.of());
        assertThat(file).content().contains("word hub: hop, a pub ", "word spokes: folks ", "# what is heard when");
        assertThat(ann.known()).containsExactly(HUB, AcceptedReading.heardAs("hub", "a pub"), SPOKES);
        assertThat(HeardAs.presenters(here)).containsExactly("ann");
        assertThat(new HeardAs(here, "Ben").known()).isEmpty();
        assertThat(new HeardAs(here, "ann.heard").known()).isEmpty();
    }

    @Test
    void wordsWithSignsComeBackAsTheyWere() throws ProblemException {
        List<AcceptedReading> odd = new ArrayList<>();
        for (String word : List.of("10:05", "don't", "#1", "$2.50", "a\"b", "-5", "yes", "x: y", "it's # odd")) {
            odd.add(AcceptedReading.heardAs(word, "don't know"));
        }
        ann.change(odd, List.of());
        assertThat(ann.known()).containsExactlyElementsOf(odd);
        ann.change(List.of(), odd.subList(1, odd.size()));
        assertThat(ann.known()).containsExactly(odd.get(0));
    }

    @Test
    void whatAPersonWroteStaysAndAWrongLineIsToldAndLeftOut() throws ProblemException, IOException {
        Files.createDirectories(file.getParent());
        Files.writeString(file, "# by hand\nword Hub: hop # always\ncolour: red\nword rim:\nsounds spokes: 4\n");
        assertThat(ann.known()).containsExactly(HUB);
        assertThat(told).hasSize(3).first().asString().contains("there is no word 'colour'", "ann.heard.txt:3");
        ann.change(List.of(SPOKES), List.of());
        assertThat(file)
                .content()
                .startsWith(
                        "# by hand\nword Hub: hop # always\ncolour: red\nword rim:\nsounds spokes: 4\nword spokes: folks");
        ann.forget("hub", "hop");
        assertThat(file)
                .content()
                .startsWith("# by hand\ncolour: red\nword rim:\n")
                .doesNotContain("hop");
        assertThat(ann.known()).containsExactly(SPOKES);
    }

    @Test
    void whatIsNotKnownCannotBeForgotten() {
        assertThatThrownBy(() -> ann.forget("hub", "hop"))
                .isInstanceOf(ProblemException.class)
                .hasMessageContaining("\"hub\" is not known to be heard as \"hop\"");
        assertThat(file).doesNotExist();
    }

    @Test
    void aDecisionIsLearntOnceAndForgottenWhenItIsTakenBack() throws ProblemException {
        HeardAsKeeper.begin(folder, "Ann");
        new HeardAsKeeper(here, folder).keep(Set.of(SPOKES, HUB));
        assertThat(ann.known()).containsExactlyInAnyOrder(SPOKES, HUB);
        new HeardAsKeeper(here, folder).keep(Set.of(HUB));
        assertThat(ann.known()).containsExactly(HUB);
    }

    /** Somebody who looks at an old session again has not decided anew. */
    @Test
    void whatWasForgottenIsNotLearntAgainFromTheSameDecision() throws ProblemException {
        HeardAsKeeper.begin(folder, "Ann");
        new HeardAsKeeper(here, folder).keep(Set.of(SPOKES));
        ann.forget("spokes", "folks");
        new HeardAsKeeper(here, folder).keep(Set.of(SPOKES));
        assertThat(ann.known()).isEmpty();
        new HeardAsKeeper(here, folder).keep(Set.of(SPOKES, HUB));
        assertThat(ann.known()).containsExactly(HUB);
    }

    /** The presenter's file comes first: a kill before the session's note repeats what is done already. */
    @Test
    void aKillBetweenTheTwoFilesLosesNothing() throws ProblemException {
        HeardAsKeeper.begin(folder, "Ann");
        ann.change(List.of(SPOKES), List.of());
        new HeardAsKeeper(here, folder).keep(Set.of(SPOKES));
        assertThat(ann.known()).containsExactly(SPOKES);
        assertThat(ReadRightNotes.of(folder).orElseThrow().readRight()).containsExactly(SPOKES);
    }

    @Test
    void nothingIsLearntFromASessionOfWhichNobodyKnowsWhoseItIs() throws ProblemException {
        new HeardAsKeeper(here, folder).keep(Set.of(SPOKES));
        assertThat(HeardAs.presenters(here)).isEmpty();
        assertThat(folder.resolve("read-right.json")).doesNotExist();
    }

    @Test
    void aFileThatCannotBeReadIsToldInOneLineAndStays() throws IOException {
        Files.createDirectories(file.getParent());
        Files.createDirectory(file);
        assertThat(ann.known()).isEmpty();
        assertThat(told).hasSize(1);
        assertThatThrownBy(() -> ann.change(List.of(SPOKES), List.of())).isInstanceOf(ProblemException.class);
        assertThat(file).isDirectory();
    }
}
