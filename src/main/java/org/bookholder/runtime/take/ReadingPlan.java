package org.bookholder.runtime.take;

import java.time.InstantSource;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.event.Journal;
import org.bookholder.runtime.record.FaultLog;
import org.bookholder.runtime.record.Tapes;
import org.bookholder.runtime.source.Manuscript;
import org.bookholder.runtime.source.Sources;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.Ears;

/**
 * What a reading is to run with.
 *
 * @param script the script as the ears can hear it
 * @param before where the session stands: at its beginning, or what its journal was replayed to
 * @param opened the event that says what is read
 * @param from where the first take begins
 * @param ears the recogniser; empty to read without being followed
 * @param sources where sound comes from
 * @param first the first take's source, open already
 * @param endsWithSource whether the session ends when the source does, as a file's does without a window
 * @param journal where events are kept; closed by whoever opened it, after the reading is over
 * @param tapes where takes are recorded
 * @param manuscript the script's file, if its text may change meanwhile
 * @param log where faults of the program are logged
 * @param clock time of day
 * @param nanoTime a clock that only goes forward, in nanoseconds
 */
public record ReadingPlan(
        PreparedScript script,
        SessionState before,
        SessionEvent.Opened opened,
        ReadingPosition from,
        Optional<Ears> ears,
        Sources sources,
        AudioSource first,
        boolean endsWithSource,
        Journal journal,
        Tapes tapes,
        Optional<Manuscript> manuscript,
        FaultLog log,
        InstantSource clock,
        LongSupplier nanoTime) {}
