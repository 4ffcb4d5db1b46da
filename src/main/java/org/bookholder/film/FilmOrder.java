package org.bookholder.film;

import java.nio.file.Path;
import java.util.Locale;
import java.util.MissingResourceException;
import java.util.Optional;
import org.bookholder.film.format.FilmFormat;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.script.model.Script;

/**
 * A film to be made.
 *
 * @param plan what it is made of
 * @param format what it is to be as a file
 * @param script the lesson
 * @param draft whether it is a draft: made quickly, with the numbers of lines burnt in
 * @param wanted the file's name; if it is taken the film gets the next one with a number
 * @param beginnings the folder in which its beginning can be seen while it is made, on the same disk; empty if nobody looks
 */
public record FilmOrder(
        FilmPlan plan, FilmFormat format, Script script, boolean draft, Path wanted, Optional<Path> beginnings) {
    /** The language of its captions, as MP4 names it; "und" if that is not known. */
    String language() {
        try {
            String code = Locale.forLanguageTag(script.settings().language()).getISO3Language();
            return code.isEmpty() ? "und" : code;
        } catch (MissingResourceException e) {
            return "und";
        }
    }
}
