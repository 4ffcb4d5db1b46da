package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.follow.model.FollowEvent.TakeSettled;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.script.model.Script;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/** Readings that go very wrong. None may lose the take, stop following, or move the position to a wrong place. */
final class HardReadingsTest {
    private static final List<String> LINES = List.of(
            "turn the wheel slowly and watch the gap beside the brake",
            "a spoke that rings low is loose and wants half a turn",
            "count the threads before you tighten anything near the valve",
            "check both sides again with the lamp behind the rim",
            "leave every nipple loose until the second side is laced",
            "wipe the hub and put the wheel back into the frame");
    private static final Script LESSON = Scripts.of(LINES.toArray(String[]::new));

    /** Nothing of it is in the lesson but the words that are in every text. */
    private static final List<String> ELSEWHERE = List.of(
            "my sister called again about that dinner on friday",
            "she says you need two chairs and the good plates",
            "somebody must fetch their cousin from a station",
            "i forgot whether it was half past seven or eight",
            "they were watching the game and every window was open");

    @Test
    void readingAnotherTextMovesNothingAndIsReportedAsLost() {
        ReadAloud reader = ReadAloud.of(LESSON);
        for (int i = 0; i < 20; i++) {
            reader.say(ELSEWHERE.get(i % ELSEWHERE.size()));
            assertThat(reader.position().line()).isEqualTo(1);
        }
        assertThat(states(reader)).endsWith(FollowState.LOST);
        TakeSettled take = reader.cut();
        assertThat(take.attempts()).isEmpty();
        assertThat(take.asides()).isNotEmpty();
    }

    @Test
    void aReadingOfSomethingElseDoesNotSpoilTheLessonThatFollows() {
        ReadAloud reader = ReadAloud.of(LESSON);
        ELSEWHERE.forEach(reader::say);
        LINES.forEach(reader::say);
        assertThat(reader.position().line()).isEqualTo(LINES.size() + 1);
        assertThat(reader.cut().attempts())
                .extracting(Attempt::line, Attempt::outcome)
                .containsExactly(
                        tuple(1, Outcome.CLEAN),
                        tuple(2, Outcome.CLEAN),
                        tuple(3, Outcome.CLEAN),
                        tuple(4, Outcome.CLEAN),
                        tuple(5, Outcome.CLEAN),
                        tuple(6, Outcome.CLEAN));
    }

    @Test
    void afterFiveMinutesOffTheScriptOneLineIsEnoughToContinue() {
        ReadAloud reader = ReadAloud.of(LESSON).say(LINES.get(0)).say(LINES.get(1));
        double left = reader.now().seconds();
        for (int i = 0; reader.now().seconds() < left + 300; i++) {
            reader.say(ELSEWHERE.get(i % ELSEWHERE.size()));
            assertThat(reader.position()).isEqualTo(new ReadingPosition(3, 1));
        }
        assertThat(states(reader)).contains(FollowState.LOST);
        reader.say(LINES.get(2));
        assertThat(reader.position()).isEqualTo(new ReadingPosition(4, 1));
        assertThat(states(reader)).endsWith(FollowState.FOLLOWING);
        TakeSettled take = reader.cut();
        assertThat(take.attempts()).extracting(Attempt::line).containsExactly(1, 2, 3);
        assertThat(take.attempts()).extracting(Attempt::outcome).containsOnly(Outcome.CLEAN);
        double spokenOff = take.asides().stream()
                .mapToDouble(a -> a.end().since(a.start()).seconds())
                .sum();
        assertThat(spokenOff).as("seconds of asides").isGreaterThan(200);
    }

    @Test
    void aReaderWhoComesBackFarAwayIsFoundThere() {
        ReadAloud reader = ReadAloud.of(LESSON).say(LINES.get(0));
        for (int i = 0; i < 8; i++) {
            reader.say(ELSEWHERE.get(i % ELSEWHERE.size()));
        }
        reader.say(LINES.get(5));
        assertThat(reader.position().line()).isEqualTo(7);
    }

    @Test
    void aScriptReadBackwardsIsFollowedBackwards() {
        ReadAloud reader = ReadAloud.of(LESSON);
        for (int line = LINES.size(); line >= 1; line--) {
            String[] words = LINES.get(line - 1).split(" ");
            String but = String.join(" ", List.of(words).subList(0, words.length - 1));
            reader.say(but);
            assertThat(reader.position()).isEqualTo(new ReadingPosition(line, words.length));
            reader.say(words[words.length - 1]);
        }
        assertThat(reader.cut().attempts())
                .extracting(Attempt::line, Attempt::outcome)
                .containsExactly(
                        tuple(6, Outcome.CLEAN),
                        tuple(5, Outcome.CLEAN),
                        tuple(4, Outcome.CLEAN),
                        tuple(3, Outcome.CLEAN),
                        tuple(2, Outcome.CLEAN),
                        tuple(1, Outcome.CLEAN));
    }

    @Test
    void aLineBegunFifteenTimesHasFifteenAttemptsAndIsGoodInTheEnd() {
        ReadAloud reader = ReadAloud.of(LESSON).say(LINES.get(0));
        for (int i = 0; i < 14; i++) {
            reader.say("a spoke that rings low");
            assertThat(reader.position()).isEqualTo(new ReadingPosition(2, 6));
        }
        reader.say(LINES.get(1)).say(LINES.get(2));
        assertThat(reader.position()).isEqualTo(new ReadingPosition(4, 1));
        List<Attempt> second =
                reader.cut().attempts().stream().filter(a -> a.line() == 2).toList();
        assertThat(second).hasSize(15);
        assertThat(second.subList(0, 14)).extracting(Attempt::complete).containsOnly(false);
        assertThat(second.get(14).outcome()).isEqualTo(Outcome.CLEAN);
    }

    @Test
    void theNextLineIsFoundAfterABrokenOffLineEvenWithoutItsFirstWord() {
        ReadAloud reader = ReadAloud.of(Scripts.of(
                        "Turn the wheel slowly and watch the gap beside the brake",
                        "He is never the one who tightens anything near a valve",
                        "Check both sides again with a lamp behind your rim"))
                .say("turn the wheel slowly | is never the");
        assertThat(reader.position().line()).isEqualTo(2);
    }

    @Test
    void copesWithOneUnknownWordInTen() {
        List<String> lines = Stream.of(
                        "before wendlebury you turn the small wheel with one hand only",
                        "then count the gribbles on the left side of the hub",
                        "every second spoke goes through the tamsin from below and out",
                        "a quarter turn is all that the pellworth nipple can bear",
                        "look along the rim again and write down where it yawls",
                        "in the next lesson we shall fit a tire by drumholding")
                .toList();
        List<String> unknown = List.of("wendlebury", "gribbles", "tamsin", "pellworth", "yawls", "drumholding");
        ReadAloud reader = ReadAloud.of(without(Scripts.of(lines.toArray(String[]::new)), unknown));
        for (int i = 0; i < lines.size(); i++) {
            reader.say(lines.get(i));
            assertThat(reader.position().line()).isBetween(i + 1, i + 2);
        }
        List<Attempt> attempts = reader.cut().attempts();
        assertThat(attempts).extracting(Attempt::line).containsExactly(1, 2, 3, 4, 5, 6);
        assertThat(attempts).extracting(Attempt::outcome).containsOnly(Outcome.CLEAN);
    }

    /** A word that is added before a word that the recogniser does not know costs nothing: it may be that word. */
    @Test
    void aTakeThatEndsBeforeAnyWordOfTheScriptWasHeardHasNoReading() {
        TakeSettled take =
                ReadAloud.of(without(LESSON, List.of("turn"))).say("so").cut();
        assertThat(take.attempts()).isEmpty();
    }

    /** The script as a recogniser hears it that knows these words in no form and finds nothing that sounds like them. */
    private static PreparedScript without(Script script, List<String> unknown) {
        List<List<PreparedWord>> lines = new ArrayList<>();
        for (var line : script.lines()) {
            lines.add(line.words().stream()
                    .map(w -> unknown.contains(w.plain())
                            ? new PreparedWord(w, List.of(), true)
                            : new PreparedWord(w, w.spoken(), false))
                    .toList());
        }
        return new PreparedScript(script, lines, List.of());
    }

    private static List<FollowState> states(ReadAloud reader) {
        return reader.events().stream()
                .filter(FollowEvent.Changed.class::isInstance)
                .map(e -> ((FollowEvent.Changed) e).state())
                .toList();
    }
}
