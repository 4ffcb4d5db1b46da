package org.bookholder.script.source;

import java.util.regex.Pattern;

/**
 * Knows lines of a script that are meant for those who shoot and cut: "VISUAL: the open box", "SFX: a bell", "Slide 3: Tools",
 * "Duration: 40 seconds", "INT. WORKSHOP - DAY", "Page 2"; and lines above a script about its making, "WRITER: ...". They are shown and not spoken. Which words begin them is common practice. Words that
 * people also say count in capitals only: "DEMO: turn it" is a cue, "Demo: turn it" is not.
 */
final class ProductionCues {
    private static final String NUMBER = "(?: ?#?\\d{1,3})?";

    /** Cues that nobody says, in any case. */
    private static final Pattern NAMED =
            Pattern.compile("(?i)(?:sfx|gfx|vfx|b[- ]?roll|visuals?|on[- ]screen text|lower[- ]third|"
                    + "sound effects?|cut(?: back)? to|fade (?:in|out|to black)|dissolve to|word count|file ?name)"
                    + NUMBER + ":(?: .*)?|(?i)(?:duration|running time): ?[\\d~].*");

    /** Cues in capitals. */
    private static final Pattern SHOUTED =
            Pattern.compile("(?:VIDEO|(?:ON[- ])?SCREEN(?:CAST|SHOT)?|SUPER|TITLE(?: CARD)?|SHOT|SCENE|ACTION|DEMO|"
                    + "GRAPHICS?|TRANSITION|ANIMATION|MUSIC|CAMERA(?: ANGLE)?|FX|ZOOM(?: IN| OUT)?|PAN|INSERT|PROPS?|LOCATION|SET|WARDROBE)"
                    + NUMBER + ":(?: .*)?");

    /** What stands above a script about its making: a few words behind a name. In the text such lines are spoken. */
    private static final Pattern SHEET = Pattern.compile(
            "(?i)(?:(?:program(?:me)?|production|episode|project|job|script) (?:number|no\\.?|title|name|id)|running time|trt|length|"
                    + "writer|written by|author|director|directed by|producer|produced by|editor|client|sponsor|draft|revision|"
                    + "revised|date|target audience|video title):(?: ?\\S+(?: \\S+){0,7})?"
                    + "|(?-i:TITLE|SUBJECT|SERIES|EPISODE|PROGRAMM?E?|VERSION|STATUS|AUDIENCE|OBJECTIVES?|FORMAT|TALENT): ?\\S+(?: \\S+){0,7}");

    /** The foot or head of a page. */
    private static final Pattern PAGE = Pattern.compile(
            "(?i:page|pg\\.?) \\d{1,3}(?: ?(?:of|/) ?\\d{1,3})?|[-\u2013] ?\\d{1,3} ?[-\u2013]|MORE|CONTINUED|END OF SCRIPT|#{3}|-30-");

    private static final Pattern SOUND = Pattern.compile("(?:MUSIC|SFX)(?: (?:(?i:swells?|fades?|begins?|"
            + "ends?|starts?|stops?|plays?|cuts?|in|out|up|down|under)\\b)[^.!?]*)?\\.?");
    private static final Pattern CHANGE =
            Pattern.compile("(?:(?:SMASH |JUMP )?CUT TO(?: BLACK)?|FADE (?:IN|OUT|TO BLACK)|DISSOLVE(?: TO)?)[.:]?");
    private static final Pattern PLACE = Pattern.compile("(?:INT|EXT|INT\\./EXT|I/E)\\. [\\p{Lu}\\d][^\\p{Ll}]*");
    private static final Pattern PART = Pattern.compile(
            "(?:[Ss]lide|SLIDE|[Ss]cene|SCENE|[Ss]hot|SHOT) #?\\d{1,3} ?[:-](?: .*)?|(?:Slide|SLIDE|Scene|SCENE|Shot|SHOT) #?\\d{1,3}\\.?");

    private ProductionCues() {}

    /** Whether a source line, in plain typography and without marks, is such a cue as a whole. */
    static boolean isCue(String plain) {
        return NAMED.matcher(plain).matches()
                || SHOUTED.matcher(plain).matches()
                || SOUND.matcher(plain).matches()
                || CHANGE.matcher(plain).matches()
                || PLACE.matcher(plain).matches()
                || PART.matcher(plain).matches()
                || PAGE.matcher(plain).matches();
    }

    /** Whether a source line tells of a script's making, if it stands above the script. */
    static boolean isSheet(String plain) {
        return SHEET.matcher(plain).matches();
    }
}
