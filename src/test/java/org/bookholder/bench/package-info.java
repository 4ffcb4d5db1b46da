/** Measures of how well readings are followed, and at what cost: begin with {@link org.bookholder.bench.Accuracy}. */
@NullMarked
package org.bookholder.bench;

import org.jspecify.annotations.NullMarked;
