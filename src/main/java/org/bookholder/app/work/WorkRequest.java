package org.bookholder.app.work;

import com.fasterxml.jackson.databind.JsonNode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.bookholder.problem.ProblemException;

/**
 * What a form of the page holds.
 *
 * @param form its fields by name
 * @param allowed turns the paths in it to files and folders, and refuses those that the page may not name
 */
public record WorkRequest(JsonNode form, Allowed allowed) {
    /** Says which files and folders the page may name. */
    @FunctionalInterface
    public interface Allowed {
        /**
         * The file or folder of a path.
         *
         * @throws ProblemException if there is none, or the page may not name it
         */
        Path path(String path) throws ProblemException;
    }

    /** A field; empty if it is not filled in. */
    public Optional<String> text(String field) {
        return Optional.of(form.path(field).asText("").strip()).filter(text -> !text.isEmpty());
    }

    /** A field that is on or off. */
    public boolean on(String field) {
        return form.path(field).asBoolean(false);
    }

    /**
     * A file or folder.
     *
     * @param what what it is, for people: "a session"
     * @throws ProblemException if none is chosen, or the page may not name it
     */
    public Path path(String field, String what) throws ProblemException {
        return allowed.path(text(field).orElseThrow(() -> nothing(what)));
    }

    /** A file or folder that need not be chosen. */
    public Optional<Path> optionalPath(String field) throws ProblemException {
        Optional<String> text = text(field);
        return text.isEmpty() ? Optional.empty() : Optional.of(allowed.path(text.get()));
    }

    /**
     * Several files, one or more.
     *
     * @param what what they are, for people: "a camera file"
     */
    public List<Path> paths(String field, String what) throws ProblemException {
        List<Path> paths = new ArrayList<>();
        for (JsonNode each : form.path(field)) {
            paths.add(allowed.path(each.asText()));
        }
        if (paths.isEmpty()) {
            throw nothing(what);
        }
        return paths;
    }

    private static ProblemException nothing(String what) {
        return new ProblemException("nothing is chosen", "the form", "choose " + what + " first");
    }
}
