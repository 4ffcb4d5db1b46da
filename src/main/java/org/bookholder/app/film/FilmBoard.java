package org.bookholder.app.film;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.bookholder.app.course.LessonPlace;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.session.LessonLines;
import org.bookholder.app.session.StoredSession;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.Shot;
import org.bookholder.film.plan.Track;
import org.bookholder.follow.model.Attempt;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.session.FilmChoices;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.timing.StreamTime;

/**
 * A lesson's lines with what becomes of each in its film.
 *
 * @param planning the film
 * @param lesson whether it is of a lesson, and not of one of its sessions alone
 * @param sessions the sessions that it is made of, the oldest first
 * @param lines its lines, in order
 */
public record FilmBoard(FilmPlanning planning, boolean lesson, List<Source> sessions, List<Line> lines) {
    /** A session of the film. */
    public record Source(Path folder, SessionState state) {}

    /**
     * What becomes of a line.
     *
     * @param number its number in the lesson, from 1
     * @param text its text
     * @param session where it is taken from, or decided about, by its place in the list of sessions; -1 if no session has it
     * @param own its number there, 0 if no session has it
     * @param out whether it is left out on purpose
     * @param listen what was heard that is not in the script, or why someone marked it; empty if it was read clean
     * @param used its place in the film; empty if there is nothing to use, or it is left out
     * @param tried its attempts in that session
     * @param choices what was decided about it
     * @param cameras the names of the files of all cameras that show its place in the take, the one to prefer first
     * @param sounds the names of all that it can be heard from, likewise
     */
    public record Line(
            int number,
            String text,
            int session,
            int own,
            boolean out,
            String listen,
            Optional<Used> used,
            List<Attempt> tried,
            FilmChoices choices,
            List<String> cameras,
            List<String> sounds) {}

    /**
     * The place of a line in the film.
     *
     * @param attempt the attempt that is used
     * @param in where it begins in the session's audio
     * @param out where it ends there
     * @param film where it begins in the film
     * @param scale how close it is framed, in per cent of the picture as shot
     * @param join whether something was cut out before it, or the framing changes there
     * @param pause the quiet before it; empty for the first line and behind a card
     * @param camera the name of the file of the camera that shows it; empty if none does
     * @param point what stays in place in its picture when it is framed closer
     * @param sound the name of the file that it is heard from; empty if there is none
     */
    public record Used(
            Attempt attempt,
            StreamTime in,
            StreamTime out,
            StreamTime film,
            int scale,
            boolean join,
            Optional<StreamTime> pause,
            Optional<String> camera,
            FilmChoices.Point point,
            String sound) {}

    /** Copies the lists. */
    public FilmBoard {
        sessions = List.copyOf(sessions);
        lines = List.copyOf(lines);
    }

    /** The folder of the last session, where drafts lie. */
    public Path last() {
        return sessions.get(sessions.size() - 1).folder();
    }

    /**
     * Works out what becomes of each line.
     *
     * @throws ProblemException if a session cannot be read, or no film of it can be planned
     */
    public static FilmBoard of(Environment here, FilmRequest request) throws ProblemException {
        LessonPlace place = LessonPlace.of(request.place(), here);
        List<StoredSession> open = new ArrayList<>();
        try {
            for (Path session : place.sessions()) {
                open.add(StoredSession.open(here, session));
            }
            List<Source> sessions = open.stream()
                    .map(kept -> new Source(kept.folder().path(), kept.state()))
                    .toList();
            FilmPlanning planning = FilmPlanning.of(here, request, place, open, Set.of(), Interruption.NONE);
            return new FilmBoard(planning, place.lesson().isPresent(), sessions, lines(planning, sessions));
        } finally {
            open.forEach(StoredSession::close);
        }
    }

    private static List<Line> lines(FilmPlanning planning, List<Source> sessions) {
        Map<Integer, FilmDecisions.Home> homes = FilmDecisions.homes(
                planning.lesson(), sessions.stream().map(Source::state).toList());
        List<Line> lines = new ArrayList<>();
        Optional<StreamTime> before = Optional.empty();
        for (ScriptLine line : planning.lesson().lines()) {
            int number = line.number();
            Optional<Place> place = place(planning, number);
            Optional<FilmDecisions.Home> home = place.map(p -> new FilmDecisions.Home(
                            p.clip().session(), own(planning, sessions, p.clip().session(), number)))
                    .or(() -> Optional.ofNullable(homes.get(number)));
            Optional<Used> used = Optional.empty();
            if (place.isPresent()) {
                used = Optional.of(used(planning, place.get(), before));
                FilmClip clip = place.get().clip();
                before =
                        Optional.of(inFilm(planning, clip, place.get().attempt().end()));
            } else if (!planning.leftOut().contains(number)) {
                // A card stands there, and no quiet.
                before = Optional.empty();
            }
            lines.add(line(planning, sessions, line, home, used));
        }
        return lines;
    }

    private static Line line(
            FilmPlanning planning,
            List<Source> sessions,
            ScriptLine line,
            Optional<FilmDecisions.Home> home,
            Optional<Used> used) {
        int number = line.number();
        String listen = planning.marked().stream()
                .filter(mark -> mark.line() == number)
                .map(LessonCut.Mark::why)
                .findFirst()
                .orElse("");
        Optional<SessionState> state = home.map(h -> sessions.get(h.session()).state());
        Optional<LineNotes> notes =
                state.map(s -> s.lines().notes(home.orElseThrow().line()));
        return new Line(
                number,
                line.text(),
                home.map(FilmDecisions.Home::session).orElse(-1),
                home.map(FilmDecisions.Home::line).orElse(0),
                planning.leftOut().contains(number),
                listen,
                used,
                notes.map(LineNotes::attempts).orElse(List.of()),
                state.map(s -> s.remarks().film(home.orElseThrow().line())).orElse(FilmChoices.NONE),
                used.map(u -> cameras(planning, home.orElseThrow().session(), u))
                        .orElse(List.of()),
                used.map(u -> sounds(planning, home.orElseThrow().session(), u)).orElse(List.of()));
    }

    private static List<String> cameras(FilmPlanning planning, int session, Used used) {
        return planning.sources().get(session).cameras().stream()
                .filter(camera -> camera.placement().holds(used.attempt().take(), used.in()))
                .map(camera -> camera.footage().name())
                .distinct()
                .toList();
    }

    private static List<String> sounds(FilmPlanning planning, int session, Used used) {
        return planning.sources().get(session).tracks().stream()
                .filter(track -> track.placement().holds(used.attempt().take(), used.in()))
                .sorted(Comparator.comparing(Track::kind))
                .map(track -> FilmFootage.name(track.file(), track.kind()))
                .distinct()
                .toList();
    }

    private static String name(Path file) {
        return String.valueOf(file.getFileName());
    }

    private static int own(FilmPlanning planning, List<Source> sessions, int session, int number) {
        return LessonLines.numbers(sessions.get(session).state().script(), planning.lesson()).entrySet().stream()
                .filter(entry -> entry.getValue() == number)
                .map(Map.Entry::getKey)
                .findFirst()
                .orElse(0);
    }

    /** An attempt in a clip. */
    private record Place(FilmClip clip, int index, boolean first) {
        Attempt attempt() {
            return clip.attempts().get(index);
        }
    }

    private static Optional<Place> place(FilmPlanning planning, int number) {
        List<FilmClip> clips = planning.plan().clips();
        for (int i = 0; i < clips.size(); i++) {
            List<Attempt> attempts = clips.get(i).attempts();
            for (int k = 0; k < attempts.size() && clips.get(i).used(); k++) {
                if (attempts.get(k).line() == number) {
                    return Optional.of(new Place(
                            clips.get(i), k, i == 0 || clips.get(i - 1).isTitle()));
                }
            }
        }
        return Optional.empty();
    }

    private static Used used(FilmPlanning planning, Place place, Optional<StreamTime> before) {
        FilmClip clip = place.clip();
        Attempt attempt = place.attempt();
        StreamTime in = clip.begin(place.index());
        StreamTime out = clip.end(place.index());
        StreamTime voice = inFilm(planning, clip, attempt.start());
        return new Used(
                attempt,
                in,
                out,
                inFilm(planning, clip, in),
                clip.shot().map(shot -> shot.scale()).orElse(100),
                place.index() == 0 && !place.first(),
                before.map(end -> voice.since(end)),
                clip.shot().map(shot -> name(shot.file())),
                clip.shot().map(Shot::point).orElse(FilmChoices.Point.EYES),
                clip.heard()
                        .map(heard -> FilmFootage.name(heard.file(), heard.kind()))
                        .orElse(""));
    }

    private static StreamTime inFilm(FilmPlanning planning, FilmClip clip, StreamTime time) {
        return new StreamTime(planning.plan().tickOf(clip.start())).plus(time.since(clip.in()));
    }
}
