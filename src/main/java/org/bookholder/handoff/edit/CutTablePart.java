package org.bookholder.handoff.edit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.bookholder.cutlist.Clip;
import org.bookholder.handoff.Csv;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.timeline.Source;
import org.bookholder.handoff.timeline.Timeline;
import org.bookholder.handoff.timeline.TimelineEvent;
import org.bookholder.timing.StreamTime;
import org.bookholder.timing.Timecode;
import org.bookholder.wording.MarkerText;

/** The cut list as a table, with the handles of each clip and its punch-in framing. */
public final class CutTablePart implements HandOffPart {
    private static final List<String> HEADING = List.of(
            "event",
            "lines",
            "take",
            "file",
            "reel",
            "source in",
            "source out",
            "record in",
            "record out",
            "frames",
            "seconds",
            "quiet before",
            "quiet after",
            "frames before",
            "frames after",
            "scale",
            "text",
            "notes");

    @Override
    public String name() {
        return "cut";
    }

    @Override
    public String description() {
        return "the cut list as a table, with handles and the punch-in plan";
    }

    @Override
    public List<HandOffFile> files(HandOff handOff) {
        return List.of(Csv.file(handOff.name() + "-cut.csv", HEADING, () -> rows(handOff)));
    }

    private static List<List<Object>> rows(HandOff handOff) {
        List<List<Object>> rows = new ArrayList<>();
        for (TimelineEvent event : handOff.timeline().events()) {
            rows.add(row(handOff, event, rows.size() + 1));
        }
        return rows;
    }

    private static List<Object> row(HandOff handOff, TimelineEvent event, int number) {
        Timeline timeline = handOff.timeline();
        Timecode timecode = timeline.timecode();
        Optional<Source> source = event.source();
        Optional<Clip> clip = event.item().clip();
        return Arrays.asList(
                number,
                event.item().lines(),
                clip.map(c -> Integer.toString(c.take())).orElse(""),
                source.map(s -> s.media().name()).orElse(""),
                source.map(s -> s.media().reel()).orElse(""),
                source.map(s -> timecode.label(s.in())).orElse(""),
                source.map(s -> timecode.label(s.out())).orElse(""),
                timeline.label(event.in()),
                timeline.label(event.out()),
                event.frames(),
                seconds(timeline.rate().length(event.frames())),
                clip.map(c -> seconds(c.in().since(c.quietFrom()))).orElse(""),
                clip.map(c -> seconds(c.quietTo().since(c.out()))).orElse(""),
                source.map(s -> Long.toString(s.before())).orElse(""),
                source.map(s -> Long.toString(s.after())).orElse(""),
                source.flatMap(s -> s.media().picture())
                        .map(p -> String.format(Locale.ROOT, "%d.%02d", event.framing() / 100, event.framing() % 100))
                        .orElse(""),
                text(handOff, event),
                timeline.markers(event).stream()
                        .map(m -> MarkerText.of(handOff.state(), m.marker()))
                        .collect(Collectors.joining("; ")));
    }

    private static String text(HandOff handOff, TimelineEvent event) {
        return handOff.state().script().lines().stream()
                .filter(line -> line.number() >= event.item().firstLine()
                        && line.number() <= event.item().lastLine())
                .map(line -> line.text())
                .collect(Collectors.joining(" "));
    }

    private static String seconds(StreamTime time) {
        return String.format(Locale.ROOT, "%.3f", time.seconds());
    }
}
