package org.bookholder.app.footage;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.function.Function;
import org.bookholder.cutlist.TakeSources;
import org.bookholder.cutlist.TakeSources.Source;
import org.bookholder.footage.Channels;
import org.bookholder.wording.TakeSourcesText;

/** Which files give picture and sound of takes, as JSON. */
public final class TakeSourcesJson {
    private TakeSourcesJson() {}

    /** One object for each take, with what can be chosen for it. */
    public static ArrayNode of(List<TakeSources> takes) {
        ArrayNode all = JsonNodeFactory.instance.arrayNode();
        for (TakeSources take : takes) {
            ObjectNode node = all.addObject();
            node.put("take", take.take().number());
            node.put("seconds", take.take().end().since(take.take().start()).seconds());
            ObjectNode picture = node.putObject("picture");
            put(picture, take.pictures(), TakeSourcesText.picture(take), Source::name);
            take.picture().ifPresent(missed -> picture.put("missed", missed.wanted()));
            ObjectNode sound = node.putObject("sound");
            take.sound().ifPresent(missed -> sound.put("missed", missed.wanted()));
            put(sound, take.sounds(), TakeSourcesText.sound(take), SourceChoices::value);
            take.sounds().stream()
                    .findFirst()
                    .flatMap(Source::channels)
                    .map(Channels::text)
                    .ifPresent(channels -> sound.put("channels", channels));
            ArrayNode remarks = node.putArray("remarks");
            TakeSourcesText.remarks(take).forEach(remarks::add);
            choices(node.putArray("pictures"), SourceChoices.pictures(take));
            choices(node.putArray("sounds"), SourceChoices.sounds(take));
        }
        return all;
    }

    private static void put(ObjectNode node, List<Source> sources, String said, Function<Source, String> value) {
        node.put("said", said);
        node.put(
                "value",
                sources.stream().findFirst().filter(Source::wanted).map(value).orElse(SourceChoices.AUTOMATIC));
        if (!sources.isEmpty()) {
            Source first = sources.get(0);
            node.put("name", first.name());
            first.footage().ifPresent(f -> node.put("file", f.footage().file().toString()));
            node.put("chosen", first.wanted());
        }
    }

    private static void choices(ArrayNode array, List<SourceChoices.Choice> choices) {
        choices.forEach(choice -> array.addObject().put("value", choice.value()).put("words", choice.words()));
    }
}
