package org.bookholder.script.source;

/** How far the items of lists within lists are set in, so that CommonMark takes each list for itself and counts it anew. */
final class ListIndent {
    private static final String STEP = "    ";

    private int last = -1;

    /** The spaces before the next item. A level that skips one would be taken for code. */
    String at(int level) {
        last = Math.min(level, last + 1);
        return STEP.repeat(Math.max(0, last));
    }

    /** Something else than an item stands between the lists. */
    void end() {
        last = -1;
    }
}
