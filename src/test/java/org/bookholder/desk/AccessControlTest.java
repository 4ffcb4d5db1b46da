package org.bookholder.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.bookholder.desk.AccessControl.Caller;
import org.bookholder.desk.AccessControl.Refusal;
import org.bookholder.desk.AccessControl.Role;
import org.bookholder.desk.Devices.Device;
import org.bookholder.desk.Devices.Entry;
import org.bookholder.testing.FakeClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class AccessControlTest {
    private final SecureRandom random = new SecureRandom();
    private final DeskCredentials keys = DeskCredentials.fresh(random);
    private final FakeClock clock = new FakeClock();
    private final AccessControl open = new AccessControl(keys, true, random, clock, clock, DeviceFile.none());

    private static Caller from(String address) {
        return new Caller(address, "", "A browser");
    }

    /** What is let in by a code. */
    private static Optional<Role> role(AccessControl access, String code, Caller caller) {
        return access.join(code, caller)
                .entry()
                .flatMap(entry -> access.devices().holder(entry.token()))
                .map(Device::role);
    }

    private Optional<Role> role(String code, String address) {
        return role(open, code, from(address));
    }

    private String actCode() {
        return open.actCode().orElseThrow();
    }

    @Test
    void aCodeGivesTheRightsItIsFor() {
        assertThat(role(keys.key(), "a")).contains(Role.ACT);
        assertThat(role(actCode(), "a")).contains(Role.ACT);
        assertThat(role(open.lookCode().orElseThrow(), "a")).contains(Role.LOOK);
        String typed = " " + actCode().toLowerCase(Locale.ROOT).replace('-', ' ');
        assertThat(role(typed, "a")).contains(Role.ACT);
    }

    @Test
    void joinCodesWorkOnlyIfTheDeskIsOpenToTheNetwork() {
        AccessControl local = new AccessControl(keys, false, random, clock, clock, DeviceFile.none());
        assertThat(local.actCode()).isEmpty();
        assertThat(local.lookCode()).isEmpty();
        assertThat(role(local, actCode(), from("a"))).isEmpty();
        assertThat(role(local, keys.key(), from("a"))).isPresent();
    }

    @Test
    void aChangedTokenIsInvalid() {
        String look = open.join(open.lookCode().orElseThrow(), from("a"))
                .entry()
                .orElseThrow()
                .token();
        assertThat(open.devices().holder(look)).isPresent();
        assertThat(open.devices().holder(look + "A")).isEmpty();
        assertThat(open.devices().holder("")).isEmpty();
        assertThat(new AccessControl(keys, true, random, clock, clock, DeviceFile.none())
                        .devices()
                        .holder(look))
                .isEmpty();
    }

    @Test
    void tooManyWrongCodesMakeAnAddressWait() {
        for (int i = 0; i < AccessControl.FROM_ONE; i++) {
            assertThat(open.join("WRONG-" + i, from("a")).refusal()).isEqualTo(Refusal.WRONG);
        }
        assertThat(open.join(actCode(), from("a")).refusal()).isEqualTo(Refusal.WAIT);
        assertThat(role(actCode(), "another")).isPresent();
        clock.pass(Duration.ofNanos(AccessControl.WINDOW_NANOS + 1));
        assertThat(role(actCode(), "a")).isPresent();
    }

    @Test
    void aCallerWithTheKeyNeverWaitsForOthers() {
        for (int i = 0; i < AccessControl.FROM_ALL; i++) {
            assertThat(role("WRONG", "address " + i)).isEmpty();
        }
        assertThat(role(keys.key(), "address 1")).isPresent();
    }

    @Test
    void eightWrongCodesLeaveThoseWhoAreInAlone() {
        Entry in = open.join(actCode(), from("a")).entry().orElseThrow();
        for (int i = 0; i < AccessControl.FROM_ALL; i++) {
            open.join("WRONG", from("a"));
        }
        assertThat(open.devices().holder(in.token())).isPresent();
        assertThat(role(open.ticket(), "a")).contains(Role.ACT);
    }

    @Test
    void aTicketAdmitsOnePageWithinAMinute() {
        assertThat(open.ticket("wrong")).isEmpty();
        String ticket = open.ticket(keys.key()).orElseThrow();
        assertThat(role(ticket, "a")).contains(Role.ACT);
        assertThat(role(ticket, "a")).isEmpty();
        String late = open.ticket();
        clock.pass(Duration.ofNanos(AccessControl.TICKET_NANOS + 1));
        assertThat(role(late, "a")).isEmpty();
    }

    @Test
    void aProofTellsTheSecretAndGivesNoToken() {
        assertThat(open.proof("challenge")).isEqualTo(AccessControl.proof(keys, "challenge"));
        assertThat(open.proof("challenge"))
                .isNotEqualTo(AccessControl.proof(DeskCredentials.fresh(random), "challenge"));
        assertThat(open.devices().holder(open.proof("challenge"))).isEmpty();
    }

    @Test
    void aProofToADeviceIsForOneDeviceOneQuestionAndOneAddress() {
        AccessControl again = new AccessControl(keys, true, random, clock, clock, DeviceFile.none());
        String proof = open.proofTo("device", "challenge", "127.0.0.1:1");
        assertThat(again.proofTo("device", "challenge", "127.0.0.1:1")).isEqualTo(proof);
        assertThat(List.of(
                        open.proofTo("another", "challenge", "127.0.0.1:1"),
                        open.proofTo("device", "another", "127.0.0.1:1"),
                        open.proofTo("device", "challenge", "127.0.0.1:2")))
                .doesNotContain(proof);
    }

    @Test
    void manyAddressesWithFewWrongCodesEachHaveToWait() {
        for (int i = 0; i < AccessControl.FROM_ALL; i++) {
            assertThat(role("WRONG", "address " + i)).isEmpty();
        }
        assertThat(open.mustWait("yet another")).isTrue();
    }

    @Test
    void aJoinCodeAdmitsADeviceOnceAndIsNewEachDay() {
        String first = actCode();
        Caller tablet = new Caller("a", "mark of the tablet", "Safari on iPad");
        assertThat(role(open, first, tablet)).contains(Role.ACT);
        assertThat(open.join(first, tablet).refusal()).isEqualTo(Refusal.USED);
        assertThat(role(open, first, new Caller("a", "another mark", "Safari on iPad")))
                .contains(Role.ACT);
        clock.pass(JoinCodes.GOOD.minusMillis(1));
        assertThat(actCode()).isEqualTo(first);
        clock.passMillis(1);
        assertThat(actCode()).isNotEqualTo(first);
        assertThat(role(open, first, new Caller("b", "a third", ""))).isEmpty();
        assertThat(role(open, actCode(), tablet)).contains(Role.ACT);
    }

    @Test
    void whoeverIsLetOutComesInByNoCodeThatItKnows() {
        String code = actCode();
        Entry entry = open.join(code, from("a")).entry().orElseThrow();
        Device device = open.devices().holder(entry.token()).orElseThrow();
        String back = open.devices().comesBackWith(device);
        assertThat(open.letOut(device.id())).isTrue();
        assertThat(open.letOut(device.id())).isFalse();
        assertThat(open.devices().holder(entry.token())).isEmpty();
        assertThat(open.devices().in(device.id())).isFalse();
        assertThat(role(code, "a")).isEmpty();
        assertThat(role(back, "a")).isEmpty();
    }

    @Test
    void credentialsAreStoredForTheOwnerAndReadBackWithANewKey(@TempDir Path folder) throws Exception {
        DeskCredentials kept = DeskCredentials.of(folder, random).at(4711);
        kept.keep(folder);
        DeskCredentials again = DeskCredentials.of(folder, random);
        assertThat(again.port()).isEqualTo(4711);
        assertThat(again.secret()).isEqualTo(kept.secret());
        assertThat(again.key()).isNotEqualTo(kept.key());
        Path file = folder.resolve("desk.json");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
        Files.writeString(file, "{}");
        assertThat(DeskCredentials.of(folder, random).port()).isZero();
    }
}
