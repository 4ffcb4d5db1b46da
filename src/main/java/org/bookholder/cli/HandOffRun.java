package org.bookholder.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.cutlist.CutList;
import org.bookholder.cutlist.CutPlanner;
import org.bookholder.cutlist.PunchIn;
import org.bookholder.cutlist.TakeSound;
import org.bookholder.footage.Footage;
import org.bookholder.footage.PlacedFootage;
import org.bookholder.handoff.HandOff;
import org.bookholder.handoff.HandOffFile;
import org.bookholder.handoff.HandOffPart;
import org.bookholder.handoff.HandOffWriter;
import org.bookholder.handoff.sound.TakesPart;
import org.bookholder.handoff.timeline.Media;
import org.bookholder.handoff.timeline.MediaList;
import org.bookholder.handoff.timeline.Timeline;
import org.bookholder.handoff.timeline.TimelineBuilder;
import org.bookholder.journal.FootageNotes;
import org.bookholder.problem.ProblemException;
import org.bookholder.timing.Timecode;

/** Writes the hand-off of a session and says what was written. */
final class HandOffRun {
    private final Surroundings here;
    private final Terminal terminal;
    private final HandOffOptions options;

    HandOffRun(Surroundings here, Terminal terminal, HandOffOptions options) {
        this.here = here;
        this.terminal = terminal;
        this.options = options;
    }

    int run(Path session) throws ProblemException {
        List<HandOffPart> parts = options.parts();
        try (KeptSession kept = KeptSession.open(here, session)) {
            List<HandOffPart> possible = possible(parts, kept);
            HandOff handOff = handOff(kept, possible, options.out(session));
            List<HandOffFile> files = new ArrayList<>();
            possible.forEach(part -> files.addAll(part.files(handOff)));
            List<Path> written = new HandOffWriter().write(options.out(session), files, options.replace());
            tell(kept, handOff, written);
        }
        return 0;
    }

    /** Without recordings everything else can still be handed off. */
    private List<HandOffPart> possible(List<HandOffPart> parts, KeptSession kept) {
        if (kept.recorded() || options.chosen()) {
            return parts;
        }
        terminal.err().println("bookholder: no take was recorded; the files that need sound are left out");
        return parts.stream().filter(part -> !part.needsSound()).toList();
    }

    private HandOff handOff(KeptSession kept, List<HandOffPart> parts, Path out) throws ProblemException {
        String name = SessionPlace.plain(kept.state().script().title());
        List<PlacedFootage> footage = FootageNotes.read(kept.folder().path());
        Timecode timecode = options.timecode(MediaList.usual(footage));
        boolean takesToo = parts.stream().anyMatch(TakesPart.class::isInstance);
        List<Media> media = MediaList.of(
                kept.state(),
                timecode,
                footage,
                take -> takesToo
                        ? out.toAbsolutePath().resolve(TakesPart.fileName(name, take))
                        : kept.folder().takeFile(take).toAbsolutePath(),
                here.zone());
        TakeSound sound = kept.sound();
        CutList cut = CutPlanner.plan(kept.state(), options.rules(), sound);
        Timeline timeline = TimelineBuilder.build(cut, timecode, media, punchIn(footage));
        return new HandOff(name, kept.state(), kept.events(), cut, timeline, media, sound, here.zone());
    }

    private PunchIn punchIn(List<PlacedFootage> footage) throws ProblemException {
        int width = options.deliveryWidth();
        int height = options.deliveryHeight();
        int most = footage.stream()
                .map(PlacedFootage::footage)
                .flatMap(f -> f.picture().stream())
                .mapToInt((Footage.Picture p) -> PunchIn.most(p.width(), p.height(), width, height))
                .min()
                .orElse(PunchIn.FULL);
        return new PunchIn(PunchIn.DEFAULT_STEP, most);
    }

    private void tell(KeptSession kept, HandOff handOff, List<Path> written) {
        if (kept.state().rolling()) {
            terminal.err().println("bookholder: the session is still running; this is how far it has come");
        }
        int gaps = handOff.cut().items().size() - handOff.cut().clips().size();
        Timecode timecode = handOff.timeline().timecode();
        terminal.out()
                .println("Cut: " + handOff.cut().clips().size() + " clips, " + gaps + " gaps, "
                        + handOff.timeline().timecode().label(handOff.timeline().frames()) + " at "
                        + timecode.rate().label() + (timecode.drop() ? " drop-frame" : ""));
        written.forEach(file -> terminal.out().println(file));
        terminal.out().flush();
    }
}
