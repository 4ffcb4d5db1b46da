/** The command line; the only reader of the machine's clock. */
@NullMarked
package org.bookholder.cli;

import org.jspecify.annotations.NullMarked;
