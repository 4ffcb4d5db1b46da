package org.bookholder.follow.graph;

/**
 * Costs of departures from the script, in nats: the negative logarithm of how often they happen.
 *
 * @param match a script word that was heard as written
 * @param substitution a word heard in place of another, in addition to the surprise of the heard word
 * @param insertion a word heard where the script has none, in addition to its surprise
 * @param deletion a script word not heard
 * @param shortDeletion a script word of up to three letters not heard: recognisers swallow these
 * @param unhearable a word passed over because the recogniser cannot write it
 * @param leave starting to say something that is not in the script
 * @param comeBack returning to the script after that
 * @param unknown speech outside the grammar, while something is said that is not in the script
 * @param jump continuing elsewhere in the script
 * @param jumpAfterAside the same, after something that is not in the script
 * @param farther for a jump, for each unit of the logarithm of its length in lines
 * @param inside for a jump into the middle of another line
 * @param running for a jump without a pause before it
 * @param width how much a hypothesis may cost above the best one and still be kept
 */
public record PathCosts(
        double match,
        double substitution,
        double insertion,
        double deletion,
        double shortDeletion,
        double unhearable,
        double leave,
        double comeBack,
        double unknown,
        double jump,
        double jumpAfterAside,
        double farther,
        double inside,
        double running,
        double width) {
    public static PathCosts standard() {
        return new PathCosts(0.07, 3.9, 4.6, 4.0, 2.5, 0.5, 4.0, 1.0, 1.2, 5.0, 4.2, 1.2, 5.6, 1.0, 16.0);
    }
}
