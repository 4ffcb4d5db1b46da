package org.bookholder.speech;

/** The two kinds of recogniser. Only both together are evidence of what was read. */
public enum EarKind {
    /** Knows the script and tends to hear what it expects; fast and accurate while the script is being read. */
    SCRIPT,
    /** Knows the language but not the script; reports late, and gets about one word in ten wrong. */
    OPEN
}
