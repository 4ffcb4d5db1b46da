package org.bookholder.script.source;

import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Whose lines are read this time, as a line before a script's text: {@code %speaker: Host, Narrator}. A session keeps
 * the text with this line, so that the same lines are found in it again; the file of the script stays as it is. The
 * line is not counted among those of the file.
 *
 * @param names the names; empty if the script's own setting counts
 * @param text the text of the file
 */
public record SpeakerChoice(List<String> names, String text) {
    private static final Pattern LINE = Pattern.compile("%speaker: ([^\\r\\n]{1,300})\\R");

    /** Copies the list. */
    public SpeakerChoice {
        names = List.copyOf(names);
    }

    /** Takes the line off a text that may begin with it. */
    public static SpeakerChoice of(String text) {
        Matcher line = LINE.matcher(text);
        return line.lookingAt()
                ? new SpeakerChoice(names(line.group(1)), text.substring(line.end()))
                : new SpeakerChoice(List.of(), text);
    }

    /** The text with the line before it, in place of any that is there; without one if there are no names. */
    public static String in(String text, List<String> names) {
        String own = of(text).text;
        return names.isEmpty() ? own : "%speaker: " + String.join(", ", names) + "\n" + own;
    }

    /** Names that are separated by commas. */
    public static List<String> names(String all) {
        return Arrays.stream(all.split(",", -1))
                .map(String::strip)
                .filter(name -> !name.isEmpty())
                .toList();
    }
}
