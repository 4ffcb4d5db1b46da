package org.bookholder.script.normalize;

import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Abbreviations: "Dr.", "e.g.", "vs", "U.S.", "w/o", "Paris, TX". */
final class AbbreviationRule implements NormalizationRule {
    /** Said as written here, with or without the full stop. */
    private static final Map<String, String[]> ALWAYS = table("""
        mr=mister
        mrs=missus;misses;mrs
        ms=miss;ms
        messrs=messers
        dr=doctor
        prof=professor
        vs=versus
        etc=et cetera;etcetera
        e.g=for example;e g;for instance
        eg=for example;e g
        i.e=that is;i e
        ie=that is;i e
        a.k.a=also known as;a k a
        aka=also known as;a k a
        approx=approximately;approx;about;roughly
        ph.d=p h d
        phd=p h d
        a.m=a m;am
        p.m=p m;pm
        cf=compare;c f
        viz=namely
        w/=with
        w/o=without
        b/c=because
        c/o=care of
        p.a=per annum;a year;p a
        incl=including;included;inclusive of;inclusive
        sq=square
        hwy=highway
        blvd=boulevard
        pkwy=parkway
        govt=government
        qty=quantity
        excl=excluding;exclusive of;not including
        """);

    /** Said as written here only with the full stop. */
    private static final Map<String, String[]> DOTTED = table("""
        ave=avenue
        ln=lane
        ct=court
        pl=place
        cir=circle
        ter=terrace
        apt=apartment
        ste=suite
        bldg=building
        fl=floor
        rm=room
        avg=average
        std=standard
        misc=miscellaneous
        esp=especially
        assn=association
        assoc=association;associates
        univ=university
        intl=international
        natl=national
        ctr=center
        pkg=package
        doz=dozen
        ea=each
        yr=year
        yrs=years
        mo=month
        mos=months
        wk=week
        wks=weeks
        hr=hour
        hrs=hours
        mins=minutes
        secs=seconds
        lb=pound
        lbs=pounds
        oz=ounces;ounce
        tbsp=tablespoon;tablespoons
        tsp=teaspoon;teaspoons
        sat=saturday
        sun=sunday
        rd=road
        mt=mount
        ft=fort;foot;feet
        jr=junior
        sr=senior
        inc=incorporated;inc
        ltd=limited
        co=company
        corp=corporation
        bros=brothers
        dept=department
        est=established;estimated;e s t;eastern;eastern time
        gen=general
        gov=governor
        capt=captain
        lt=lieutenant
        sgt=sergeant
        col=colonel
        rev=reverend
        hon=honorable
        sen=senator
        rep=representative
        pres=president
        tel=telephone
        ext=extension
        min=minimum;minute;minutes;minimum of
        max=maximum;maximum of
        temp=temperature
        mon=monday
        tue=tuesday
        tues=tuesday
        wed=wednesday
        thu=thursday
        thurs=thursday
        fri=friday
        jan=january
        feb=february
        mar=march
        apr=april
        jun=june
        jul=july
        aug=august
        sep=september
        sept=september
        oct=october
        nov=november
        dec=december
        """);

    /** With a full stop behind them these may be words at the end of a sentence, too, as in "out in the sun". */
    private static final Set<String> WORDS = Set.of("sat", "sun", "wed", "rep", "max", "min", "temp");

    /** Said as written here only with the full stop and before a number. */
    private static final Map<String, String[]> BEFORE_NUMBER = table("""
        p=page
        no=number
        nos=numbers
        pt=part
        bk=book
        ex=example;exercise
        app=appendix
        para=paragraph
        pp=pages
        ch=chapter
        fig=figure
        figs=figures
        chs=chapters
        vols=volumes
        vol=volume
        sec=section
        art=article
        eq=equation
        ed=edition
        par=paragraph
        ver=version
        v=version
        ca=circa;about;around
        c=circa;about;around
        """);

    /** Said as written here behind an ordinal number: "the 19th c.". */
    private static final Map<String, String[]> CENTURY = table("""
        c=century
        cent=century
        ed=edition
        """);

    private static final Pattern BEHIND_ORDINAL = Pattern.compile("\\d(?:st|nd|rd|th)\\s$");

    /** "St.", a saint or a street. */
    private static final String SAINT = "st";

    /** "Dr.", a doctor or a drive. */
    private static final String DOCTOR = "dr";

    private static final Pattern WORD = Pattern.compile("([A-Za-z]{1,8}(?:\\.[A-Za-z]{1,3}){0,4})(\\.?)" + END);
    private static final Pattern ROMAN = Pattern.compile("[IVX]{1,6}\\b");
    private static final Pattern WITH_SLASH = Pattern.compile("(w/o|w/|b/c|c/o)(?=\\s|$)");
    private static final Pattern DOTTED_LETTERS = Pattern.compile("((?:[A-Za-z]\\.){2,6}[A-Za-z]?)('?s)?(?![A-Za-z])");

    /** Whether a word in small letters may be an abbreviation, with a full stop behind it or without. */
    static boolean mayBe(String word) {
        return ALWAYS.containsKey(word)
                || DOTTED.containsKey(word)
                || BEFORE_NUMBER.containsKey(word)
                || word.equals(SAINT)
                || word.equals(DOCTOR);
    }

    @Override
    public @Nullable SpokenSpan at(String text, int from, int to) {
        Matcher slash = NormalizationRule.match(WITH_SLASH, text, from, to);
        if (slash != null) {
            return new SpokenSpan(
                    slash.end(), SpokenForms.of(ALWAYS.getOrDefault(slash.group(1), new String[] {"with"})));
        }
        Matcher word = NormalizationRule.match(WORD, text, from, to);
        if (word != null) {
            SpokenForms named = named(word, text, from);
            SpokenForms forms = named.isEmpty() ? word(word, text, to) : named;
            if (!forms.isEmpty()) {
                return new SpokenSpan(word.end(), forms);
            }
        }
        Matcher dotted = NormalizationRule.match(DOTTED_LETTERS, text, from, to);
        return dotted == null || !NormalizationRule.endsAt(text, dotted.end())
                ? null
                : new SpokenSpan(dotted.end(), dottedLetters(dotted));
    }

    /** States behind a place, and weekdays and months without a full stop, which may be other words as well. */
    private static SpokenForms named(Matcher word, String text, int from) {
        String letters = word.group(1);
        SpokenForms state = Places.state(text, from, letters);
        if (!state.isEmpty()) {
            return LetterForms.of(letters).or(state);
        }
        String full = word.group(2).isEmpty() ? NamedRangeRule.shortened(letters) : "";
        if (full.isEmpty()) {
            return SpokenForms.NONE;
        }
        int next = word.end() + 1;
        boolean number = next < text.length() && Character.isDigit(text.charAt(next));
        SpokenForms said = SpokenForms.of(full);
        return number
                ? said.or(LetterForms.of(letters))
                : LetterForms.of(letters).or(said);
    }

    /** Reads initials such as "U.S.", whatever follows them. */
    static @Nullable SpokenSpan dottedLettersAt(String text, int from, int to) {
        Matcher dotted = NormalizationRule.match(DOTTED_LETTERS, text, from, to);
        return dotted == null ? null : new SpokenSpan(dotted.end(), dottedLetters(dotted));
    }

    private static SpokenForms dottedLetters(Matcher m) {
        String letters = m.group(1).replace(".", "");
        String suffix = m.group(2) == null ? "" : m.group(2);
        SpokenForms forms = SpokenForms.of(LetterForms.spell(letters) + suffix);
        if (letters.length() > 2) {
            forms = forms.or(Typography.lower(letters) + suffix);
        }
        return suffix.equals("s")
                ? SpokenForms.of(LetterForms.spell(letters) + "'s").or(forms)
                : forms;
    }

    private static SpokenForms word(Matcher m, String text, int to) {
        String rest = text.substring(m.start(), to);
        boolean behindOrdinal = BEHIND_ORDINAL
                .matcher(text.substring(Math.max(0, m.start() - 6), m.start()))
                .find();
        String key = Typography.lower(m.group(1));
        boolean dot = !m.group(2).isEmpty();
        int next = m.end() - m.start() + 1;
        boolean capital = next < rest.length() && Character.isUpperCase(rest.charAt(next));
        if (dot && key.equals(SAINT)) {
            return capital ? SpokenForms.of("saint", "street") : SpokenForms.of("street", "saint");
        }
        if (dot && key.equals(DOCTOR)) {
            return capital ? SpokenForms.of("doctor", "drive") : SpokenForms.of("drive", "doctor");
        }
        String[] said = dot && behindOrdinal ? CENTURY.get(key) : null;
        said = said == null ? ALWAYS.get(key) : said;
        if (said == null && dot) {
            said = DOTTED.get(key);
        }
        if (said == null && dot && BEFORE_NUMBER.containsKey(key) && isNumber(rest, next)) {
            said = BEFORE_NUMBER.get(key);
        }
        if (said == null) {
            return SpokenForms.NONE;
        }
        SpokenForms forms = SpokenForms.of(said);
        boolean small = Character.isLowerCase(m.group(1).charAt(0));
        if (dot && m.group(1).length() > 1 && m.group(1).equals(m.group(1).toUpperCase(Locale.ROOT))) {
            return forms.or(LetterForms.of(m.group(1))).or(Formulae.named(m.group(1)));
        }
        return !WORDS.contains(key) ? forms : small ? SpokenForms.of(key).or(forms) : forms.or(key);
    }

    private static boolean isNumber(String rest, int at) {
        return at < rest.length()
                && (Character.isDigit(rest.charAt(at))
                        || NormalizationRule.match(ROMAN, rest, at, rest.length()) != null);
    }

    private static Map<String, String[]> table(String rows) {
        Map<String, String[]> table = new HashMap<>();
        for (String row : rows.lines().toList()) {
            int equals = row.indexOf('=');
            table.put(row.substring(0, equals), row.substring(equals + 1).split(";", -1));
        }
        return Map.copyOf(table);
    }
}
