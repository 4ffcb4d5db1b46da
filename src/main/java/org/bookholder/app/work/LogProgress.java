package org.bookholder.app.work;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.app.desk.RunningDesk;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.environment.Progress;
import org.bookholder.app.environment.ProgressMeter;
import org.bookholder.app.footage.FootageLogListener;
import org.bookholder.app.footage.MatchText;
import org.bookholder.app.jobs.JobControl;
import org.bookholder.app.reading.ReadingListener;
import org.bookholder.app.reading.ReadingResult;
import org.bookholder.app.reading.ReadingSetup;
import org.bookholder.footage.RecordingJoiner;
import org.bookholder.footage.WholeRecording;
import org.bookholder.session.SessionState;
import org.bookholder.session.Troubles;
import org.bookholder.wording.TroubleText;

/** Tells how far the logging of files has come. Confined to the thread that does it. */
final class LogProgress implements FootageLogListener {
    private final ProgressMeter meter;
    private final int files;
    private final JobControl control;
    private final List<ReadingResult> results = new ArrayList<>();
    private final List<WholeRecording> joined = new ArrayList<>();
    private final List<String> apart = new ArrayList<>();
    private int filesBegun;

    LogProgress(Environment here, int files, JobControl control) {
        this.meter = new ProgressMeter(here.nanoTime(), control::reached);
        this.files = files;
        this.control = control;
    }

    /** What came of the files that were followed. */
    List<ReadingResult> results() {
        return List.copyOf(results);
    }

    /** What is to be said of files that were not put together. */
    List<String> apart() {
        return List.copyOf(apart);
    }

    /** The recordings that were put together from several files. */
    List<WholeRecording> joined() {
        return List.copyOf(joined);
    }

    @Override
    public void apart(RecordingJoiner.Apart files) {
        String said = MatchText.apart(files, "with \"Join numbered files\" ticked");
        apart.add(said);
        control.say(said);
    }

    @Override
    public ReadingListener following(WholeRecording recording) {
        if (recording.split()) {
            joined.add(recording);
            control.say(MatchText.joined(recording));
        }
        control.say("Following " + recording.name());
        OneTake take = new OneTake(recording, filesBegun);
        filesBegun += recording.parts().size();
        return take;
    }

    @Override
    public void followed(ReadingResult result) {
        results.add(result);
    }

    private final class OneTake implements ReadingListener {
        private final WholeRecording recording;
        private final int filesBefore;
        private double begun = Double.NaN;

        OneTake(WholeRecording recording, int filesBefore) {
            this.recording = recording;
            this.filesBefore = filesBefore;
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
            double part =
                    Math.min(1, (now - begun) / Math.max(1, recording.length().seconds()));
            meter.reached(
                    recording.name(), (filesBefore + part * recording.parts().size()) / files);
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
