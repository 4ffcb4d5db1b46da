/** Script files of each format to scripts. Start with {@link org.bookholder.script.source.ScriptReader}. */
@NullMarked
package org.bookholder.script.source;

import org.jspecify.annotations.NullMarked;
