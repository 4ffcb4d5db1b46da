package org.bookholder.bench;

import java.io.IOException;
import java.io.InputStream;
import java.util.Objects;
import java.util.Properties;
import java.util.SortedSet;
import java.util.TreeSet;

/** Lower and upper limits for readings, from {@code floors.properties}. */
final class Floors {
    private final Properties limits;

    private Floors(Properties limits) {
        this.limits = limits;
    }

    static Floors read() throws IOException {
        Properties limits = new Properties();
        try (InputStream in = Objects.requireNonNull(Floors.class.getResourceAsStream("/bench/floors.properties"))) {
            limits.load(in);
        }
        return new Floors(limits);
    }

    /** The names of the limits in a group, without the group's name; at least one. */
    SortedSet<String> names(String group) {
        SortedSet<String> names = new TreeSet<>();
        for (String name : limits.stringPropertyNames()) {
            if (name.startsWith(group + ".")) {
                names.add(name.substring(group.length() + 1));
            }
        }
        if (names.isEmpty()) {
            throw new IllegalArgumentException("group (" + group + ") must have a limit");
        }
        return names;
    }

    double of(String name) {
        return Double.parseDouble(Objects.requireNonNull(limits.getProperty(name), name));
    }
}
