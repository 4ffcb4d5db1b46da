// Papers: a summary for a client or partner, a quotation, and the versions of a lesson; each as it is printed.

import { question } from './ask.js';
import { saving, typeAgain, typedIn } from './inputs.js';
import { paper } from './paper.js';
import { byId, el, fill } from './words.js';

const PAPERS = {
  summary: ['Summary', 'How far the course is, for a client or partner who only wants to know that: no costs, no names of files, no dates to come. Nothing is sent; print it, or copy it as text.'],
  quotation: ['Quotation', 'Hours and a price, if you make the course for somebody else: the plan\u2019s own figures, at your rate. This is no legal or tax advice.'],
  versions: ['Versions of a lesson', 'The texts of a lesson that were read, what was recorded, its edits, films and checks, and what changed from one to the next.'],
};
const MONEY = 'in your currency';

let open = 'summary';
let shown = null;
let words = '';
let lesson = '';
let course = '';

export async function showPapers(home) {
  if (course !== home.course.folder) {
    course = home.course.folder;
    lesson = '';
    words = '';
  }
  const wanted = new URLSearchParams(location.search).get('paper');
  if (PAPERS[wanted]) open = wanted;
  await told(home);
}

async function told(home) {
  const answer = await question('papers', { do: open, words, lesson });
  if (answer.trouble) {
    shown = null;
    paper('');
    byId('papers').replaceChildren(el('h2', { class: 'headline' }, 'Papers'), choices(), el('p', { class: 'wrong', role: 'alert' }, home?.course.trouble || answer.trouble));
    return;
  }
  shown = answer;
  show();
}

const choices = () => el('div', { class: 'list-choice', role: 'group', 'aria-label': 'Which paper' }, ...Object.entries(PAPERS).map(([name, [title]]) =>
  el('button', { type: 'button', id: `paper-${name}`, 'aria-pressed': String(name === open), onclick: () => choose(name) }, title)));

function choose(name) {
  open = name;
  history.replaceState(null, '', `?view=papers&paper=${name}`);
  told();
}

function show(saved = '') {
  const typed = typedIn(byId('papers'));
  paper(shown.sheet);
  const sheet = el('article', { class: 'paper on-page', 'aria-label': PAPERS[open][0] });
  sheet.innerHTML = shown.sheet;
  fill('papers', el('h2', { class: 'headline' }, 'Papers'), choices(), el('p', { class: 'good' }, PAPERS[open][1]),
    ({ summary: own, quotation: terms, versions: which })[open](),
    el('p', { class: 'choices' }, el('button', { type: 'button', id: 'paper-print', class: 'main', onclick: () => print() }, 'Print'),
      shown.text ? el('button', { type: 'button', id: 'paper-copy', onclick: copy }, 'Copy as text') : '',
      el('span', { id: 'paper-said', class: 'small', role: 'status' })),
    sheet);
  typeAgain(typed, saved);
}

async function copy() {
  try {
    await navigator.clipboard.writeText(shown.text);
    byId('paper-said').textContent = 'Copied.';
  } catch {
    byId('paper-said').textContent = 'Your browser does not let the page copy; print it instead.';
  }
}

/** Words of one's own above the summary; they are not kept. */
function own() {
  const area = el('textarea', { id: 'paper-words', rows: '3', maxlength: '2000', onchange: (event) => { words = event.target.value; told(); } });
  area.value = words;
  return el('p', { class: 'work-field' }, el('label', { for: 'paper-words', class: 'label' }, 'Your own words, above it'), area,
    el('span', { class: 'small' }, 'Only for this page; they are not kept.'));
}

const terms = () => el('div', { class: 'fields' }, ...shown.fields.map((field) => {
  const id = `q-${field.path.replace(/\W/g, '-')}`;
  return saving({ ...field, id, unit: field.unit === MONEY ? '' : field.unit, value: field.value || field.options[0]?.[0] || '' }, async (value) => {
    const answer = await question('papers', { do: 'set', path: field.path, value });
    if (answer.trouble) return answer.trouble;
    shown = answer;
    show(id);
    return '';
  });
}));

function which() {
  const select = el('select', { id: 'paper-lesson', onchange: (event) => { lesson = event.target.value; told(); } },
    ...shown.lessons.map(([name, title]) => new Option(title, name)));
  select.value = shown.lesson;
  return el('p', { class: 'work-field' }, el('label', { for: 'paper-lesson', class: 'label' }, 'Lesson'), select);
}

/** Draws the paper again when the course has changed, unless somebody is typing. */
export function papersChanged(home, act, has) {
  if (has('course') && !byId('papers').contains(document.activeElement)) showPapers(home);
}
