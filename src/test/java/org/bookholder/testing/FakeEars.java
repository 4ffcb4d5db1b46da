package org.bookholder.testing;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Set;
import org.bookholder.script.pronounce.Vocabulary;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.Ear;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Ears;
import org.bookholder.speech.Grammar;
import org.bookholder.speech.Hypothesis;

/** Ears that believe what a test has written down, each thing as soon as they have been given that much audio. */
public final class FakeEars implements Ears {
    private final List<Hypothesis> script;
    private Set<String> unknown = Set.of();
    private int open;
    private boolean closed;
    private boolean onlyMeanwhile;

    /** Ears that will report {@code script}, in order of {@link Hypothesis#heardTo()}; each ear only its own. */
    public FakeEars(List<Hypothesis> script) {
        this.script = List.copyOf(script);
    }

    /** From now on each ear hears only what is said while it listens, as in a session of several takes. */
    public void hearOnlyMeanwhile() {
        onlyMeanwhile = true;
    }

    /** How many ears were made and are still open. */
    public int open() {
        return open;
    }

    /** Whether the ears are closed. */
    public boolean closed() {
        return closed;
    }

    /** From now on these words are not in the vocabulary. */
    public FakeEars knowsNot(String... words) {
        unknown = Set.of(words);
        return this;
    }

    @Override
    public Vocabulary vocabulary() {
        return word -> !unknown.contains(word);
    }

    @Override
    public Ear scriptEar(Grammar grammar, int rate) {
        return new ScriptedEar(EarKind.SCRIPT);
    }

    @Override
    public Ear openEar(int rate) {
        return new ScriptedEar(EarKind.OPEN);
    }

    @Override
    public void close() {
        closed = true;
    }

    private final class ScriptedEar implements Ear {
        private final EarKind kind;
        private final Deque<Hypothesis> left = new ArrayDeque<>();
        private boolean earClosed;

        ScriptedEar(EarKind kind) {
            this.kind = kind;
            script.stream().filter(h -> h.ear() == kind).forEach(left::add);
            open++;
        }

        @Override
        public EarKind kind() {
            return kind;
        }

        @Override
        public List<Hypothesis> hear(AudioBlock block) {
            while (onlyMeanwhile && !left.isEmpty() && left.getFirst().heardTo().isBefore(block.start())) {
                left.removeFirst();
            }
            List<Hypothesis> news = new ArrayList<>();
            while (!left.isEmpty() && !block.end().isBefore(left.getFirst().heardTo())) {
                news.add(left.removeFirst());
            }
            return news;
        }

        @Override
        public List<Hypothesis> finish() {
            List<Hypothesis> rest = onlyMeanwhile ? List.of() : List.copyOf(left);
            left.clear();
            return rest;
        }

        @Override
        public void close() {
            if (!earClosed) {
                earClosed = true;
                open--;
            }
        }
    }
}
