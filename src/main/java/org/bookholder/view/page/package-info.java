/** Lists shown in place of the script. */
@NullMarked
package org.bookholder.view.page;

import org.jspecify.annotations.NullMarked;
