// One script as text, beside how it will be read. What was typed is kept in the browser until it is saved, and a change that was
// made in another program is noticed and never overwritten.

import { question } from './ask.js';
import { highlight, showLook } from './look.js';
import { byId, el } from './words.js';

const PAUSE = 350;
const LOOK_OUTSIDE = 3000;

let now = null;
let timer = 0;
let asked = 0;
let watch = 0;

const key = (course, file) => `script:${course}/${file}`;

/** Whether a script has text that was typed here and not saved. */
export const unsaved = (course, file) => localStorage.getItem(key(course, file)) !== null;

/**
 * Opens a script.
 *
 * @param answer what the program holds of it
 * @param renamed called when the script lies in another file
 * @param close called when the person goes back to the list
 */
export function openEditor(place, course, answer, renamed, close) {
  closeEditor();
  const kept = JSON.parse(localStorage.getItem(key(course, answer.file)) ?? 'null');
  now = { course, ...answer, renamed, close, saved: answer.text, outside: null };
  place.replaceChildren(...parts(close));
  if (kept && kept.text !== answer.text && answer.editable) {
    byId('text').value = kept.text;
    if (kept.revision !== answer.revision) changedOutside(answer);
    tell('Your text from before is here; it is not saved yet.');
    lookAgain();
  } else {
    byId('text').value = answer.text;
    localStorage.removeItem(key(course, answer.file));
    show(answer.look);
  }
  marked();
  byId('text').setSelectionRange(0, 0);
  (answer.editable ? byId('text') : byId('as-text')).focus();
  watch = setInterval(lookOutside, LOOK_OUTSIDE);
}

export function closeEditor() {
  clearInterval(watch);
  clearTimeout(timer);
  now = null;
}

const parts = (close) => [
  el('div', { class: 'editor-head' },
    el('button', { type: 'button', id: 'all-scripts', class: 'quiet', onclick: close }, '‹ All scripts'),
    el('h2', { id: 'h-scripts', class: 'headline' }, now.file),
    el('p', { id: 'saved', class: 'small', role: 'status' }),
    now.editable
      ? el('button', { type: 'button', id: 'save', class: 'main', onclick: save }, 'Save ', el('kbd', {}, 'Ctrl S'))
      : el('button', { type: 'button', id: 'as-text', class: 'main', onclick: asText }, 'Make a text file of it')),
  now.editable ? '' : el('p', { class: 'small' },
    'This is a document; here you see its text. To edit it here, make a text file of it: the document is kept in the folder "documents".'),
  el('div', { id: 'outside', role: 'alert' }),
  el('div', { id: 'editor', class: 'editor' },
    el('div', { class: 'writing' },
      el('label', { for: 'text', class: 'label' }, 'Text'),
      el('textarea', { id: 'text', spellcheck: 'true', readonly: !now.editable, oninput: typed, onkeydown: keyed,
        onkeyup: placed, onclick: placed }),
      el('p', { class: 'small' }, now.file.endsWith('.txt')
        ? 'A line in [square brackets] is a direction: shown, not spoken. [12](say:a dozen) says how 12 is read.'
        : 'A line after > is a direction: shown, not spoken. [12](say:a dozen) says how 12 is read.')),
    el('section', { class: 'reading-look', 'aria-labelledby': 'h-look' },
      el('h3', { id: 'h-look', class: 'label' }, 'As it will be read'),
      el('fieldset', { id: 'speakers', class: 'speakers' }),
      el('div', { id: 'look-at' }))),
];

function show(look) {
  showLook(byId('look-at'), look, now.editable ? say : null, sayInCourse, forgetHeard);
  showSpeakers(look.speakers ?? []);
}

/** Chooses for the whole course how something is said; an empty form takes that back. */
async function sayInCourse(written, said) {
  const here = now;
  const look = await question('scripts', { do: 'say', file: here.file, text: byId('text').value, written, said });
  if (here !== now) return;
  if (look.trouble && byId('say-wrong')) byId('say-wrong').textContent = look.trouble;
  else if (look.trouble) tell(look.trouble);
  else {
    show(look);
    tell(said ? `“${written}” is said so in the whole course` : `“${written}” is said as usual again`);
  }
}

/** Forgets that a word is heard as something else; it is called misread again. */
async function forgetHeard({ presenter, written, heard }) {
  const here = now;
  const look = await question('scripts', { do: 'forget_heard', file: here.file, text: byId('text').value, presenter, written, heard });
  if (here !== now) return;
  if (look.trouble) {
    tell(look.trouble);
    return;
  }
  show(look);
  byId('heard')?.querySelector('summary').focus();
  tell(`“${written}” heard as “${heard}” is called misread again`);
}

/** Lets the person choose whose lines are read; the choice stands in the script itself. */
function showSpeakers(speakers) {
  const focused = byId('speakers').contains(document.activeElement) ? document.activeElement.value : null;
  byId('speakers').replaceChildren(...(speakers.length < 2 || !now.editable ? [] : [
    el('legend', { class: 'label' }, 'Whose lines are read'),
    ...speakers.map(({ name, read }) => el('label', {},
      el('input', { type: 'checkbox', value: name, checked: read, onchange: chooseSpeakers }), ` ${name}`)),
  ]));
  // The boxes are made anew; who chooses by keys goes on where they were.
  [...byId('speakers').querySelectorAll('input')].find((box) => box.value === focused)?.focus();
}

function chooseSpeakers() {
  const boxes = [...byId('speakers').querySelectorAll('input')];
  const read = boxes.filter((box) => box.checked).map((box) => box.value);
  byId('text').value = withSpeakers(byId('text').value, read.length === boxes.length ? [] : read);
  typed();
}

/** The text with this setting at its head; all speakers are read where nobody is named. */
function withSpeakers(text, names) {
  const setting = names.length ? `speaker: "${names.join(', ').replace(/["\\]/g, '\\$&')}"\n` : '';
  const head = /^\s*---[ \t]*\n([\s\S]*?)^(?:---|\.\.\.)[ \t]*$/m.exec(text);
  if (head?.index !== 0) return setting ? `---\n${setting}---\n${text}` : text;
  const others = head[1].replace(/^speaker:.*\n/m, '');
  return `---\n${others}${setting}---${text.slice(head[0].length)}`;
}

const tell = (text) => { byId('saved').textContent = text; };

function marked() {
  const dirty = byId('text').value !== now.saved;
  if (byId('save')) byId('save').disabled = !dirty;
  if (!dirty) localStorage.removeItem(key(now.course, now.file));
  return dirty;
}

function typed() {
  clearTimeout(timer);
  timer = setTimeout(lookAgain, PAUSE);
  tell(marked() ? keep() : '');
}

/** Keeps in the browser what was typed; returns what to say of it. A browser refuses a text for which it has no room left. */
function keep() {
  try {
    localStorage.setItem(key(now.course, now.file), JSON.stringify({ text: byId('text').value, revision: now.revision }));
    return 'Not saved yet';
  } catch {
    return 'Not saved, and too long to be kept in the browser: save it now.';
  }
}

async function lookAgain() {
  const mine = ++asked;
  const here = now;
  const look = await question('scripts', { do: 'look', file: here.file, text: byId('text').value });
  if (mine !== asked || here !== now) return;
  if (look.trouble) tell(look.trouble);
  else show(look);
}

function keyed(event) {
  if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 's') {
    event.preventDefault();
    save();
  }
}

/** The line of the text in which the cursor stands is marked in how it will be read. */
function placed() {
  const { value, selectionStart } = byId('text');
  highlight(value.slice(0, selectionStart).split('\n').length);
}

async function save() {
  if (!marked()) return;
  const here = now;
  const text = byId('text').value;
  const answer = await question('scripts', { do: 'save', file: here.file, text, revision: here.revision });
  if (here === now) taken(answer, text);
}

/** Takes what the program answers to a save. */
function taken(answer, text) {
  if (answer.trouble) {
    tell(answer.trouble);
  } else if (answer.changed) {
    changedOutside(answer);
  } else {
    now.revision = answer.revision;
    now.saved = text;
    byId('outside').replaceChildren();
    now.outside = null;
    tell(answer.kept ? `Saved; the other text is kept in ${answer.kept}` : 'Saved');
    marked();
  }
}

async function lookOutside() {
  if (document.hidden || !byId('editor') || byId('scripts').hidden || now.outside) return;
  const here = now;
  const { revision } = await question('scripts', { do: 'revision', file: here.file });
  if (here !== now || !revision || revision === here.revision) return;
  const answer = await question('scripts', { do: 'open', file: here.file });
  if (here !== now || answer.trouble || answer.revision === now.revision) return;
  if (marked()) changedOutside(answer);
  else showOther(answer, 'Changed in another program; this is the new text');
}

function showOther(answer, why) {
  now.revision = answer.revision;
  now.saved = answer.text;
  now.outside = null;
  byId('text').value = answer.text;
  byId('outside').replaceChildren();
  tell(why);
  marked();
  lookAgain();
}

function changedOutside(answer) {
  now.outside = answer;
  byId('outside').replaceChildren(el('div', { class: 'card wrong-card' },
    el('h3', {}, 'This file was changed in another program'),
    el('p', {}, 'Both texts are safe. Which one is to be in the file? The other one is kept beside it.'),
    el('p', { class: 'choices' },
      el('button', { type: 'button', id: 'keep-mine', onclick: keepMine }, 'Mine'),
      el('button', { type: 'button', id: 'take-other', onclick: takeOther }, 'The other one')),
    el('details', {}, el('summary', {}, 'Show the other one'), el('pre', { class: 'other-text', tabindex: '0' }, answer.text))));
}

async function keepMine() {
  const here = now;
  const text = byId('text').value;
  const answer = await question('scripts', { do: 'save_over', file: here.file, text });
  if (here === now) taken(answer, text);
}

async function takeOther() {
  const here = now;
  const kept = await question('scripts', { do: 'keep', file: here.file, text: byId('text').value });
  if (here !== now) return;
  if (kept.trouble) {
    tell(kept.trouble);
    return;
  }
  const answer = await question('scripts', { do: 'open', file: here.file });
  if (here !== now) return;
  if (answer.trouble) tell(answer.trouble);
  else showOther(answer, `Your text is kept in ${kept.kept}`);
}

async function asText() {
  const here = now;
  const answer = await question('scripts', { do: 'as_text', file: here.file });
  if (here !== now) return;
  if (answer.trouble) {
    tell(answer.trouble);
    return;
  }
  const { course, renamed, close } = now;
  renamed(answer.file);
  openEditor(byId('scripts'), course, answer, renamed, close);
}

/**
 * Writes into the text how a word is said.
 *
 * @param source line of the text, from 1
 * @param nth which of the same words in that line, from 0
 */
function say(source, written, nth, spoken) {
  const lines = byId('text').value.split('\n');
  const escaped = written.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  const mark = new RegExp(`\\[${escaped}\\]\\(say:[^)]*\\)|(?<![\\p{L}\\p{N}]|\\p{N}[.,])${escaped}(?![\\p{L}\\p{N}]|[.,]\\p{N})`, 'gu');
  let seen = -1;
  const before = lines[source - 1] ?? '';
  lines[source - 1] = before.replace(mark, (found) => {
    seen += 1;
    return seen === nth ? `[${written}](say:${spoken})` : found;
  });
  if (lines[source - 1] === before) return false;
  byId('text').value = lines.join('\n');
  typed();
  const at = lines.slice(0, source).join('\n').length;
  byId('text').focus();
  byId('text').setSelectionRange(at, at);
  placed();
  return true;
}

window.addEventListener('beforeunload', (event) => { if (now && byId('text') && marked()) event.preventDefault(); });
