package org.bookholder.follow;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.Tuple;
import org.bookholder.follow.Deed.Hand;
import org.bookholder.follow.Deed.Times;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.script.model.PreparedScript.PreparedWord;
import org.bookholder.script.model.Script;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.testing.Scripts;

/** Random scripts and random things to tell a follower of them. */
final class RandomReadings {
    private static final List<String> WORDS =
            List.of("the", "wheel", "gap", "slowly", "and", "brake", "beside", "turn", "lamp", "threads", "a", "don't");

    /** Stretches of it are in most scripts, since lines begin with it or with a part of it. */
    private static final List<String> SENTENCE =
            List.of("turn", "the", "wheel", "slowly", "and", "watch", "the", "gap", "beside", "the", "brake");

    private RandomReadings() {}

    /** A script in which words may be unknown to the recogniser, stand for others, or have several forms. */
    static Arbitrary<PreparedScript> scripts() {
        Arbitrary<List<String>> random =
                Arbitraries.of(WORDS).list().ofMinSize(1).ofMaxSize(9);
        Arbitrary<String> line = Arbitraries.oneOf(stretches(), random).map(words -> String.join(" ", words));
        Arbitrary<List<Integer>> kinds =
                Arbitraries.integers().between(0, 19).list().ofSize(12);
        return Combinators.combine(line.list().ofMinSize(1).ofMaxSize(6), kinds)
                .as((lines, kind) -> prepared(Scripts.of(lines.toArray(String[]::new)), kind));
    }

    private static PreparedScript prepared(Script script, List<Integer> kinds) {
        List<List<PreparedWord>> lines = script.lines().stream()
                .map(l -> l.words().stream()
                        .map(w -> {
                            List<String> said = w.spoken().get(0);
                            return switch (kinds.get(Math.floorMod(said.hashCode(), kinds.size()))) {
                                case 0 -> new PreparedWord(w, List.of(), true);
                                case 1 -> new PreparedWord(w, List.of(), false);
                                case 2 -> new PreparedWord(w, List.of(List.of("gap", "lamp")), true);
                                case 3 -> new PreparedWord(w, List.of(said, List.of("the", "threads", "a")), false);
                                default -> new PreparedWord(w, w.spoken(), false);
                            };
                        })
                        .collect(Collectors.toList()))
                .collect(Collectors.toList());
        return new PreparedScript(script, lines, List.of());
    }

    /** Anything at all: ears out of step, times in any order, hands, cuts. */
    static Arbitrary<List<Deed>> wild() {
        Arbitrary<Integer> steps = Arbitraries.integers().between(0, 4);
        Arbitrary<Deed> said = Combinators.combine(
                        Arbitraries.of(EarKind.class), speech(), Arbitraries.of(Times.class), steps)
                .as(Deed.Utterance::new);
        Arbitrary<Deed> believed = Combinators.combine(
                        Arbitraries.of(EarKind.class), speech().filter(words -> !words.isEmpty()))
                .as(Deed.Believed::new);
        Arbitrary<Deed> hand = Combinators.combine(
                        Arbitraries.of(Hand.class),
                        Arbitraries.integers().between(1, 8),
                        Arbitraries.integers().between(1, 12))
                .as(Deed.Done::new);
        return Arbitraries.frequencyOf(
                        Tuple.of(6, said),
                        Tuple.of(6, spoken()),
                        Tuple.of(2, believed),
                        Tuple.of(3, sound()),
                        Tuple.of(2, hand))
                .list()
                .ofMaxSize(16);
    }

    /** What two ears report of one voice. */
    static Arbitrary<List<Deed>> orderly() {
        return spoken().list().ofMaxSize(10);
    }

    private static Arbitrary<Deed> spoken() {
        return Combinators.combine(speech(), Arbitraries.integers().between(1, 4), Arbitraries.of(10, 20, 60, 120))
                .as(Deed.Spoken::new);
    }

    private static Arbitrary<Deed> sound() {
        return Combinators.combine(
                        Arbitraries.integers().between(0, 400),
                        Arbitraries.integers().between(0, 120))
                .as(Deed.Sound::new);
    }

    /** Words of the script in order, words that are in no script, or a mixture. */
    private static Arbitrary<List<String>> speech() {
        List<String> heard = new ArrayList<>(WORDS);
        heard.addAll(Arrays.asList(RecognizedWord.UNKNOWN, "telephone", "watch", RecognizedWord.UNKNOWN, ""));
        Arbitrary<String> unknown = Arbitraries.of(RecognizedWord.UNKNOWN, "telephone");
        return Arbitraries.frequencyOf(
                Tuple.of(5, stretches()),
                Tuple.of(2, Arbitraries.of(heard).list().ofMaxSize(8)),
                Tuple.of(1, unknown.list().ofMaxSize(7)),
                Tuple.of(2, Combinators.combine(unknown, stretches()).as(RandomReadings::before)));
    }

    private static List<String> before(String word, List<String> words) {
        List<String> all = new ArrayList<>(List.of(word));
        all.addAll(words);
        return all;
    }

    private static Arbitrary<List<String>> stretches() {
        Arbitrary<Integer> from = Arbitraries.of(0, 0, 0, 1, 4, 6);
        Arbitrary<Integer> count = Arbitraries.of(1, 2, 3, 5, 11);
        return Combinators.combine(from, count).as((f, c) -> SENTENCE.subList(f, Math.min(SENTENCE.size(), f + c)));
    }
}
