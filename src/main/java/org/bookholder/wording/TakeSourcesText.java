package org.bookholder.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.bookholder.cutlist.TakeSources;
import org.bookholder.cutlist.TakeSources.Missed;
import org.bookholder.cutlist.TakeSources.Source;
import org.bookholder.footage.Channels;
import org.bookholder.footage.Placement;
import org.bookholder.timing.StreamTime;

/** Says which file gives the picture of a take and which its sound, and why. */
public final class TakeSourcesText {
    /** A difference of less is not worth a word, in dB. */
    private static final double WORTH_SAYING = 2;

    private static final String GONE = " is gone";
    private static final String AWAY = " is not where it was matched any more";

    private TakeSourcesText() {}

    /** The picture, in one sentence without its end. */
    public static String picture(TakeSources sources) {
        if (sources.pictures().isEmpty()) {
            return "no camera's file shows it";
        }
        Source first = sources.pictures().get(0);
        if (!first.there()) {
            return first.name() + AWAY + ": put it back, or match it where it is now";
        }
        String why = first.wanted()
                ? ", as you chose"
                : sources.picture().isPresent()
                        ? instead(sources.picture().get())
                        : sources.pictures().size() > 1
                                ? ", the camera that was matched first"
                                : ", the only one that shows it";
        return first.name() + why;
    }

    /** The sound, likewise. */
    public static String sound(TakeSources sources) {
        return sound(sources, AWAY);
    }

    /** @param away what is said of a file that is gone, behind its name */
    private static String sound(TakeSources sources, String away) {
        if (sources.sounds().isEmpty()) {
            return "nothing can be heard of it";
        }
        Source first = sources.sounds().get(0);
        String heard = first.kind() == 2 ? first.name() : named(first);
        if (first.wanted()) {
            return heard + ", as you chose";
        }
        if (sources.sound().isPresent()) {
            return heard + instead(sources.sound().get());
        }
        return switch (first.kind()) {
            case 0 -> heard + ", " + recorder(sources, first);
            case 1 -> heard + ", " + camera(sources, first);
            default -> heard + ", " + without(sources, away);
        };
    }

    private static String instead(Missed missed) {
        return ", instead of " + missed.wanted() + ", which you chose and which "
                + switch (missed.why()) {
                    case GONE -> "is gone";
                    case UNMATCHED -> "is not matched any more";
                    case NO_CHANNEL -> "has no such channel now";
                    case NOT_THIS_TAKE -> "has nothing of this take";
                };
    }

    /** Why nothing but the take's own recording is heard. */
    private static String without(TakeSources sources, String away) {
        return sources.sounds().stream()
                .filter(other -> other.kind() < 2 && !other.there())
                .findFirst()
                .map(gone -> "as " + gone.name() + away)
                .orElse("as no matched file holds its sound");
    }

    /** What else a person should know about both, one sentence each. */
    public static List<String> remarks(TakeSources sources) {
        return remarks(sources, missed -> true);
    }

    private static List<String> remarks(TakeSources sources, Predicate<Missed> told) {
        List<String> remarks = new ArrayList<>();
        sources.picture()
                .filter(told)
                .ifPresent(missed -> remarks.add(missed("picture", missed, used(sources.pictures()))));
        sources.sound().filter(told).ifPresent(missed -> remarks.add(missed("sound", missed, used(sources.sounds()))));
        sources.faint().ifPresent(faint -> remarks.add(faint(sources.sounds().get(0), faint)));
        part("picture", sources, sources.pictures()).ifPresent(remarks::add);
        part("sound", sources, sources.sounds()).ifPresent(remarks::add);
        return remarks;
    }

    /** All of it, one line each; of files that are gone only what is used instead, as {@link #gone} names them. */
    public static List<String> lines(TakeSources sources) {
        List<String> lines = new ArrayList<>();
        Optional<Source> hidden = sources.pictures().stream().findFirst().filter(first -> !first.there());
        lines.add("picture: "
                + hidden.map(first -> "none, as " + first.name() + GONE).orElseGet(() -> picture(sources)));
        lines.add("sound: " + sound(sources, GONE));
        lines.addAll(remarks(sources, missed -> missed.why() != TakeSources.Why.GONE));
        return lines;
    }

    /** All of a session: files that are gone, then each take with its number. */
    public static List<String> lines(List<TakeSources> takes) {
        List<String> lines = new ArrayList<>(gone(takes).stream().toList());
        takes.forEach(take ->
                lines(take).forEach(line -> lines.add("take " + take.take().number() + ": " + line)));
        return lines;
    }

    /** The files of a session that are gone, each named once, with what to do; empty if all are there. */
    public static Optional<String> gone(List<TakeSources> takes) {
        List<String> names = takes.stream()
                .flatMap(take -> Stream.concat(take.pictures().stream(), take.sounds().stream()))
                .filter(source -> !source.there())
                .map(Source::name)
                .distinct()
                .toList();
        if (names.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(
                names.size() == 1
                        ? names.get(0) + AWAY + ": put it back, or match it where it is now"
                        : String.join(", ", names)
                                + " are not where they were matched any more: put them back, or match them where they are"
                                + " now");
    }

    private static String faint(Source first, TakeSources.Faint faint) {
        String other = faint.louder()
                .map(louder -> (louder.name().equals(first.name()) ? "its " : louder.name() + ", ")
                        + faint.channels().words())
                .orElse("");
        String heard = named(first);
        if (faint.louder().isEmpty()) {
            return heard + " is silent here, and so is everything else: match a file with the voice";
        }
        if (faint.by() == 0) {
            return heard + " is silent here: choose " + faint.louder().get().name() + ", unless this is meant";
        }
        return faint.silent()
                ? heard + " is silent here, and " + other + " is not: choose that, unless this is meant"
                : String.format(
                        Locale.ROOT,
                        "%s is %.0f dB softer than %s: choose that, unless this is meant",
                        heard,
                        faint.by(),
                        other);
    }

    /** A file with its channels, where it has several. */
    public static String named(Source source) {
        return TakeSources.channels(source) < 2
                ? source.name()
                : source.name()
                        + source.channels()
                                .map(Channels::words)
                                .map(w -> ", " + w)
                                .orElse("");
    }

    private static String recorder(TakeSources sources, Source first) {
        Optional<Source> camera =
                sources.sounds().stream().filter(other -> other.kind() == 1).findFirst();
        Optional<Double> more = camera.flatMap(other -> than(sources, first, other));
        if (more.filter(difference -> difference >= WORTH_SAYING).isPresent()) {
            return String.format(Locale.ROOT, "because the camera's own is %.0f dB noisier", more.get());
        }
        boolean others =
                sources.sounds().stream().anyMatch(other -> other.kind() == 0 && other.there() && !other.equals(first));
        if (camera.isPresent()) {
            return "as a recorder goes before the camera's own";
        }
        return others ? "the first of the recorders' files" : "the only recorder's file with it";
    }

    private static String camera(TakeSources sources, Source first) {
        Optional<Source> passed = sources.sounds().stream()
                .filter(other -> other.there() && other.kind() < 2 && !other.equals(first))
                .filter(other -> than(sources, first, other)
                        .filter(more -> more >= WORTH_SAYING)
                        .isPresent())
                .findFirst();
        boolean recorder = sources.sounds().stream().anyMatch(other -> other.kind() == 0 && other.there());
        return recorder && passed.isPresent()
                ? String.format(
                        Locale.ROOT,
                        "because %s is %.0f dB noisier",
                        passed.get().name(),
                        than(sources, first, passed.get()).orElse(0.0))
                : "the camera's own sound, as no recorder covers it";
    }

    /** How much clearer one is than the other, in dB; empty if that was not measured. */
    private static Optional<Double> than(TakeSources sources, Source one, Source other) {
        int take = sources.take().number();
        return one.clear(take).flatMap(own -> other.clear(take).map(its -> own - its));
    }

    /** The same of a choice that can't be followed, with the take that it is about. */
    public static String remark(TakeSources sources, Missed missed) {
        boolean picture = sources.picture().filter(missed::equals).isPresent();
        return "take " + sources.take().number() + ": "
                + missed(picture ? "picture" : "sound", missed, used(picture ? sources.pictures() : sources.sounds()));
    }

    private static String used(List<Source> sources) {
        return sources.stream()
                .findFirst()
                .filter(Source::there)
                .map(TakeSourcesText::named)
                .orElse("nothing");
    }

    private static String missed(String what, Missed missed, String used) {
        String meanwhile = "; meanwhile " + used + " is used";
        return switch (missed.why()) {
            case GONE ->
                "the " + what + " you chose, " + missed.wanted()
                        + ", is not where it was matched: put it back, or match it where it is now" + meanwhile;
            case UNMATCHED ->
                "the " + what + " you chose, " + missed.wanted() + ", is not among the matched files: match it again"
                        + meanwhile;
            case NO_CHANNEL ->
                "the " + what + " you chose, " + missed.wanted() + ", has no such channel now: choose another"
                        + meanwhile;
            case NOT_THIS_TAKE ->
                "the " + what + " you chose, " + missed.wanted() + ", has nothing of this take" + meanwhile;
        };
    }

    /** That the first file has the take only in part, and what is used for the rest. */
    private static Optional<String> part(String what, TakeSources sources, List<Source> list) {
        if (list.isEmpty() || !list.get(0).there() || sources.whole(list.get(0))) {
            return Optional.empty();
        }
        Placement place = list.get(0)
                .footage()
                .flatMap(f -> f.placement(sources.take().number()))
                .orElseThrow();
        StreamTime start = sources.take().start();
        String rest = list.size() > 1
                ? "the rest is from " + list.get(1).name()
                : what.equals("picture") ? "nothing shows the rest" : "nothing is heard of the rest";
        return Optional.of(String.format(
                Locale.ROOT,
                "%s has only %.1f to %.1f s of its %.1f s: %s",
                list.get(0).name(),
                place.from().since(start).seconds(),
                StreamTime.min(place.to(), sources.take().end()).since(start).seconds(),
                sources.take().end().since(start).seconds(),
                rest));
    }
}
