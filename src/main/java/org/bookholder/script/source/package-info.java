/** Reads script files of each format. Start with {@link org.bookholder.script.source.ScriptReader}. */
@NullMarked
package org.bookholder.script.source;

import org.jspecify.annotations.NullMarked;
