package org.bookholder.script.source;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.font.PDType1Font;
import org.apache.pdfbox.pdmodel.font.Standard14Fonts;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptLine;
import org.bookholder.script.source.ScriptReader.Format;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What looks like a table of a PDF and is none, and what is; how newspapers, lists and scripts stand on a page is common practice. */
class PdfTableTest {
    private static final String TOLD = "You mix it with both of your hands until it is smooth.";
    private static final double LEFT = 60;
    private static final double LEADING = 14;
    private static final double PARAGRAPH = 24;

    @ParameterizedTest
    @ValueSource(ints = {2, 3, 4})
    void theColumnsOfANewspaperAreReadOneAfterTheOther(int columns) throws Exception {
        Page page = new Page();
        List<String> told = new ArrayList<>();
        for (int column = 0; column < columns; column++) {
            told.addAll(page.column(LEFT + 130 * column, 700, 3, "column " + column));
        }

        assertThat(page.spoken()).isEqualTo(String.join(" ", told));
    }

    @Test
    void theColumnsOfANewspaperMayHoldDifferentParagraphs() throws Exception {
        for (List<Integer> paragraphs : List.of(List.of(1, 4, 2), List.of(3, 1, 1), List.of(2, 4, 4))) {
            Page page = new Page();
            List<String> told = new ArrayList<>();
            for (int column = 0; column < 3; column++) {
                told.addAll(page.column(LEFT + 130 * column, 700, paragraphs.get(column), "column " + column));
            }

            assertThat(page.spoken()).isEqualTo(String.join(" ", told));
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void theColumnsOfSeveralSectionsAreReadOneAfterTheOther(int paragraphs) throws Exception {
        for (int sections = 2; sections <= 3; sections++) {
            for (boolean headings : List.of(true, false)) {
                Page page = new Page();
                List<String> told = new ArrayList<>();
                for (int section = 0; section < sections; section++) {
                    double down = 720 - section * 190;
                    if (headings) {
                        String heading = "The part " + section + " of it that goes over both of the columns.";
                        page.put(LEFT, down, heading);
                        told.add(heading);
                    }
                    told.addAll(page.column(LEFT, down - 20, paragraphs, "left " + section));
                    told.addAll(page.column(LEFT + 200, down - 20, paragraphs, "right " + section));
                }

                assertThat(page.spoken()).isEqualTo(String.join(" ", told));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "On Monday|On Tuesday|On Wednesday",
                "Step 1|Step 2|Step 3",
                "Aperture|Shutter|Film",
                "Question:|Answer:|Question:",
                "Teacher|Pupil|Teacher",
                "Words|Lines|Script",
                "CPU|RAM|SSD",
                "1994|1996|2001"
            })
    void namesBeforeTheItemsOfAListAreRead(String names) throws Exception {
        Page page = new Page();
        List<String> told = new ArrayList<>();
        double down = 700;
        for (String name : names.split("\\|", -1)) {
            page.put(LEFT, down, name);
            page.put(LEFT + 90, down, "we go out to the wood and");
            page.put(LEFT + 90, down - LEADING, "look at all the trees.");
            told.add(name + " we go out to the wood and look at all the trees.");
            down -= LEADING + PARAGRAPH;
        }

        assertThat(page.spoken()).isEqualTo(String.join(" ", told));
    }

    @Test
    void allColumnsOfATableWithoutHeadingsAreReadRowByRow() throws Exception {
        Page page = script("Hands in|Lid on|Hands off", "the bowl|the bowl|the bowl");

        ConvertedDocument document = ScriptReader.convert(page.bytes(), "a.pdf", Map.of());

        assertThat(page.spoken())
                .isEqualTo(String.join(
                        " ", "Hands in the bowl", TOLD, "Lid on the bowl", TOLD, "Hands off the bowl", TOLD));
        assertThat(document.leftOut())
                .extracting(LeftOut::why)
                .contains("all of it is read, because no heading says what is read");
        assertThat(ScriptReader.convert(page.bytes(), "a.pdf", Map.of(1, Set.of(1)))
                        .text())
                .contains("> Hands in the bowl");
    }

    @Test
    void ofATableWithHeadingsTheColumnThatTheyNameIsRead() throws Exception {
        assertThat(script("Video|Hands in|Lid on", "|the bowl|the bowl").spoken())
                .isEqualTo(TOLD + " " + TOLD);
    }

    @Test
    void cuesInCapitalsNeedNoHeadings() throws Exception {
        assertThat(script("HANDS IN|LID ON|HANDS OFF", "THE BOWL|THE BOWL|THE BOWL")
                        .spoken())
                .isEqualTo(TOLD + " " + TOLD + " " + TOLD);
    }

    /** A script of rows of two lines, stored cell by cell, as word processors do; a first cell of one line is a heading. */
    private static Page script(String first, String second) throws IOException {
        Page page = new Page();
        String[] below = second.split("\\|", -1);
        double down = 700;
        for (int i = 0; i < below.length; i++) {
            page.put(LEFT, down, first.split("\\|", -1)[i]);
            if (below[i].isEmpty()) {
                page.put(LEFT + 150, down, "Audio");
            } else {
                page.put(LEFT, down - LEADING, below[i]);
                page.put(LEFT + 150, down, "You mix it with both of your");
                page.put(LEFT + 150, down - LEADING, "hands until it is smooth.");
            }
            down -= LEADING + PARAGRAPH;
        }
        return page;
    }

    /** A page on which each text is put where it is to stand. */
    private static final class Page {
        private record Put(double left, double down, String text) {}

        private final List<Put> texts = new ArrayList<>();

        void put(double left, double down, String text) {
            texts.add(new Put(left, down, text));
        }

        /** Paragraphs of three lines one below the other; what they say. */
        List<String> column(double left, double down, int paragraphs, String name) {
            List<String> told = new ArrayList<>();
            double at = down;
            for (int i = 0; i < paragraphs; i++) {
                for (String line : List.of("Here " + name, "goes on with", "the part " + i + " of it.")) {
                    put(left, at, line);
                    told.add(line);
                    at -= LEADING;
                }
                at -= PARAGRAPH - LEADING;
            }
            return told;
        }

        byte[] bytes() throws IOException {
            PDFont font = new PDType1Font(Standard14Fonts.FontName.HELVETICA);
            try (PDDocument document = new PDDocument()) {
                PDPage page = new PDPage();
                document.addPage(page);
                try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                    for (Put put : texts) {
                        content.beginText();
                        content.setFont(font, 11);
                        content.newLineAtOffset((float) put.left, (float) put.down);
                        content.showText(put.text);
                        content.endText();
                    }
                }
                ByteArrayOutputStream bytes = new ByteArrayOutputStream();
                document.save(bytes);
                return bytes.toByteArray();
            }
        }

        /** All that is read of it. */
        String spoken() throws Exception {
            ConvertedDocument document = ScriptReader.convert(bytes(), "a.pdf", Map.of());
            Script script = ScriptReader.explain(document.text(), "a.pdf", Format.of("a.pdf"))
                    .script();
            return String.join(
                    " ", script.lines().stream().map(ScriptLine::text).toList());
        }
    }
}
