package org.bookholder.script.normalize;

import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** How English speakers say a run of letters: as a word, letter by letter ("USB"), or in parts ("JavaScript"). */
final class LetterForms {
    /** Short words that authors may write in capitals for stress; nobody spells them out. */
    private static final Set<String> STRESSED = Set.of("""
        all and any are as at be big but buy by can cut day did do end far few for get go got had has he her him his
        how if in is its let lot may me my new no nor not now of off old on one or our out own per put red run say
        see set she so ten the too top try two up use was way we who why yes yet you\
        """.split("\\s", -1));

    private static final Pattern PLURAL_LETTERS = Pattern.compile("([A-Z]{2,6})'?s");
    private static final Pattern CAPITALS = Pattern.compile("[A-Z]{2,8}");
    private static final Pattern SEAM = Pattern.compile("(?<=[a-z])(?=[A-Z])|(?<=[A-Z])(?=[A-Z][a-z])");
    private static final Pattern VOWEL = Pattern.compile("[aeiouyAEIOUY]");
    private static final Pattern CONSONANTS = Pattern.compile("[a-z&&[^aeiouy]]{2,5}");

    /** Letters that are also said in another way than by their names or as they look. */
    private static final Map<String, String[]> SAID_OTHERWISE = Map.ofEntries(
            Map.entry("SQL", new String[] {"s q l", "sequel"}),
            Map.entry("GIF", new String[] {"g i f", "gif", "jif"}),
            Map.entry("JPEG", new String[] {"jpeg", "j peg", "j p e g"}),
            Map.entry("JPG", new String[] {"j p g", "j peg", "jpeg"}),
            Map.entry("GUI", new String[] {"g u i", "gooey"}),
            Map.entry("TBD", new String[] {"t b d", "to be determined"}),
            Map.entry("FY", new String[] {"f y", "fiscal year"}),
            Map.entry("EST", new String[] {"e s t", "eastern", "eastern time", "eastern standard time"}),
            Map.entry("EDT", new String[] {"e d t", "eastern", "eastern time", "eastern daylight time"}),
            Map.entry("CST", new String[] {"c s t", "central", "central time", "central standard time"}),
            Map.entry("MST", new String[] {"m s t", "mountain", "mountain time", "mountain standard time"}),
            Map.entry("PST", new String[] {"p s t", "pacific", "pacific time", "pacific standard time"}),
            Map.entry("PDT", new String[] {"p d t", "pacific", "pacific time", "pacific daylight time"}),
            Map.entry("ET", new String[] {"e t", "eastern", "eastern time"}),
            Map.entry("CT", new String[] {"c t", "central", "central time"}),
            Map.entry("MT", new String[] {"m t", "mountain", "mountain time"}),
            Map.entry("PT", new String[] {"p t", "pacific", "pacific time"}),
            Map.entry("UTC", new String[] {"u t c", "universal time"}),
            Map.entry("BST", new String[] {"b s t", "british summer time"}),
            Map.entry("CET", new String[] {"c e t", "central european time"}),
            Map.entry("MPEG", new String[] {"m peg", "mpeg", "m p e g"}),
            Map.entry("PNG", new String[] {"p n g", "ping"}),
            Map.entry("TXT", new String[] {"text", "t x t", "txt"}),
            Map.entry("FAQ", new String[] {"f a q", "fack", "frequently asked questions"}),
            Map.entry("ASAP", new String[] {"a s a p", "a sap", "as soon as possible"}),
            Map.entry("FYI", new String[] {"f y i", "for your information"}),
            Map.entry("TBA", new String[] {"t b a", "to be announced"}),
            Map.entry("DIY", new String[] {"d i y", "do it yourself"}),
            Map.entry("OK", new String[] {"okay", "o k", "ok"}),
            Map.entry("WWI", new String[] {"world war one", "w w one"}),
            Map.entry("WWII", new String[] {"world war two", "w w two"}),
            Map.entry("GMT", new String[] {"g m t", "greenwich mean time"}),
            Map.entry("AM", new String[] {"a m", "am"}),
            Map.entry("PM", new String[] {"p m", "pm"}),
            Map.entry("BC", new String[] {"b c", "before christ"}));

    /** Those of them that are written in small letters, too. */
    private static final Set<String> SAID_IN_SMALL = Set.of(
            "est", "edt", "pst", "pdt", "cst", "mst", "gmt", "sql", "gif", "jpeg", "jpg", "mpeg", "png", "txt", "ok",
            "faq", "asap");

    /** The names of Greek letters, from alpha on, in the order of Unicode. */
    private static final String[] GREEK = ("alpha beta gamma delta epsilon zeta eta theta iota kappa lambda mu nu xi "
                    + "omicron pi rho sigma sigma tau upsilon phi chi psi omega")
            .split(" ", -1);

    private LetterForms() {}

    /** The ways to say {@code letters}, given in the case as written, with apostrophes inside if there are any. */
    static SpokenForms of(String letters) {
        String lower = Typography.word(letters);
        String bare = Typography.withoutMarks(lower);
        SpokenForms forms = SpokenForms.of(bare).or(lower);
        if (letters.length() == 1) {
            int greek = lower.isEmpty() ? -1 : lower.charAt(0) - '\u03b1';
            return greek >= 0 && greek < GREEK.length
                    ? SpokenForms.of(GREEK[greek]).or(forms)
                    : forms;
        }
        boolean small = SAID_IN_SMALL.contains(letters);
        String[] otherwise = SAID_OTHERWISE.get(small ? letters.toUpperCase(Locale.ROOT) : letters);
        if (otherwise != null) {
            return SpokenForms.of(otherwise).or(forms);
        }
        boolean capital = !lower.equals(letters);
        Matcher plural = PLURAL_LETTERS.matcher(letters);
        if (capital && plural.matches()) {
            String spelled = spell(plural.group(1));
            return SpokenForms.of(spelled + "'s", spelled + "s", lower, lower.replace("'", ""));
        }
        if (capital && CAPITALS.matcher(letters).matches()) {
            return capitals(letters, forms);
        }
        if (bare.length() > 2 && bare.charAt(1) == '\'' && (bare.charAt(0) == 'o' || bare.charAt(0) == 'd')) {
            forms = forms.or(bare.charAt(0) + " " + bare.substring(2));
        }
        String[] parts = capital ? SEAM.split(letters, -1) : new String[0];
        if (parts.length > 1 && parts.length < 6) {
            SpokenForms inParts = SpokenForms.SILENT;
            for (String part : parts) {
                inParts = inParts.then(of(part));
            }
            forms = forms.or(inParts);
        }
        return CONSONANTS.matcher(bare).matches() ? forms.or(spell(bare)) : forms;
    }

    private static SpokenForms capitals(String letters, SpokenForms word) {
        if (STRESSED.contains(Typography.lower(letters))) {
            return word.or(Initials.of(letters));
        }
        SpokenForms spelled = SpokenForms.of(spell(letters));
        boolean likeWord = letters.length() > 3 && VOWEL.matcher(letters).find();
        return (likeWord ? word.or(spelled) : spelled.or(word)).or(Initials.of(letters));
    }

    /** Spells letters one by one. */
    static String spell(String letters) {
        return Typography.lower(letters)
                .chars()
                .filter(c -> c != '\'')
                .mapToObj(Character::toString)
                .collect(Collectors.joining(" "));
    }
}
