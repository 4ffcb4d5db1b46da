package org.bookholder.app.course;

import java.time.LocalDate;
import java.util.List;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.QuotationTerms;
import org.bookholder.course.offer.CourseSummary;
import org.bookholder.course.offer.Quotation;
import org.bookholder.problem.ProblemException;

/**
 * What can be handed to others about a course: a summary and a quotation. Nothing of it leaves the machine by itself.
 *
 * @param here the machine
 * @param course the course as it was seen
 */
public record CoursePapers(Environment here, CourseOverview course) {
    /** How far the course is, for a client or partner. */
    public CourseSummary summary() {
        return CourseSummary.of(course.status().board(), here.zone());
    }

    /**
     * Hours and a price for making the course.
     *
     * @throws ProblemException if what is written for it in the course's file can't be read
     */
    public Quotation quotation() throws ProblemException {
        CourseStatus status = course.status();
        return Quotation.of(
                status.board(),
                status.works(),
                status.plan(),
                course.sessions().values().stream().flatMap(List::stream).toList(),
                QuotationTerms.read(status.course().folder()),
                here.zone());
    }

    /** The course's title. */
    public String title() {
        return course.status().course().title();
    }

    /** The day on which they are made. */
    public LocalDate today() {
        return here.today();
    }
}
