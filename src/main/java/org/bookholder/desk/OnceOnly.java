package org.bookholder.desk;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.bookholder.session.Request;

/**
 * Carries out an act once, however often a page sends it. A page that got no answer cannot know whether its act was
 * done, and sends it again under the same name. Safe for use by several threads.
 */
final class OnceOnly {
    /** The names of acts that were done and are remembered: more than all pages together have under way. */
    private static final int KEPT = 512;

    private enum Stage {
        NEW,
        UNDER_WAY,
        DONE
    }

    private final Set<String> done = new LinkedHashSet<>();

    /** Who waits for the outcome of an act that is under way, by its name. */
    private final Map<String, List<Request.Reply>> underWay = new HashMap<>();

    /**
     * Carries an act out, or answers "done" if it was carried out before. A repeat of an act that is still under way
     * gets that act's outcome. An act that was refused or failed may be sent again.
     *
     * @param name what its page calls it; empty if it may be done more than once
     * @param act asks for the act and reports to the reply that it is given; it may throw before it has asked
     */
    void ask(String name, Request.Reply reply, Consumer<Request.Reply> act) {
        if (name.isEmpty()) {
            act.accept(reply);
            return;
        }
        switch (taken(name, reply)) {
            case NEW -> begin(name, act);
            case DONE -> reply.done();
            case UNDER_WAY -> {
                // The act that is under way tells this reply too.
            }
        }
    }

    private void begin(String name, Consumer<Request.Reply> act) {
        try {
            act.accept(new ToEach(name));
        } catch (RuntimeException failure) {
            // Whoever asked first is told by the caller; a repeat that came meanwhile hears it here.
            ended(name, false).stream().skip(1).forEach(repeat -> repeat.failed("Not done; try again."));
            throw failure;
        }
    }

    /** Where an act is; the reply of one that is not done waits for its outcome. */
    private synchronized Stage taken(String name, Request.Reply reply) {
        if (done.contains(name)) {
            return Stage.DONE;
        }
        List<Request.Reply> waiting = underWay.computeIfAbsent(name, first -> new ArrayList<>());
        waiting.add(reply);
        return waiting.size() == 1 ? Stage.NEW : Stage.UNDER_WAY;
    }

    /** Ends an act and returns who waits for its outcome, whoever asked first before all others. */
    private synchronized List<Request.Reply> ended(String name, boolean wasDone) {
        if (wasDone) {
            done.add(name);
            if (done.size() > KEPT) {
                done.remove(done.iterator().next());
            }
        }
        List<Request.Reply> waiting = underWay.remove(name);
        return waiting == null ? List.of() : waiting;
    }

    /** Tells the outcome to everyone who waits for it. */
    private final class ToEach implements Request.Reply {
        private final String name;

        ToEach(String name) {
            this.name = name;
        }

        @Override
        public void done() {
            ended(name, true).forEach(Request.Reply::done);
        }

        @Override
        public void refused(String why) {
            ended(name, false).forEach(reply -> reply.refused(why));
        }

        @Override
        public void failed(String what) {
            ended(name, false).forEach(reply -> reply.failed(what));
        }
    }
}
