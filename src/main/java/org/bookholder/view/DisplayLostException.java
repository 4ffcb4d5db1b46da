package org.bookholder.view;

/** The display that the window was on is gone, and with it the window. No other one can be opened by this process. */
public final class DisplayLostException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public DisplayLostException() {
        super("the display is gone");
    }

    /** The same, noticed by what it broke. */
    public DisplayLostException(RuntimeException broken) {
        super("the display is gone", broken);
    }
}
