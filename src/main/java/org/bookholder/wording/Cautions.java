package org.bookholder.wording;

import java.util.List;

/** Sentences that always accompany breaks, limits and long sessions: the one place for them. */
public final class Cautions {
    private static final List<String> LINES = List.of(
            "If your throat hurts or your voice turns hoarse, stop and rest it; see a clinician if it lasts.",
            "If your eyes sting, tire or blur, stop and look away from the screen; see a clinician if it lasts.",
            "Keep water at hand and sip it often.",
            "These figures are guidance that you can change, not medical advice.",
            "Local work rules and licensed professional advice come first.");

    private static final List<String> BRIEF = List.of(
            "Voice and eyes: stop if it hurts or you grow hoarse; see a clinician if it lasts.",
            "Local work rules and licensed professional advice come first.");

    private static final String SHORTEST = "Stop if it hurts.";

    private static final List<String> SOURCES = List.of(
            "voice: about 35 minutes of continuous reading (Titze, Svec and Popolo 2003, on doses of vocal vibration)",
            "screen: 5 to 10 minutes away from it each hour (Health and Safety Executive, UK, on display screens)",
            "reading, on-camera: 2 to 3 hours of reading from a script, 3 to 4 hours on camera (common practice)",
            "break: 5 minutes or more count (Health and Safety Executive, UK, as above)",
            "recovery: a rest of hours, as between two days (common practice)");

    private Cautions() {}

    /** The cautions, one sentence each. */
    public static List<String> lines() {
        return LINES;
    }

    /** The same for narrow places, in two lines. */
    public static List<String> brief() {
        return BRIEF;
    }

    /** The first of them where there is room for one only; the others stand further down then. */
    public static String shortest() {
        return SHORTEST;
    }

    /** Where the default limits come from, one line for each. */
    public static List<String> sources() {
        return SOURCES;
    }
}
