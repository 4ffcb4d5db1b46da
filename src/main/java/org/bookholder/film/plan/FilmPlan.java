package org.bookholder.film.plan;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.bookholder.script.model.Script;
import org.bookholder.timing.FrameRate;
import org.bookholder.timing.StreamTime;

/**
 * What a film is made of.
 *
 * @param rate its pictures a second
 * @param clips its pieces, each beginning where the one before ends
 * @param covers the author's pictures that are laid over them, in order and apart from each other
 */
public record FilmPlan(FrameRate rate, List<FilmClip> clips, List<PlacedCover> covers) {
    /** Copies the lists. */
    public FilmPlan {
        clips = List.copyOf(clips);
        covers = List.copyOf(covers);
    }

    /** One that nothing is laid over. */
    public FilmPlan(FrameRate rate, List<FilmClip> clips) {
        this(rate, clips, List.of());
    }

    /** The same with pictures laid over it. */
    public FilmPlan covered(List<PlacedCover> pictures) {
        return new FilmPlan(rate, clips, pictures);
    }

    /** How many pictures it has. */
    public long frames() {
        return clips.isEmpty() ? 0 : clips.get(clips.size() - 1).end();
    }

    /** How long it is. */
    public StreamTime length() {
        return rate.length(frames());
    }

    /** How many places there are where two pieces of the reading meet; where only the camera changes there is none. */
    public int joins() {
        return (int) IntStream.range(1, clips.size())
                .filter(i -> clips.get(i - 1).used() && clips.get(i).used())
                .filter(i -> !clips.get(i - 1).goesOnIn(clips.get(i)))
                .count();
    }

    /** The files that it is seen and heard from, each once. */
    public List<Path> files() {
        Stream<Path> heard =
                clips.stream().flatMap(clip -> clip.heard().stream()).map(Heard::file);
        Stream<Path> shown = Stream.concat(
                clips.stream().flatMap(clip -> clip.shot().stream()).map(Shot::file),
                covers.stream().map(cover -> cover.shot().file()));
        return Stream.concat(heard, shown).distinct().toList();
    }

    /** The lines for which there is nothing to use. */
    public List<Integer> missing() {
        return clips.stream()
                .filter(clip -> !clip.used() && !clip.isTitle())
                .flatMap(clip ->
                        IntStream.rangeClosed(clip.firstLine(), clip.lastLine()).boxed())
                .toList();
    }

    /** The lines that are heard but not seen, as no camera was matched that shows them. */
    public List<Integer> unseen() {
        return clips.stream()
                .filter(clip -> clip.used() && clip.shot().isEmpty())
                .flatMap(clip ->
                        IntStream.rangeClosed(clip.firstLine(), clip.lastLine()).boxed())
                .distinct()
                .toList();
    }

    /**
     * A short text that is equal for equal films: for plans that say the same about a lesson whose lines read the same. It holds
     * within one version of the program.
     */
    public String fingerprint(Script lesson) {
        // A record's text has all its values.
        return Fingerprint.of(this + "\0" + lesson.title() + "\0" + lesson.elements());
    }

    /** The first tick of the film that shows a picture. */
    public long tickOf(long frame) {
        return rate.ticksAt(frame);
    }
}
