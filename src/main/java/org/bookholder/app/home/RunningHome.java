package org.bookholder.app.home;

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
import org.bookholder.app.environment.Environment;
import org.bookholder.desk.AccessControl;
import org.bookholder.desk.DeskCredentials;

/**
 * The home that another process of this user has open.
 *
 * @param keys its port and keys
 */
public record RunningHome(DeskCredentials keys) {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final Duration PATIENCE = Duration.ofSeconds(3);

    /** Finds it: whatever answers at the port that was noted has to prove that it knows the key before it is sent. */
    public static Optional<RunningHome> find(Environment here) throws InterruptedException {
        Optional<RunningHome> noted = DeskCredentials.kept(Home.folder(here)).map(RunningHome::new);
        return noted.isPresent() && noted.get().proves() ? noted : Optional.empty();
    }

    private boolean proves() throws InterruptedException {
        byte[] bytes = new byte[24];
        new SecureRandom().nextBytes(bytes);
        String challenge = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
        Optional<String> proof = answer(request("proof?challenge=" + challenge).build())
                .map(given -> given.path("proof").asText(""));
        return proof.isPresent()
                && MessageDigest.isEqual(
                        proof.get().getBytes(StandardCharsets.UTF_8),
                        AccessControl.proof(keys, challenge).getBytes(StandardCharsets.UTF_8));
    }

    /**
     * What it answers to a second start.
     *
     * @param address the address of its page for a browser that is started with it
     * @param refused why it did not open the course; empty if it did, or none was given
     */
    public record Shown(String address, String refused) {}

    /**
     * Asks it for its page, and to open a course.
     *
     * @param course the course's folder, if one is to be opened
     * @return empty if it has just ended
     */
    public Optional<Shown> show(Optional<Path> course) throws InterruptedException {
        ObjectNode asked = MAPPER.createObjectNode().put("key", keys.key());
        course.ifPresent(folder ->
                asked.put("course", folder.toAbsolutePath().normalize().toString()));
        HttpRequest request = request("ticket")
                .header("Content-Type", "application/json")
                .header("Origin", "http://127.0.0.1:" + keys.port())
                .POST(HttpRequest.BodyPublishers.ofString(asked.toString()))
                .build();
        return answer(request)
                .filter(given -> given.hasNonNull("ticket"))
                .map(given -> new Shown(
                        Home.address(keys.port(), given.path("ticket").asText()),
                        given.path("refused").asText("")));
    }

    /** The address of its page; whoever has it may use it until that process ends. */
    public String address() {
        return Home.address(keys.port(), keys.key());
    }

    private HttpRequest.Builder request(String path) {
        return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + keys.port() + "/" + path))
                .timeout(PATIENCE);
    }

    private static Optional<JsonNode> answer(HttpRequest request) throws InterruptedException {
        try {
            HttpClient client = HttpClient.newBuilder().connectTimeout(PATIENCE).build();
            HttpResponse<String> answer = client.send(request, HttpResponse.BodyHandlers.ofString());
            return Optional.of(MAPPER.readTree(answer.body()));
        } catch (IOException | IllegalArgumentException nobody) {
            return Optional.empty();
        }
    }
}
