// A new course, or further lessons of one: from documents that are dropped, from files that are chosen, or from text that is pasted.
// Each is shown as it will be read before anything is written.

import { dropped, question } from './ask.js';
import { takingFiles } from './drag.js';
import { chooseFolder } from './folder.js';
import { showLook } from './look.js';
import { byId, count, el, short } from './words.js';

const MOST_BYTES = 16 << 20;

let lessons = [];
let shown = null;
let place = '';
let pasted = 0;
let named = false;

/** How many documents are still being read: a course made now would lack them. */
let reading = 0;

/** The course that the lessons are added to, with its name and title; null for a new one. */
let into = null;
let wanted = null;

const go = (view) => document.dispatchEvent(new CustomEvent('go', { detail: view }));

/** Opens the room to add lessons to the course that is shown, with files that were dropped, if any. */
export function addLessons(course, files = []) {
  wanted = course;
  go('new');
  take(files);
}

export function showNewCourse() {
  const next = wanted;
  wanted = null;
  if (byId('new-lessons') && next?.name === into?.name) return;
  into = next;
  byId('new').replaceChildren(
    el('h2', { class: 'headline' }, into ? `Add lessons to ${into.title}` : 'New course'),
    into ? el('p', { class: 'small' }, 'Your documents stay where they are; the course gets text files of its own.')
      : names(),
    ...places());
  list();
  (byId('new-title') ?? byId('choose-files')).focus();
}

const names = () => el('div', {},
    el('p', { class: 'small' }, 'Your documents stay where they are; the course gets text files of its own. Have the lessons in a folder already? ',
      el('button', { type: 'button', class: 'quiet inline', onclick: () => byId('open').click() }, 'Open the folder…')),
    el('div', { class: 'new-names' },
      el('div', {}, el('label', { for: 'new-title', class: 'label' }, 'Title'),
        el('input', { id: 'new-title', autocomplete: 'off', maxlength: '200', oninput: titled })),
      el('div', {}, el('label', { for: 'new-name', class: 'label' }, 'Name of its folder'),
        el('input', { id: 'new-name', autocomplete: 'off', maxlength: '80', oninput: () => { named = true; } })),
      el('div', {}, el('span', { class: 'label' }, 'Where'), el('button', { type: 'button', id: 'new-place', onclick: choosePlace }, 'In your home folder'))));

const places = () => [
  el('div', { class: 'drop', id: 'drop', ...takingFiles('over', take) },
    el('p', {}, 'Drop your lessons here, one file for each: documents (DOCX, ODT, RTF, PDF, web pages) or text (Markdown, TXT).'),
    el('p', { class: 'choices' },
      el('input', { type: 'file', id: 'files', multiple: true, accept: '.docx,.odt,.rtf,.pdf,.html,.htm,.md,.markdown,.txt', class: 'hidden-text',
        tabindex: '-1', 'aria-label': 'Files of lessons', onchange: () => take([...byId('files').files]) }),
      el('button', { type: 'button', id: 'choose-files', onclick: () => byId('files').click() }, 'Choose files…'),
      el('button', { type: 'button', id: 'paste', onclick: paste }, 'Paste a text…'))),
  el('div', { id: 'pasting' }),
  el('div', { class: 'editor' },
    el('section', { 'aria-label': into ? 'Lessons to be added' : 'Lessons of the new course' },
      el('ol', { id: 'new-lessons', class: 'lessons new-lessons' }),
      el('p', { id: 'new-reading', class: 'small', role: 'status' }),
      el('p', { id: 'new-wrong', class: 'wrong', role: 'alert' }),
      el('p', { class: 'choices' }, el('button', { type: 'button', class: 'main', id: 'make', onclick: make }, into ? 'Add them' : 'Make the course'))),
    el('section', { class: 'reading-look', 'aria-label': 'As it will be read' },
      el('div', { id: 'new-tables' }), el('div', { id: 'new-look', role: 'status' }))),
];

/** The folder is named like the course, until somebody names it. */
function titled() {
  if (!named) byId('new-name').value = byId('new-title').value.replace(/[\\/:*?"<>|.]+/g, ' ').trim().replace(/\s+/g, '-').toLowerCase();
}

const choosePlace = () => chooseFolder((folder) => {
  place = folder;
  byId('new-place').textContent = `In ${folder}`;
  return true;
}, 'Choose a place for it');

async function take(files) {
  tell('');
  let left = files.length;
  reading += left;
  list();
  try {
    for (const file of files) {
      if (file.size > MOST_BYTES) add({ name: file.name, trouble: 'It is too large for a script (over 16 MB).' });
      else await offer({ file, name: file.name });
      left -= 1;
      reading -= 1;
      list();
    }
  } finally {
    reading -= left;
    list();
    byId('files').value = '';
  }
}

/** Asks how a file would be taken over, and lists it. */
async function offer(source, at = null) {
  const answer = await dropped({ name: source.name, ...source.chosen }, source.file);
  if (at) {
    Object.assign(at, answer);
    list();
    show(at);
  } else {
    add({ ...source, ...answer, name: answer.name ?? source.name });
  }
}

function add(lesson) {
  lessons.push(lesson);
  lessons.sort((a, b) => a.name.localeCompare(b.name, 'en', { numeric: true }));
  list();
  show(lesson);
}

function paste() {
  byId('pasting').replaceChildren(el('form', { class: 'card', onsubmit: pasteIt },
    el('label', { for: 'paste-name', class: 'label' }, 'Name of the lesson'),
    el('input', { id: 'paste-name', required: true, autocomplete: 'off', value: `lesson-${lessons.length + 1}` }),
    el('label', { for: 'paste-text', class: 'label' }, 'Text'),
    el('textarea', { id: 'paste-text', required: true, class: 'paste-text' }),
    el('p', { id: 'paste-wrong', class: 'wrong', role: 'alert' }),
    el('p', { class: 'choices' }, el('button', { type: 'submit' }, 'Add it'),
      el('button', { type: 'button', class: 'quiet', onclick: () => byId('pasting').replaceChildren() }, 'Close'))));
  byId('paste-text').focus();
}

async function pasteIt(event) {
  event.preventDefault();
  const name = byId('paste-name').value.trim();
  const answer = await question('new', { do: 'pasted', name: /\.(md|markdown|txt)$/i.test(name) ? name : `${name}.md`,
    text: byId('paste-text').value });
  if (answer.trouble) {
    byId('paste-wrong').textContent = answer.trouble;
    return;
  }
  byId('pasting').replaceChildren();
  pasted += 1;
  add({ ...answer, id: pasted });
  byId('paste').focus();
}

function list() {
  byId('new-lessons').replaceChildren(...lessons.map((lesson, i) => el('li', { class: 'new-lesson' },
    el('button', { type: 'button', id: `new-${i + 1}`, class: 'course', 'aria-current': lesson === shown && 'true', onclick: () => show(lesson) },
      el('span', { class: 'name' }, lesson.look?.title ?? lesson.name),
      el('span', { class: lesson.trouble || lesson.look?.wrong ? 'why' : 'small' }, facts(lesson))),
    el('button', { type: 'button', class: 'quiet', 'aria-label': `Leave out ${lesson.name}`, onclick: () => leave(lesson) }, '✕'))));
  byId('make').disabled = reading > 0 || !lessons.some((lesson) => lesson.text !== undefined);
  byId('new-reading').textContent = reading ? `${count(reading, 'document')} still being read…` : '';
}

function facts({ name, trouble, look }) {
  if (trouble) return `${name}: ${trouble}`;
  if (look.wrong) return `${name}: it can\u2019t be read yet (${look.wrong})`;
  const left = look['left out'].length;
  return [name, count(look['spoken words'], 'word'), short(look.seconds), left ? `${count(left, 'thing')} left out` : '']
    .filter(Boolean).join(' · ');
}

function leave(lesson) {
  lessons = lessons.filter((other) => other !== lesson);
  if (shown === lesson) {
    shown = null;
    byId('new-look').replaceChildren();
    byId('new-tables').replaceChildren();
  }
  list();
  (byId('new-1') ?? byId('choose-files')).focus();
}

function show(lesson) {
  shown = lesson;
  list();
  byId('new-tables').replaceChildren(...(lesson.tables ?? []).map((table) => columns(lesson, table)));
  if (lesson.look) showLook(byId('new-look'), lesson.look, null);
  else byId('new-look').replaceChildren(el('p', { class: 'wrong' }, `${lesson.name}: ${lesson.trouble}`));
}

/** Which columns of a table are read aloud. */
function columns(lesson, { number, columns: all }) {
  return el('fieldset', { class: 'table-columns' }, el('legend', {}, `Table ${number}: which columns are read aloud?`),
    ...all.map(({ heading, words, spoken }, i) => {
      const box = el('input', { type: 'checkbox', id: `t${number}-${i}`, onchange: () => choose(lesson) });
      box.checked = spoken;
      return el('label', { for: `t${number}-${i}` }, box, ` ${heading || `Column ${i + 1}`} (${count(words, 'word')})`);
    }),
    el('span', { class: 'small' }, 'The others are directions: shown, not spoken.'));
}

async function choose(lesson) {
  const focused = document.activeElement?.id;
  const chosen = lesson.tables.flatMap(({ number, columns: all }) => all
    .flatMap((_, i) => (byId(`t${number}-${i}`).checked ? [`${number}:${i}`] : [])));
  await offer({ ...lesson, name: lesson.file.name,
    chosen: { columns: chosen.join(' '), tables: lesson.tables.map(({ number }) => number).join(' ') } }, lesson);
  byId(focused)?.focus();
}

const tell = (text) => { byId('new-wrong').textContent = text; };

async function make() {
  tell('');
  byId('make').disabled = true;
  const all = lessons.filter(({ text }) => text !== undefined).map(({ name, text }) => ({ name, text }));
  const answer = await question('new', into ? { do: 'add', of: into.name, lessons: all }
    : { do: 'create', place, name: byId('new-name').value, title: byId('new-title').value, lessons: all });
  if (answer.trouble) {
    tell(answer.trouble);
    byId('make').disabled = false;
    byId('make').focus();
    return;
  }
  lessons = [];
  shown = null;
  named = false;
  place = '';
  const then = into ? 'scripts' : 'today';
  byId('new').replaceChildren();
  go(then);
}

/** A file that is dropped beside the place for it would otherwise be opened by the browser in place of the page. */
for (const kind of ['dragover', 'drop']) window.addEventListener(kind, (event) => event.preventDefault());

// Leaving the page would lose the lessons that are not yet made into a course.
window.addEventListener('beforeunload', (event) => { if (lessons.length) event.preventDefault(); });
