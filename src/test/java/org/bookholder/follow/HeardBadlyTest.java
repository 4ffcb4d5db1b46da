package org.bookholder.follow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Locale;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.testing.ReadAloud;
import org.bookholder.testing.Scripts;
import org.junit.jupiter.api.Test;

/**
 * A reader of whom the open ear understands little: it is said, lines are followed and lost ones found, and words are only called
 * misread where that is very sure.
 */
final class HeardBadlyTest {
    private static final List<String> LINES = List.of(
            "The wheel must turn freely before you touch a single spoke",
            "Hold the rim between your thumb and finger and listen closely",
            "A loose spoke sounds dull when you pluck it with your nail",
            "Turn the nipple a quarter and wait until the metal settles",
            "Never tighten two neighbours without looking at the gap between brake and rim",
            "Most wheels go out of true because somebody hurried the last round",
            "Put chalk on your fingertip and let the rim come to it",
            "The mark shows where the rim stands out and by how much",
            "Work from the valve around until you come back to it",
            "Write down what you changed so that you can undo it later",
            "A drop of oil under each nipple keeps the threads from binding",
            "Leave the wheel overnight and look at it again in the morning");

    private final ReadAloud reader = ReadAloud.of(Scripts.of(LINES.toArray(String[]::new)));

    @Test
    void isToldOnceAndTheLinesAreFollowedAllTheSame() {
        for (String line : LINES.subList(0, 10)) {
            mumble(line);
        }
        mumble(LINES.get(11));
        List<FollowEvent.Understood> told = told();
        List<Attempt> attempts = reader.cut().attempts();

        assertThat(told).singleElement().satisfies(event -> {
            assertThat(event.badly()).isTrue();
            assertThat(event.share()).isCloseTo(0.5, within(0.1));
        });
        assertThat(attempts).extracting(Attempt::line).containsExactly(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12);
        assertThat(attempts).allMatch(Attempt::complete);
    }

    @Test
    void aDoubtfulWordIsNotCalledMisread() {
        assertThat(deviationsOfTheLastLine(false)).isNotEmpty();
        assertThat(deviationsOfTheLastLine(true)).isEmpty();
    }

    @Test
    void aReaderWhoIsUnderstoodIsNotTalkedAbout() {
        LINES.forEach(line -> reader.say(spoken(line)));
        assertThat(told()).isEmpty();
    }

    @Test
    void anEarThatHearsNothingAtAllSaysNothingOfTheReader() {
        for (String line : LINES) {
            String words = spoken(line);
            reader.say(words, words.replaceAll("[a-z]+", "-"));
        }
        assertThat(told()).isEmpty();
    }

    /** The same slip of the tongue after eleven lines that were understood, or badly understood. */
    private static List<Deviation> deviationsOfTheLastLine(boolean badly) {
        HeardBadlyTest test = new HeardBadlyTest();
        for (String line : LINES.subList(0, 11)) {
            if (badly) {
                test.mumble(line);
            } else {
                test.reader.say(spoken(line));
            }
        }
        test.reader.say(
                "leave the wheel overnight and [unk] at it again in the [unk]",
                "leave the wheel overnight and stare at it again in the summer");
        List<Attempt> attempts = test.reader.cut().attempts();
        return attempts.get(attempts.size() - 1).deviations();
    }

    /** The script ear understands all, the open ear every other word. */
    private void mumble(String line) {
        String[] words = spoken(line).split(" ", -1);
        String[] heard = words.clone();
        for (int i = 1; i < heard.length; i += 2) {
            heard[i] = "mumble";
        }
        reader.say(String.join(" ", words), String.join(" ", heard));
    }

    private List<FollowEvent.Understood> told() {
        return reader.events().stream()
                .filter(FollowEvent.Understood.class::isInstance)
                .map(FollowEvent.Understood.class::cast)
                .toList();
    }

    private static String spoken(String line) {
        return line.toLowerCase(Locale.ROOT);
    }
}
