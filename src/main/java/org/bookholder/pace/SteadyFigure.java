package org.bookholder.pace;

/**
 * A figure on show that does not flicker between two values: it stays until the measured value is clearly nearer to
 * another one.
 *
 * @param shown the figure on show, a multiple of the step; NaN if there is none
 */
public record SteadyFigure(double shown) {
    /** No figure on show. */
    public static final SteadyFigure NONE = new SteadyFigure(Double.NaN);

    /** How far the value must lie from the figure on show, in steps; rounding alone would change at 0.5. */
    private static final double LEAVES_AT = 0.8;

    /**
     * The figure that follows on this one.
     *
     * @param value the measured value; NaN takes the figure away
     * @param step what figures are multiples of, above 0
     */
    public SteadyFigure next(double value, double step) {
        if (Math.abs(value - shown) <= LEAVES_AT * step) {
            return this;
        }
        return Double.isNaN(value) ? NONE : new SteadyFigure(Math.round(value / step) * step);
    }
}
