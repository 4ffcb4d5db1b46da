package org.bookholder.bench;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.bookholder.session.Act;
import org.bookholder.session.Note;
import org.bookholder.session.Remark;
import org.bookholder.session.Session;
import org.bookholder.session.SessionEvent;
import org.bookholder.session.SessionState;

/** Compares what was done on the pages of a day with its journals: each act once, on its line, or refused in words. */
final class DeskDayCheck {
    private final List<Journal> journals;
    private final List<String> faults = new ArrayList<>();
    private int excused;

    DeskDayCheck(List<Journal> journals) {
        this.journals = List.copyOf(journals);
        List<String> titles = journals.stream().map(Journal::title).toList();
        List<String> wanted = IntStream.rangeClosed(1, titles.size())
                .mapToObj(n -> "Lesson " + n)
                .toList();
        if (!titles.equals(wanted)) {
            faults.add("sessions of " + titles);
        }
    }

    /**
     * What the journal has of one session.
     *
     * @param title the lesson's
     * @param done what people did, in order
     */
    record Journal(String title, List<Done> done) {
        /** Copies the list. */
        Journal {
            done = List.copyOf(done);
        }

        /** Takes what people did from a session's events; {@code begun} gives the state before the first by the title. */
        static Journal of(List<SessionEvent> events, Function<String, SessionState> begun) {
            String title = events.stream()
                    .filter(SessionEvent.Opened.class::isInstance)
                    .map(event -> ((SessionEvent.Opened) event).title())
                    .findFirst()
                    .orElseThrow();
            List<Done> done = new ArrayList<>();
            SessionState state = begun.apply(title);
            for (SessionEvent event : events) {
                if (event instanceof SessionEvent.Remarked remarked
                        && remarked.remark() instanceof Remark.Signed signed) {
                    Done.of(signed, state).ifPresent(done::add);
                }
                state = Session.apply(state, event);
            }
            return new Journal(title, done);
        }

        private List<Done> by(String author) {
            return done.stream().filter(d -> d.author().equals(author)).toList();
        }
    }

    /**
     * An act in the journal.
     *
     * @param line the line of a mark or note
     * @param undone the author of the act that was undone; empty if nothing was
     * @param last whether what was undone was the last act of this author that still held
     */
    record Done(String author, int line, String text, boolean mark, Optional<String> undone, boolean last) {
        private static Optional<Done> of(Remark.Signed signed, SessionState before) {
            String author = signed.author();
            if (signed.remark() instanceof Remark.Noted noted) {
                return Optional.of(
                        new Done(author, noted.line(), noted.text(), noted.pickup(), Optional.empty(), false));
            }
            if (signed.remark() instanceof Remark.Retracted retracted) {
                Act act = before.remarks().acts().number(retracted.act()).orElseThrow();
                Note note = ((Act.Noted) act.change()).note();
                boolean last =
                        before.remarks().acts().last(author).filter(act::equals).isPresent();
                return Optional.of(
                        new Done(author, note.line(), note.text(), note.pickup(), Optional.of(act.author()), last));
            }
            return Optional.empty();
        }

        private boolean is(PageAct act) {
            if (act.undoes()) {
                return undone.filter(author::equals).isPresent() && last;
            }
            return standsFor(act) && act.lines().contains(line);
        }

        /** Whether it is what this act became, if on another line: what follows is compared from the next one on. */
        private boolean standsFor(PageAct act) {
            return act.undoes() == undone.isPresent()
                    && (act.undoes() || (mark == act.marks() && text.equals(act.text())));
        }
    }

    /**
     * Compares one person's acts with the journals.
     *
     * @param answers what the program answered to their page
     * @param said what the page has said to them
     */
    void add(String author, List<PageAct> acts, JsonNode answers, JsonNode said) {
        List<String> sentences = new ArrayList<>();
        said.forEach(sentence ->
                sentences.add(sentence.asText().replace('\u00a0', ' ').strip()));
        Excuses excuses = new Excuses(answers, sentences);
        faults.addAll(excuses.unsaid());
        for (Journal journal : journals) {
            List<PageAct> meant = acts.stream()
                    .filter(act -> act.lesson().equals(journal.title()))
                    .filter(act -> act.marks() || act.notes() || act.undoes())
                    .toList();
            compare(once(meant), journal.by(author), excuses, journal.title() + ", " + author);
        }
    }

    /** Whoever presses Enter twice means one note. */
    private static List<PageAct> once(List<PageAct> acts) {
        Set<String> texts = new HashSet<>();
        return acts.stream()
                .filter(act -> !act.notes() || texts.add(act.text()))
                .toList();
    }

    private void compare(List<PageAct> meant, List<Done> done, Excuses excuses, String where) {
        int at = 0;
        int standing = 0;
        for (PageAct act : meant) {
            if (at < done.size() && done.get(at).is(act)) {
                at++;
                standing += act.undoes() ? -1 : 1;
            } else if (excuses.excuse(act)) {
                excused++;
            } else if (!act.undoes() || standing > 0) {
                String next = at < done.size() ? String.valueOf(done.get(at)) : "nothing";
                faults.add(where + ": " + act + " is not in the journal, where " + next + " comes next");
                if (at < done.size() && done.get(at).standsFor(act)) {
                    at++;
                    standing += act.undoes() ? -1 : 1;
                }
            }
        }
        for (Done more : done.subList(at, done.size())) {
            faults.add(where + ": the journal has " + more + ", which nobody did, or did once only");
        }
    }

    /** What the program printed at its end. */
    void ended(List<String> printed) {
        if (!printed.contains("exit status 0")) {
            faults.add("the program ended badly: " + printed);
        }
    }

    /** How many acts of which kind the journals have, for people. */
    String counts() {
        List<Done> all =
                journals.stream().flatMap(journal -> journal.done().stream()).toList();
        long undone = all.stream().filter(done -> done.undone().isPresent()).count();
        long marks = all.stream()
                .filter(done -> done.mark() && done.undone().isEmpty())
                .count();
        return marks + " marks, " + (all.size() - undone - marks) + " notes, " + undone + " undone, " + excused
                + " refused in words";
    }

    /** What is wrong; empty if nothing is. */
    List<String> faults() {
        return List.copyOf(faults);
    }

    /** The acts that were not done or may not be done, as the person was told. */
    private static final class Excuses {
        private final List<JsonNode> refused = new ArrayList<>();
        private final List<String> left = new ArrayList<>();
        private final List<String> unsaid = new ArrayList<>();

        Excuses(JsonNode answers, List<String> said) {
            for (JsonNode answer : answers) {
                int status = answer.path("status").asInt();
                boolean again = status == 0 || status == 503;
                boolean kept = again && !answer.path("do").asText().equals("undo");
                if (status != 200 && !kept) {
                    refused.add(answer);
                    String why = again ? "ot " : answer.path("why").asText();
                    if (said.stream().noneMatch(sentence -> sentence.contains(why))) {
                        unsaid.add("nobody was told: " + answer);
                    }
                }
            }
            said.stream()
                    .filter(sentence ->
                            sentence.contains("because that lesson ended") || sentence.startsWith("Not undone"))
                    .distinct()
                    .forEach(left::add);
        }

        List<String> unsaid() {
            return unsaid;
        }

        /** Whether the person was told that the act was not done, or may not be; each refusal excuses one act. */
        boolean excuse(PageAct act) {
            for (JsonNode answer : refused) {
                if (isOf(answer, act)) {
                    refused.remove(answer);
                    return true;
                }
            }
            return left.stream().anyMatch(act::isNamedIn);
        }

        private static boolean isOf(JsonNode answer, PageAct act) {
            String kind = answer.path("do").asText();
            boolean same = act.undoes() ? kind.equals("undo") : kind.equals(act.marks() ? "mark" : "note");
            return same
                    && answer.path("lesson").asText().equals(act.lesson())
                    && (act.undoes() || act.lines().contains(answer.path("line").asInt()))
                    && answer.path("text").asText().equals(act.text());
        }
    }
}
