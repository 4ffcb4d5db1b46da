package org.bookholder.app.session;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.journal.SessionFolder;
import org.bookholder.problem.ProblemException;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.Needs;
import org.bookholder.testing.StoredExamples;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/**
 * Which second place is taken. A disk that has room but takes no more files stands for one with a quota: what it says of its room is
 * not true for everybody.
 */
@EnabledOnOs(value = OS.LINUX, disabledReason = "small disks are mounted with unshare and tmpfs of Linux")
@Timeout(120)
final class SecondPlaceTest {
    private static final String ROOMY = "size=64M";
    private static final String TAKES_NO_FILE = "size=64M,nr_inodes=3";
    private static final String SMALL = "size=2M";

    @TempDir
    private Path folder;

    @Test
    void theUsersDataFolderIsTakenIfItHasRoom() throws IOException, InterruptedException {
        assertThat(keep(ROOMY, ROOMY)).contains("kept: 2 in data/overflow", "left: 0 in the other");
    }

    @Test
    void aPlaceThatTakesNoFileIsPassedOver() throws IOException, InterruptedException {
        assertThat(keep(TAKES_NO_FILE, ROOMY)).contains("kept: 2 in other", "left: 0 in the first");
    }

    @Test
    void aPlaceWithLittleRoomIsPassedOver() throws IOException, InterruptedException {
        assertThat(keep(SMALL, ROOMY)).contains("kept: 2 in other", "left: 0 in the first");
    }

    @Test
    void saysPlainlyThatThereIsNone() throws IOException, InterruptedException {
        assertThat(keep(SMALL, TAKES_NO_FILE))
                .contains("left: 0 in the first", "left: 0 in the other")
                .anyMatch(line -> line.matches(
                        "refused: .*there is no second place either \\(.*data/overflow.*: the disk is full.*;"
                                + " .*other.*: the disk is full.*\\).*"));
    }

    private List<String> keep(String first, String other) throws IOException, InterruptedException {
        Needs.mounts();
        Path data = Files.createDirectories(folder.resolve("data"));
        Path temporary = Files.createDirectories(folder.resolve("other"));
        String mounts = "mount -t tmpfs -o " + first + " none \"$0\" && mount -t tmpfs -o " + other
                + " none \"$1\" && shift && exec \"$@\"";
        try (ChildJvm child = ChildJvm.startBy(
                List.of("unshare", "-rm", "sh", "-c", mounts, data.toString(), temporary.toString()),
                Child.class,
                folder.toString())) {
            return child.untilItEnds();
        }
    }

    /** Keeps two events in the second place of a session that lies in the folder given. */
    static final class Child {
        private Child() {}

        public static void main(String[] args) throws ProblemException {
            Path folder = Path.of(args[0]);
            System.setProperty("java.io.tmpdir", folder.resolve("other").toString());
            Environment here = StoredExamples.here(folder.resolve("data"));
            try (SessionFolder session = SessionFolder.create(folder.resolve("session"), here.locks())) {
                SecondPlace second = new SecondPlace(here, session);
                keep(second, folder);
            }
            System.out.println("left: " + left(folder.resolve("data/overflow")) + " in the first");
            System.out.println("left: " + left(folder.resolve("other")) + " in the other");
        }

        private static void keep(SecondPlace second, Path folder) {
            SessionEvent mark = new SessionEvent.PickupMarked(StreamTime.ofSeconds(3), 1, "a van");
            try {
                int kept = second.keep(List.of(mark, mark), Optional.empty());
                Path place = Path.of(second.place());
                System.out.println(
                        "kept: " + kept + " in " + folder.relativize(Objects.requireNonNull(place.getParent())));
            } catch (ProblemException e) {
                System.out.println("refused: " + e.getMessage());
            }
        }

        private static int left(Path place) {
            String[] names = place.toFile().list((parent, name) -> name.startsWith(Overflows.PREFIX));
            return names == null ? 0 : names.length;
        }
    }
}
