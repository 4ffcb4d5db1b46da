package org.bookholder.app.delivery;

import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.app.environment.Environment;
import org.bookholder.delivery.Limit;
import org.bookholder.delivery.Profile;
import org.bookholder.delivery.ProfileForm;
import org.bookholder.problem.ProblemException;
import org.bookholder.settings.SettingsFile;
import org.bookholder.settings.SettingsText.Values;

/** Reads the delivery profile: the requirements for an exported film, as set by the user or by default. */
public final class DeliveryProfiles {
    private static final String WHAT = "the profile";

    private DeliveryProfiles() {}

    public static Profile usual(Environment here) throws ProblemException {
        Path file = here.delivery();
        return Files.exists(file)
                ? of(new SettingsFile(file, WHAT).read(ProfileForm.FORM), file, here)
                : ProfileForm.usual();
    }

    /** Reads the profile in a file that a person named. */
    public static Profile read(Path file, Environment here) throws ProblemException {
        return of(new SettingsFile(file, WHAT).readOnly(ProfileForm.FORM), file, here);
    }

    private static Profile of(Values<Limit> values, Path file, Environment here) throws ProblemException {
        here.warnings().leftOut(values.wrong());
        return ProfileForm.of(values, file.toString());
    }
}
