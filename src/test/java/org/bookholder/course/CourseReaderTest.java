package org.bookholder.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

final class CourseReaderTest {
    @TempDir
    private Path folder;

    private CourseFolder files;

    @BeforeEach
    void writeLessons() {
        files = new CourseFolder(folder);
        files.lesson("lesson-10", "Here is the rim.");
        files.lesson("lesson-9", "Here is the hub.");
        files.file("README.md", "Not a lesson.");
    }

    @Test
    void everyScriptIsALessonInTheOrderOfTheNames() {
        Course course = files.read();
        assertThat(course.lessons()).extracting(Lesson::name).containsExactly("lesson-9", "lesson-10");
        assertThat(course.lessons()).extracting(Lesson::number).containsExactly(1, 2);
        assertThat(course.title()).isEqualTo(folder.getFileName().toString());
        assertThat(course.shooting().setUp()).isEqualTo(Duration.ofMinutes(30));
        assertThat(course.editing().lessonsAWeek()).isEqualTo(3);
    }

    @Test
    void readsWhatIsWrittenDown() {
        files.file("site.yaml", "size: 1");
        files.file(Course.FILE, """
            title: Wheels
            pace: 120
            lessons:
              - lesson-10.md
              - {script: lesson-9.md, kind: moving}
            recording:
              days: [2027-02-02, {day: 2027-02-04, from: 9:30, hours: 2.5}]
              hours: 4
              set-up: 20
              ratio: 1.8
            editing:
              from: 2027-02-08
              hours a week: 12
              lessons a week: 2
              slack: 25
              hours per minute: {presenter: 0.2}
            delivery: site.yaml
            launch: 2027-06-01
            costs: {currency: USD, equipment: 400, hour: 25, hired lesson: 300, price: 49, kept: 80}
            """);
        Course course = files.read();

        assertThat(course.title()).isEqualTo("Wheels");
        assertThat(course.lessons()).extracting(Lesson::name).containsExactly("lesson-10", "lesson-9");
        assertThat(course.lessons()).extracting(Lesson::kind).containsExactly(LessonKind.PRESENTER, LessonKind.MOVING);
        assertThat(course.lessons()).allMatch(l -> l.script().settings().targetPace() == 120);
        assertThat(course.shooting().days())
                .containsExactly(
                        new Shooting.Day(LocalDate.of(2027, 2, 2), LocalTime.of(10, 0), Duration.ofHours(4)),
                        new Shooting.Day(LocalDate.of(2027, 2, 4), LocalTime.of(9, 30), Duration.ofMinutes(150)));
        assertThat(course.shooting().ratio()).contains(1.8);
        assertThat(course.editing().hours(LessonKind.PRESENTER, 10)).isEqualTo(2.0);
        assertThat(course.editing().slack()).isEqualTo(0.25);
        assertThat(course.delivery()).contains(folder.resolve("site.yaml"));
        assertThat(course.costs()).contains(new Costs("USD", 400, 25, 600, 49, 0.8));
        assertThat(course.launch()).contains(LocalDate.of(2027, 6, 1));
    }

    @Test
    void modulesHaveTheirLessonsInOrder() {
        files.lesson("extra", "Here is the tyre.");
        files.file("spokes/lesson-9.md", "---\ntitle: Spokes\n---\nHere is a spoke.");
        files.file(Course.FILE, """
            lessons: [extra.md]
            modules:
              - title: The whole wheel
                lessons: [lesson-10.md, {script: lesson-9.md, kind: slides}]
              - {title: Spokes, lessons: [spokes/lesson-9.md]}
              - title: Nothing yet
            recording:
              days: [{day: 2027-02-04, lessons: [spokes/lesson-9.md, lesson-10]}]
            """);
        Course course = files.read();
        assertThat(course.lessons())
                .extracting(Lesson::name)
                .containsExactly("extra", "lesson-10", "lesson-9", "spokes-lesson-9");
        assertThat(course.lessons())
                .extracting(lesson -> lesson.module().map(CourseModule::heading).orElse(""))
                .containsExactly("", "Module 1: The whole wheel", "Module 1: The whole wheel", "Module 2: Spokes");
        assertThat(course.modules())
                .extracting(CourseModule::title)
                .endsWith("Nothing yet")
                .hasSize(3);
        assertThat(course.shooting().days().get(0).lessons()).containsExactly("spokes-lesson-9", "lesson-10");
        assertThat(course.lessonOf(Path.of("exports/spokes-lesson-9_v2.mp4")))
                .contains(course.lessons().get(3));
        assertThat(course.lessonOf(Path.of("exports/lesson-9.mp4")))
                .contains(course.lessons().get(2));
    }

    @Test
    void aNumberMayMeanThePlaceOrTheFile() {
        files.lesson("lesson-2", "Here is the tyre.");
        // In order: lesson-2, lesson-9, lesson-10.
        Course course = files.read();
        assertThat(course.meant("2")).extracting(Lesson::name).containsExactly("lesson-2", "lesson-9");
        assertThat(course.meant("09")).extracting(Lesson::name).containsExactly("lesson-9");
        assertThat(course.meant("1")).extracting(Lesson::name).containsExactly("lesson-2");
        assertThat(course.meant("lesson-10.md")).extracting(Lesson::name).containsExactly("lesson-10");
        assertThat(course.meant("Lesson-9")).hasSize(1);
        assertThat(course.meant("the tyre")).isEmpty();
    }

    @Test
    void foldersBesideTheCoursesFileAreModules() {
        CourseFolder other = new CourseFolder(folder.resolve("other"));
        other.file(Course.FILE, "title: Knots\nkinds: {02-first-knots/01-start.md: slides}\n");
        other.file("02-first-knots/01-start.md", "---\ntitle: Start\n---\nTake a rope.");
        other.file("10-more/01-start.md", "---\ntitle: Start\n---\nTake two.");
        other.file("exports/notes.txt", "No lesson.");
        other.file("empty/picture.png", "");
        Course course = other.read();
        assertThat(course.modules()).containsExactly(new CourseModule(1, "First knots"), new CourseModule(2, "More"));
        assertThat(course.lessons())
                .extracting(Lesson::name)
                .containsExactly("02-first-knots-01-start", "10-more-01-start");
        assertThat(course.lessons()).extracting(Lesson::kind).containsExactly(LessonKind.SLIDES, LessonKind.PRESENTER);
    }

    @Test
    void scriptsBesideTheCoursesFileAreAllItsLessons() {
        files.file("old/lesson-1.md", "An old text.");
        files.file(Course.FILE, "title: Wheels");
        assertThat(files.read().lessons()).extracting(Lesson::name).containsExactly("lesson-9", "lesson-10");
        assertThat(files.read().modules()).isEmpty();
    }

    @Test
    void aScriptKeepsTheNameOfItsFileWhereItsCourseCannotBeRead() {
        files.file(Course.FILE, "modules:\n  - title: Wheels\n    lessons: [lesson-9.md, lesson-10.md]\n");
        assertThat(CourseReader.lessonOf(folder.resolve("lesson-9.md"))).isPresent();
        files.file(Course.FILE, "modules:\n  - title: Wheels\n    lessons: [lesson-9.md, lesson-11.md]\n");
        assertThat(CourseReader.lessonOf(folder.resolve("lesson-9.md"))).isEmpty();
        assertThat(CourseReader.nameOf(folder.resolve("lesson-9.md"))).isEqualTo("lesson-9");
    }

    @Test
    void aModuleNeedsATitle() {
        files.file(Course.FILE, "modules:\n  - lessons: [lesson-9.md]");
        assertThatThrownBy(() -> CourseReader.read(folder)).hasMessageContaining("a module has no title");
        files.file(Course.FILE, "modules: [Wheels]");
        assertThatThrownBy(() -> CourseReader.read(folder)).hasMessageContaining("a title with lessons");
    }

    @Test
    void aScriptsOwnPaceComesFirst() {
        files.file("lesson-9.md", "---\npace: 90\n---\nHere is the hub.\n");
        files.file(Course.FILE, "pace: 120\n");
        assertThat(files.read().lessons())
                .extracting(l -> l.script().settings().targetPace())
                .containsExactly(90, 120);
    }

    @Test
    void findsTheLessonOfAnExportByItsName() {
        files.lesson("lesson", "Welcome.");
        Course course = files.read();
        assertThat(course.lessonOf(Path.of("x/lesson-9_v2.mp4")))
                .map(Lesson::name)
                .contains("lesson-9");
        assertThat(course.lessonOf(Path.of("Lesson-10.MP4"))).map(Lesson::name).contains("lesson-10");
        assertThat(course.lessonOf(Path.of("lesson-90.mp4"))).map(Lesson::name).contains("lesson");
        assertThat(course.lessonOf(Path.of("lessons.mp4"))).isEmpty();
    }

    @Test
    void findsTheCourseOfAFile() {
        files.file(Course.FILE, "title: Wheels\n");
        Path export = files.file("exports/new/lesson-9.mp4", "film");
        assertThat(CourseReader.around(export)).contains(folder.toAbsolutePath());
    }

    @Test
    void aFolderOfScriptsIsTheCourseOfItsExports() {
        Path export = files.file("exports/lesson-9.mp4", "film");
        assertThat(CourseReader.around(export)).contains(folder.toAbsolutePath());
        assertThat(CourseReader.around(files.file("films/lesson-9.mp4", "film")))
                .isEmpty();
        assertThat(CourseReader.around(files.file("films/exports/lesson-9.mp4", "film")))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'titel: Wheels' | 1: there is no setting 'titel'; write 'title' if that is meant",
                "'title: W\n"
                        + "teacher: A' | 2: there is no setting 'teacher'; write one of title, pace, lessons, modules,"
                        + " recording, editing, kinds, say, delivery, launch, costs, quotation",
                "'title: a: b' | 1: course.yaml can't be read (mapping values are not allowed here); write each"
                        + " setting as name: value, and put quotes around a value with a colon in it",
                "'pace: \"100' | 1: course.yaml can't be read (a quotation mark is not closed); close it at the end"
                        + " of the value",
                "'lessons: [lesson-9.md, hub.md]' | 1: there is no file 'hub.md' in the course's folder; "
                        + "write the name of a file that is there",
                "'lessons:\n  - lesson-9.md\n  - lesson-9.md' | 3: two lessons have the same name 'lesson-9' "
                        + "(lesson-9.md and lesson-9.md); rename one of the files",
                "'lessons:\n  - kind: moving' | 2: a lesson has no script; write script: and the name of its file",
                "'lessons: [{script: lesson-9.md, kind: opera}]' | 1: kind 'opera' is not known; "
                        + "give one of presenter, slides, moving",
                "'launch: 2027-02-30' | 1: there is no day '2027-02-30'; write it as year-month-day: 2027-03-09",
                "'launch: 2207-02-03' | 1: the year of launch '2207-02-03' looks wrong; give a day from 2000 to 2099",
                "'recording:\n  days: [2027-02-04, 2027-02-02]' | 2: recording day 2027-02-02 does not come after the "
                        + "one before it; list each day once, in order",
                "'recording: {from: 25:00}' | 1: there is no time of day '25:00'; write it as hours:minutes: 09:30",
                "'recording: often' | 1: 'recording' has no settings of its own; write each below it, further in, as "
                        + "name: value, or leave it out",
                "'editing: {hours a week: 0}' | 1: hours a week 0 is out of range; give 0.5 to 168 hours",
                "'editing: {hours a week: many}' | 1: hours a week 'many' is not a number; give 0.5 to 168 hours",
                "'editing: {lessons a week: 0}' | 1: lessons a week 0 is out of range; give 1 to 99 lessons",
                "'costs: {equipment: 10}' | 1: the costs have no price; write price: and what one sale costs the buyer",
                "'delivery: none.yaml' | 1: there is no file 'none.yaml' in the course's folder; "
                        + "write the name of a file that is there",
            })
    void mistakesAreReportedWithTheirLines(String text, String message) {
        Path file = files.file(Course.FILE, text + "\n");
        assertThat(problem(folder)).hasMessage(file + ":" + message);
    }

    @Test
    void aFolderWithoutScripts() {
        files.file("empty/picture.png", "x");
        Path empty = folder.resolve("empty");
        assertThat(problem(empty))
                .hasMessage(empty + ": the folder holds no script; put lessons into it as .md, .txt or .docx files");
        Path none = folder.resolve("none");
        assertThat(problem(none))
                .hasMessage(none + ": there is no such folder; name the folder with the course's scripts");
    }

    @Test
    void twoLessonsOfTheSameTitle() {
        Path second = files.file("lesson-9b.md", "---\ntitle: lesson-9\n---\nThe hub again.\n");
        assertThat(problem(folder))
                .hasMessage(second + ": two lessons have the same title 'lesson-9' (lesson-9.md and lesson-9b.md); "
                        + "give one of them another title");
    }

    @Test
    void whatCannotBeReadYetStopsNoOtherLesson() throws Exception {
        files.file("lesson-91.md", "# Later\n\n> Smile.\n");
        Files.write(folder.resolve("lesson-92.docx"), new byte[] {1, 2, 3});
        int before = CourseReader.readable(folder).lessons().size();

        assertThat(CourseReader.readable(folder).why())
                .satisfiesExactly(
                        first -> assertThat(first)
                                .isEqualTo("lesson-91.md has no words to read yet; write them as plain paragraphs"),
                        second -> assertThat(second).startsWith("lesson-92.docx: this is not a DOCX document"));
        assertThat(before).isPositive();
    }

    @Test
    void foldersThatAreNoModulesBecauseOfAScriptBesideTheCoursesFileAreNamed() throws Exception {
        Path course = folder.resolve("ropes");
        for (String script : List.of("basics/one.md", "knots/one.md", "knots/two.md")) {
            files.file("ropes/" + script, "# " + script + "\n\nA line.\n");
        }
        files.file("ropes/course.yaml", "title: Ropes\n");
        assertThat(CourseReader.readable(course).remarks()).isEmpty();

        files.file("ropes/extra.md", "A line.\n");
        assertThat(CourseReader.readable(course).why())
                .containsExactly("the scripts in basics, knots, because one lies beside course.yaml (extra.md); if"
                        + " these folders are modules, move it into one of them, or list modules: in course.yaml");

        files.file("ropes/course.yaml", "title: Ropes\nlessons: [extra.md]\n");
        assertThat(CourseReader.readable(course).remarks()).isEmpty();
    }

    @Test
    void aFileOfTheCourseWithAnotherEndingIsNamed() {
        Path other = files.file("course.yml", "title: A course\n");
        assertThat(catchThrowableOfType(ProblemException.class, () -> CourseReader.readable(folder)))
                .hasMessage(other + ": the course's file has another name; rename it to course.yaml");
    }

    private static ProblemException problem(Path folder) {
        return catchThrowableOfType(ProblemException.class, () -> CourseReader.read(folder));
    }
}
