package org.bookholder.handoff;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.cutlist.CutList;
import org.bookholder.cutlist.CutPlanner;
import org.bookholder.cutlist.CutRules;
import org.bookholder.cutlist.PunchIn;
import org.bookholder.cutlist.TakeSound;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.handoff.timeline.Media;
import org.bookholder.handoff.timeline.MediaList;
import org.bookholder.handoff.timeline.TimelineBuilder;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.speech.AudioBlock;
import org.bookholder.testing.Scripts;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;
import org.bookholder.timing.Timecode;

/** Hand-offs of imagined sessions. */
public final class ExampleHandOff {
    private static final int RATE = 8000;

    /** A quiet tone for as long as is asked. */
    private static final TakeSound TONE = (take, from, to) -> {
        int first = (int) from.samples(RATE);
        short[] samples = new short[(int) to.samples(RATE) - first];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (short) (100 * Math.sin(0.3 * (first + i)));
        }
        return samples.length == 0 ? Optional.empty() : Optional.of(new AudioBlock(from, RATE, samples));
    };

    private ExampleHandOff() {}

    /** A session in which everything happens, without footage, at 25 frames a second. */
    public static HandOff plain() {
        return of(ExampleSession.state(), ExampleSession.events(), List.of(), new Timecode(FrameRate.FPS_25, false));
    }

    /**
     * The same, filmed in 2160p at 29.97 drop-frame. The camera began 4 s before the take and counts 20 millionths too
     * much; it split its file after 19.5 s, in the middle of the last clip.
     */
    public static HandOff filmed() {
        return of(ExampleSession.state(), ExampleSession.events(), footage(), new Timecode(FrameRate.FPS_29_97, true));
    }

    /** The two files of the {@link #filmed} session. */
    public static List<PlacedFootage> footage() {
        long start = 4 * 48_000;
        StreamTime split = StreamTime.ofSeconds(15.5);
        PlacedFootage first = footage(
                "C0001 \u00e9t\u00e9.MP4",
                "10:20:30;12",
                19.5,
                new Placement(1, StreamTime.ZERO, start, 20_000, StreamTime.ZERO, split, 0.97));
        PlacedFootage second = footage(
                "C0002.MP4",
                "10:20:49;27",
                20,
                new Placement(1, StreamTime.ZERO, start - 936_000, 20_000, split, StreamTime.ofSeconds(18), 0.95));
        return List.of(first, second);
    }

    /**
     * The {@link #filmed} session with a second camera, which ran from the take's second 2 to its second 15, and a recorder
     * for all of it, which began a second before the take and lies elsewhere.
     */
    public static HandOff severalSources() {
        return of(
                ExampleSession.state(),
                ExampleSession.events(),
                severalFiles(),
                new Timecode(FrameRate.FPS_29_97, true));
    }

    /** The files of {@link #severalSources}. */
    public static List<PlacedFootage> severalFiles() {
        StreamTime from = StreamTime.ofSeconds(2);
        PlacedFootage second = footage(
                "side/B0001.MP4",
                "11:00:00;00",
                13,
                new Placement(1, StreamTime.ZERO, -2 * 48_000, 0, from, StreamTime.ofSeconds(15), 0.97));
        PlacedFootage recorder = new PlacedFootage(
                new Footage(
                        Path.of("/recorder/REC01.WAV"),
                        StreamTime.ofSeconds(20),
                        Optional.empty(),
                        Optional.of(new Footage.Sound(48_000, 2, "pcm_s24le")),
                        Optional.empty(),
                        Optional.of(StreamTime.ofSeconds(36_000)),
                        Optional.empty()),
                List.of(new Placement(1, StreamTime.ZERO, 48_000, 0, StreamTime.ZERO, StreamTime.ofSeconds(18), 1)));
        List<PlacedFootage> all = new ArrayList<>(footage());
        all.add(second);
        all.add(recorder);
        return all;
    }

    /** A recorder that began ten seconds before midnight and ran all the time. */
    public static List<PlacedFootage> beforeMidnight(Timecode timecode) {
        StreamTime end = StreamTime.ofSeconds(18);
        return List.of(new PlacedFootage(
                new Footage(
                        Path.of("/shoot/REC02.WAV"),
                        end,
                        Optional.empty(),
                        Optional.of(new Footage.Sound(48_000, 1, "pcm_s16le")),
                        Optional.of("23:59:50" + (timecode.drop() ? ';' : ':') + "00"),
                        Optional.empty(),
                        Optional.empty()),
                List.of(Placement.whole(1, StreamTime.ZERO, end))));
    }

    /** The {@link #plain} session with other recordings. */
    public static HandOff withSound(TakeSound sound) {
        HandOff plain = plain();
        return new HandOff(
                plain.folder(),
                plain.name(),
                plain.state(),
                plain.events(),
                plain.cut(),
                plain.timeline(),
                plain.media(),
                plain.covers(),
                sound,
                plain.zone());
    }

    /** Nothing was read yet. */
    public static HandOff empty() {
        SessionState state = Session.begin(Scripts.of("Every wheel begins with its hub."), FatigueLimits.defaults());
        return of(state, List.of(), List.of(), new Timecode(FrameRate.FPS_25, false));
    }

    /** Any session. */
    public static HandOff of(
            SessionState state, List<SessionEvent> events, List<PlacedFootage> footage, Timecode timecode) {
        try {
            CutList cut = CutPlanner.plan(state, CutRules.defaults(), TONE);
            List<Media> media = MediaList.of(
                    state,
                    timecode,
                    footage,
                    new MediaList.TakeFiles(
                            take -> Path.of("/shoot/handoff/lesson-take-00" + take + ".wav"),
                            Optional.of(ZoneOffset.UTC)));
            return new HandOff(
                    Path.of("/shoot/handoff"),
                    "lesson",
                    state,
                    events,
                    cut,
                    TimelineBuilder.build(cut, timecode, media, new PunchIn(115, 200)),
                    media,
                    List.of(),
                    TONE,
                    ZoneOffset.UTC);
        } catch (ProblemException e) {
            throw new IllegalStateException(e);
        }
    }

    private static PlacedFootage footage(String name, String timecode, double seconds, Placement placement) {
        return new PlacedFootage(
                new Footage(
                        Path.of("/shoot/" + name),
                        StreamTime.ofSeconds(seconds),
                        Optional.of(new Footage.Picture(3840, 2160, FrameRate.FPS_29_97, false)),
                        Optional.of(new Footage.Sound(48_000, 2, "aac")),
                        Optional.of(timecode),
                        Optional.empty(),
                        Optional.empty()),
                List.of(placement));
    }
}
