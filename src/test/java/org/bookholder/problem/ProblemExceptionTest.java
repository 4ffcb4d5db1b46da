package org.bookholder.problem;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

final class ProblemExceptionTest {
    @Test
    void saysWhereWhatAndWhatToDo() {
        assertThat(new ProblemException("is empty", "lesson.md:3", "write something"))
                .hasMessage("lesson.md:3: is empty; write something");
    }

    /** A file's name may hold any sign but a zero and the separator; a terminal would obey some of them. */
    @Test
    void isOneLineWhateverItIsMadeOf() {
        String name = "C0001\n\u001b[2J\u0007\u2028.mp4";
        assertThat(new ProblemException("is\r\nempty", name, "name\tanother"))
                .hasMessage("C0001 [2J .mp4: is empty; name another");
    }

    @Test
    void aPageIsToldTheFileByItsNameWithoutItsFolders() {
        assertThat(new ProblemException("is not there any more", "/home/me/cards/C0002.MP4", "put it back").told())
                .isEqualTo("C0002.MP4: is not there any more; put it back");
        assertThat(new ProblemException("is empty", "C:\\courses\\my course\\", "add a lesson").told())
                .isEqualTo("my course: is empty; add a lesson");
        assertThat(new ProblemException("is no number", "/home/me/course.yaml:3", "write one").named())
                .isEqualTo("course.yaml:3: is no number");
        assertThat(new ProblemException("has no channel 5", "ZOOM 1.WAV", "choose another").named())
                .isEqualTo("ZOOM 1.WAV: has no channel 5");
    }

    @Test
    void aFileThatIsNamedAlreadyAndAPlaceThatIsNoFileAreNotRepeated() {
        assertThat(new ProblemException("C0002.MP4 was cut short", "/cards/C0002.MP4", "copy it again").told())
                .isEqualTo("C0002.MP4 was cut short; copy it again");
        assertThat(new ProblemException("there is no such action", "the film", "load the page again").told())
                .isEqualTo("there is no such action; load the page again");
        assertThat(new ProblemException("is firstly empty", "/sessions/first", "read it first").named())
                .isEqualTo("first: is firstly empty");
    }
}
