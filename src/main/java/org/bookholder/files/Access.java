package org.bookholder.files;

/** Who may read and change a new file. */
public enum Access {
    /** Its owner only: mode 600 on POSIX systems, an access list with one entry on Windows. */
    OWNER,
    /** Whoever the system allows by default: for files that are meant to be given away. */
    SYSTEM_DEFAULT,
    /** Whoever may the file that is replaced; for another one, whoever the system allows by default: for the user's own files. */
    KEPT
}
