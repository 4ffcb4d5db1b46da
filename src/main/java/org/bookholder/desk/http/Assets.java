package org.bookholder.desk.http;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.zip.CRC32C;

/** The page's files, all held in memory under their names; no name leads to any other file. */
final class Assets {
    private static final String FONTS = "/com/formdev/flatlaf/fonts/inter/";
    private static final List<String> FILES = List.of(
            "index.html",
            "home.html",
            "home.css",
            "home.js",
            "stream.js",
            "homelink.js",
            "today.js",
            "folder.js",
            "onday.js",
            "daybutton.js",
            "drag.js",
            "wire.js",
            "order.js",
            "day.js",
            "jobs.js",
            "plan.js",
            "planned.js",
            "agenda.js",
            "modules.js",
            "gate.js",
            "lists.css",
            "lists.js",
            "paper.css",
            "paper.js",
            "papers.js",
            "work.js",
            "rail.js",
            "rooms.js",
            "said.js",
            "stretch.js",
            "fields.js",
            "inputs.js",
            "options.js",
            "ask.js",
            "newcourse.js",
            "views.js",
            "before.css",
            "before.js",
            "picture.js",
            "film.css",
            "film.js",
            "filmdraft.js",
            "filmline.js",
            "filmpoint.js",
            "filmwave.js",
            "sound.js",
            "sources.js",
            "storage.js",
            "scripts.css",
            "scripts.js",
            "editor.js",
            "look.js",
            "course.html",
            "course.css",
            "course.js",
            "devices.js",
            "door.js",
            "place.js",
            "dress.js",
            "theme.js",
            "icon.svg",
            "desk.css",
            "print.css",
            "main.js",
            "author.js",
            "daytime.js",
            "messages.js",
            "outbox.js",
            "pickups.js",
            "subject.js",
            "notes.js",
            "link.js",
            "model.js",
            "script.js",
            "seen.js",
            "figures.js",
            "plot.js",
            "review.js",
            "listen.js",
            "summary.js",
            "actions.js",
            "handoff.js",
            "listed.js",
            "keys.js",
            "sheet.js",
            "words.js");

    private final Map<String, Asset> assets = new HashMap<>();

    Assets() {
        for (String file : FILES) {
            assets.put("/" + file, asset(type(file), "page/" + file));
        }
        for (String font : List.of("Inter-Regular.otf", "Inter-SemiBold.otf")) {
            assets.put("/" + font, asset("font/otf", FONTS + font));
        }
        assets.put("/", find("/index.html").orElseThrow());
    }

    /**
     * A file.
     *
     * @param type its media type
     * @param bytes its contents, read-only; duplicate the buffer before reading it
     * @param tag changes when the contents change, as HTTP writes it
     */
    record Asset(String type, ByteBuffer bytes, String tag) {}

    Optional<Asset> find(String path) {
        return Optional.ofNullable(assets.get(path));
    }

    private static Asset asset(String type, String name) {
        ByteBuffer bytes = buffer(name);
        CRC32C sum = new CRC32C();
        sum.update(bytes.duplicate());
        return new Asset(type, bytes, String.format(Locale.ROOT, "\"%x-%x\"", bytes.remaining(), sum.getValue()));
    }

    private static String type(String file) {
        return switch (file.substring(file.lastIndexOf('.') + 1)) {
            case "html" -> "text/html; charset=utf-8";
            case "svg" -> "image/svg+xml";
            case "css" -> "text/css; charset=utf-8";
            default -> "text/javascript; charset=utf-8";
        };
    }

    private static ByteBuffer buffer(String name) {
        try (InputStream in = Assets.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the resource " + name + " must be on the class path");
            }
            return ByteBuffer.wrap(in.readAllBytes()).asReadOnlyBuffer();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
