/** What is shown beside the text. */
@NullMarked
package org.bookholder.view.cue;

import org.jspecify.annotations.NullMarked;
