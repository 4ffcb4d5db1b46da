package org.bookholder.view.layout;

import java.util.ArrayList;
import java.util.List;

/**
 * Breaks a paragraph into rows of even length that end where the sense allows it. Finds the smallest total penalty over
 * the paragraph, in time linear in its number of words.
 *
 * @param column length of a row in ems
 * @param space length of a space in ems
 */
record RowBreaker(double column, double space) {
    private static final double RAGGED = 100;
    private static final double LONE = 60;
    private static final double LONE_START = 25;

    /** Arranges the pieces in rows; a piece longer than a row gets its own. */
    List<List<Piece>> rows(List<Piece> pieces) {
        int count = pieces.size();
        double[] cost = new double[count + 1];
        int[] next = new int[count + 1];
        for (int from = count - 1; from >= 0; from--) {
            cost[from] = Double.POSITIVE_INFINITY;
            double width = 0;
            for (int to = from; to < count; to++) {
                width += pieces.get(to).width() + (to > from ? space : 0);
                if (width > column && to > from) {
                    break;
                }
                double whole = cost(pieces, from, to, width) + cost[to + 1];
                if (whole < cost[from]) {
                    cost[from] = whole;
                    next[from] = to + 1;
                }
            }
        }
        List<List<Piece>> rows = new ArrayList<>();
        for (int at = 0; at < count; at = next[at]) {
            rows.add(pieces.subList(at, next[at]));
        }
        return rows;
    }

    private double cost(List<Piece> pieces, int from, int to, double width) {
        boolean last = to == pieces.size() - 1;
        double lone = from == to ? lone(pieces, from, width) : 0;
        if (last) {
            return lone;
        }
        double slack = Math.max(0, column - width) / column;
        double loneStart = to > from && pieces.get(to - 1).endsSentence() ? LONE_START : 0;
        return RAGGED * slack * slack + pieces.get(to).bond() + loneStart + lone;
    }

    /** A single word in a row reads like a sentence. If it is not one, the penalty is higher the shorter it is. */
    private double lone(List<Piece> pieces, int at, double width) {
        boolean begins = at == 0 || pieces.get(at - 1).endsSentence();
        boolean ends = at == pieces.size() - 1 || pieces.get(at).endsSentence();
        return begins && ends ? 0 : LONE * Math.max(0, 1 - width / column);
    }
}
