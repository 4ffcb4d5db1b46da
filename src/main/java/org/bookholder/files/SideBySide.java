package org.bookholder.files;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** Does the same to many files or folders, several at a time if there are processors for it. */
public interface SideBySide {
    /** One after another, on the thread that asks. */
    SideBySide ONE_BY_ONE = new SideBySide() {
        @Override
        public <T, R> List<R> each(List<T> items, Function<T, R> work) {
            List<R> done = new ArrayList<>();
            items.forEach(item -> done.add(work.apply(item)));
            return List.copyOf(done);
        }
    };

    /**
     * What comes of each, in the order of the items. What {@code work} throws is thrown here, that of the first item if it is thrown for
     * several.
     *
     * @param work may be called on any thread, and for several items at the same time
     */
    <T, R> List<R> each(List<T> items, Function<T, R> work);
}
