package org.bookholder.bench;

import java.util.List;
import java.util.Random;
import java.util.stream.Stream;

/** Any number of sentences about a workshop; one rarely comes twice. */
final class WorkshopTalk {
    private static final List<String> ADJECTIVES = List.of(
            "little",
            "heavy",
            "rusty",
            "polished",
            "wooden",
            "narrow",
            "crooked",
            "hollow",
            "silver",
            "yellow",
            "broken",
            "clever",
            "patient",
            "ancient",
            "gentle",
            "stubborn",
            "quiet",
            "golden",
            "enormous",
            "slippery");
    private static final List<String> THINGS = List.of(
            "wheel",
            "hammer",
            "bracket",
            "saddle",
            "pedal",
            "basket",
            "ladder",
            "bucket",
            "lantern",
            "window",
            "ribbon",
            "button",
            "pencil",
            "blanket",
            "kettle",
            "mirror",
            "carpet",
            "trumpet",
            "garden",
            "bottle",
            "engine",
            "barrel",
            "picture",
            "shoulder",
            "feather",
            "market",
            "village",
            "station",
            "river",
            "mountain");
    private static final List<String> DEEDS = List.of(
            "carry",
            "polish",
            "measure",
            "borrow",
            "remember",
            "follow",
            "gather",
            "loosen",
            "tighten",
            "repair",
            "balance",
            "collect",
            "examine",
            "deliver",
            "replace",
            "imagine",
            "protect",
            "discover",
            "forget",
            "admire");
    private static final List<String> PEOPLE = List.of(
            "my neighbour",
            "the teacher",
            "your brother",
            "the captain",
            "a customer",
            "the painter",
            "her daughter",
            "the farmer",
            "our doctor",
            "the musician");

    private final Random random;

    WorkshopTalk(Random random) {
        this.random = random;
    }

    /** Lines that a seed chooses. */
    static List<String> lines(long seed, int count) {
        WorkshopTalk talk = new WorkshopTalk(new Random(seed));
        return Stream.generate(talk::line).limit(count).toList();
    }

    /** The next sentence, of 13 to 15 words. */
    String line() {
        return String.join(
                " ",
                any(PEOPLE),
                "will",
                any(DEEDS),
                "the",
                any(ADJECTIVES),
                any(THINGS),
                "and",
                any(DEEDS),
                "another",
                any(THINGS),
                "beside the",
                any(ADJECTIVES),
                any(THINGS));
    }

    private String any(List<String> words) {
        return words.get(random.nextInt(words.size()));
    }
}
