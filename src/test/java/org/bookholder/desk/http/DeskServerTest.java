package org.bookholder.desk.http;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.desk.http.Wire.status;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.bookholder.desk.AccessControl;
import org.bookholder.desk.Actions;
import org.bookholder.desk.DeskCredentials;
import org.bookholder.desk.ExampleDesk;
import org.bookholder.desk.Feed;
import org.bookholder.desk.LiveHistory;
import org.bookholder.desk.ServedSession;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.testing.FakeClock;
import org.bookholder.testing.Readings;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The real server, spoken to over real sockets. */
@Timeout(60)
final class DeskServerTest {
    private final SecureRandom random = new SecureRandom();
    private final DeskCredentials keys = DeskCredentials.fresh(random);
    private final FakeClock clock = new FakeClock();

    @TempDir
    private Path folder;

    private ExampleDesk session;
    private Feed feed;
    private DeskServer server;
    private Wire wire;
    private String acting;
    private String looking;

    @BeforeEach
    void open() throws Exception {
        session = new ExampleDesk(folder);
        Wav.write(folder.resolve("take-001.wav"), 16_000, Wav.sine(440, 0.5, 16_000, 7));
        feed = new Feed(session, LiveHistory.NONE, "run", ZoneOffset.UTC);
        AccessControl admission = new AccessControl(keys, true, random, clock);
        server = DeskServer.open(
                DeskAddress.local(),
                SessionDirectory.of(new ServedSession(session, feed, new Actions(session, clock))),
                admission);
        wire = new Wire(server.port());
        acting = cookie(keys.key());
        looking = cookie(keys.look());
    }

    @AfterEach
    void close() {
        server.close();
    }

    private String cookie(String code) throws IOException {
        String answer = wire.post("/join", "", "{\"code\":\"" + code + "\"}");
        assertThat(status(answer)).isEqualTo(200);
        String header = answer.lines()
                .filter(l -> l.startsWith("Set-Cookie: "))
                .findFirst()
                .orElseThrow();
        assertThat(header).contains("HttpOnly", "SameSite=Strict");
        return header.substring("Set-Cookie: ".length(), header.indexOf(';'));
    }

    @Test
    void thePageIsServedWithAStrictPolicyAndNothingElseWithoutACode() throws IOException {
        String page = wire.get("/", "");
        assertThat(status(page)).isEqualTo(200);
        assertThat(page).contains("default-src 'none'", "frame-ancestors 'none'", "nosniff", "<title>Desk</title>");
        assertThat(page).doesNotContain("Access-Control", "Server:");
        for (String path : List.of("/who", "/events", "/takes/1.wav", "/peaks?take=1", "/pickups.pdf", "/other")) {
            assertThat(status(wire.get(path, ""))).as(path).isEqualTo(401);
            assertThat(status(wire.get(path, acting + "x"))).as(path).isEqualTo(401);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/../../etc/passwd",
                "/%2e%2e/%2e%2e/etc/passwd",
                "/..%2f..%2fetc/passwd",
                "/takes/../desk.json",
                "/takes/..%2f..%2fdesk.json",
                "/takes/1.wav/../../desk.json",
                "//etc/passwd",
                "/takes/1.wav%00.json",
                "/takes/99999999999999999999.wav",
                "/page/index.html",
                "/..;/desk.json"
            })
    void noPathLeavesThePagesFolder(String path) throws IOException {
        assertThat(status(wire.get(path, acting))).isIn(400, 404);
    }

    @Test
    void otherHostsAndOtherOriginsAreTurnedAway() throws IOException {
        int port = server.port();
        for (String host : List.of("evil.example", "evil.example:" + port, "127.0.0.1", "127.0.0.1:1", "")) {
            String answer = wire.say("GET / HTTP/1.1", "Host: " + host, "Connection: close");
            assertThat(status(answer)).as(host).isIn(400, 421);
        }
        assertThat(status(wire.get("/who", acting, "Origin: http://evil.example")))
                .isEqualTo(403);
        assertThat(status(wire.get("/who", acting, "Origin: null"))).isEqualTo(403);
        assertThat(status(wire.get("/who", acting, "Sec-Fetch-Site: cross-site")))
                .isEqualTo(403);
        assertThat(status(wire.raw("POST /act HTTP/1.1\r\nHost: 127.0.0.1:" + port + "\r\nCookie: " + acting
                        + "\r\nContent-Type: application/json\r\nContent-Length: 13\r\nConnection: close\r\n\r\n"
                        + "{\"do\":\"mark\"}")))
                .as("without an origin")
                .isEqualTo(403);
        assertThat(session.told).isEmpty();
    }

    @Test
    void aViewerCannotAct() throws IOException {
        assertThat(wire.get("/who", looking)).endsWith("{\"acts\":false,\"course\":false}");
        assertThat(status(wire.post("/act", looking, "{\"do\":\"mark\"}"))).isEqualTo(403);
        assertThat(session.told).isEmpty();
        assertThat(status(wire.post("/act", acting, "{\"do\":\"mark\"}"))).isEqualTo(200);
        assertThat(session.told).hasSize(1);
    }

    @Test
    void anActionIsAnsweredWithItsOutcome() throws IOException {
        assertThat(status(wire.post("/act", acting, "{\"do\":\"applaud\"}"))).isEqualTo(400);
        String refused = wire.post("/act", acting, "{\"do\":\"undo\"}");
        assertThat(status(refused)).isEqualTo(409);
        assertThat(refused).endsWith("there is nothing to undo");
        session.fails = "The session has ended. This was not done.";
        String failed = wire.post("/act", acting, "{\"do\":\"mark\"}");
        assertThat(status(failed)).isEqualTo(503);
        assertThat(failed).endsWith("The session has ended. This was not done.");
        assertThat(session.told).isEmpty();
    }

    @Test
    void bodiesAndHeadersAreBounded() throws IOException {
        assertThat(status(wire.post("/act", acting, " ".repeat(RequestFilter.MOST_BODY_BYTES + 1))))
                .isEqualTo(413);
        assertThat(status(wire.raw(
                        "POST /act HTTP/1.1\r\nHost: 127.0.0.1:" + server.port() + "\r\nOrigin: http://127.0.0.1:"
                                + server.port() + "\r\nCookie: " + acting + "\r\nContent-Type: application/json\r\n"
                                + "Transfer-Encoding: chunked\r\nConnection: close\r\n\r\n2\r\n{}\r\n0\r\n\r\n")))
                .isEqualTo(411);
        assertThat(status(wire.get("/who", acting, "X-Long: " + "x".repeat(20_000))))
                .isEqualTo(431);
        assertThat(status(wire.say("PUT / HTTP/1.1", "Host: 127.0.0.1:" + server.port(), "Connection: close")))
                .isEqualTo(405);
    }

    @Test
    void codesCannotBeGuessed() throws IOException {
        List<Integer> answers = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            answers.add(status(wire.post("/join", "", "{\"code\":\"AAAA-AAA" + i + "\"}")));
        }
        assertThat(answers.subList(0, 8)).containsOnly(401);
        assertThat(answers.subList(8, 12)).containsOnly(429);
        assertThat(status(wire.post("/join", "", "{\"code\":\"" + keys.act() + "\"}")))
                .isEqualTo(429);
    }

    @Test
    void tenThousandRequestsAreRefusedAndALaterOneIsServed() throws IOException {
        Map<Integer, Integer> answers = new HashMap<>();
        long begun = System.nanoTime();
        try (Socket socket = wire.open();
                BufferedReader in = new BufferedReader(
                        new InputStreamReader(socket.getInputStream(), StandardCharsets.ISO_8859_1))) {
            byte[] request = ("HEAD /index.html HTTP/1.1\r\nHost: 127.0.0.1:" + server.port() + "\r\n\r\n")
                    .getBytes(StandardCharsets.US_ASCII);
            for (int i = 0; i < 10_000; i++) {
                socket.getOutputStream().write(request);
                answers.merge(status(in.readLine()), 1, Integer::sum);
                while (!in.readLine().isEmpty()) {
                    // The rest of the head.
                }
            }
        }
        double seconds = (System.nanoTime() - begun) * 1e-9;
        assertThat(answers.keySet()).containsExactlyInAnyOrder(200, 429);
        assertThat((double) answers.getOrDefault(200, 0))
                .isLessThan(RateLimit.AT_ONCE + RateLimit.PER_SECOND * seconds + 1);
        String next = wire.get("/who", acting);
        while (status(next) == 429) {
            assertThat(next).contains("Retry-After: 5", "too many requests; wait a little");
            next = wire.get("/who", acting);
        }
        assertThat(status(next)).isEqualTo(200);
    }

    @Test
    void halfOpenConnectionsBlockNobody() throws IOException {
        List<Socket> half = new ArrayList<>();
        try {
            for (int i = 0; i < 100; i++) {
                Socket socket = wire.open();
                String begun = i % 2 == 0
                        ? "GET / HTTP/1.1\r\nHost: 127"
                        : "POST /join HTTP/1.1\r\nHost: 127.0.0.1:" + server.port() + "\r\nOrigin: http://127.0.0.1:"
                                + server.port() + "\r\nContent-Type: application/json\r\nContent-Length: 50\r\n\r\n{";
                socket.getOutputStream().write(begun.getBytes(StandardCharsets.US_ASCII));
                half.add(socket);
            }
            assertThat(status(wire.get("/who", acting))).isEqualTo(200);
            assertThat(status(wire.post("/act", acting, "{\"do\":\"mark\"}"))).isEqualTo(200);
        } finally {
            for (Socket socket : half) {
                socket.close();
            }
        }
    }

    @Test
    void oneMachineCannotTakeUpAllConnections() throws IOException {
        List<Socket> open = new ArrayList<>();
        try {
            for (int i = 0; i < ConnectionLimiter.MOST; i++) {
                open.add(wire.open());
            }
            // The one too many is closed at once, and when others have gone there is room again.
            Socket more = wire.open();
            open.add(more);
            assertThat(more.getInputStream().read()).isEqualTo(-1);
        } finally {
            for (Socket socket : open) {
                socket.close();
            }
        }
        String answer = "";
        while (answer.isEmpty()) {
            try {
                answer = wire.get("/who", acting);
            } catch (SocketException stillFull) {
                // The server has not seen all of them go yet.
            }
        }
        assertThat(status(answer)).isEqualTo(200);
    }

    /** No half-open connection is left, and none of a client that asks but does not read. */
    @Test
    void idleConnectionsAreClosed() throws Exception {
        server.close();
        server = DeskServer.open(
                DeskAddress.local(),
                SessionDirectory.of(new ServedSession(session, feed, new Actions(session, clock))),
                new AccessControl(keys, true, random, clock),
                200);
        wire = new Wire(server.port());
        for (String begun : List.of("", "GET / HT", "GET / HTTP/1.1\r\nHost: 127")) {
            try (Socket socket = wire.open()) {
                socket.getOutputStream().write(begun.getBytes(StandardCharsets.US_ASCII));
                String answer = new String(socket.getInputStream().readAllBytes(), UTF_8);
                assertThat(answer).as(begun).doesNotContain(" 200 ");
            }
        }
    }

    @Test
    void aPageThatReconnectsClosesItsLastConnection() throws IOException {
        try (Socket first = events("one");
                Socket other = events("two");
                Socket again = events("one")) {
            assertThat(feed.listening()).isEqualTo(2);
            // The first one hears of its end; a page could have been gone without a word.
            first.getInputStream().readAllBytes();
            session.happens(Readings.moved(7, 3, 2, 1));
            feed.look();
            for (Socket socket : List.of(other, again)) {
                until(new BufferedReader(new InputStreamReader(socket.getInputStream(), UTF_8)), "event: change");
            }
        }
    }

    private Socket events(String page) throws IOException {
        Socket socket = wire.open();
        socket.getOutputStream()
                .write(("GET /events?page=" + page + " HTTP/1.1\r\nHost: 127.0.0.1:" + server.port() + "\r\nCookie: "
                                + looking + "\r\n\r\n")
                        .getBytes(StandardCharsets.US_ASCII));
        // It is told the whole only once it is told of what changes; no more is read than that.
        StringBuilder told = new StringBuilder();
        while (told.indexOf("event: whole") < 0) {
            int next = socket.getInputStream().read();
            assertThat(next).as("after '" + told + "'").isNotNegative();
            told.append((char) next);
        }
        return socket;
    }

    @Test
    void aTakeIsServedByRanges() throws IOException {
        String some = wire.get("/takes/1.wav", acting, "Range: bytes=44-143");
        assertThat(status(some)).isEqualTo(206);
        assertThat(some).contains("Content-Range: bytes 44-143/224044", "Content-Length: 100", "audio/wav");
        String whole = wire.get("/takes/1.wav", acting);
        assertThat(whole.substring(whole.indexOf("\r\n\r\n") + 4))
                .startsWith("RIFF")
                .hasSize(224_044);
        assertThat(status(wire.get("/takes/1.wav", acting, "Range: bytes=224044-")))
                .isEqualTo(416);
        assertThat(status(wire.get("/takes/2.wav", acting))).isEqualTo(404);
        assertThat(wire.get("/peaks?take=1&from=1&to=3&points=4", acting)).contains("\"peaks\":[50,50,50,50]");
        for (String bad : List.of("from=3&to=1&points=4", "from=0&to=1e9&points=4", "from=0&to=1&points=9999999", "")) {
            assertThat(status(wire.get("/peaks?take=1&" + bad, acting))).as(bad).isEqualTo(400);
        }
    }

    @Test
    void aPageGetsChangesAsTheyHappen() throws IOException {
        try (Socket socket = events("one");
                BufferedReader in = new BufferedReader(new InputStreamReader(socket.getInputStream(), UTF_8))) {
            session.happens(Readings.moved(7, 3, 2, 1));
            feed.look();
            until(in, "event: change");
            assertThat(until(in, "id: ")).isEqualTo("id: run.1");
            assertThat(until(in, "data: ")).contains("\"line\":3,\"word\":2");
        }
    }

    @Test
    void aPageThatDoesNotReadIsClosedAndBlocksNothing() throws IOException {
        try (Socket socket = wire.open()) {
            socket.setReceiveBufferSize(4096);
            socket.getOutputStream()
                    .write(("GET /events HTTP/1.1\r\nHost: 127.0.0.1:" + server.port() + "\r\nCookie: " + looking
                                    + "\r\n\r\n")
                            .getBytes(StandardCharsets.US_ASCII));
            assertThat(socket.getInputStream().read()).isEqualTo('H');
            int looks = 0;
            do {
                session.writesNote("a long note ".repeat(1000));
                feed.look();
                looks++;
            } while (feed.listening() > 0 && looks < 1000);
            assertThat(feed.listening())
                    .as("pages still told after " + looks + " changes")
                    .isZero();
        }
    }

    @Test
    void theEditorsFilesAreSentByNameToWhoMayAct() throws IOException {
        Files.createDirectories(folder.resolve("handoff"));
        Files.writeString(folder.resolve("handoff/lesson-\u00e9t\u00e9.edl"), "TITLE: x");
        Files.writeString(folder.resolve("handoff/other.txt"), "not in the list");
        session.handOff.holds("lesson-\u00e9t\u00e9.edl", "gone.wav");
        String sent = wire.get("/handoff?name=lesson-%C3%A9t%C3%A9.edl", acting);
        assertThat(status(sent)).isEqualTo(200);
        assertThat(sent)
                .contains("Content-Disposition: attachment; filename*=UTF-8''lesson-%C3%A9t%C3%A9.edl")
                .endsWith("TITLE: x");
        for (String name : List.of("other.txt", "..%2Fdesk.json", "..%2Ftake-001.wav", "%2Fetc%2Fpasswd", "")) {
            assertThat(status(wire.get("/handoff?name=" + name, acting)))
                    .as(name)
                    .isEqualTo(404);
        }
        assertThat(status(wire.get("/handoff", acting))).isEqualTo(404);
        assertThat(status(wire.get("/handoff?name=lesson-%C3%A9t%C3%A9.edl", looking)))
                .isEqualTo(403);
        assertThat(status(wire.post("/act", acting, "{\"do\":\"hand_off\",\"replace\":true}")))
                .isEqualTo(200);
        assertThat(session.handOff.asked).containsExactly(true);
    }

    private static String until(BufferedReader in, String beginning) throws IOException {
        String line = in.readLine();
        while (line != null && !line.startsWith(beginning)) {
            line = in.readLine();
        }
        assertThat(line).isNotNull();
        return line;
    }
}
