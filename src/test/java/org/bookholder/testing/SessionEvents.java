package org.bookholder.testing;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import org.bookholder.fatigue.EarlierReading;
import org.bookholder.fatigue.FatigueClocks;
import org.bookholder.fatigue.StumbleTally;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.follow.model.FollowState;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.follow.model.UnjudgedStretch;
import org.bookholder.follow.model.WordTime;
import org.bookholder.pace.WordTally;
import org.bookholder.script.model.PaceSource;
import org.bookholder.session.AcceptedReading;
import org.bookholder.session.DaySoFar;
import org.bookholder.session.Decision;
import org.bookholder.session.FilmChange;
import org.bookholder.session.FilmChoices;
import org.bookholder.session.Mover;
import org.bookholder.session.PickupRound;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeEnd;
import org.bookholder.session.UnsavedStretch;
import org.bookholder.timing.StreamTime;

/** Arbitrary session events for properties: every kind, with odd numbers and texts. */
public final class SessionEvents {
    private SessionEvents() {}

    /** Events of every kind, in no sensible order. */
    public static Arbitrary<List<SessionEvent>> lists() {
        return any().list().ofMaxSize(30);
    }

    /** Events of every kind. */
    public static Arbitrary<SessionEvent> any() {
        return Arbitraries.oneOf(frame(), following(), sound(), people());
    }

    /** Times up to some months of audio. */
    public static Arbitrary<StreamTime> times() {
        return Arbitraries.longs().between(0, 1L << 40).map(StreamTime::new);
    }

    /** Texts with quotes, line breaks, control characters and characters beyond the basic plane. */
    public static Arbitrary<String> texts() {
        return Arbitraries.oneOf(
                Arbitraries.strings().withCharRange(' ', '~').ofMaxLength(20),
                Arbitraries.strings().withCharRange('\u0000', '\ud7ff').ofMaxLength(10),
                Arbitraries.of("", "\"", "a\nb\r\nc\td", "\\u0000", "caf\u00e9 \ud83d\udc1d", "null"));
    }

    /** Every kind of double, those that JSON has no number for included. */
    public static Arbitrary<Double> doubles() {
        return Arbitraries.oneOf(
                Arbitraries.doubles(),
                Arbitraries.of(
                        Double.NaN,
                        Double.POSITIVE_INFINITY,
                        Double.NEGATIVE_INFINITY,
                        -0.0,
                        Double.MIN_VALUE,
                        Double.MAX_VALUE));
    }

    private static Arbitrary<Instant> instants() {
        return Combinators.combine(
                        Arbitraries.longs().between(-1L << 36, 1L << 36),
                        Arbitraries.integers().between(0, 999_999_999))
                .as(Instant::ofEpochSecond);
    }

    private static Arbitrary<Integer> ordinals() {
        return Arbitraries.integers().between(1, Integer.MAX_VALUE);
    }

    private static Arbitrary<ReadingPosition> positions() {
        return Combinators.combine(ordinals(), ordinals()).as(ReadingPosition::new);
    }

    private static Arbitrary<SessionEvent> frame() {
        return Arbitraries.oneOf(
                Combinators.combine(times(), instants(), texts(), texts(), texts())
                        .as(SessionEvent.Opened::new),
                Combinators.combine(times(), days()).as(SessionEvent.DayCarried::new),
                Combinators.combine(times(), texts()).as(SessionEvent.TextChanged::new),
                Combinators.combine(times(), ordinals(), Arbitraries.of(PaceSource.class))
                        .as(SessionEvent.PaceAimed::new),
                Combinators.combine(times(), ordinals(), instants(), texts(), positions())
                        .as(SessionEvent.TakeStarted::new),
                Combinators.combine(times(), ordinals(), instants(), Arbitraries.of(TakeEnd.class))
                        .as(SessionEvent.TakeEnded::new));
    }

    private static Arbitrary<DaySoFar> days() {
        Arbitrary<Duration> lengths = Arbitraries.longs().between(0, 1L << 50).map(Duration::ofNanos);
        Arbitrary<FatigueClocks> clocks = Combinators.combine(
                        lengths, lengths, lengths, lengths, lengths, Arbitraries.of(true, false))
                .as(FatigueClocks::new);
        Arbitrary<StumbleTally> tallies = Combinators.combine(
                        Arbitraries.longs().between(0, 1000),
                        Arbitraries.longs().between(0, 1L << 40),
                        Arbitraries.longs())
                .as((words, ticks, fluffs) -> new StumbleTally(new WordTally(words, ticks), fluffs));
        Arbitrary<EarlierReading> readings = Combinators.combine(
                        clocks, ordinals(), tallies, tallies.list().ofMaxSize(10))
                .as(EarlierReading::new);
        return Combinators.combine(instants(), readings).as(DaySoFar::new);
    }

    private static Arbitrary<SessionEvent> following() {
        return Arbitraries.oneOf(
                Combinators.combine(times(), positions(), Arbitraries.of(Mover.class), Arbitraries.integers())
                        .as(SessionEvent.PositionMoved::new),
                Combinators.combine(times(), Arbitraries.of(FollowState.class)).as(SessionEvent.FollowChanged::new),
                Combinators.combine(times(), attempts()).as(SessionEvent.AttemptSettled::new),
                Combinators.combine(times(), stretches(), texts()).as(SessionEvent.NotJudged::new),
                Combinators.combine(times(), Arbitraries.of(true, false), doubles())
                        .as(SessionEvent.Understood::new),
                Combinators.combine(
                                times(),
                                ordinals(),
                                attempts().list().ofMaxSize(3),
                                asides().list().ofMaxSize(3))
                        .as(SessionEvent.TakeSettled::new),
                Combinators.combine(times(), ordinals(), asides().list().ofMaxSize(3))
                        .as(SessionEvent.AsidesHeard::new));
    }

    private static Arbitrary<UnjudgedStretch> stretches() {
        return Combinators.combine(
                        ordinals(), times(), times(), ordinals().list().ofMaxSize(3))
                .as(UnjudgedStretch::new);
    }

    private static Arbitrary<SessionEvent> sound() {
        return Arbitraries.oneOf(
                Combinators.combine(times(), doubles(), doubles(), Arbitraries.integers())
                        .as(SessionEvent.SoundMeasured::new),
                Combinators.combine(times(), times()).as(SessionEvent.SamplesLost::new),
                Combinators.combine(times(), texts()).as(SessionEvent.SourceLost::new),
                Combinators.combine(times(), texts()).as(SessionEvent.SourceFound::new),
                Combinators.combine(times(), texts(), texts()).as(SessionEvent.SourceMoved::new),
                Combinators.combine(times(), texts()).as(SessionEvent.RecordingFailed::new),
                times().map(SessionEvent.RecordingResumed::new),
                Combinators.combine(
                                times(),
                                Combinators.combine(ordinals(), times(), times())
                                        .as(UnsavedStretch::new))
                        .as(SessionEvent.SoundNotSaved::new));
    }

    private static Arbitrary<SessionEvent> people() {
        return Arbitraries.oneOf(
                Combinators.combine(times(), ordinals(), texts()).as(SessionEvent.PickupMarked::new),
                times().map(SessionEvent.Held::new),
                times().map(SessionEvent.Resumed::new),
                Combinators.combine(times(), Arbitraries.integers().between(0, 10))
                        .as(SessionEvent.CountInStepped::new),
                Combinators.combine(times(), rounds()).as(SessionEvent.RoundMoved::new),
                Combinators.combine(times(), remarks()).as(SessionEvent.Remarked::new));
    }

    private static Arbitrary<PickupRound> rounds() {
        return Combinators.combine(
                        Arbitraries.of(PickupRound.Step.class).filter(step -> step != PickupRound.Step.OFF),
                        ordinals(),
                        ordinals(),
                        ordinals(),
                        texts())
                .as(PickupRound::new)
                .edgeCases(config -> config.add(PickupRound.NONE));
    }

    private static Arbitrary<Remark> remarks() {
        return Arbitraries.oneOf(
                unsigned(), Combinators.combine(texts(), unsigned(), texts()).as(Remark.Signed::new));
    }

    private static Arbitrary<Remark> unsigned() {
        return Arbitraries.oneOf(
                Combinators.combine(ordinals(), texts(), Arbitraries.of(true, false))
                        .as(Remark.Noted::new),
                texts().map(Remark.Told::new),
                instants().map(Remark.BreakBegan::new),
                instants().map(Remark.BreakOver::new),
                Combinators.combine(ordinals(), Arbitraries.of(Decision.Choice.class), ordinals(), ordinals())
                        .as(Remark.Decided::new),
                Combinators.combine(ordinals(), ordinals(), times(), times()).as(Remark.Bounded::new),
                Combinators.combine(ordinals(), filmChanges()).as(Remark.Filmed::new),
                Arbitraries.just(new Remark.Undone()),
                Combinators.combine(ordinals(), texts()).as(Remark.Edited::new),
                ordinals().map(Remark.Retracted::new),
                ordinals().map(Remark.Shown::new),
                Combinators.combine(ordinals(), texts(), texts(), Arbitraries.of(Deviation.Kind.class))
                        .as(AcceptedReading::new)
                        .list()
                        .ofMaxSize(3)
                        .map(Remark.Carried::new));
    }

    private static Arbitrary<FilmChange> filmChanges() {
        return Arbitraries.oneOf(
                Arbitraries.of(FilmChoices.Framing.class).map(FilmChange.Framed::new),
                Arbitraries.integers()
                        .between(FilmChoices.AS_READ, FilmChoices.LONGEST_PAUSE)
                        .map(FilmChange.Paused::new),
                Combinators.combine(ordinals(), ordinals(), Arbitraries.of(FilmChoices.Edge.class), times())
                        .as(FilmChange.CutAt::new),
                texts().map(FilmChange.SeenBy::new),
                texts().map(FilmChange.HeardFrom::new),
                Combinators.combine(ordinals(), texts(), Arbitraries.of(true, false))
                        .as((take, file, seen) -> new FilmChange.OfTake(
                                take, seen ? new FilmChange.SeenBy(file) : new FilmChange.HeardFrom(file))),
                Combinators.combine(texts(), thousandths(), thousandths())
                        .as((camera, across, down) ->
                                new FilmChange.KeptPoint(camera, new FilmChoices.Point(across, down))));
    }

    private static Arbitrary<Integer> thousandths() {
        return Arbitraries.integers().between(0, 1000);
    }

    private static Arbitrary<Attempt> attempts() {
        return Combinators.combine(
                        ordinals(),
                        ordinals(),
                        ordinals(),
                        times(),
                        times(),
                        Arbitraries.of(true, false),
                        Combinators.combine(ordinals(), times(), times())
                                .as(WordTime::new)
                                .list()
                                .ofMaxSize(4),
                        deviations().list().ofMaxSize(3))
                .as(Attempt::new);
    }

    private static Arbitrary<Deviation> deviations() {
        return Combinators.combine(ordinals(), texts(), texts(), Arbitraries.of(Deviation.Kind.class), doubles())
                .as(Deviation::new);
    }

    private static Arbitrary<Aside> asides() {
        return Combinators.combine(ordinals(), times(), times(), texts(), Arbitraries.integers())
                .as(Aside::new);
    }
}
