package org.bookholder.speech;

/** The two ways to listen, which are evidence only together. */
public enum EarKind {
    /** Knows the script and hears what it expects; quick and exact while the script is read. */
    SCRIPT,
    /** Knows the language and not the script; late, and wrong about one word in ten. */
    OPEN
}
