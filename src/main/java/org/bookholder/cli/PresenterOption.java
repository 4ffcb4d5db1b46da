package org.bookholder.cli;

import org.bookholder.app.day.DayService;
import picocli.CommandLine.Option;

/** Whose own pace counts where neither a script nor its course sets one. */
final class PresenterOption {
    @Option(
            names = "--presenter",
            paramLabel = "NAME",
            description = "Whose own pace counts where script and course set none, if several people read at this"
                    + " machine.")
    private String name = DayService.SOLE_PRESENTER;

    String name() {
        return name;
    }
}
