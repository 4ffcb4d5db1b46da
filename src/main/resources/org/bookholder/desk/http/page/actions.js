// What the producer can do while a take runs: buttons at the bottom, and keys that do the same. Where the reading window has
// the same act, it has the same key; no key does one thing here and another there.

import { act, undo, undoable } from './link.js';
import { lastNotes, listenToNotes, showNoteForm, showNotes } from './notes.js';
import { leave, selectNext } from './script.js';
import { seenHeld, seenResting, seenRound, seenTake } from './seen.js';
import { chosenLine, justMarked, seenNoteSubject, seenSubject } from './subject.js';
import { aloud, byId, clock, el, put } from './words.js';
import { model } from './model.js';

const chosen = () => chosenLine() || undefined;
const held = () => model.at.held;
const rolling = () => model.at.rolling;
const round = () => model.at.round?.line;
const resting = () => Boolean(model.people.break_since);

const LIVE = [
  { key: 'P', name: () => `Mark line ${seenSubject.value()}`, run: mark },
  { key: 'A', name: () => `Note on line ${seenNoteSubject.value()}`, run: () => byId('note').focus() },
  { key: 'H', name: holdName, can: rolling, run: () => act({ do: seenHeld.value() ? 'go_on' : 'hold' }) },
  { key: 'N', name: () => (chosen() ? `Next take, line ${chosen()}` : 'Next take'), run: () => act({ do: 'next_take', take: seenTake.value(), line: chosen() }) },
  { key: 'C', name: () => 'Cut', can: rolling, run: () => act({ do: 'cut', take: seenTake.value() }) },
  { key: 'J', name: () => (chosen() ? `Send to line ${chosen()}` : 'Send to a line'), can: () => Boolean(chosen()), run: () => act({ do: 'go_to', line: chosen() }) },
  { key: 'R', name: () => (round() ? 'End the pickup round' : 'Pickup round'), can: () => round() || model.at.open > 0,
    run: () => act({ do: seenRound.value() ? 'round_end' : 'round' }) },
  { key: 'PAGEDOWN', shown: 'Page Down', name: () => 'Leave this line', when: round, run: () => act({ do: 'leave', line: seenRound.value() }) },
  { key: 'PAGEUP', shown: 'Page Up', name: () => 'This line again', when: round, run: () => act({ do: 'again', line: seenRound.value() }) },
  { key: 'Z', name: () => (resting() ? 'End the break' : 'Break'), run: () => act(seenResting.value() ? { do: 'back' } : { do: 'break', take: seenTake.value() }) },
  { key: 'ENTER', shown: 'Enter', name: () => `Next lesson: ${model.order.title}`, when: () => over() && Boolean(model.order?.title),
    run: () => act({ do: 'next_lesson' }) },
  { key: 'Q', name: () => (model.order?.ends ? 'End the day' : 'End the session'), when: over, run: () => act({ do: 'end_session' }) },
  { key: 'M', name: () => 'Message', run: () => byId('say').focus() },
  { key: 'U', name: () => (undoable() ? `Undo ${undoable().what}` : 'Undo'), can: () => Boolean(undoable()), run: undo },
];

/** The lesson was read to its end, or its take was cut. */
function over() {
  return model.live && model.takes.length > 0 && (!rolling() || model.at.finished);
}

/** The acts for which no take has to run. */
const ALWAYS = ['P', 'A', 'U'];

function shown() {
  return LIVE.filter((a) => (model.live || ALWAYS.includes(a.key)) && (!a.when || a.when()));
}

/** A take that is counted in is held, too. */
function holdName() {
  if (model.at.count === undefined) return held() ? 'Go on' : 'Hold';
  return model.at.count ? 'Begin now' : 'Begin';
}

async function mark() {
  const line = seenSubject.value();
  if (await act({ do: 'mark', line })) {
    justMarked(line);
    aloud(`Line ${line} marked. A adds a note, U undoes it.`);
  }
}

export function showFoot() {
  const foot = byId('foot');
  const actions = shown();
  const keys = actions.map((a) => a.key).join(' ');
  if (foot.dataset.keys !== keys) {
    foot.dataset.keys = keys;
    foot.replaceChildren(...actions.map((a) =>
      el('button', { type: 'button', 'data-key': a.key, onclick: a.run }, el('span', {}, ''), ' ', el('kbd', {}, a.shown ?? a.key))));
  }
  actions.forEach((a, i) => {
    const button = foot.children[i];
    if (button.firstChild.textContent !== a.name()) button.firstChild.textContent = a.name();
    button.disabled = !model.acts || (a.can !== undefined && !a.can());
  });
  for (const id of ['note', 'say']) byId(id).disabled = !model.acts || (id === 'say' && !model.live);
  showNoteForm();
}

export function showPeople() {
  const lines = model.lines.filter((l) => l.pickup);
  const words = new Map(model.script.elements.filter((e) => e.line).map((e) => [e.line, e.words.length]));
  const time = lines.reduce((sum, l) => sum + (60 * words.get(l.line)) / (model.pace.lesson ?? model.script.target), 0);
  put('open', String(lines.length));
  put('open-time', lines.length ? `about ${Math.round(time)} s of reading` : 'nothing so far');
  showNotes(byId('notes'), lastNotes(), true);
  const message = model.people.message;
  put('said', !message ? '' : message.text ? `said at ${clock(message.at)}: ${message.text}` : 'taken back');
}

export function listenToForms() {
  listenToNotes();
  byId('notes').addEventListener('changed', showPeople);
  byId('say-form').addEventListener('submit', async (event) => {
    event.preventDefault();
    if (await act({ do: 'say', text: byId('say').value.trim() })) {
      byId('say').value = '';
      byId('say').blur();
    }
  });
}

/** Handles a key; returns whether it was one of these. */
export function liveKey(key) {
  if (key === 'ESCAPE') return leave() ?? true;
  if (key === 'ARROWUP') return selectNext(-1) ?? true;
  if (key === 'ARROWDOWN') return selectNext(1) ?? true;
  const action = shown().find((a) => a.key === key);
  if (!action) return false;
  if (model.acts && (!action.can || action.can())) action.run();
  return true;
}

export const liveKeys = () => [...shown().map((a) => [a.shown ?? a.key, a.name()]),
  ['↑ ↓', 'choose a line'], ['Esc', 'leave a field; choose no line; back to the place']];
