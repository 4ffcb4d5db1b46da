package org.bookholder.script.normalize;

import java.util.HashMap;
import java.util.Map;

/** The abbreviations of the states of the USA behind a comma, by the US Postal Service's Publication 28, appendix B. */
final class Places {
    private static final String STATES = """
        AL alabama|AK alaska|AZ arizona|AR arkansas|CA california|CO colorado|CT connecticut|DE delaware|DC d c|FL florida
        |GA georgia|HI hawaii|ID idaho|IL illinois|IN indiana|IA iowa|KS kansas|KY kentucky|LA louisiana|ME maine
        |MD maryland|MA massachusetts|MI michigan|MN minnesota|MS mississippi|MO missouri|MT montana|NE nebraska
        |NV nevada|NH new hampshire|NJ new jersey|NM new mexico|NY new york|NC north carolina|ND north dakota|OH ohio
        |OK oklahoma|OR oregon|PA pennsylvania|RI rhode island|SC south carolina|SD south dakota|TN tennessee|TX texas
        |UT utah|VT vermont|VA virginia|WA washington|WV west virginia|WI wisconsin|WY wyoming\
        """;

    private static final Map<String, String> NAMES = read();

    private Places() {}

    /** The state that two capitals behind a place and a comma may stand for; none if they stand for none. */
    static SpokenForms state(String text, int from, String letters) {
        boolean behindPlace = from > 2 && text.startsWith(", ", from - 2) && Character.isLetter(text.charAt(from - 3));
        String name = behindPlace ? NAMES.get(letters) : null;
        return name == null ? SpokenForms.NONE : SpokenForms.of(name);
    }

    private static Map<String, String> read() {
        Map<String, String> names = new HashMap<>();
        for (String row : STATES.replace("\n", "").split("\\|", -1)) {
            names.put(row.strip().substring(0, 2), row.strip().substring(3));
        }
        return Map.copyOf(names);
    }
}
