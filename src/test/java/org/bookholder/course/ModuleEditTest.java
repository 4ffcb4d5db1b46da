package org.bookholder.course;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class ModuleEditTest {
    @TempDir
    private Path folder;

    private CourseFolder course;
    private ModuleEdit modules;
    private Path yaml;

    @BeforeEach
    void lessons() {
        course = new CourseFolder(folder);
        for (String name : new String[] {"a", "b", "c", "d"}) {
            course.lesson(name, "A line.");
        }
        modules = new ModuleEdit(new CourseFile(folder));
        yaml = folder.resolve(Course.FILE);
    }

    @Test
    void theFirstModuleWritesDownTheLessonsOfTheFolder() throws ProblemException, IOException {
        Files.writeString(yaml, "# ours\ntitle: Ropes  # working title\nkinds: {b.md: slides}\n");
        modules.add("Getting started");
        assertThat(yaml).hasContent("""
            # ours
            title: Ropes  # working title
            lessons:
              - a.md
              - {script: b.md, kind: slides}
              - c.md
              - d.md
            modules:
              - title: Getting started
            """);
        assertThat(course.read().lessons()).extracting(Lesson::name).containsExactly("a", "b", "c", "d");
        assertThat(course.read().modules()).containsExactly(new CourseModule(1, "Getting started"));
    }

    @Test
    void lessonsMoveWithTheirComments() throws ProblemException, IOException {
        Files.writeString(yaml, """
            lessons:
              - a.md
              # needs the long rope
              - script: b.md  # twice
                kind: slides
              - c.md  # outdoors
            modules:
              - title: First
                # all indoors
                lessons:
                  - d.md
              - {title: Second, lessons: []}
            """);
        modules.move("b.md", 1, 0);
        modules.move("c.md", 2, 9);
        modules.rename(1, "Ropes, and how to choose them: a start");
        assertThat(yaml).hasContent("""
            lessons:
              - a.md
            modules:
              - title: "Ropes, and how to choose them: a start"
                # all indoors
                lessons:
                  # needs the long rope
                  - script: b.md  # twice
                    kind: slides
                  - d.md
              # outdoors
              - {title: Second, lessons: [c.md]}
            """);
        assertThat(course.read().lessons())
                .extracting(lesson -> lesson.module().map(CourseModule::number).orElse(0) + lesson.name())
                .containsExactly("0a", "1b", "1d", "2c");
        assertThat(course.read().lessons().get(1).kind()).isEqualTo(LessonKind.SLIDES);
    }

    @Test
    void theLastLessonMayLeaveItsListAndComeBack() throws ProblemException, IOException {
        Files.writeString(
                yaml,
                "modules:\n  - title: One\n    lessons: [a.md, b.md]\n  - title: Two\n    lessons:\n      - c.md\n");
        modules.move("c.md", 1, 1);
        assertThat(course.read().in(Optional.of(new CourseModule(2, "Two")))).isEmpty();
        modules.move("a.md", 2, 0);
        assertThat(yaml).hasContent("""
            modules:
              - title: One
                lessons: [c.md, b.md]
              - title: Two
                lessons:
                  - a.md
            """);
        modules.move("a.md", 0, 0);
        modules.remove(2);
        assertThat(yaml).hasContent("modules:\n  - title: One\n    lessons: [c.md, b.md]\nlessons:\n  - a.md\n");
    }

    @Test
    void lessonsChangePlacesWithinAModule() throws ProblemException, IOException {
        Files.writeString(
                yaml, "modules:\n  - title: One\n    lessons:\n      - a.md  # first\n      - b.md\n      - c.md\n");
        modules.move("a.md", 1, 2);
        assertThat(yaml)
                .hasContent(
                        "modules:\n  - title: One\n    lessons:\n      - b.md\n      - c.md\n      - a.md  # first\n");
        modules.move("a.md", 1, 1);
        assertThat(course.read().lessons()).extracting(Lesson::name).containsExactly("b", "a", "c");
    }

    @Test
    void whatCantBeDoneIsSaidAndChangesNothing() throws ProblemException, IOException {
        String text = "modules:\n  - {title: One, lessons: [a.md]}\n  - {title: Two}\n";
        Files.writeString(yaml, text);
        assertThatThrownBy(() -> modules.remove(1)).hasMessageContaining("this module has lessons");
        assertThatThrownBy(() -> modules.add(" two ")).hasMessageContaining("another module has this title");
        assertThatThrownBy(() -> modules.rename(2, " ")).hasMessageContaining("no title yet");
        assertThatThrownBy(() -> modules.rename(3, "Three")).hasMessageContaining("no module 3");
        assertThatThrownBy(() -> modules.move("x.md", 1, 0)).hasMessageContaining("no such lesson");
        assertThat(yaml).hasContent(text);
    }

    @Test
    void aNewLessonComesIntoTheLastModule() throws ProblemException, IOException {
        Files.writeString(yaml, "lessons: [a.md]\nmodules:\n  - title: One\n    lessons: [b.md]\n  - title: Two\n");
        new CourseFile(folder).addLessons(List.of("c.md", "b.md"));
        assertThat(yaml).hasContent("""
            lessons: [a.md]
            modules:
              - title: One
                lessons: [b.md]
              - title: Two
                lessons:
                  - c.md
            """);
        new CourseFile(folder).setKind("c.md", LessonKind.MOVING);
        assertThat(course.read().lessons().get(2).kind()).isEqualTo(LessonKind.MOVING);
    }
}
