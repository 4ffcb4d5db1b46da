package org.bookholder.course.prepare;

/**
 * A place in a script that is hard to say or to hear.
 *
 * @param kind why
 * @param line number of the line, from 1
 * @param words the words concerned
 * @param count how many syllables, words, numbers or repetitions there are
 */
public record HardStretch(Kind kind, int line, String words, int count) {
    /** Why a stretch is hard. */
    public enum Kind {
        /** Many syllables without a breath mark. */
        BREATH(
                "syllables without a breath mark",
                "put a comma, or make two sentences of it (a breath of people who read aloud holds 18 on average)"),
        /** A long sentence. */
        LONG("words in a sentence", "make two of it (more than 25: common practice)"),
        /** Several numbers in a row. */
        NUMBERS("numbers in a row", "show them, and say one (three: common practice)"),
        /** Several words in a row that begin with similar sounds. */
        ONSETS(
                "words that begin alike",
                "say one of them another way (four, or three that hiss or begin with two consonants: a rule of ours)"),
        /** A word that the recogniser does not know. */
        UNKNOWN("word unknown to the recogniser", "give its sound if it goes unheard: [word](say:like this)");

        private final String what;
        private final String remedy;

        Kind(String what, String remedy) {
            this.what = what;
            this.remedy = remedy;
        }

        /** The unit of the count, to be written after a number. */
        public String what() {
            return what;
        }

        /** What the author can do. */
        public String remedy() {
            return remedy;
        }
    }
}
