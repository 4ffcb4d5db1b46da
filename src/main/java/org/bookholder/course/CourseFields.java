package org.bookholder.course;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The single values that can be written about a course, in plain words. */
final class CourseFields {
    private static final String MONEY = "in your currency";
    private static final String PERCENT = "%";

    private CourseFields() {}

    /**
     * One of them.
     *
     * @param path its group and name in the file, with a slash between them
     * @param label what it is called on a form
     * @param unit the unit of its number, or an empty text
     * @param kind how it is filled in
     * @param meaning what it is, and what holds if it is left out
     * @param choices what can be chosen, each with its words, the first if it is left out; none unless it is a choice
     */
    record Known(
            String path, String label, String unit, CourseFile.Kind kind, String meaning, Map<String, String> choices) {
        private Known(String path, String label, String unit, CourseFile.Kind kind, String meaning) {
            this(path, label, unit, kind, meaning, Map.of());
        }
    }

    /** All, in the order in which they are shown. */
    static List<Known> all() {
        return Stream.of(recording(), editing(), goingOut(), quotation())
                .flatMap(List::stream)
                .toList();
    }

    private static List<Known> recording() {
        return List.of(
                text("title", "Title of the course", "If empty, the name of its folder."),
                number("pace", "Target pace", "words a minute", "For scripts that set none themselves."),
                new Known("recording/from", "The day begins at", "", CourseFile.Kind.TIME, "If empty, 10:00."),
                number("recording/hours", "Length of the day", "hours", "Setting up and breaks included. If empty, 3."),
                number("recording/set-up", "Setting up", "minutes", "If empty, 30."),
                number(
                        "recording/ratio",
                        "Recording for each finished minute",
                        "minutes",
                        "If empty, what your own sessions show, or 1.5."),
                new Known(
                        "recording/order",
                        "Order of recording",
                        "",
                        CourseFile.Kind.CHOICE,
                        "Lessons of one kind are read one after another on a day, unless the order is kept.",
                        Arrays.stream(ReadingOrder.values())
                                .collect(Collectors.toMap(
                                        ReadingOrder::label,
                                        ReadingOrder::words,
                                        (one, other) -> one,
                                        LinkedHashMap::new))));
    }

    private static List<Known> editing() {
        List<Known> all = new ArrayList<>(List.of(
                date("editing/from", "First day of editing", ""),
                number("editing/hours a week", "Time for editing", "hours a week", ""),
                number("editing/lessons a week", "Lessons edited, at most", "a week", ""),
                number("editing/slack", "Kept for what goes wrong", PERCENT, "Of the time for editing.")));
        for (LessonKind kind : LessonKind.values()) {
            all.add(number(
                    "editing/hours a lesson/" + kind.label(),
                    "Editing a lesson with " + kind.words(),
                    "hours",
                    String.format(
                            Locale.ROOT,
                            "If it is up to ten minutes long; a longer one takes more. If empty, %.0f.",
                            kind.hours())));
        }
        for (LessonKind kind : LessonKind.values()) {
            all.add(number(
                    "editing/hours per minute/" + kind.label(),
                    "The same by its length, with " + kind.words(),
                    "hours for each finished minute",
                    "Only if you know it. If empty, a tenth of the hours above."));
        }
        return all;
    }

    private static List<Known> goingOut() {
        return List.of(
                text(
                        "delivery",
                        "Delivery profile",
                        "A file in the course's folder: what exported films have to be. If empty, your own"
                                + " (Settings)."),
                date("launch", "The day you hope to be ready", ""),
                number("costs/price", "Price of one sale", MONEY, "The other costs need it."),
                text("costs/currency", "Currency", "As in EUR."),
                number("costs/equipment", "Equipment", MONEY, ""),
                number("costs/hour", "An hour of your own work", MONEY, ""),
                number("costs/hired course", "Having it all edited by others", MONEY, "A quote for the whole course."),
                number("costs/hired lesson", "Or each lesson", MONEY, "A quote for one lesson."),
                number("costs/kept", "What you keep of the price", PERCENT, "If empty, all of it."));
    }

    private static List<Known> quotation() {
        return List.of(
                text("quotation/for", "For", "Your client, as they are to stand on the page."),
                text("quotation/from", "From", "You, as you are to stand on the page."),
                number("quotation/hour", "Price of an hour of work", MONEY, "Without it the page shows hours only."),
                text("quotation/currency", "Currency", "As in EUR. If empty, that of the costs."),
                new Known(
                        "quotation/films",
                        "The films are",
                        "",
                        CourseFile.Kind.CHOICE,
                        "Films made by Bookholder are only looked through; lessons that have a draft count like that anyway.",
                        QuotationTerms.FILMS.stream()
                                .collect(Collectors.toMap(
                                        film -> film, film -> film, (one, other) -> one, LinkedHashMap::new))),
                number(
                        "quotation/more hours",
                        "More work",
                        "hours",
                        "Beside what the plan knows: talks, changes, writing."),
                text("quotation/more for", "What that is for", ""),
                number("quotation/expenses", "Expenses", MONEY, "What has to be bought or hired."),
                text("quotation/expenses for", "What they are for", ""));
    }

    /** The one at a path. */
    static Optional<Known> at(String path) {
        return all().stream().filter(known -> known.path().equals(path)).findFirst();
    }

    private static Known text(String path, String label, String meaning) {
        return new Known(path, label, "", CourseFile.Kind.TEXT, meaning);
    }

    private static Known number(String path, String label, String unit, String meaning) {
        return new Known(path, label, unit, CourseFile.Kind.NUMBER, meaning);
    }

    private static Known date(String path, String label, String meaning) {
        return new Known(path, label, "", CourseFile.Kind.DATE, meaning);
    }
}
