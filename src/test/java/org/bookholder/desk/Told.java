package org.bookholder.desk;

import java.util.ArrayList;
import java.util.List;
import org.bookholder.session.Request;

/** Records the replies to requests, in order: {@code done}, or the reason why not. */
public final class Told implements Request.Reply {
    public final List<String> all = new ArrayList<>();

    @Override
    public synchronized void done() {
        all.add("done");
    }

    @Override
    public synchronized void refused(String why) {
        all.add("refused: " + why);
    }

    @Override
    public synchronized void failed(String what) {
        all.add("failed: " + what);
    }
}
