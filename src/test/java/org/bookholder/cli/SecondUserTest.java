package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.Browser;
import org.bookholder.testing.ChildJvm;
import org.bookholder.testing.SecondUser;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** What another user of the same machine can get from the program's pages. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class SecondUserTest {
    @TempDir
    private Path folder;

    @BeforeEach
    void secondUser() throws IOException {
        SecondUser.needed();
    }

    @Test
    void theyComeInNeitherByTheTicketOfTheBrowsersCommandNorByTheKey() throws IOException {
        try (ChildJvm home = start("--no-browser")) {
            URI address = URI.create(home.readTo("Home: ").substring("Home: ".length()));
            List<String> join = List.of(
                    "curl",
                    "-s",
                    "-w",
                    " %{http_code}",
                    "-H",
                    "Origin: http://127.0.0.1:" + address.getPort(),
                    "--json",
                    "{\"code\":\"" + address.getFragment() + "\"}",
                    "http://127.0.0.1:" + address.getPort() + "/join");
            assertThat(SecondUser.run(join.toArray(String[]::new)))
                    .isEqualTo("this page belongs to another user of this machine 403");
            Process own = new ProcessBuilder(join).start();
            assertThat(new String(own.getInputStream().readAllBytes(), StandardCharsets.UTF_8))
                    .endsWith("\"} 200");
        }
    }

    /** A browser sends cookies to every port of a machine; an open page also asks again where the program was. */
    @Test
    void anOpenPageGivesTheirProgramNothingThatOpensTheDesk()
            throws IOException, InterruptedException, ProblemException {
        Browser.needed();
        Path session = folder.resolve("session");
        StoredExamples.write(session, "lesson.md");
        List<String> told = new ArrayList<>();
        try (Browser browser = new Browser()) {
            browser.size(1440, 900);
            int port;
            try (ChildJvm desk = start("desk", session.toString());
                    SecondUser.Listening elsewhere = SecondUser.listen(0)) {
                URI address = URI.create(desk.readTo("Desk: ").substring("Desk: ".length()));
                port = address.getPort();
                browser.open(address.toString());
                browser.until("window.deskState && deskState.model.known");
                browser.openTab("http://127.0.0.1:" + elsewhere.port() + "/page");
                assertThat(elsewhere.toldUntil("/page")).containsExactly("GET|/page||");
                browser.firstTab();
                desk.kill();
            }
            try (SecondUser.Listening taken = SecondUser.listen(port)) {
                told.addAll(taken.toldUntil("/proof"));
                browser.until("document.querySelector('#link').textContent.startsWith('Another program answers')");
                told.addAll(taken.toldUntil("/proof"));
            }
            assertThat(told).noneMatch(line -> line.startsWith("POST"));
            assertThat(told)
                    .filteredOn(line -> line.contains("/proof"))
                    .hasSize(2)
                    .allSatisfy(line -> assertThat(line).endsWith("||"));
            try (ChildJvm desk = start("desk", session.toString())) {
                assertThat(URI.create(desk.readTo("Desk: ").substring("Desk: ".length()))
                                .getPort())
                        .isEqualTo(port);
                assertThat(told).anyMatch(line -> !cookie(line).isEmpty());
                for (String line : told) {
                    assertThat(status(port, cookie(line))).as(line).isEqualTo(401);
                }
                browser.until("document.querySelector('#link').textContent === ''");
                assertThat(browser.awaited("fetch('who').then(answer => answer.status)"))
                        .isEqualTo(200L);
            }
        }
    }

    private static String cookie(String line) {
        return line.split("\\|", -1)[2];
    }

    private static int status(int port, String cookie) throws IOException, InterruptedException {
        HttpRequest request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/who"))
                .header("Cookie", cookie.isEmpty() ? "none=" : cookie)
                .build();
        return HttpClient.newHttpClient()
                .send(request, HttpResponse.BodyHandlers.ofString())
                .statusCode();
    }

    private ChildJvm start(String... arguments) throws IOException {
        Map<String, String> machine = Map.of(
                "XDG_DATA_HOME",
                folder.resolve("data").toString(),
                "XDG_CONFIG_HOME",
                folder.resolve("settings").toString(),
                "DISPLAY",
                "",
                "WAYLAND_DISPLAY",
                "");
        return ChildJvm.startWith(machine, Main.class, arguments);
    }
}
