package org.bookholder.app.handoff;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntFunction;
import org.bookholder.app.session.ChosenReadings;
import org.bookholder.app.session.LessonLines;
import org.bookholder.app.session.SessionSources;
import org.bookholder.app.session.StoredSession;
import org.bookholder.cutlist.CutRules;
import org.bookholder.cutlist.TakeSound;
import org.bookholder.cutlist.TakeSources;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.footage.Placement;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.Script;
import org.bookholder.session.JoinedPart;
import org.bookholder.session.JoinedSessions;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.Take;
import org.bookholder.speech.AudioBlock;
import org.bookholder.timing.StreamTime;

/**
 * What is handed off: a session, or all sessions of a lesson joined to one.
 *
 * @param state the state of the session
 * @param events the events it was derived from, in order; none of joined ones
 * @param sound its recordings
 * @param files the file of each take
 * @param silent the takes without a recording that can be read, in order
 * @param rolling whether a take is running
 * @param footage the matched files of cameras and recorders
 * @param sources which of them are used for each take
 * @param passedOver lines that were read just as well in a later session, with which no camera's file was matched
 * @param parts the sessions of a lesson, the oldest first; none if it is one session alone
 */
record HandOffSource(
        SessionState state,
        List<SessionEvent> events,
        TakeSound sound,
        IntFunction<Path> files,
        List<Integer> silent,
        boolean rolling,
        List<PlacedFootage> footage,
        List<TakeSources> sources,
        List<Integer> passedOver,
        List<Part> parts) {
    /** One session, as it was read. */
    static HandOffSource of(StoredSession kept) throws ProblemException {
        SessionSources sources = SessionSources.of(kept);
        return new HandOffSource(
                kept.state(),
                kept.events(),
                kept.sound(),
                take -> kept.folder().takeFile(take),
                kept.silent(),
                kept.state().takes().rolling(),
                sources.footage(),
                sources.takes(),
                List.of(),
                List.of());
    }

    /**
     * All sessions of a lesson.
     *
     * @param lesson the lesson; a session's lines count as its lines where they have the same text
     * @param sessions its sessions, the oldest first, at least one
     */
    static HandOffSource of(Script lesson, List<StoredSession> sessions, CutRules rules) throws ProblemException {
        List<List<PlacedFootage>> footage = new ArrayList<>();
        List<List<TakeSources>> sources = new ArrayList<>();
        List<ChosenReadings.Reading> readings = new ArrayList<>();
        for (StoredSession kept : sessions) {
            SessionSources own = SessionSources.of(kept);
            List<PlacedFootage> placed = own.footage();
            footage.add(placed);
            sources.add(own.takes());
            readings.add(new ChosenReadings.Reading(
                    kept.state(),
                    LessonLines.numbers(kept.state().script(), lesson),
                    placed.stream().anyMatch(p -> p.footage().picture().isPresent())));
        }
        ChosenReadings chosen = ChosenReadings.of(readings, rules);
        JoinedSessions joined = JoinedSessions.of(
                lesson,
                readings.stream().map(ChosenReadings.Reading::state).toList(),
                readings.stream().map(ChosenReadings.Reading::numbers).toList(),
                chosen.sessions());
        List<Part> parts = new ArrayList<>();
        List<Integer> silent = new ArrayList<>();
        for (int i = 0; i < sessions.size(); i++) {
            Part part = new Part(sessions.get(i), joined.parts().get(i));
            parts.add(part);
            part.kept().silent().forEach(take -> silent.add(part.joined().take(take)));
        }
        return new HandOffSource(
                joined.state(),
                List.of(),
                (take, from, to) -> part(parts, take).read(take, from, to),
                take -> part(parts, take).file(take),
                silent,
                sessions.stream().anyMatch(kept -> kept.state().takes().rolling()),
                joined(joined.parts(), footage),
                numbered(joined, sources),
                chosen.passedOver(),
                parts);
    }

    /**
     * A session of a lesson.
     *
     * @param kept the session as it was kept
     * @param joined what its takes are called in the hand-off
     */
    record Part(StoredSession kept, JoinedPart joined) {
        private Path file(int take) {
            return kept.folder().takeFile(joined.ownTake(take));
        }

        private Optional<AudioBlock> read(int take, StreamTime from, StreamTime to) throws ProblemException {
            return kept.sound()
                    .read(joined.ownTake(take), joined.ownTime(from), joined.ownTime(to))
                    .map(own -> new AudioBlock(joined.time(own.start()), own.rate(), own.samples()));
        }
    }

    private static Part part(List<Part> parts, int take) {
        return parts.stream()
                .filter(part -> part.joined().has(take))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("take (" + take + ") must be one of the sessions'"));
    }

    /** The sources of all takes by the numbers that these have in the hand-off. */
    private static List<TakeSources> numbered(JoinedSessions joined, List<List<TakeSources>> sources) {
        List<TakeSources> all = new ArrayList<>();
        for (int i = 0; i < sources.size(); i++) {
            JoinedPart part = joined.parts().get(i);
            for (TakeSources one : sources.get(i)) {
                Take take =
                        joined.state().takes().all().get(part.take(one.take().number()) - 1);
                all.add(new TakeSources(take, one.pictures(), one.sounds(), one.picture(), one.sound()));
            }
        }
        return all;
    }

    /** Whether any take has a recording that can be read. */
    boolean recorded() {
        return silent.size() < state.takes().count();
    }

    /** Each file once, with the takes of all sessions that lie in it. */
    private static List<PlacedFootage> joined(List<JoinedPart> parts, List<List<PlacedFootage>> footage) {
        Map<Path, Footage> files = new LinkedHashMap<>();
        Map<Path, List<Placement>> places = new LinkedHashMap<>();
        for (int i = 0; i < parts.size(); i++) {
            JoinedPart part = parts.get(i);
            for (PlacedFootage placed : footage.get(i)) {
                Path file = placed.footage().file().toAbsolutePath().normalize();
                files.putIfAbsent(file, placed.footage());
                placed.placements()
                        .forEach(own -> places.computeIfAbsent(file, none -> new ArrayList<>())
                                .add(moved(part, own)));
            }
        }
        return files.entrySet().stream()
                .map(file -> new PlacedFootage(file.getValue(), places.getOrDefault(file.getKey(), List.of())))
                .toList();
    }

    private static Placement moved(JoinedPart part, Placement own) {
        return new Placement(
                part.take(own.take()),
                part.time(own.takeStart()),
                own.start(),
                own.drift(),
                part.time(own.from()),
                part.time(own.to()),
                own.confidence());
    }
}
