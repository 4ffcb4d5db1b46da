package org.bookholder.desk.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.desk.http.Wire.status;

import java.io.BufferedReader;
import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.ZoneOffset;
import org.bookholder.desk.AccessControl;
import org.bookholder.desk.Actions;
import org.bookholder.desk.DeskCredentials;
import org.bookholder.desk.DeviceFile;
import org.bookholder.desk.ExampleDesk;
import org.bookholder.desk.Feed;
import org.bookholder.desk.LiveHistory;
import org.bookholder.desk.ServedSession;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.testing.FakeClock;
import org.bookholder.testing.Wav;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A desk that is served for each test, with one who may act and one who may look. */
abstract class ServedDesk {
    final SecureRandom random = new SecureRandom();
    final DeskCredentials keys = DeskCredentials.fresh(random);
    final FakeClock clock = new FakeClock();

    @TempDir
    Path folder;

    ExampleDesk session;
    Feed feed;
    AccessControl admission;
    DeskServer server;
    Wire wire;
    String acting;
    String looking;

    Socket events(String page) throws IOException {
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

    static String until(BufferedReader in, String beginning) throws IOException {
        String line = in.readLine();
        while (line != null && !line.startsWith(beginning)) {
            line = in.readLine();
        }
        assertThat(line).isNotNull();
        return line;
    }

    String cookie(String code) throws IOException {
        String answer = wire.post("/join", "", "{\"code\":\"" + code + "\"}");
        assertThat(status(answer)).isEqualTo(200);
        String header = answer.lines()
                .filter(l -> l.startsWith("Set-Cookie: "))
                .findFirst()
                .orElseThrow();
        assertThat(header).contains("HttpOnly", "SameSite=Strict");
        return header.substring("Set-Cookie: ".length(), header.indexOf(';'));
    }

    @BeforeEach
    void open() throws Exception {
        session = new ExampleDesk(folder);
        Wav.write(folder.resolve("take-001.wav"), 16_000, Wav.sine(440, 0.5, 16_000, 7));
        feed = new Feed(session, LiveHistory.NONE, "run", ZoneOffset.UTC);
        admission = new AccessControl(keys, true, random, clock, clock, DeviceFile.none());
        server = DeskServer.open(
                DeskAddress.local(),
                SessionDirectory.of(new ServedSession(session, feed, new Actions(session, clock))),
                admission,
                clock);
        wire = new Wire(server.port());
        acting = cookie(keys.key());
        looking = cookie(admission.lookCode().orElseThrow());
    }

    @AfterEach
    void close() {
        server.close();
    }
}
