// The scripts of a course: a list, and one of them open to be edited beside how it will be read.

import { question } from './ask.js';
import { takingFiles } from './drag.js';
import { closeEditor, openEditor, unsaved } from './editor.js';
import { addLessons } from './newcourse.js';
import { byId, count, el, fill, short } from './words.js';

let course = '';
let title = '';
let listed = '';
let open = '';
let asked = 0;

/** Shows the room; called when it is entered and whenever the course may have changed. */
export async function showScripts(home) {
  const { name } = home.course;
  if (!name) {
    closeEditor();
    byId('scripts').replaceChildren(el('h2', { class: 'headline' }, 'Scripts'), el('p', {}, 'Open a course first.'));
    return;
  }
  if (name !== course) changeTo(name);
  title = home.course.today?.title ?? name;
  if (open) {
    if (!byId('editor')) await edit(open);
    return;
  }
  const answer = await question('scripts', { do: 'list' });
  if (name !== course) return;
  const now = JSON.stringify([name, answer]);
  if (open || (now === listed && byId('script-list'))) return;
  listed = now;
  list(answer);
}

/** Only the first course may be opened at the script that the address names: later the address is that of the course before. */
function changeTo(name) {
  const first = !course;
  closeEditor();
  if (!first) {
    byId('scripts').replaceChildren();
    address('');
  }
  open = first ? new URLSearchParams(location.search).get('script') ?? '' : '';
  course = name;
  listed = '';
}

function list({ lessons = [], trouble }) {
  fill('scripts',
    el('h2', { id: 'h-scripts', class: 'headline' }, 'Scripts'),
    trouble ? el('p', { class: 'wrong', role: 'alert' }, trouble) : '',
    el('p', { class: 'small' }, 'Choose a lesson to write in it and to see how it will be read.'),
    el('ol', { id: 'script-list', class: 'lessons' }, ...lessons.map(row)),
    el('div', { class: 'drop', id: 'script-drop', ...takingFiles('over', (files) => addLessons({ name: course, title }, files)) },
      el('p', {}, 'Drop documents (DOCX, ODT, RTF, PDF, web pages) or text (Markdown, TXT) here to add them as lessons.'),
      el('p', { class: 'choices' }, el('button', { type: 'button', id: 'new-lesson', onclick: askForTitle }, 'New lesson…'),
        el('button', { type: 'button', id: 'add-lessons', onclick: () => addLessons({ name: course, title }) }, 'Add documents or texts…')),
      el('div', { id: 'naming' })));
}

function askForTitle() {
  byId('naming').replaceChildren(el('form', { class: 'card', onsubmit: makeLesson },
    el('label', { for: 'lesson-title', class: 'label' }, 'Title of the lesson'),
    el('input', { id: 'lesson-title', required: true, autocomplete: 'off', maxlength: '120' }),
    el('p', { id: 'lesson-wrong', class: 'wrong', role: 'alert' }),
    el('p', { class: 'choices' }, el('button', { type: 'submit', class: 'main', id: 'lesson-make' }, 'Begin to write'),
      el('button', { type: 'button', class: 'quiet', onclick: () => byId('naming').replaceChildren() }, 'Close'))));
  byId('lesson-title').focus();
}

/** Makes an empty lesson, and opens it to be written. */
async function makeLesson(event) {
  event.preventDefault();
  const named = byId('lesson-title').value.trim();
  const file = `${named.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '').slice(0, 60) || 'lesson'}.md`;
  const text = `---\ntitle: "${named.replace(/\\/g, '\\\\').replace(/"/g, '\\"')}"\n---\n\n`;
  const answer = await question('new', { do: 'add', of: course, lessons: [{ name: file, text }] });
  if (answer.trouble) byId('lesson-wrong').textContent = answer.trouble;
  else await edit(file);
}

function row(lesson) {
  const facts = lesson.why || `${count(lesson.words, 'word')} · ${short(lesson.seconds)}`;
  return el('li', { class: 'script-row' },
    el('button', { type: 'button', id: `script-${lesson.number}`, class: 'course script-open', onclick: () => edit(lesson.file) },
      el('span', { class: 'n' }, String(lesson.number)),
      el('span', { class: 'name' }, lesson.title),
      el('span', { class: lesson.why ? 'why' : 'small' }, facts),
      el('span', { class: 'small file' }, lesson.file, unsaved(course, lesson.file) ? ' · not saved yet' : '')));
}

async function edit(file) {
  open = file;
  address(file);
  const of = course;
  const mine = ++asked;
  const answer = await question('scripts', { do: 'open', file });
  // The room may have been drawn anew and asked a second time: opened once, or what is being typed would lose the cursor.
  if (mine !== asked || of !== course || open !== file) return;
  if (answer.trouble) {
    open = '';
    address('');
    list({ trouble: answer.trouble });
    return;
  }
  openEditor(byId('scripts'), course, answer, (other) => { open = other; address(other); }, close);
}

function close() {
  open = '';
  listed = '';
  address('');
  closeEditor();
  showScripts({ course: { name: course } }).then(() => byId('script-list')?.querySelector('button')?.focus());
}

const address = (file) => history.replaceState(null, '',
  file ? `?view=scripts&script=${encodeURIComponent(file)}` : '?view=scripts');
