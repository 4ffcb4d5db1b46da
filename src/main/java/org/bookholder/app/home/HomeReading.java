package org.bookholder.app.home;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import org.bookholder.app.desk.DeskRequest;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.OperationInterrupted;
import org.bookholder.app.environment.Progress;
import org.bookholder.app.reading.LessonSequence;
import org.bookholder.app.reading.ReadingControl;
import org.bookholder.app.reading.ReadingListener;
import org.bookholder.app.reading.ReadingRequest;
import org.bookholder.app.reading.ReadingResult;
import org.bookholder.app.reading.ReadingSetup;
import org.bookholder.app.reading.WindowPreferences;
import org.bookholder.desk.ServedSession;
import org.bookholder.problem.ProblemException;
import org.bookholder.runtime.stage.Latest;
import org.bookholder.runtime.stage.Mailbox;
import org.bookholder.runtime.take.Conduct;
import org.bookholder.session.Request;
import org.bookholder.session.SessionState;
import org.bookholder.session.TakeCommand;
import org.bookholder.session.Troubles;
import org.bookholder.session.UpNext;
import org.bookholder.view.settings.WindowWish;
import org.jspecify.annotations.Nullable;

/**
 * Reads the lessons that the page asks for, one at a time, on the thread that calls {@link #work}. The other methods are safe
 * for use by several threads.
 */
final class HomeReading {
    private static final Request.Reply NO_REPLY = new Request.Reply() {
        @Override
        public void done() {}

        @Override
        public void refused(String why) {}

        @Override
        public void failed(String what) {}
    };

    private final Environment here;
    private final Consumer<Throwable> faults;
    private final Mailbox<List<Order>> orders = new Mailbox<>(1);
    private final Latest<Standing> standing = new Latest<>(Standing.NOTHING);
    private final Latest<Boolean> ending = new Latest<>(false);
    private final Latest<Runnable> letGo = new Latest<>(() -> {});

    private final Latest<Consumer<Path>> closer = new Latest<>(session -> {});

    /** The session that has just ended while the next lesson of the order is being opened. */
    private final Latest<Optional<Path>> leaving = new Latest<>(Optional.empty());

    /** Reads in {@code here}; faults of the program that end a reading are told to {@code faults}. */
    HomeReading(Environment here, Consumer<Throwable> faults) {
        this.here = here;
        this.faults = faults;
    }

    /**
     * A lesson to be read.
     *
     * @param course the name of its course
     * @param lesson the lesson's name
     * @param title its title
     * @param script its file
     * @param session the session to go on with; empty for another one
     * @param pickups whether to begin with its pickup round
     * @param from the line to begin at; empty for the first one, or where an earlier reading ended
     * @param audio the recording to read with in place of the microphone, if any
     * @param microphone the microphone's name; empty for the default one
     */
    record Order(
            String course,
            String lesson,
            String title,
            Path script,
            Optional<Path> session,
            boolean pickups,
            Optional<Integer> from,
            Optional<Path> audio,
            Optional<String> microphone) {}

    /** How far a reading has come. */
    enum Step {
        NONE,
        PREPARING,
        OPEN,
        ENDED,
        FAILED
    }

    /**
     * What is known of the reading that is going on, or of the last one.
     *
     * @param step how far it has come
     * @param order what is read; empty if nothing was yet
     * @param session its folder; empty before it is open
     * @param place the session while it is open
     * @param result what came of it; empty before its end
     * @param said what a person should know, one sentence each
     */
    record Standing(
            Step step,
            Optional<Order> order,
            Optional<Path> session,
            Optional<ServedSession> place,
            Optional<ReadingResult> result,
            List<String> said) {
        static final Standing NOTHING = new Standing(
                Step.NONE, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), List.of());

        static Standing preparing(Order order, List<String> said) {
            return new Standing(
                    Step.PREPARING, Optional.of(order), order.session(), Optional.empty(), Optional.empty(), said);
        }

        Standing saying(String sentence) {
            List<String> all = new ArrayList<>(said);
            all.add(sentence);
            return new Standing(step, order, session, place, result, List.copyOf(all));
        }

        Standing at(Step now) {
            return new Standing(now, order, session, place, result, said);
        }

        boolean goesOn() {
            return step == Step.PREPARING || step == Step.OPEN;
        }
    }

    Standing standing() {
        return standing.get();
    }

    /** Says what lets go of the microphones before a reading begins, and closes a session that a later lesson of the order goes on with. */
    void letGoFirst(Runnable action, Consumer<Path> close) {
        letGo.set(action);
        closer.set(close);
    }

    /** The session that has just ended, while the next lesson is being opened: its pages go over to that one. */
    Optional<Path> leaving() {
        return leaving.get();
    }

    /** Asks the reading that is going on to go on to the next lesson; returns why that can't be, or nothing. */
    Optional<String> nextLesson() {
        Optional<ServedSession> place = standing().place();
        boolean left = place.flatMap(open -> open.session().state().upNext())
                .filter(UpNext::isLeft)
                .isPresent();
        if (!left) {
            return Optional.of("there is no other lesson");
        }
        place.get().session().ask(state -> List.of(new TakeCommand.NextLesson()), NO_REPLY);
        return Optional.empty();
    }

    /**
     * Asks for lessons to be read one after another; returns why that can't be, or nothing.
     *
     * @param asked the lessons in order, at least one
     * @param before done before the reading begins, when its session is no longer opened for anyone else
     */
    synchronized Optional<String> ask(List<Order> asked, Runnable before) {
        Order order = asked.get(0);
        Standing last = standing();
        if (last.goesOn()) {
            return Optional.of("a lesson is being read; end it first");
        }
        ending.set(false);
        standing.set(Standing.preparing(order, List.of()));
        try {
            before.run();
            letGo.get().run();
        } catch (RuntimeException e) {
            standing.set(last);
            throw e;
        }
        orders.add(List.copyOf(asked));
        return Optional.empty();
    }

    /** Asks the reading that is going on to end. */
    void end() {
        ending.set(true);
    }

    /** The page has seen how the last reading ended. */
    synchronized void dismiss() {
        if (!standing().goesOn()) {
            standing.set(Standing.NOTHING);
        }
    }

    /** Reads the lessons that were asked for, to their end; returns at once if none were. */
    void work(BooleanSupplier interrupted) {
        @Nullable List<Order> asked = orders.poll();
        if (asked != null) {
            read(asked, interrupted);
        }
    }

    private void read(List<Order> asked, BooleanSupplier interrupted) {
        Following following = new Following(interrupted);
        try {
            new LessonSequence(here, asked.stream().map(Order::script).toList(), new Guiding(asked, following))
                    .read(following, following);
        } catch (ProblemException e) {
            ended(closed(e.getMessage()).at(Step.FAILED));
        } catch (OperationInterrupted e) {
            ended(closed("It was ended before the window opened; no session was begun.")
                    .at(Step.FAILED));
        } catch (RuntimeException | Error e) {
            faults.accept(e);
            ended(closed("A fault of the program stopped it (" + e + "); please report it.")
                    .at(Step.FAILED));
        } finally {
            leaving.set(Optional.empty());
        }
    }

    /** Says how each lesson is read, and what came of it. Confined to the thread that reads. */
    private final class Guiding implements LessonSequence.Guide {
        private final List<Order> asked;
        private final Following following;

        Guiding(List<Order> asked, Following following) {
            this.asked = asked;
            this.following = following;
        }

        @Override
        public ReadingRequest request(int place) throws ProblemException {
            return HomeReading.this.request(asked.get(place));
        }

        @Override
        public void begins(int place) {
            following.windowless = false;
            if (place > 0) {
                Order order = asked.get(place);
                change(Standing.preparing(order, standing().said()));
                order.session().ifPresent(closer.get());
            }
        }

        @Override
        public void ended(ReadingResult result) {
            Optional<ServedSession> shown = standing().place();
            if (!result.unsaved().isEmpty()) {
                change(standing().saying(result.unsaved()));
            }
            result.elsewhere().ifPresent(kept -> change(standing().saying(kept.sentence())));
            Standing last = standing();
            change(new Standing(
                    Step.ENDED,
                    last.order(),
                    Optional.of(result.session()),
                    Optional.empty(),
                    Optional.of(result),
                    last.said()));
            leaving.set(result.nextLesson() ? Optional.of(result.session()) : Optional.empty());
            // The pages of the live desk come back to the same address: they find the review there, or go over to the
            // next lesson.
            shown.ifPresent(place -> place.feed().end());
        }
    }

    /** The pages of the live desk come back to the same address, and find the review there. */
    private void ended(Standing end) {
        Optional<ServedSession> shown = standing().place();
        change(end);
        shown.ifPresent(place -> place.feed().end());
    }

    private Standing closed(@Nullable String why) {
        leaving.set(Optional.empty());
        Standing last = standing();
        return new Standing(last.step(), last.order(), last.session(), Optional.empty(), Optional.empty(), last.said())
                .saying(String.valueOf(why));
    }

    private ReadingRequest request(Order order) throws ProblemException {
        WindowWish wish = WindowPreferences.of(here, order.script()).wish();
        return new ReadingRequest(
                order.script(),
                List.of(),
                Optional.empty(),
                order.session(),
                order.audio().isPresent(),
                order.from(),
                new Conduct(wish.settings().countIn(), order.pickups()),
                order.audio(),
                order.microphone(),
                false,
                false,
                false,
                Optional.of(wish),
                Optional.of(DeskRequest.atHome()),
                here.model());
    }

    private synchronized void change(Standing next) {
        standing.set(next);
    }

    /** Follows one reading. Confined to the thread that reads, but for what it asks. */
    private final class Following implements ReadingListener, ReadingControl {
        private final BooleanSupplier interrupted;
        private boolean windowless;

        Following(BooleanSupplier interrupted) {
            this.interrupted = interrupted;
        }

        /** A window is closed by an interruption; without one, the reading ends as it does at a terminal. */
        @Override
        public boolean interrupted() {
            return interrupted.getAsBoolean() || (ending.get() && !windowless);
        }

        @Override
        public boolean finishRequested() {
            return ending.get();
        }

        @Override
        public void prepared(ReadingSetup setup) {}

        @Override
        public void opened(Path session, boolean continued) {
            Standing now = standing();
            change(new Standing(now.step(), now.order(), Optional.of(session), now.place(), now.result(), now.said()));
        }

        @Override
        public void recovering(List<Integer> takes) {
            say("Listening again to what was recorded and not yet judged.");
        }

        @Override
        public void progress(Progress progress) {}

        @Override
        public void served(ServedSession session) {
            leaving.set(Optional.empty());
            Standing now = standing();
            change(new Standing(
                    Step.OPEN, now.order(), now.session(), Optional.of(session), Optional.empty(), now.said()));
        }

        @Override
        public String withoutWindow() {
            return "on this page";
        }

        @Override
        public String endedBy() {
            return "its button ends it";
        }

        @Override
        public void deskOpened(RunningDesk desk) {}

        @Override
        public void stateChanged(SessionState state, boolean over) {
            windowless = true;
        }

        @Override
        public void troublesChanged(Troubles troubles) {}

        @Override
        public void stillListening(double seconds) {}

        @Override
        public void warned(String sentence) {
            say(sentence);
        }

        @Override
        public void noted(String sentence) {}

        private void say(String sentence) {
            change(standing().saying(sentence));
        }
    }
}
