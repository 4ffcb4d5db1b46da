package org.bookholder.desk;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Optional;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.problem.ProblemException;

/**
 * The secrets of a desk. Kept beside the session, so that open pages can come back when the program is started again.
 *
 * @param port the port at which the desk was last reached; 0 if it never was
 * @param secret with which the program proves to its pages that it is the same as before, Base64
 * @param key admits the person at this machine, as a part of the address that the terminal shows; new at each start
 */
public record DeskCredentials(int port, String secret, String key) {
    private static final String FILE = "desk.json";
    private static final int BYTES = 24;
    private static final JsonMapper MAPPER = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
            .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
            .build();

    /** New, random credentials. */
    public static DeskCredentials fresh(SecureRandom random) {
        return new DeskCredentials(0, Secrets.random(random, BYTES), Secrets.random(random, BYTES));
    }

    /**
     * The stored credentials of the session in a folder, with a new key: an address that was opened while the program did not run
     * may have shown the old one to another program. New ones if there are none, or none that can be read.
     */
    public static DeskCredentials of(Path folder, SecureRandom random) {
        return kept(folder)
                .map(kept -> new DeskCredentials(kept.port(), kept.secret(), Secrets.random(random, BYTES)))
                .orElseGet(() -> fresh(random));
    }

    /** The credentials stored in a folder; empty if there are none, or none that can be read. */
    public static Optional<DeskCredentials> kept(Path folder) {
        try {
            DeskCredentials kept = MAPPER.readValue(Files.readString(folder.resolve(FILE)), DeskCredentials.class);
            return Optional.of(kept).filter(DeskCredentials::complete);
        } catch (IOException none) {
            return Optional.empty();
        }
    }

    /**
     * Stores them beside the session; only the owner can read them, where the file system supports owners.
     *
     * @throws ProblemException if they cannot be written
     */
    public void keep(Path folder) throws ProblemException {
        Path file = folder.resolve(FILE);
        try {
            new AtomicFiles(Access.OWNER).write(file, MAPPER.writeValueAsString(this));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("keys must have a JSON form", e);
        } catch (IOException e) {
            throw new ProblemException(
                    "the desk's keys cannot be kept", file.toString(), "see that the folder can be written", e);
        }
    }

    /** The same at another port. */
    public DeskCredentials at(int newPort) {
        return new DeskCredentials(newPort, secret, key);
    }

    private boolean complete() {
        boolean port16 = port >= 0 && port <= 0xFFFF;
        return port16 && secret.length() > 20 && key.length() > 20;
    }
}
