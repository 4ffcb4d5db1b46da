package org.bookholder.cutlist;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.bookholder.footage.Channels;
import org.bookholder.footage.Footage;
import org.bookholder.footage.Hearing;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.session.FilmChoices;
import org.bookholder.session.Take;
import org.bookholder.timing.StreamTime;

/**
 * Which files show a take, and from which its sound comes: the one rule for film, hand-off and all that is said of them. The first of
 * each list is used wherever it has the take, the next ones where it does not.
 *
 * @param take the take
 * @param pictures the files that show it, the one to use first
 * @param sounds the files in which it is heard, likewise
 * @param picture the camera that someone wants though it can't be used; empty if there is none
 * @param sound the sound that someone wants, likewise
 */
public record TakeSources(
        Take take, List<Source> pictures, List<Source> sounds, Optional<Missed> picture, Optional<Missed> sound) {
    /** A file must be clearer than another of a better kind by more than this, in dB, to be heard instead of it. */
    private static final double CLEARER = 6;

    /** Softer sound is none, in dBFS. */
    private static final double SILENT = -70;

    /** What is softer than something else that could be heard by this much or more, in dB, is worth a remark. */
    private static final double FAINT = 30;

    /** How much of a take a file may lack and yet count as having all of it, in seconds. */
    private static final double SLACK = 1;

    /**
     * A file with a take.
     *
     * @param footage a camera's or recorder's file; empty for the take's own recording
     * @param name what it is called among the session's files
     * @param channels the channels that are heard; empty if nobody has measured or chosen them
     * @param there whether the file is where it was matched
     * @param wanted whether someone chose it
     */
    public record Source(
            Optional<PlacedFootage> footage, String name, Optional<Channels> channels, boolean there, boolean wanted) {
        /** What recorded it, the best sound first: 0 for a recorder, 1 for a camera, 2 for the take's own recording. */
        public int kind() {
            return footage.map(f -> f.footage().picture().isPresent() ? 1 : 0).orElse(2);
        }

        /** How far the voice of a take rises out of the noise, in dB; empty if it was not measured. */
        public Optional<Double> clear(int take) {
            return footage.flatMap(f -> f.hearing(take)).map(Hearing::clear);
        }

        /** How loud it is where the take has its voice, in dBFS; empty if it was not measured. */
        private Optional<Double> level(int take) {
            return footage.flatMap(f -> f.hearing(take))
                    .flatMap(hearing -> hearing.level(channels.orElse(hearing.channels())));
        }

        private boolean silent(int take) {
            return level(take).filter(level -> level <= SILENT).isPresent();
        }

        private double seconds(int take) {
            return footage.flatMap(f -> f.placement(take))
                    .map(place -> place.to().since(place.from()).seconds())
                    .orElse(0.0);
        }
    }

    /**
     * Something that someone chose and that can't be used.
     *
     * @param wanted what was chosen
     * @param why why it can't
     */
    public record Missed(String wanted, Why why) {}

    /**
     * What is heard is silent, or much softer than something else that could be heard.
     *
     * @param silent whether nothing at all is heard
     * @param louder the other file; empty if everything is silent
     * @param channels the loudest of its channels
     * @param by how much louder that is, in dB; 0 if that was not measured
     */
    public record Faint(boolean silent, Optional<Source> louder, Channels channels, double by) {}

    /** Why a choice can't be followed. */
    public enum Why {
        /** The file is not where it was matched. */
        GONE,
        /** No such file is matched. */
        UNMATCHED,
        /** The file has no such channel. */
        NO_CHANNEL,
        /** The file has nothing of this take. */
        NOT_THIS_TAKE
    }

    /** Copies the lists. */
    public TakeSources {
        pictures = List.copyOf(pictures);
        sounds = List.copyOf(sounds);
    }

    /**
     * Those of a take.
     *
     * @param recorded whether its own recording can be heard
     * @param footage the session's matched files, in the order in which they were matched
     * @param choices what was chosen for the session
     * @param there whether a file is where it was matched
     */
    public static TakeSources of(
            Take take, boolean recorded, List<PlacedFootage> footage, FilmChoices choices, Predicate<Path> there) {
        List<Source> pictures = new ArrayList<>();
        List<Source> sounds = new ArrayList<>();
        for (PlacedFootage placed : footage) {
            Optional<Channels> best = placed.hearing(take.number()).map(Hearing::channels);
            Source source = new Source(
                    Optional.of(placed),
                    name(placed, footage),
                    best,
                    there.test(placed.footage().file()),
                    false);
            if (placed.placement(take.number()).isPresent()) {
                placed.footage().picture().ifPresent(picture -> pictures.add(source));
                placed.footage().sound().ifPresent(sound -> sounds.add(source));
            }
        }
        if (recorded) {
            sounds.add(new Source(Optional.empty(), FilmChoices.TAKES, Optional.of(Channels.ALL), true, false));
        }
        pictures.sort(Comparator.comparing(source -> !source.there()));
        sounds.sort(Comparator.comparing((Source source) -> !source.there())
                .thenComparing(source -> source.silent(take.number()))
                .thenComparing(Source::kind));
        clearestFirst(sounds, take.number());
        List<Source> all = footage.stream()
                .map(f -> new Source(
                        Optional.of(f),
                        name(f, footage),
                        Optional.empty(),
                        there.test(f.footage().file()),
                        false))
                .toList();
        Optional<Missed> picture = choices.camera(take.number()).flatMap(name -> prefer(pictures, name, all));
        Optional<Missed> sound = choices.sound(take.number()).flatMap(name -> prefer(sounds, name, all));
        return new TakeSources(take, pictures, sounds, picture, sound);
    }

    /** What a file is called: its name, with as many of its folders as it takes to tell it from the session's others. */
    public static String name(PlacedFootage placed, List<PlacedFootage> all) {
        Path file = placed.footage().file();
        for (int count = 1; count < file.getNameCount(); count++) {
            Path end = file.subpath(file.getNameCount() - count, file.getNameCount());
            if (all.stream()
                            .map(PlacedFootage::footage)
                            .map(Footage::file)
                            .filter(f -> f.endsWith(end))
                            .count()
                    <= 1) {
                return end.toString();
            }
        }
        return file.toString();
    }

    /**
     * A choice of sound taken apart.
     *
     * @param file the file's name
     * @param channels the channels; empty for those in which the voice is clearest
     */
    public record Wanted(String file, Optional<Channels> channels) {
        /** What someone chose, of files with these names. */
        public static Wanted of(String text, Predicate<String> isFile) {
            int colon = text.lastIndexOf(':');
            Optional<Channels> channels =
                    colon < 0 || isFile.test(text) ? Optional.empty() : Channels.named(text.substring(colon + 1));
            return new Wanted(channels.isPresent() ? text.substring(0, colon) : text, channels);
        }
    }

    /** Whether a file goes by that name. */
    public static boolean named(Source source, String name) {
        return source.name().equals(name)
                || (!name.isEmpty()
                        && source.footage()
                                .filter(f -> endsWith(f.footage().file(), name))
                                .isPresent());
    }

    /** Not every machine takes a colon in a name, behind which channels stand. */
    private static boolean endsWith(Path file, String name) {
        try {
            return file.endsWith(name);
        } catch (InvalidPathException e) {
            return false;
        }
    }

    /** Puts what someone wants first; says why, if it can't be used. */
    private static Optional<Missed> prefer(List<Source> sources, String text, List<Source> all) {
        Wanted wanted = Wanted.of(text, name -> all.stream().anyMatch(source -> named(source, name)));
        Optional<Source> found =
                sources.stream().filter(source -> named(source, wanted.file())).findFirst();
        if (found.isEmpty()) {
            boolean matched = all.stream().anyMatch(source -> named(source, wanted.file()));
            boolean own = wanted.file().equals(FilmChoices.TAKES);
            return Optional.of(new Missed(text, matched || own ? Why.NOT_THIS_TAKE : Why.UNMATCHED));
        }
        Source source = found.get();
        if (!source.there()) {
            return Optional.of(new Missed(text, Why.GONE));
        }
        if (wanted.channels().filter(channels -> !channels.in(channels(source))).isPresent()) {
            return Optional.of(new Missed(text, Why.NO_CHANNEL));
        }
        sources.remove(source);
        sources.add(
                0, new Source(source.footage(), source.name(), wanted.channels().or(source::channels), true, true));
        return Optional.empty();
    }

    /** How many channels a file has. */
    public static int channels(Source source) {
        return source.footage()
                .flatMap(f -> f.footage().sound())
                .map(Footage.Sound::channels)
                .orElse(1);
    }

    /** A recorder goes before a camera, and what was named first before others; unless another is much clearer and has as much of it. */
    private static void clearestFirst(List<Source> sounds, int take) {
        if (sounds.isEmpty()) {
            return;
        }
        Source best = sounds.get(0);
        for (Source other : sounds) {
            boolean clearer = other.there() == best.there()
                    && other.silent(take) == best.silent(take)
                    && other.clear(take).isPresent()
                    && best.clear(take).isPresent()
                    && other.clear(take).get() > best.clear(take).get() + CLEARER
                    && other.seconds(take) > best.seconds(take) - SLACK;
            best = clearer ? other : best;
        }
        sounds.remove(best);
        sounds.add(0, best);
    }

    /** Whether what is heard is too soft to be meant; empty if it is not, or was not measured. */
    public Optional<Faint> faint() {
        int number = take.number();
        Optional<Source> first = sounds.stream().findFirst().filter(Source::there);
        Optional<Double> level = first.flatMap(source -> source.level(number));
        if (level.isEmpty()) {
            return Optional.empty();
        }
        boolean silent = level.get() <= SILENT;
        Faint faint = new Faint(silent, Optional.empty(), Channels.ALL, 0);
        for (Source other : sounds) {
            List<Double> levels = other.footage()
                    .filter(footage -> other.there())
                    .flatMap(f -> f.hearing(number))
                    .map(Hearing::levels)
                    .orElse(List.of());
            for (int channel = 1; channel <= levels.size(); channel++) {
                double by = levels.get(channel - 1) - level.get();
                if (levels.get(channel - 1) > SILENT && by > faint.by()) {
                    faint = new Faint(silent, Optional.of(other), Channels.one(channel), by);
                }
            }
        }
        if (silent && faint.louder().isEmpty()) {
            Optional<Source> unknown = sounds.stream()
                    .filter(other -> other.there() && other.level(number).isEmpty())
                    .findFirst();
            faint = new Faint(true, unknown, Channels.ALL, 0);
        }
        return silent || faint.by() >= FAINT ? Optional.of(faint) : Optional.empty();
    }

    /** Whether a file has all of the take, but for a second at most. */
    public boolean whole(Source source) {
        return source.footage()
                .flatMap(f -> f.placement(take.number()))
                .filter(place -> place.from().since(take.start()).seconds() > SLACK
                        || take.end()
                                        .since(StreamTime.min(place.to(), take.end()))
                                        .seconds()
                                > SLACK)
                .isEmpty();
    }
}
