package org.bookholder.runtime;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.bookholder.session.Request;

/**
 * The replies that people still wait for. When the session ends, whatever the reason, all of them are told, and so is
 * everyone who asks later. Safe for use by several threads.
 */
final class PendingReplies {
    private final Set<Pending> waiting = new LinkedHashSet<>();
    private String ended = "";

    /** Keeps a reply until it is told; it is told at once if the session has ended. */
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
            reply.failed(why);
        }
        return pending;
    }

    /** Nothing more is done; {@code why} is a sentence for everyone who waits or will ask. */
    void end(String why) {
        List<Pending> all;
        synchronized (this) {
            ended = why;
            all = List.copyOf(waiting);
            waiting.clear();
        }
        all.forEach(pending -> pending.reply.failed(why));
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
                reply.done();
            }
        }

        @Override
        public void refused(String why) {
            if (take(this)) {
                reply.refused(why);
            }
        }

        @Override
        public void failed(String what) {
            if (take(this)) {
                reply.failed(what);
            }
        }
    }
}
