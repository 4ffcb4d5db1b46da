/**
 * Writes small files completely and privately; start with {@link org.bookholder.files.AtomicFiles}. For recordings and
 * the journal, which are written piece by piece, {@link org.bookholder.files.PrivateFiles} creates folders and sets
 * permissions.
 */
@NullMarked
package org.bookholder.files;

import org.jspecify.annotations.NullMarked;
