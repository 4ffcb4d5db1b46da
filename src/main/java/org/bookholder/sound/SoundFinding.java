package org.bookholder.sound;

/**
 * The verdict on one aspect of the sound.
 *
 * @param grade how good it is
 * @param about the aspect, in one or two words
 * @param figure what was measured, with its unit
 * @param advice what to try, an imperative phrase without a full stop; empty where nothing needs to be done
 */
public record SoundFinding(Grade grade, String about, String figure, String advice) {
    /** How good something is. */
    public enum Grade {
        /** Leave it as it is. */
        GOOD("good"),
        /** Good enough, but could be better. */
        FAIR("fair"),
        /** It spoils a recording. */
        POOR("poor");

        private final String label;

        Grade(String label) {
            this.label = label;
        }

        /** The word that people see. */
        public String label() {
            return label;
        }
    }
}
