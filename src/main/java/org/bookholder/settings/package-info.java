/**
 * Settings that people write as YAML, each with its line number; start with {@link org.bookholder.settings.Settings}.
 */
@NullMarked
package org.bookholder.settings;

import org.jspecify.annotations.NullMarked;
