package org.bookholder.course.edit;

import org.bookholder.course.Costs;

/**
 * Compares editing it yourself with hiring an editor.
 *
 * @param own cost of editing it yourself: the equipment, plus the hours at their value
 * @param hired cost of hiring an editor: the quote, plus the equipment, which you need either way
 * @param ownSales how many sales cover editing it yourself
 * @param hiredSales how many sales cover hiring an editor; 0 if there is no quote
 */
public record Balance(double own, double hired, long ownSales, long hiredSales) {
    /** The comparison for {@code hours} of editing. */
    public static Balance of(Costs costs, double hours) {
        double own = costs.equipment() + hours * costs.hour();
        double hired = costs.hired() == 0 ? 0 : costs.equipment() + costs.hired();
        return new Balance(own, hired, sales(own, costs), sales(hired, costs));
    }

    private static long sales(double cost, Costs costs) {
        return (long) Math.ceil(cost / (costs.price() * costs.kept()) - 1e-9);
    }
}
