package org.bookholder.handoff.pickups;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.bookholder.handoff.Csv;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.pdf.PickupPdf;
import org.bookholder.wording.Labels;
import org.bookholder.wording.Pickup;

/** The lines to record again, as a table, as a page to print, and as JSON with its schema. */
public final class PickupPart implements HandOffPart {
    /** The schema's name, which the JSON refers to. */
    static final String SCHEMA = "pickups.schema.json";

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss", Locale.ROOT);
    private static final List<String> HEADING = List.of(
            "line",
            "outcome",
            "text",
            "said",
            "attempts",
            "take",
            "in take",
            "time of day",
            "file",
            "timecode",
            "notes");

    @Override
    public String name() {
        return "pickups";
    }

    @Override
    public String description() {
        return "the lines to record again: a table, a page to print, JSON and its schema";
    }

    @Override
    public List<HandOffFile> files(HandOff handOff) {
        List<PickupRow> rows = PickupRow.of(handOff);
        return List.of(
                Csv.file(
                        handOff.name() + "-pickups.csv",
                        HEADING,
                        () -> rows.stream().map(PickupPart::cells).toList()),
                new HandOffFile(
                        handOff.name() + "-pickups.pdf",
                        out -> PickupPdf.write(
                                handOff.state().script().title(),
                                rows.stream().map(PickupPart::entry).toList(),
                                out)),
                HandOffFile.text(handOff.name() + "-pickups.json", out -> writeJson(handOff, rows, out)),
                new HandOffFile(SCHEMA, out -> {
                    try (InputStream schema = schema()) {
                        schema.transferTo(out);
                    }
                }));
    }

    /** The published form of the JSON. */
    static InputStream schema() {
        InputStream schema = PickupPart.class.getResourceAsStream(SCHEMA);
        if (schema == null) {
            throw new IllegalStateException("the resource " + SCHEMA + " must be on the class path");
        }
        return schema;
    }

    private static List<String> cells(PickupRow row) {
        Pickup pickup = row.pickup();
        return List.of(
                Integer.toString(pickup.line()),
                Labels.of(pickup.outcome()),
                row.text(),
                pickup.said(),
                Integer.toString(pickup.attempts()),
                pickup.where().map(w -> Integer.toString(w.take())).orElse(""),
                pickup.where().map(w -> seconds(w).toPlainString()).orElse(""),
                row.time().map(TIME::format).orElse(""),
                row.place().map(p -> p.media().name()).orElse(""),
                row.place().map(p -> p.timecode()).orElse(""),
                row.marks());
    }

    private static PickupPdf.Entry entry(PickupRow row) {
        Pickup pickup = row.pickup();
        return new PickupPdf.Entry(
                Integer.toString(pickup.line()),
                row.text(),
                Labels.of(pickup.outcome()) + (pickup.said().isEmpty() ? "" : ": " + pickup.said()),
                where(row),
                row.marks());
    }

    private static String where(PickupRow row) {
        String take = row.pickup().where().map(w -> "take " + w.take()).orElse("not tried");
        String time = row.time()
                .map(t -> ", "
                        + DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT).format(t))
                .orElse("");
        String file = row.place()
                .map(p -> ", " + p.media().name() + " at " + p.timecode())
                .orElse("");
        return take + time + file;
    }

    private static BigDecimal seconds(Pickup.Place place) {
        return BigDecimal.valueOf(place.inTake().seconds()).setScale(3, RoundingMode.HALF_UP);
    }

    private static void writeJson(HandOff handOff, List<PickupRow> rows, Appendable out) throws IOException {
        ObjectNode root = JsonNodeFactory.instance.objectNode();
        root.put("$schema", SCHEMA);
        root.put("title", handOff.state().script().title());
        root.put("script", handOff.state().script().source());
        root.put("frame_rate", handOff.timeline().rate().label());
        root.put("drop_frame", handOff.timeline().timecode().drop());
        ArrayNode pickups = root.putArray("pickups");
        rows.forEach(row -> pickups.add(json(row)));
        ArrayNode fixes = root.putArray("fixes");
        PickupRow.fixes(handOff).forEach(row -> fixes.add(json(row)));
        out.append(new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(root))
                .append('\n');
    }

    private static ObjectNode json(PickupRow row) {
        Pickup pickup = row.pickup();
        ObjectNode node = JsonNodeFactory.instance.objectNode();
        node.put("line", pickup.line());
        node.put("text", row.text());
        node.put("outcome", Labels.of(pickup.outcome()));
        node.put("said", pickup.said());
        node.put("attempts", pickup.attempts());
        pickup.where().ifPresent(where -> {
            ObjectNode place = node.putObject("where");
            place.put("take", where.take());
            place.put("seconds", seconds(where));
            row.time().map(LocalDateTime::toString).ifPresent(time -> place.put("time_of_day", time));
            row.place().ifPresent(p -> place.put("file", p.media().name()).put("timecode", p.timecode()));
        });
        pickup.decision().ifPresent(choice -> node.put("decision", Labels.of(choice)));
        ArrayNode notes = node.putArray("notes");
        pickup.written().forEach(notes::add);
        return node;
    }
}
