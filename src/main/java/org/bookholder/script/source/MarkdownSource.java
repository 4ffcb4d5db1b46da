package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.IntUnaryOperator;
import java.util.regex.Pattern;
import org.bookholder.script.model.ScriptWord.Emphasis;
import org.commonmark.ext.gfm.tables.TableBlock;
import org.commonmark.ext.gfm.tables.TableCell;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.BlockQuote;
import org.commonmark.node.BulletList;
import org.commonmark.node.Code;
import org.commonmark.node.CustomBlock;
import org.commonmark.node.CustomNode;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.HardLineBreak;
import org.commonmark.node.Heading;
import org.commonmark.node.HtmlBlock;
import org.commonmark.node.HtmlInline;
import org.commonmark.node.Image;
import org.commonmark.node.IndentedCodeBlock;
import org.commonmark.node.Link;
import org.commonmark.node.LinkReferenceDefinition;
import org.commonmark.node.ListItem;
import org.commonmark.node.Node;
import org.commonmark.node.OrderedList;
import org.commonmark.node.Paragraph;
import org.commonmark.node.SoftLineBreak;
import org.commonmark.node.SourceSpan;
import org.commonmark.node.StrongEmphasis;
import org.commonmark.node.Text;
import org.commonmark.node.ThematicBreak;
import org.jsoup.nodes.Element;
import org.jspecify.annotations.Nullable;

/** Extracts the lines and directions from CommonMark text. */
final class MarkdownSource extends AbstractVisitor {
    private static final Pattern TAGS = Pattern.compile("<!--|-->|<[^>]{0,2000}>");

    /** How an address begins; one letter is a disk's. */
    private static final Pattern SCHEME = Pattern.compile("[A-Za-z][A-Za-z0-9+.-]+:|//");

    private static final String CHECK = "check:";
    static final String ADDRESS = "a link's address is not read";
    private static final String MARK_UP = "HTML mark-up is neither read nor shown";

    private final ScriptBuilder draft;
    private final IntUnaryOperator places;
    private final boolean titleWanted;
    private final List<String> notes = new ArrayList<>();
    private MarkedSourceLine.Builder line = new MarkedSourceLine.Builder();
    private Emphasis emphasis = Emphasis.NONE;
    private int sourceLine;
    private int quotes;

    /** Line of the file at which the block of HTML stands that is being read; 0 outside of one. */
    private int blockLine;

    /** Blocks of HTML that were read with the one before them. */
    private final Set<Node> joined = new HashSet<>();

    private int tables;
    private @Nullable ListMark mark;

    private MarkdownSource(ScriptBuilder draft, IntUnaryOperator places, boolean titleWanted) {
        this.draft = draft;
        this.places = places;
        this.titleWanted = titleWanted;
    }

    /**
     * Reads {@code text} into {@code draft}.
     *
     * @param places for each line of the text, from 0, its line in the file, from 1
     * @param titleWanted whether the first heading should become the title
     */
    static void read(String text, IntUnaryOperator places, boolean titleWanted, ScriptBuilder draft) {
        MarkdownParser.make().parse(text).accept(new MarkdownSource(draft, places, titleWanted));
    }

    private int lineOf(Node node) {
        return lineBehind(node, 0);
    }

    private int lineBehind(Node node, int further) {
        List<SourceSpan> spans = node.getSourceSpans();
        return blockLine > 0
                ? blockLine
                : spans.isEmpty()
                        ? sourceLine + further
                        : places.applyAsInt(spans.get(0).getLineIndex() + further);
    }

    @Override
    public void visit(Heading heading) {
        String text = MarkdownText.plain(heading);
        if (quotes > 0) {
            draft.direction(text, lineOf(heading));
        } else {
            draft.heading(text, lineOf(heading), titleWanted);
        }
    }

    @Override
    public void visit(BlockQuote quote) {
        draft.paragraph();
        quotes++;
        visitChildren(quote);
        quotes--;
        draft.paragraph();
    }

    @Override
    public void visit(BulletList list) {
        visitList(list);
    }

    @Override
    public void visit(OrderedList list) {
        visitList(list);
    }

    private void visitList(Node list) {
        draft.paragraph();
        visitChildren(list);
        draft.paragraph();
    }

    @Override
    public void visit(ListItem item) {
        draft.paragraph();
        mark = markOf(item);
        visitChildren(item);
        mark = null;
        draft.paragraph();
    }

    private static ListMark markOf(ListItem item) {
        if (!(item.getParent() instanceof OrderedList list)) {
            return ListMark.bullet();
        }
        int number = Objects.requireNonNullElse(list.getMarkerStartNumber(), 1);
        for (Node before = item.getPrevious(); before != null; before = before.getPrevious()) {
            number++;
        }
        return ListMark.number(number, Objects.requireNonNullElse(list.getMarkerDelimiter(), "."));
    }

    @Override
    public void visit(ThematicBreak thematicBreak) {
        draft.leaveOut("a rule across the page", "it only separates paragraphs", lineOf(thematicBreak));
        draft.paragraph();
    }

    @Override
    public void visit(LinkReferenceDefinition definition) {
        draft.leaveOut(definition.getDestination(), ADDRESS, lineOf(definition));
    }

    @Override
    public void visit(CustomBlock block) {
        if (block instanceof TableBlock) {
            table(MarkdownTable.of(block), lineOf(block));
        } else {
            visitChildren(block);
        }
    }

    private void table(MarkdownTable table, int tableLine) {
        List<List<String>> texts = table.texts(MarkdownText::plain);
        SpokenColumns columns = SpokenColumns.of(++tables, texts, tableLine);
        columns.notes().forEach(note -> draft.leaveOut(note.what(), note.why(), note.sourceLine()));
        if (columns.headed()) {
            draft.leaveOut(String.join(" | ", texts.get(0)), "the headings of a table", tableLine);
        }
        for (int row = columns.headed() ? 1 : 0; row < table.rows().size(); row++) {
            draft.paragraph();
            List<TableCell> cells = table.rows().get(row);
            for (int i = 0; i < cells.size(); i++) {
                cell(cells.get(i), quotes == 0 && columns.spoken().contains(i), tableLine);
            }
            draft.paragraph();
        }
    }

    private void cell(TableCell cell, boolean spoken, int tableLine) {
        List<SourceSpan> spans = cell.getSourceSpans();
        sourceLine = spans.isEmpty() ? tableLine : lineOf(cell);
        if (spoken) {
            visitChildren(cell);
            flush();
        } else {
            draft.direction(MarkdownText.plain(cell), sourceLine);
        }
    }

    @Override
    public void visit(FencedCodeBlock code) {
        block(code.getLiteral(), lineOf(code));
    }

    @Override
    public void visit(IndentedCodeBlock code) {
        block(code.getLiteral(), lineOf(code));
    }

    @Override
    public void visit(HtmlBlock html) {
        if (joined.contains(html)) {
            return;
        }
        List<HtmlBlock> table = WebTable.blocks(html);
        if (!table.isEmpty()) {
            joined.addAll(table);
            webTable(WebTable.page(table), lineOf(html));
            return;
        }
        String text = TAGS.matcher(html.getLiteral()).replaceAll(" ");
        if (text.isBlank()) {
            draft.leaveOut(html.getLiteral(), MARK_UP, lineOf(html));
        }
        block(text, lineOf(html));
    }

    /** A table in HTML, as some programs write one whose cells hold more than Markdown's own may; all of it counts as one line. */
    private void webTable(Element page, int at) {
        ConvertedDocument table = WebDocument.convert(page, Map.of(), new ArrayList<>());
        table.leftOut().forEach(left -> draft.leaveOut(left.what(), left.why(), at));
        blockLine = at;
        MarkdownParser.make().parse(table.text()).accept(this);
        blockLine = 0;
    }

    private void block(String text, int sourceLine) {
        draft.paragraph();
        draft.direction(text, sourceLine);
        draft.paragraph();
    }

    @Override
    public void visit(Paragraph paragraph) {
        boolean inList = paragraph.getParent() instanceof ListItem;
        if (!inList) {
            draft.paragraph();
        }
        sourceLine = lineOf(paragraph);
        if (quotes > 0) {
            draft.direction((mark == null ? "" : mark.shown() + " ") + MarkdownText.plain(paragraph), sourceLine);
            mark = null;
            for (Node child = paragraph.getFirstChild(); child != null; child = child.getNext()) {
                if (child instanceof Image image) {
                    cover(image, MarkedSourceLine.plain(""));
                }
            }
            return;
        }
        visitChildren(paragraph);
        flush();
        if (!inList) {
            draft.paragraph();
        }
    }

    private void next(Node lineBreak) {
        flush();
        sourceLine = lineBehind(lineBreak, 1);
    }

    private void flush() {
        if (!line.isBlank()) {
            draft.line(line.build(), sourceLine, mark);
            mark = null;
        }
        notes.forEach(note -> draft.direction(note, sourceLine));
        notes.clear();
        line = new MarkedSourceLine.Builder();
    }

    @Override
    public void visit(SoftLineBreak lineBreak) {
        next(lineBreak);
    }

    @Override
    public void visit(HardLineBreak lineBreak) {
        next(lineBreak);
    }

    @Override
    public void visit(Text text) {
        line.add(text.getLiteral(), emphasis);
    }

    @Override
    public void visit(Code code) {
        line.addCode(code.getLiteral(), emphasis);
    }

    @Override
    public void visit(org.commonmark.node.Emphasis node) {
        stressed(node, emphasis == Emphasis.STRONG ? Emphasis.STRONG : Emphasis.LIGHT);
    }

    @Override
    public void visit(StrongEmphasis node) {
        stressed(node, Emphasis.STRONG);
    }

    private void stressed(Node node, Emphasis inside) {
        Emphasis outside = emphasis;
        emphasis = inside;
        visitChildren(node);
        emphasis = outside;
    }

    @Override
    public void visit(Image image) {
        notes.add(shown(image));
        cover(image, line.build());
        draft.leaveOut(image.getDestination(), "a picture's address is not shown", sourceLine);
    }

    /** What a picture shows, in the author's words; the name of its file if there are none. */
    private static String shown(Image image) {
        String text = MarkdownText.plain(image);
        String address = image.getDestination();
        return text.isBlank() && isFile(image) ? address.substring(address.lastIndexOf('/') + 1) : text;
    }

    private void cover(Image image, MarkedSourceLine before) {
        if (isFile(image)) {
            draft.cover(image.getDestination(), shown(image), before, sourceLine);
        }
    }

    /** Whether a picture lies on the disk, and not at an address. */
    private static boolean isFile(Image image) {
        String address = image.getDestination();
        return !address.isBlank() && !SCHEME.matcher(address).lookingAt();
    }

    @Override
    public void visit(Link link) {
        if (link.getDestination().startsWith(CHECK)) {
            draft.fact(MarkdownText.plain(link), link.getDestination().substring(CHECK.length()), sourceLine);
        } else {
            draft.leaveOut(link.getDestination(), ADDRESS, sourceLine);
        }
        visitChildren(link);
    }

    @Override
    public void visit(HtmlInline html) {
        if (MarkdownText.isBreak(html)) {
            flush();
        } else {
            String note = TAGS.matcher(html.getLiteral()).replaceAll(" ");
            if (note.isBlank()) {
                draft.leaveOut(html.getLiteral(), MARK_UP, sourceLine);
            }
            notes.add(note);
        }
    }

    @Override
    public void visit(CustomNode node) {
        if (node instanceof SpokenFormNode said) {
            draft.said(line, MarkdownText.plain(said), emphasis(said), said.said(), sourceLine);
        }
    }

    /** The emphasis of a word if the whole of it is stressed inside its brackets. */
    private Emphasis emphasis(SpokenFormNode said) {
        Node only = said.getFirstChild();
        if (only == null || only.getNext() != null) {
            return emphasis;
        }
        return only instanceof StrongEmphasis
                ? Emphasis.STRONG
                : only instanceof org.commonmark.node.Emphasis && emphasis == Emphasis.NONE ? Emphasis.LIGHT : emphasis;
    }
}
