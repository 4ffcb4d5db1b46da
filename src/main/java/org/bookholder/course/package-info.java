/**
 * A course: a folder of lesson scripts, what was recorded and exported of them, and what is planned.
 *
 * <p>{@link org.bookholder.course.CourseReader} reads the folder. What is derived from it lies in the packages below:
 * {@code prepare} (running time, hard stretches), {@code board} (where each lesson stands), {@code shoot} (recording
 * sessions), {@code edit} (weeks of editing, costs), {@code calendar} and {@code page} (the same for other programs).
 */
@NullMarked
package org.bookholder.course;

import org.jspecify.annotations.NullMarked;
