package org.bookholder.app.home;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.bookholder.app.day.DayService;
import org.bookholder.app.delivery.DeliveryProfiles;
import org.bookholder.app.environment.Environment;
import org.bookholder.app.reading.WindowPreferences;
import org.bookholder.app.session.BreakLimits;
import org.bookholder.app.session.TargetPaces;
import org.bookholder.app.sound.MachineMicrophone;
import org.bookholder.delivery.Profile;
import org.bookholder.delivery.ProfileForm;
import org.bookholder.fatigue.LimitsForm;
import org.bookholder.files.Access;
import org.bookholder.problem.ProblemException;
import org.bookholder.settings.Form;
import org.bookholder.settings.Form.Field;
import org.bookholder.settings.SettingsFile;
import org.bookholder.view.settings.WindowForm;
import org.jspecify.annotations.Nullable;

/** What can be set from the page, in the same files that people edit. Safe for use by several threads. */
final class HomeSettings {
    private final Environment here;
    private final MachineMicrophone microphone;

    HomeSettings(Environment here) {
        this.here = here;
        microphone = new MachineMicrophone(here);
    }

    /** The microphone to read with; empty for the machine's own choice. */
    synchronized Optional<String> microphone() throws ProblemException {
        return microphone.chosen();
    }

    /** All that can be set, in groups, each setting with its meaning and its present value. */
    synchronized ArrayNode json() throws ProblemException {
        ArrayNode groups = JsonNodeFactory.instance.arrayNode();
        group(groups, "limits", here.limits().toString(), LimitsForm.FORM, LimitsForm.values(BreakLimits.of(here)));
        group(
                groups,
                "window",
                WindowPreferences.ofMachine(here).path().toString(),
                WindowForm.FORM,
                WindowForm.values(WindowPreferences.usual(here)));
        TargetPaces paces = new TargetPaces(here, DayService.SOLE_PRESENTER);
        String own = paces.own().isPresent() ? Integer.toString(paces.own().getAsInt()) : "";
        group(groups, "pace", paces.file().path().toString(), TargetPaces.FORM, Map.of(TargetPaces.PACE, own));
        Profile profile = DeliveryProfiles.usual(here);
        Map<String, String> delivery = new LinkedHashMap<>();
        ProfileForm.FORM
                .fields()
                .forEach(field -> delivery.put(field.name(), ProfileForm.value(profile, field.name())));
        group(groups, "delivery", here.delivery().toString(), ProfileForm.FORM, delivery);
        return groups;
    }

    private static void group(ArrayNode groups, String name, String file, Form<?> form, Map<String, String> values) {
        ObjectNode group = groups.addObject().put("name", name).put("file", file);
        ArrayNode fields = group.putArray("fields");
        for (Field<?> field : form.fields()) {
            String value = values.get(field.name());
            // A name that stands for many has no single value: the keys of the window are taught in the window.
            if (value != null) {
                ObjectNode node = fields.addObject()
                        .put("name", field.name())
                        .put("meaning", field.meaning())
                        .put("value", value);
                if (field.name().equals("hide")) {
                    ArrayNode options = node.putArray("options");
                    WindowForm.cues().forEach(options::add);
                }
            }
        }
    }

    /**
     * Sets one of them.
     *
     * @throws ProblemException if the value is not understood or can't be kept; all stays as it was then
     */
    synchronized void set(String group, String name, String value) throws ProblemException {
        String text = value.strip();
        switch (group) {
            case "limits" -> {
                fits(name, text);
                new SettingsFile(here.limits(), "the limits").set(LimitsForm.FORM, name, text);
            }
            case "window" -> WindowPreferences.ofMachine(here).set(WindowForm.FORM, name, text);
            case "pace" ->
                new TargetPaces(here, DayService.SOLE_PRESENTER).file().set(TargetPaces.FORM, name, text);
            case "delivery" -> {
                DeliveryProfiles.begin(here.delivery(), ProfileForm.usual(), Access.OWNER);
                DeliveryProfiles.set(here.delivery(), name, text);
            }
            case "home" -> microphone.set(name, text);
            default -> throw new ProblemException("there are no such settings", group, "choose another one");
        }
    }

    /** The rest that starts a new day can't be shorter than a break. */
    private void fits(String name, String value) throws ProblemException {
        Map<String, String> all = new LinkedHashMap<>(LimitsForm.values(BreakLimits.of(here)));
        all.put(name, value);
        Optional<Duration> pause = minutes(all.get("break"));
        Optional<Duration> recovery = minutes(all.get("recovery"));
        if (pause.isPresent() && recovery.isPresent() && recovery.get().compareTo(pause.get()) < 0) {
            throw new ProblemException(
                    "'recovery' can't be shorter than 'break'", here.limits().toString(), "change the other one first");
        }
    }

    private static Optional<Duration> minutes(@Nullable String text) {
        return text != null && text.matches("\\d{1,5}")
                ? Optional.of(Duration.ofMinutes(Long.parseLong(text)))
                : Optional.empty();
    }
}
