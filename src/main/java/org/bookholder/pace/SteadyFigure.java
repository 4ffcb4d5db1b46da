package org.bookholder.pace;

/**
 * A displayed figure that does not flicker between two values: it changes only when the measured value is clearly
 * closer to another one.
 *
 * @param shown the displayed figure, a multiple of the step; NaN if there is none
 */
public record SteadyFigure(double shown) {
    /** No figure. */
    public static final SteadyFigure NONE = new SteadyFigure(Double.NaN);

    /** The figure changes when the value is this far from it, in steps; plain rounding would change at 0.5. */
    private static final double LEAVES_AT = 0.8;

    /**
     * The next figure after this one.
     *
     * @param value the measured value; NaN removes the figure
     * @param step figures are multiples of this, above 0
     */
    public SteadyFigure next(double value, double step) {
        if (Math.abs(value - shown) <= LEAVES_AT * step) {
            return this;
        }
        return Double.isNaN(value) ? NONE : new SteadyFigure(Math.round(value / step) * step);
    }
}
