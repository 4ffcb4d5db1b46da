package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.desk.DeskCredentials;
import org.bookholder.testing.ChildJvm;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.api.parallel.Execution;
import org.junit.jupiter.api.parallel.ExecutionMode;

/** A user has one home: processes that are started, started again, killed and ended. */
@Timeout(value = 240, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
@Execution(ExecutionMode.CONCURRENT)
final class HomeInstanceTest {
    private static final Pattern ADDRESS = Pattern.compile("Home: http://127\\.0\\.0\\.1:(\\d+)/#(\\S+)");

    private final HttpClient client = HttpClient.newHttpClient();

    @TempDir
    private Path folder;

    private record Address(String port, String key) {}

    @Test
    void aSecondStartBringsUpTheSameAndEnds() throws IOException, InterruptedException {
        try (ChildJvm first = start("--no-browser")) {
            Address address = address(first);
            Path keys = folder.resolve("data/bookholder/home/desk.json");
            assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(keys)))
                    .isEqualTo("rw-------");
            try (ChildJvm second = start("--no-browser")) {
                assertThat(second.untilItEnds())
                        .containsExactly(
                                "Home: http://127.0.0.1:" + address.port() + "/#" + address.key(), "exit status 0");
            }
            assertThat(status(address.port(), join(address.port(), address.key()), "/who"))
                    .isEqualTo(200);
            assertThat(first.interrupt()).doesNotContain("exit status 1");
        }
    }

    @Test
    void aSecondStartOpensItsCourseInTheRunningOne() throws IOException, InterruptedException {
        Path course = Files.createDirectories(folder.resolve("wheels"));
        Files.writeString(course.resolve("lesson-1.md"), "A line.");
        try (ChildJvm first = start("--no-browser")) {
            Address address = address(first);
            try (ChildJvm second = start(course.toString(), "--no-browser")) {
                assertThat(second.untilItEnds()).last().isEqualTo("exit status 0");
            }
            assertThat(folder.resolve("data/bookholder/courses.json")).content().contains(course.toString());
            try (ChildJvm third = start(folder.resolve("data").toString(), "--no-browser")) {
                assertThat(third.untilItEnds())
                        .anySatisfy(line -> assertThat(line)
                                .contains("bookholder: ", folder.resolve("data").toString()))
                        .contains("Home: http://127.0.0.1:" + address.port() + "/#" + address.key());
            }
        }
    }

    /** A page that was left open must not be let in by its old cookie, which it may have shown to another program. */
    @Test
    void aKilledInstanceIsReplacedAndItsKeysAreInvalid() throws IOException, InterruptedException {
        Address killed;
        String cookie;
        try (ChildJvm first = start("--no-browser")) {
            killed = address(first);
            cookie = join(killed.port(), killed.key());
            first.kill();
        }
        try (ChildJvm second = start("--no-browser")) {
            Address address = address(second);
            assertThat(address.key()).isNotEqualTo(killed.key());
            assertThat(status(address.port(), cookie, "/who")).isEqualTo(401);
            assertThat(join(address.port(), killed.key())).isEmpty();
            assertThat(status(address.port(), join(address.port(), address.key()), "/who"))
                    .isEqualTo(200);
        }
    }

    @Test
    void anotherProgramOnThePortIsNotGivenTheKey() throws Exception {
        Path home = Files.createDirectories(folder.resolve("data/bookholder/home"));
        try (java.net.ServerSocket other =
                new java.net.ServerSocket(0, 10, java.net.InetAddress.getLoopbackAddress())) {
            DeskCredentials.fresh(new java.security.SecureRandom())
                    .at(other.getLocalPort())
                    .keep(home);
            try (ChildJvm started = start("--no-browser")) {
                assertThat(address(started).port()).isNotEqualTo(String.valueOf(other.getLocalPort()));
            }
        }
    }

    @Test
    void itEndsByItsButton() throws IOException, InterruptedException {
        try (ChildJvm home = start("--no-browser")) {
            Address address = address(home);
            HttpRequest quit = HttpRequest.newBuilder(uri(address.port(), "/act"))
                    .header("Content-Type", "application/json")
                    .header("Origin", "http://127.0.0.1:" + address.port())
                    .header("Cookie", join(address.port(), address.key()))
                    .POST(HttpRequest.BodyPublishers.ofString("{\"do\":\"quit\"}"))
                    .build();
            assertThat(client.send(quit, HttpResponse.BodyHandlers.ofString()).statusCode())
                    .isEqualTo(200);
            assertThat(home.untilItEnds()).containsExactly("exit status 0");
        }
    }

    @Test
    void withoutADisplayTheAddressIsShownAndSaidToBeOpened() throws IOException, InterruptedException {
        try (ChildJvm home = start()) {
            address(home);
            assertThat(home.readTo("no browser could be opened")).contains("open the address above yourself");
        }
    }

    @Test
    void aLessonInPlaceOfACommandIsRead() throws IOException, InterruptedException {
        Path lesson = Files.writeString(folder.resolve("lesson.md"), "");
        try (ChildJvm child = start(lesson.toString(), "--no-window")) {
            assertThat(child.untilItEnds()).last().isEqualTo("exit status 2");
        }
        try (ChildJvm child = start("raed", lesson.toString())) {
            assertThat(child.untilItEnds())
                    .containsExactly(
                            "bookholder: raed: there is no such command, lesson or course; bookholder --help lists the"
                                    + " commands",
                            "exit status 2");
        }
    }

    private ChildJvm start(String... arguments) throws IOException {
        return ChildJvm.startWith(
                Map.of(
                        "XDG_DATA_HOME",
                        folder.resolve("data").toString(),
                        "XDG_CONFIG_HOME",
                        folder.resolve("settings").toString(),
                        "DISPLAY",
                        "",
                        "WAYLAND_DISPLAY",
                        ""),
                Main.class,
                arguments);
    }

    private static Address address(ChildJvm child) throws IOException {
        Matcher found = ADDRESS.matcher(child.readTo("Home: "));
        assertThat(found.matches()).isTrue();
        return new Address(found.group(1), found.group(2));
    }

    private static URI uri(String port, String path) {
        return URI.create("http://127.0.0.1:" + port + path);
    }

    /** The cookie that a code is given; empty if it is not right. */
    private String join(String port, String code) throws IOException, InterruptedException {
        HttpRequest join = HttpRequest.newBuilder(uri(port, "/join"))
                .header("Content-Type", "application/json")
                .header("Origin", "http://127.0.0.1:" + port)
                .POST(HttpRequest.BodyPublishers.ofString("{\"code\":\"" + code + "\"}"))
                .build();
        List<String> cookies = client.send(join, HttpResponse.BodyHandlers.ofString())
                .headers()
                .allValues("Set-Cookie");
        return cookies.isEmpty() ? "" : cookies.get(0).split(";", 2)[0];
    }

    private int status(String port, String cookie, String path) throws IOException, InterruptedException {
        HttpRequest.Builder request = HttpRequest.newBuilder(uri(port, path));
        if (!cookie.isEmpty()) {
            request.header("Cookie", cookie);
        }
        return client.send(request.build(), HttpResponse.BodyHandlers.ofString())
                .statusCode();
    }
}
