package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import org.bookholder.app.course.CourseOverview;
import org.bookholder.app.course.CoursePapers;
import org.bookholder.app.course.LessonVersions;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.CourseFile;
import org.bookholder.course.Lesson;
import org.bookholder.course.offer.CourseSummary;
import org.bookholder.course.offer.SummaryText;
import org.bookholder.course.page.HistoryPage;
import org.bookholder.course.page.QuotationPage;
import org.bookholder.course.page.SummaryPage;
import org.bookholder.problem.ProblemException;

/** What can be printed of the course that the page shows: summary, quotation, and a lesson's versions. Safe for several threads. */
final class PapersRoom {
    private static final String QUOTATION = "quotation/";

    private final Environment here;
    private final HomeCourses courses;

    PapersRoom(Environment here, HomeCourses courses) {
        this.here = here;
        this.courses = courses;
    }

    /**
     * Answers what the page asks: with a sheet and what can be filled in for it.
     *
     * @throws ProblemException why it can't be done; nothing is written then
     */
    synchronized ObjectNode answer(JsonNode asked) throws ProblemException {
        CourseOverview course = courses.overview("papers");
        CoursePapers papers = new CoursePapers(here, course);
        CourseFile file = new CourseFile(course.status().course().folder());
        return switch (asked.path("do").asText()) {
            case "summary" -> summary(papers, asked.path("words").asText());
            case "quotation" -> quotation(papers, file);
            case "set" -> {
                set(file, asked);
                yield quotation(papers, file);
            }
            case "versions" -> versions(course, asked.path("lesson").asText());
            default -> throw new ProblemException("there is no such action", "papers", "load the page again");
        };
    }

    private static ObjectNode summary(CoursePapers papers, String words) {
        CourseSummary summary = papers.summary();
        return sheet(SummaryPage.fragment(summary, words))
                .put("text", String.join("\n", SummaryText.of(summary, words)));
    }

    private static ObjectNode quotation(CoursePapers papers, CourseFile file) throws ProblemException {
        ObjectNode json = sheet(QuotationPage.fragment(papers.title(), papers.today(), papers.quotation()));
        ArrayNode fields = json.putArray("fields");
        file.fields().stream()
                .filter(field -> field.path().startsWith(QUOTATION))
                .forEach(field -> fields.add(PlanRoom.field(field)));
        return json;
    }

    private static void set(CourseFile file, JsonNode asked) throws ProblemException {
        String path = asked.path("path").asText();
        if (!path.startsWith(QUOTATION)) {
            throw new ProblemException("there is no such setting", path, "choose another one");
        }
        file.set(path, asked.path("value").asText());
    }

    private ObjectNode versions(CourseOverview course, String name) throws ProblemException {
        List<Lesson> lessons = course.status().course().lessons();
        Lesson lesson = lessons.stream()
                .filter(one -> one.name().equals(name))
                .findFirst()
                .orElse(lessons.get(0));
        ObjectNode json = sheet(HistoryPage.fragment(
                LessonVersions.of(
                        here,
                        course.status().course(),
                        lesson,
                        course.sessions().getOrDefault(lesson, List.of())),
                here.zone()));
        json.put("lesson", lesson.name());
        ArrayNode choices = json.putArray("lessons");
        lessons.forEach(one -> choices.addArray().add(one.name()).add(one.number() + " \u00b7 " + one.title()));
        return json;
    }

    private static ObjectNode sheet(String markup) {
        return JsonNodeFactory.instance.objectNode().put("sheet", markup);
    }
}
