package org.bookholder.speech;

/** The two kinds of recogniser. Only together are they evidence of what was read. */
public enum EarKind {
    /** Knows the script and tends to hear what it expects; quick and exact while the script is being read. */
    SCRIPT,
    /** Knows the language but not the script; reports late, and gets about one word in ten wrong. */
    OPEN
}
