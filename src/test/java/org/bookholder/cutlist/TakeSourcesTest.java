package org.bookholder.cutlist;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.MORNING;
import static org.bookholder.testing.Readings.s;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.footage.Channels;
import org.bookholder.footage.Footage;
import org.bookholder.footage.Hearing;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.session.FilmChoices;
import org.bookholder.session.Take;
import org.bookholder.timing.FrameRate;
import org.bookholder.wording.TakeSourcesText;
import org.junit.jupiter.api.Test;

/** Which of a take's files goes first, by our own rule (decision 0334). */
final class TakeSourcesTest {
    private static final Take TAKE = new Take(1, s(10), s(40), MORNING, "a microphone");

    @Test
    void aRecorderGoesBeforeACameraAndBothBeforeTheTakesOwn() {
        assertThat(sounds(camera("C1.MP4", 40, 20), recorder("R1.WAV", 40, 15), recorder("R2.WAV", 40, 15)))
                .containsExactly("R1.WAV", "R2.WAV", "C1.MP4", FilmChoices.TAKES);
    }

    @Test
    void whatIsMuchClearerAndHasAsMuchOfTheTakeGoesFirst() {
        assertThat(sounds(camera("C1.MP4", 40, 22), recorder("R1.WAV", 40, 15))).startsWith("C1.MP4", "R1.WAV");
        assertThat(sounds(camera("C1.MP4", 40, 20), recorder("R1.WAV", 40, 15))).startsWith("R1.WAV");
        assertThat(sounds(camera("C1.MP4", 30, 40), recorder("R1.WAV", 40, 15))).startsWith("R1.WAV");
    }

    @Test
    void aFileThatIsGoneComesLast() {
        TakeSources sources = of(
                List.of(camera("C1.MP4", 40, 20), camera("C2.MP4", 40, 20), recorder("GONE.WAV", 40, 30)),
                FilmChoices.NONE);
        assertThat(sources.sounds()).extracting(TakeSources.Source::name).endsWith("GONE.WAV");
    }

    @Test
    void thatTheOnlyFileIsGoneIsSaid() {
        TakeSources sources = of(List.of(camera("GONE.WAV", 30, 20)), FilmChoices.NONE);
        assertThat(TakeSourcesText.lines(sources))
                .containsExactly(
                        "picture: none, as GONE.WAV is gone", "sound: " + FilmChoices.TAKES + ", as GONE.WAV is gone");
        assertThat(TakeSourcesText.gone(List.of(sources, sources)))
                .as("once for all takes")
                .hasValue("GONE.WAV is not where it was matched any more: put it back, or match it where it is now");
    }

    @Test
    void aFileThatIsGoneIsNamedThoughAnotherIsUsed() {
        TakeSources sources = of(List.of(recorder("GONE.WAV", 40, 20), recorder("R1.WAV", 40, 20)), FilmChoices.NONE);
        assertThat(TakeSourcesText.gone(List.of(sources)))
                .hasValueSatisfying(said -> assertThat(said).startsWith("GONE.WAV is not where"));
        assertThat(TakeSourcesText.lines(sources)).noneMatch(line -> line.contains("GONE"));
    }

    @Test
    void soundGoesBeforeSilence() {
        assertThat(sounds(levels("R1.WAV", -120.0), levels("R2.WAV", -30.0)))
                .startsWith("R2.WAV", FilmChoices.TAKES, "R1.WAV");
    }

    @Test
    void whatIsSilentOrMuchSofterThanSomethingElseIsRemarkedOn() {
        TakeSources silent = of(List.of(levels("R1.WAV", -24.0, -120.0)), heard("R1.WAV:2"));
        assertThat(TakeSourcesText.remarks(silent))
                .containsExactly(
                        "R1.WAV, channel 2 is silent here, and its channel 1 is not: choose that, unless this is meant");
        TakeSources soft = of(List.of(levels("R1.WAV", -56.0), levels("R2.WAV", -25.0)), FilmChoices.NONE);
        assertThat(TakeSourcesText.remarks(soft))
                .containsExactly("R1.WAV is 31 dB softer than R2.WAV, channel 1: choose that, unless this is meant");
        assertThat(TakeSourcesText.remarks(
                        of(List.of(levels("R1.WAV", -54.0), levels("R2.WAV", -25.0)), FilmChoices.NONE)))
                .isEmpty();
        assertThat(TakeSourcesText.remarks(of(List.of(recorder("R1.WAV", 40, 20)), FilmChoices.NONE)))
                .as("not measured")
                .isEmpty();
    }

    /** The take's own recording has the voice, though nobody measured its level. */
    @Test
    void insteadOfSilenceTheTakesOwnRecordingCanBeChosen() {
        assertThat(TakeSourcesText.remarks(of(List.of(levels("R1.WAV", -120.0)), heard("R1.WAV"))))
                .containsExactly("R1.WAV is silent here: choose " + FilmChoices.TAKES + ", unless this is meant");
    }

    private static FilmChoices heard(String sound) {
        return new FilmChoices(
                FilmChoices.Framing.PLANNED,
                FilmChoices.AS_READ,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Map.of(),
                Optional.of(sound),
                Map.of());
    }

    private static PlacedFootage levels(String name, Double... levels) {
        PlacedFootage placed = recorder(name, 40, 20);
        Footage footage = placed.footage();
        return new PlacedFootage(
                new Footage(
                        footage.file(),
                        footage.length(),
                        Optional.empty(),
                        Optional.of(new Footage.Sound(48_000, levels.length, "pcm")),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()),
                placed.placements(),
                List.of(new Hearing(1, Channels.ALL, 20, List.of(levels))));
    }

    @Test
    void aChoiceForOneTakeGoesBeforeThatForAll() {
        List<PlacedFootage> files = List.of(camera("a/C1.MP4", 40, 20), camera("b/C1.MP4", 40, 20));
        TakeSources sources = of(files, choices("a/C1.MP4", Optional.of("b/C1.MP4")));
        assertThat(sources.pictures()).extracting(TakeSources.Source::name).containsExactly("b/C1.MP4", "a/C1.MP4");
        assertThat(of(files, choices("b/C1.MP4", Optional.of(""))).pictures())
                .as("left to the program for this take")
                .extracting(TakeSources.Source::name)
                .containsExactly("a/C1.MP4", "b/C1.MP4");
        assertThat(of(files, choices("c/C1.MP4", Optional.empty())).picture())
                .hasValue(new TakeSources.Missed("c/C1.MP4", TakeSources.Why.UNMATCHED));
    }

    /** As a colon is none on some machines. */
    @Test
    void aChoiceThatIsNoPathIsNoFile() {
        assertThat(of(List.of(camera("C1.MP4", 40, 20)), choices("no\0path", Optional.empty()))
                        .picture())
                .hasValue(new TakeSources.Missed("no\0path", TakeSources.Why.UNMATCHED));
    }

    private static FilmChoices choices(String all, Optional<String> one) {
        return new FilmChoices(
                FilmChoices.Framing.PLANNED,
                FilmChoices.AS_READ,
                Optional.empty(),
                Optional.empty(),
                Optional.of(all),
                Map.of(),
                Optional.empty(),
                Map.of(1, new FilmChoices.OfTake(one, Optional.empty())));
    }

    private static List<String> sounds(PlacedFootage... files) {
        return of(List.of(files), FilmChoices.NONE).sounds().stream()
                .map(TakeSources.Source::name)
                .toList();
    }

    private static TakeSources of(List<PlacedFootage> files, FilmChoices choices) {
        return TakeSources.of(TAKE, true, files, choices, file -> !file.endsWith("GONE.WAV"));
    }

    private static PlacedFootage camera(String name, double to, double clear) {
        return placed(name, to, clear, Optional.of(new Footage.Picture(1920, 1080, FrameRate.FPS_25, false)));
    }

    private static PlacedFootage recorder(String name, double to, double clear) {
        return placed(name, to, clear, Optional.empty());
    }

    private static PlacedFootage placed(String name, double to, double clear, Optional<Footage.Picture> picture) {
        Footage footage = new Footage(
                Path.of("/card", name),
                s(60),
                picture,
                Optional.of(new Footage.Sound(48_000, 1, "aac")),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        return new PlacedFootage(
                footage,
                List.of(new Placement(1, s(10), 0, 0, s(10), s(to), 1)),
                List.of(new Hearing(1, Channels.ALL, clear, List.of())));
    }
}
