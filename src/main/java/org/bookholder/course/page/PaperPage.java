package org.bookholder.course.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Objects;
import java.util.regex.Pattern;

/** A page to print or to send, whole in itself: no scripts, no links, no other files. */
final class PaperPage {
    /** The style of printed pages, which the program's own page has, too. */
    private static final String STYLE = "/org/bookholder/desk/http/page/paper.css";

    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
    private static final Pattern ISO = Pattern.compile("\\b20\\d\\d-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\\d|3[01])\\b");

    private PaperPage() {}

    /** A part of a page. */
    @FunctionalInterface
    interface Content {
        /** Writes it. */
        void write(Markup page);
    }

    /** The whole page. */
    static String of(String title, Content content) {
        Markup page = new Markup();
        page.open("html", "lang", "en").open("head").empty("meta", "charset", "utf-8");
        page.empty("meta", "name", "viewport", "content", "width=device-width");
        page.element("title", title).element("style", style()).close();
        page.open("body", "class", "paper alone").open("main");
        content.write(page);
        page.close().close().close();
        return "<!DOCTYPE html>\n" + page;
    }

    /** Only what is on the page, for use within another one. */
    static String fragment(Content content) {
        Markup page = new Markup();
        content.write(page);
        return page.toString();
    }

    /** A day as people say it. */
    static String day(LocalDate day) {
        return DAY.format(day);
    }

    /** A sentence in which days stand as in a terminal, with days as people say them. */
    static String dated(String text) {
        return ISO.matcher(text).replaceAll(found -> day(LocalDate.parse(found.group())));
    }

    private static String style() {
        try (InputStream file = Objects.requireNonNull(PaperPage.class.getResourceAsStream(STYLE), STYLE)) {
            return new String(file.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
