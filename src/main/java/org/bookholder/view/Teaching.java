package org.bookholder.view;

import java.util.Optional;
import org.bookholder.view.cue.Messages;
import org.bookholder.view.input.Action;
import org.bookholder.view.input.KeyMap;

/**
 * Assigns an action to a button: the presenter presses the button, and then the key whose action it should take over.
 * Confined to one thread.
 */
final class Teaching {
    private static final double WAITING_SECONDS = 60;
    private static final double SECONDS = 3;

    private final Messages messages;
    private boolean on;
    private String button = "";

    Teaching(Messages messages) {
        this.messages = messages;
    }

    boolean isOn() {
        return on;
    }

    void begin() {
        on = true;
        button = "";
        messages.say("press the button to be taught", WAITING_SECONDS);
    }

    /** Takes a pressed key; returns the new key map once both the button and its action are known. */
    Optional<KeyMap> press(String key, KeyMap keys) {
        Optional<Action> does = keys.action(key);
        if (does.filter(Action.QUIT::equals).isPresent()) {
            on = false;
            messages.say("nothing was taught", SECONDS);
            return Optional.empty();
        }
        if (button.isEmpty()) {
            button = key;
            messages.say(key + ": now press the key whose work it is to do", WAITING_SECONDS);
            return Optional.empty();
        }
        if (does.isEmpty()) {
            messages.say(key + " does nothing; press a key of this list", WAITING_SECONDS);
            return Optional.empty();
        }
        on = false;
        return taught(keys, does.get(), key);
    }

    /** Refuses an assignment that would leave an action without a key. */
    private Optional<KeyMap> taught(KeyMap keys, Action action, String like) {
        KeyMap changed = keys.with(button, action);
        Optional<Action> lost =
                keys.action(button).filter(before -> changed.keys(before).isEmpty());
        if (lost.isPresent()) {
            messages.say("teach another button what " + button + " does first", SECONDS);
            return Optional.empty();
        }
        messages.say(button + " does what " + like + " does", SECONDS);
        return Optional.of(changed);
    }
}
