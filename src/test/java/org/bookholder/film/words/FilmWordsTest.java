package org.bookholder.film.words;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.s;

import java.util.List;
import java.util.Optional;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.WordTime;
import org.bookholder.handoff.captions.Chapter;
import org.bookholder.handoff.captions.TimedWord;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.timing.FrameRate;
import org.junit.jupiter.api.Test;

final class FilmWordsTest {
    private static final String TEXT =
            "---\ntitle: Two parts\n---\nOne two three.\n\n# The = second\n\nFour five six.\n";

    @Test
    void captionsShowWhatIsSaidNotWhatIsWritten() throws ProblemException {
        FilmWords words = words(List.of(
                new Deviation(1, "four", "for", Deviation.Kind.SWAPPED, 1),
                new Deviation(2, "five", "", Deviation.Kind.DROPPED, 1),
                new Deviation(4, "", "indeed", Deviation.Kind.ADDED, 1)));
        assertThat(words.texts().spoken().get(1).text()).isEqualTo("For six indeed.");
        assertThat(words.texts().transcript())
                .isEqualTo("Two parts\n\nOne two three.\n\nThe = second\n\nFor six indeed.\n");
    }

    @Test
    void aSwappedWordKeepsTheStopAtTheSentencesEnd() throws ProblemException {
        FilmWords words = words(List.of(new Deviation(3, "six", "sick", Deviation.Kind.SWAPPED, 1)));
        assertThat(words.texts().transcript()).endsWith("Four five sick.\n");
    }

    @Test
    void theirTimesAreTheFilms() throws ProblemException {
        // The second clip begins at 2 s of the film with 10 s of the session; "Four" is said at 10.5 s.
        FilmWords words = words(List.of());
        TimedWord four = words.texts().spoken().get(1).words().get(0);
        assertThat(four.start()).isEqualTo(s(2.5));
        assertThat(words.texts().webVtt())
                .startsWith("WEBVTT\n\n00:00:00.500 --> ")
                .contains("\n00:00:02.500 --> ");
        assertThat(words.texts().subRip()).startsWith("1\r\n00:00:00,500 --> ");
    }

    @Test
    void chaptersBeginWhereTheirFirstLineIsHeard() throws ProblemException {
        FilmWords words = words(List.of());
        assertThat(words.texts().chapters())
                .containsExactly(new Chapter(s(0), "Two parts"), new Chapter(s(2.5), "The = second"));
        assertThat(words.notes("A; title")).isEqualTo("""
            ;FFMETADATA1
            title=A\\; title
            [CHAPTER]
            TIMEBASE=1/1000
            START=0
            END=2500
            title=Two parts
            [CHAPTER]
            TIMEBASE=1/1000
            START=2500
            END=4000
            title=The \\= second
            """);
    }

    private static FilmWords words(List<Deviation> deviations) throws ProblemException {
        Script script = ScriptReader.parse(TEXT, "lesson.md", Format.of("lesson.md"));
        FilmPlan plan = new FilmPlan(FrameRate.FPS_25, List.of(clip(1, 0, 0, List.of()), clip(2, 10, 50, deviations)));
        return FilmWords.of(plan, script);
    }

    private static FilmClip clip(int line, double in, long start, List<Deviation> deviations) {
        List<WordTime> times = List.of(
                new WordTime(1, s(in + 0.5), s(in + 0.8)),
                new WordTime(2, s(in + 0.8), s(in + 1.1)),
                new WordTime(3, s(in + 1.1), s(in + 1.5)));
        Attempt attempt = new Attempt(1, line, line, s(in + 0.5), s(in + 1.6), true, times, deviations);
        return new FilmClip(
                line, line, 0, 1, s(in), s(in + 2), start, 50, Optional.empty(), Optional.empty(), List.of(attempt));
    }
}
