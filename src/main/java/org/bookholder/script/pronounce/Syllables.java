package org.bookholder.script.pronounce;

import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/**
 * Finds the short, regularly spelled words of a vocabulary, from which stand-ins are built. It combines beginnings and
 * rhymes and looks up the results, so it needs no word list and knows how each word sounds.
 */
final class Syllables {
    private static final String BEGINNINGS = """
        b bl br c ch cl cr d dr f fl fr g gl gr h j k l m n p pl pr qu r s sc sh sk sl sm sn sp spr st str sw t th tr
        tw v w wh y z shr scr thr\
        """;
    private static final String RHYMES = """
        ab ack act ad ade aft ag age aid ail ain air ake ale alk all am ame amp an and ane ang ank ap ape ar ark arm arn
        art ase ash ask ass ast at atch ate aw awn ax ay aze each eak eal eam ean eap ear eat eck ed edge ee eech eed eek
        eel een eep eer eet eg ell elp elt em en ence ench end ent ept er ern ess est et ew ib ice ick id ide idge ig
        ight ike ile ill im ime imp in ine ing ink int ip ipe ire irt ish isk iss ist it itch ite ix o oach oad oak oam
        oan oar oast oat ob ock od ode og oil oin oint oke old ole om on ong ook ool oom oon oop oot op ope or ord ore
        ork orm orn ort ose oss ot ote ouch oud ound out ox oy ub uck ud uff ug um ump un unch ung unk up ur urn us ush
        usk ust ut ute y\
        """;

    /** Words whose sound does not follow from their spelling, or that are hardly recognisable as words. */
    private static final Set<String> IRREGULAR = Set.of("""
        are as bass bush chic do from has his is lose none of pint push put son swan swap sword to ton two us use want
        war ward warm wart was wash wasp watch what who whose won word wore work worm worn\
        """.split("\\s", -1));

    private Syllables() {}

    /** The one-syllable words in {@code vocabulary}: a map from spelling to phones. */
    static Map<String, String> in(Vocabulary vocabulary) {
        Map<String, String> found = new HashMap<>();
        for (String beginning : BEGINNINGS.split("\\s", -1)) {
            for (String rhyme : RHYMES.split("\\s", -1)) {
                String word = beginning + rhyme;
                if (word.length() > 1 && !IRREGULAR.contains(word) && vocabulary.contains(word)) {
                    found.put(word, Phones.of(word));
                }
            }
        }
        for (String word : new String[] {"a", "oh", "ah", "uh", "ness", "less", "shun", "the"}) {
            if (vocabulary.contains(word)) {
                found.put(word, word.equals("the") ? "TV" : Phones.of(word));
            }
        }
        return Map.copyOf(found);
    }
}
