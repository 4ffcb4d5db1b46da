package org.bookholder.app.course;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.app.environment.Environment;
import org.bookholder.course.shoot.PlanChange;
import org.bookholder.course.shoot.PlanDays;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.PrivateFiles;

/**
 * What the plan of a course said when it was last shown at this machine, so that people are told what has moved since: a day taken out of
 * course.yaml by hand, or hours that were changed there. What moved is told again until the day is over or something else moves. What
 * can't be read or written counts as never shown: a plan is shown all the same.
 */
public final class ShownPlans {
    private static final JsonMapper MAPPER = new JsonMapper();

    private final Environment here;
    private final Path file;

    /** What was shown of the plan of the course in {@code folder}. */
    public ShownPlans(Environment here, Path folder) {
        this.here = here;
        file = here.data().resolve("plans").resolve(CourseJson.name(folder) + ".json");
    }

    /** A plan that was shown: the day of that, the recording days, and the day of each lesson, empty text if it had none. */
    private record Shown(String on, List<String> days, Map<String, String> lessons) {
        static Shown of(LocalDate on, PlanDays plan) {
            Map<String, String> lessons = new LinkedHashMap<>();
            plan.lessons()
                    .forEach((name, day) ->
                            lessons.put(name, day.map(LocalDate::toString).orElse("")));
            return new Shown(
                    on.toString(),
                    plan.given().stream().map(LocalDate::toString).toList(),
                    lessons);
        }

        LocalDate day() {
            return LocalDate.parse(on);
        }

        /** The same with what differs between two other plans. */
        Shown with(PlanDays was, PlanDays is) {
            Map<String, Optional<LocalDate>> lessons = new LinkedHashMap<>(plan().lessons());
            is.lessons().forEach((name, day) -> {
                if (!day.equals(was.lessons().get(name))) {
                    lessons.put(name, day);
                }
            });
            List<LocalDate> days = new ArrayList<>(plan().given());
            days.removeIf(day -> was.given().contains(day) && !is.given().contains(day));
            is.given().stream()
                    .filter(day -> !was.given().contains(day) && !days.contains(day))
                    .forEach(days::add);
            return of(day(), new PlanDays(days.stream().sorted().toList(), lessons));
        }

        PlanDays plan() {
            Map<String, Optional<LocalDate>> known = new LinkedHashMap<>();
            lessons.forEach((name, day) ->
                    known.put(name, day.isEmpty() ? Optional.empty() : Optional.of(LocalDate.parse(day))));
            return new PlanDays(days.stream().map(LocalDate::parse).toList(), known);
        }
    }

    /**
     * Two plans.
     *
     * @param before the one that was shown before the last change; what has moved since then is told
     * @param now the one that was shown last
     */
    private record Kept(Shown before, Shown now) {}

    /** What has moved since the plan was last shown otherwise; empty if nothing has, or it never was. Keeps nothing. */
    public Optional<PlanChange> moved(CoursePlan plan) {
        return read().flatMap(kept -> moved(plan, before(kept, plan)));
    }

    /** The same, and keeps what it says now. */
    public Optional<PlanChange> show(CoursePlan plan) {
        Optional<Kept> kept = read();
        Shown now = Shown.of(here.today(), plan.days());
        Shown before = kept.map(known -> before(known, plan)).orElse(now);
        write(new Kept(before, now));
        return kept.flatMap(known -> moved(plan, before));
    }

    /** Keeps what a plan says after a change that is told at once; what had moved by hand before it, and was not shown, still is. */
    public void told(CoursePlan was, CoursePlan plan) {
        Shown shown = read().map(Kept::now)
                .filter(known -> moved(was, known).isPresent())
                .map(known -> known.with(was.days(), plan.days()))
                .orElseGet(() -> Shown.of(here.today(), plan.days()));
        write(new Kept(shown, shown));
    }

    /** The plan against which a change is told: the last one shown, or the one before a change that was told today. */
    private Shown before(Kept kept, CoursePlan plan) {
        boolean again =
                kept.now().day().equals(here.today()) && moved(plan, kept.now()).isEmpty();
        return again ? kept.before() : kept.now();
    }

    private Optional<PlanChange> moved(CoursePlan plan, Shown before) {
        return PlanChange.since(
                before.day(), before.plan(), plan.days(), plan.status().lost(), here.today());
    }

    private Optional<Kept> read() {
        try {
            Kept kept = MAPPER.readValue(Files.readString(file), Kept.class);
            kept.before().plan();
            kept.now().plan();
            return Optional.of(kept);
        } catch (IOException | RuntimeException none) {
            return Optional.empty();
        }
    }

    private void write(Kept kept) {
        try {
            PrivateFiles.createFolderFor(file);
            new AtomicFiles(Access.OWNER).write(file, MAPPER.writeValueAsString(kept));
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a plan must have a JSON form", e);
        } catch (IOException unwritable) {
            // Only what has moved can't be told next time; the plan itself needs no file.
            return;
        }
    }
}
