package org.bookholder.app.home;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.problem.ProblemException;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

final class FolderListTest {
    @TempDir
    private Path folder;

    private Path home;
    private FolderList list;

    @BeforeEach
    void makeFolders() throws IOException {
        home = Files.createDirectories(folder.resolve("home")).toRealPath();
        Files.createDirectories(home.resolve("wheels/exports"));
        Files.createDirectories(home.resolve(".hidden"));
        Files.createDirectories(folder.resolve("others"));
        Files.writeString(home.resolve("wheels/lesson-1.md"), "A line.");
        Files.writeString(home.resolve("wheels/photo.jpg"), "");
        list = new FolderList(home);
    }

    @Test
    void namesFoldersAndScriptsAndTheWayUp() throws Exception {
        JsonNode first = new JsonMapper().readTree(list.list(""));
        assertThat(first.path("folders").findValuesAsText("name")).containsExactly("wheels");
        assertThat(first.path("up").asText()).isEmpty();

        JsonNode inside =
                new JsonMapper().readTree(list.list(first.at("/folders/0/path").asText()));
        assertThat(inside.path("folders").findValuesAsText("name")).containsExactly("exports");
        assertThat(inside.path("scripts").toString()).isEqualTo("[\"lesson-1.md\"]");
        assertThat(inside.path("up").asText()).isEqualTo(home.toString());
    }

    @Test
    void namesFilmsAndPackedSessionsWithTheirKind() throws Exception {
        Files.writeString(home.resolve("wheels/Export.MP4"), "");
        Files.writeString(home.resolve("wheels/session.zip"), "");
        JsonNode inside = new JsonMapper().readTree(list.list(home + "/wheels"));
        assertThat(inside.path("files").findValuesAsText("name"))
                .containsExactly("Export.MP4", "lesson-1.md", "session.zip");
        assertThat(inside.path("files").findValuesAsText("kind")).containsExactly("film", "script", "packed");
    }

    @Test
    void filesOfNoUseDoNotPushOutTheFolders() throws Exception {
        for (int i = 0; i < 600; i++) {
            Files.writeString(home.resolve("a" + i + ".jpg"), "");
        }
        JsonNode first = new JsonMapper().readTree(list.list(""));
        assertThat(first.path("folders").findValuesAsText("name")).containsExactly("wheels");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "..",
                "../others",
                "wheels/../../others",
                "/",
                "link",
                "none",
                "wheels/lesson-1.md",
                "a\0b",
                ".hidden"
            })
    void nothingOutsideOfTheUsersHomeIsListed(String path) throws IOException {
        Files.createSymbolicLink(home.resolve("link"), folder.resolve("others"));
        String asked = path.startsWith("/") ? path : home + "/" + path;
        assertThatThrownBy(() -> list.list(asked)).isInstanceOf(ProblemException.class);
    }
}
