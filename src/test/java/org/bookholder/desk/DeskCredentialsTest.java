package org.bookholder.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Which stored keys of a desk are used again. */
final class DeskCredentialsTest {
    private static final String KEY = "0123456789abcdefghijklmn";

    private final SecureRandom random = new SecureRandom();

    @TempDir
    private Path folder;

    @Test
    void portAndSecretAreUsedAgainAndTheKeyIsNew() throws ProblemException {
        DeskCredentials keys = DeskCredentials.fresh(random).at(8750);
        keys.keep(folder);
        assertThat(DeskCredentials.kept(folder)).contains(keys);
        DeskCredentials again = DeskCredentials.of(folder, random);
        assertThat(again.port()).isEqualTo(8750);
        assertThat(again.secret()).isEqualTo(keys.secret());
        assertThat(again.key()).isNotEqualTo(keys.key()).hasSizeGreaterThan(20);
    }

    @Test
    void newKeysAreMadeWhereThereAreNone() {
        DeskCredentials one = DeskCredentials.of(folder, random);
        DeskCredentials other = DeskCredentials.of(folder, random);
        assertThat(one.key()).isNotEqualTo(other.key()).hasSizeGreaterThan(20);
        assertThat(one.secret()).isNotEqualTo(other.secret()).hasSizeGreaterThan(20);
    }

    /** Keys that a person could guess, or that somebody has tampered with, must not let anybody in. */
    @ParameterizedTest
    @CsvSource({
        "0, 0123456789abcdefghijk, 0123456789abcdefghijk, true",
        "65535, 0123456789abcdefghijklmn, 0123456789abcdefghijklmn, true",
        "65536, 0123456789abcdefghijklmn, 0123456789abcdefghijklmn, false",
        "-1, 0123456789abcdefghijklmn, 0123456789abcdefghijklmn, false",
        "0, 0123456789abcdefghij, 0123456789abcdefghijklmn, false",
        "0, 0123456789abcdefghijklmn, 0123456789abcdefghij, false"
    })
    void onlyCompleteKeysAreUsed(int port, String secret, String key, boolean used) throws ProblemException {
        new DeskCredentials(port, secret, key).keep(folder);
        assertThat(DeskCredentials.kept(folder).isPresent()).isEqualTo(used);
    }

    @ParameterizedTest
    @CsvSource({
        "'no JSON at all'",
        "'{\"port\":0,\"secret\":\"" + KEY + "\",\"kez\":\"" + KEY + "\"}'",
        "'{\"port\":0,\"secret\":\"" + KEY + "\",\"key\":null}'"
    })
    void aDamagedFileIsAsNone(String text) throws IOException {
        Files.writeString(folder.resolve("desk.json"), text);
        assertThat(DeskCredentials.kept(folder)).isEmpty();
    }
}
