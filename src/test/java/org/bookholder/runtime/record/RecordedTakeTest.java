package org.bookholder.runtime.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.bookholder.problem.ProblemException;
import org.bookholder.speech.AudioBlock;
import org.bookholder.testing.Audio;
import org.bookholder.testing.FakeClock;
import org.bookholder.testing.FakeOverflow;
import org.bookholder.testing.FakeTape;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

final class RecordedTakeTest {
    private static final int RATE = 16_000;
    private static final int BLOCK = RATE / 25;
    private static final StreamTime START = StreamTime.ofSeconds(10);

    private final FakeClock clock = new FakeClock();
    private final FakeTape tape = new FakeTape();
    private final FakeOverflow second = new FakeOverflow();
    private long appended;
    private int millisForABlock = 40;

    @Test
    void soundRefusedByAFullDiskIsWrittenWhenThereIsRoom() {
        RecordedTake take = take(UnsavedSound.CAPACITY);
        append(take, 5);
        tape.room(0);
        append(take, 300);
        assertThat(take.news()).singleElement().isInstanceOf(SoundNews.Refused.class);
        assertThat(take.waiting().seconds()).isEqualTo(300);
        tape.room(Integer.MAX_VALUE);
        append(take, 10);
        assertThat(take.news()).containsExactly(new SoundNews.SavedAgain());
        take.finish();
        assertThat(take.saved()).isTrue();
        assertThat(samples(tape.blocks())).isEqualTo(appended);
    }

    @Test
    void onlyWhatMemoryHasNoRoomForIsLostAndIsTold() {
        RecordedTake take = take(60L * RATE * Short.BYTES);
        append(take, 5);
        tape.room(0);
        append(take, 300);
        List<SoundNews> told = take.news();
        assertThat(told).singleElement().isInstanceOf(SoundNews.Refused.class);
        assertThat(told.toString()).contains("memory is full, and what was said from 0:15 on is being lost");
        tape.room(Integer.MAX_VALUE);
        append(take, 2);
        assertThat(take.news())
                .containsExactly(new SoundNews.NotSaved(at(5), at(305 - 60 + 1.0 / 25)), new SoundNews.SavedAgain());
        take.finish();
        AudioBlock afterTheGap = tape.blocks().get(5 * 25);
        assertThat(afterTheGap.start()).isEqualTo(at(305 - 60 + 1.0 / 25));
    }

    /** 32 MB, as the decision note says: five and a half minutes at 48 kHz, 17 at 16 kHz. */
    @Test
    void theBoundIsThatOfTheNote() {
        assertThat(UnsavedSound.CAPACITY / 2.0 / 48_000 / 60).isBetween(5.5, 6.0);
        assertThat(UnsavedSound.CAPACITY / 2.0 / 16_000 / 60).isBetween(17.0, 18.0);
    }

    @Test
    void theDiskIsTriedOnceASecond() {
        RecordedTake take = take(UnsavedSound.CAPACITY);
        tape.room(0);
        append(take, 0.04);
        tape.room(Integer.MAX_VALUE);
        append(take, 0.92);
        assertThat(tape.blocks()).isEmpty();
        append(take, 0.12);
        assertThat(samples(tape.blocks())).isEqualTo(appended);
    }

    @Test
    void theOpenEarReadsOnFromMemoryAndMissesNothing() throws ProblemException {
        RecordedTake take = take(UnsavedSound.CAPACITY);
        List<AudioBlock> read = new ArrayList<>();
        append(take, 1);
        tape.room(0);
        append(take, 0.4);
        readAll(take, read);
        append(take, 1.2);
        tape.room(Integer.MAX_VALUE);
        append(take, 2);
        take.finish();
        readAll(take, read);
        assertIsAllThatWasSaid(read);
    }

    @Test
    void aTakeThatCouldNotBeBegunIsBegunWhenThereIsRoom() {
        List<Integer> tries = new ArrayList<>();
        SessionSound sound = new SessionSound(
                (number, rate, start) -> {
                    tries.add(number);
                    if (tries.size() < 3) {
                        throw new ProblemException("the disk is full", "take-001.wav", "make room");
                    }
                    return tape;
                },
                clock);
        RecordedTake take = sound.begin(1, RATE, START);
        append(take, 5);
        take.finish();
        assertThat(take.saved()).isTrue();
        assertThat(samples(tape.blocks())).isEqualTo(appended);
        assertThat(tries).hasSize(3);
    }

    @Test
    void aFinishedTakeIsKeptUntilItIsSaved() {
        SessionSound sound = new SessionSound((number, rate, start) -> tape, clock);
        RecordedTake take = sound.begin(1, RATE, START);
        append(take, 5);
        tape.room(0);
        append(take, 5);
        take.finish();
        take.closeReader();
        assertThat(sound.unsaved()).containsExactly(take);
        assertThat(sound.unsavedText())
                .startsWith("5 s of sound, of take 1 on, are not saved (")
                .contains("disk is full");
        tape.room(Integer.MAX_VALUE);
        sound.saveRest();
        assertThat(sound.unsavedText()).isEmpty();
        assertThat(samples(tape.blocks())).isEqualTo(appended);
        assertThat(tape.readerClosed()).isTrue();
    }

    @Test
    void soundRefusedForGoodIsKeptInTheSecondPlace() {
        SessionSound sound = sound(UnsavedSound.CAPACITY);
        RecordedTake take = sound.begin(1, RATE, START);
        append(take, 5);
        tape.room(0);
        append(take, 5);
        take.finish();
        assertThat(sound.keepElsewhere()).isEmpty();
        assertThat(sound.unsavedText()).isEmpty();
        assertThat(sound.elsewhere().seconds()).isEqualTo(5);
        assertThat(second.stretches).containsOnlyKeys(5L * RATE);
        assertThat(samples(second.stretch(5L * RATE).blocks())).isEqualTo(5L * RATE);
        assertThat(samples(tape.blocks())).isEqualTo(5L * RATE);
    }

    /** So that a kill costs no more than a second of it. */
    @Test
    void soundRefusedForASecondIsCopiedToTheSecondPlace() {
        RecordedTake take = sound(UnsavedSound.CAPACITY).begin(1, RATE, START);
        append(take, 5);
        tape.room(0);
        append(take, 1);
        assertThat(second.stretches).as("the disk may be free at once").isEmpty();
        for (int seconds = 2; seconds < 20; seconds++) {
            append(take, 1);
            assertThat(samples(second.stretch(5L * RATE).blocks())).isGreaterThan((seconds - 1L) * RATE);
        }
        assertThat(take.waiting().seconds()).as("for the disk").isEqualTo(19);
        tape.room(Integer.MAX_VALUE);
        append(take, 2);
        take.finish();
        assertIsAllThatWasSaid(tape.blocks());
        assertThat(take.saved()).isTrue();
    }

    /** A recording is read as fast as it can be: minutes of it in a second. */
    @Test
    void soundFasterThanRealTimeIsCopiedBeforeMemoryIsFull() {
        RecordedTake take = sound(60L * RATE * Short.BYTES).begin(1, RATE, START);
        tape.room(0);
        millisForABlock = 0;
        append(take, 200);
        take.finish();
        assertThat(take.news()).noneMatch(SoundNews.NotSaved.class::isInstance);
        assertThat(second.stretches).containsOnlyKeys(0L);
        assertIsAllThatWasSaid(second.stretch(0).blocks());
    }

    /** Takes that wait for the disk share the memory; what the second place has of them is not lost. */
    @Test
    void soundDroppedFromMemoryIsNotLostIfTheSecondPlaceHasIt() {
        SessionSound sound = sound(60L * RATE * Short.BYTES);
        tape.room(0);
        RecordedTake first = sound.begin(1, RATE, START);
        append(first, 29);
        first.finish();
        appended = 0;
        RecordedTake next = sound.begin(2, RATE, START);
        second.room = 0;
        append(next, 40);
        assertThat(first.waiting().seconds()).isLessThan(29);
        assertThat(first.news()).noneMatch(SoundNews.NotSaved.class::isInstance);
        assertThat(first.reason()).doesNotContain("lost");
    }

    /** Memory for a minute: from half a minute on the oldest sound is in the second place alone, and the ear reads it there. */
    @Test
    void theSecondPlaceTakesTheOldestSoundBeforeMemoryIsFull() throws ProblemException {
        SessionSound sound = sound(60L * RATE * Short.BYTES);
        RecordedTake take = sound.begin(1, RATE, START);
        append(take, 5);
        tape.room(0);
        append(take, 200);
        assertThat(take.waiting().seconds()).isLessThanOrEqualTo(31.1);
        assertThat(take.news())
                .singleElement()
                .asString()
                .contains("disk is full", "the sound is kept in the second place meanwhile");
        tape.room(Integer.MAX_VALUE);
        append(take, 5);
        tape.room(0);
        append(take, 100);
        tape.room(Integer.MAX_VALUE);
        append(take, 5);
        take.finish();
        assertThat(take.saved()).isTrue();
        assertThat(take.news()).noneMatch(SoundNews.NotSaved.class::isInstance);
        assertThat(second.stretches).hasSize(2);
        Set<Long> there = new TreeSet<>();
        second.stretches.values().forEach(stretch -> there.addAll(starts(stretch.blocks())));
        assertThat(sound.elsewhere().samples(RATE)).isEqualTo((long) there.size() * BLOCK);
        there.addAll(starts(tape.blocks()));
        assertThat(there).hasSize((int) (appended / BLOCK));
    }

    private static List<Long> starts(List<AudioBlock> blocks) {
        return blocks.stream().map(block -> block.start().ticks()).toList();
    }

    @Test
    void theOpenEarReadsOnThroughTheSecondPlaceAndMissesNothing() throws ProblemException {
        RecordedTake take = sound(4L * RATE * Short.BYTES).begin(1, RATE, START);
        append(take, 1);
        tape.room(0);
        append(take, 20);
        List<AudioBlock> read = new ArrayList<>();
        readAll(take, read);
        append(take, 5);
        readAll(take, read);
        assertIsAllThatWasSaid(read);
    }

    /** On many systems a file that was deleted can still be read by whoever has it open. */
    @Test
    void aTakeWhoseFileIsGoneIsKeptWholeInTheSecondPlace() {
        SessionSound sound = sound(UnsavedSound.CAPACITY);
        RecordedTake take = sound.begin(1, RATE, START);
        append(take, 5);
        tape.syncFails(true);
        take.sync();
        append(take, 5);
        take.finish();
        assertThat(sound.keepElsewhere()).isEmpty();
        assertThat(second.stretches).containsOnlyKeys(0L);
        assertThat(samples(second.stretch(0).blocks())).isEqualTo(appended);
    }

    /** What was moved there before stays, and what is copied ends where that begins. */
    @Test
    void aTakeWhoseFileIsGoneLosesNothingThatWasInTheSecondPlaceBefore() {
        SessionSound sound = sound(60L * RATE * Short.BYTES);
        RecordedTake take = sound.begin(1, RATE, START);
        append(take, 5);
        tape.room(0);
        append(take, 100);
        tape.room(Integer.MAX_VALUE);
        append(take, 5);
        tape.syncFails(true);
        take.sync();
        append(take, 5);
        take.finish();
        assertThat(sound.keepElsewhere()).isEmpty();
        assertThat(second.stretches).containsOnlyKeys(0L, 5L * RATE);
        assertIsAllThatWasSaid(second.stretches.values().stream()
                .flatMap(stretch -> stretch.blocks().stream())
                .toList());
    }

    @Test
    void aFaultOfTheSecondPlaceKeepsNobodyFromSecuringTheFile() {
        RecordedTake take = sound(60L * RATE * Short.BYTES).begin(1, RATE, START);
        append(take, 5);
        tape.room(0);
        append(take, 100);
        tape.room(Integer.MAX_VALUE);
        append(take, 5);
        second.stretch(5L * RATE).syncFails(true);
        take.sync();
        assertThat(tape.synced()).isEqualTo(1);
        assertThat(take.reason()).contains("the disk is gone");
    }

    @Test
    void saysThatNoPlaceHasRoomAndLeavesNothingOpenThere() {
        second.room = 0;
        RecordedTake take = sound(4L * RATE * Short.BYTES).begin(1, RATE, START);
        tape.room(0);
        append(take, 5);
        assertThat(take.news().toString()).contains("disk is full", "it is in memory only");
        assertThat(second.stretches).isNotEmpty();
        assertThat(second.stretches.values()).allMatch(FakeTape::closed);
        assertThat(second.stretches.values()).allMatch(FakeTape::readerClosed);
    }

    @Test
    void soundThatTheSecondPlaceRefusesIsKeptAndReported() {
        second.room = 50;
        SessionSound sound = sound(UnsavedSound.CAPACITY);
        RecordedTake take = sound.begin(1, RATE, START);
        tape.room(0);
        append(take, 5);
        take.finish();
        assertThat(sound.keepElsewhere()).contains("disk is full");
        assertThat(sound.elsewhere().seconds()).isEqualTo(2);
        assertThat(sound.unsavedText()).startsWith("3 s of sound, of take 1 on, are not saved");
    }

    /** As many takes as one likes wait in the same memory. */
    @Test
    void theMemoryIsOneForAllTakes() {
        SessionSound sound = new SessionSound((number, rate, start) -> tape, clock, 60L * RATE * Short.BYTES);
        tape.room(0);
        RecordedTake first = sound.begin(1, RATE, START);
        append(first, 50);
        first.finish();
        appended = 0;
        RecordedTake second = sound.begin(2, RATE, START);
        append(second, 40);
        assertThat(first.waiting().plus(second.waiting()).seconds()).isEqualTo(60);
        assertThat(second.waiting().seconds()).isEqualTo(40);
        assertThat(first.news()).hasSize(1);
        first.finish();
        assertThat(first.news()).contains(new SoundNews.NotSaved(at(0), at(30)));
    }

    private SessionSound sound(long capacity) {
        return new SessionSound(
                new Tapes() {
                    @Override
                    public Tape begin(int number, int rate, StreamTime start) {
                        return tape;
                    }

                    @Override
                    public Overflow overflow() {
                        return second;
                    }
                },
                clock,
                capacity);
    }

    private RecordedTake take(long capacity) {
        return new SessionSound((number, rate, start) -> tape, clock, capacity).begin(1, RATE, START);
    }

    /** Time passes with the sound. */
    private void append(RecordedTake take, double seconds) {
        for (int i = 0; i < Math.round(seconds * 25); i++) {
            take.append(Audio.block(START, RATE, appended, BLOCK));
            appended += BLOCK;
            clock.passMillis(millisForABlock);
        }
    }

    private static void readAll(RecordedTake take, List<AudioBlock> to) throws ProblemException {
        Optional<AudioBlock> block = take.read(BLOCK);
        while (block.isPresent()) {
            to.add(block.get());
            block = take.read(BLOCK);
        }
    }

    /** Every block follows the one before it, from the first sample to the last. */
    private void assertIsAllThatWasSaid(List<AudioBlock> blocks) {
        long next = 0;
        for (AudioBlock block : blocks) {
            assertThat(block.samples()[0]).isEqualTo(Audio.sample(next));
            next += block.samples().length;
        }
        assertThat(next).isEqualTo(appended);
    }

    private static StreamTime at(double seconds) {
        return START.plus(StreamTime.ofSeconds(seconds));
    }

    private static long samples(List<AudioBlock> blocks) {
        return blocks.stream().mapToLong(block -> block.samples().length).sum();
    }
}
