package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowEvent.TakeSettled;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** Scripts whose lines are alike, so that words alone do not tell where the reader is. */
final class RepeatedLinesTest {
    private static final List<String> SONG = List.of(
            "morning comes and the road is wet",
            "round goes the wheel and round again",
            "noon is hot and the chain is dry",
            "round goes the wheel and round again",
            "evening falls and the lamp is lit",
            "round goes the wheel and round again");

    @Test
    void aRefrainIsMatchedToTheRightPlace() {
        TakeSettled take = readThrough(SONG);
        assertThat(take.attempts()).extracting(Attempt::line).containsExactly(1, 2, 3, 4, 5, 6);
        assertThat(take.attempts()).extracting(Attempt::outcome).containsOnly(Outcome.CLEAN);
    }

    @Test
    void aVerseLeftOutBetweenRefrainsIsFoundMissing() {
        List<String> read = new ArrayList<>(SONG);
        read.remove(2);
        TakeSettled take = read(SONG, read);
        assertThat(take.attempts()).extracting(Attempt::line).doesNotContain(3).contains(1, 2, 4, 5, 6);
    }

    @Test
    void theSameSentenceTwentyTimesIsCountedTwentyTimes() {
        TakeSettled take = readThrough(Collections.nCopies(20, "breathe in and lift the wheel"));
        assertThat(take.attempts())
                .extracting(Attempt::line)
                .containsExactlyElementsOf(IntStream.rangeClosed(1, 20).boxed().toList());
    }

    @Test
    void aNumberedListIsFollowedByItsNumbers() {
        TakeSettled take = readThrough(numbered());
        assertThat(take.attempts()).extracting(Attempt::line).containsExactly(1, 2, 3, 4, 5, 6, 7, 8);
        assertThat(take.attempts()).extracting(Attempt::outcome).containsOnly(Outcome.CLEAN);
    }

    @Test
    void anItemLeftOutOfANumberedListIsFoundMissing() {
        List<String> read = new ArrayList<>(numbered());
        read.remove(3);
        TakeSettled take = read(numbered(), read);
        assertThat(take.attempts()).extracting(Attempt::line).containsExactly(1, 2, 3, 5, 6, 7, 8);
    }

    @Test
    void linesOfOneWordAreNotSkipped() {
        TakeSettled take = readThrough(List.of(
                "is the rim round",
                "yes",
                "is the spoke tight",
                "no",
                "then give it a quarter turn",
                "stop",
                "is the spoke tight now",
                "yes",
                "good"));
        assertThat(take.attempts()).extracting(Attempt::line).containsExactly(1, 2, 3, 4, 5, 6, 7, 8, 9);
        assertThat(take.attempts()).extracting(Attempt::outcome).containsOnly(Outcome.CLEAN);
    }

    private static List<String> numbered() {
        return List.of("one", "two", "three", "four", "five", "six", "seven", "eight").stream()
                .map(n -> "spoke number " + n + " gets a quarter turn to the left")
                .toList();
    }

    /** Reads line after line as written; the position must come to each line's end and never leave the reader. */
    private static TakeSettled readThrough(List<String> script) {
        ReadAloud reader = ReadAloud.of(Scripts.of(script.toArray(String[]::new)));
        for (int i = 0; i < script.size(); i++) {
            reader.say(script.get(i));
            assertThat(reader.position()).as("after line %d", i + 1).isEqualTo(new ReadingPosition(i + 2, 1));
        }
        return reader.cut();
    }

    private static TakeSettled read(List<String> script, List<String> read) {
        ReadAloud reader = ReadAloud.of(Scripts.of(script.toArray(String[]::new)));
        read.forEach(reader::say);
        assertThat(reader.position().line()).isEqualTo(script.size() + 1);
        return reader.cut();
    }
}
