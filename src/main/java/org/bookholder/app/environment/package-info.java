/** What services depend on: clocks, folders and devices of the machine, and a way to stop them. */
@NullMarked
package org.bookholder.app.environment;

import org.jspecify.annotations.NullMarked;
