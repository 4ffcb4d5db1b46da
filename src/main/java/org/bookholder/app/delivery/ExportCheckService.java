package org.bookholder.app.delivery;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.environment.Progress;
import org.bookholder.app.environment.ProgressMeter;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.course.ExportChecks;
import org.bookholder.delivery.CheckJson;
import org.bookholder.delivery.CheckReport;
import org.bookholder.delivery.CheckText;
import org.bookholder.delivery.FilmCheck;
import org.bookholder.delivery.Finding;
import org.bookholder.delivery.WordsCheck;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.footage.ffmpeg.FilmReader;
import org.bookholder.handoff.captions.FilmTexts;
import org.bookholder.handoff.captions.FollowedFilm;
import org.bookholder.handoff.captions.SpokenLine;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionState;
import org.bookholder.speech.Ears;
import org.bookholder.timing.StreamTime;

/** Checks one export: picture and sound on this thread, words on other threads at the same time. */
public final class ExportCheckService {
    /** Added to a film's name for the file with its result. */
    static final String ENDING = ".check.json";

    private static final long PERIOD_MILLIS = 100;

    private final Environment here;
    private final Consumer<Progress> listener;
    private final Interruption stop;

    /** Creates a check that reports its progress to {@code listener} and can be stopped. */
    public ExportCheckService(Environment here, Consumer<Progress> listener, Interruption stop) {
        this.here = here;
        this.listener = listener;
        this.stop = stop;
    }

    /** Checks a film. The ears are given if any film has a script. */
    public CheckReport check(ExportJob job, Optional<Ears> ears) throws ProblemException {
        return check(job, ears, texts -> {});
    }

    /**
     * Checks a film.
     *
     * @param ears given if any film has a script
     * @param heard takes what is said in the film, in the film's time; not called if the film is not followed, or no line of
     *     the script was heard
     */
    public CheckReport check(ExportJob job, Optional<Ears> ears, Consumer<FilmTexts> heard) throws ProblemException {
        Path film = job.film();
        Optional<ScriptFile> lesson = job.lesson();
        try (FilmReader reader = FilmReader.open(film)) {
            Instant modified = modified(film);
            boolean sounding = reader.film().sound().isPresent();
            double length = Math.max(1, reader.film().length().seconds());
            FilmCheck check = new FilmCheck(reader.film(), job.profile(), job.stills());
            List<Finding> words =
                    job.unread().map(WordsCheck::notChecked).stream().toList();
            ProgressMeter meter = new ProgressMeter(here.nanoTime(), listener);
            Optional<SessionState> followed = Optional.empty();
            String name = reader.film().name();
            if (lesson.isPresent() && sounding) {
                try (FilmFollower following = FilmFollower.start(here, film, lesson.get(), ears.orElseThrow())) {
                    while (reader.read(check)) {
                        step(meter, name, slower(reader, following) / length);
                    }
                    while (!following.await(PERIOD_MILLIS)) {
                        step(meter, name, slower(reader, following) / length);
                    }
                    followed = Optional.of(following.state());
                    words = WordsCheck.of(followed.get(), job.leftOut()).stream()
                            .map(finding -> finding.later(reader.begins()))
                            .toList();
                    pass(followed.get(), reader.film().length(), heard);
                }
            } else {
                while (reader.read(check)) {
                    step(meter, name, reader.reached().seconds() / length);
                }
            }
            FilmCheck.Result result = check.end(reader.pictureEnd(), reader.soundEnd(), reader.damaged());
            Optional<TakeComparison.Result> compared = followed.isEmpty()
                    ? Optional.empty()
                    : Optional.of(TakeComparison.of(job, followed.get(), result.suspected(), stop));
            return CheckReport.of(
                    result,
                    lesson.filter(l -> sounding).map(l -> l.script().source()),
                    compared.map(TakeComparison.Result::compared),
                    Stream.concat(compared.stream().flatMap(c -> c.findings().stream()), words.stream())
                            .toList(),
                    job.profile(),
                    modified,
                    here.clock().instant());
        }
    }

    private static void pass(SessionState followed, StreamTime length, Consumer<FilmTexts> heard) {
        List<SpokenLine> spoken = FollowedFilm.of(followed);
        if (spoken.stream().anyMatch(line -> line.line() > 0)) {
            heard.accept(new FilmTexts(followed.script(), spoken, length));
        }
    }

    private void step(ProgressMeter meter, String film, double part) {
        stop.check();
        meter.reached(film, part);
    }

    private static double slower(FilmReader reader, FilmFollower following) {
        return Math.min(reader.reached().seconds(), following.reached());
    }

    private static Instant modified(Path film) throws ProblemException {
        try {
            return Files.getLastModifiedTime(film).toInstant();
        } catch (IOException e) {
            throw new ProblemException("the file cannot be read", film.toString(), "check the disk it is on", e);
        }
    }

    /**
     * Saves the result beside the film, and in its course what must be fixed.
     *
     * @return why it could not be saved, one sentence; empty if it was
     */
    public static Optional<String> keep(ExportJob job, CheckReport report) {
        Path place = job.film().resolveSibling(job.film().getFileName() + ENDING);
        try {
            new AtomicFiles(Access.OWNER).write(place, CheckJson.of(report));
            if (job.course().isPresent()) {
                ExportChecks.keep(job.course().get().folder(), job.film(), report.checked(), CheckText.toMend(report));
            }
            return Optional.empty();
        } catch (IOException e) {
            return Optional.of(
                    place + ": the result could not be kept (" + e.getMessage() + "); it is shown here only");
        } catch (ProblemException e) {
            return Optional.of(e.getMessage());
        }
    }
}
