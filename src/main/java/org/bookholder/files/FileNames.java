package org.bookholder.files;

import java.nio.file.Path;
import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Pattern;

/** Parts of files' names. */
public final class FileNames {
    /** The signs of a plain name, as a part of a regular expression's class. */
    public static final String LETTERS =
            "A-Za-z0-9_\\-[\\p{L}\\p{M}\\p{N}&&[^\\p{IsLatin}\\p{InCombiningDiacriticalMarks}]]";

    private static final int MOST_CHARACTERS = 40;

    /** Names of devices, which Windows takes for no file, whatever their ending. */
    private static final Pattern DEVICE = Pattern.compile("con|prn|aux|nul|(?:com|lpt)[0-9\u00b9\u00b2\u00b3]");

    private FileNames() {}

    /** A file's name without its ending; a dot at its very beginning begins no ending. */
    public static String stem(Path file) {
        String name = String.valueOf(file.getFileName());
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }

    /**
     * The name of a file or folder for something with a title: its letters and digits, of all scripts, in lower case, with hyphens
     * for the rest. Every file system takes it.
     */
    public static String ofTitle(String title) {
        String plain = lettersOf(Normalizer.normalize(title, Normalizer.Form.NFC))
                .toLowerCase(Locale.ROOT)
                .replaceAll("[^\\p{L}\\p{M}\\p{N}]+", "-");
        int count = plain.codePointCount(0, plain.length());
        String cut = plain.substring(0, plain.offsetByCodePoints(0, Math.min(count, MOST_CHARACTERS)))
                .replaceAll("^-+|-+$", "");
        if (DEVICE.matcher(cut).matches()) {
            return cut + "-lesson";
        }
        return cut.isEmpty() ? "lesson" : cut;
    }

    /** Without the marks that belong to no letter: those that make a picture of a sign, and any that stand alone. */
    private static String lettersOf(String text) {
        return text.replaceAll("[\\x{FE00}-\\x{FE0F}\\x{20D0}-\\x{20FF}]", "")
                .replaceAll("(?<![\\p{L}\\p{M}])\\p{M}+", "");
    }

    /**
     * A text reduced to letters, digits, - and _, with hyphens for the rest; Latin letters lose their accents, those of other
     * scripts stay as they are. May be empty.
     */
    public static String plain(String text) {
        String bare = Normalizer.normalize(text, Normalizer.Form.NFD).replaceAll("(\\p{IsLatin})\\p{M}+", "$1");
        return lettersOf(Normalizer.normalize(bare, Normalizer.Form.NFC))
                .replaceAll("[^" + LETTERS + "]+", "-")
                .replaceAll("^-+|-+$", "");
    }
}
