package org.bookholder.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

final class DiskProblemsTest {
    private static final Path FILE = Path.of("take-001.wav");

    /** The texts of ENOSPC and EDQUOT in the GNU C library, and of ERROR_DISK_FULL on Windows. */
    @Test
    void roomThatIsUsedUpIsNamedAsTheCause() {
        assertThat(said(new IOException("No space left on device"))).startsWith("the disk is full; free some space");
        assertThat(said(new IOException("There is not enough space on the disk")))
                .startsWith("the disk is full");
        assertThat(said(new FileSystemException("take-001.wav", null, "Disk quota exceeded")))
                .isEqualTo("your quota on this disk is used up; free some space, or choose a folder on another disk");
    }

    private static String said(IOException cause) {
        var problem = DiskProblems.writing(FILE, cause);
        assertThat(problem.where()).isEqualTo(FILE.toString());
        return problem.what() + "; " + problem.remedy();
    }
}
