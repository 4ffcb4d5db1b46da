package org.bookholder.settings;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import org.bookholder.files.Access;
import org.bookholder.files.AtomicFiles;
import org.bookholder.files.PrivateFiles;
import org.bookholder.problem.ProblemException;

/**
 * A file of settings that people edit.
 *
 * @param path the file; need not exist
 * @param what what it holds, for messages, for example "the limits"
 */
public record SettingsFile(Path path, String what) {
    /** Far more than all settings with their comments. */
    static final long MOST_BYTES = 1 << 20;

    /**
     * Reads one of the program's own files, and updates lines in the form of earlier versions. If there is no file,
     * nothing is set.
     *
     * @throws ProblemException if the file exists and cannot be read
     */
    public <V> SettingsText.Values<V> read(Form<V> form) throws ProblemException {
        if (!Files.exists(path)) {
            return SettingsText.of("", path.toString()).read(form);
        }
        String found = load(false);
        SettingsText text = SettingsText.of(found, path.toString());
        SettingsText renewed = text.renewed(form);
        if (!renewed.text().equals(text.text()) && !found.contains("\uFFFD")) {
            try {
                new AtomicFiles(Access.OWNER).write(path, renewed.text());
            } catch (IOException e) {
                // The values have been read; the old lines can be read again next time.
            }
        }
        return text.read(form);
    }

    /**
     * Reads a file that a person named, without changing it.
     *
     * @throws ProblemException if the file cannot be read
     */
    public <V> SettingsText.Values<V> readOnly(Form<V> form) throws ProblemException {
        return SettingsText.of(load(false), path.toString()).read(form);
    }

    /**
     * Sets one value, if it can be understood.
     *
     * @throws ProblemException if it can't, or the file cannot be read or written; the file stays as it was then
     */
    public void set(Form<?> form, String name, String value) throws ProblemException {
        form.read(new Setting(name, value, path.toString()));
        change(form, Map.of(name, value), Set.of());
    }

    /**
     * Changes some values and leaves everything else in the file as it is, including comments.
     *
     * @param changed new values by name
     * @param gone names to remove
     * @throws ProblemException if the file cannot be read or written
     */
    public void change(Form<?> form, Map<String, String> changed, Set<String> gone) throws ProblemException {
        SettingsText text = SettingsText.of(Files.exists(path) ? load(true) : "", path.toString());
        for (String name : gone) {
            text = text.without(name);
        }
        for (Map.Entry<String, String> value : changed.entrySet()) {
            text = text.with(form, value.getKey(), value.getValue());
        }
        try {
            PrivateFiles.createFolderFor(path);
            new AtomicFiles(Access.OWNER).write(path, text.text());
        } catch (IOException e) {
            throw new ProblemException(
                    what + " cannot be kept", path.toString(), "see that the folder can be written to", e);
        }
    }

    /**
     * The text. Bytes that are not UTF-8 become U+FFFD, so that only their line is lost; if {@code strict}, they are a
     * problem.
     */
    private String load(boolean strict) throws ProblemException {
        try {
            if (Files.size(path) > MOST_BYTES) {
                throw new ProblemException(
                        what + " cannot be read (over 1 MB)",
                        path.toString(),
                        "make it a file of settings, or remove it");
            }
            return strict ? Files.readString(path) : new String(Files.readAllBytes(path), StandardCharsets.UTF_8);
        } catch (CharacterCodingException e) {
            throw new ProblemException("this is not UTF-8 text", path.toString(), "save it as UTF-8", e);
        } catch (IOException e) {
            throw new ProblemException(
                    what + " cannot be read", path.toString(), "make it a file that you may read, or remove it", e);
        }
    }
}
