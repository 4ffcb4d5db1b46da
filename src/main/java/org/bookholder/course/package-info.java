/**
 * A course: a folder of lesson scripts, their recordings and exports, and the plans.
 *
 * <p>{@link org.bookholder.course.CourseReader} reads the folder. Subpackages derive the rest: {@code prepare} (running
 * time, hard stretches), {@code board} (the state of each lesson), {@code shoot} (recording sessions), {@code edit}
 * (weeks of editing, costs), {@code calendar} and {@code page} (the same for other programs).
 */
@NullMarked
package org.bookholder.course;

import org.jspecify.annotations.NullMarked;
