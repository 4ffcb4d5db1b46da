// What the producer can do while a take runs: buttons at the bottom, and keys that do the same. Where the reading window has
// the same act, it has the same key; no key does one thing here and another there.

import { act, connected, undo, undoable } from './link.js';
import { listenToMessages, showMessageForm, showSaid } from './messages.js';
import { lastNotes, listenToNotes, showNoteForm, showNotes } from './notes.js';
import { hearLine } from './pickups.js';
import { leave, selectNext } from './script.js';
import { seenHeld, seenResting, seenRound, seenTake } from './seen.js';
import { chosenLine, justMarked, markSubject, nameSubjects, writtenSubject } from './subject.js';
import { AWAY } from './wire.js';
import { aloud, byId, el } from './words.js';
import { model } from './model.js';

const chosen = () => chosenLine() || undefined;
const held = () => model.at.held;
const rolling = () => model.at.rolling;
const round = () => model.at.round?.line;
const resting = () => Boolean(model.people.break_since);

const LIVE = [
  { key: 'P', kept: true, name: () => `Mark line ${markSubject()}`, run: mark },
  { key: 'A', kept: true, name: () => `Note on line ${writtenSubject()}`, run: () => byId('note').focus() },
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
  { key: 'O', name: () => `Aim at ${model.pace.offer} words a minute`, when: () => over() && Boolean(model.pace.offer),
    run: () => act({ do: 'own_pace', pace: model.pace.offer }) },
  { key: 'Q', name: () => (model.order?.ends ? 'End the day' : 'End the session'), when: over, run: () => act({ do: 'end_session' }) },
  { key: 'M', name: () => 'Message', can: () => model.live, run: () => byId('say').focus() },
  { key: 'U', name: () => (undoable() ? `Undo ${undoable().what}` : 'Undo'), can: () => Boolean(undoable()), run: undo },
];

/** The lesson was read to its end, or its take was cut. */
function over() {
  return model.live && model.takes.length > 0 && (!rolling() || model.at.finished);
}

/** The acts for which no take has to run. */
const ALWAYS = ['P', 'A', 'U'];

/** An act that would have no effect is off; one that is not kept while the program is away is, too. */
const able = (a) => model.acts && (!a.can || a.can()) && (connected() || a.kept);

function shown() {
  return LIVE.filter((a) => (model.live || ALWAYS.includes(a.key)) && (!a.when || a.when()));
}

/** A take that is counted in is held, too. */
function holdName() {
  if (model.at.count === undefined) return held() ? 'Go on' : 'Hold';
  return model.at.count ? 'Begin now' : 'Begin';
}

async function mark() {
  const line = markSubject();
  if (await act({ do: 'mark', line })) {
    justMarked(line);
    showFoot();
    aloud(`Line ${line} marked. A adds a note, U undoes it.`);
  }
}

/** On a phone only the first acts are shown until this is pressed. */
const more = () => el('button', {
  type: 'button', class: 'more', 'aria-expanded': String(byId('foot').classList.contains('all')),
  onclick: (event) => event.target.setAttribute('aria-expanded', String(byId('foot').classList.toggle('all'))),
}, 'More acts');

export function showFoot() {
  nameSubjects();
  const foot = byId('foot');
  const actions = shown();
  const keys = actions.map((a) => a.key).join(' ');
  if (foot.dataset.keys !== keys) {
    foot.dataset.keys = keys;
    foot.replaceChildren(...actions.map((a) =>
      el('button', { type: 'button', 'data-key': a.key, onclick: a.run }, el('span', {}, ''), ' ', el('kbd', {}, a.shown ?? a.key))), more());
  }
  actions.forEach((a, i) => {
    const button = foot.children[i];
    if (button.firstChild.textContent !== a.name()) button.firstChild.textContent = a.name();
    button.disabled = !able(a);
  });
  byId('note').disabled = !model.acts;
  showMessageForm();
  showNoteForm();
}

export function showPeople() {
  showNotes(byId('notes'), lastNotes(), true);
  showSaid();
}

export function listenToForms() {
  listenToNotes();
  byId('notes').addEventListener('changed', showPeople);
  listenToMessages();
}

/** Handles a key; returns whether it was one of these. */
export function liveKey(key) {
  if (key === 'ESCAPE') return leave() ?? true;
  if (key === ' ') return hearLine(markSubject()) ?? true;
  if (key === 'ARROWUP') return selectNext(-1) ?? true;
  if (key === 'ARROWDOWN') return selectNext(1) ?? true;
  const action = shown().find((a) => a.key === key);
  if (!action) return false;
  if (able(action)) action.run();
  else if (!connected()) aloud(AWAY);
  return true;
}

export const liveKeys = () => [...shown().map((a) => [a.shown ?? a.key, a.name()]),
  ['↑ ↓', 'choose a line'], ['Space', 'hear the line'], ['Esc', 'leave a field; choose no line; back to the place']];
