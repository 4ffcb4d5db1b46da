package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.session.TakeCommand;
import org.bookholder.view.input.Action;
import org.bookholder.view.input.KeyMap;
import org.bookholder.view.settings.WindowPlace;
import org.bookholder.view.settings.WindowSettings;
import org.bookholder.view.settings.WindowWish;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The window opens with the settings it was closed with. */
final class WindowPreferencesTest {
    @TempDir
    Path folder;

    private Program fresh = new Program(Path.of(""));

    @Test
    void changesMadeInTheWindowAreSaved() throws IOException {
        WindowSettings changed = WindowSettings.defaults()
                .withMirrored(true)
                .withColumnWords(8)
                .withKeys(KeyMap.usual().with("key 164", Action.HOLD));
        read("one.md", new WindowWish(changed, WindowPlace.windowed().on(2).filled()));
        WindowWish again = read("one.md");
        assertThat(again.settings()).isEqualTo(changed);
        assertThat(again.place().fullScreen()).isTrue();
        assertThat(again.place().monitor()).isEqualTo(2);
        assertThat(folder.resolve("settings/window.txt"))
                .content(StandardCharsets.UTF_8)
                .contains("mirror: yes", "key key 164: hold")
                .doesNotContain("distance");
    }

    @Test
    void sizeAndRowsAreKeptForTheScriptAndTheRestForTheMachine() {
        WindowSettings large = WindowSettings.defaults().withSize(90);
        read("one.md", new WindowWish(large, WindowPlace.windowed()));
        WindowSettings small = WindowSettings.defaults().withSize(50).withUpsideDown(true);
        read("two.md", new WindowWish(small, WindowPlace.windowed()));
        WindowSettings one = read("one.md").settings();
        assertThat(one.size()).hasValue(90);
        assertThat(one.upsideDown()).isTrue();
        assertThat(read("three.md").settings().size()).hasValue(50);
    }

    @Test
    void optionsOnTheCommandLineApplyToOneRunOnly() {
        read("one.md", new WindowWish(WindowSettings.defaults().withMirrored(true), WindowPlace.windowed()));
        assertThat(read("one.md", "--no-mirror", "--words", "4", "--distance", "200")
                        .settings())
                .isEqualTo(WindowSettings.defaults().withColumnWords(4).withDistance(2000));
        assertThat(read("one.md").settings())
                .isEqualTo(WindowSettings.defaults().withMirrored(true));
    }

    @Test
    void aWrongLineIsReportedAndTheRestIsKept() throws IOException {
        Files.createDirectories(folder.resolve("settings"));
        Path file = folder.resolve("settings/window.txt");
        Files.writeString(file, "# by hand\nwords: many\nmirror: yes\n", StandardCharsets.UTF_8);
        assertThat(read("one.md").settings())
                .isEqualTo(WindowSettings.defaults().withMirrored(true));
        assertThat(fresh.err())
                .hasLineCount(1)
                .contains(
                        "window.txt:2: words 'many' is not a whole number; give 3 to 12 words (this line is left out)");
        read(
                "one.md",
                new WindowWish(WindowSettings.defaults().withMirrored(true).withCountIn(3), WindowPlace.windowed()));
        assertThat(file)
                .content(StandardCharsets.UTF_8)
                .startsWith("# by hand\nwords: many\nmirror: yes\ncount-in: 3 ");
    }

    @Test
    void aReadOnlyFolderDoesNotStopTheReading() throws IOException {
        Files.createDirectories(folder.resolve("settings"));
        Files.writeString(folder.resolve("settings/scripts"), "in the way", StandardCharsets.UTF_8);
        fresh = program();
        fresh.equipment.leavesWindow(
                new WindowWish(WindowSettings.defaults().withColumnWords(8), WindowPlace.windowed()));
        assertThat(fresh.run("read", script("one.md"), "--no-microphone")).isZero();
        assertThat(fresh.err()).hasLineCount(1).contains("cannot be kept");
    }

    private WindowWish read(String script, WindowWish left) {
        fresh = program();
        fresh.equipment.leavesWindow(left);
        assertThat(fresh.run("read", script(script), "--no-microphone")).isZero();
        return fresh.equipment.wish().orElseThrow();
    }

    private WindowWish read(String script, String... options) {
        fresh = program();
        String[] all = new String[options.length + 3];
        all[0] = "read";
        all[1] = script(script);
        all[2] = "--no-microphone";
        System.arraycopy(options, 0, all, 3, options.length);
        assertThat(fresh.run(all)).isZero();
        return fresh.equipment.wish().orElseThrow();
    }

    private Program program() {
        Program program = new Program(folder);
        program.equipment.hasPresenter(commands -> commands.accept(new TakeCommand.Quit()));
        fresh = program;
        return program;
    }

    private String script(String name) {
        return fresh.file(name, "Every wheel begins with its hub.\n");
    }
}
