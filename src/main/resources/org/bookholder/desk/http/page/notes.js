// Notes: writing one, changing one, and the lists in which they are shown.

import { act } from './link.js';
import { draftsFrom } from './outbox.js';
import { writtenSubject } from './subject.js';
import { byId, clock, el, put } from './words.js';
import { inTake, model, takeAt } from './model.js';

const MOST = 30;

/** The line of the note that is being written: the one that was meant when its first letter was typed. */
let line = 0;

/** The number of the note that is being changed; 0 if none is. */
let changing = 0;

const subject = () => line || writtenSubject();

export function showNoteForm() {
  put('note-label', `Note on line ${subject()}`);
}

export function listenToNotes() {
  const field = byId('note');
  field.addEventListener('input', () => {
    if (!field.value.trim()) line = 0;
    else if (!line) line = writtenSubject();
    showNoteForm();
  });
  byId('note-form').addEventListener('submit', (event) => {
    event.preventDefault();
    const about = subject();
    sendNote(field, about, () => { line = about; }).finally(showNoteForm);
    line = 0;
    showNoteForm();
  });
  draftsFrom(() => (field.value.trim() ? `note on line ${subject()} (${field.value.trim()})` : ''));
}

/**
 * Sends the note that was written into a field, which is empty at once: a second press while the answer is under way sends nothing. A note
 * that was refused is put back, unless another one is being written.
 *
 * @param back called when it was put back
 */
export async function sendNote(field, about, back = () => {}) {
  const text = field.value.trim();
  if (!text) return;
  field.value = '';
  // Now and not with the answer: by then the next note may be begun, and its letters would be taken for keys.
  field.blur();
  if (!await act({ do: 'note', line: about, text }) && !field.value) {
    field.value = text;
    back();
  }
}

/** Shows notes in a list. A list in which somebody is changing a note is left alone until they have finished. */
export function showNotes(host, notes, withLine) {
  const drawn = JSON.stringify([notes, withLine, model.acts]);
  if (host.dataset.drawn === drawn || host.querySelector('input')) return;
  host.dataset.drawn = drawn;
  host.replaceChildren(...notes.map((note) => item(host, note, withLine)));
}

export const lastNotes = () => [...model.notes].reverse().slice(0, MOST);

const when = (note) => {
  const take = takeAt(note.at);
  return take ? clock(inTake(take, note.at)) : '';
};

function item(host, note, withLine) {
  const what = note.text || (note.pickup ? 'marked as a pickup' : '');
  const where = [withLine ? `line ${note.line}` : '', note.by].filter(Boolean).join(', ');
  const row = el('li', { class: note.pickup ? 'marked' : '' }, el('span', { class: 'time' }, when(note)), ' ',
    el('span', { class: 'said-of-it' }, what), ' ', el('span', { class: 'small' }, where));
  if (note.note && model.acts) {
    row.append(el('button', {
      type: 'button', class: 'quiet little', 'aria-label': `Change the note on line ${note.line}`,
      onclick: () => change(host, row, note),
    }, 'Change'));
  }
  return row;
}

function change(host, row, note) {
  if (changing) return;
  changing = note.note;
  const field = el('input', { maxlength: 500, autocomplete: 'off', 'aria-label': `Note on line ${note.line}` });
  field.value = note.text;
  let over = false;
  const end = async (keep) => {
    if (over) return;
    over = true;
    if (keep && field.value.trim() !== note.text) await act({ do: 'edit', note: note.note, text: field.value.trim() });
    changing = 0;
    field.remove();
    host.dataset.drawn = '';
    host.dispatchEvent(new CustomEvent('changed', { bubbles: true }));
  };
  field.addEventListener('keydown', (event) => {
    if (event.key === 'Enter' || event.key === 'Escape') {
      event.preventDefault();
      event.stopPropagation();
      end(event.key === 'Enter');
    }
  });
  // Only Enter removes a note by leaving it empty.
  field.addEventListener('blur', () => end(field.value.trim() !== ''));
  row.replaceChildren(field);
  field.focus();
}
