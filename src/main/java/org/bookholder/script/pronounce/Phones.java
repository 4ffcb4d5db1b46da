package org.bookholder.script.pronounce;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.bookholder.script.normalize.NormalizationRule;

/**
 * Turns a spelling into its sounds, one character for each phone, by our own spelling rules. Correct for regular words
 * only: good enough to find words that sound alike, not to synthesise speech.
 *
 * <p>Vowels: i (see) I (sit) e (set) a (cat) A (hot, law) o (so) u (too) U (book) V (cup) E (day) Y (my) W (now) O
 * (boy). Consonants as in spelling, and T (th) S (sh) Z (measure) C (ch) J (j) N (ng).
 */
final class Phones {
    private static final String VOWELS = "iIeaAouUVEYWO";

    /** Each rule: a spelling, the letters required around it, and its sound. The first rule that fits applies. */
    private static final String RULES = """
        augh=A;au=A;aw=A;ai=E;ay=E;air=er;are$=er;ar=Ar;all=Al;a(?=tion|sion)=E;a(?=[bcdfgklmnpstvz]e(?:s|d)?$)=E
        ange$=EnJ;ae=i;a$=V;(?<=^s?w)a=A;(?<=qu)a=A;a=a
        bb=b;b=b
        tch=C;chr=kr;ch=C;ck=k;cc(?=[eiy])=ks;cc=k;ci(?=[ao])=S;c(?=[eiy])=s;c=k
        dge=J;dd=d;d=d
        ear=ir;ead$=ed;ea=i;ee=i;eigh=E;eir=er;ei=i;ew=u;eu=u;ey$=i;er=Vr;(?<=[td])ed$=Vd;(?<=[pkfsxh])ed$=t;ed$=d
        (?<=[aeiouy][bcdfghklmnprstvwz]{1,3})e$=;(?<=[sxzh])es$=Vz;(?<=[bdgklmnprtv])e(?=s$)=
        e(?=(?:ness|ment|ful|less|ly)$)=;e(?=[bcdfgklmnpstvz]e$)=i;eo=io;(?<=^[bcdfghklmnprstvwyz]{1,2})e$=i;e=e
        ff=f;f=f
        gh(?=t)=;(?<=^)gh=g;(?<=^)gn=n;gn$=n;gh=;gg=g;gue$=g;g(?=[eiy])=J;g=g
        (?<=[aeiou])h(?![aeiou])=;h=h
        igh=Y;(?<=^[a-z]{1,2})ie$=Y;ie=i;ir=Vr;i(?=[bcdfgklmnpstvz]e(?:s|d)?$)=Y;ire$=Yr;i(?=nd$|ld$)=Y;ia=iV;i$=i
        i(?=[aeou])=i;i=I
        j=J
        (?<=^)kn=n;kk=k;k=k
        ll=l;(?<=[bcdfgkpstz])le$=Vl;l=l
        mm=m;mb$=m;m=m
        ng(?=[aeoulr])=Ng;ng=N;nk=Nk;nn=n;n=n
        oa=o;oo(?=k)=U;oo=u;ough=o;ous$=Vs;ou=W;(?<=^[a-z])ow$=W;ow$=o;ow=W;oi=O;oy=O;or=or;ore$=or;oe=o
        o(?=[bcdfgklmnpstvz]e(?:s|d)?$)=o;o(?=ld|lt)=o;o$=o;o(?=[aeiu])=o;o=A
        ph=f;pp=p;(?<=^)ps=s;(?<=^)pn=n;p=p
        que$=k;qu=kw;q=k
        rh=r;rr=r;r=r
        sch=sk;sh=S;ssion=SVn;sion=ZVn;sure$=Zr;ss=s;sc(?=[eiy])=s;sm$=zVm;(?<=[aeiou])s(?=[aeiou])=z
        (?<=[bdgmnlrvwy])s$=z;s=s
        th=T;tion=SVn;tia=SV;ture=CVr;tt=t;t=t
        ur=Vr;ue$=u;ui=u;(?<=^)un=Vn;u(?=[bcdfgklmnprstvz][aeiouy])=u;u$=u;u=V
        v=v
        wh=w;(?<=^)wr=r;w=w
        (?<=^)x=z;x=ks
        (?<=^)y=y;(?<=^[b-df-hj-np-tv-z]{1,3})y$=Y;y$=i;y(?=[bcdfgklmnpstvz]e$)=Y;(?<=[aeiou])y=y;y=I
        zz=z;z=z
        '=
        """;

    private record Rule(Pattern spelling, String sound) {}

    private static final Map<Character, List<Rule>> BY_LETTER = read();

    private Phones() {}

    /** The phones of a word in lower case; letters outside a to z are silent. */
    static String of(String word) {
        StringBuilder phones = new StringBuilder();
        int at = 0;
        while (at < word.length()) {
            at = next(word, at, phones);
        }
        return phones.toString();
    }

    private static int next(String word, int at, StringBuilder phones) {
        for (Rule rule : BY_LETTER.getOrDefault(word.charAt(at), List.of())) {
            Matcher m = NormalizationRule.match(rule.spelling, word, at, word.length());
            if (m != null) {
                phones.append(rule.sound);
                return m.end();
            }
        }
        return at + 1;
    }

    static boolean isVowel(char phone) {
        return VOWELS.indexOf(phone) >= 0;
    }

    private static Map<Character, List<Rule>> read() {
        Map<Character, List<Rule>> rules = new HashMap<>();
        for (String row : RULES.lines().toList()) {
            for (String rule : row.split(";", -1)) {
                int equals = rule.lastIndexOf('=');
                String spelling = rule.substring(0, equals);
                // the first letter outside look-behinds
                char letter = spelling.replaceAll("\\(\\?<=[^)]*\\)", "").charAt(0);
                rules.computeIfAbsent(letter, c -> new ArrayList<>())
                        .add(new Rule(Pattern.compile(spelling), rule.substring(equals + 1)));
            }
        }
        return Map.copyOf(rules);
    }
}
