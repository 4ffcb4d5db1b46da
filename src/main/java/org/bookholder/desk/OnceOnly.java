package org.bookholder.desk;

import java.util.LinkedHashSet;
import java.util.Set;
import java.util.function.Consumer;
import org.bookholder.session.Request;

/**
 * Carries out an act once, however often a page sends it. A page that got no answer cannot know whether its act was
 * done, and sends it again under the same name. Safe for use by several threads.
 */
final class OnceOnly {
    /** The names kept: more than all pages together have under way. */
    private static final int KEPT = 512;

    private final Set<String> names = new LinkedHashSet<>();

    /**
     * Carries an act out, or answers "done" if it was carried out before. An act that was refused or failed may be
     * sent again.
     *
     * @param name what its page calls it; empty if it may be done more than once
     * @param act asks for the act and reports to the reply that it is given
     */
    void ask(String name, Request.Reply reply, Consumer<Request.Reply> act) {
        if (name.isEmpty()) {
            act.accept(reply);
        } else if (isNew(name)) {
            act.accept(new Forgetting(name, reply));
        } else {
            reply.done();
        }
    }

    private synchronized boolean isNew(String name) {
        if (!names.add(name)) {
            return false;
        }
        if (names.size() > KEPT) {
            names.remove(names.iterator().next());
        }
        return true;
    }

    private synchronized void forget(String name) {
        names.remove(name);
    }

    /** Forgets the name of an act that was not carried out. */
    private final class Forgetting implements Request.Reply {
        private final String name;
        private final Request.Reply reply;

        Forgetting(String name, Request.Reply reply) {
            this.name = name;
            this.reply = reply;
        }

        @Override
        public void done() {
            reply.done();
        }

        @Override
        public void refused(String why) {
            forget(name);
            reply.refused(why);
        }

        @Override
        public void failed(String what) {
            forget(name);
            reply.failed(what);
        }
    }
}
