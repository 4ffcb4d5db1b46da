package org.bookholder.app.home;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.List;
import java.util.Map;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.script.KnownWords;
import org.bookholder.app.script.LessonTexts;
import org.bookholder.app.sound.MicrophoneLevels;
import org.bookholder.app.sound.SoundChecks;
import org.bookholder.runtime.stage.Stage;

/**
 * The rooms of the page that answer questions of their own: scripts, a new course, and what should be right before reading.
 *
 * @param words the recogniser's vocabulary
 * @param scripts the scripts of the course that is shown
 * @param before what should be right before a lesson is read
 * @param displays the monitors
 * @param dialogs the system's own dialogs for files
 * @param questions passes on what is asked
 * @param stages what works for them
 */
record HomeRooms(
        KnownWords words,
        ScriptRoom scripts,
        BeforeRoom before,
        DisplayList displays,
        FileDialogs dialogs,
        HomeQuestions questions,
        List<Stage> stages)
        implements AutoCloseable {
    static HomeRooms of(
            Environment here,
            HomeCourses courses,
            HomeReading reading,
            HomeSettings settings,
            AllowedPaths paths,
            KeptOrders orders,
            HomeQuestions.Work work) {
        KnownWords words = new KnownWords(here);
        ScriptRoom scripts = new ScriptRoom(here, courses, new LessonTexts(here), words);
        DisplayList displays = new DisplayList(here);
        SoundChecks checks = new SoundChecks(here);
        MicrophoneLevels levels = new MicrophoneLevels(
                here, () -> reading.standing().goesOn() || checks.status().goesOn());
        BeforeRoom before = new BeforeRoom(here, reading, settings, levels, checks, displays);
        reading.letGoFirst(before::beforeReading, courses::letGo);
        FileDialogs dialogs = new FileDialogs(
                here.equipment(), paths, () -> reading.standing().goesOn());
        HomeQuestions questions = new HomeQuestions(
                courses,
                scripts,
                new ImportRoom(courses, paths, scripts),
                new PlanRoom(here, courses, orders),
                before,
                new ListsRoom(here, courses),
                new PapersRoom(here, courses),
                new SettingsRoom(here, courses),
                new FilmRoom(here, courses, paths),
                new MatchRoom(here, courses, paths),
                dialogs,
                work);
        return new HomeRooms(words, scripts, before, displays, dialogs, questions, List.of(levels, checks, dialogs));
    }

    /** While a lesson is read nothing that it needs is kept here. */
    void whileReading(boolean reading) {
        scripts.whileReading(reading);
    }

    /** What the page is told of them, by the names of its parts. */
    Map<String, JsonNode> parts() {
        return before.parts();
    }

    @Override
    public void close() {
        words.close();
    }
}
