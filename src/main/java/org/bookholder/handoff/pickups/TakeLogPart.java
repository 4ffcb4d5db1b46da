package org.bookholder.handoff.pickups;

import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.cutlist.Clip;
import org.bookholder.follow.model.Aside;
import org.bookholder.follow.model.Attempt;
import org.bookholder.follow.model.Deviation;
import org.bookholder.handoff.Csv;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.timeline.MediaLocator;
import org.bookholder.session.LineNotes;
import org.bookholder.session.SessionState;
import org.bookholder.session.Take;
import org.bookholder.timing.StreamTime;
import org.bookholder.wording.Labels;
import org.bookholder.wording.Pickup;
import org.bookholder.wording.Pickups;

/** Every take, attempt and aside in order of time, with its place and outcome. */
public final class TakeLogPart implements HandOffPart {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss.SSS", Locale.ROOT);
    private static final List<String> HEADING = List.of(
            "kind",
            "take",
            "line",
            "attempt",
            "time of day",
            "in take",
            "seconds",
            "file",
            "timecode in",
            "timecode out",
            "outcome",
            "used",
            "notes");

    @Override
    public String name() {
        return "log";
    }

    @Override
    public String description() {
        return "every take and attempt with time of day, timecode and outcome, as a table";
    }

    @Override
    public List<HandOffFile> files(HandOff handOff) {
        return List.of(Csv.file(handOff.name() + "-log.csv", HEADING, () -> new Rows(handOff).inOrder()));
    }

    private static final class Rows {
        private final HandOff handOff;
        private final SessionState state;
        private final MediaLocator places;
        private final List<Attempt> used;

        Rows(HandOff handOff) {
            this.handOff = handOff;
            state = handOff.state();
            places = new MediaLocator(handOff.timeline().timecode(), handOff.media());
            used = handOff.cut().clips().stream()
                    .map(Clip::attempts)
                    .flatMap(List::stream)
                    .toList();
        }

        List<List<String>> inOrder() {
            List<List<String>> rows = new ArrayList<>();
            for (Take take : state.takes().all()) {
                rows.add(row("take", take, "", "", take.start(), take.end(), "", "", take.audio()));
                entries(take).forEach(entry -> rows.add(entry.cells()));
            }
            return rows;
        }

        private record Entry(StreamTime start, List<String> cells) {}

        private List<Entry> entries(Take take) {
            List<Entry> entries = new ArrayList<>();
            for (LineNotes line : state.lines().all()) {
                line.attempts().stream()
                        .filter(a -> a.take() == take.number())
                        .forEach(a -> entries.add(new Entry(a.start(), attempt(take, a, line))));
            }
            state.lines().asides().stream()
                    .filter(a -> a.take() == take.number())
                    .forEach(a -> entries.add(new Entry(a.start(), aside(take, a))));
            state.measures().sound().notSaved().stream()
                    .filter(lost -> lost.take() == take.number())
                    .forEach(lost -> entries.add(new Entry(
                            lost.start(),
                            row("sound not saved", take, "", "", lost.start(), lost.end(), "", "no", ""))));
            entries.sort(Comparator.comparing(Entry::start));
            return entries;
        }

        private List<String> attempt(Take take, Attempt attempt, LineNotes line) {
            List<String> notes = new ArrayList<>();
            attempt.deviations().stream().map(TakeLogPart::deviation).forEach(notes::add);
            if (line.telling().filter(attempt::equals).isPresent()) {
                Pickup told = Pickups.of(state, line);
                told.decision().map(Labels::of).ifPresent(notes::add);
                notes.addAll(told.written());
            }
            return row(
                    "attempt",
                    take,
                    Integer.toString(attempt.line()),
                    Integer.toString(attempt.ordinal()),
                    attempt.start(),
                    attempt.end(),
                    Labels.of(attempt.outcome()),
                    used.contains(attempt) ? "yes" : "no",
                    String.join("; ", notes));
        }

        private List<String> aside(Take take, Aside aside) {
            return row("aside", take, "", "", aside.start(), aside.end(), "", "no", aside.said());
        }

        private List<String> row(
                String kind,
                Take take,
                String line,
                String attempt,
                StreamTime start,
                StreamTime end,
                String outcome,
                String used,
                String notes) {
            StreamTime inTake = start.since(take.start());
            LocalDateTime when = LocalDateTime.ofInstant(take.when().plus(inTake.toDuration()), handOff.zone());
            Optional<MediaLocator.Place> from = places.of(take.number(), start);
            Optional<MediaLocator.Place> to = places.of(take.number(), end);
            return List.of(
                    kind,
                    Integer.toString(take.number()),
                    line,
                    attempt,
                    TIME.format(when),
                    seconds(inTake),
                    seconds(end.since(start)),
                    from.map(p -> p.media().name()).orElse(""),
                    from.map(MediaLocator.Place::timecode).orElse(""),
                    to.map(MediaLocator.Place::timecode).orElse(""),
                    outcome,
                    used,
                    notes);
        }

        private static String seconds(StreamTime time) {
            return String.format(Locale.ROOT, "%.3f", time.seconds());
        }
    }

    private static String deviation(Deviation deviation) {
        return List.of(Labels.of(deviation.kind()) + ":", deviation.written(), deviation.said()).stream()
                .filter(s -> !s.isEmpty())
                .collect(Collectors.joining(" "));
    }
}
