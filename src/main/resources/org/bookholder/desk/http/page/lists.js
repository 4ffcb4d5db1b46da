// Lists: what to shoot, what to set up, what belongs to a launch. Everything on them can be ticked, remarked on, left out and added to.

import { question } from './ask.js';
import { typeAgain, typedIn } from './inputs.js';
import { paper } from './paper.js';
import { byId, dated, el, fill } from './words.js';

let list = null;
let open = 'shots';
let only = false;
let course = '';
/** Addresses of pictures by their items, or why there is none. */
const pictures = new Map();

export async function showLists(home) {
  if (course !== home.course.folder) {
    course = home.course.folder;
    list = null;
    pictures.clear();
  }
  const wanted = new URLSearchParams(location.search).get('list');
  if (wanted) open = wanted;
  if (byId('lists').contains(document.activeElement) && document.activeElement.matches('input[type=text]')) return;
  const wrong = await told({ do: 'show' });
  if (wrong && !list) byId('lists').replaceChildren(el('h2', { class: 'headline' }, 'Lists'), el('p', { class: 'wrong', role: 'alert' }, home.course.trouble || wrong));
}

/** Asks for something and shows the list after it; returns why it was not done. `saved` is the id of the field that is written down with it. */
async function told(what, saved = '') {
  const answer = await question('lists', { list: open, ...what });
  if (answer.trouble) return answer.trouble;
  list = answer;
  show(saved);
  return '';
}

async function change(what, saved = '', wrong = 'lists-wrong') {
  const trouble = await told(what, saved);
  if (byId(wrong)) byId(wrong).textContent = trouble;
  return trouble;
}

function choose(name) {
  open = name;
  history.replaceState(null, '', `?view=lists&list=${name}`);
  change({ do: 'show' });
}

function show(saved = '') {
  const typed = typedIn(byId('lists'));
  paper(list.sheet);
  const rows = list.rows.filter((row) => !row.out && !(only && row.done));
  const out = list.rows.filter((row) => row.out && wanted(row.part));
  const unfolded = byId('lists-out')?.open;
  fill('lists',
    el('h2', { class: 'headline' }, 'Lists'),
    el('div', { class: 'list-choice', role: 'group', 'aria-label': 'Which list' }, ...list.lists.map(({ list: name, title }) => el('button', {
      type: 'button', id: `list-${name}`, 'aria-pressed': String(name === list.list), onclick: () => choose(name) }, title))),
    el('p', { class: 'good' }, `${list.about} `, el('strong', { id: 'lists-standing', role: 'status' }, list.rows.every((row) => row.out) ? '' : `${list.standing}.`)),
    list.parts.length > 1 ? parts() : '',
    el('p', { class: 'choices' }, el('button', { type: 'button', id: 'lists-only', 'aria-pressed': String(only), onclick: () => { only = !only; show(); } }, 'Only what is open'),
      el('button', { type: 'button', id: 'lists-print', onclick: () => print() }, 'Print')),
    el('p', { id: 'lists-wrong', class: 'wrong', role: 'alert' }),
    rows.length ? el('ul', { class: 'check-list' }, ...rows.flatMap((row, i) => [row.heading !== rows[i - 1]?.heading
      ? el('li', { class: 'of-module' }, row.heading || 'Your own') : '', item(row)].filter(Boolean))) : el('p', {}, only ? 'Nothing is open.' : 'Nothing is on this list yet.'),
    adding(),
    out.length ? el('details', { class: 'group', id: 'lists-out' }, el('summary', {}, `Left out: ${out.length}`),
      el('ul', { class: 'check-list' }, ...out.map((row) => el('li', { class: 'left-out' }, el('span', { class: 'name' }, row.heading ? `${row.heading}: ${row.text}` : row.text),
        el('button', { type: 'button', class: 'quiet', onclick: () => change({ do: 'leave', item: row.id, on: false }) }, 'Put it back'))))) : '');
  if (unfolded && byId('lists-out')) byId('lists-out').open = true;
  typeAgain(typed, saved);
}

const wanted = (part) => list.parts.find(({ name }) => name === part)?.wanted ?? true;

/** The kinds of things on the list; each can be left out as a whole. */
const parts = () => el('fieldset', { class: 'list-parts' }, el('legend', { class: 'label' }, 'On this list'),
  ...list.parts.map(({ name, wanted: on }, i) => {
    const box = el('input', { id: `part-${i}`, type: 'checkbox', onchange: (event) => change({ do: 'leave_part', part: name, on: !event.target.checked }) });
    box.checked = on;
    return el('label', {}, box, ` ${name}`);
  }));

function item(row) {
  const id = `${list.list}-${list.rows.indexOf(row)}`;
  const box = el('input', { id, type: 'checkbox', 'aria-describedby': `${id}-d`, onchange: (event) => change({ do: 'tick', item: row.id, on: event.target.checked }) });
  box.checked = row.done;
  const remark = el('input', { id: `${id}-r`, type: 'text', value: row.remark, maxlength: '500', placeholder: 'Remark', 'aria-label': `Remark on ${row.text}`,
    autocomplete: 'off', onchange: (event) => change({ do: 'remark', item: row.id, text: event.target.value }, `${id}-r`) });
  return el('li', { class: row.found === 'MISSING' && !row.done ? 'check missing-file' : 'check' },
    box, el('label', { for: id, class: 'name' }, row.text),
    el('span', { id: `${id}-d`, class: 'small' }, dated(row.detail)),
    row.pictured ? picture(row) : '',
    el('span', { class: 'remark' }, remark),
    el('button', { type: 'button', class: 'quiet', 'aria-label': `Leave out ${row.text}`, onclick: () => change({ do: 'leave', item: row.id, on: true }) }, 'Leave out'));
}

/** How it looked in the last session: a picture out of the camera's file. */
function picture(row) {
  const place = el('span', { class: 'still' });
  const put = (known) => place.replaceChildren(known.address
    ? el('img', { src: known.address, alt: `How it looked: ${row.text}`, width: '640' })
    : el('span', { class: 'small' }, known.trouble ?? 'No camera\u2019s file of that session was matched, so there is no picture.'));
  const known = pictures.get(row.id);
  if (known) put(known);
  else {
    question('lists', { list: list.list, do: 'picture', item: row.id }).then((answer) => {
      pictures.set(row.id, answer);
      put(answer);
    });
  }
  return place;
}

/** Adds an item of one's own; to a lesson, where the list goes by lessons. */
function adding() {
  const byLesson = list.list !== 'set-up';
  const add = async (event) => {
    event.preventDefault();
    const trouble = await change({ do: 'add', text: byId('list-text').value, group: byLesson ? byId('list-lesson').value : '' }, 'list-text', 'list-add-wrong');
    if (!trouble) byId('list-text').focus();
  };
  return el('form', { class: 'card list-add', onsubmit: add }, el('label', { for: 'list-text', class: 'label' }, 'Add your own'),
    el('span', { class: 'list-add-row' }, el('input', { id: 'list-text', type: 'text', maxlength: '500', autocomplete: 'off' }),
      byLesson ? el('select', { id: 'list-lesson', 'aria-label': 'Lesson that it belongs to' }, new Option('for no lesson', ''),
        ...list.lessons.map((title, i) => new Option(`${i + 1} · ${title}`, title))) : '',
      el('button', { type: 'submit', id: 'list-add' }, 'Add')),
    el('p', { id: 'list-add-wrong', class: 'wrong', role: 'alert' }));
}
