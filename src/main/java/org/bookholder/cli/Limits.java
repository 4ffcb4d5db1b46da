package org.bookholder.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.bookholder.fatigue.FatigueLimits;
import org.bookholder.fatigue.LimitsText;
import org.bookholder.problem.ProblemException;

/** When a break is advised: as the user has set it, by default as the sources say. */
final class Limits {
    private Limits() {}

    static FatigueLimits of(Surroundings here) throws ProblemException {
        Path file = here.limits();
        if (Files.notExists(file)) {
            return FatigueLimits.defaults();
        }
        try {
            return LimitsText.parse(Files.readString(file), file.toString());
        } catch (CharacterCodingException e) {
            throw new ProblemException("this is not UTF-8 text", file.toString(), "save it as UTF-8", e);
        } catch (IOException e) {
            throw new ProblemException(
                    "the limits cannot be read", file.toString(), "make it a file that you may read, or remove it", e);
        }
    }
}
