package org.bookholder.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.bookholder.follow.FollowEvent;
import org.bookholder.follow.Follower;
import org.bookholder.follow.ReadingPosition;
import org.bookholder.script.Script;
import org.bookholder.script.ScriptLine;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.testing.Prepared;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/**
 * What a recognised word costs the follower: each word shows up in a partial result of the script ear, and at the end of
 * each utterance both ears give their final words. The script is read from its start; at its end a new take begins there.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(1)
public class LiveWordBenchmark {
    private static final int WORDS_IN_AN_UTTERANCE = 24;
    private static final int WORDS_IN_A_LINE = 12;
    private static final double WORD_SECONDS = 0.4;

    /** Words in the script. */
    @Param({"1000", "10000", "50000"})
    public int scriptWords;

    private @Nullable Follower follower;
    private List<String> words = List.of();
    private int next;
    private int take;
    private double now;

    /** Writes the script: words as frequent as those of a language, so that common ones are all over it. */
    @Setup
    public void write() {
        ZipfText text = new ZipfText(new Random(1));
        List<String> lines = new ArrayList<>();
        for (int i = 0; i < scriptWords / WORDS_IN_A_LINE; i++) {
            lines.add(text.words(WORDS_IN_A_LINE));
        }
        Script script = Scripts.of(lines.toArray(String[]::new));
        words = script.lines().stream()
                .map(ScriptLine::words)
                .flatMap(List::stream)
                .map(w -> w.spoken().get(0).get(0))
                .toList();
        follower = new Follower(Prepared.of(script));
        next = words.size();
    }

    /** One utterance. */
    @Benchmark
    @OperationsPerInvocation(WORDS_IN_AN_UTTERANCE)
    public List<FollowEvent> utterance() {
        Follower reader = Objects.requireNonNull(follower);
        if (next + WORDS_IN_AN_UTTERANCE > words.size()) {
            next = 0;
            now = 0;
            reader.startTake(++take, StreamTime.ZERO, ReadingPosition.START);
        }
        List<FollowEvent> events = new ArrayList<>();
        List<RecognizedWord> heard = new ArrayList<>();
        for (int i = 0; i < WORDS_IN_AN_UTTERANCE; i++) {
            heard.add(new RecognizedWord(words.get(next++), at(now), at(now + WORD_SECONDS), 1));
            now += WORD_SECONDS;
            List<String> partial = heard.stream().map(RecognizedWord::text).toList();
            events.addAll(reader.hear(new Hypothesis.Partial(EarKind.SCRIPT, at(now), partial)));
        }
        now += 0.5;
        events.addAll(reader.hear(new Hypothesis.Final(EarKind.SCRIPT, at(now), heard)));
        events.addAll(reader.hear(new Hypothesis.Final(EarKind.OPEN, at(now), heard)));
        return events;
    }

    private static StreamTime at(double seconds) {
        return StreamTime.ofSeconds(seconds);
    }
}
