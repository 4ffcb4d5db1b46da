package org.bookholder.bench;

/** One thing said, with its written form. */
final class Utterance {
    private final String text;
    private final short[] sound;

    /**
     * Joins the two.
     *
     * @param text as a script would have it, without line breaks
     * @param sound at {@link Sound#RATE}, one channel, trimmed to the voice; not copied
     */
    Utterance(String text, short[] sound) {
        this.text = text;
        this.sound = sound;
    }

    String text() {
        return text;
    }

    short[] sound() {
        return sound;
    }

    int words() {
        return text.split(" ", -1).length;
    }
}
