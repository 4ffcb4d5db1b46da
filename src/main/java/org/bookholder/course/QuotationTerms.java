package org.bookholder.course;

import java.nio.file.Path;
import java.util.List;
import java.util.OptionalDouble;
import org.bookholder.problem.ProblemException;

/**
 * What a person who makes a course for somebody else has written down for a quotation. All money is in one currency.
 *
 * @param client whom it is for; may be empty
 * @param maker who makes it; may be empty
 * @param currency how it is written, such as USD; may be empty
 * @param rate price of an hour of work, if given
 * @param more hours of work besides those of the plan; 0 if none
 * @param moreFor what they are for; may be empty
 * @param expenses money for what has to be bought or hired; 0 if none
 * @param expensesFor what it is for; may be empty
 * @param filmsMade whether the films are made by the program and looked through, instead of edited by hand
 */
public record QuotationTerms(
        String client,
        String maker,
        String currency,
        OptionalDouble rate,
        double more,
        String moreFor,
        double expenses,
        String expensesFor,
        boolean filmsMade) {
    /** How it is written that the films are made by the program. */
    static final String MADE = "made by Bookholder";

    /** Who edits, as it is written; the first if nothing is. */
    static final List<String> FILMS = List.of("edited by hand", MADE);

    /**
     * What is written in a course's file.
     *
     * @throws ProblemException if it cannot be read
     */
    public static QuotationTerms read(Path folder) throws ProblemException {
        return CourseSettings.read(folder).quotation();
    }
}
