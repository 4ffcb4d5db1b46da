package org.bookholder.app.delivery;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.session.LessonLines;
import org.bookholder.app.session.ScriptFile;
import org.bookholder.course.RecordedSession;
import org.bookholder.delivery.ComparedSound;
import org.bookholder.delivery.Finding;
import org.bookholder.delivery.TakeCheck;
import org.bookholder.follow.model.Attempt;
import org.bookholder.footage.SharedSound;
import org.bookholder.footage.SharedStretch;
import org.bookholder.footage.SoundTrack;
import org.bookholder.footage.StoredTrack;
import org.bookholder.footage.ffmpeg.FootageSound;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.TakeFile;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.session.Take;
import org.bookholder.timing.StreamTime;

/**
 * Compares a film that was followed with the takes that it was cut from, as far as they are found. Confined to one thread; what it keeps
 * in temporary files is deleted on close.
 */
final class TakeComparison implements AutoCloseable {
    private final Path film;
    private final Interruption stop;
    private final List<RecordedSession> sessions;
    private final List<Map<Integer, List<LineNotes>>> lines = new ArrayList<>();
    private final Map<Path, Optional<StoredTrack>> takes = new HashMap<>();

    private TakeComparison(Path film, List<RecordedSession> sessions, ScriptFile lesson, Interruption stop) {
        this.film = film;
        this.sessions = sessions;
        this.stop = stop;
        for (RecordedSession session : sessions) {
            Map<Integer, List<LineNotes>> notes = new HashMap<>();
            LessonLines.numbers(session.state().script(), lesson.script())
                    .forEach((own, number) -> notes.computeIfAbsent(number, none -> new ArrayList<>())
                            .add(session.state().lines().notes(own)));
            lines.add(notes);
        }
    }

    /**
     * What came of it.
     *
     * @param findings what only the film has, by its own time
     */
    record Result(List<Finding> findings, ComparedSound compared) {}

    /**
     * Compares them.
     *
     * @param followed what was heard in the film, from its first picture on
     * @param suspected where its sound may drop out by its own time, unless the take does so, too
     * @throws ProblemException if the film's sound cannot be read, or there is no room for a copy of it; a take of which that is true is left
     *     out
     */
    static Result of(ExportJob job, SessionState followed, List<Finding.Place> suspected, Interruption stop)
            throws ProblemException {
        ScriptFile lesson = job.lesson().orElseThrow();
        if (job.sessions().isEmpty()) {
            return new Result(List.of(), ComparedSound.NOT_COMPARED);
        }
        try (TakeComparison comparison = new TakeComparison(job.film(), job.sessions(), lesson, stop)) {
            return comparison.compared(followed, suspected);
        }
    }

    private Result compared(SessionState followed, List<Finding.Place> suspected) throws ProblemException {
        FootageSound opened = FootageSound.openVoice(film, SoundTrack.RATE);
        StreamTime begins = opened.begins();
        try (StoredTrack sound = stored(opened)) {
            SharedSound shared = new SharedSound(stop.over(sound));
            List<SharedStretch> stretches = new ArrayList<>();
            StreamTime read = StreamTime.ZERO;
            for (Attempt attempt : read(followed)) {
                read = read.plus(attempt.end().since(attempt.start()));
                stretches.addAll(shared.stretches(
                        attempt.start().ticks() / SoundTrack.TICKS,
                        attempt.end().ticks() / SoundTrack.TICKS,
                        candidates(attempt.line())));
            }
            long alike = stretches.stream().mapToLong(SharedStretch::length).sum();
            return new Result(
                    new TakeCheck(sound, begins, stretches).of(suspected),
                    new ComparedSound(sessions.size(), StreamTime.ofSamples(alike, SoundTrack.RATE), read));
        }
    }

    private static List<Attempt> read(SessionState followed) {
        return followed.lines().all().stream()
                .flatMap(notes -> notes.attempts().stream())
                .sorted(Comparator.comparing(Attempt::start))
                .toList();
    }

    /** Every reading of a line, the one that was found best in each session first. */
    private List<SharedSound.Candidate> candidates(int line) {
        List<SharedSound.Candidate> all = new ArrayList<>();
        for (int i = 0; i < sessions.size(); i++) {
            for (LineNotes notes : lines.get(i).getOrDefault(line, List.of())) {
                for (Attempt attempt : Stream.concat(notes.best().stream(), notes.attempts().stream())
                        .distinct()
                        .toList()) {
                    candidate(i, attempt).ifPresent(all::add);
                }
            }
        }
        return all;
    }

    private Optional<SharedSound.Candidate> candidate(int session, Attempt attempt) {
        RecordedSession recorded = sessions.get(session);
        Optional<Take> take = recorded.state().takes().number(attempt.take());
        return take.flatMap(known -> sound(recorded.folder(), known.number())
                .map(sound -> new SharedSound.Candidate(
                        sound, attempt.start().since(known.start()).ticks() / SoundTrack.TICKS)));
    }

    /** A take's sound; empty if its file is gone or cannot be read. */
    private Optional<StoredTrack> sound(Path session, int take) {
        return takes.computeIfAbsent(session.resolve(Integer.toString(take)), key -> {
            try (SessionFolder folder = SessionFolder.openForReading(session)) {
                Path file = folder.takeFile(take);
                return TakeFile.holdsSound(file)
                        ? Optional.of(stored(FootageSound.open(file, SoundTrack.RATE)))
                        : Optional.empty();
            } catch (ProblemException e) {
                return Optional.empty();
            }
        });
    }

    private StoredTrack stored(FootageSound opened) throws ProblemException {
        try (FootageSound sound = opened) {
            return StoredTrack.of(() -> {
                stop.check();
                return sound.read();
            });
        }
    }

    @Override
    public void close() {
        takes.values().forEach(take -> take.ifPresent(StoredTrack::close));
    }
}
