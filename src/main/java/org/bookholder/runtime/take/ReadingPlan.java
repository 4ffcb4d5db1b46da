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
import org.bookholder.session.DaySoFar;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.Ears;

/**
 * Everything a reading needs.
 *
 * @param script the script as prepared for the ears
 * @param before the session so far: new, or replayed from its journal
 * @param opened the opening event with script and source
 * @param earlier what the presenter has read on the day in other sessions, if that is later than what this one counted
 * @param from where the first take begins, unless it begins with a pickup round
 * @param conduct how takes are led
 * @param ears the recogniser; empty to read without following
 * @param sources the sources of sound
 * @param first the first take's source, already open
 * @param endsWithSource whether the session ends with the source, as for a file without a window
 * @param journal where events are saved; whoever opened it closes it after the reading
 * @param tapes where takes are recorded
 * @param manuscript the script's file, if its text may change meanwhile
 * @param log where faults of the program are logged
 * @param clock time of day
 * @param nanoTime a monotonic clock in nanoseconds
 */
public record ReadingPlan(
        PreparedScript script,
        SessionState before,
        SessionEvent.Opened opened,
        Optional<DaySoFar> earlier,
        ReadingPosition from,
        Conduct conduct,
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
