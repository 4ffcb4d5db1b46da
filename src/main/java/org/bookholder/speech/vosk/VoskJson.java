package org.bookholder.speech.vosk;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.json.JsonWriteFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.ArrayList;
import java.util.List;
import org.bookholder.speech.Grammar;
import org.bookholder.speech.RecognizedWord;
import org.bookholder.timing.StreamTime;

/** Writes and reads the JSON that a recogniser takes and returns. */
final class VoskJson {
    // Escapes keep the grammar intact whatever encoding the machine uses for native strings.
    private static final JsonMapper MAPPER =
            JsonMapper.builder().enable(JsonWriteFeature.ESCAPE_NON_ASCII).build();

    private VoskJson() {}

    /** The phrases of a grammar, plus the word that stands for all other speech. */
    static String grammar(Grammar grammar) {
        List<String> phrases = new ArrayList<>();
        grammar.phrases().forEach(p -> phrases.add(String.join(" ", p)));
        phrases.add(RecognizedWord.UNKNOWN);
        try {
            return MAPPER.writeValueAsString(phrases);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a list of texts cannot be written", e);
        }
    }

    /** The words of a partial result. */
    static List<String> partial(String json) {
        String text = read(json).path("partial").asText();
        return text.isBlank() ? List.of() : List.of(text.strip().split(" +", -1));
    }

    /**
     * The words of a final result.
     *
     * @param base the time of the recogniser's first sample
     * @param added how many seconds of audio the recogniser was given that are not in the stream, or a second time; its
     *     times count them too
     */
    static List<RecognizedWord> result(String json, StreamTime base, double added) {
        List<RecognizedWord> words = new ArrayList<>();
        for (JsonNode word : read(json).path("result")) {
            StreamTime start = base.plus(StreamTime.ofSeconds(word.path("start").asDouble() - added));
            StreamTime end = base.plus(StreamTime.ofSeconds(word.path("end").asDouble() - added));
            // Rounding may put a sum of probabilities slightly above one.
            double confidence = Math.max(0, Math.min(1, word.path("conf").asDouble()));
            words.add(new RecognizedWord(word.path("word").asText(), start, StreamTime.max(start, end), confidence));
        }
        return words;
    }

    private static JsonNode read(String json) {
        try {
            return MAPPER.readTree(json);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("the recogniser's answer is not JSON: " + json, e);
        }
    }
}
