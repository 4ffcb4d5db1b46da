package org.bookholder.film.plan;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.bookholder.cutlist.Clip;
import org.bookholder.cutlist.CutItem;
import org.bookholder.cutlist.PunchIn;
import org.bookholder.follow.model.Attempt;
import org.bookholder.footage.Placement;
import org.bookholder.session.FilmChoices;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;

/**
 * Works out a film from the cut and from what recorded it.
 *
 * <p>Each piece begins at a picture of its camera: the one whose time is nearest to the cut, so half a picture off at most,
 * in the quiet beside a line. Its sound begins at exactly that picture's time, wherever it was recorded, so that picture
 * and sound stay together however often the film is cut.
 */
public final class FilmPlanner {
    /** A place without a camera that is no longer than this many pictures is bridged by the camera before or after it. */
    private static final int SLIVER = 2;

    /** How long the card with the title stands: time enough to read ten words (common practice). */
    private static final StreamTime TITLE = StreamTime.ofSeconds(3);

    private final FrameRate rate;
    private final List<Planned> planned = new ArrayList<>();
    private final boolean changing;
    private long now;

    /**
     * What recorded a session.
     *
     * @param cameras files with pictures, the one to prefer first
     * @param tracks files with sound
     */
    public record Sources(List<Camera> cameras, List<Track> tracks) {
        /** Copies the lists and puts the tracks in the order in which they are to be heard. */
        public Sources {
            cameras = List.copyOf(cameras);
            tracks =
                    tracks.stream().sorted(Comparator.comparingInt(Track::rank)).toList();
        }
    }

    /**
     * A clip or gap of a cut.
     *
     * @param item the clip or gap
     * @param sources what recorded its session
     * @param session the number of that session, from 0
     */
    public record Piece(CutItem item, Sources sources, int session) {}

    /**
     * What is wished of a film.
     *
     * @param title whether it begins with a card that says its title
     * @param cameras whether the camera changes at joins, where several show a line
     */
    public record Wishes(boolean title, boolean cameras) {
        /** Nothing. */
        public static final Wishes NONE = new Wishes(false, false);
    }

    /**
     * A clip that is not framed yet.
     *
     * @param wish how close someone wants it
     * @param several whether more than one camera shows its beginning
     */
    private record Planned(FilmClip clip, FilmChoices.Framing wish, boolean several) {
        Optional<Path> file() {
            return clip.shot().map(Shot::file);
        }
    }

    private FilmPlanner(FrameRate rate, boolean changing) {
        this.rate = rate;
        this.changing = changing;
    }

    /**
     * Plans a film.
     *
     * @param pieces the cut, in order
     * @param rate the film's pictures a second
     * @param framing how the framing alternates where two pieces of one shot meet
     * @param wishes what else is wished
     */
    public static FilmPlan plan(List<Piece> pieces, FrameRate rate, PunchIn framing, Wishes wishes) {
        FilmPlanner planner = new FilmPlanner(rate, wishes.cameras());
        if (wishes.title()) {
            planner.add(FilmClip.title(rate.nearestFrame(TITLE.ticks())), FilmChoices.Framing.PLANNED, false);
        }
        for (Piece piece : pieces) {
            piece.item().clip().ifPresentOrElse(clip -> planner.add(piece, clip), () -> planner.addCard(piece));
        }
        return new FilmPlan(rate, planner.framed(framing));
    }

    private void addCard(Piece piece) {
        CutItem gap = piece.item();
        long frames = Math.max(1, rate.nearestFrame(gap.length().ticks()));
        add(
                new FilmClip(
                        gap.firstLine(),
                        gap.lastLine(),
                        piece.session(),
                        0,
                        StreamTime.ZERO,
                        StreamTime.ZERO,
                        now,
                        frames,
                        Optional.empty(),
                        Optional.empty(),
                        List.of()),
                FilmChoices.Framing.PLANNED,
                false);
    }

    private void add(FilmClip clip, FilmChoices.Framing wish, boolean several) {
        planned.add(new Planned(clip, wish, several));
        now += clip.frames();
    }

    private void add(Piece piece, Clip clip) {
        StreamTime from = clip.in();
        Optional<Path> before = last();
        while (from.isBefore(clip.out())) {
            StreamTime at = from;
            Optional<Camera> camera = piece.sources().cameras().stream()
                    .filter(c -> shows(c.placement(), clip.take(), at))
                    // The one that someone wants, if it shows the place; then another one than before the join, if that
                    // is wished.
                    .min(Comparator.<Camera, Boolean>comparing(c -> !clip.camera()
                                    .equals(Optional.of(c.footage().name())))
                            .thenComparing(c -> changing
                                    && before.equals(Optional.of(c.footage().file()))));
            StreamTime to = camera.isPresent()
                    ? bridged(clip, camera.get().placement().to())
                    : bridged(clip, nextCamera(piece.sources(), clip, at));
            add(piece, clip, camera, at, to);
            from = to;
        }
    }

    /** The file that shows the clip before; empty if there is none. */
    private Optional<Path> last() {
        return planned.isEmpty()
                ? Optional.empty()
                : planned.get(planned.size() - 1).file();
    }

    /** The end of a piece; a remainder of the clip that is too short for one of its own belongs to it. */
    private StreamTime bridged(Clip clip, StreamTime end) {
        return clip.out().since(end).compareTo(rate.length(SLIVER)) <= 0 ? clip.out() : end;
    }

    private boolean shows(Placement placement, int take, StreamTime at) {
        return placement.take() == take
                && !at.plus(rate.length(SLIVER)).isBefore(placement.from())
                && rate.length(SLIVER).compareTo(placement.to().since(at)) < 0;
    }

    private StreamTime nextCamera(Sources sources, Clip clip, StreamTime after) {
        return sources.cameras().stream()
                .map(Camera::placement)
                .filter(p -> p.take() == clip.take() && after.isBefore(p.from()))
                .map(Placement::from)
                .min(Comparator.naturalOrder())
                .map(next -> StreamTime.min(next, clip.out()))
                .orElse(clip.out());
    }

    private void add(Piece piece, Clip clip, Optional<Camera> camera, StreamTime from, StreamTime to) {
        // Ticks of the session at which the piece really begins, and how many of them a tick of the film takes.
        double begins = from.ticks();
        double step = 1;
        long frames = Math.max(1, rate.nearestFrame(to.ticks()) - rate.nearestFrame(from.ticks()));
        Optional<Shot> shot = Optional.empty();
        if (camera.isPresent()) {
            Placement placement = camera.get().placement();
            long first = Math.max(0, rate.nearestFrame(placement.inFile(from)));
            frames = Math.max(1, rate.nearestFrame(placement.inFile(to)) - first);
            step = 1 / placement.speed();
            begins = placement.sessionTicks((double) rate.ticksAt(first));
            shot = Optional.of(new Shot(
                            camera.get().footage().file(),
                            camera.get().picture(),
                            camera.get().steadyAt(rate),
                            first,
                            PunchIn.FULL)
                    .around(camera.get().point()));
        }
        List<Attempt> attempts = clip.attempts().stream()
                .filter(a -> a.start().isBefore(to) && from.isBefore(a.end()))
                .toList();
        List<Attempt> shown = attempts.isEmpty() ? clip.attempts() : attempts;
        add(
                new FilmClip(
                        shown.get(0).line(),
                        shown.get(shown.size() - 1).line(),
                        piece.session(),
                        clip.take(),
                        from,
                        to,
                        now,
                        frames,
                        shot,
                        heard(piece.sources(), clip.take(), camera, from, to, begins, step),
                        attempts),
                from.equals(clip.in()) ? clip.framing() : FilmChoices.Framing.PLANNED,
                piece.sources().cameras().stream()
                                .filter(c -> shows(c.placement(), clip.take(), from))
                                .count()
                        > 1);
    }

    /**
     * The first track that has all of a piece. It stays the same where another camera shows a piece: microphones sound different.
     */
    private Optional<Heard> heard(
            Sources sources,
            int take,
            Optional<Camera> camera,
            StreamTime from,
            StreamTime to,
            double begins,
            double step) {
        return sources.tracks().stream()
                .filter(t -> t.placement().take() == take && covers(t.placement(), from, to))
                .findFirst()
                .map(t -> new Heard(
                        t.file(),
                        t.kind(),
                        t.channels(),
                        t.placement().fileTicks(begins),
                        // The same clock, so that rounding must not make it drift.
                        isOf(camera, t) ? 1 : step * t.placement().speed()));
    }

    private static boolean isOf(Optional<Camera> camera, Track track) {
        return camera.filter(c -> c.footage().file().equals(track.file())).isPresent();
    }

    private boolean covers(Placement placement, StreamTime from, StreamTime to) {
        StreamTime slack = rate.length(SLIVER);
        return !from.plus(slack).isBefore(placement.from())
                && !placement.to().plus(slack).isBefore(to);
    }

    /** Whether two clips are of one camera: files of which one goes on where the other ends count as one. */
    private static boolean sameShot(Planned first, Planned then) {
        boolean choice = first.several() || then.several();
        return first.file().isPresent()
                && then.file().isPresent()
                && (first.file().equals(then.file()) || !choice);
    }

    /** Frames each piece; where one file goes on in the next there is no join to hide, unless someone wants one. */
    private List<FilmClip> framed(PunchIn framing) {
        List<PunchIn.Piece> pieces = new ArrayList<>();
        List<Integer> numbers = new ArrayList<>();
        for (int i = 0; i < planned.size(); i++) {
            Planned piece = planned.get(i);
            boolean follows = i > 0 && sameShot(planned.get(i - 1), piece);
            boolean goesOn = follows && planned.get(i - 1).clip().goesOnIn(piece.clip());
            if (!goesOn || piece.wish() != FilmChoices.Framing.PLANNED) {
                pieces.add(new PunchIn.Piece(follows, piece.wish()));
            }
            numbers.add(pieces.size() - 1);
        }
        List<Integer> plan = framing.plan(pieces);
        List<FilmClip> framed = new ArrayList<>();
        for (int i = 0; i < planned.size(); i++) {
            framed.add(planned.get(i).clip().framed(plan.get(numbers.get(i))));
        }
        return framed;
    }
}
