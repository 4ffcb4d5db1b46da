package org.bookholder.app.home;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.PrivateFiles;
import org.bookholder.problem.ProblemException;

/**
 * The running orders that people have put together themselves, one for each course, each for the day on which that was done. Safe
 * for use by several threads.
 */
final class KeptOrders {
    private static final JsonMapper MAPPER = new JsonMapper();

    private final Path file;
    private Map<String, Kept> orders;

    /**
     * An order.
     *
     * @param day the day for which it holds
     * @param lessons the names of its lessons
     */
    private record Kept(String day, List<String> lessons) {}

    /** Reads what is kept; what can't be read counts as nothing. */
    KeptOrders(Path file) {
        this.file = file;
        this.orders = read(file);
    }

    private static Map<String, Kept> read(Path file) {
        try {
            return Map.copyOf(MAPPER.readValue(Files.readString(file), new TypeReference<Map<String, Kept>>() {}));
        } catch (IOException | RuntimeException none) {
            return Map.of();
        }
    }

    /** The names of the lessons of a course for a day; empty if nobody has put them in an order. */
    synchronized Optional<List<String>> of(String course, LocalDate day) {
        return Optional.ofNullable(orders.get(course))
                .filter(kept -> kept.day().equals(day.toString()))
                .map(Kept::lessons);
    }

    /** Keeps an order; those of other days are forgotten. */
    synchronized void keep(String course, LocalDate day, List<String> lessons) throws ProblemException {
        Map<String, Kept> changed = new TreeMap<>(orders);
        changed.values().removeIf(kept -> !kept.day().equals(day.toString()));
        changed.put(course, new Kept(day.toString(), List.copyOf(lessons)));
        keep(changed);
    }

    /** Takes a lesson out of an order, if it is in one. */
    synchronized void leaveOut(String course, LocalDate day, String lesson) throws ProblemException {
        List<String> lessons = new ArrayList<>(of(course, day).orElse(List.of()));
        if (lessons.remove(lesson)) {
            keep(course, day, lessons);
        }
    }

    /** Goes back to the plan's order. */
    synchronized void drop(String course) throws ProblemException {
        Map<String, Kept> changed = new TreeMap<>(orders);
        changed.remove(course);
        keep(changed);
    }

    private void keep(Map<String, Kept> changed) throws ProblemException {
        try {
            PrivateFiles.createFolderFor(file);
            new AtomicFiles(Access.OWNER).write(file, MAPPER.writeValueAsString(changed));
            orders = Map.copyOf(changed);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("running orders must have a JSON form", e);
        } catch (IOException e) {
            throw new ProblemException(
                    "the running order can't be kept", file.toString(), "see that the folder can be written", e);
        }
    }
}
