package org.bookholder.app.work;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.footage.SourceChoices;
import org.bookholder.app.jobs.JobResult.Row;
import org.bookholder.cutlist.TakeSources;
import org.bookholder.problem.ProblemException;
import org.bookholder.wording.TakeSourcesText;

/** Rows that say which file gives the picture of each take and which its sound. */
final class SourceRows {
    private SourceRows() {}

    static List<Row> of(Path session, Environment here) throws ProblemException {
        List<TakeSources> takes = new SourceChoices(here).show(session).takes();
        List<Row> rows = new ArrayList<>();
        TakeSourcesText.gone(takes).ifPresent(said -> rows.add(Row.warning(said)));
        for (TakeSources take : takes) {
            TakeSourcesText.lines(take)
                    .forEach(line -> rows.add(new Row("", "take " + take.take().number(), line, "")));
        }
        return rows;
    }
}
