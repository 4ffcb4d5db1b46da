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
}
