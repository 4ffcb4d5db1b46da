package org.bookholder.app.film;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.function.Function;
import org.bookholder.film.format.FilmFormat;
import org.bookholder.film.plan.PlacedCover;
import org.bookholder.follow.model.Attempt;
import org.bookholder.handoff.JsonNumbers;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.FilmChoices;
import org.bookholder.session.Take;
import org.bookholder.wording.Labels;

/** What becomes of a lesson's lines in its film, for the page. Times are seconds, of the session's audio unless it says otherwise. */
public final class FilmBoardJson {
    private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

    private FilmBoardJson() {}

    /**
     * The board.
     *
     * @param address the address of a session's own page
     */
    public static ObjectNode of(FilmBoard board, Function<Path, String> address) {
        FilmPlanning planning = board.planning();
        ObjectNode root = JSON.objectNode();
        root.put("title", planning.lesson().title());
        root.set("seconds", JsonNumbers.seconds(planning.plan().length()));
        root.put("joins", planning.plan().joins());
        root.put("filmed", planning.filmed());
        root.put("closest", planning.closest());
        root.put("format", format(planning.goesOut()));
        root.put("sound", FilmText.soundSources(planning.plan()));
        heard(root.putArray("heard"), planning);
        ArrayNode missing = root.putArray("missing");
        planning.plan().missing().forEach(missing::add);
        ArrayNode remarks = root.putArray("remarks");
        planning.remarks().forEach(remarks::add);
        ArrayNode obstacles = root.putArray("obstacles");
        for (FilmObstacle obstacle : planning.obstacles()) {
            ProblemException problem = obstacle.problem(FilmObstacle.Told.PAGE);
            obstacles.addObject().put("what", problem.named()).put("remedy", problem.remedy());
        }
        ArrayNode sessions = root.putArray("sessions");
        for (FilmBoard.Source source : board.sessions()) {
            ObjectNode session = sessions.addObject().put("address", address.apply(source.folder()));
            ArrayNode takes = session.putArray("takes");
            for (Take take : source.state().takes().all()) {
                ObjectNode node = takes.addObject().put("number", take.number());
                node.set("start", JsonNumbers.seconds(take.start()));
                node.set("end", JsonNumbers.seconds(take.end()));
            }
        }
        covers(root.putArray("covers"), planning);
        ArrayNode lines = root.putArray("lines");
        board.lines().forEach(line -> lines.add(line(line)));
        Path last = board.last();
        DraftShelf shelf = DraftShelf.of(last, board.lesson());
        String now = planning.plan().fingerprint(planning.lesson());
        shelf.newest()
                .ifPresent(draft -> root.putObject("draft")
                        .put("address", address.apply(last) + FilmPlace.FOLDER + "/" + draft.served())
                        .put("fresh", draft.madeFrom().equals(now)));
        return root;
    }

    private static void heard(ArrayNode heard, FilmPlanning planning) {
        for (HeardTake take : planning.heard()) {
            heard.addObject()
                    .put("session", take.session())
                    .put("take", take.take())
                    .put("file", String.valueOf(take.file().getFileName()))
                    .put("said", take.said());
        }
    }

    private static void covers(ArrayNode covers, FilmPlanning planning) {
        for (PlacedCover cover : planning.plan().covers()) {
            ObjectNode node = covers.addObject();
            node.put("text", cover.cover().text());
            node.put("file", cover.cover().file());
            node.put("line", cover.cover().line());
            node.set("film", JsonNumbers.seconds(planning.plan().rate().length(cover.from())));
            node.set("seconds", JsonNumbers.seconds(planning.plan().rate().length(cover.to() - cover.from())));
        }
    }

    /**
     * The beginning of a draft that is being made, if there is one.
     *
     * @param last the last session of the film
     * @param lesson whether the film is of a lesson, and not of that session alone
     */
    public static ObjectNode beginning(Path last, boolean lesson, Function<Path, String> address) {
        ObjectNode root = JSON.objectNode();
        DraftShelf.of(last, lesson)
                .beginning()
                .ifPresent(begun -> root.put("begun", address.apply(last) + FilmPlace.FOLDER + "/" + begun.served()));
        return root;
    }

    /** Whether the cameras' pictures are large enough to frame closer. */
    public static boolean canBeCloser(FilmBoard board) {
        return board.planning().closest() > 100;
    }

    private static String format(FilmFormat format) {
        return format.width() + " × " + format.height() + ", " + format.rate().label() + " pictures a second, "
                + format.picture().label();
    }

    private static ObjectNode line(FilmBoard.Line line) {
        ObjectNode node = JSON.objectNode();
        node.put("line", line.number());
        node.put("text", line.text());
        node.put("session", line.session());
        node.put("out", line.out());
        node.put("listen", line.listen());
        ArrayNode attempts = node.putArray("attempts");
        for (Attempt attempt : line.tried()) {
            ObjectNode each = attempts.addObject();
            each.put("take", attempt.take())
                    .put("ordinal", attempt.ordinal())
                    .put("outcome", Labels.of(attempt.outcome()));
            each.set("start", JsonNumbers.seconds(attempt.start()));
            each.set("end", JsonNumbers.seconds(attempt.end()));
        }
        FilmChoices choices = line.choices();
        node.put("framing", choices.framing().name());
        node.put("pauseSet", choices.pause());
        ArrayNode cameras = node.putArray("cameras");
        line.cameras().forEach(cameras::add);
        ArrayNode sounds = node.putArray("sounds");
        line.sounds().forEach(sounds::add);
        line.used().ifPresent(used -> {
            node.put(
                    "moved",
                    choices.inOf(used.attempt()).isPresent()
                            || choices.outOf(used.attempt()).isPresent());
            node.set("used", used(used));
        });
        return node;
    }

    private static ObjectNode used(FilmBoard.Used used) {
        ObjectNode node = JSON.objectNode();
        node.put("take", used.attempt().take());
        node.put("ordinal", used.attempt().ordinal());
        node.set("start", JsonNumbers.seconds(used.attempt().start()));
        node.set("end", JsonNumbers.seconds(used.attempt().end()));
        node.set("in", JsonNumbers.seconds(used.in()));
        node.set("out", JsonNumbers.seconds(used.out()));
        node.set("film", JsonNumbers.seconds(used.film()));
        node.put("scale", used.scale());
        node.put("join", used.join());
        node.put("seen", used.camera().isPresent());
        node.put("sound", used.sound());
        used.camera().ifPresent(camera -> node.put("camera", camera));
        ObjectNode point = node.putObject("point");
        point.put("across", used.point().across()).put("down", used.point().down());
        used.pause().ifPresent(pause -> node.set("pause", JsonNumbers.seconds(pause)));
        return node;
    }
}
