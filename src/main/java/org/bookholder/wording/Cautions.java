package org.bookholder.wording;

import java.util.List;

/** Sentences that always accompany advice on breaks. */
public final class Cautions {
    private static final List<String> LINES = List.of(
            "If your throat hurts or your voice turns hoarse, stop and rest it; if that lasts, see a clinician.",
            "Keep water at hand and sip it often.",
            "These figures are guidance that you can change, not medical advice.",
            "Local work rules and the advice of a doctor or voice professional come first.");

    private Cautions() {}

    /** The cautions, one sentence each. */
    public static List<String> lines() {
        return LINES;
    }
}
