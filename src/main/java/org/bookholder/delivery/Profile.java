package org.bookholder.delivery;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * A delivery profile: the requirements that an export must meet.
 *
 * @param name where it comes from, for people
 * @param limits what is allowed; a setting that is not listed is not checked
 */
public record Profile(String name, Map<ProfileSetting, Limit> limits) {
    /** Copies the map. */
    public Profile {
        limits = Map.copyOf(limits);
    }

    /** The same for the film of a lesson, whose own name is right as it is where the profile's form has {lesson}. */
    public Profile ofLesson(String lesson) {
        Map<ProfileSetting, Limit> own = new HashMap<>(limits);
        pattern(ProfileSetting.NAME).ifPresent(pattern -> own.put(ProfileSetting.NAME, pattern.ofLesson(lesson)));
        return new Profile(name, own);
    }

    Optional<Limit.OneOf> words(ProfileSetting setting) {
        return limit(setting, Limit.OneOf.class);
    }

    Optional<Limit.Between> range(ProfileSetting setting) {
        return limit(setting, Limit.Between.class);
    }

    Optional<Limit.Matching> pattern(ProfileSetting setting) {
        return limit(setting, Limit.Matching.class);
    }

    /** The most that is allowed, or infinity where it is not checked. */
    double most(ProfileSetting setting) {
        return range(setting).map(Limit.Between::most).orElse(Double.POSITIVE_INFINITY);
    }

    private <T extends Limit> Optional<T> limit(ProfileSetting setting, Class<T> form) {
        return Optional.ofNullable(limits.get(setting)).map(form::cast);
    }
}
