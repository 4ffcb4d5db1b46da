package org.bookholder.app.desk;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.Base64;
import java.util.Optional;
import org.bookholder.desk.AccessControl;
import org.bookholder.desk.DeskCredentials;

/**
 * A desk that another process of this user has open on this machine.
 *
 * @param keys its port and keys, which only their owner can read
 * @param client asks it; one for all questions, as each client has a thread of its own
 */
public record DeskElsewhere(DeskCredentials keys, HttpClient client) {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final Duration PATIENCE = Duration.ofSeconds(3);

    /**
     * Finds the desk whose credentials a folder holds: whatever answers at the port that was noted has to prove that it knows them,
     * before it is sent the key.
     */
    public static Optional<DeskElsewhere> of(Path folder) throws InterruptedException {
        Optional<DeskElsewhere> noted = DeskCredentials.kept(folder)
                .map(keys -> new DeskElsewhere(
                        keys, HttpClient.newBuilder().connectTimeout(PATIENCE).build()));
        return noted.isPresent() && noted.get().proves() ? noted : Optional.empty();
    }

    private boolean proves() throws InterruptedException {
        byte[] bytes = new byte[24];
        new SecureRandom().nextBytes(bytes);
        // With the port, so that another program there cannot pass the question on to the desk at its new port.
        String challenge = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes) + "." + keys.port();
        Optional<String> proof = answer(request("proof?challenge=" + challenge).build())
                .map(given -> given.path("proof").asText(""));
        return proof.isPresent()
                && MessageDigest.isEqual(
                        proof.get().getBytes(StandardCharsets.UTF_8),
                        AccessControl.proof(keys, challenge).getBytes(StandardCharsets.UTF_8));
    }

    /** The address of its page for one browser, which has to open it within a minute; empty if the desk has just ended. */
    public Optional<String> address() throws InterruptedException {
        return ticket(MAPPER.createObjectNode())
                .map(given -> address(given.path("ticket").asText()));
    }

    /**
     * Asks it for a ticket.
     *
     * @param with what else it is asked
     * @return its answer, which has the {@code ticket}; empty if it gives none
     */
    public Optional<JsonNode> ticket(ObjectNode with) throws InterruptedException {
        HttpRequest request = request("ticket")
                .header("Content-Type", "application/json")
                .header("Origin", origin())
                .POST(HttpRequest.BodyPublishers.ofString(
                        with.put("key", keys.key()).toString()))
                .build();
        return answer(request).filter(given -> given.hasNonNull("ticket"));
    }

    /** The address of its page for whoever has that ticket, or key. */
    public String address(String code) {
        return origin() + "/#" + code;
    }

    private HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(URI.create(origin() + "/" + path)).timeout(PATIENCE);
    }

    private String origin() {
        return "http://127.0.0.1:" + keys.port();
    }

    private Optional<JsonNode> answer(HttpRequest request) throws InterruptedException {
        try {
            HttpResponse<String> answer = client.send(request, HttpResponse.BodyHandlers.ofString());
            return Optional.of(MAPPER.readTree(answer.body()));
        } catch (IOException | IllegalArgumentException nobody) {
            return Optional.empty();
        }
    }
}
