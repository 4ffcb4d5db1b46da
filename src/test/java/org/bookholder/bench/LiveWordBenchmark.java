package org.bookholder.bench;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.bookholder.follow.Follower;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Hypothesis;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.testing.Prepared;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;
import org.openjdk.jmh.annotations.AuxCounters;
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
 * each utterance both ears give their final words. Takes are equally long, so that only the script's length differs; each begins
 * elsewhere in the script.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Warmup(iterations = 5, time = 2)
@Measurement(iterations = 5, time = 2)
@Fork(
        value = 1,
        jvmArgsAppend = {"-Xmx512m", "-Xms512m"})
public class LiveWordBenchmark {
    private static final int WORDS_IN_AN_UTTERANCE = 24;
    private static final int WORDS_IN_A_LINE = 12;
    private static final int UTTERANCES_IN_A_TAKE = 40;
    private static final double WORD_SECONDS = 0.4;

    /** Words in the script. */
    @Param({"1000", "10000", "50000"})
    public int scriptWords;

    private @Nullable Follower follower;
    private List<String> words = List.of();
    private int next;
    private int utterance;
    private double now;
    private final Random random = new Random(2);
    private final ThreadMXBean threads = ManagementFactory.getThreadMXBean();

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
    }

    /** What the words cost: processor time, which other work on the machine does not lengthen as it does the clock's. */
    @State(Scope.Thread)
    @AuxCounters(AuxCounters.Type.EVENTS)
    public static class Spent {
        /** Processor time in nanoseconds. */
        public long cpuNanos;

        /** Words heard. */
        public long words;
    }

    /** One utterance. */
    @Benchmark
    @OperationsPerInvocation(WORDS_IN_AN_UTTERANCE)
    public List<FollowEvent> utterance(Spent spent) {
        long before = threads.getCurrentThreadCpuTime();
        List<FollowEvent> events = utterance();
        spent.cpuNanos += threads.getCurrentThreadCpuTime() - before;
        spent.words += WORDS_IN_AN_UTTERANCE;
        return events;
    }

    private List<FollowEvent> utterance() {
        Follower reader = Objects.requireNonNull(follower);
        if (utterance++ % UTTERANCES_IN_A_TAKE == 0) {
            beginTake(reader);
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

    private void beginTake(Follower reader) {
        int lines = words.size() / WORDS_IN_A_LINE;
        int linesInATake = UTTERANCES_IN_A_TAKE * WORDS_IN_AN_UTTERANCE / WORDS_IN_A_LINE;
        int line = random.nextInt(lines - linesInATake + 1);
        next = line * WORDS_IN_A_LINE;
        now = 0;
        reader.startTake(1, StreamTime.ZERO, new ReadingPosition(line + 1, 1));
    }

    private static StreamTime at(double seconds) {
        return StreamTime.ofSeconds(seconds);
    }
}
