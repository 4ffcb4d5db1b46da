/** Services for scripts: how a text is taken, and lessons' files that are written and edited. */
@NullMarked
package org.bookholder.app.script;

import org.jspecify.annotations.NullMarked;
