package org.bookholder.handoff.pdf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSNumber;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where things land on a page, read back from the file: A4 is 595.28 by 841.89 points, its margins are 56. */
final class PdfPageTest {
    private static final float SIZE = 10;
    private static final float ROW = 13.5f;

    /** One row of text, in points from the left and from the bottom. */
    private record Row(int page, double left, double right, double base, String text) {}

    /** A line or rectangle that is drawn: the operator's numbers. */
    private record Drawn(String operator, List<Double> numbers) {}

    private final List<Row> rows = new ArrayList<>();
    private final List<Drawn> drawn = new ArrayList<>();

    @FunctionalInterface
    private interface Writing {
        void on(PdfPage page) throws IOException;
    }

    @Test
    void textStaysBetweenTheMarginsAndKeepsEveryWord() throws IOException {
        String text = IntStream.range(0, 400).mapToObj(i -> "word" + i).collect(Collectors.joining(" "));
        write(page -> page.block(SIZE, false, 20, text));
        List<Row> body = body();
        assertThat(body).hasSizeGreaterThan(20);
        assertThat(body).allSatisfy(row -> {
            assertThat(row.left).isCloseTo(76, within(0.1));
            assertThat(row.right).isLessThanOrEqualTo(539.3);
        });
        // every row but the last is as full as it can be: another word would not fit
        assertThat(body.subList(0, body.size() - 1))
                .allSatisfy(row -> assertThat(row.right).isGreaterThan(539.3 - 45));
        assertThat(body.stream().map(Row::text).collect(Collectors.joining(" ")))
                .isEqualTo(text);
    }

    @Test
    void rowsFollowEachOtherDownThePage() throws IOException {
        write(page -> {
            page.block(SIZE, false, 0, "one");
            page.block(SIZE, true, 0, "two");
            page.space(20);
            page.block(SIZE, false, 0, "three");
        });
        assertThat(body()).extracting(Row::text).containsExactly("one", "two", "three");
        assertThat(body().get(0).base).isCloseTo(841.89 - 56 - SIZE, within(0.1));
        assertThat(body().get(0).base - body().get(1).base).isCloseTo(ROW, within(0.01));
        assertThat(body().get(1).base - body().get(2).base).isCloseTo(ROW + 20, within(0.01));
    }

    /** Bold letters are filled and outlined: text rendering mode 2 of PDF 32000-1, table 106. */
    @Test
    void boldTextIsOutlinedAndOtherTextIsNot() throws IOException {
        write(page -> {
            page.block(SIZE, true, 0, "bold");
            page.block(SIZE, false, 0, "light");
        });
        assertThat(drawn.stream().filter(d -> d.operator.equals("Tr")).map(d -> d.numbers.get(0)))
                .startsWith(2.0, 0.0);
        assertThat(drawn("w").numbers.get(0)).isCloseTo(0.3, within(0.001));
    }

    /** Between the margins 729.89 points are free, 54 rows of 13.5. */
    @ParameterizedTest
    @CsvSource({"54, 1", "55, 2", "108, 2", "109, 3"})
    void aFullPageIsTurnedAndEachHasItsNumber(int count, int pages) throws IOException {
        write(page -> {
            for (int i = 0; i < count; i++) {
                page.block(SIZE, false, 0, "row " + i);
            }
        });
        assertThat(body()).hasSize(count);
        assertThat(body()).allSatisfy(row -> assertThat(row.base).isGreaterThanOrEqualTo(56));
        List<Row> feet = rows.stream().filter(row -> row.base < 50).toList();
        assertThat(feet)
                .extracting(Row::text)
                .containsExactlyElementsOf(IntStream.rangeClosed(1, pages)
                        .mapToObj(Integer::toString)
                        .toList());
        assertThat(feet).extracting(Row::page).doesNotHaveDuplicates();
        assertThat(feet).allSatisfy(foot -> {
            assertThat(foot.left).isBetween(500.0, 539.3);
            assertThat(foot.base).isCloseTo(28, within(0.1));
        });
    }

    /** After 50 rows there is room for four more. */
    @ParameterizedTest
    @CsvSource({"54, 1", "55, 2", "740, 1"})
    void anEntryIsSplitOnlyIfItFitsNoPage(double height, int page) throws IOException {
        write(writing -> {
            for (int i = 0; i < 50; i++) {
                writing.block(SIZE, false, 0, "row");
            }
            writing.keepTogether((float) height);
            writing.block(SIZE, false, 0, "together");
        });
        assertThat(body().get(50)).matches(row -> row.text.equals("together") && row.page == page);
    }

    @Test
    void aWordThatIsTooLongIsBrokenWithoutLoss() throws IOException {
        String word = "abcdefghij".repeat(30);
        write(page -> page.block(SIZE, false, 0, "so " + word + " on"));
        assertThat(body()).hasSizeGreaterThan(3);
        assertThat(body()).allSatisfy(row -> assertThat(row.right).isLessThanOrEqualTo(539.3));
        assertThat(body().get(0).text).isEqualTo("so");
        // a broken word fills its rows: no letter is as wide as ten points
        assertThat(body().subList(1, body().size() - 1))
                .allSatisfy(row -> assertThat(row.right).isGreaterThan(529.3));
        assertThat(body().stream().map(Row::text).collect(Collectors.joining()).replace(" ", ""))
                .isEqualTo("so" + word + "on");
    }

    /** Characters outside the first plane are two in a Java string and one to a reader. */
    @Test
    void aCharacterThatTheFontLacksIsAnEmptySquare() throws IOException {
        write(page -> page.block(SIZE, false, 0, "a \uD83D\uDE42 b \u4E16"));
        assertThat(body()).extracting(Row::text).containsExactly("a \u25A1 b \u25A1");
        write(page -> page.block(SIZE, false, 0, "\uD83D\uDE42".repeat(200)));
        assertThat(body().stream().mapToInt(row -> row.text.length()).sum()).isEqualTo(200);
    }

    @Test
    void theHeightIsThatOfTheRows() throws IOException {
        String text = "several words ".repeat(60);
        write(page -> {
            assertThat(page.height(SIZE, 0, "one")).isCloseTo(ROW, within(0.01f));
            page.block(SIZE, false, 0, text);
            page.space(-page.height(SIZE, 0, text));
            page.block(SIZE, false, 300, "back at the top");
        });
        assertThat(rows).anyMatch(row -> row.text.contains("back at the top") && row.base > 770);
    }

    @ParameterizedTest
    @CsvSource({"0, 100, 156", "0, 300, 356"})
    void aLabelEndsAtItsRight(float least, float right, double end) throws IOException {
        write(page -> page.label(SIZE, least, right, "12"));
        assertThat(body().get(0).right).isCloseTo(end, within(0.2));
        assertThat(body().get(0).base).isCloseTo(841.89 - 56 - SIZE, within(0.1));
    }

    @Test
    void aLabelThatIsTooWideBeginsAtItsLeast() throws IOException {
        write(page -> page.label(SIZE, 10, 20, "a rather long label"));
        assertThat(body().get(0).left).isCloseTo(66, within(0.3));
    }

    @Test
    void aBoxStandsBesideTheNextRowAndARuleLiesBetweenRows() throws IOException {
        write(page -> {
            page.box(SIZE);
            page.block(SIZE, false, 20, "above");
            page.rule();
            page.block(SIZE, false, 20, "below");
        });
        Drawn box = drawn("re");
        assertThat(box.numbers.get(0)).isCloseTo(56, within(0.01));
        assertThat(box.numbers.get(1)).isCloseTo(body().get(0).base - 1, within(0.01));
        assertThat(box.numbers.subList(2, 4)).containsExactly(10.0, 10.0);
        Drawn from = drawn("m");
        Drawn to = drawn("l");
        assertThat(from.numbers.get(0)).isCloseTo(56, within(0.01));
        assertThat(to.numbers.get(0)).isCloseTo(539.28, within(0.01));
        assertThat(to.numbers.get(1)).isEqualTo(from.numbers.get(1));
        assertThat(to.numbers.get(1)).isBetween(body().get(1).base + SIZE, body().get(0).base - 1);
        assertThat(drawn.stream().filter(d -> d.operator.equals("S"))).hasSize(2);
    }

    private Drawn drawn(String operator) {
        return drawn.stream()
                .filter(d -> d.operator.equals(operator))
                .findFirst()
                .orElseThrow();
    }

    /** The rows above the pages' feet. */
    private List<Row> body() {
        return rows.stream().filter(row -> row.base >= 50).toList();
    }

    private void write(Writing writing) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (PDDocument document = new PDDocument()) {
            PdfPage page = new PdfPage(document);
            writing.on(page);
            page.finish();
            document.save(bytes);
        }
        rows.clear();
        drawn.clear();
        try (PDDocument read = Loader.loadPDF(bytes.toByteArray())) {
            new Rows().getText(read);
            List<Double> numbers = new ArrayList<>();
            for (Object token : new PDFStreamParser(read.getPage(0)).parse()) {
                if (token instanceof COSNumber number) {
                    numbers.add((double) number.floatValue());
                } else if (token instanceof Operator operator) {
                    drawn.add(new Drawn(operator.getName(), List.copyOf(numbers)));
                    numbers.clear();
                }
            }
        }
    }

    /** Collects each row with its place. */
    private final class Rows extends PDFTextStripper {
        @Override
        protected void writeString(String text, List<TextPosition> places) {
            TextPosition first = places.get(0);
            TextPosition last = places.get(places.size() - 1);
            double base = first.getPageHeight() - first.getYDirAdj();
            double right = last.getXDirAdj() + last.getWidthDirAdj();
            rows.add(new Row(getCurrentPageNo(), first.getXDirAdj(), right, base, text));
        }
    }
}
