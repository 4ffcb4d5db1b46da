package org.bookholder.app.work;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Progress;
import org.bookholder.app.environment.ProgressMeter;
import org.bookholder.app.footage.FootageLogListener;
import org.bookholder.app.jobs.JobControl;
import org.bookholder.app.reading.ReadingListener;
import org.bookholder.app.reading.ReadingResult;
import org.bookholder.app.reading.ReadingSetup;
import org.bookholder.footage.Footage;
import org.bookholder.session.SessionState;
import org.bookholder.session.Troubles;
import org.bookholder.wording.TroubleText;

/** Tells how far the logging of files has come. Confined to the thread that does it. */
final class LogProgress implements FootageLogListener {
    private final ProgressMeter meter;
    private final int files;
    private final JobControl control;
    private final List<ReadingResult> results = new ArrayList<>();

    LogProgress(Environment here, int files, JobControl control) {
        this.meter = new ProgressMeter(here.nanoTime(), control::reached);
        this.files = files;
        this.control = control;
    }

    /** What came of the files that were followed. */
    List<ReadingResult> results() {
        return List.copyOf(results);
    }

    @Override
    public ReadingListener following(Footage file) {
        control.say("Following " + file.name());
        return new OneFile(file);
    }

    @Override
    public void followed(ReadingResult result) {
        results.add(result);
    }

    private final class OneFile implements ReadingListener {
        private final Footage file;
        private double begun = Double.NaN;

        OneFile(Footage file) {
            this.file = file;
        }

        @Override
        public void prepared(ReadingSetup setup) {}

        @Override
        public void opened(Path session, boolean continued) {}

        @Override
        public void recovering(List<Integer> takes) {}

        @Override
        public void progress(Progress progress) {}

        @Override
        public void deskOpened(RunningDesk desk) {}

        @Override
        public void stateChanged(SessionState state, boolean over) {
            double now = state.now().seconds();
            if (Double.isNaN(begun)) {
                begun = now;
            }
            double part = Math.min(1, (now - begun) / Math.max(1, file.length().seconds()));
            meter.reached(file.name(), (results.size() + part) / files);
        }

        @Override
        public void troublesChanged(Troubles troubles) {
            if (!troubles.isEmpty()) {
                warned(TroubleText.of(troubles));
            }
        }

        @Override
        public void stillListening(double seconds) {}

        @Override
        public void warned(String sentence) {
            control.say(sentence);
        }

        @Override
        public void noted(String sentence) {}
    }
}
