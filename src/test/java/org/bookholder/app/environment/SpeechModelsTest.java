package org.bookholder.app.environment;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SpeechModelsTest {
    @TempDir
    private Path folder;

    @Test
    void aModelIsFoundByItsLanguage() throws Exception {
        Files.createDirectory(folder.resolve("vosk-model-en-us"));
        Path german = Files.createDirectory(folder.resolve("vosk-model-small-de-0.15"));

        assertThat(SpeechModels.find(folder, "de")).contains(german);
        assertThat(SpeechModels.find(folder, "d")).isEmpty();
        assertThat(SpeechModels.find(folder, "fr")).isEmpty();
        assertThat(SpeechModels.find(folder.resolve("none"), "de")).isEmpty();
    }
}
