package org.bookholder.runtime.stage;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import org.junit.jupiter.api.Test;

final class MailboxTest {
    private final Mailbox<String> mailbox = new Mailbox<>(2);

    @Test
    void returnsItemsInTheOrderOfArrival() {
        mailbox.add("a");
        mailbox.add("b");
        assertThat(mailbox.poll()).isEqualTo("a");
        assertThat(mailbox.poll()).isEqualTo("b");
        assertThat(mailbox.poll()).isNull();
    }

    @Test
    void refusesAnOfferWhenFull() {
        assertThat(mailbox.offer("a")).isTrue();
        assertThat(mailbox.full()).isFalse();
        assertThat(mailbox.offer("b")).isTrue();
        assertThat(mailbox.full()).isTrue();
        assertThat(mailbox.offer("c")).isFalse();
        assertThat(mailbox.size()).isEqualTo(2);
    }

    @Test
    void addsItemsThatMustNotBeLostEvenIfFull() {
        mailbox.add("a");
        mailbox.add("b");
        mailbox.add("c");
        assertThat(mailbox.size()).isEqualTo(3);
    }

    @Test
    void hasRoomAgainWhenSomethingWasTaken() {
        mailbox.add("a");
        mailbox.add("b");
        mailbox.poll();
        assertThat(mailbox.offer("c")).isTrue();
    }

    @Test
    void requiresACapacityOfAtLeastOne() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Mailbox<>(0))
                .withMessage("capacity (0) must be 1 or more");
    }
}
