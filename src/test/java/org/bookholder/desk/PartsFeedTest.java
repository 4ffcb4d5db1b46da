package org.bookholder.desk;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

final class PartsFeedTest {
    private final PartsFeed feed = new PartsFeed();
    private final Page page = new Page();

    @Test
    void aPageThatJoinsGetsAllParts() {
        feed.tell(parts("one", "two"));
        feed.listen(page, "");
        assertThat(page.heard).containsExactly("event: whole\ndata: {\"a\":\"one\",\"b\":\"two\"}\n\n");
    }

    @Test
    void onlyChangedPartsAreSentToEveryone() {
        feed.tell(parts("one", "two"));
        Page other = new Page();
        feed.listen(page, "");
        feed.listen(other, "");
        assertThat(feed.tell(parts("one", "three"))).isTrue();
        assertThat(page.heard).hasSize(2).last().isEqualTo("event: change\ndata: {\"b\":\"three\"}\n\n");
        assertThat(other.heard).isEqualTo(page.heard);
    }

    @Test
    void nothingIsSentIfNothingChanged() {
        feed.tell(parts("one", "two"));
        feed.listen(page, "");
        assertThat(feed.tell(parts("one", "two"))).isFalse();
        assertThat(page.heard).hasSize(1);
    }

    @Test
    void aPageThatLeftIsNotToldAnyMore() {
        Runnable stop = feed.listen(page, "");
        assertThat(feed.listening()).isEqualTo(1);
        stop.run();
        assertThat(feed.listening()).isZero();
        feed.tell(parts("one", "two"));
        assertThat(page.heard).hasSize(1);
    }

    private static Map<String, JsonNode> parts(String a, String b) {
        return new TreeMap<>(Map.of("a", TextNode.valueOf(a), "b", TextNode.valueOf(b)));
    }

    private static final class Page implements EventFeed.Listener {
        final List<String> heard = new ArrayList<>();

        @Override
        public void send(ByteBuffer message) {
            heard.add(StandardCharsets.UTF_8.decode(message).toString());
        }
    }
}
