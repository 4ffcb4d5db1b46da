package org.bookholder.script.source;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToIntFunction;
import org.bookholder.script.model.Cover;
import org.bookholder.script.model.ScriptLine;

/** Finds out before which word of which line each picture of a script stands. */
final class CoverPlaces {
    private final List<Waiting> waiting = new ArrayList<>();
    private final List<Cover> covers = new ArrayList<>();

    /** A picture whose line is not known yet; {@code before} is what stands before it on its source line. */
    private record Waiting(String file, String text, MarkedSourceLine before, int sourceLine) {}

    /** Takes in a picture. */
    void add(String file, String text, MarkedSourceLine before, int sourceLine) {
        waiting.add(new Waiting(file, text, before, sourceLine));
    }

    /**
     * Takes in the lines that a source line holds; where it has none, the pictures wait for the next.
     *
     * @param sourceLine the source line, from 1
     * @param words counts the words of a part of a source line
     */
    void settle(int sourceLine, List<ScriptLine> lines, ToIntFunction<MarkedSourceLine> words) {
        if (lines.isEmpty()) {
            return;
        }
        List<Waiting> still = new ArrayList<>();
        for (Waiting picture : waiting) {
            // Of an earlier source line nothing is read, as that of another speaker: its words don't count in this one.
            int skip = picture.sourceLine() == sourceLine ? words.applyAsInt(picture.before()) : 0;
            int line = 0;
            while (line < lines.size() && skip >= lines.get(line).words().size()) {
                skip -= lines.get(line).words().size();
                line++;
            }
            if (line < lines.size()) {
                covers.add(new Cover(
                        picture.file(), picture.text(), lines.get(line).number(), skip + 1, picture.sourceLine()));
            } else {
                // Behind the last word: it goes with the next line.
                still.add(
                        new Waiting(picture.file(), picture.text(), MarkedSourceLine.plain(""), picture.sourceLine()));
            }
        }
        waiting.clear();
        waiting.addAll(still);
    }

    /** The pictures that stand before some word, in script order. */
    List<Cover> covers() {
        return List.copyOf(covers);
    }
}
