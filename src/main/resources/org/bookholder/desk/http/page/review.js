// Going through the pickup list: listen to each attempt, decide, undo.

import { act, undo, undoable } from './link.js';
import { REASONS as COMMON, entry, why, within } from './listed.js';
import { sendNote, showNotes } from './notes.js';
import { nudge, play, playOrPause, showPlayer, silence } from './listen.js';
import { markWords } from './script.js';
import { byId, clock, count, el, put } from './words.js';
import { attemptOf, inTake, lineOf, model, notesOf, sure, telling, text, words } from './model.js';

let current = 0;
let chosen = null;

const CHOICES = [
  { key: 'R', choice: 'RECORD_AGAIN', name: 'Record again' },
  { key: 'K', choice: 'KEEP', name: 'Keep this attempt' },
  { key: 'E', choice: 'FIX_IN_EDIT', name: 'Fix in the edit' },
  { key: 'X', choice: 'NOT_A_FAULT', name: 'Not a fault, it was read right' },
];

const called = (l) => l.pickup || l.decision || notesOf(l.line).length > 0
  || l.attempts.some((a) => a.outcome !== 'clean');

/** Reports with a lower certainty than this were right in one case out of three. */
const UNSURE = 0.6;

const REASONS = {
  ...COMMON,
  open: (l) => l.pickup,
  all: called,
  skipped: (l) => l.reached && l.outcome === 'skipped',
  marked: (l) => notesOf(l.line).some((n) => n.pickup),
};

function items() {
  const take = Number(byId('f-take').value);
  const list = model.lines.filter(REASONS[byId('f-reason').value])
    // The current line stays in the list until another one is selected.
    .concat(model.lines.filter((l) => l.line === current && !REASONS[byId('f-reason').value](l)))
    .filter((l) => within(l, take));
  const when = (l) => telling(l)?.start ?? l.where?.at ?? Infinity;
  const orders = { time: (a, b) => when(a) - when(b), sure: (a, b) => sure(b) - sure(a) || a.line - b.line };
  return list.sort(orders[byId('f-order').value] ?? ((a, b) => a.line - b.line));
}

export function showReview() {
  const takes = byId('f-take');
  while (takes.options.length <= model.takes.length) takes.add(new Option(String(takes.options.length)));
  const list = items();
  if (!list.some((l) => l.line === current)) choose(list[0]?.line ?? 0);
  put('count', `${count(list.length, 'line')}, ${count(model.lines.filter((l) => l.pickup).length, 'line')} to pick up`);
  byId('items').replaceChildren(...list.map(item));
  const active = byId(`item-${current}`);
  if (active) byId('items').setAttribute('aria-activedescendant', active.id);
  else byId('items').removeAttribute('aria-activedescendant');
  active?.scrollIntoView({ block: 'nearest' });
  showHear();
}

function item(line) {
  const marks = notesOf(line.line).filter((n) => n.pickup).map((n) => n.by);
  return el('li', {
    id: `item-${line.line}`, role: 'option', 'aria-selected': String(line.line === current),
    class: `item ${line.outcome}${line.pickup ? ' pickup' : ''}`,
    onclick: () => { choose(line.line); showReview(); },
  }, ...entry(line, text(line.line), marks.length ? `${why(line)} · marked by ${[...new Set(marks)].join(' and ')}` : why(line)));
}

/** Starts with a line, whether or not it must be picked up. */
export function openAt(line) {
  if (lineOf(line)) choose(line);
}

function choose(line) {
  current = line;
  const notes = line ? lineOf(line) : null;
  const best = notes ? telling(notes) : null;
  chosen = best ? [best.take, best.ordinal] : null;
  silence();
}

function attempt() {
  const line = current ? lineOf(current) : null;
  if (!line) return null;
  return (chosen && attemptOf(line, chosen[0], chosen[1])) ?? telling(line) ?? null;
}

function showHear() {
  const host = byId('hear');
  if (!current) {
    host.replaceChildren(el('p', { class: 'empty' }, model.at.open ? 'Nothing matches.' : 'Nothing to pick up.'));
    return;
  }
  const line = lineOf(current);
  const heard = attempt();
  if (host.dataset.line !== String(current) || !byId('player')) {
    host.dataset.line = String(current);
    host.replaceChildren(
      el('p', { class: 'where', id: 'where' }),
      el('p', { class: 'text whole', id: 'whole' },
        ...words(current).flatMap((w, i) => [i ? ' ' : '', el('span', { class: 'word' }, w)])),
      el('p', { class: 'said', id: 'heard' }),
      el('div', { class: 'attempts', id: 'attempts', role: 'radiogroup', 'aria-label': 'Attempts' }),
      el('div', { class: 'player', id: 'player' }),
      el('div', { class: 'choices', id: 'choices' }),
      el('p', { class: 'small', id: 'teaches' }, 'Not a fault also holds for the same word in this presenter’s other lessons; a script’s page lists it, and can forget it.'),
      el('ol', { class: 'notes', id: 'line-notes', onchanged: showHear }),
      el('form', { class: 'write', id: 'line-note-form', onsubmit: note },
        el('label', { for: 'line-note' }, `Write a note on line ${current}`),
        el('input', { id: 'line-note', maxlength: 500, autocomplete: 'off', disabled: !model.acts })));
  }
  put('where', `line ${current}`);
  markWords(byId('whole'), heard);
  put('heard', what(line, heard));
  byId('attempts').replaceChildren(...line.attempts.map((a) => el('button', {
    type: 'button', role: 'radio', 'aria-checked': String(a === heard), class: a.outcome,
    onclick: () => { chosen = [a.take, a.ordinal]; showHear(); play(); },
  }, `take ${a.take}, ${clock(inTake(a.take, a.start))} · ${a.outcome}${standing(line, a)}`)));
  if (heard) showPlayer(byId('player'), heard);
  else byId('player').replaceChildren(el('p', { class: 'small' }, 'It was never tried, so there is nothing to hear.'));
  showChoices(line, heard);
  showNotes(byId('line-notes'), notesOf(current), false);
}

/** Saves the note that was written on the line shown. */
function note(event) {
  event.preventDefault();
  sendNote(byId('line-note'), current);
}

/** A misread attempt is not used unless someone decides so. */
function standing(line, a) {
  if (line.best?.[0] !== a.take || line.best[1] !== a.ordinal) return '';
  const settled = line.decision && line.decision.choice !== 'RECORD_AGAIN';
  return a.outcome === 'clean' || settled ? ' · used' : ' · the best so far';
}

function what(line, heard) {
  const decided = line.decision ? ` Decided: ${line.decision.label}.` : '';
  if (!heard) return `Not read.${decided}`;
  if (heard.words.length === 0) return `${heard.outcome === 'clean' ? 'Read as written' : line.said || heard.outcome}.${decided}`;
  const calls = heard.words.map((w) => (w.kind === 'swapped' ? `“${w.said || '…'}” for “${w.written}”`
    : w.kind === 'dropped' ? `“${w.written}” left out` : `“${w.said || '…'}” added`)
    + (w.certainty < UNSURE ? ', perhaps' : ''));
  return `${calls.join('; ')}.${decided}`;
}

function showChoices(line, heard) {
  const host = byId('choices');
  if (host.childElementCount === 0) {
    host.append(
      el('button', { type: 'button', id: 'hear-it', onclick: playOrPause }, 'Hear it ', el('kbd', {}, 'Space')),
      ...CHOICES.map((c) => el('button', { type: 'button', 'data-choice': c.choice, onclick: () => decide(c.choice) },
        `${c.name} `, el('kbd', {}, c.key))),
      el('button', { type: 'button', id: 'undo', class: 'quiet', onclick: undoHere }, 'Undo ', el('kbd', {}, 'U')));
  }
  for (const button of host.querySelectorAll('[data-choice]')) {
    button.setAttribute('aria-pressed', String(line.decision?.choice === button.dataset.choice));
    button.disabled = !model.acts || (button.dataset.choice === 'KEEP' && !heard);
  }
  byId('hear-it').disabled = !heard;
  byId('teaches').hidden = !heard?.words.some((w) => w.kind === 'swapped');
  const last = undoable();
  byId('undo').firstChild.textContent = last ? `Undo ${last.what} ` : 'Undo ';
  byId('undo').disabled = !model.acts || !last;
}

/** Decides, and goes on to the next line; after the last one it stays. */
async function decide(choice) {
  const heard = attempt();
  const line = current;
  if (choice === 'KEEP' && !heard) return;
  if (await act({ do: 'decide', line, choice, take: heard?.take ?? 0, ordinal: heard?.ordinal ?? 0 }) && current === line) {
    step(1);
  }
}

/** Undoes what this person did last, and shows the line that it was about. */
async function undoHere() {
  const line = (await undo())?.line;
  if (line) {
    choose(line);
    showReview();
  }
}

function step(by) {
  const list = items();
  const at = list.findIndex((l) => l.line === current);
  const next = list[Math.max(0, Math.min(list.length - 1, at + by))];
  if (!next || next.line === current) return;
  choose(next.line);
  showReview();
}

function stepAttempt(by) {
  const line = lineOf(current);
  const at = line ? line.attempts.indexOf(attempt()) : -1;
  const next = line?.attempts[Math.max(0, Math.min(line.attempts.length - 1, at + by))];
  if (!next) return;
  chosen = [next.take, next.ordinal];
  showHear();
  play();
}

export function listenToFilters() {
  for (const id of ['f-reason', 'f-take', 'f-order']) byId(id).addEventListener('change', showReview);
}

/** Handles a key; returns whether it was one of these. */
export function reviewKey(key) {
  const keys = {
    ' ': playOrPause, ARROWDOWN: () => step(1), ARROWUP: () => step(-1),
    ARROWRIGHT: () => stepAttempt(1), ARROWLEFT: () => stepAttempt(-1), U: undoHere, A: () => byId('line-note')?.focus(),
    ',': () => nudge('start', -1), '.': () => nudge('start', 1), ';': () => nudge('end', -1), "'": () => nudge('end', 1),
  };
  const run = keys[key] ?? (CHOICES.some((c) => c.key === key)
    ? () => decide(CHOICES.find((c) => c.key === key).choice) : null);
  if (run) run();
  return Boolean(run);
}

export const reviewKeys = () => [['Space', 'hear it, stop'], ['↑ ↓', 'line before, next line'],
  ['← →', 'attempt before, next attempt'], ...CHOICES.map((c) => [c.key, c.name]), ['U', 'undo what you did last'], ['A', 'write a note'],
  [', .', 'move the beginning'], ["; '", 'move the end']];
