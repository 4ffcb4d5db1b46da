package org.bookholder.runtime.take;

/** What the capture stage hands to the script ear, in the order of time. */
@FunctionalInterface
interface EarInput {
    /** Hands it over. */
    void to(ScriptEarStage stage);
}
