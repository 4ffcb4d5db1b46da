package org.bookholder.runtime.take;

/** Input from the capture stage to the script ear's stage, in order of time. */
@FunctionalInterface
interface EarInput {
    /** Delivers it. */
    void to(ScriptEarStage stage);
}
