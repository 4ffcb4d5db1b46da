package org.bookholder.app.day;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import org.bookholder.session.LineCounts;

/**
 * A session's part of a day.
 *
 * @param folder where it lies
 * @param title the lesson's title
 * @param began time of day of its first take on the day
 * @param ended time of day at which its last one ended
 * @param takes how many takes it has of the day
 * @param onCamera time in these takes, without holds
 * @param lines how many lines it read, skipped and did not reach
 * @param length how long what was read of the lesson runs
 * @param pickups lines that still are to be picked up, and are not listed by a later session of the lesson
 */
public record DaySession(
        Path folder,
        String title,
        Instant began,
        Instant ended,
        int takes,
        Duration onCamera,
        LineCounts lines,
        Duration length,
        int pickups) {}
