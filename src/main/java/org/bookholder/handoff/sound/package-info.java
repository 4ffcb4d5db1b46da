/** Sound for the editor: the takes as Broadcast WAV, and the cut lesson to listen to. */
@NullMarked
package org.bookholder.handoff.sound;

import org.jspecify.annotations.NullMarked;
