package org.bookholder.app.film;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.bookholder.course.Text;
import org.bookholder.cutlist.TakeSources;
import org.bookholder.film.plan.FilmClip;
import org.bookholder.film.plan.FilmPlan;
import org.bookholder.film.plan.Heard;
import org.bookholder.film.plan.Track;
import org.bookholder.footage.Channels;
import org.bookholder.wording.TakeSourcesText;

/**
 * From which file a take is heard in a film. A take that is heard from several files has one for each.
 *
 * @param session the session's number, from 0
 * @param take the take's number
 * @param file the file
 * @param channels the channels that are heard; empty for those in which a voice is heard best
 * @param said the file and the channels in words, with the reason where it is the first choice
 */
record HeardTake(int session, int take, Path file, Optional<Channels> channels, String said) {
    /** All of a film, in its order. */
    static List<HeardTake> of(FilmPlan plan, List<FilmFootage.Found> found) {
        List<HeardTake> all = new ArrayList<>();
        for (FilmClip clip : plan.clips()) {
            if (clip.heard().isPresent()) {
                HeardTake heard = of(clip, clip.heard().get(), found.get(clip.session()));
                if (!all.contains(heard)) {
                    all.add(heard);
                }
            }
        }
        return all;
    }

    private static HeardTake of(FilmClip clip, Heard heard, FilmFootage.Found found) {
        String said = found.takes().stream()
                .filter(take -> take.take().number() == clip.take())
                .findFirst()
                .map(take -> said(take, heard))
                .orElse(FilmFootage.name(heard.file(), heard.kind()));
        return new HeardTake(clip.session(), clip.take(), heard.file(), heard.channels(), said);
    }

    private static String said(TakeSources take, Heard heard) {
        List<TakeSources.Source> sounds = take.sounds();
        for (int i = 0; i < sounds.size(); i++) {
            boolean same = sounds.get(i)
                    .footage()
                    .map(placed -> placed.footage().file().equals(heard.file()))
                    .orElse(heard.kind() == Track.Kind.TAKE);
            if (same) {
                return i == 0 ? TakeSourcesText.sound(take) : TakeSourcesText.named(sounds.get(i));
            }
        }
        return FilmFootage.name(heard.file(), heard.kind());
    }

    /**
     * One line for each file and reason, with the takes that are heard from it.
     *
     * @param sessions the folders of the film's sessions
     */
    static List<String> lines(List<HeardTake> all, List<Path> sessions) {
        Map<String, List<Integer>> takes = new LinkedHashMap<>();
        Map<String, HeardTake> firsts = new LinkedHashMap<>();
        for (HeardTake one : all) {
            String key = one.session + "\0" + one.said;
            firsts.putIfAbsent(key, one);
            takes.computeIfAbsent(key, none -> new ArrayList<>()).add(one.take);
        }
        List<String> lines = new ArrayList<>();
        firsts.forEach((key, first) -> {
            List<Integer> numbers =
                    takes.getOrDefault(key, List.of()).stream().sorted().toList();
            String where = sessions.size() > 1
                    ? " in session " + sessions.get(first.session).getFileName()
                    : "";
            lines.add("Sound of " + (numbers.size() == 1 ? "take " : "takes ") + String.join(", ", Text.ranges(numbers))
                    + where + ": " + first.said);
        });
        return lines;
    }
}
