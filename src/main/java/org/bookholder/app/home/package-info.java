/**
 * The program's own page, from which everything is done; start at {@link org.bookholder.app.home.Home}. Lessons are read on the
 * thread that calls {@link org.bookholder.app.home.Home#work}, since a window belongs to a process's first thread.
 */
@NullMarked
package org.bookholder.app.home;

import org.jspecify.annotations.NullMarked;
