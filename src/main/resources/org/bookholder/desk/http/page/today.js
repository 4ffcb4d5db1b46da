// Today: the one thing to do next, the running order with its breaks, and the reading that is going on.

import { items, reasons } from './agenda.js';
import { question } from './ask.js';
import { dayButton } from './daybutton.js';
import { handle, planned } from './order.js';
import { filmOf } from './film.js';
import { byId, count, dated, el, fill, linesRead, said, short } from './words.js';

export const goesOn = (home) => ['PREPARING', 'OPEN'].includes(home.reading.step);

/** What a lesson asks for now, as a button or a link; null if nothing here can do it. */
function step(home, lesson, act, strong) {
  const id = `do-${lesson.name}`;
  const attributes = { type: 'button', id: strong ? 'do-next' : id, class: strong ? 'main' : '', disabled: goesOn(home) };
  const key = strong ? el('kbd', {}, 'Enter') : '';
  if (lesson.unread) {
    return el('button', { ...attributes, onclick: () => act({ do: 'read', lesson: lesson.name }) },
      lesson.begun ? 'Read on' : 'Read it', ' ', key);
  }
  if (lesson.pickups) {
    return el('button', { ...attributes, onclick: () => act({ do: 'read', lesson: lesson.name, pickups: true }) },
      'Pick them up', ' ', key);
  }
  const there = room(lesson);
  if (there) {
    return el('a', { class: 'button', id: attributes.id, href: `?view=${there.view}`, onclick: (event) => {
      event.preventDefault();
      document.dispatchEvent(new CustomEvent('go', { detail: there.view }));
      there.choose();
    } }, there.name, ' ', key);
  }
  return lesson.session && lesson.stage === 'CHECKED' ? el('a', { class: 'button', id: attributes.id, href: address(home.course.name, lesson.session) }, 'Hear and decide') : null;
}

/** The room in which the next step of a lesson is done that needs no more reading: its film is made there, or its export checked. */
function room({ file, stage, export: film, found }) {
  if (stage === 'EXPORTED') {
    return { view: 'check', name: found ? 'Check it again' : 'Check it', choose: () => byId('w-files').add([film]) };
  }
  return stage === 'RECORDED' ? { view: 'film', name: 'Make its film', choose: () => filmOf(file) } : null;
}

const address = (course, session) => `course/${course}/session/${session}/`;

export function readNext(home, act) {
  const next = home.course.today?.next;
  if (next && !goesOn(home)) step(home, next, act, true)?.click();
}

/** The reading that is going on, or how the last one ended. */
export function showReading(home, act) {
  const now = home.reading;
  const show = { NONE: () => [], PREPARING: preparing, OPEN: open, ENDED: over, FAILED: failed }[now.step];
  const shown = show(home, now, act);
  fill('reading', shown.length && el('div', { class: `card ${now.step === 'FAILED' ? 'wrong-card' : 'live-card'}` }, ...shown,
    now.said.length ? el('ul', { class: 'said' }, ...now.said.map((sentence) => el('li', {}, sentence))) : null));
}

const preparing = (home, now) => [
  el('p', { class: 'small' }, 'Getting ready'),
  el('h3', {}, now.title),
  el('p', {}, 'The reading window opens in a moment.'),
];

const open = (home, now, act) => [
  el('p', { class: 'small' }, now.rolling ? (now.held ? 'Held' : 'Being read now') : 'The reading window is open'),
  el('h3', {}, now.title),
  el('p', {}, [now.takes ? `Line ${now.line} of ${now.lines}` : count(now.lines, 'line'),
    now.pickups ? `${now.pickups} to pick up so far` : ''].filter(Boolean).join(' · ')),
  now.next?.title ? el('p', { class: 'small', id: 'up-next' }, `Next: ${now.next.title}, about ${short(now.next.seconds)}${now.next.more
    ? `, then ${now.next.more} more` : ', the last'}; all is read about ${now.next.ends}.`) : '',
  el('p', { class: 'choices' },
    now.done && now.next?.title ? el('button', { type: 'button', class: 'main', id: 'go-on', onclick: () => act({ do: 'next_lesson' }) }, 'Next lesson') : null,
    el('a', { class: 'button', id: 'live', href: address(now.course, now.session) }, 'Live desk'),
    el('button', { type: 'button', id: 'end-reading', onclick: () => act({ do: 'end_reading' }) }, now.next ? 'End the day' : 'End the reading')),
  el('p', { class: 'small' }, 'In the reading window: K shows the keys, Esc twice ends.'),
];

function over(home, now, act) {
  const next = home.course.today?.next;
  const other = next && next.name !== now.lesson && home.course.name === now.course;
  return [
    el('p', { class: 'small' }, now.faulty ? 'A fault of the program ended the session. What was read is kept.' : 'Session ended'),
    el('h3', {}, now.title),
    el('p', { id: 'came-to' }, now.read ? `${linesRead(now)}; ${now.pickups ? `${now.pickups} to pick up` : 'nothing to pick up'}.`
      : 'Nothing was read.'),
    el('p', { class: 'choices' }, ...[
      now.pickups && el('button', { type: 'button', class: 'main', id: 'pick-up',
        onclick: () => act({ do: 'read', lesson: now.lesson, pickups: true }) }, 'Pick them up'),
      now.read && el('a', { class: 'button', id: 'review', href: address(now.course, now.session) }, 'Hear and decide'),
      other && next.unread && el('button', { type: 'button', id: 'read-next',
        onclick: () => act({ do: 'read', lesson: next.name }) }, `Next: ${next.title}`),
      el('button', { type: 'button', class: 'quiet', id: 'dismiss', onclick: () => act({ do: 'dismiss' }) }, 'Close')].filter(Boolean)),
    now.pickups ? el('p', { class: 'small' }, 'To pick up: the window opens again, and the pickup round begins.') : '',
  ];
}

const failed = (home, now, act) => [
  el('p', { class: 'small' }, 'This did not work'),
  el('h3', {}, now.title ?? ''),
  el('p', { class: 'choices' },
    el('button', { type: 'button', id: 'retry', onclick: () => act({ do: 'read', lesson: now.lesson, pickups: now.round }) }, 'Try again'),
    el('button', { type: 'button', class: 'quiet', id: 'dismiss', onclick: () => act({ do: 'dismiss' }) }, 'Close')),
];

export function showNext(home, act) {
  const { today } = home.course;
  const next = today?.next;
  const quiet = home.reading.step !== 'NONE' || !next;
  if (quiet) {
    fill('next');
    return;
  }
  const facts = [next.unread ? count(next.words, 'word') : '',
    next.unread ? `about ${short(next.seconds)} ${next.ownPace ? 'at your pace' : 'long'}` : '',
    next.begun || !next.unread ? todo(next) : '', next.breakAfter ? 'a break after it' : ''];
  fill('next', el('div', { class: 'card next' },
    el('div', {}, el('p', { class: 'small' }, 'Next'), el('h3', {}, `${next.number} · ${next.title}`),
      el('p', { class: 'small' }, facts.filter(Boolean).join(' · ')),
      next.why ? el('p', { class: 'small', id: 'why-next' }, `Why: ${dated(next.why)}.`) : ''),
    step(home, next, act, true)));
}

export function showOrder(home, act) {
  const { today } = home.course;
  if (!today) {
    fill('order');
    return;
  }
  fill('order',
    today.lost.length || today.moved ? el('p', { id: 'lost', class: 'small' }, today.lost.length
      ? `Nothing was recorded on ${today.lost.map((day) => said(day)).join(', ')}, so the plan has moved. ` : 'The plan has moved. ',
    el('a', { href: '?view=plan' }, 'See what moved')) : null,
    ...(today.day === 'today' ? beside('Look at this first', facts(today)) : beside('What you can do today', today.agenda.items)),
    ...list('Running order', today.order, home, act, 'todays'),
    ...reasons(today.agenda),
    today.ends && today.order.length ? el('p', { class: 'small', id: 'ends' }, `All of it is read about ${today.ends}. `, planned(home, act)) : planned(home, act),
    ...list(today.order.length ? 'The other lessons' : 'Lessons', today.rest, home, act),
    el('p', { class: 'small' }, `Steps of each lesson: ${today.steps.join(' · ')}`),
    ...(today.day === 'today' ? today.unplanned : []).map((why) => el('p', { class: 'small' }, why)));
}

/** What is to be done beside the lessons of the running order. */
const beside = (title, all) => (all.length ? [el('h3', { class: 'list-title' }, title), items(all, 'today')] : []);

const facts = ({ agenda }) => agenda.items.filter(({ kind }) => kind === 'FACT');

function list(title, rows, home, act, id) {
  if (!rows.length) return [];
  const shown = { lesson, break: pause, unreadable };
  return [el('h3', { class: 'list-title' }, title), el('ol', { class: 'lessons', id }, ...rows.flatMap((row, i) => [
    ...headed(rows, i), shown[row.kind](row, home, act)]))];
}

/** The module of a row, where another one begins; a break stands in none. */
function headed(rows, i) {
  const before = rows.slice(0, i).findLast((row) => row.kind !== 'break');
  return rows[i].module && rows[i].module !== before?.module ? [el('li', { class: 'of-module' }, rows[i].module)] : [];
}

/** The planned day stands above the list. */
const todo = (row) => row.todo.replace(/ on \d{4}-\d\d-\d\d$/, '');

const pause = (row) => el('li', { class: 'pause' },
  `break, ${row.minutes} minutes, away from the screen${row.at ? `; about ${row.at}` : ''}`);

const unreadable = (row) => el('li', { class: 'lesson broken' },
  el('span', { class: 'n' }, String(row.number)), el('span', { class: 'name' }, row.title),
  el('span', { class: 'why' }, row.why));

function lesson(row, home, act) {
  const { today } = home.course;
  const isNext = today.next?.name === row.name && home.reading.step === 'NONE';
  const length = row.camera ? `${short(row.seconds)} · about ${row.camera} min to record` : short(row.seconds);
  return el('li', { class: 'lesson' },
    el('span', { class: 'n' }, goesOn(home) ? '' : handle(home, row, act), String(row.number)),
    el('span', { class: 'name' }, row.title),
    way(row, today.steps),
    el('span', { class: `todo ${row.pickups && !row.unread ? 'open' : ''}` }, what(row, length),
      (row.unread || row.pickups) && !goesOn(home) ? dayButton(row, (asked) => question('plan', asked), tell) : '',
      row.why && !isNext ? el('span', { class: 'because' }, `Why: ${dated(row.why)}.`) : ''),
    isNext ? el('span', { class: 'do' }) : el('span', { class: 'do' }, step(home, row, act, false)));
}

/** Says on the page what came of something. */
const tell = (text, done) => document.dispatchEvent(new CustomEvent('tell', { detail: { text, done } }));

/** What a lesson asks for; lines to pick up of today are best read while everything is still set up. */
function what(row, length) {
  if (row.fresh && row.pickups && !row.unread) return `${count(row.pickups, 'pickup')}, still set up?`;
  return row.begun ? todo(row) : `${row.at ? `at ${row.at} · ` : ''}${length}`;
}

/** Six small bars; a screen reader is told the last step that is done. */
function way(row, names) {
  const said = names.map((name, i) => (row.way[i] >= 1 ? name : row.way[i] > 0 ? `partly ${name}` : '')).filter(Boolean).join(', ');
  const bars = row.way.map((part) => el('progress', { max: '1', value: String(part), 'aria-hidden': 'true' }));
  return el('span', { class: 'way', role: 'img', 'aria-label': said, title: said }, ...bars);
}
