package org.bookholder.app.home;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.FileWish;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.FakeEquipment;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class FileDialogsTest {
    private static final JsonMapper MAPPER = new JsonMapper();

    private final FakeEquipment equipment = new FakeEquipment();
    private final List<FileWish> wishes = new ArrayList<>();

    @TempDir
    private Path folder;

    private Path card;
    private AllowedPaths paths;
    private FileDialogs dialogs;
    private boolean reading;

    @BeforeEach
    void make() throws Exception {
        Environment here = StoredExamples.here(folder.resolve("data"), equipment);
        Path user = Files.createDirectories(folder.resolve("user"));
        card = Files.createDirectories(folder.resolve("card"));
        paths = new AllowedPaths(new FolderList(user), here, new KnownCourses(folder.resolve("courses.json")));
        dialogs = new FileDialogs(equipment, paths, () -> reading);
    }

    private void somebodyChooses(Path... chosen) {
        equipment.hasChooser(wish -> {
            wishes.add(wish);
            return List.of(chosen);
        });
    }

    private JsonNode ask(String what) throws Exception {
        return dialogs.answer(MAPPER.readTree("{" + what + "}"));
    }

    @Test
    void whatIsChosenMayBeNamedFromThenOnAlsoOutsideOfTheUsersHome() throws Exception {
        Path film = Files.createFile(card.resolve("film.mp4"));
        Path other = Files.createFile(card.resolve("other.mp4"));
        somebodyChooses(film);
        int id = ask("\"do\":\"begin\",\"kind\":\"film\"").path("id").asInt();
        assertThat(ask("\"do\":\"result\",\"id\":" + id).path("open").asBoolean())
                .isTrue();
        assertThatThrownBy(() -> paths.path(film.toString())).isInstanceOf(ProblemException.class);
        assertThat(dialogs.doWork()).isEqualTo(1);
        assertThat(ask("\"do\":\"result\",\"id\":" + id).path("paths"))
                .extracting(JsonNode::asText)
                .containsExactly(film.toString());
        assertThat(paths.path(film.toString())).isEqualTo(film.toRealPath());
        assertThatThrownBy(() -> paths.path(other.toString())).isInstanceOf(ProblemException.class);
        assertThat(wishes).hasSize(1);
        assertThat(wishes.get(0).folder()).isFalse();
        assertThat(wishes.get(0).several()).isTrue();
        assertThat(wishes.get(0).endings()).contains("mp4", "mxf", "wav");
        assertThat(dialogs.doWork()).isZero();
    }

    @Test
    void aChosenFolderCanBeOpenedWithAllThatLiesInIt() throws Exception {
        Path lesson = Files.writeString(card.resolve("lesson.md"), "A line.");
        somebodyChooses(card);
        assertThatThrownBy(() -> paths.folder(card.toString())).isInstanceOf(ProblemException.class);
        ask("\"do\":\"begin\"");
        dialogs.doWork();
        assertThat(wishes.get(0).folder()).isTrue();
        assertThat(paths.folder(card.toString())).isEqualTo(card.toRealPath());
        assertThat(paths.path(lesson.toString())).isEqualTo(lesson.toRealPath());
    }

    @Test
    void aDialogThatIsClosedGivesNothing() throws Exception {
        somebodyChooses();
        int id = ask("\"do\":\"begin\",\"kind\":\"packed\",\"one\":true")
                .path("id")
                .asInt();
        dialogs.doWork();
        assertThat(ask("\"do\":\"result\",\"id\":" + id).path("paths")).isEmpty();
        assertThat(wishes.get(0).several()).isFalse();
    }

    @Test
    void anOpenDialogIsClosedWithTheProgram() throws Exception {
        List<String> closed = new ArrayList<>();
        equipment.whenDialogCloses(() -> closed.add("closed"));
        dialogs.close();
        assertThat(closed).isEmpty();
        equipment.hasChooser(wish -> {
            dialogs.close();
            return List.of();
        });
        ask("\"do\":\"begin\"");
        dialogs.doWork();
        assertThat(closed).containsExactly("closed");
    }

    @Test
    void thePageShowsItsOwnListWithoutADialogWhileOneIsOpenAndWhileALessonIsRead() throws Exception {
        assertThat(ask("\"do\":\"begin\"").path("own").asBoolean()).isTrue();
        somebodyChooses(card);
        reading = true;
        assertThat(ask("\"do\":\"begin\"").path("own").asBoolean()).isTrue();
        reading = false;
        assertThat(ask("\"do\":\"begin\"").path("own").asBoolean()).isFalse();
        assertThat(ask("\"do\":\"begin\"").path("own").asBoolean()).isTrue();
        dialogs.doWork();
        assertThat(ask("\"do\":\"begin\"").path("own").asBoolean()).isFalse();
    }
}
