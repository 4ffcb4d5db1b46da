package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.follow.graph.Beam;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.follow.settle.Settler;
import org.bookholder.script.model.Script;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;

/** A settler that fails ends nothing but its own judgement. */
final class FaultInSettlingTest {
    private static final List<String> LINES = List.of(
            "turn the wheel slowly and watch the gap beside the brake",
            "a spoke that rings low is loose and wants half a turn",
            "count the threads before you tighten anything near the valve",
            "check both sides again with the lamp behind the rim");
    private static final Script LESSON = Scripts.of(LINES.toArray(String[]::new));

    private final List<Planted> settlers = new ArrayList<>();

    @Test
    void theTakeGoesOnAndTheLinesOfTheStretchAreNotJudged() {
        ReadAloud reader = reader("rings");
        LINES.forEach(reader::say);
        assertThat(reader.position()).isEqualTo(new ReadingPosition(5, 1));
        assertThat(stretches(reader)).singleElement().satisfies(failed -> {
            assertThat(failed.stretch().take()).isEqualTo(1);
            assertThat(failed.stretch().lines()).containsExactly(2);
            assertThat(failed.stretch().start()).isLessThan(failed.stretch().end());
        });
        assertThat(reader.cut().attempts())
                .extracting(Attempt::ordinal, Attempt::line, Attempt::outcome)
                .containsExactly(tuple(1, 1, Outcome.CLEAN), tuple(2, 3, Outcome.CLEAN), tuple(3, 4, Outcome.CLEAN));
    }

    @Test
    void attemptsAfterAFaultDoNotReplaceThoseBeforeIt() {
        ReadAloud reader = reader("rings");
        LINES.forEach(reader::say);
        assertThat(reader.events())
                .filteredOn(FollowEvent.AttemptSettled.class::isInstance)
                .extracting(e -> ((FollowEvent.AttemptSettled) e).attempt().ordinal())
                .containsExactly(1, 2, 3);
    }

    @Test
    void aLineThatWasLeftOutIsNotInTheStretch() {
        ReadAloud reader = reader("threads");
        reader.say(LINES.get(0)).say(LINES.get(2)).say(LINES.get(3));
        assertThat(stretches(reader))
                .singleElement()
                .satisfies(failed -> assertThat(failed.stretch().lines()).containsExactly(3));
    }

    @Test
    void aFaultAtTheEndOfATakeKeepsEarlierResults() {
        ReadAloud reader = reader("finish");
        LINES.subList(0, 2).forEach(reader::say);
        assertThat(reader.cut().attempts()).extracting(Attempt::line).containsExactly(1, 2);
    }

    @Test
    void aHoldContinuesAfterAFault() {
        ReadAloud reader = reader("telephone");
        reader.say(LINES.get(0));
        reader.follower().hold(reader.now());
        reader.say("telephone").say(LINES.get(1));
        reader.follower().resume(reader.now());
        reader.say(LINES.get(2));
        assertThat(reader.cut().attempts()).extracting(Attempt::line).containsExactly(1, 3);
    }

    @Test
    void aFaultInAHoldOrInItsEndCostsOnlyTheJudgementBefore() {
        for (String act : List.of("hold", "resume")) {
            settlers.clear();
            ReadAloud reader = reader(act);
            reader.say(LINES.get(0));
            List<FollowEvent> told = new ArrayList<>(reader.follower().hold(reader.now()));
            reader.say("telephone");
            told.addAll(reader.follower().resume(reader.now()));
            assertThat(told).as(act).singleElement().isInstanceOf(FollowEvent.NotJudged.class);
            reader.say(LINES.get(1)).say(LINES.get(2));
            assertThat(reader.cut().attempts())
                    .as(act)
                    .extracting(Attempt::line)
                    .containsExactly(1, 2, 3);
        }
    }

    @Test
    void aFaultInAPauseCostsOnlyTheJudgementBefore() {
        ReadAloud reader = reader("quiet");
        reader.say("turn the wheel slowly and watch").quiet(4);
        assertThat(stretches(reader)).singleElement().satisfies(failed -> {
            assertThat(failed.stretch().lines()).containsExactly(1);
            assertThat(failed.log()).contains("planted at 'quiet'").containsPattern("(?m)^quiet \\d+$");
        });
        reader.say(LINES.get(1)).say(LINES.get(2));
        assertThat(reader.cut().attempts()).extracting(Attempt::line).containsExactly(2, 3);
    }

    @Test
    void theSettlerThatFailedGoesOnIfNoNewOneCanBeMade() {
        ReadAloud reader = ReadAloud.of(LESSON, settler -> {
            if (settlers.size() == 2) {
                throw new Fault("begin");
            }
            Planted planted = new Planted(settler, settlers.isEmpty() ? "" : "rings");
            settlers.add(planted);
            return planted;
        });
        LINES.forEach(reader::say);
        reader.follower().hold(reader.now());
        reader.follower().resume(reader.now());
        assertThat(reader.position()).isEqualTo(new ReadingPosition(5, 1));
        assertThat(reader.cut().attempts()).extracting(Attempt::line).containsExactly(1, 3, 4);
        assertThat(stretches(reader))
                .singleElement()
                .satisfies(failed -> assertThat(failed.log()).contains("planted at 'begin'"));
    }

    @Test
    void theLogHasEverythingNeededToReproduceTheFault() {
        ReadAloud reader = reader("rings");
        LINES.forEach(reader::say);
        String log = stretches(reader).get(0).log();
        assertThat(log).startsWith(Fault.class.getName()).contains("take 1 from 0 at word 0");
        assertThat(log.lines()
                        .filter(line -> line.startsWith("heard "))
                        .map(FaultInSettlingTest::heard)
                        .toList())
                .isEqualTo(settlers.get(1).heard)
                .anySatisfy(words -> assertThat(settlers.get(1).fails(words)).isTrue());
    }

    /** The first settler is of a take that nobody reads, the second of the take that is read. */
    private ReadAloud reader(String word) {
        return ReadAloud.of(LESSON, settler -> {
            Planted planted = new Planted(settler, settlers.size() < 2 ? word : "");
            settlers.add(planted);
            return planted;
        });
    }

    private static List<FollowEvent.NotJudged> stretches(ReadAloud reader) {
        return reader.events().stream()
                .filter(FollowEvent.NotJudged.class::isInstance)
                .map(FollowEvent.NotJudged.class::cast)
                .toList();
    }

    private static Hypothesis.Final heard(String line) {
        String[] part = line.split(" ", -1);
        List<RecognizedWord> words = new ArrayList<>();
        for (int i = 6; i < part.length; i += 4) {
            words.add(new RecognizedWord(
                    part[i], ticks(part[i + 1]), ticks(part[i + 2]), Double.parseDouble(part[i + 3])));
        }
        return new Hypothesis.Final(EarKind.valueOf(part[1]), ticks(part[3]), words, ticks(part[5]), List.of());
    }

    private static StreamTime ticks(String text) {
        return new StreamTime(Long.parseLong(text));
    }

    /** What the planted fault throws. */
    private static final class Fault extends RuntimeException {
        private static final long serialVersionUID = 1;

        Fault(String word) {
            super("planted at '" + word + "'");
        }
    }

    /** A settler that fails when the script ear hears a word, or at the end if the word is "finish". */
    private static final class Planted implements Settler {
        private final Settler settler;
        private final String word;
        private final List<Hypothesis.Final> heard = new ArrayList<>();

        Planted(Settler settler, String word) {
            this.settler = settler;
            this.word = word;
        }

        boolean fails(Hypothesis.Final words) {
            String there = word.equals("telephone") ? RecognizedWord.UNKNOWN : word;
            return words.ear() == EarKind.SCRIPT
                    && words.words().stream().anyMatch(w -> w.text().equals(there));
        }

        @Override
        public Beam beam() {
            return settler.beam();
        }

        @Override
        public List<Attempt> hear(Hypothesis.Final words) {
            heard.add(words);
            if (fails(words)) {
                throw new Fault(word);
            }
            return settler.hear(words);
        }

        @Override
        public List<Attempt> quiet(StreamTime to) {
            failIf("quiet");
            return settler.quiet(to);
        }

        @Override
        public List<Aside> asides() {
            return settler.asides();
        }

        @Override
        public void move(int to) {
            settler.move(to);
        }

        @Override
        public void hold(StreamTime at) {
            failIf("hold");
            settler.hold(at);
        }

        @Override
        public void resume(StreamTime at) {
            failIf("resume");
            settler.resume(at);
        }

        private void failIf(String act) {
            if (word.equals(act)) {
                throw new Fault(act);
            }
        }

        @Override
        public FollowEvent.TakeSettled finish(StreamTime at) {
            if (word.equals("finish")) {
                throw new Fault(word);
            }
            return settler.finish(at);
        }
    }
}
