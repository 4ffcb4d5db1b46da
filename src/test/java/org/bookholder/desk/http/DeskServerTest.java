package org.bookholder.desk.http;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.desk.http.Wire.status;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.Socket;
import java.nio.file.Files;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.testing.Readings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The real server, spoken to over real sockets. */
@Timeout(60)
final class DeskServerTest extends ServedDesk {
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

    @Test
    void aFileThatABrowserHasIsNotSentAgain() throws IOException {
        String sent = wire.get("/words.js", "");
        String tag = sent.lines()
                .filter(line -> line.startsWith("ETag: "))
                .findFirst()
                .orElseThrow()
                .substring("ETag: ".length());
        String again = wire.get("/words.js", "", "If-None-Match: " + tag);
        assertThat(status(again)).isEqualTo(304);
        assertThat(again).doesNotContain("export");
        assertThat(status(wire.get("/words.js", "", "If-None-Match: \"another\"")))
                .isEqualTo(200);
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
        String linked = "Sec-Fetch-Site: same-site\r\nSec-Fetch-Mode: navigate\r\nSec-Fetch-Dest: ";
        assertThat(status(wire.get("/who", acting, linked + "document"))).isEqualTo(403);
        assertThat(status(wire.get("/", acting, linked + "iframe"))).isEqualTo(403);
        assertThat(status(wire.get("/", acting, linked + "document")))
                .as("a link from the desk of a course")
                .isEqualTo(200);
        assertThat(status(wire.raw("POST /act HTTP/1.1\r\nHost: 127.0.0.1:" + port + "\r\nCookie: " + acting
                        + "\r\nContent-Type: application/json\r\nContent-Length: 13\r\nConnection: close\r\n\r\n"
                        + "{\"do\":\"mark\"}")))
                .as("without an origin")
                .isEqualTo(403);
        assertThat(session.told).isEmpty();
    }

    @Test
    void aViewerCannotAct() throws IOException {
        assertThat(wire.get("/who", looking)).contains("{\"acts\":false,\"course\":false,");
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
        assertThat(status(wire.post(
                        "/join", "", "{\"code\":\"" + admission.actCode().orElseThrow() + "\"}")))
                .isEqualTo(429);
    }

    @Test
    void theCookieIsSentOnlyBelowAnAddressThatNobodyElseKnows() throws IOException {
        String joined = wire.post("/join", "", "{\"code\":\"" + keys.key() + "\"}");
        String place = joined.substring(joined.indexOf("/in/"), joined.indexOf("/in/") + "/in/".length() + 22);
        assertThat(joined).contains("Path=" + place + "/;", "{\"place\":\"" + place + "\"}");
        assertThat(status(wire.get(place + "/who", acting))).isEqualTo(200);
        assertThat(status(wire.get(place + "/", ""))).as("the page itself").isEqualTo(200);
        assertThat(status(wire.get(place + "/who", ""))).isEqualTo(401);
        assertThat(status(wire.post(place + "/act", acting, "{\"do\":\"mark\"}")))
                .isEqualTo(200);
        assertThat(status(wire.get(place + "/../../etc/passwd", acting))).isIn(400, 404);
    }

    @Test
    void theOwnerSeesWhoIsInAndLetsOneOut() throws IOException {
        String list = wire.get("/devices", acting);
        assertThat(status(list)).isEqualTo(200);
        String guest = list.replaceFirst("(?s).*\"id\":\"([^\"]+)\",\"name\":\"A browser\",\"own\":false.*", "$1");
        assertThat(list).contains("\"joinCode\":\"" + admission.actCode().orElseThrow() + '"');
        assertThat(status(wire.get("/devices", looking))).isEqualTo(403);
        assertThat(status(wire.post("/devices", looking, "{\"out\":\"" + guest + "\"}")))
                .isEqualTo(403);
        try (Socket socket = events("one")) {
            String code = admission.lookCode().orElseThrow();
            assertThat(status(wire.post("/devices", acting, "{\"out\":\"" + guest + "\"}")))
                    .isEqualTo(200);
            // Its open page is told nothing any more.
            socket.getInputStream().readAllBytes();
            assertThat(status(wire.get("/who", looking))).isEqualTo(401);
            assertThat(status(wire.post("/join", "", "{\"code\":\"" + code + "\"}")))
                    .isEqualTo(401);
        }
        assertThat(status(wire.get("/who", acting))).isEqualTo(200);
    }

    @Test
    void afterADayADeviceIsOutAndItsCodeIsNoneAnyMore() throws IOException {
        String code = admission.actCode().orElseThrow();
        clock.pass(Duration.ofDays(1));
        assertThat(status(wire.get("/who", looking))).isEqualTo(401);
        assertThat(status(wire.post("/join", "", "{\"code\":\"" + code + "\"}")))
                .isEqualTo(401);
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
}
