package org.bookholder.cli;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Interruption;
import org.bookholder.app.sound.MachineMicrophone;
import org.bookholder.app.sound.SoundCheckListener;
import org.bookholder.app.sound.SoundCheckRequest;
import org.bookholder.app.sound.SoundCheckService;
import org.bookholder.app.sound.SoundJson;
import org.bookholder.course.Text;
import org.bookholder.problem.ProblemException;
import org.bookholder.sound.LoudnessReading;
import org.bookholder.sound.RoomNoise;
import org.bookholder.sound.SoundCheck;
import org.bookholder.sound.SoundFinding;
import org.bookholder.sound.SoundFinding.Grade;
import org.bookholder.wording.SoundText;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Measures room and voice before a session. */
@Command(
        name = "sound",
        sortOptions = false,
        description = {
            "Check the sound before you record: first some seconds of the room, then some of your voice.",
            "Says what the level, noise, hum, echo and clipping amount to, whether two channels go together and the whole voice"
                    + " comes through, and what to try. Exit status 3 if something is"
                    + " poor."
        })
final class SoundCommand implements Callable<Integer> {
    private static final double LEAST = SoundCheckService.SHORTEST_SECONDS;

    private final Environment here;
    private final Terminal terminal;

    @Option(names = "--room", paramLabel = "S", description = "Seconds of room, 3 to 60. Default: 10.")
    private double room = 10;

    @Option(names = "--voice", paramLabel = "S", description = "Seconds of voice, 3 to 120. Default: 10.")
    private double voice = 10;

    @Option(names = "--microphone", paramLabel = "NAME", description = "Listen to this microphone.")
    private @Nullable String microphone;

    @Option(
            names = "--audio",
            paramLabel = "FILE",
            description = "Hear a recording (WAV) instead of a microphone: room first, then voice.")
    private @Nullable Path audio;

    @Option(names = "--json", description = "The result as JSON, for other programs.")
    private boolean json;

    SoundCommand(Environment here, Terminal terminal) {
        this.here = here;
        this.terminal = terminal;
    }

    @Override
    public Integer call() throws ProblemException {
        within("--room", room, 60);
        within("--voice", voice, 120);
        if (audio != null && microphone != null) {
            throw new ProblemException("a recording takes the microphone's place", "--audio", "leave out --microphone");
        }
        SoundCheckRequest request = new SoundCheckRequest(
                room,
                voice,
                Optional.ofNullable(microphone),
                microphone == null ? new MachineMicrophone(here).chosen() : Optional.empty(),
                Optional.ofNullable(audio));
        SoundCheck check = new SoundCheckService(here, new Instructions(), Interruption.NONE).check(request);
        if (json) {
            terminal.out().print(SoundJson.of(check).toPrettyString() + "\n");
            terminal.out().flush();
        } else {
            tell(check);
        }
        return check.grade() == Grade.POOR ? Main.TO_MEND : 0;
    }

    private static void within(String option, double seconds, double most) throws ProblemException {
        if (!(seconds >= LEAST && seconds <= most)) {
            throw new ProblemException(
                    "the value is out of range", option, "give seconds from " + (int) LEAST + " to " + (int) most);
        }
    }

    /** Says what to do while the check runs. */
    private final class Instructions implements SoundCheckListener {
        @Override
        public void begins(String source) {
            note("Sound check: " + source);
        }

        @Override
        public void measuresRoom(double seconds) {
            note(String.format(Locale.ROOT, "Say nothing for %.0f s: the room is measured.", seconds));
        }

        @Override
        public void measuresVoice(double seconds) {
            note(String.format(Locale.ROOT, "Now read aloud, as you will in the take, for %.0f s.", seconds));
        }
    }

    /** Prints a message for people; not to standard output if another program reads the result there. */
    private void note(String text) {
        PrintStream to = json ? terminal.err() : terminal.out();
        to.println(text);
        to.flush();
    }

    private void tell(SoundCheck check) {
        terminal.out().println();
        for (SoundFinding finding : check.findings()) {
            SoundText text = SoundText.of(check, finding);
            terminal.out().println(row(text.about(), SoundText.of(finding.grade()), text.figure()));
            if (!text.advice().isEmpty()) {
                terminal.out().println(row("", "", "try: " + text.advice()));
            }
        }
        for (RoomNoise.Part part : check.spectrum().parts()) {
            terminal.out().println(row("in the room", "", SoundText.of(part)));
        }
        LoudnessReading loudness = check.voice().loudness();
        if (Double.isFinite(loudness.integrated())) {
            terminal.out()
                    .println(row(
                            "loudness",
                            "",
                            String.format(
                                    Locale.ROOT,
                                    "%.1f LUFS, true peak %.1f dBTP (ITU-R BS.1770)",
                                    loudness.integrated(),
                                    loudness.truePeak())));
        }
        terminal.out().println();
        SoundText.SOURCES.stream().flatMap(source -> Text.wrap(source).stream()).forEach(terminal.out()::println);
        terminal.out().println();
        terminal.out().println(SoundText.verdict(check.grade()));
        terminal.out().flush();
    }

    private static String row(String about, String grade, String text) {
        return String.format(Locale.ROOT, "  %-14s %-5s %s", about, grade, text);
    }
}
