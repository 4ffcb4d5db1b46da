package org.bookholder.app.home;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.poi.xwpf.usermodel.XWPFDocument;
import org.bookholder.app.environment.Environment;
import org.bookholder.problem.ProblemException;
import org.bookholder.testing.StoredExamples;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Wrong documents and forms: each gets one plain sentence that says what to do, and changes no file. */
final class HomeBadInputTest {
    private static final JsonMapper MAPPER = new JsonMapper();
    private static final String TOO_LONG = "word ".repeat(130_000);

    @TempDir
    private Path folder;

    private HomeRooms rooms;
    private HomeSettings settings;

    /** Something that a person gives the page. */
    @FunctionalInterface
    interface Input {
        void give(HomeBadInputTest page) throws ProblemException;
    }

    @BeforeEach
    void openACourse() throws Exception {
        Path course = Files.createDirectories(folder.resolve("user/wheels"));
        Files.writeString(course.resolve("lesson-1.md"), "One line.\n");
        Files.write(course.resolve("lesson-2.docx"), document());
        Files.writeString(folder.resolve("secret.md"), "Not for the page.\n");
        Environment here = StoredExamples.here(folder.resolve("data"));
        HomeReading reading = new HomeReading(here, fault -> {});
        HomeCourses courses = new HomeCourses(here, reading);
        courses.open(course);
        settings = new HomeSettings(here);
        rooms = HomeRooms.of(
                here,
                courses,
                reading,
                settings,
                new AllowedPaths(new FolderList(folder.resolve("user")), here, courses.known()),
                new KeptOrders(folder.resolve("orders.json")),
                (kind, form) -> {});
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource({"documents", "courses", "lessons", "scripts", "forms"})
    void isAnsweredWithOneSentenceAndLosesNothing(String name, String said, Input input) throws IOException {
        Map<String, String> before = files();

        ProblemException problem = catchThrowableOfType(ProblemException.class, () -> input.give(this));

        assertThat(problem).as(name).isNotNull();
        String sentence = problem.what() + "; " + problem.remedy();
        assertThat(sentence)
                .contains(said)
                .doesNotContain("Exception", "\n", "null", ".part")
                .hasSizeLessThan(240);
        assertThat(problem.remedy()).isNotEmpty();
        assertThat(files()).isEqualTo(before);
    }

    static Stream<Arguments> documents() {
        return Stream.of(
                dropped("an empty document", "a.docx", new byte[0], "not a DOCX document that can be read"),
                dropped("noise for a document", "a.docx", bytes("no archive at all"), "not a DOCX document"),
                dropped("half a document", "a.docx", half(), "not a DOCX document"),
                dropped("another archive", "a.docx", archive("a.txt", "Hello"), "not a DOCX document"),
                dropped("a document with a password", "a.docx", ole(), "without a password"),
                dropped("broken XML", "a.docx", archive("word/document.xml", "<w:document><w:body>"), "not a DOCX"),
                dropped("an old document", "a.doc", ole(), "this kind of file can't be read"),
                dropped("a PDF file", "a.pdf", bytes("%PDF-1.7"), "this is not a PDF that can be read"),
                dropped("a film", "a.mp4", new byte[] {0, 0, 0, 32}, "this kind of file can't be read"),
                dropped("noise for an ODT document", "a.odt", bytes("no archive"), "not an ODT document"),
                dropped("a file without a name", "", bytes("Hello."), "this kind of file can't be read"),
                dropped("a file of dots", "..", bytes("Hello."), "this kind of file can't be read"),
                dropped("text that is none", "a.txt", new byte[] {72, 0, 105}, "this is not a text file"),
                dropped("an archive named as text", "a.txt", bytes("PK\u0003\u0004"), "save or export it as DOCX"),
                dropped("half of UTF-16", "a.md", new byte[] {-1, -2, 65}, "not UTF-16LE text"));
    }

    static Stream<Arguments> courses() {
        String lesson = "{\"name\":\"a.md\",\"text\":\"One.\"}";
        return Stream.of(
                create("a course without lessons", "new", "", "", "there is no lesson yet"),
                create("a course without a name", " ", "", lesson, "the course has no name yet"),
                create("a name that is a path", "a/b", "", lesson, "this is no name for a folder"),
                create("the folder above", "..", "", lesson, "this is no name for a folder"),
                create("a name that Windows keeps", "con", "", lesson, "this is no name for a folder"),
                create("an endless name", "n".repeat(81), "", lesson, "give a short one"),
                create("a name that is taken", "wheels", "", lesson, "a folder of this name is there already"),
                create("a place outside of the home", "new", "/", lesson, "outside of your home"),
                create("a place that is not there", "new", "/none", lesson, "there is no such folder"));
    }

    static Stream<Arguments> lessons() {
        String lesson = "{\"name\":\"a.md\",\"text\":\"One.\"}";
        return Stream.of(
                create(
                        "a lesson that is a path",
                        "new",
                        "",
                        "{\"name\":\"../a.md\",\"text\":\"One.\"}",
                        "no name for a lesson"),
                create(
                        "a lesson of another kind",
                        "new",
                        "",
                        "{\"name\":\"a.exe\",\"text\":\"One.\"}",
                        "no name for a lesson"),
                create("a hidden lesson", "new", "", "{\"name\":\".a.md\",\"text\":\"One.\"}", "no name for a lesson"),
                create(
                        "two lessons of one name",
                        "new",
                        "",
                        lesson + ",{\"name\":\"A.md\",\"text\":\"Two.\"}",
                        "two lessons have this"),
                create(
                        "two lessons of one title",
                        "new",
                        "",
                        titled("a") + "," + titled("b"),
                        "two lessons have the same title"),
                create(
                        "nothing to read",
                        "new",
                        "",
                        "{\"name\":\"a.md\",\"text\":\"> Wave.\"}",
                        "no lesson has words to read yet"),
                create(
                        "a lesson that is too long",
                        "new",
                        "",
                        "{\"name\":\"a.md\",\"text\":\"" + TOO_LONG + "\"}",
                        "too long"),
                asked(
                        "pasted text without a kind",
                        "{\"room\":\"new\",\"do\":\"pasted\",\"name\":\"a\",\"text\":\"One.\"}",
                        "give a .md"),
                asked(
                        "pasted text as a document",
                        "{\"room\":\"new\",\"do\":\"pasted\",\"name\":\"a.docx\",\"text\":\"One.\"}",
                        "DOCX"));
    }

    static Stream<Arguments> scripts() {
        return Stream.of(
                script("a script that is not there", "open", "lesson-9.md", "", "no script of that name"),
                script("a file outside of the course", "open", "../../secret.md", "", "no script of that name"),
                script("a file outside, saved", "save", "../../secret.md", "Mine.", "no script of that name"),
                script(
                        "a character that is no text",
                        "save",
                        "lesson-1.md",
                        "One\u0000",
                        "a character that is no text"),
                script("half a character", "save_over", "lesson-1.md", "One\ud800", "a character that is no text"),
                script("a text that is too long", "save", "lesson-1.md", TOO_LONG, "too long"),
                script("a document saved as text", "save", "lesson-2.docx", "One.", "make a text file of it"),
                script("a text made a text", "as_text", "lesson-1.md", "", "this file is there already"),
                script("an action that does not exist", "burn", "lesson-1.md", "", "there is no such action"),
                asked("a room that does not exist", "{\"room\":\"attic\"}", "there is no such room"),
                asked("what is no JSON", "{room", "this is not JSON"));
    }

    static Stream<Arguments> forms() {
        return Stream.of(
                set("a distance in words", "window", "distance-cm", "far away", "distance"),
                set("a distance out of range", "window", "distance-cm", "3", "20 to 2000"),
                set("too many words in a row", "window", "words", "99", "3 to 12"),
                set("a screen below the first", "window", "monitor", "0", "1 to 99"),
                set("a cue that does not exist", "window", "hide", "clown", "clown"),
                set("limits in the wrong order", "limits", "voice", "30, 20, 10", "smaller number first"),
                set("a limit that is no number", "limits", "voice", "soon", "voice"),
                set("a rest shorter than a break", "limits", "recovery", "1", "recovery"),
                set("settings that do not exist", "attic", "key", "1", "there are no such settings"));
    }

    private static Arguments dropped(String name, String file, byte[] bytes, String said) {
        return Arguments.of(name, said, (Input) page -> page.rooms.questions().dropped(Map.of("name", file), bytes));
    }

    private static Arguments asked(String name, String json, String said) {
        return Arguments.of(name, said, (Input) page -> page.rooms.questions().answer(json));
    }

    private static Arguments create(String name, String folder, String place, String lessons, String said) {
        return Arguments.of(name, said, (Input) page -> page.rooms
                .questions()
                .answer("{\"room\":\"new\",\"do\":\"create\",\"name\":\"" + folder + "\",\"place\":\"" + place
                        + "\",\"lessons\":[" + lessons + "]}"));
    }

    private static Arguments script(String name, String action, String file, String text, String said) {
        return Arguments.of(name, said, (Input) page -> {
            ObjectNode asked = MAPPER.createObjectNode().put("room", "scripts").put("do", action);
            asked.put("file", file).put("text", text).put("revision", revision(page));
            page.rooms.scripts().answer(asked);
        });
    }

    /** The first lesson's current revision, so that nothing is refused as changed meanwhile. */
    private static String revision(HomeBadInputTest page) throws ProblemException {
        ObjectNode asked = MAPPER.createObjectNode().put("do", "revision").put("file", "lesson-1.md");
        return page.rooms.scripts().answer(asked).path("revision").asText();
    }

    private static Arguments set(String name, String group, String setting, String value, String said) {
        return Arguments.of(name, said, (Input) page -> page.settings.set(group, setting, value));
    }

    private static String titled(String name) {
        return "{\"name\":\"" + name + ".md\",\"text\":\"# One title\\n\\nA line of " + name + ".\"}";
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }

    /** The first bytes of old documents, and of those with a password. */
    private static byte[] ole() {
        byte[] bytes = new byte[512];
        byte[] begin = {(byte) 0xd0, (byte) 0xcf, 0x11, (byte) 0xe0, (byte) 0xa1, (byte) 0xb1, 0x1a, (byte) 0xe1};
        System.arraycopy(begin, 0, bytes, 0, begin.length);
        return bytes;
    }

    private static byte[] half() {
        byte[] whole = document();
        return Arrays.copyOf(whole, whole.length / 2);
    }

    private static byte[] document() {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (XWPFDocument document = new XWPFDocument()) {
            document.createParagraph().createRun().setText("A line of a document.");
            document.write(bytes);
        } catch (IOException e) {
            throw new IllegalStateException("a document must be written into memory", e);
        }
        return bytes.toByteArray();
    }

    private static byte[] archive(String part, String content) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry(part));
            zip.write(bytes(content));
        } catch (IOException e) {
            throw new IllegalStateException("an archive must be written into memory", e);
        }
        return bytes.toByteArray();
    }

    /** Every file and folder with its content. */
    private Map<String, String> files() throws IOException {
        Map<String, String> all = new TreeMap<>();
        try (Stream<Path> inside = Files.walk(folder)) {
            for (Path file : inside.toList()) {
                all.put(
                        folder.relativize(file).toString(),
                        Files.isDirectory(file) ? "" : Arrays.toString(Files.readAllBytes(file)));
            }
        }
        return all;
    }
}
