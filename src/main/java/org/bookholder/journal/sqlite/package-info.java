/** The event journal in SQLite; the only package that knows SQL. */
@NullMarked
package org.bookholder.journal.sqlite;

import org.jspecify.annotations.NullMarked;
