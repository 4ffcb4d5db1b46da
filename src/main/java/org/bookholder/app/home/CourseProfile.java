package org.bookholder.app.home;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.util.Optional;
import org.bookholder.app.delivery.DeliveryProfiles;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.Course;
import org.bookholder.course.CourseFile;
import org.bookholder.delivery.Profile;
import org.bookholder.delivery.ProfileForm;
import org.bookholder.files.Access;
import org.bookholder.problem.ProblemException;
import org.bookholder.settings.Form;

/** The delivery profile of the course that the page shows, if it has one of its own. */
final class CourseProfile {
    private static final String NAME = "delivery.txt";

    private final Environment here;
    private final HomeCourses courses;

    CourseProfile(Environment here, HomeCourses courses) {
        this.here = here;
        this.courses = courses;
    }

    private Optional<Path> path() {
        return courses.seen().overview().flatMap(course -> {
            Course read = course.status().course();
            return read.delivery();
        });
    }

    /** Adds its settings to what the page is told; none if the course has no profile. */
    void put(ObjectNode json) {
        Optional<Path> file = path();
        if (file.isEmpty()) {
            return;
        }
        ArrayNode fields = json.putArray("profile");
        try {
            Profile profile = DeliveryProfiles.read(file.get(), here);
            for (Form.Field<?> field : ProfileForm.FORM.fields()) {
                fields.addObject()
                        .put("name", field.name())
                        .put("meaning", field.meaning())
                        .put("value", ProfileForm.value(profile, field.name()));
            }
        } catch (ProblemException e) {
            json.put("profileTrouble", e.getMessage());
        }
    }

    /**
     * Gives the course a profile of its own, which begins as the owner's.
     *
     * @throws ProblemException if it can't be written, or a file of its name is there already
     */
    void make(CourseFile course) throws ProblemException {
        Path file = course.folder().resolve(NAME);
        DeliveryProfiles.begin(file, DeliveryProfiles.usual(here), Access.SYSTEM_DEFAULT);
        course.set("delivery", NAME);
    }

    /**
     * Changes one of its settings; an empty one is not checked any more.
     *
     * @throws ProblemException if the value is not understood, or the course has no profile; nothing is written then
     */
    void set(String name, String value) throws ProblemException {
        Path file = path().orElseThrow(
                        () -> new ProblemException("this course has no profile of its own", name, "make one first"));
        DeliveryProfiles.set(file, name, value);
    }
}
