package org.bookholder.app.home;

/**
 * What a person can do from the page: each of these is what one command does, too. {@link #where} is the address of the place
 * on the page, below the home's own; {@code COURSE} stands for the course that is shown.
 */
public enum HomeService {
    READ("read", "Read", "Follows you while you read a lesson to the camera, and lists the lines to pick up.", "./"),
    SCRIPT(
            "script",
            "Scripts",
            "Shows a script as it will be read while you write it: length, numbers, unknown words, what is left out.",
            "?view=scripts"),
    DEMO("demo", "Try the demo lesson", "Plays a recorded reading into the reading window: watch it follow.", "./"),
    COURSE(
            "course",
            "Board",
            "Shows where each lesson stands, and what is missing before it can go out.",
            "course/COURSE/?view=board"),
    PLAN("plan", "Plan and dates", "Fits the lessons that are left into your recording days.", "?view=plan"),
    LISTS("lists", "Lists", "Shows what to shoot, what to set up, and what belongs to a launch.", "?view=lists"),
    SUMMARY(
            "summary",
            "Summary",
            "Tells a client or partner on one page how far the course is; nothing is sent.",
            "?view=papers"),
    QUOTATION(
            "quotation",
            "Quotation",
            "Works out hours and a price for a course that you make for somebody else.",
            "?view=papers"),
    VERSIONS(
            "versions",
            "Versions of a lesson",
            "Shows the texts, recordings and films of a lesson, and what changed from one to the next.",
            "?view=papers"),
    SESSIONS("sessions", "Sessions", "Lists what you have recorded, lesson by lesson.", "course/COURSE/?view=sessions"),
    DESK(
            "desk",
            "Hear and decide",
            "Lets you hear each attempt of a line and decide what becomes of it.",
            "course/COURSE/?view=sessions"),
    NOTES("notes", "Pickups", "Lists the lines to record again, of all sessions.", "course/COURSE/?view=pickups"),
    HAND_OFF(
            "handoff",
            "Hand-off",
            "Writes what the editor needs: cut list, captions, pickups, log, sound.",
            "?view=handoff"),
    FILM(
            "film",
            "The film",
            "Makes the film of a lesson from the matched camera: a quick draft, or one to go out.",
            "?view=film"),
    MATCH(
            "match",
            "Match camera files",
            "Finds by their sound where camera and recorder files lie in a session, so that the cut list points into"
                    + " them.",
            "?view=match"),
    LOG("log", "Log a finished shoot", "Makes a session of films that were shot without Bookholder.", "?view=log"),
    CHECK(
            "check",
            "Check exports",
            "Checks finished films before they go out: file, picture, sound, and the words against the script.",
            "?view=check"),
    PACK(
            "pack",
            "Pack a session",
            "Packs a session with its sound into one file, to keep or to pass on.",
            "?view=pack"),
    UNPACK("unpack", "Unpack a session", "Puts a packed session back among yours.", "?view=unpack"),
    REPAIR("repair", "Repair a session", "Saves what can be read of a damaged session.", "?view=repair"),
    TIME(
            "time",
            "Running times",
            "Says how long your lessons will run, and what in them is hard to say.",
            "?view=time"),
    DAY("day", "The day", "Shows what you read today, your rests, and when to rest next.", "?view=day"),
    SOUND(
            "sound",
            "Sound check",
            "Measures your room and your voice before you read, and says what to try.",
            "?view=before-room"),
    LIMITS("limits", "Break reminders", "Sets when you are reminded to rest.", "?view=settings");

    private final String command;
    private final String title;
    private final String goodFor;
    private final String where;

    HomeService(String command, String title, String goodFor, String where) {
        this.command = command;
        this.title = title;
        this.goodFor = goodFor;
        this.where = where;
    }

    /** The command that does the same. */
    public String command() {
        return command;
    }

    /** What the page calls it. */
    public String title() {
        return title;
    }

    /** What it is good for, one sentence. */
    String goodFor() {
        return goodFor;
    }

    /** The address of its place on the page, as above. */
    public String where() {
        return where;
    }
}
