package org.bookholder.session;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.bookholder.follow.model.Attempt;
import org.bookholder.timing.StreamTime;

/**
 * What people decided about a line in the film, besides which attempt is used and whether the line is left out: those are a
 * {@link Decision}. Immutable.
 *
 * @param framing how close the picture is framed from the join before it on
 * @param pause milliseconds of quiet before it, or {@link #AS_READ}
 * @param in where its attempt begins, as set by hand; empty if it was not
 * @param out where it ends, likewise
 * @param camera the name of the file of the camera that shows it; empty if nobody chose one
 * @param points for the session as a whole, which is line 0: the point of each camera's picture that stays in place, by the name of
 *     its file
 * @param sound likewise for the session as a whole: the name of the file that is heard; empty if nobody chose one
 * @param takes likewise: what was chosen for one take alone, by its number
 */
public record FilmChoices(
        Framing framing,
        int pause,
        Optional<Place> in,
        Optional<Place> out,
        Optional<String> camera,
        Map<String, Point> points,
        Optional<String> sound,
        Map<Integer, OfTake> takes) {
    /** Stands for the recordings of the takes where others have a file's name. */
    public static final String TAKES = "the take's recording";

    /** The pause is as it was read, or as the film's rules say. */
    public static final int AS_READ = -1;

    /** The longest pause that can be asked for, in milliseconds. */
    public static final int LONGEST_PAUSE = 10_000;

    /** Nothing was decided. */
    public static final FilmChoices NONE = new FilmChoices(
            Framing.PLANNED,
            AS_READ,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Map.of(),
            Optional.empty(),
            Map.of());

    /** Copies the maps. */
    public FilmChoices {
        points = Map.copyOf(points);
        takes = Map.copyOf(takes);
    }

    /**
     * What was chosen for one take alone.
     *
     * @param camera the name of the file of the camera that shows it; empty text if the program is to choose, whatever was chosen for
     *     all takes; empty if nobody chose
     * @param sound the name of the file that is heard, likewise
     */
    public record OfTake(Optional<String> camera, Optional<String> sound) {
        private static final OfTake NONE = new OfTake(Optional.empty(), Optional.empty());
    }

    /** The camera that someone wants for a take of this session, for it alone or for all. */
    public Optional<String> camera(int take) {
        return takes.getOrDefault(take, OfTake.NONE).camera().or(() -> camera).filter(name -> !name.isEmpty());
    }

    /** The file that someone wants to hear in a take of this session, likewise. */
    public Optional<String> sound(int take) {
        return takes.getOrDefault(take, OfTake.NONE).sound().or(() -> sound).filter(name -> !name.isEmpty());
    }

    /**
     * A point of a picture.
     *
     * @param across how far from the left, in thousandths of the width of what the film shows
     * @param down how far from the top, in thousandths of the height
     */
    public record Point(int across, int down) {
        /** The eyes of somebody in the middle: a third from the top (common practice). */
        public static final Point EYES = new Point(500, 333);

        /** Checks the ranges. */
        public Point {
            if (across < 0 || across > 1000 || down < 0 || down > 1000) {
                throw new IllegalArgumentException(
                        "across (" + across + ") and down (" + down + ") must be from 0 to 1000");
            }
        }
    }

    /** How close the picture is framed. */
    public enum Framing {
        /** As the film's rules say. */
        PLANNED,
        /** As it was shot. */
        AS_SHOT,
        /** A step closer. */
        CLOSER
    }

    /** One of the two ends of an attempt. */
    public enum Edge {
        /** Where it begins. */
        IN,
        /** Where it ends. */
        OUT
    }

    /**
     * Where an attempt is cut.
     *
     * @param take the attempt's take
     * @param ordinal its number within the take
     * @param at the place in the session's audio
     */
    public record Place(int take, int ordinal, StreamTime at) {
        private boolean of(Attempt attempt) {
            return attempt.take() == take && attempt.ordinal() == ordinal;
        }
    }

    /** Where this attempt begins, if someone has set it. */
    public Optional<StreamTime> inOf(Attempt attempt) {
        return in.filter(place -> place.of(attempt)).map(Place::at);
    }

    /** Where this attempt ends, if someone has set it. */
    public Optional<StreamTime> outOf(Attempt attempt) {
        return out.filter(place -> place.of(attempt)).map(Place::at);
    }

    /** The pause before the line, if someone has set it. */
    public Optional<StreamTime> pauseBefore() {
        return pause == AS_READ ? Optional.empty() : Optional.of(StreamTime.ofSeconds(pause / 1000.0));
    }

    FilmChoices with(FilmChange change) {
        return change.to(new After());
    }

    /** What was chosen for single takes; a choice for all of them takes the place of that. */
    private Map<Integer, OfTake> without(UnaryOperator<OfTake> rest) {
        Map<Integer, OfTake> left = new HashMap<>(takes);
        left.replaceAll((take, one) -> rest.apply(one));
        return left;
    }

    /** These choices after a change. */
    private final class After implements FilmChange.Handler<FilmChoices> {
        @Override
        public FilmChoices framed(FilmChange.Framed framed) {
            return new FilmChoices(framed.framing(), pause, in, out, camera, points, sound, takes);
        }

        @Override
        public FilmChoices paused(FilmChange.Paused paused) {
            return new FilmChoices(framing, paused.millis(), in, out, camera, points, sound, takes);
        }

        @Override
        public FilmChoices cutAt(FilmChange.CutAt cut) {
            Optional<Place> place = Optional.of(new Place(cut.take(), cut.ordinal(), cut.place()));
            return cut.edge() == Edge.IN
                    ? new FilmChoices(framing, pause, place, out, camera, points, sound, takes)
                    : new FilmChoices(framing, pause, in, place, camera, points, sound, takes);
        }

        @Override
        public FilmChoices seenBy(FilmChange.SeenBy seen) {
            return new FilmChoices(
                    framing,
                    pause,
                    in,
                    out,
                    Optional.of(seen.camera()).filter(name -> !name.isEmpty()),
                    points,
                    sound,
                    without(one -> new OfTake(Optional.empty(), one.sound())));
        }

        @Override
        public FilmChoices keptPoint(FilmChange.KeptPoint kept) {
            Map<String, Point> all = new HashMap<>(points);
            all.put(kept.camera(), kept.point());
            return new FilmChoices(framing, pause, in, out, camera, all, sound, takes);
        }

        @Override
        public FilmChoices heardFrom(FilmChange.HeardFrom heard) {
            return new FilmChoices(
                    framing,
                    pause,
                    in,
                    out,
                    camera,
                    points,
                    Optional.of(heard.file()).filter(name -> !name.isEmpty()),
                    without(one -> new OfTake(one.camera(), Optional.empty())));
        }

        @Override
        public FilmChoices ofTake(FilmChange.OfTake of) {
            OfTake before = takes.getOrDefault(of.take(), OfTake.NONE);
            Map<Integer, OfTake> all = new HashMap<>(takes);
            if (of.what() instanceof FilmChange.SeenBy seen) {
                all.put(of.take(), new OfTake(Optional.of(seen.camera()), before.sound()));
            } else if (of.what() instanceof FilmChange.HeardFrom heard) {
                all.put(of.take(), new OfTake(before.camera(), Optional.of(heard.file())));
            }
            return new FilmChoices(framing, pause, in, out, camera, points, sound, all);
        }
    }
}
