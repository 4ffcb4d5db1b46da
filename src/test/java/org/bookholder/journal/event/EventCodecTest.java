package org.bookholder.journal.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.time.Instant;
import java.util.List;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.problem.ProblemException;
import org.bookholder.script.source.RecordedLines;
import org.bookholder.session.FilmChange;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.TakeEnd;
import org.bookholder.timing.StreamTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

final class EventCodecTest {
    @Test
    void everyKindOfEventHasANameOfItsOwn() {
        assertThat(EventCodec.KINDS.keySet())
                .containsExactlyInAnyOrder(asEvents(SessionEvent.class.getPermittedSubclasses()));
        assertThat(EventCodec.KINDS.values()).doesNotHaveDuplicates();
        assertThat(EventCodec.REMARKS.keySet())
                .containsExactlyInAnyOrder(asRemarks(Remark.class.getPermittedSubclasses()));
        assertThat(EventCodec.REMARKS.values()).doesNotHaveDuplicates();
        assertThat(EventCodec.FILM_CHANGES.keySet())
                .containsExactlyInAnyOrder(asFilmChanges(FilmChange.class.getPermittedSubclasses()));
        assertThat(EventCodec.FILM_CHANGES.values()).doesNotHaveDuplicates();
    }

    /** Text as stored in existing journals: it must stay readable. */
    @Test
    void writesTicksAndIsoInstants() throws ProblemException {
        String text = "{\"type\":\"take-started\",\"at\":48000,\"take\":2,\"when\":\"2026-01-02T03:04:05.600Z\","
                + "\"audio\":\"desk mic\",\"from\":{\"line\":3,\"word\":1}}";
        SessionEvent event = new SessionEvent.TakeStarted(
                StreamTime.ofSeconds(1),
                2,
                Instant.parse("2026-01-02T03:04:05.6Z"),
                "desk mic",
                new ReadingPosition(3, 1));
        assertThat(EventCodec.encode(event)).isEqualTo(text);
        assertThat(EventCodec.decode(text, "test")).isEqualTo(event);
    }

    @ParameterizedTest
    @CsvSource({
        "cut, CUT",
        "next take, NEXT_TAKE",
        "the text was changed, TEXT_CHANGED",
        "the recording is at its end, SOURCE_ENDED",
        "the capture failed, CAPTURE_FAILED",
        "the program failed, PROGRAM_FAILED",
        "broken off, BROKEN_OFF",
        "a reason of another version, OTHER",
        "SOURCE_ENDED, SOURCE_ENDED"
    })
    void readsWhyATakeEndedInOldJournalsToo(String written, TakeEnd end) throws ProblemException {
        String text = "{\"type\":\"take-ended\",\"at\":48000,\"take\":2,\"when\":\"2026-01-02T03:04:05.600Z\","
                + "\"reason\":\"" + written + "\"}";
        SessionEvent event =
                new SessionEvent.TakeEnded(StreamTime.ofSeconds(1), 2, Instant.parse("2026-01-02T03:04:05.6Z"), end);
        assertThat(EventCodec.decode(text, "test")).isEqualTo(event);
        assertThat(EventCodec.decode(EventCodec.encode(event), "test")).isEqualTo(event);
    }

    @Test
    void aTextIsStoredWithItsLinesAndReadWithoutThemToo() throws ProblemException {
        String opened = "{\"type\":\"opened\",\"at\":0,\"when\":\"2026-01-02T03:04:05Z\",\"title\":\"Hive\","
                + "\"source\":\"hive.md\",\"scriptText\":\"A hive.\"";
        RecordedLines lines = new RecordedLines(List.of(List.of("A", "hive.")));
        SessionEvent.Opened old = new SessionEvent.Opened(
                StreamTime.ZERO, Instant.parse("2026-01-02T03:04:05Z"), "Hive", "hive.md", "A hive.");
        SessionEvent now = new SessionEvent.Opened(old.at(), old.when(), "Hive", "hive.md", "A hive.", lines);
        assertThat(EventCodec.decode(opened + "}", "test")).isEqualTo(old);
        assertThat(EventCodec.encode(old)).isEqualTo(opened + "}");
        assertThat(EventCodec.encode(now)).isEqualTo(opened + ",\"lines\":{\"words\":[[\"A\",\"hive.\"]]}}");
        assertThat(EventCodec.decode(EventCodec.encode(now), "test")).isEqualTo(now);

        String changed = "{\"type\":\"text-changed\",\"at\":7,\"scriptText\":\"A hive.\"";
        SessionEvent change = new SessionEvent.TextChanged(new StreamTime(7), "A hive.", lines);
        assertThat(EventCodec.decode(changed + "}", "test"))
                .isEqualTo(new SessionEvent.TextChanged(new StreamTime(7), "A hive."));
        assertThat(EventCodec.decode(EventCodec.encode(change), "test")).isEqualTo(change);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "{\"type\":\"text-changed\",\"at\":7}",
                "{\"type\":\"text-changed\",\"at\":7,\"scriptText\":null}",
                "{\"type\":\"text-changed\",\"at\":7,\"scriptText\":\"a\",\"lines\":{\"words\":[7]}}",
                "{\"type\":\"opened\",\"at\":0,\"title\":\"Hive\",\"source\":\"hive.md\",\"scriptText\":\"a\"}"
            })
    void aTextWithoutWhatBelongsToItIsReported(String text) {
        assertThatExceptionOfType(ProblemException.class).isThrownBy(() -> EventCodec.decode(text, "test"));
    }

    @Test
    void anActIsStoredWithItsNameAndReadWithoutOneToo() throws ProblemException {
        String old = "{\"type\":\"remarked\",\"at\":7,\"remark\":{\"type\":\"signed\",\"author\":\"ann\","
                + "\"remark\":{\"type\":\"told\",\"text\":\"slower\"}";
        SessionEvent unnamed =
                new SessionEvent.Remarked(new StreamTime(7), new Remark.Signed("ann", new Remark.Told("slower")));
        SessionEvent named =
                new SessionEvent.Remarked(new StreamTime(7), new Remark.Signed("ann", new Remark.Told("slower"), "x1"));
        assertThat(EventCodec.decode(old + "}}", "test")).isEqualTo(unnamed);
        assertThat(EventCodec.encode(unnamed)).isEqualTo(old + "}}");
        assertThat(EventCodec.encode(named)).isEqualTo(old + ",\"name\":\"x1\"}}");
        assertThat(EventCodec.decode(EventCodec.encode(named), "test")).isEqualTo(named);
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(() -> EventCodec.decode(old.replace("\"author\":\"ann\",", "") + "}}", "test"));
    }

    @Test
    void ignoresFieldsOfALaterVersion() throws ProblemException {
        assertThat(EventCodec.decode("{\"type\":\"held\",\"at\":7,\"by\":{\"name\":[1,2]}}", "test"))
                .isEqualTo(new SessionEvent.Held(new StreamTime(7)));
    }

    @Test
    void reportsAnUnknownKind() {
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(() -> EventCodec.decode("{\"type\":\"applause\",\"at\":7}", "a/journal.db, event 3"))
                .satisfies(e -> {
                    assertThat(e.what()).contains("unknown kind 'applause'");
                    assertThat(e.where()).isEqualTo("a/journal.db, event 3");
                    assertThat(e.remedy()).contains("newer");
                });
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "{\"type\":\"held\",\"at\"",
                "{\"type\":\"held\"}",
                "{\"type\":\"held\",\"at\":null}",
                "{\"type\":\"held\",\"at\":-1}",
                "{\"type\":\"follow-changed\",\"at\":1,\"state\":\"DREAMING\"}",
                "{\"type\":\"take-ended\",\"at\":1,\"take\":1,\"when\":\"yesterday\",\"reason\":\"\"}",
                "{\"type\":\"position-moved\",\"at\":1,\"position\":{\"line\":0,\"word\":1},\"mover\":\"HAND\",\"wordsRead\":0}",
                "{\"type\":\"take-settled\",\"at\":1,\"take\":1,\"attempts\":[null],\"asides\":[]}",
                "[]",
                "7"
            })
    void refusesTextThatIsNotAnEvent(String text) {
        assertThatExceptionOfType(ProblemException.class)
                .isThrownBy(() -> EventCodec.decode(text, "test"))
                .satisfies(e -> assertThat(e.getMessage()).startsWith("test: holds an event"));
    }

    @SuppressWarnings("unchecked")
    private static Class<? extends SessionEvent>[] asEvents(Class<?>[] classes) {
        return (Class<? extends SessionEvent>[]) classes;
    }

    @SuppressWarnings("unchecked")
    private static Class<? extends Remark>[] asRemarks(Class<?>[] classes) {
        return (Class<? extends Remark>[]) classes;
    }

    @SuppressWarnings("unchecked")
    private static Class<? extends FilmChange>[] asFilmChanges(Class<?>[] classes) {
        return (Class<? extends FilmChange>[]) classes;
    }
}
