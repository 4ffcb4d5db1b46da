package org.bookholder.app.session;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.app.environment.Environment;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.fatigue.LimitsForm;
import org.bookholder.problem.ProblemException;
import org.bookholder.settings.SettingsFile;
import org.bookholder.settings.SettingsText.Values;

/** Reads the break limits: as set by the user, or the published defaults. */
public final class BreakLimits {
    private BreakLimits() {}

    public static FatigueLimits of(Environment here) throws ProblemException {
        Values<List<Duration>> values = new SettingsFile(here.limits(), "the limits").read(LimitsForm.FORM);
        List<ProblemException> wrong = new ArrayList<>(values.wrong());
        FatigueLimits limits = LimitsForm.of(values, here.limits().toString(), wrong);
        here.warnings().leftOut(wrong);
        return limits;
    }
}
