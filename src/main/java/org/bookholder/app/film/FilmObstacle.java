package org.bookholder.app.film;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.problem.ProblemException;

/**
 * Something that stands in the way of a finished film; a draft is made all the same.
 *
 * @param what what is wrong, a phrase without a full stop
 * @param where the file, the line of a file or the session concerned
 * @param atTerminal what to do about it at a terminal, an imperative phrase without a full stop
 * @param onPage the same with what can be pressed on a page
 * @param lines whether it is only about lines, which can be left out
 */
public record FilmObstacle(String what, String where, String atTerminal, String onPage, boolean lines) {
    /** Where a person is told of it. */
    public enum Told {
        /** At a terminal, beside a command's options. */
        TERMINAL,
        /** On a page of the program's. */
        PAGE
    }

    /** One that is mended in the same way everywhere. */
    static FilmObstacle of(ProblemException problem) {
        return new FilmObstacle(problem.what(), problem.where(), problem.remedy(), problem.remedy(), false);
    }

    /** As what keeps a finished film from being made. */
    public ProblemException problem(Told told) {
        return problem(told, true);
    }

    /** As what a draft does without: to make a draft is no advice then. */
    public ProblemException ofDraft(Told told) {
        return problem(told, false);
    }

    private ProblemException problem(Told told, boolean orDraft) {
        boolean page = told == Told.PAGE;
        List<String> ways = new ArrayList<>(List.of(page ? onPage : atTerminal));
        if (lines) {
            ways.add("leave the lines out" + (page ? "" : " with --leave-out"));
        }
        if (orDraft) {
            ways.add("make a draft" + (page ? "" : " with --draft"));
        }
        int last = ways.size() - 1;
        String remedy = last == 0 ? ways.get(0) : String.join(", ", ways.subList(0, last)) + ", or " + ways.get(last);
        return new ProblemException(what, where, remedy);
    }
}
