/**
 * Writes small files whole and private: start with {@link org.bookholder.files.AtomicFiles}. Recordings and the journal,
 * which are written piece by piece, get their folder and their permissions from {@link org.bookholder.files.PrivateFiles}.
 */
@NullMarked
package org.bookholder.files;

import org.jspecify.annotations.NullMarked;
