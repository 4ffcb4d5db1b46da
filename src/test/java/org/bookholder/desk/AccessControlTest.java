package org.bookholder.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.Locale;
import org.bookholder.desk.AccessControl.Role;
import org.bookholder.testing.FakeClock;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class AccessControlTest {
    private final SecureRandom random = new SecureRandom();
    private final DeskCredentials keys = DeskCredentials.fresh(random);
    private final FakeClock clock = new FakeClock();
    private final AccessControl open = new AccessControl(keys, true, random, clock);

    @Test
    void aCodeGivesTheRightsItIsFor() {
        assertThat(open.join(keys.key(), "a").flatMap(open::role)).contains(Role.ACT);
        assertThat(open.join(keys.act(), "a").flatMap(open::role)).contains(Role.ACT);
        assertThat(open.join(keys.look(), "a").flatMap(open::role)).contains(Role.LOOK);
        String typed = " " + keys.act().toLowerCase(Locale.ROOT).replace('-', ' ');
        assertThat(open.join(typed, "a").flatMap(open::role)).contains(Role.ACT);
    }

    @Test
    void joinCodesWorkOnlyIfTheDeskIsOpenToTheNetwork() {
        AccessControl local = new AccessControl(keys, false, random, clock);
        assertThat(local.join(keys.act(), "a")).isEmpty();
        assertThat(local.join(keys.look(), "a")).isEmpty();
        assertThat(local.join(keys.key(), "a")).isPresent();
    }

    @Test
    void aChangedTokenIsInvalid() {
        String look = open.join(keys.look(), "a").orElseThrow();
        assertThat(open.role(look.replaceFirst("look", "act"))).isEmpty();
        assertThat(open.role(look + "A")).isEmpty();
        assertThat(open.role("")).isEmpty();
        assertThat(new AccessControl(DeskCredentials.fresh(random), true, random, clock).role(look))
                .isEmpty();
    }

    @Test
    void tooManyWrongCodesMakeAnAddressWait() {
        for (int i = 0; i < AccessControl.FROM_ONE; i++) {
            assertThat(open.join("WRONG-" + i, "a")).isEmpty();
        }
        assertThat(open.join(keys.act(), "a")).isEmpty();
        assertThat(open.join(keys.act(), "another")).isPresent();
        clock.pass(Duration.ofNanos(AccessControl.WINDOW_NANOS + 1));
        assertThat(open.join(keys.act(), "a")).isPresent();
    }

    @Test
    void aCallerWithTheKeyNeverWaitsForOthers() {
        for (int i = 0; i < AccessControl.FROM_ALL; i++) {
            assertThat(open.join("WRONG", "address " + i)).isEmpty();
        }
        assertThat(open.join(keys.key(), "address 1")).isPresent();
    }

    @Test
    void aTicketAdmitsOnePageWithinAMinute() {
        assertThat(open.ticket("wrong")).isEmpty();
        String ticket = open.ticket(keys.key()).orElseThrow();
        assertThat(open.role(open.join(ticket, "a").orElseThrow())).contains(AccessControl.Role.ACT);
        assertThat(open.join(ticket, "a")).isEmpty();
        String late = open.ticket();
        clock.pass(Duration.ofNanos(AccessControl.TICKET_NANOS + 1));
        assertThat(open.join(late, "a")).isEmpty();
    }

    @Test
    void aProofTellsTheSecretAndGivesNoToken() {
        assertThat(open.proof("challenge")).isEqualTo(AccessControl.proof(keys, "challenge"));
        assertThat(open.proof("challenge"))
                .isNotEqualTo(AccessControl.proof(DeskCredentials.fresh(random), "challenge"));
        assertThat(open.role("proof.challenge." + open.proof("challenge"))).isEmpty();
        assertThat(open.role("act.x." + open.proof("act.x"))).isEmpty();
    }

    @Test
    void manyAddressesWithFewWrongCodesEachHaveToWait() {
        for (int i = 0; i < AccessControl.FROM_ALL; i++) {
            assertThat(open.join("WRONG", "address " + i)).isEmpty();
        }
        assertThat(open.mustWait("yet another")).isTrue();
    }

    @Test
    void credentialsAreStoredForTheOwnerAndReadBack(@TempDir Path folder) throws Exception {
        DeskCredentials kept = DeskCredentials.of(folder, random).at(4711);
        kept.keep(folder);
        assertThat(DeskCredentials.of(folder, random)).isEqualTo(kept);
        Path file = folder.resolve("desk.json");
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
        Files.writeString(file, "{}");
        assertThat(DeskCredentials.of(folder, random).port()).isZero();
    }
}
