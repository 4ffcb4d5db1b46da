/** Reading and on-camera time, and stumbling, to calm advice on breaks. */
@NullMarked
package org.bookholder.fatigue;

import org.jspecify.annotations.NullMarked;
