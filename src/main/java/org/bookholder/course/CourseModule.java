package org.bookholder.course;

/**
 * A module of a course: lessons that belong together.
 *
 * @param number its place in the course, from 1
 * @param title its title
 */
public record CourseModule(int number, String title) {
    /** How it is called in lists, for example "Module 2: Knots". */
    public String heading() {
        return "Module " + number + ": " + title;
    }
}
