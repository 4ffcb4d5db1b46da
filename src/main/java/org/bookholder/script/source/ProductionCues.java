package org.bookholder.script.source;

import java.util.regex.Pattern;

/**
 * Knows lines of a script that are meant for those who shoot and cut: "VISUAL: the open box", "SFX: a bell", "Slide 3: Tools",
 * "Duration: 40 seconds", "INT. WORKSHOP - DAY". They are shown and not spoken. Which words begin them is common practice. Words that
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
                || PART.matcher(plain).matches();
    }
}
