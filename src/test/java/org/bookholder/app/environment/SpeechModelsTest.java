package org.bookholder.app.environment;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.script.model.Script;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.testing.StoredExamples;
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

    @Test
    void aMissingModelIsNamedWithItsPlace() throws Exception {
        Environment here = StoredExamples.here(folder);
        Script german = ScriptReader.parse("---\nlanguage: de\n---\nGuten Tag.", "l.md", Format.MARKDOWN);
        Script english = ScriptReader.parse("Good day.", "l.md", Format.MARKDOWN);
        assertThat(SpeechModels.known(here, here.model(), english)).contains(here.model());
        assertThat(SpeechModels.known(here, here.model(), german)).isEmpty();
        assertThat(SpeechModels.advice(here, german))
                .startsWith("there is no speech model for German here; put one into ")
                .contains(here.home().resolve("models").toString());
        Path model = Files.createDirectories(here.home().resolve("models").resolve("vosk-model-small-de-0.15"));
        assertThat(SpeechModels.known(here, here.model(), german)).contains(model);
    }
}
