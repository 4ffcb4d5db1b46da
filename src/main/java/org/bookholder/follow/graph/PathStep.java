package org.bookholder.follow.graph;

import org.bookholder.speech.RecognizedWord;
import org.jspecify.annotations.Nullable;

/**
 * The explanation of one heard token: the newest link of a chain of explanations that goes back to the start of a take.
 *
 * @param before the explanation of the previous token; null at the start of the take
 * @param place the place in the reading graph that it leads to
 * @param off whether the token belongs to speech that is not in the script
 * @param kind how the token is explained
 * @param node the node that it consumed, or -1
 * @param jumped whether there was a jump before it
 * @param heard the token with its times; null while it is only part of a partial hypothesis
 * @param cost cost of the whole chain, in nats
 * @param depth how many steps came before
 */
public record PathStep(
        @Nullable PathStep before,
        int place,
        boolean off,
        Kind kind,
        int node,
        boolean jumped,
        @Nullable RecognizedWord heard,
        double cost,
        int depth) {
    /**
     * How a heard token is explained. Deletions have no step of their own: they are the words passed over between two
     * steps.
     */
    public enum Kind {
        /** The start of a take: nothing was heard yet. */
        START,
        /** The token is the script's word. */
        MATCH,
        /** The token was said in place of the script's word. */
        SUBSTITUTION,
        /** The token was said in addition to the script's words. */
        INSERTION,
        /** The token belongs to speech that is not in the script. */
        OFF
    }

    /** The first step of a take. */
    public static PathStep start(int place) {
        return new PathStep(null, place, false, Kind.START, -1, false, null, 0, 0);
    }

    /** A step after this one. */
    PathStep then(Kind kind, int toPlace, int consumed, boolean jump, @Nullable RecognizedWord token, double total) {
        return new PathStep(this, toPlace, kind == Kind.OFF, kind, consumed, jump, token, total, depth + 1);
    }

    /** Two chains with the same key have the same future; the cheaper one is kept. */
    int key() {
        return 2 * place + (off ? 1 : 0);
    }

    /**
     * Chains are compared by identity, because comparing whole chains would take time in proportion to their length.
     */
    @Override
    public boolean equals(@Nullable Object other) {
        return this == other;
    }

    @Override
    public int hashCode() {
        return System.identityHashCode(this);
    }
}
