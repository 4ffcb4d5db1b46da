package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Outcome;
import org.bookholder.follow.model.WordTime;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/**
 * Which words of a text were said: the alignments worked in the manual of NIST's sclite (SCTK doc/outputs.htm and
 * doc/sclite.htm), read as a line within a script. sclite knows the two word sequences; following finds them out as it
 * hears them, with costs of its own.
 */
final class ScliteAlignmentTest {
    private static final String BEFORE = "Nobody answered the question from the back row";
    private static final String AFTER = "Everybody wrote the number down at once";

    /** 4t0c0203: 38 words, 34 correct, 3 substituted, 1 deleted, 1 inserted. */
    @Test
    void agreesOnALongSentenceWithFiveErrors() {
        String reference =
                "so far this year the industry slide has been apparent in allegations of insider trading by fund "
                        + "managers unsavory fund sales practices at banks and the use of high risk derivative securities in "
                        + "normally conservative money market funds";
        String hypothesis =
                "so far this year the industry slide has been apparent in allegations of insider trading by "
                        + "fund managers and save refund sales practices at banks and use of high risk derivative securities in "
                        + "early conservative money market funds";
        assertThat(reference.split(" ")).hasSize(38);

        Attempt attempt = read(reference, hypothesis);

        // unsavory fund > and save refund: two substituted, one inserted; the: deleted; normally: substituted
        assertThat(wrong(attempt, reference)).containsExactly("unsavory", "fund", "the", "normally");
        assertThat(attempt.outcome()).isEqualTo(Outcome.MISREAD);
    }

    /** 4t0c0202: 21 words, 14 correct, 7 substituted, 1 inserted. */
    @Test
    void agreesOnASentenceReadOneThirdWrong() {
        String reference =
                "for a two trillion dollar business built on public confidence this trend is disheartening at "
                        + "best and downright dangerous at worst";
        String hypothesis =
                "freed to trying to lure business built on public confidence this trend is this tightening and "
                        + "best and downright dangerous at worst";
        assertThat(reference.split(" ")).hasSize(21);

        Attempt attempt = read(reference, hypothesis);

        // for sclite disheartening > this tightening counts as well; for the two ears it is near enough to be the word
        assertThat(wrong(attempt, reference)).containsExactly("for", "a", "two", "trillion", "dollar", "at");
        assertThat(attempt.outcome()).isNotEqualTo(Outcome.CLEAN);
    }

    private static Attempt read(String reference, String hypothesis) {
        List<Attempt> attempts = ReadAloud.of(Scripts.of(BEFORE, reference, AFTER))
                .say("nobody answered the question from the back row")
                .say(hypothesis)
                .say("everybody wrote the number down at once")
                .cut()
                .attempts();
        assertThat(attempts).extracting(Attempt::line).containsExactly(1, 2, 3);
        return attempts.get(1);
    }

    /** Words that were not heard, and words that were heard as others. */
    private static List<String> wrong(Attempt attempt, String reference) {
        Set<Integer> read = attempt.words().stream().map(WordTime::word).collect(Collectors.toSet());
        attempt.deviations().forEach(deviation -> read.remove(deviation.word()));
        String[] words = reference.split(" ", -1);
        return IntStream.rangeClosed(1, words.length)
                .filter(word -> !read.contains(word))
                .mapToObj(word -> words[word - 1])
                .toList();
    }
}
