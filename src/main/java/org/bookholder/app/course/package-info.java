/** A course: its board, its sessions, its plan, and what people mark in it. */
@NullMarked
package org.bookholder.app.course;

import org.jspecify.annotations.NullMarked;
