package org.bookholder.bench;

import java.io.IOException;
import java.io.OutputStream;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.ClosedSelectorException;
import java.nio.channels.SelectionKey;
import java.nio.channels.Selector;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import org.bookholder.desk.AccessControl;
import org.bookholder.desk.Actions;
import org.bookholder.desk.DeskCredentials;
import org.bookholder.desk.DeskHandOff;
import org.bookholder.desk.DeskSession;
import org.bookholder.desk.DeviceFile;
import org.bookholder.desk.Feed;
import org.bookholder.desk.HandOffStatus;
import org.bookholder.desk.LiveHistory;
import org.bookholder.desk.ServedSession;
import org.bookholder.desk.SessionDirectory;
import org.bookholder.desk.http.DeskAddress;
import org.bookholder.desk.http.DeskServer;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.follow.model.ReadingPosition;
import org.bookholder.journal.SessionFolder;
import org.bookholder.journal.SessionLocks;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.DeskStage;
import org.bookholder.runtime.Reading;
import org.bookholder.runtime.record.FaultLog;
import org.bookholder.runtime.record.Tapes;
import org.bookholder.runtime.source.PacedSource;
import org.bookholder.runtime.source.Sources;
import org.bookholder.runtime.stage.Workers;
import org.bookholder.runtime.take.Conduct;
import org.bookholder.runtime.take.ReadingPlan;
import org.bookholder.script.model.Script;
import org.bookholder.script.pronounce.ScriptPreparer;
import org.bookholder.script.source.ScriptReader;
import org.bookholder.script.source.ScriptReader.Format;
import org.bookholder.session.Request;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.speech.AudioSource;
import org.bookholder.speech.Ears;
import org.bookholder.speech.vosk.VoskEars;
import org.bookholder.speech.wav.WavSource;

/**
 * Whether pages that are open make following later: the demo's recording in real time, in stretches by turns with no page
 * and with twenty, which all join at once when theirs begins; and how long after a word was heard the state showed it. The
 * ratio of the two is what counts. Beside it stands the processor time that the desk's own threads took, which does not
 * depend on what else the machine does.
 */
public final class DeskCost {
    private static final int PAGES = 20;
    private static final double STRETCH = 8;
    private static final double END = 88;

    private DeskCost() {}

    /** Reads and prints. */
    public static void main(String[] args) throws Exception {
        Path home = Path.of(System.getProperty("bookholder.home", ""));
        Path folder = Files.createTempDirectory("desk-cost");
        Path file = home.resolve("demo-scripts/lesson-1.md");
        String text = Files.readString(file);
        Script script = ScriptReader.parse(text, file.toString(), Format.of(file.toString()));
        try (Ears ears = VoskEars.load(home.resolve("models/vosk-model-en-us"));
                SessionFolder session = SessionFolder.create(folder.resolve("session"), new SessionLocks());
                Reading reading = Reading.start(plan(script, text, ears, session, home))) {
            DeskSession desk = new Shown(reading, session);
            Feed feed = new Feed(desk, LiveHistory.NONE, "bench", ZoneOffset.UTC);
            SecureRandom random = new SecureRandom();
            DeskCredentials keys = DeskCredentials.fresh(random);
            AccessControl admission =
                    new AccessControl(keys, false, random, System::nanoTime, Instant::now, DeviceFile.none());
            String token = admission
                    .join(keys.key(), new AccessControl.Caller("bench", "", "bench"))
                    .entry()
                    .orElseThrow()
                    .token();
            try (DeskServer server = DeskServer.open(
                            DeskAddress.local(),
                            SessionDirectory.of(new ServedSession(desk, feed, new Actions(desk, Instant::now))),
                            admission,
                            System::nanoTime);
                    Workers workers =
                            new Workers(System::nanoTime, fault -> fault.cause().printStackTrace())) {
                workers.takeOn(new DeskStage(feed, System::nanoTime));
                measure(reading, server.port(), token);
            }
            reading.tell(new TakeCommand.Quit());
            reading.hurry();
            reading.await(20_000);
        }
    }

    private static void measure(Reading reading, int port, String token) throws IOException {
        List<Double> without = new ArrayList<>();
        List<Double> with = new ArrayList<>();
        AtomicLong bytes = new AtomicLong();
        double[] busy = new double[2];
        // Excludes the cost of the beginning, such as compiling hot code, from both.
        delays(reading, STRETCH);
        for (double end = 2 * STRETCH; end + STRETCH <= END; end += 2 * STRETCH) {
            double begun = desksTime();
            without.addAll(delays(reading, end));
            busy[0] += desksTime() - begun;
            begun = desksTime();
            try (Pages pages = new Pages(port, token, bytes)) {
                pages.open();
                with.addAll(delays(reading, end + STRETCH));
                busy[1] += desksTime() - begun;
            }
        }
        print(without, with, bytes.get());
        double seconds = (END - STRETCH) / 2;
        System.out.printf(
                Locale.ROOT,
                "the desk's processor time without / with: %.1f / %.1f ms for each second%n",
                1000 * busy[0] / seconds,
                1000 * busy[1] / seconds);
    }

    /** Processor time of the desk's threads so far, in seconds. */
    private static double desksTime() {
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        return Arrays.stream(threads.getThreadInfo(threads.getAllThreadIds()))
                .filter(thread -> thread != null && thread.getThreadName().startsWith("bookholder desk"))
                .mapToDouble(thread -> Math.max(0, threads.getThreadCpuTime(thread.getThreadId())) * 1e-9)
                .sum();
    }

    /** The machine's clock, when the state showed each move up to a time, less the audio taken in by then, in seconds. */
    private static List<Double> delays(Reading reading, double until) {
        List<Double> delays = new ArrayList<>();
        ReadingPosition seen = reading.state().get().following().position();
        while (reading.state().get().now().seconds() < until) {
            SessionState state = reading.state().get();
            if (!state.following().position().equals(seen)) {
                seen = state.following().position();
                delays.add(System.nanoTime() * 1e-9 - state.now().seconds());
            }
            LockSupport.parkNanos(500_000);
        }
        return delays;
    }

    private static void print(List<Double> without, List<Double> with, long bytes) {
        double least = Math.min(
                without.stream().mapToDouble(d -> d).min().orElse(0),
                with.stream().mapToDouble(d -> d).min().orElse(0));
        System.out.printf(
                Locale.ROOT,
                "moves without / with %d pages: %d / %d%n"
                        + "shown after the earliest, median: %.3f / %.3f s; 95 %%: %.3f / %.3f s%n"
                        + "ratio of the medians: %.2f%nsent: %.0f kB%n",
                PAGES,
                without.size(),
                with.size(),
                quantile(without, 0.5) - least,
                quantile(with, 0.5) - least,
                quantile(without, 0.95) - least,
                quantile(with, 0.95) - least,
                (quantile(with, 0.5) - least) / (quantile(without, 0.5) - least),
                bytes / 1000.0);
    }

    private static double quantile(List<Double> values, double share) {
        List<Double> sorted = values.stream().sorted().toList();
        return sorted.get((int) Math.min(sorted.size() - 1L, Math.round(share * (sorted.size() - 1))));
    }

    /**
     * Pages that read everything they are sent until they are closed. One thread reads for all of them, because real
     * pages cost this process nothing.
     */
    private static final class Pages implements AutoCloseable {
        private final Selector selector = Selector.open();
        private final AtomicLong bytes;

        Pages(int port, String token, AtomicLong bytes) throws IOException {
            this.bytes = bytes;
            String request = "GET /events HTTP/1.1\r\nHost: 127.0.0.1:" + port + "\r\nCookie: desk-" + port + "="
                    + token + "\r\n\r\n";
            for (int i = 0; i < PAGES; i++) {
                SocketChannel page = SocketChannel.open(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
                page.write(StandardCharsets.US_ASCII.encode(request));
                page.configureBlocking(false);
                page.register(selector, SelectionKey.OP_READ);
            }
        }

        void open() {
            Thread reader = new Thread(this::read);
            reader.setDaemon(true);
            reader.start();
        }

        private void read() {
            ByteBuffer buffer = ByteBuffer.allocateDirect(65_536);
            try {
                while (selector.isOpen()) {
                    selector.select();
                    for (SelectionKey key : selector.selectedKeys()) {
                        buffer.clear();
                        bytes.addAndGet(Math.max(0, ((SocketChannel) key.channel()).read(buffer)));
                    }
                    selector.selectedKeys().clear();
                }
            } catch (IOException | ClosedSelectorException over) {
                // Wait until the pages have disconnected.
            }
        }

        @Override
        public void close() throws IOException {
            for (SelectionKey key : Set.copyOf(selector.keys())) {
                key.channel().close();
            }
            selector.close();
        }
    }

    private static ReadingPlan plan(Script script, String text, Ears ears, SessionFolder session, Path home)
            throws ProblemException {
        SessionState before = Session.begin(script, FatigueLimits.defaults());
        WavSource file = WavSource.open(home.resolve("demo-scripts/lesson-1.wav"));
        Sources sources = new Sources() {
            @Override
            public AudioSource open() throws ProblemException {
                throw new ProblemException("there is one take only", "the bench", "none");
            }

            @Override
            public boolean live() {
                return true;
            }
        };
        return new ReadingPlan(
                ScriptPreparer.prepare(script, ears.vocabulary()),
                before,
                new SessionEvent.Opened(before.now(), Instant.now(), script.title(), script.source(), text),
                Optional.empty(),
                ReadingPosition.START,
                Conduct.PLAIN,
                Optional.of(ears),
                sources,
                new PacedSource(file, System::nanoTime),
                false,
                session.journal(),
                Tapes.in(session),
                Optional.empty(),
                new FaultLog(entry -> {}, Instant::now),
                Instant::now,
                System::nanoTime);
    }

    /** The session as the desk sees it. */
    private record Shown(Reading reading, SessionFolder folder) implements DeskSession {
        @Override
        public String name() {
            return "long";
        }

        @Override
        public SessionState state() {
            return reading.state().get();
        }

        @Override
        public void ask(Request request, Request.Reply reply) {
            reading.ask(request, reply);
        }

        @Override
        public boolean live() {
            return true;
        }

        @Override
        public Path recording(int take) {
            return folder.takeFile(take);
        }

        @Override
        public Path films() {
            return folder.path().resolve("film");
        }

        @Override
        public DeskHandOff handOff() {
            return new DeskHandOff() {
                @Override
                public HandOffStatus now() {
                    return new HandOffStatus(HandOffStatus.Step.IDLE, "", List.of(), "");
                }

                @Override
                public Optional<String> ask(boolean replace) {
                    return Optional.of("no page of the bench asks for it");
                }

                @Override
                public Optional<Path> file(String name) {
                    return Optional.empty();
                }
            };
        }

        @Override
        public void writePickups(OutputStream out) {
            throw new UnsupportedOperationException("no page of the bench asks for it");
        }
    }
}
