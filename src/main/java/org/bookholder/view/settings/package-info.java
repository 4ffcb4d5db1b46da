/** The settings of the reading window. */
@NullMarked
package org.bookholder.view.settings;

import org.jspecify.annotations.NullMarked;
