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
                    + "sound effects?|cut(?: back)? to|fade (?:in|out|to black)|dissolve to|duration|running time|word count|file ?name)"
                    + NUMBER + ":(?: .*)?");

    /** Cues in capitals. */
    private static final Pattern SHOUTED = Pattern.compile(
            "(?:VIDEO|AUDIO|(?:ON[- ])?SCREEN(?:CAST|SHOT)?|SUPER|TITLE(?: CARD)?|SHOT|SCENE|ACTION|DEMO|"
                    + "GRAPHICS?|TRANSITION|ANIMATION|MUSIC|CAMERA(?: ANGLE)?|SOUND|FX|ZOOM(?: IN| OUT)?|PAN|INSERT|PROPS?|LOCATION|SET|WARDROBE)"
                    + NUMBER + ":(?: .*)?");

    private static final Pattern SOUND = Pattern.compile("(?:MUSIC|SFX)(?: [^.!?]*)?\\.?");
    private static final Pattern CHANGE =
            Pattern.compile("(?:(?:SMASH |JUMP )?CUT TO(?: BLACK)?|FADE (?:IN|OUT|TO BLACK)|DISSOLVE(?: TO)?)[.:]?");
    private static final Pattern PLACE = Pattern.compile("(?:INT|EXT|INT\\./EXT|I/E)\\. [\\p{Lu}\\d][^\\p{Ll}]*");
    private static final Pattern PART = Pattern.compile("(?i)(?:slide|scene|shot) #?\\d{1,3}(?:\\.?| ?[:-](?: .*)?)");

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
