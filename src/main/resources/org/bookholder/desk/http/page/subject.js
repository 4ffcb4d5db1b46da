// Which line the next act is about: the chosen one, else the one that was just read. A choice lapses when the reading has
// moved on, so that a mark never goes to a line that somebody chose long ago.

import { justRead, model } from './model.js';
import { seen } from './seen.js';

/** A choice lapses when the reading is this many lines further, and this many milliseconds have passed. */
const LINES = 2;
const MILLIS = 8000;

/**
 * Keeps a line in mind until the reading has moved on.
 *
 * @param at returns where the reading is: line, rolling, held
 * @param now returns the time in milliseconds
 */
export function lapsing(at = () => model.at, now = () => performance.now()) {
  let line = 0;
  let from = 0;
  let since = 0;
  const over = () => at().rolling && !at().held && Math.abs(at().line - from) >= LINES && now() - since > MILLIS;
  return {
    set(value) {
      line = value;
      from = at().line;
      since = now();
    },
    /** The line; 0 if there is none, or none any more. */
    get() {
      if (line && over()) line = 0;
      return line;
    },
  };
}

const chosen = lapsing();
const marked = lapsing();

export const chosenLine = () => (chosen.get() <= model.lines.length ? chosen.get() : 0);

/** The line that the next mark is about. */
const subject = () => chosenLine() || justRead();

/** The line that the next note is about: also one that was just marked. */
const noteSubject = () => chosenLine() || marked.get() || justRead();

/** A key pressed in the moment when the subject changes still means the line that was shown before. */
const seenSubject = seen(() => (model.known ? subject() : undefined));
const seenNoteSubject = seen(() => (model.known ? noteSubject() : undefined));

/** The lines that the buttons name: an act is about what a person reads there, also on a machine that is slow to draw it anew. */
let named = {};

/** To be called whenever the buttons are drawn. */
export function nameSubjects() {
  named = { mark: seenSubject.value(), note: seenNoteSubject.value() };
}

export const markSubject = () => named.mark ?? seenSubject.value();
export const writtenSubject = () => named.note ?? seenNoteSubject.value();

const expected = () => {
  seenSubject.expect(subject());
  seenNoteSubject.expect(noteSubject());
  named = {};
};

/** Call this when this person has chosen a line, and draw the buttons. */
export function chooseLine(line) {
  chosen.set(line);
  marked.set(0);
  expected();
}

/** Call this when this person has marked a line, and draw the buttons: they name another line from now on. */
export function justMarked(line) {
  marked.set(line);
  expected();
}

/** To be called whenever the page shows something new. */
export function lookAtSubject() {
  seenSubject.look();
  seenNoteSubject.look();
}
