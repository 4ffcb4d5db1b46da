package org.bookholder.sound;

/**
 * What is said of one side of the sound.
 *
 * @param grade how good it is
 * @param about which side: one or two words
 * @param figure what was measured, with its unit
 * @param advice what to try, an imperative phrase without a full stop; empty where nothing needs to be done
 */
public record SoundFinding(Grade grade, String about, String figure, String advice) {
    /** How good something is. */
    public enum Grade {
        /** Leave it as it is. */
        GOOD("good"),
        /** It will do; it can be better. */
        FAIR("fair"),
        /** It spoils a recording. */
        POOR("poor");

        private final String label;

        Grade(String label) {
            this.label = label;
        }

        /** The word for it. */
        public String label() {
            return label;
        }
    }
}
