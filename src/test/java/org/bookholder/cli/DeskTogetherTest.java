package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.cli.LiveDesk.until;

import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Phaser;
import java.util.function.Consumer;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Decision;
import org.bookholder.session.Note;
import org.bookholder.session.Remarks;
import org.bookholder.testing.Browser;
import org.junit.jupiter.api.AutoClose;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;
import org.openqa.selenium.Keys;

/** Two producers, each with a browser, act at the same moment: the last action wins, and both see it. */
@Timeout(value = 120, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class DeskTogetherTest {
    private static final int ROUNDS = 5;

    /** How many of a page's actions were answered (W3C Resource Timing). */
    private static final String ANSWERED =
            "performance.getEntriesByType('resource').filter(r => r.name.endsWith('/act')).length";

    @TempDir
    private Path folder;

    @AutoClose
    private LiveDesk desk;

    private List<Browser> producers;

    @BeforeEach
    void open() throws ProblemException {
        Browser.needed();
        desk = LiveDesk.open(folder, 12);
        producers = List.of(desk.page(), desk.page());
    }

    @Test
    void simultaneousActionsOfTwoProducersDoNotCancelEachOther() {
        for (int round = 0; round < ROUNDS; round++) {
            int line = 2 + round;
            bothDo(producer -> producer.click("[data-line='" + (line + ROUNDS * producers.indexOf(producer)) + "']"));
            bothAct(producer -> producer.press("j"));
            assertThat(desk.state().following().position().line()).isIn(line, line + ROUNDS);
            bothShow("deskState.model.at.line", (long)
                    desk.state().following().position().line());
        }
        for (boolean held : List.of(true, false)) {
            bothAct(producer -> producer.press("h"));
            assertThat(desk.state().takes().held()).isEqualTo(held);
            bothShow("deskState.model.at.held", held);
        }
        bothAct(producer -> producer.type("#say", producers.indexOf(producer) + " speaks", Keys.ENTER));
        Remarks.Message message = desk.state().remarks().message().orElseThrow();
        assertThat(message.number()).isEqualTo(2);
        bothShow("deskState.model.people.message?.text", message.text());
        bothAct(producer -> producer.press("p"));
        List<Long> notes = desk.state().remarks().notes().stream()
                .map(note -> (long) note.line())
                .toList();
        assertThat(desk.state().remarks().notes()).filteredOn(Note::pickup).hasSize(2);
        bothShow("deskState.model.notes.map(n => n.line)", notes);
    }

    @Test
    void theLastOfTwoDecisionsHoldsAndEachProducerUndoesTheirOwn() {
        producers.get(0).click("[data-line='3']");
        producers.get(0).press("p");
        bothDo(producer -> producer.press("2"));
        bothDo(producer -> producer.until("document.querySelector('#item-3[aria-selected=true]')"));
        bothAct(producer -> producer.press(producers.indexOf(producer) == 0 ? "e" : "r"));
        assertThat(desk.state().remarks().acts().standing()).hasSize(3);
        bothShow("deskState.model.lines[2].decision?.choice", decided().name());
        producers.get(0).press("u");
        until(() -> desk.state().remarks().acts().standing().size() == 2);
        assertThat(decided()).as("what the other decided").isEqualTo(Decision.Choice.RECORD_AGAIN);
        bothShow("deskState.model.lines[2].decision?.choice", "RECORD_AGAIN");
        assertThat(producers.get(1).text("#undo")).startsWith("Undo record again, line 3");
        producers.get(0).press("u");
        until(() -> desk.state().remarks().notes().isEmpty());
        until(() -> Boolean.TRUE.equals(producers.get(0).value("document.querySelector('#undo').disabled")));
        producers.get(1).press("u");
        until(() -> desk.state().remarks().acts().standing().isEmpty());
        assertThat(desk.state().lines().notes(3).pickup()).isFalse();
    }

    /**
     * Somebody else's change has just come when a producer presses the key that they had in mind before: the page's own
     * code, with its clock moved by hand.
     */
    @Test
    void aKeyRefersToWhatWasShownWhenThePersonDecidedToPressIt() {
        String code = "import('./seen.js').then(({ seen, REACTION }) => {"
                + "let held = false; let time = 0; const s = seen(() => held, () => time); const meant = [];"
                + "const at = (t) => { time = t; s.look(); meant.push(s.value()); };"
                + "at(1000); held = true; at(1010); at(1009 + REACTION); at(1011 + REACTION);"
                // The person's own action is no surprise, whichever comes first, the change or the answer.
                + "s.expect(false); held = false; at(5000); held = true; at(5010); s.expect(true); at(5020);"
                + "return meant; })";
        assertThat(producers.get(0).awaited(code)).isEqualTo(List.of(false, false, false, true, false, false, true));
    }

    private Decision.Choice decided() {
        return desk.state().lines().notes(3).decision().orElseThrow().choice();
    }

    private void bothShow(String shown, Object known) {
        for (Browser producer : producers) {
            until(() -> known.equals(producer.value(shown)));
        }
    }

    /** Both make a request while both pages show the same; returns when both were answered. */
    private void bothAct(Consumer<Browser> work) {
        List<Object> answered =
                producers.stream().map(producer -> producer.value(ANSWERED)).toList();
        desk.whileNothingIsTold(() -> {
            bothDo(work);
            producers.forEach(producer ->
                    until(() -> !producer.value(ANSWERED).equals(answered.get(producers.indexOf(producer)))));
        });
    }

    /** Both do something at the same moment. */
    private void bothDo(Consumer<Browser> work) {
        Phaser together = new Phaser(producers.size());
        CompletableFuture.allOf(producers.stream()
                        .map(producer -> CompletableFuture.runAsync(() -> {
                            together.arriveAndAwaitAdvance();
                            work.accept(producer);
                        }))
                        .toArray(CompletableFuture[]::new))
                .join();
    }
}
