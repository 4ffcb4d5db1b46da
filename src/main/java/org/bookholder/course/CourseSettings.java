package org.bookholder.course;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.model.PaceSource;
import org.bookholder.script.model.Script;
import org.bookholder.script.model.ScriptSettings;
import org.bookholder.script.model.SpokenHabits;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.settings.Setting;
import org.bookholder.settings.Settings;

/** The contents of {@code course.yaml}; empty if there is no such file. */
final class CourseSettings {
    private static final List<String> NAMES = List.of(
            "title",
            "pace",
            "lessons",
            "modules",
            "recording",
            "editing",
            "kinds",
            "say",
            "delivery",
            "launch",
            "costs",
            "quotation");
    private static final int MOST_HOURS = 24;
    private static final int HOURS_OF_A_WEEK = 168;
    private static final double MOST_HOURS_OF_WORK = 10_000;
    private static final double MOST_MONEY = 999_999_999;

    private final Path folder;
    private final Settings all;

    private CourseSettings(Path folder, Settings all) {
        this.folder = folder;
        this.all = all;
    }

    static CourseSettings read(Path folder) throws ProblemException {
        Path file = folder.resolve(Course.FILE);
        Path other = folder.resolve("course.yml");
        if (Files.notExists(file) && Files.exists(other)) {
            throw new ProblemException(
                    "the course's file has another name", other.toString(), "rename it to " + Course.FILE);
        }
        String text = Files.exists(file) ? ScriptReader.text(file) : "";
        return of(folder, text);
    }

    private static CourseSettings of(Path folder, String text) throws ProblemException {
        String where = folder.resolve(Course.FILE).toString();
        return new CourseSettings(
                folder, Settings.parse(text, where, 0, Course.FILE).only(NAMES));
    }

    /**
     * Sees whether a text can be read as the settings of a course.
     *
     * @throws ProblemException if it can't
     */
    static void check(Path folder, String text) throws ProblemException {
        CourseSettings settings = of(folder, text);
        List<Settings.Item> lessons = settings.lessons();
        List<Object> all = List.of(
                settings.title(),
                settings.pace(),
                settings.delivery(),
                settings.launch(),
                settings.shooting(),
                settings.editing(),
                settings.kinds(),
                settings.sayings(),
                settings.modules(),
                settings.quotation(),
                settings.costs(lessons.size()));
        if (all.isEmpty()) {
            throw new IllegalStateException("every course has settings");
        }
    }

    Optional<String> title() throws ProblemException {
        return all.value("title").map(Setting::text);
    }

    List<Settings.Item> lessons() throws ProblemException {
        return all.list("lessons");
    }

    /**
     * A module as the file lists it.
     *
     * @param title its title
     * @param lessons its lessons in order; may be none
     */
    record ListedModule(String title, List<Settings.Item> lessons) {}

    /** The modules in order; none if the file lists none. */
    List<ListedModule> modules() throws ProblemException {
        List<ListedModule> modules = new ArrayList<>();
        for (Settings.Item item : all.list("modules")) {
            if (item.group().isEmpty()) {
                throw item.value()
                        .orElseThrow()
                        .problem("a module is a title with lessons", "write title: and below it lessons: with a list");
            }
            Settings one = item.group().get().only(List.of("title", "lessons"));
            Optional<Setting> title = one.value("title");
            if (title.isEmpty()) {
                throw one.problem("a module has no title", "write title: and what the module is called");
            }
            modules.add(new ListedModule(title.get().text(), one.list("lessons")));
        }
        return modules;
    }

    /** Whether the file lists the lessons; otherwise they are those that lie in the folder. */
    boolean listsLessons() throws ProblemException {
        return !lessons().isEmpty() || !modules().isEmpty();
    }

    /** How much there is to edit in lessons, by the names of their scripts; for lessons that are found in the folder. */
    Map<String, LessonKind> kinds() throws ProblemException {
        Settings given = all.group("kinds");
        Map<String, LessonKind> kinds = new HashMap<>();
        for (String script : given.names()) {
            Optional<Setting> kind = given.value(script);
            if (kind.isPresent()) {
                kinds.put(script, LessonKind.of(kind.get().oneOf(LessonKind.labels())));
            }
        }
        return kinds;
    }

    /** How things are said, by what is written, in lower case. */
    Map<String, String> sayings() throws ProblemException {
        Settings given = all.group("say");
        Map<String, String> sayings = new LinkedHashMap<>();
        for (String written : given.names()) {
            Optional<Setting> form = given.value(written);
            if (form.isPresent()) {
                String words = SpokenHabits.form(form.get().text())
                        .orElseThrow(() -> form.get()
                                .problem(
                                        "'" + written + "' has no form that can be said",
                                        "write it in words, as in \"350\": three fifty"));
                sayings.put(written.strip().toLowerCase(Locale.ROOT), words);
            }
        }
        return sayings;
    }

    /** The script with the course's target pace, unless it sets its own. */
    Script paced(Script script) throws ProblemException {
        OptionalInt pace = pace();
        return pace.isEmpty() ? script : script.with(script.settings().aimed(pace.getAsInt(), PaceSource.COURSE));
    }

    /** The target pace of scripts that set none. */
    OptionalInt pace() throws ProblemException {
        Optional<Setting> pace = all.value("pace");
        return pace.isEmpty()
                ? OptionalInt.empty()
                : OptionalInt.of(
                        pace.get().whole(ScriptSettings.MIN_PACE, ScriptSettings.MAX_PACE, "words per minute"));
    }

    Optional<Path> delivery() throws ProblemException {
        Optional<Setting> given = all.value("delivery");
        return given.isEmpty() ? Optional.empty() : Optional.of(CourseReader.resolve(folder, given.get()));
    }

    Optional<LocalDate> launch() throws ProblemException {
        return day(all, "launch");
    }

    Shooting shooting() throws ProblemException {
        Settings given = all.group("recording").only(List.of("days", "from", "hours", "set-up", "ratio", "order"));
        Optional<Setting> setUp = given.value("set-up");
        Optional<Setting> ratio = given.value("ratio");
        Optional<Setting> order = given.value("order");
        return new Shooting(
                days(given),
                setUp.isPresent() ? Duration.ofMinutes(setUp.get().whole(0, 600, "minutes")) : Shooting.USUAL_SET_UP,
                ratio.isPresent()
                        ? Optional.of(ratio.get().number(1, 20, "recorded minutes for each finished one"))
                        : Optional.empty(),
                order.isPresent() ? ReadingOrder.of(order.get().oneOf(ReadingOrder.labels())) : ReadingOrder.FREE);
    }

    private List<Shooting.Day> days(Settings given) throws ProblemException {
        LocalTime from = from(given, Shooting.USUAL_START);
        Duration length = hours(given, Shooting.USUAL_LENGTH);
        List<Shooting.Day> days = new ArrayList<>();
        for (Settings.Item item : given.list("days")) {
            Setting date;
            Shooting.Day day;
            if (item.group().isPresent()) {
                Settings one = item.group().get().only(List.of("day", "from", "hours", "lessons"));
                Optional<Setting> written = one.value("day");
                if (written.isEmpty()) {
                    throw one.problem("a recording day has no date", "write day: and the date, as in day: 2027-03-09");
                }
                date = written.get();
                day = new Shooting.Day(date.day(), from(one, from), hours(one, length), lessons(one));
            } else {
                date = item.value().orElseThrow();
                day = new Shooting.Day(date.day(), from, length);
            }
            if (!days.isEmpty() && !days.get(days.size() - 1).date().isBefore(day.date())) {
                throw date.problem(
                        "recording day " + day.date() + " does not come after the one before it",
                        "list each day once, in order");
            }
            days.add(day);
        }
        return days;
    }

    /** The lessons that somebody has put on a day, as they are written. */
    private static List<String> lessons(Settings day) throws ProblemException {
        List<String> names = new ArrayList<>();
        for (Settings.Item item : day.list("lessons")) {
            Optional<Setting> script = item.value();
            if (script.isEmpty()) {
                throw day.problem("a lesson of a recording day is no name", "write the name of its script");
            }
            names.add(script.get().text());
        }
        return names;
    }

    private static LocalTime from(Settings given, LocalTime otherwise) throws ProblemException {
        Optional<Setting> from = given.value("from");
        return from.isPresent() ? from.get().time() : otherwise;
    }

    private static Duration hours(Settings given, Duration otherwise) throws ProblemException {
        Optional<Setting> hours = given.value("hours");
        return hours.isPresent() ? minutes(hours.get().number(0.5, MOST_HOURS, "hours")) : otherwise;
    }

    private static Duration minutes(double hours) {
        return Duration.ofMinutes(Math.round(hours * 60));
    }

    Editing editing() throws ProblemException {
        Settings given = all.group("editing")
                .only(List.of("from", "hours a week", "lessons a week", "slack", "hours a lesson", "hours per minute"));
        Optional<Setting> hours = given.value("hours a week");
        Optional<Setting> lessons = given.value("lessons a week");
        Optional<Setting> slack = given.value("slack");
        return new Editing(
                day(given, "from"),
                hours.isPresent() ? hours.get().number(0.5, HOURS_OF_A_WEEK, "hours") : Editing.USUAL_HOURS,
                lessons.isPresent() ? lessons.get().whole(1, 99, "lessons") : Editing.USUAL_LESSONS,
                slack.isPresent() ? slack.get().whole(0, 90, "percent") / 100.0 : Editing.USUAL_SLACK,
                rates(
                        given.group("hours a lesson").only(LessonKind.labels()),
                        given.group("hours per minute").only(LessonKind.labels())));
    }

    /** Hours for each minute alone count from the first minute on; hours a lesson count up to ten minutes, as the published ones do. */
    private static Map<LessonKind, EditingRate> rates(Settings aLesson, Settings perMinute) throws ProblemException {
        Map<LessonKind, EditingRate> rates = new EnumMap<>(LessonKind.class);
        for (LessonKind kind : LessonKind.values()) {
            Optional<Setting> least = aLesson.value(kind.label());
            Optional<Setting> each = perMinute.value(kind.label());
            double hours = least.isPresent()
                    ? least.get().number(0.05, 200, "editing hours for a lesson of up to ten minutes")
                    : each.isPresent() ? 0 : kind.hours();
            rates.put(
                    kind,
                    new EditingRate(
                            hours,
                            each.isPresent()
                                    ? each.get().number(0.01, 20, "editing hours for each finished minute")
                                    : hours / LessonKind.SHORT_MINUTES));
        }
        return rates;
    }

    /** Costs, if any are written down; a quote for each lesson becomes one for all. */
    Optional<Costs> costs(int lessons) throws ProblemException {
        if (!all.has("costs")) {
            return Optional.empty();
        }
        Settings given = all.group("costs")
                .only(List.of("currency", "equipment", "hour", "hired course", "hired lesson", "price", "kept"));
        if (given.has("hired course") && given.has("hired lesson")) {
            throw given.problem("there is a quote for the course and one for each lesson", "leave one of them");
        }
        Optional<Setting> price = given.value("price");
        if (price.isEmpty()) {
            throw given.problem("the costs have no price", "write price: and what one sale costs the buyer");
        }
        Optional<Setting> kept = given.value("kept");
        Optional<Setting> currency = given.value("currency");
        double hired =
                given.has("hired lesson") ? money(given, "hired lesson") * lessons : money(given, "hired course");
        return Optional.of(new Costs(
                currency.isPresent() ? currency.get().text() : "",
                money(given, "equipment"),
                money(given, "hour"),
                hired,
                price.get().number(0.01, MOST_MONEY, "for one sale"),
                kept.isPresent() ? kept.get().whole(1, 100, "percent of the price") / 100.0 : 1));
    }

    /** What is written down for a quotation; its currency is that of the costs unless it has one. */
    QuotationTerms quotation() throws ProblemException {
        Settings given = all.group("quotation")
                .only(List.of(
                        "for",
                        "from",
                        "currency",
                        "hour",
                        "more hours",
                        "more for",
                        "expenses",
                        "expenses for",
                        "films"));
        Optional<Setting> rate = given.value("hour");
        Optional<Setting> more = given.value("more hours");
        Optional<Setting> films = given.value("films");
        String currency = text(given, "currency");
        return new QuotationTerms(
                text(given, "for"),
                text(given, "from"),
                currency.isEmpty() ? text(all.group("costs"), "currency") : currency,
                rate.isPresent()
                        ? OptionalDouble.of(rate.get().number(0.01, MOST_MONEY, "for an hour"))
                        : OptionalDouble.empty(),
                more.isPresent() ? more.get().number(0, MOST_HOURS_OF_WORK, "hours") : 0,
                text(given, "more for"),
                money(given, "expenses"),
                text(given, "expenses for"),
                films.isPresent() && films.get().oneOf(QuotationTerms.FILMS).equals(QuotationTerms.MADE));
    }

    private static String text(Settings given, String name) throws ProblemException {
        return given.value(name).map(Setting::text).orElse("");
    }

    private static double money(Settings given, String name) throws ProblemException {
        Optional<Setting> value = given.value(name);
        return value.isPresent() ? value.get().number(0, MOST_MONEY, "in your currency") : 0;
    }

    private static Optional<LocalDate> day(Settings given, String name) throws ProblemException {
        Optional<Setting> value = given.value(name);
        return value.isPresent() ? Optional.of(value.get().day()) : Optional.empty();
    }
}
