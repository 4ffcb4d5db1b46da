package org.bookholder.app.delivery;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.app.environment.Environment;
import org.bookholder.delivery.Limit;
import org.bookholder.delivery.Profile;
import org.bookholder.delivery.ProfileForm;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.DiskProblems;
import org.bookholder.files.PrivateFiles;
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

    /**
     * Writes a profile into a file that is not there yet. A profile checks only what it sets, so the first change needs all that was
     * checked before.
     *
     * @param access who may read the file
     */
    public static void begin(Path file, Profile profile, Access access) throws ProblemException {
        if (Files.exists(file)) {
            return;
        }
        try {
            if (access == Access.OWNER) {
                PrivateFiles.createFolderFor(file);
            }
            new AtomicFiles(access).write(file, String.join("\n", ProfileForm.lines(profile)) + "\n");
        } catch (IOException e) {
            throw DiskProblems.writing(file, e);
        }
    }

    /** Changes one setting of a profile's file; an empty one is not checked any more. */
    public static void set(Path file, String name, String value) throws ProblemException {
        ProfileForm.set(new SettingsFile(file, WHAT), name, value.strip());
    }

    private static Profile of(Values<Limit> values, Path file, Environment here) throws ProblemException {
        here.warnings().leftOut(values.wrong());
        return ProfileForm.of(values, file.toString());
    }
}
