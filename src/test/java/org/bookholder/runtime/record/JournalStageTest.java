package org.bookholder.runtime.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.session.Request;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.FakeClock;
import org.bookholder.testing.FakeJournal;
import org.bookholder.testing.FakeOverflow;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class JournalStageTest {
    private final FakeClock clock = new FakeClock();
    private final FakeJournal disk = new FakeJournal();
    private final JournalQueue queue = new JournalQueue();
    private final List<String> answers = new ArrayList<>();
    private final List<StageFault> faults = new ArrayList<>();
    private final FakeOverflow second = new FakeOverflow();
    private boolean complete;
    private final JournalStage stage = new JournalStage(queue, disk, second, clock, () -> complete, faults::add);

    @Test
    void batchesEventsThatArriveWhileTheDiskIsBusy() {
        add(1, 50);
        stage.doWork();
        assertThat(disk.batches()).isEqualTo(1);
        assertThat(disk.events()).hasSize(50).startsWith(held(1)).endsWith(held(50));
        assertThat(queue.entered()).isEqualTo(50);
        assertThat(queue.written()).isEqualTo(50);
        assertThat(stage.doWork()).isZero();
        assertThat(disk.batches()).isEqualTo(1);
    }

    @Test
    void answersOnlyWhenEventsAreOnDisk() {
        add(1, 2);
        queue.whenWritten(answer("a"));
        add(3, 3);
        queue.whenWritten(answer("b"));
        assertThat(answers).isEmpty();
        stage.doWork();
        assertThat(answers).containsExactly("a done", "b done");
    }

    @Test
    void keepsEventsInOrderWhileTheDiskIsFullAndWritesThemLater() {
        disk.room(0);
        add(1, 3);
        stage.doWork();
        add(4, 5);
        assertThat(queue.failure()).contains("the disk is full");
        assertThat(queue.unsaved()).startsWith("5 notes, from 0:00 on, are not saved");
        disk.room(100);
        clock.passMillis(900);
        stage.doWork();
        assertThat(disk.events()).as("not yet tried again").isEmpty();
        clock.passMillis(100);
        stage.doWork();
        assertThat(disk.events()).containsExactly(held(1), held(2), held(3), held(4), held(5));
        assertThat(queue.unsaved()).isEmpty();
    }

    /** So that a kill costs no more than a second of them. */
    @Test
    void copiesWhatWaitsToTheSecondPlaceFromTheSecondRefusalOn() {
        disk.room(0);
        add(1, 3);
        stage.doWork();
        assertThat(second.events).as("the disk may be free at once").isEmpty();
        clock.passMillis(1000);
        stage.doWork();
        assertThat(second.events).containsExactly(held(1), held(2), held(3));
        assertThat(queue.failure())
                .contains("the disk is full")
                .endsWith("; notes are kept in the second place meanwhile");
        add(4, 5);
        clock.passMillis(1000);
        stage.doWork();
        assertThat(second.events).containsExactly(held(1), held(2), held(3), held(4), held(5));
        disk.room(100);
        clock.passMillis(1000);
        stage.doWork();
        assertThat(disk.events()).containsExactly(held(1), held(2), held(3), held(4), held(5));
        assertThat(second.events).as("not needed any more").isEmpty();
        assertThat(queue.failure()).isEmpty();
    }

    @Test
    void saysThatNotesAreInMemoryOnlyIfNoSecondPlaceTakesThem() {
        second.takesNotes = false;
        disk.room(0);
        add(1, 3);
        stage.doWork();
        clock.passMillis(1000);
        stage.doWork();
        assertThat(queue.failure()).contains("the disk is full").contains("they are in memory only");
        disk.room(100);
        clock.passMillis(1000);
        stage.doWork();
        assertThat(disk.events()).containsExactly(held(1), held(2), held(3));
    }

    @Test
    void triesAgainAtOnceIfAReplyWaitsAndReportsTheFailure() {
        disk.room(0);
        add(1, 1);
        stage.doWork();
        queue.whenWritten(answer("a"));
        stage.doWork();
        assertThat(answers).singleElement().asString().startsWith("a failed: Done, but not saved: ");
        disk.room(100);
        queue.whenWritten(answer("b"));
        stage.doWork();
        assertThat(answers).last().isEqualTo("b done");
        assertThat(disk.events()).containsExactly(held(1));
    }

    @Test
    void triesAgainAtTheEndAndThenEnds() {
        disk.room(0);
        add(1, 1);
        stage.doWork();
        complete = true;
        disk.room(1);
        assertThat(stage.doWork()).isEqualTo(1);
        assertThat(stage.doWork()).isNegative();
        assertThat(disk.events()).containsExactly(held(1));
    }

    @Test
    void endsEvenIfTheDiskStaysFullAndReportsWhatIsMissing() {
        disk.room(0);
        add(1, 7);
        complete = true;
        assertThat(stage.doWork()).isNegative();
        stage.onClose();
        assertThat(queue.unsaved()).startsWith("7 notes");
    }

    @Test
    void writesTheRestWhenItIsStoppedEarly() {
        add(1, 2500);
        queue.whenWritten(answer("a"));
        stage.onClose();
        assertThat(disk.events()).hasSize(2500);
        assertThat(disk.batches()).isEqualTo(3);
        assertThat(answers).containsExactly("a done");
    }

    @Test
    void losesNothingToAFaultOfTheJournal() {
        add(1, 2);
        disk.faulty();
        assertThatIllegalStateException().isThrownBy(stage::doWork);
        assertThat(queue.written()).isZero();
        assertThat(queue.entered()).isEqualTo(2);
    }

    @Test
    void writesAllButTheEventThatCanNeverBeWritten() {
        disk.unwritable(event -> event.equals(held(1700)));
        add(1, 1699);
        queue.whenWritten(answer("a"));
        add(1700, 1701);
        queue.whenWritten(answer("b"));
        add(1702, 2500);
        queue.whenWritten(answer("c"));
        complete = true;
        int done;
        do {
            done = stage.doWork();
        } while (done > 0);
        assertThat(disk.events())
                .hasSize(2499)
                .startsWith(held(1))
                .endsWith(held(2500))
                .doesNotContain(held(1700));
        assertThat(answers).hasSize(3).startsWith("a done").endsWith("c done");
        assertThat(answers.get(1)).startsWith("b failed: Done, but a note of it cannot be saved");
        assertThat(queue.unsaved()).startsWith("1 note, from 0:00 on, cannot be saved");
        assertThat(faults).singleElement().satisfies(fault -> {
            assertThat(fault.role()).isEqualTo(JournalQueue.ONE_NOTE);
            assertThat(fault.cause()).hasMessageContaining("can never be written");
        });
        assertThat(queue.failure()).as("it is not the disk that refuses").isEmpty();
    }

    private void add(int from, int to) {
        IntStream.rangeClosed(from, to).forEach(i -> queue.add(held(i)));
    }

    private static SessionEvent held(long ticks) {
        return new SessionEvent.Held(new StreamTime(ticks));
    }

    private Request.Reply answer(String who) {
        return new Request.Reply() {
            @Override
            public void done() {
                answers.add(who + " done");
            }

            @Override
            public void refused(String why) {
                answers.add(who + " refused: " + why);
            }

            @Override
            public void failed(String what) {
                answers.add(who + " failed: " + what);
            }
        };
    }
}
