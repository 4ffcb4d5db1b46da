// What the producer can do while a take runs: buttons at the bottom, and keys that do the same.

import { act } from './link.js';
import { followAgain, selectNext, selectedLine } from './script.js';
import { seenHeld, seenResting, seenRound, seenTake } from './seen.js';
import { aloud, byId, clock, el, put } from './words.js';
import { justRead, model } from './model.js';

const subject = () => selectedLine() || undefined;
const held = () => model.at.held;
const rolling = () => model.at.rolling;
const round = () => model.at.round?.line;
const resting = () => Boolean(model.people.break_since);
let marked = 0;

const LIVE = [
  { key: 'P', name: () => 'Mark a pickup', run: mark },
  { key: 'N', name: () => 'Note', run: note },
  { key: 'H', name: holdName, can: rolling, run: () => act({ do: seenHeld.value() ? 'go_on' : 'hold' }) },
  { key: 'G', name: () => 'Send to the line', can: () => Boolean(subject()), run: () => act({ do: 'go_to', line: subject() }) },
  { key: 'T', name: () => 'Next take', run: () => act({ do: 'next_take', take: seenTake.value(), line: subject() }) },
  { key: 'C', name: () => 'Cut', can: rolling, run: () => act({ do: 'cut', take: seenTake.value() }) },
  { key: 'R', name: () => (round() ? 'End the pickup round' : 'Pickup round'), can: () => round() || model.at.open > 0,
    run: () => act({ do: seenRound.value() ? 'round_end' : 'round' }) },
  { key: 'V', name: () => 'Leave this line', when: round, run: () => act({ do: 'leave', line: seenRound.value() }) },
  { key: 'A', name: () => 'This line again', when: round, run: () => act({ do: 'again', line: seenRound.value() }) },
  { key: 'B', name: () => (resting() ? 'End the break' : 'Break'), run: () => act(seenResting.value() ? { do: 'back' } : { do: 'break', take: seenTake.value() }) },
  { key: 'M', name: () => 'Message', run: () => byId('say').focus() },
];

function shown() {
  return (model.live ? LIVE : LIVE.slice(0, 2)).filter((action) => !action.when || action.when());
}

/** A take that is counted in is held, too. */
function holdName() {
  if (model.at.count === undefined) return held() ? 'Go on' : 'Hold';
  return model.at.count ? 'Begin now' : 'Begin';
}

async function mark() {
  const line = subject() ?? justRead();
  if (await act({ do: 'mark', line })) {
    marked = line;
    aloud(`Line ${line} marked. N adds a note.`);
    byId('note').placeholder = `line ${line} is marked; N adds a note`;
  }
}

function note() {
  byId('note').focus();
}

const noteLine = () => subject() ?? (marked || justRead());

export function showFoot() {
  const foot = byId('foot');
  const actions = shown();
  if (foot.childElementCount !== actions.length) {
    foot.replaceChildren(...actions.map((a) =>
      el('button', { type: 'button', onclick: a.run }, el('span', {}, ''), ' ', el('kbd', {}, a.key))));
  }
  actions.forEach((a, i) => {
    const button = foot.children[i];
    if (button.firstChild.textContent !== a.name()) button.firstChild.textContent = a.name();
    button.disabled = !model.acts || (a.can !== undefined && !a.can());
  });
  for (const id of ['note', 'say']) byId(id).disabled = !model.acts || (id === 'say' && !model.live);
}

export function showPeople() {
  const lines = model.lines.filter((l) => l.pickup);
  const words = new Map(model.script.elements.filter((e) => e.line).map((e) => [e.line, e.words.length]));
  const time = lines.reduce((sum, l) => sum + (60 * words.get(l.line)) / (model.pace.lesson ?? model.script.target), 0);
  put('open', String(lines.length));
  put('open-time', lines.length ? `about ${Math.round(time)} s of reading` : 'nothing so far');
  byId('notes').replaceChildren(...[...model.notes].reverse().slice(0, 30).map((n) => el('li', {},
    el('span', { class: 'time' }, clock(n.at)), ' ', n.text || (n.pickup ? 'marked as a pickup' : ''), ' ',
    el('span', { class: 'small' }, `line ${n.line}, ${n.by}`))));
  const message = model.people.message;
  put('said', !message ? '' : message.text ? `said at ${clock(message.at)}: ${message.text}` : 'taken back');
  const line = subject();
  put('note-label', line ? `Note on line ${line}` : 'Note on the line just read');
}

export function listenToForms() {
  byId('note-form').addEventListener('submit', async (event) => {
    event.preventDefault();
    const text = byId('note').value.trim();
    if (text && await act({ do: 'note', line: noteLine(), text })) {
      byId('note').value = '';
      byId('note').placeholder = '';
      marked = 0;
      byId('note').blur();
    }
  });
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
  if (key === 'F') return followAgain() ?? true;
  if (key === 'ARROWUP') return selectNext(-1) ?? true;
  if (key === 'ARROWDOWN') return selectNext(1) ?? true;
  const action = shown().find((a) => a.key === key);
  if (!action) return false;
  if (model.acts && (!action.can || action.can())) action.run();
  return true;
}

export const liveKeys = () => [...shown().map((a) => [a.key, a.name()]),
  ['↑ ↓', 'choose a line'], ['F', 'back to the place'], ['Esc', 'leave a field']];

