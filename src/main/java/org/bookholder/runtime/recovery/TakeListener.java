package org.bookholder.runtime.recovery;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import org.bookholder.follow.Follower;
import org.bookholder.follow.graph.ScriptGrammar;
import org.bookholder.follow.model.FollowEvent;
import org.bookholder.journal.TakeAudio;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.take.EvidenceOrder;
import org.bookholder.runtime.take.EvidenceOrder.Evidence;
import org.bookholder.runtime.take.EvidenceOrder.Kind;
import org.bookholder.runtime.take.SpoiledLines;
import org.bookholder.script.model.PreparedScript;
import org.bookholder.session.SessionEvent;
import org.bookholder.sound.Spoil;
import org.bookholder.sound.SpoilWatch;
import org.bookholder.speech.AudioBlock;
import org.bookholder.speech.Ear;
import org.bookholder.speech.EarKind;
import org.bookholder.speech.Ears;
import org.bookholder.speech.FrameLevels;
import org.bookholder.speech.FrameMeter;
import org.bookholder.speech.Hypothesis;
import org.bookholder.timing.StreamTime;
import org.jspecify.annotations.Nullable;

/**
 * Follows a take from its recording as it would have been followed live: with both ears, its levels, and people's
 * actions at their times. Confined to one thread.
 */
final class TakeListener {
    /** Blocks per second, as for a file: for the script ear, and for the open ear. */
    private static final int SCRIPT_BLOCKS = 25;

    private static final int OPEN_BLOCKS = 10;

    private final UnsettledTake take;
    private final TakeAudio audio;
    private final TakeAudio openAudio;
    private final Follower follower;
    private final EvidenceOrder order = new EvidenceOrder(EnumSet.allOf(EarKind.class));
    private final FrameMeter frames = FrameMeter.voiceBand();
    private final SpoilWatch watch = new SpoilWatch();
    private final List<Spoil> lost;
    private final SpoiledLines spoiled = new SpoiledLines();
    private final List<FollowEvent> found = new ArrayList<>();
    private StreamTime heardTo;
    private StreamTime openHeardTo;

    /**
     * Creates a listener.
     *
     * @param audio the take's recording, for the script ear
     * @param openAudio the same recording, opened again for the open ear
     */
    TakeListener(UnsettledTake take, PreparedScript script, TakeAudio audio, TakeAudio openAudio) {
        this.take = take;
        this.audio = audio;
        this.openAudio = openAudio;
        this.follower = new Follower(script);
        this.heardTo = take.start();
        this.openHeardTo = take.start();
        this.lost = LostSound.of(take);
        lost.forEach(spoiled::add);
        PersonsActs.of(take).forEach(order::add);
        take.events().stream()
                .filter(SessionEvent.PickupMarked.class::isInstance)
                .map(SessionEvent.PickupMarked.class::cast)
                .forEach(spoiled::given);
    }

    /**
     * Follows the whole take.
     *
     * @param progress called about every tenth of a second; may throw to stop the work
     * @return the findings in order; the last one is the take's outcome
     */
    List<FollowEvent> listen(PreparedScript script, Ears ears, RecoveryProgress progress) throws ProblemException {
        StreamTime length = audio.end().since(take.start());
        found.addAll(
                follower.startTake(take.number(), take.start(), take.started().from()));
        try (Ear open = ears.openEar(audio.rate());
                @Nullable Ear expecting = ScriptGrammar.of(script)
                                .map(words -> ears.scriptEar(words, audio.rate()))
                                .orElse(null)) {
            Optional<AudioBlock> block = audio.read(audio.rate() / SCRIPT_BLOCKS);
            while (block.isPresent()) {
                hear(block.get(), expecting);
                hearOpen(open, heardTo);
                progress.heard(take.number(), heardTo.since(take.start()), length);
                block = audio.read(audio.rate() / SCRIPT_BLOCKS);
            }
            hearOpen(open, audio.end());
            finish(open, EarKind.OPEN);
            finish(expecting, EarKind.SCRIPT);
        }
        found.addAll(follower.endTake(take.end(heardTo)));
        return List.copyOf(found);
    }

    /** The known spoiled stretches of the take. */
    SpoiledLines spoiled() {
        return spoiled;
    }

    private void hear(AudioBlock block, @Nullable Ear ear) {
        heardTo = block.end();
        Optional<FrameLevels> levels = frames.hear(block);
        levels.ifPresent(l -> tell(order.add(new Evidence(l.end(), Kind.LEVELS, f -> f.hear(l)))));
        if (lost.stream()
                .noneMatch(gap -> gap.within(block.start(), block.end()).ticks() > 0)) {
            watch.hear(block).forEach(spoiled::add);
        }
        if (ear != null) {
            report(ear.hear(block));
        }
        tell(order.heardTo(EarKind.SCRIPT, heardTo));
    }

    private void hearOpen(Ear ear, StreamTime to) throws ProblemException {
        while (openHeardTo.isBefore(to)) {
            Optional<AudioBlock> block = openAudio.read(audio.rate() / OPEN_BLOCKS);
            if (block.isEmpty()) {
                return;
            }
            openHeardTo = block.get().end();
            report(ear.hear(block.get()));
            tell(order.heardTo(EarKind.OPEN, openHeardTo));
        }
    }

    private void finish(@Nullable Ear ear, EarKind kind) {
        if (ear != null) {
            report(ear.finish());
        }
        tell(order.done(kind));
    }

    private void report(List<Hypothesis> hypotheses) {
        for (Hypothesis h : hypotheses) {
            tell(order.add(new Evidence(h.heardTo(), Kind.of(h.ear()), f -> f.hear(h))));
        }
    }

    private void tell(List<Evidence> evidence) {
        evidence.forEach(e -> found.addAll(e.tell().apply(follower)));
    }
}
