package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.apache.poi.xwpf.usermodel.IRunElement;
import org.apache.poi.xwpf.usermodel.XWPFParagraph;
import org.apache.poi.xwpf.usermodel.XWPFRun;
import org.apache.poi.xwpf.usermodel.XWPFSDT;
import org.bookholder.script.model.LeftOut;
import org.bookholder.script.normalize.Latex;
import org.jspecify.annotations.Nullable;
import org.w3c.dom.Element;
import org.w3c.dom.Node;

/**
 * A paragraph of a DOCX document as CommonMark: its text with its stress, as it is seen, so without what is hidden,
 * struck through or moved elsewhere.
 */
final class WordParagraph {
    private static final Pattern OURS = Pattern.compile("\\[[^\\[\\]\\n]*] ?\\((?:say|check):[^)\\n]*\\)");
    private static final Pattern SPECIAL = Pattern.compile("[\\\\`*_\\[\\]<>#&|~]");

    /** A line that CommonMark would read as a rule, or as turning the line above it into a heading. */
    private static final Pattern UNDERLINE = Pattern.compile("(?m)^(?=(?:-+|=+)\\s*$)");

    /** What the library writes for the mark of a note. */
    private static final Pattern NOTE_MARK = Pattern.compile("\\[(?:foot|end)noteRef:[^\\]]*\\]");

    private final StringBuilder marked = new StringBuilder();
    private final StringBuilder piece = new StringBuilder();
    private final List<LeftOut> leftOut;
    private String stress = "";

    private WordParagraph(List<LeftOut> leftOut) {
        this.leftOut = leftOut;
    }

    /** The text of a paragraph; what of it is not seen is added to {@code leftOut}. */
    static String marked(XWPFParagraph paragraph, List<LeftOut> leftOut) {
        WordParagraph text = new WordParagraph(leftOut);
        for (IRunElement element : paragraph.getIRuns()) {
            if (element instanceof XWPFRun run) {
                text.add(run);
            } else if (element instanceof XWPFSDT field) {
                text.add(field.getContent().getText(), "");
            }
        }
        text.close();
        return text.marked.toString();
    }

    private void add(XWPFRun run) {
        String plain = NOTE_MARK.matcher(run.text()).replaceAll("");
        if (run.getCTR().sizeOfDelTextArray() > 0 || plain.isEmpty()) {
            return;
        }
        @Nullable String unseen = unseen(run);
        if (unseen != null && !plain.isBlank()) {
            leftOut.add(new LeftOut(0, ScriptBuilder.brief(plain.strip()), unseen));
        } else {
            add(plain, run.isBold() ? "**" : run.isItalic() ? "*" : "");
        }
    }

    private static @Nullable String unseen(XWPFRun run) {
        if (run.isStrikeThrough() || run.isDoubleStrikeThrough()) {
            return "it is struck through";
        }
        if (run.isVanish()) {
            return "it is hidden";
        }
        @Nullable Node parent = run.getCTR().getDomNode().getParentNode();
        boolean moved = parent instanceof Element element && "moveFrom".equals(element.getLocalName());
        return moved ? "it was moved elsewhere" : null;
    }

    private void add(String text, String own) {
        if (!own.equals(stress)) {
            close();
            stress = own;
        }
        piece.append(text);
    }

    /** Ends a stressed run; stress marks must touch the words, so spaces stay outside them. */
    private void close() {
        String content = escaped(piece.toString());
        String core = content.strip();
        if (stress.isEmpty() || core.isEmpty() || core.contains("\n")) {
            marked.append(content);
        } else {
            int start = content.indexOf(core);
            marked.append(content, 0, start)
                    .append(stress)
                    .append(core)
                    .append(stress)
                    .append(content.substring(start + core.length()));
        }
        piece.setLength(0);
    }

    /**
     * The text with a backslash before everything that CommonMark would read as mark-up, except spoken forms, ageing
     * facts and formulae.
     */
    static String escaped(String plain) {
        String even =
                TexBrackets.inDollars(plain.replace("\r", "").replace('\t', ' ').replace('\u000b', '\n'));
        StringBuilder escaped = new StringBuilder();
        Matcher ours = OURS.matcher(even);
        int at = 0;
        for (int i = 0; i < even.length(); i = Math.max(i + 1, at)) {
            int end = even.charAt(i) == '$'
                    ? Latex.end(even, i)
                    : ours.region(i, even.length()).lookingAt() ? ours.end() : -1;
            if (end > i) {
                escaped.append(SPECIAL.matcher(even.substring(at, i)).replaceAll("\\\\$0"));
                escaped.append(even, i, end);
                at = end;
            }
        }
        escaped.append(SPECIAL.matcher(even.substring(at)).replaceAll("\\\\$0"));
        return UNDERLINE.matcher(escaped).replaceAll("\\\\");
    }

    /** The texts of the boxes that are anchored in a paragraph, one for each of their paragraphs. */
    static List<String> boxes(XWPFParagraph paragraph) {
        List<String> found = new ArrayList<>();
        collect(paragraph.getCTP().getDomNode(), false, found);
        return found;
    }

    private static void collect(Node node, boolean inBox, List<String> found) {
        for (@Nullable Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
            String name = child.getLocalName() == null ? "" : child.getLocalName();
            // a box is stored twice, the second time for older programs
            if (inBox && name.equals("p")) {
                String text = text(child).strip();
                if (!text.isEmpty()) {
                    found.add(text);
                }
            } else if (!name.equals("Fallback")) {
                collect(child, inBox || name.equals("txbxContent"), found);
            }
        }
    }

    private static String text(Node node) {
        StringBuilder text = new StringBuilder();
        for (@Nullable Node child = node.getFirstChild(); child != null; child = child.getNextSibling()) {
            text.append("t".equals(child.getLocalName()) ? child.getTextContent() : text(child));
        }
        return text.toString();
    }
}
