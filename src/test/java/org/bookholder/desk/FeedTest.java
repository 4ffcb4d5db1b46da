package org.bookholder.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.bookholder.testing.Readings.moved;
import static org.bookholder.testing.Readings.s;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.bookholder.session.Remark;
import org.bookholder.session.SessionEvent;
import org.bookholder.testing.Readings;
import org.junit.jupiter.api.Test;

final class FeedTest {
    private final ExampleDesk session = new ExampleDesk(Path.of("nowhere"));
    private final Feed feed = new Feed(session, LiveHistory.NONE, "run", ZoneOffset.UTC);

    /** A page that handles messages as the real page's code does. */
    private static final class Page implements EventFeed.Listener {
        final List<String> ids = new ArrayList<>();
        ObjectNode known = new ObjectMapper().createObjectNode();

        @Override
        public void send(ByteBuffer message) {
            String[] fields = StandardCharsets.UTF_8.decode(message).toString().split("\n", -1);
            assertThat(fields).hasSize(5);
            String id = fields[1].substring("id: ".length());
            if (fields[0].equals("event: change")) {
                // As the page does: one that is not numbered as the next one shows that a message was lost.
                assertThat(number(id)).isEqualTo(number(ids.get(ids.size() - 1)) + 1);
            }
            ids.add(id);
            take(fields[0], json(fields[2].substring("data: ".length())));
        }

        private static long number(String id) {
            return Long.parseLong(id.substring(id.indexOf('.') + 1));
        }

        private void take(String event, ObjectNode data) {
            if (event.equals("event: whole")) {
                known = data;
                return;
            }
            data.properties().forEach(part -> {
                switch (part.getKey()) {
                    case "lines" ->
                        part.getValue()
                                .forEach(l -> ((ArrayNode) known.get("lines"))
                                        .set(l.get("line").asInt() - 1, l));
                    case "points" -> part.getValue().forEach(((ArrayNode) known.get("points"))::add);
                    default -> known.set(part.getKey(), part.getValue());
                }
            });
        }

        private static ObjectNode json(String text) {
            try {
                return (ObjectNode) new ObjectMapper().readTree(text);
            } catch (JsonProcessingException e) {
                throw new AssertionError(e);
            }
        }
    }

    private void happens(SessionEvent event) {
        session.happens(event);
        feed.look();
    }

    private JsonNode wholeNow() {
        Page fresh = new Page();
        feed.listen(fresh, "").run();
        return fresh.known;
    }

    @Test
    void aPageHasTheCompleteState() {
        Page page = new Page();
        feed.listen(page, "");
        for (int i = 1; i <= 40; i++) {
            happens(moved(6 + i * 0.4, 2 + i / 20, 1 + i % 4, 1));
        }
        happens(Readings.settled(Readings.broken(1, 3, 3, 2, 22, 23)));
        happens(new SessionEvent.Remarked(s(24), new Remark.Noted(2, "a shadow", true)));
        assertThat(page.known).isEqualTo(wholeNow());
        assertThat(page.ids).doesNotHaveDuplicates();
    }

    @Test
    void aPageThatReconnectsGetsWhatItMissedAndNothingTwice() {
        Page page = new Page();
        Runnable stop = feed.listen(page, "");
        happens(moved(7, 2, 2, 1));
        stop.run();
        happens(moved(8, 2, 3, 1));
        happens(Readings.settled(Readings.broken(1, 3, 3, 2, 9, 10)));
        int had = page.ids.size();
        feed.listen(page, page.ids.get(had - 1));
        happens(moved(11, 3, 2, 1));
        assertThat(page.ids).doesNotHaveDuplicates().hasSize(had + 3);
        assertThat(page.known).isEqualTo(wholeNow());
    }

    @Test
    void aPageOfAnotherRunOrAfterALongTimeGetsASnapshot() {
        Page page = new Page();
        feed.listen(page, "other.1").run();
        assertThat(page.known.has("script")).isTrue();
        Page late = new Page();
        feed.listen(late, "").run();
        for (int i = 1; i <= 400; i++) {
            happens(moved(6 + i * 0.1, 2, 1 + i % 4, 1));
        }
        feed.listen(late, late.ids.get(0));
        assertThat(late.ids).hasSize(2);
        assertThat(late.known).isEqualTo(wholeNow());
    }

    /** What is told to those who join is made while everyone else is told of changes, and once for all of them. */
    @Test
    void joiningPagesBlockNobody() throws InterruptedException {
        Page first = new Page();
        feed.listen(first, "");
        happens(moved(100, 3, 1, 1));
        for (int i = 0; i < 100; i++) {
            happens(moved(101 + i, 2, 1 + i % 4, 1));
        }
        CountDownLatch making = new CountDownLatch(1);
        CountDownLatch go = new CountDownLatch(1);
        AtomicInteger made = new AtomicInteger();
        session.whileTelling = () -> {
            made.incrementAndGet();
            making.countDown();
            await(go);
        };
        List<Page> joining = new ArrayList<>();
        List<Thread> threads = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            Page page = new Page();
            joining.add(page);
            threads.add(new Thread(() -> feed.listen(page, "")));
        }
        threads.forEach(Thread::start);
        await(making);
        happens(moved(202, 3, 2, 1));
        assertThat(first.known.at("/at/now").asDouble()).isEqualTo(202);
        go.countDown();
        for (Thread thread : threads) {
            thread.join();
        }
        session.whileTelling = () -> {};
        assertThat(made).hasValue(1);
        JsonNode whole = wholeNow();
        assertThat(joining).allSatisfy(page -> assertThat(page.known).isEqualTo(whole));
    }

    private static void await(CountDownLatch latch) {
        try {
            assertThat(latch.await(20, TimeUnit.SECONDS)).isTrue();
        } catch (InterruptedException e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void aRemovedListenerGetsNothing() {
        Page page = new Page();
        feed.listen(page, "").run();
        happens(moved(7, 2, 2, 1));
        assertThat(page.ids).hasSize(1);
        assertThat(feed.listening()).isZero();
    }

    /** Sending every tick to twenty pages would slow the reading down. */
    @Test
    void theTimeIsSentAFewTimesASecond() {
        Page page = new Page();
        feed.listen(page, "");
        for (int i = 0; i <= 40; i++) {
            happens(moved(10 + i * 0.05, 3, 1, 0));
        }
        // Once for the place, and then each quarter of the two seconds.
        assertThat(page.ids).hasSize(1 + 1 + 8);
        assertThat(page.known.at("/at/now").asDouble()).isEqualTo(12);
        happens(moved(12.01, 3, 2, 0));
        assertThat(page.known.at("/at/word").asInt()).isEqualTo(2);
    }

    @Test
    void nothingIsSentIfNothingChanged() {
        Page page = new Page();
        feed.listen(page, "");
        assertThat(feed.look()).isFalse();
        assertThat(page.ids).hasSize(1);
    }
}
