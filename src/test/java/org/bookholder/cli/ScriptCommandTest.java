package org.bookholder.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.stream.Stream;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

final class ScriptCommandTest {
    @TempDir
    private Path folder;

    private Path script;
    private Program program;

    @BeforeEach
    void write() throws IOException {
        script = Files.writeString(folder.resolve("wheel.md"), """
            # A wheel
            Buy 2 spokes for $5. They come from [Oak](http://oak.example).

            > Hold one up.
            """);
        program = new Program(folder);
    }

    @Test
    void showsEachLineWithItsNumbersAndWhatIsLeftOut() {
        assertThat(program.run("script", script.toString())).isZero();
        assertThat(program.out())
                .contains("A wheel: 2 lines, 10 words, 0:06 at 100 words a minute")
                .contains("   1  Buy 2 spokes for $5.\n")
                .contains(
                        "Numbers, and how they may be said:\n  line 1: 2: two\n  line 1: $5: five dollars; five bucks\n")
                .contains("   >  Hold one up.\n")
                .contains("  line 2 of the file: http://oak.example (a link's address is not read)\n");
        assertThat(program.out().lines()).allMatch(line -> line.length() <= 80);
    }

    @Test
    void inADocumentWhatIsLeftOutStandsNearALine() throws IOException {
        Path document = folder.resolve("starter.docx");
        try (XWPFDocument made = new XWPFDocument();
                OutputStream out = Files.newOutputStream(document)) {
            made.createParagraph().createRun().setText("Feed it at noon.");
            made.createParagraph().createRun().setText("Wait for bubbles \ud83d\ude00 and then bake.");
            made.write(out);
        }
        assertThat(program.run("script", document.toString())).isZero();
        assertThat(program.out()).contains("  near line 2: \ud83d\ude00 (a symbol that nobody says)\n");
    }

    @Test
    void tellsOtherProgramsTheSame() throws IOException {
        assertThat(program.run("script", script.toString(), "--json")).isZero();
        JsonNode json = new JsonMapper().readTree(program.out());
        assertThat(json.at("/lines/0/text").asText()).isEqualTo("Buy 2 spokes for $5.");
        assertThat(json.at("/lines/0/source").asInt()).isEqualTo(2);
        assertThat(json.at("/lines/0/words/4/forms/0").toString()).isEqualTo("[\"five\",\"dollars\"]");
        assertThat(json.at("/directions/0/text").asText()).isEqualTo("Hold one up.");
        assertThat(json.at("/left out/0/why").asText()).isEqualTo("a link's address is not read");
        assertThat(json.at("/unknown").isArray()).isTrue();
    }

    @Test
    void namesPicturesThatTheScriptAsksForAndThatCannotBeShown() throws IOException {
        Files.writeString(script, """
            # A wheel
            Buy two spokes. ![the hub](hub.png) They come from Oak.

            ![](noise.png) Turn it.
            """);
        Files.writeString(folder.resolve("noise.png"), "no picture");
        assertThat(program.run("script", script.toString(), "--json")).isZero();
        JsonNode missing = new JsonMapper().readTree(program.out()).at("/missing pictures");
        assertThat(missing.findValuesAsText("file")).containsExactly("hub.png", "noise.png");
        assertThat(missing.findValuesAsText("source")).containsExactly("2", "4");
        assertThat(missing.at("/0/what").asText()).isEqualTo("hub.png cannot be shown: there is no such file");
        assertThat(program.run("script", script.toString())).isZero();
        assertThat(program.out())
                .contains(
                        "Pictures that cannot be shown in the film:\n  line 2 of the file: hub.png cannot be shown: there is")
                .contains("  line 4 of the file: noise.png cannot be shown: ");
    }

    @Test
    void choosesForTheCourseHowSomethingIsSaid() throws IOException {
        assertThat(program.run("script", script.toString(), "--say", "2=a pair of", "--json"))
                .isZero();
        JsonNode json = new JsonMapper().readTree(program.out());
        assertThat(json.at("/lines/0/words/1/forms/0").toString()).isEqualTo("[\"a\",\"pair\",\"of\"]");
        assertThat(json.at("/said in this course/0/said").asText()).isEqualTo("a pair of");
        assertThat(folder.resolve("course.yaml")).content().isEqualTo("say:\n  2: a pair of\n");
        assertThat(program.run("script", script.toString())).isZero();
        assertThat(program.out())
                .contains("line 1: 2: a pair of; two\n")
                .contains("How you say it in this course:\n  2: a pair of (chosen)\n");
        assertThat(program.run("script", script.toString(), "--say", "2=", "--json"))
                .isZero();
        assertThat(program.out()).doesNotContain("a pair of");
        assertThat(program.run("script", script.toString(), "--say", "two")).isEqualTo(2);
        assertThat(program.err()).contains("write it as in --say \"350=three fifty\"");
        assertThat(program.run("script", script.toString(), "--say", "2=2")).isEqualTo(2);
        assertThat(program.err()).contains("2: this can't be said; write it in words");
    }

    @Test
    void showsAndTimesTheLinesOfOneSpeaker() throws IOException {
        Path talk = Files.writeString(folder.resolve("talk.txt"), "HOST: Two words.\n\nGUEST: These are three.\n");
        assertThat(program.run("script", talk.toString(), "--speaker", "Guest")).isZero();
        assertThat(program.out())
                .contains("talk: 1 line, 3 words")
                .contains("Speakers: HOST (shown, not read), GUEST")
                .contains("   >  Two words.");
        assertThat(program.run("time", talk.toString(), "--json", "--speaker", "host"))
                .isZero();
        assertThat(new JsonMapper().readTree(program.out()).at("/0/words").asInt())
                .isEqualTo(2);
        assertThat(program.run("time", talk.toString(), "--speaker", "Ann")).isEqualTo(2);
        assertThat(program.err())
                .contains("nobody named 'Ann' speaks in this script; name one of its speakers: HOST, GUEST");
    }

    @Test
    void aFileThatIsNoScriptIsNamed() throws IOException {
        Path empty = Files.writeString(folder.resolve("empty.md"), "> Only a direction.\n");
        assertThat(program.run("script", empty.toString())).isEqualTo(2);
        assertThat(program.err()).contains("empty.md:1: nothing in the script is spoken");
    }

    @Test
    void listsAndForgetsWhatIsHeardAsSomethingElse() throws IOException {
        String[] asAnn = {"script", script.toString(), "--presenter", "Ann"};
        Path file = folder.resolve("settings/presenters/ann.heard.txt");
        Files.createDirectories(file.getParent());
        Files.writeString(file, "word spokes: folks, a strokes # by hand\n");
        assertThat(program.run(asAnn)).isZero();
        assertThat(program.out())
                .contains(
                        "Heard as something else, and not called misread:\n  spokes: is heard as \"folks\" when you read it\n");
        assertThat(program.run("script", script.toString())).isZero();
        assertThat(program.out()).doesNotContain("folks");
        assertThat(program.run(with(asAnn, "--forget-heard", "Spokes=folks", "--json")))
                .isZero();
        JsonNode json = new JsonMapper().readTree(program.out());
        assertThat(json.at("/heard as").toString())
                .isEqualTo("[{\"presenter\":\"Ann\",\"written\":\"spokes\",\"heard\":\"a strokes\"}]");
        assertThat(file).content().startsWith("word spokes: a strokes").contains("# by hand");
        assertThat(program.run(with(asAnn, "--forget-heard", "spokes=folks"))).isEqualTo(2);
        assertThat(program.err()).contains("\"spokes\" is not known to be heard as \"folks\"");
        assertThat(program.run(with(asAnn, "--forget-heard", "spokes"))).isEqualTo(2);
        assertThat(program.err()).contains("write it as in --forget-heard \"spokes=folks\"");
    }

    private static String[] with(String[] some, String... more) {
        return Stream.concat(Arrays.stream(some), Arrays.stream(more)).toArray(String[]::new);
    }
}
