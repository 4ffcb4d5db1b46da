package org.bookholder.desk.http;

import static java.nio.charset.StandardCharsets.US_ASCII;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.desk.http.Wire.status;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.bookholder.desk.Actions;
import org.bookholder.desk.ServedSession;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.testing.Readings;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** Clients that open too many connections, ask too often, too slowly or not at all. */
@Timeout(60)
@Execution(ExecutionMode.CONCURRENT)
final class DeskConnectionsTest extends ServedDesk {
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
        // Another program at this address does not keep out whoever is in.
        assertThat(status(wire.get("/who", acting))).isEqualTo(200);
        double seconds = (System.nanoTime() - begun) * 1e-9;
        assertThat(answers.keySet()).containsExactlyInAnyOrder(200, 429);
        assertThat((double) answers.getOrDefault(200, 0))
                .isLessThan(RateLimit.AT_ONCE + RateLimit.PER_SECOND * seconds + 1);
        String next = wire.get("/index.html", "");
        while (status(next) == 429) {
            assertThat(next).contains("Retry-After: 5", "too many requests; wait a little");
            next = wire.get("/index.html", "");
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
            // The one that has waited longest makes room at once for one more, and that one is served.
            assertThat(status(wire.get("/who", acting))).isEqualTo(200);
            assertThat(open.get(0).getInputStream().read()).isEqualTo(-1);
        } finally {
            for (Socket socket : open) {
                socket.close();
            }
        }
    }

    /** The server's clock is the test's: only what is asked for passes. */
    @Test
    void aConnectionThatDripsIsClosedAtTheDeadlineAndOneThatIsAnsweredIsNot() throws IOException {
        String post = "POST /join HTTP/1.1\r\nHost: 127.0.0.1:" + server.port() + "\r\nOrigin: http://127.0.0.1:"
                + server.port() + "\r\nContent-Type: application/json\r\nContent-Length: 50\r\n\r\n";
        try (Socket events = events("one");
                Socket head = wire.open();
                Socket body = wire.open()) {
            head.getOutputStream().write("GET / HTTP/1.1\r\nX-A: ".getBytes(US_ASCII));
            body.getOutputStream().write((post + "{").getBytes(US_ASCII));
            // What is asked on a later connection is answered, so the server knows of these two.
            assertThat(status(wire.get("/who", acting))).isEqualTo(200);
            clock.pass(Duration.ofSeconds(19));
            drip(head);
            drip(body);
            assertThat(status(wire.get("/who", acting))).isEqualTo(200);
            clock.pass(Duration.ofSeconds(1));
            // The server looks every second of its own.
            assertThat(endsUnanswered(head)).isTrue();
            assertThat(endsUnanswered(body)).isTrue();
            session.happens(Readings.moved(7, 3, 2, 1));
            feed.look();
            until(new BufferedReader(new InputStreamReader(events.getInputStream(), UTF_8)), "event: change");
        }
    }

    private static void drip(Socket socket) throws IOException {
        socket.getOutputStream().write('a');
    }

    private static boolean endsUnanswered(Socket socket) throws IOException {
        try {
            return !new String(socket.getInputStream().readAllBytes(), UTF_8).contains(" 200 ");
        } catch (SocketException reset) {
            return true;
        }
    }

    /** No half-open connection is left, and none of a client that asks but does not read. */
    @Test
    void idleConnectionsAreClosed() throws Exception {
        server.close();
        server = DeskServer.open(
                DeskAddress.local(),
                SessionDirectory.of(new ServedSession(session, feed, new Actions(session, clock))),
                admission,
                clock,
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
}
