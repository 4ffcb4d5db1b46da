package org.bookholder.runtime;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.bookholder.runtime.stage.FaultListener;
import org.bookholder.runtime.stage.StageFault;
import org.bookholder.session.Request;

/**
 * Replies that people are still waiting for. When the session ends, for whatever reason, all of them are answered, and
 * later ones at once. A reply that throws is reported and costs nobody else. Safe for use by several threads.
 */
final class PendingReplies {
    private static final String ROLE = "answer";

    private final FaultListener faults;
    private final Set<Pending> waiting = new LinkedHashSet<>();
    private String ended = "";

    /** Nobody waits yet; {@code faults} is told of replies that throw. */
    PendingReplies(FaultListener faults) {
        this.faults = faults;
    }

    /** Keeps a reply until it is answered; if the session has ended, it is answered at once. */
    Request.Reply open(Request.Reply reply) {
        Pending pending = new Pending(reply);
        String why;
        synchronized (this) {
            why = ended;
            if (why.isEmpty()) {
                waiting.add(pending);
            }
        }
        if (!why.isEmpty()) {
            guarded(() -> reply.failed(why));
        }
        return pending;
    }

    /** Ends all replies; {@code why} is a sentence for everyone who is waiting or asks later. */
    void end(String why) {
        List<Pending> all;
        synchronized (this) {
            ended = why;
            all = List.copyOf(waiting);
            waiting.clear();
        }
        all.forEach(pending -> guarded(() -> pending.reply.failed(why)));
    }

    private void guarded(Runnable answer) {
        try {
            answer.run();
        } catch (RuntimeException cause) {
            faults.failed(new StageFault(ROLE, StageFault.Consequence.GIVEN_UP, cause));
        }
    }

    private synchronized boolean take(Pending pending) {
        return waiting.remove(pending);
    }

    private final class Pending implements Request.Reply {
        private final Request.Reply reply;

        Pending(Request.Reply reply) {
            this.reply = reply;
        }

        @Override
        public void done() {
            if (take(this)) {
                guarded(reply::done);
            }
        }

        @Override
        public void refused(String why) {
            if (take(this)) {
                guarded(() -> reply.refused(why));
            }
        }

        @Override
        public void failed(String what) {
            if (take(this)) {
                guarded(() -> reply.failed(what));
            }
        }
    }
}
