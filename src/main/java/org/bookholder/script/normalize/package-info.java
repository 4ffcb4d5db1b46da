/** Text normalization: turns numbers, money, times, units and abbreviations into the words that people say for them. */
@NullMarked
package org.bookholder.script.normalize;

import org.jspecify.annotations.NullMarked;
