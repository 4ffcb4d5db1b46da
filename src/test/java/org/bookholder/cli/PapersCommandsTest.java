package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.course.CourseFolder;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Summary, quotation and versions from the command line; the made-up machine's clock stands at 2026-03-02. */
final class PapersCommandsTest {
    @TempDir
    private Path folder;

    private Program program;
    private CourseFolder files;
    private String course;
    private Path script;

    @BeforeEach
    void writeCourse() {
        program = new Program(folder);
        files = new CourseFolder(folder.resolve("wheels"));
        files.file("course.yaml", "title: Wheels\nquotation: {hour: 50, currency: EUR}\n");
        files.lesson("hub", "Every wheel begins with its hub.");
        script = files.file("rim.md", StoredExamples.script("The rim"));
        course = files.path().toString();
    }

    @Test
    void tellsHowFarTheCourseIs() {
        Path page = folder.resolve("summary.html");
        assertThat(program.run("summary", course, "--words", "Dear Ada,", "--page", page.toString()))
                .isZero();
        assertThat(program.out()).contains("Wheels", "Dear Ada,", "0 of 2 lessons are finished; 0 are recorded.");
        assertThat(page)
                .content()
                .contains("Dear Ada,", "2 March 2026", "</html>")
                .doesNotContain(course);
        assertThat(program.err()).isEmpty();
    }

    @Test
    void worksOutAPrice() {
        Path page = folder.resolve("quotation.html");
        assertThat(program.run("quotation", course, "--page", page.toString())).isZero();
        assertThat(program.out())
                .contains("Quotation: Wheels", "Reading before the camera", "EUR", "no legal or tax advice");
        assertThat(page).content().contains("Quotation: Wheels", "Price", "</html>");
        files.file("course.yaml", "title: Wheels\nquotation: {hour: -1}\n");
        assertThat(program.run("quotation", course)).isEqualTo(2);
        assertThat(program.err())
                .contains("course.yaml:2: hour -1 is out of range")
                .hasLineCount(1);
    }

    @Test
    void showsWhatBecameOfALesson() throws Exception {
        StoredExamples.write(
                files.path().resolve("sessions/monday"), script.toString(), StoredExamples.script("The rim"));
        Files.writeString(script, Files.readString(script) + "A new end.\n");
        assertThat(program.run("course", course, "--edited", "rim", "--hours", "2.5"))
                .isZero();
        Path page = folder.resolve("versions.html");
        assertThat(program.run("versions", script.toString(), "--page", page.toString()))
                .isZero();
        assertThat(program.out())
                .contains("The rim", "Version 1 of the text: ", "recording  ", "Marked as edited in 2.5 hours")
                .contains("Version 2 of the text: ", ", new:", "  + A new end.");
        assertThat(page).content().contains("Versions: The rim", "A new end.", "</html>");
        assertThat(program.run("versions", script.toString(), "--json")).isZero();
        assertThat(program.out()).contains("\"kind\" : \"ADDED\"");
        assertThat(program.run("versions", folder.resolve("other.md").toString()))
                .isEqualTo(2);
        assertThat(program.err()).startsWith("bookholder: ").hasLineCount(1);
    }
}
