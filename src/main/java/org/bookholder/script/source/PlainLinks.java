package org.bookholder.script.source;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.script.model.ScriptWord.Emphasis;

/** Spoken forms, ageing facts and links in plain text, written as in CommonMark: their labels stay in the line. */
final class PlainLinks {
    private static final Pattern LINK = Pattern.compile("\\[(?<label>[^\\[\\]]{1,300})](?: ?\\((?<kind>say|check):"
            + "(?<value>[^()]{0,300}(?:\\([^()]{0,100}\\)[^()]{0,100}){0,5})\\)"
            + "|\\((?<address>(?:[a-z]{3,8}://|www\\.|mailto:|tel:)[^\\s()]{1,2000})\\))");

    private PlainLinks() {}

    /** A row of plain text as a line; facts and addresses are told to {@code draft}. */
    static MarkedSourceLine marked(String row, int sourceLine, ScriptBuilder draft) {
        MarkedSourceLine.Builder line = new MarkedSourceLine.Builder();
        Matcher link = LINK.matcher(row);
        int at = 0;
        while (link.find()) {
            line.add(row.substring(at, link.start()), Emphasis.NONE);
            String label = link.group("label");
            if (link.group("address") != null) {
                draft.leaveOut(link.group("address"), MarkdownSource.ADDRESS, sourceLine);
                line.add(label, Emphasis.NONE);
            } else if (link.group("kind").equals("check")) {
                draft.fact(label, link.group("value").strip(), sourceLine);
                line.add(label, Emphasis.NONE);
            } else {
                draft.said(line, label, Emphasis.NONE, link.group("value").strip(), sourceLine);
            }
            at = link.end();
        }
        line.add(row.substring(at), Emphasis.NONE);
        return line.build();
    }
}
