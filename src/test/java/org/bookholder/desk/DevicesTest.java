package org.bookholder.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.time.Duration;
import org.bookholder.desk.AccessControl.Role;
import org.bookholder.desk.Devices.Device;
import org.bookholder.desk.Devices.Entry;
import org.bookholder.testing.FakeClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class DevicesTest {
    private final FakeClock clock = new FakeClock();
    private final SecureRandom random = new SecureRandom();

    @TempDir
    private Path folder;

    private Devices devices() {
        return new Devices(clock, random, DeviceFile.in(folder));
    }

    @Test
    void aGuestStaysForADayAndTheOwnerUntilUnseenForADay() {
        Devices devices = devices();
        Entry guest = devices.letIn(Role.LOOK, false, "", "Firefox on Android");
        Entry owner = devices.letIn(Role.ACT, true, "", "Chrome on Linux");
        clock.pass(Devices.STAY.minusMillis(1));
        assertThat(devices.holder(guest.token())).isPresent();
        assertThat(devices.holder(owner.token())).isPresent();
        clock.passMillis(1);
        assertThat(devices.holder(guest.token())).isEmpty();
        assertThat(devices.holder(owner.token())).isPresent();
        clock.pass(Devices.STAY);
        assertThat(devices.holder(owner.token())).isEmpty();
        assertThat(devices.all()).isEmpty();
    }

    @Test
    void theListTellsSinceWhenAndWhenLastSeen() {
        Devices devices = devices();
        Entry first = devices.letIn(Role.ACT, true, "", "Chrome on Linux");
        clock.pass(Duration.ofHours(1));
        devices.letIn(Role.LOOK, false, "", "Safari on iPad");
        clock.pass(Duration.ofHours(2));
        devices.holder(first.token());
        assertThat(devices.all()).extracting(Device::name).containsExactly("Chrome on Linux", "Safari on iPad");
        Device own = devices.all().get(0);
        assertThat(Duration.between(own.since(), own.seen())).isEqualTo(Duration.ofHours(3));
        Device guest = devices.all().get(1);
        assertThat(guest.seen()).isEqualTo(guest.since());
    }

    @Test
    void theOwnersBrowserIsOneDeviceHoweverOftenItsPageIsOpened() {
        Devices devices = devices();
        Entry first = devices.letIn(Role.ACT, true, "mark", "Chrome on Linux");
        Entry second = devices.letIn(Role.ACT, true, "mark", "Chrome on Linux");
        assertThat(second.place()).isEqualTo(first.place());
        assertThat(devices.all()).hasSize(1);
        assertThat(devices.holder(first.token())).isEmpty();
        assertThat(devices.holder(second.token())).isPresent();
        devices.letIn(Role.ACT, false, "mark", "Chrome on Linux");
        assertThat(devices.all()).as("a guest that calls itself the same").hasSize(2);
    }

    @Test
    void afterARestartATokenIsWorthNothingAndAnOpenPageComesBackOnce() throws Exception {
        Devices before = devices();
        Entry entry = before.letIn(Role.LOOK, false, "", "Safari on iPad");
        String back = before.comesBackWith(before.holder(entry.token()).orElseThrow());
        Path kept = folder.resolve("desk-devices.json");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(kept)))
                .isEqualTo("rw-------");
        assertThat(Files.readString(kept)).doesNotContain(back).doesNotContain(entry.token());
        Devices after = devices();
        assertThat(after.holder(entry.token())).isEmpty();
        Entry again = after.letReturn(back).orElseThrow();
        assertThat(again.place()).as("where its pages are").isEqualTo(entry.place());
        assertThat(after.holder(again.token()).map(Device::role)).contains(Role.LOOK);
        assertThat(after.letReturn(back)).isEmpty();
    }

    @Test
    void whoeverGotNoAnswerComesBackWithTheSameSecretAlsoAfterAnotherRestart() {
        Devices before = devices();
        String back = comesBackWith(before, before.letIn(Role.ACT, true, "mark", "Chrome on Linux"));
        assertThat(devices().letReturn(back)).isPresent();
        Devices after = devices();
        Entry lost = after.letReturn(back).orElseThrow();
        Entry again = after.letReturn(back).orElseThrow();
        assertThat(again.place()).isEqualTo(lost.place());
        String next = comesBackWith(after, again);
        assertThat(after.letReturn(back)).as("once it has shown its token").isEmpty();
        assertThat(devices().letReturn(back)).isEmpty();
        assertThat(devices().letReturn(next)).isPresent();
    }

    /** Two tabs of one browser share its cookie; the one that was let in last has set it. */
    @Test
    void twoTabsThatComeBackAtOnceAreBothIn() {
        Devices before = devices();
        String back = comesBackWith(before, before.letIn(Role.ACT, true, "mark", "Chrome on Linux"));
        Devices after = devices();
        Entry one = after.letReturn(back).orElseThrow();
        Entry other = after.letReturn(back).orElseThrow();
        assertThat(comesBackWith(after, one)).isEqualTo(comesBackWith(after, other));
    }

    @Test
    void aSecondPageOfTheOwnersBrowserLeavesTheFirstOneWhatItComesBackWith() {
        Devices before = devices();
        String first = comesBackWith(before, before.letIn(Role.ACT, true, "mark", "Chrome on Linux"));
        assertThat(comesBackWith(before, before.letIn(Role.ACT, true, "mark", "Chrome on Linux")))
                .isEqualTo(first);
        assertThat(devices().letReturn(first)).isPresent();
    }

    private static String comesBackWith(Devices devices, Entry entry) {
        return devices.comesBackWith(devices.holder(entry.token()).orElseThrow());
    }

    @Test
    void whoeverWasLetOutOrHasStayedForADayDoesNotComeBackAfterARestart() {
        Devices before = devices();
        Device out =
                before.holder(before.letIn(Role.ACT, false, "", "one").token()).orElseThrow();
        Device late =
                before.holder(before.letIn(Role.ACT, false, "", "two").token()).orElseThrow();
        String outBack = before.comesBackWith(out);
        String lateBack = before.comesBackWith(late);
        before.letOut(out.id());
        assertThat(devices().letReturn(outBack)).isEmpty();
        clock.pass(Devices.STAY);
        assertThat(devices().letReturn(lateBack)).isEmpty();
    }

    @Test
    void theOneThatWasUnseenForLongestMakesRoom() {
        Devices devices = devices();
        Entry first = devices.letIn(Role.LOOK, false, "", "first");
        for (int i = 0; i < Devices.MOST; i++) {
            clock.passMillis(1);
            devices.letIn(Role.LOOK, false, "", "device " + i);
        }
        assertThat(devices.all()).hasSize(Devices.MOST);
        assertThat(devices.holder(first.token())).isEmpty();
    }

    @Test
    void aFileThatCannotBeReadAdmitsNobody() throws Exception {
        Files.writeString(folder.resolve("desk-devices.json"), "[{\"role\":\"KING\"}]");
        assertThat(devices().all()).isEmpty();
        assertThat(devices().letReturn("")).isEmpty();
    }
}
