package org.bookholder.app.work;

import com.fasterxml.jackson.databind.JsonNode;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.app.course.LessonPlace;
import org.bookholder.app.handoff.HandOffChoices;
import org.bookholder.app.handoff.HandOffRequest;
import org.bookholder.app.handoff.HandOffService;
import org.bookholder.app.jobs.Job;
import org.bookholder.app.jobs.JobControl;
import org.bookholder.app.jobs.JobResult;
import org.bookholder.app.jobs.JobResult.Link;
import org.bookholder.app.jobs.JobResult.Row;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.FrameRate;

/**
 * The files for the editor.
 *
 * @param place where it is done
 */
record HandOffWork(WorkPlace place) implements WorkList.Maker {
    private static final String FORM = "the form";

    @Override
    public Job job(WorkRequest request) throws ProblemException {
        Path session = request.path("session", "a session or a lesson");
        HandOffRequest choices = choices(request);
        return new Job(
                "handoff",
                "Hand-off",
                Names.of(session),
                true,
                "no file of the hand-off was written or changed",
                control -> {
                    LessonPlace sessions = LessonPlace.of(session, place.here());
                    for (Path each : sessions.sessions()) {
                        place.settle(each, control);
                    }
                    return write(sessions, choices, control);
                });
    }

    /** What a form holds; a hand-off that says nothing of it is the usual one. */
    HandOffRequest choices(WorkRequest request) throws ProblemException {
        List<HandOffPart> all = place.here().equipment().handOffParts();
        List<String> names = new ArrayList<>();
        for (JsonNode name : request.form().path("parts")) {
            names.add(name.asText());
        }
        int[] size = HandOffChoices.size(request.text("size").orElse("1920x1080"), FORM);
        return new HandOffRequest(
                request.optionalPath("out"),
                names.isEmpty() ? all : HandOffChoices.parts(all, names, FORM),
                !names.isEmpty() && names.size() < all.size(),
                rate(request),
                request.text("drop").map("yes"::equals),
                request.on("misread"),
                size[0],
                size[1],
                request.on("replace"));
    }

    private static Optional<FrameRate> rate(WorkRequest request) throws ProblemException {
        Optional<String> rate = request.text("rate");
        return rate.isEmpty() ? Optional.empty() : Optional.of(HandOffChoices.rate(rate.get(), FORM));
    }

    JobResult write(LessonPlace sessions, HandOffRequest choices, JobControl control) throws ProblemException {
        HandOffService.Written written = sessions.handOff(new HandOffService(place.here(), choices, control.stop()));
        List<Row> rows = new ArrayList<>();
        written.remarks().forEach(remark -> rows.add(Row.warning(remark)));
        sessions.leftOut(place.here()).forEach(note -> rows.add(Row.warning(note)));
        written.notes().forEach(note -> rows.add(Row.line(note)));
        rows.add(Row.line("Files: " + written.folder()));
        Path last = sessions.sessions().get(sessions.sessions().size() - 1);
        List<Link> links = new ArrayList<>(place.link(last, "Hear and decide"));
        links.add(new Link("Open the folder", written.folder().toString(), Link.Kind.FOLDER));
        if (choices.out().isEmpty() && sessions.lesson().isEmpty()) {
            place.address()
                    .apply(last)
                    .ifPresent(address -> written.files()
                            .forEach(file ->
                                    links.add(new Link(Names.of(file), address + query(file), Link.Kind.FILE))));
        }
        return new JobResult("Cut: " + written.summary(), rows, links);
    }

    private static String query(Path file) {
        return "handoff?name="
                + URLEncoder.encode(Names.of(file), StandardCharsets.UTF_8).replace("+", "%20");
    }
}
