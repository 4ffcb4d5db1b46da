package org.bookholder.journal.event;

import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.exc.InvalidTypeIdException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.jsontype.NamedType;
import java.util.Map;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.source.RecordedLines;
import org.bookholder.session.FilmChange;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionEvent;

/**
 * Session events as JSON text and back: one object, its kind in {@code type}, times in ticks, instants as ISO 8601.
 *
 * <p>The text outlives the program that wrote it. So kinds are named here and not after their classes, unknown fields
 * are ignored, and an unknown kind or value is reported as a problem. May be used by several threads.
 */
public final class EventCodec {
    /** What each kind is called on disk. Never change one; the classes may be renamed. */
    static final Map<Class<? extends SessionEvent>, String> KINDS = Map.ofEntries(
            Map.entry(SessionEvent.Opened.class, "opened"),
            Map.entry(SessionEvent.DayCarried.class, "day-carried"),
            Map.entry(SessionEvent.PaceAimed.class, "pace-aimed"),
            Map.entry(SessionEvent.TextChanged.class, "text-changed"),
            Map.entry(SessionEvent.TakeStarted.class, "take-started"),
            Map.entry(SessionEvent.TakeEnded.class, "take-ended"),
            Map.entry(SessionEvent.PositionMoved.class, "position-moved"),
            Map.entry(SessionEvent.FollowChanged.class, "follow-changed"),
            Map.entry(SessionEvent.AttemptSettled.class, "attempt-settled"),
            Map.entry(SessionEvent.TakeSettled.class, "take-settled"),
            Map.entry(SessionEvent.AsidesHeard.class, "asides-heard"),
            Map.entry(SessionEvent.NotJudged.class, "not-judged"),
            Map.entry(SessionEvent.Understood.class, "understood"),
            Map.entry(SessionEvent.PickupMarked.class, "pickup-marked"),
            Map.entry(SessionEvent.SoundMeasured.class, "sound-measured"),
            Map.entry(SessionEvent.SamplesLost.class, "samples-lost"),
            Map.entry(SessionEvent.SourceLost.class, "source-lost"),
            Map.entry(SessionEvent.SourceFound.class, "source-found"),
            Map.entry(SessionEvent.SourceMoved.class, "source-moved"),
            Map.entry(SessionEvent.RecordingFailed.class, "recording-failed"),
            Map.entry(SessionEvent.RecordingResumed.class, "recording-resumed"),
            Map.entry(SessionEvent.SoundNotSaved.class, "sound-not-saved"),
            Map.entry(SessionEvent.Held.class, "held"),
            Map.entry(SessionEvent.Resumed.class, "resumed"),
            Map.entry(SessionEvent.CountInStepped.class, "count-in-stepped"),
            Map.entry(SessionEvent.RoundMoved.class, "round-moved"),
            Map.entry(SessionEvent.Remarked.class, "remarked"));

    /** The same for remarks, which people add. */
    static final Map<Class<? extends Remark>, String> REMARKS = Map.ofEntries(
            Map.entry(Remark.Noted.class, "noted"),
            Map.entry(Remark.Told.class, "told"),
            Map.entry(Remark.BreakBegan.class, "break-began"),
            Map.entry(Remark.BreakOver.class, "break-over"),
            Map.entry(Remark.Decided.class, "decided"),
            Map.entry(Remark.Bounded.class, "bounded"),
            Map.entry(Remark.Filmed.class, "filmed"),
            Map.entry(Remark.Undone.class, "undone"),
            Map.entry(Remark.Carried.class, "carried"),
            Map.entry(Remark.Signed.class, "signed"),
            Map.entry(Remark.Edited.class, "edited"),
            Map.entry(Remark.Retracted.class, "retracted"),
            Map.entry(Remark.Shown.class, "shown"));

    /** The same for what is decided about a line in the film. */
    static final Map<Class<? extends FilmChange>, String> FILM_CHANGES = Map.of(
            FilmChange.Framed.class, "framed",
            FilmChange.Paused.class, "paused",
            FilmChange.CutAt.class, "cut-at",
            FilmChange.SeenBy.class, "seen-by",
            FilmChange.KeptPoint.class, "kept-point",
            FilmChange.HeardFrom.class, "heard-from",
            FilmChange.OfTake.class, "of-take");

    private static final JsonMapper MAPPER = mapper();
    private static final ObjectWriter WRITER = MAPPER.writerFor(SessionEvent.class);
    private static final ObjectReader READER = MAPPER.readerFor(SessionEvent.class);

    private EventCodec() {}

    /** The event as one line of JSON. */
    public static String encode(SessionEvent event) {
        try {
            return WRITER.writeValueAsString(event);
        } catch (JsonProcessingException e) {
            throw new IllegalArgumentException("event (" + event + ") must be of a kind listed here", e);
        }
    }

    /**
     * The event that {@code text} stands for.
     *
     * @param text what {@link #encode} wrote, in this version or another
     * @param where the file it comes from, for the message
     * @throws ProblemException if it is damaged, or of a kind or with a value that this version does not know
     */
    public static SessionEvent decode(String text, String where) throws ProblemException {
        try {
            SessionEvent event = READER.readValue(text);
            if (event == null) {
                throw new ProblemException("holds no event", where, "fetch the session from a backup");
            }
            return event;
        } catch (InvalidTypeIdException e) {
            throw new ProblemException(
                    "holds an event of the unknown kind '" + e.getTypeId() + "'",
                    where,
                    "open it with the version of Bookholder that wrote it, or a newer one",
                    e);
        } catch (JsonProcessingException e) {
            throw new ProblemException(
                    "holds an event that cannot be understood (" + e.getOriginalMessage() + ")",
                    where,
                    "open it with the version of Bookholder that wrote it, or fetch the session from a backup",
                    e);
        }
    }

    private static JsonMapper mapper() {
        JsonMapper.Builder builder = JsonMapper.builder()
                .addModule(new TimeModule())
                .addModule(new TakeEndModule())
                .addModule(new WordTimeModule())
                .addModule(new RecordedLinesModule())
                .addModule(new SignedModule())
                .withConfigOverride(RecordedLines.class, lines -> lines.setInclude(RecordedLinesModule.IF_KNOWN))
                .addMixIn(SessionEvent.class, Kind.class)
                .addMixIn(Remark.class, Kind.class)
                .addMixIn(FilmChange.class, Kind.class)
                .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
                .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
                .enable(DeserializationFeature.FAIL_ON_NULL_CREATOR_PROPERTIES)
                .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
                // Text of which the length is damaged must not pass for an event, and take the next one with it.
                .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);
        KINDS.forEach((type, name) -> builder.registerSubtypes(new NamedType(type, name)));
        FILM_CHANGES.forEach((type, name) -> builder.registerSubtypes(new NamedType(type, name)));
        REMARKS.forEach((type, name) -> builder.registerSubtypes(new NamedType(type, name)));
        return builder.build();
    }

    /** Makes the JSON library write the kind into the object, so that events need not know the file format. */
    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "type")
    private interface Kind {}
}
