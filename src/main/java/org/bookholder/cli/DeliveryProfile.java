package org.bookholder.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.delivery.Profile;
import org.bookholder.delivery.ProfileText;
import org.bookholder.problem.ProblemException;

/** What an exported film has to be: as the user has set it, by default the program's own. */
final class DeliveryProfile {
    private DeliveryProfile() {}

    static Profile usual(Surroundings here) throws ProblemException {
        return Files.exists(here.delivery()) ? read(here.delivery()) : ProfileText.usual();
    }

    static Profile read(Path file) throws ProblemException {
        try {
            return ProfileText.parse(Files.readString(file), file.toString());
        } catch (CharacterCodingException e) {
            throw new ProblemException("this is not UTF-8 text", file.toString(), "save it as UTF-8", e);
        } catch (IOException e) {
            throw new ProblemException(
                    "the profile cannot be read",
                    file.toString(),
                    "name a file that is there and that you may read",
                    e);
        }
    }
}
