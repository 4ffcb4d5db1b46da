// The desk of a course: its sessions, the pickups of all of them, its board and plan.

import { answered } from './ask.js';
import { dayButton } from './daybutton.js';
import { dayOf, learnZone, now, timeOf } from './daytime.js';
import { enter, request } from './door.js';
import { meant, showKeys } from './keys.js';
import { REASONS as COMMON, entry, why, within } from './listed.js';
import { sure } from './model.js';
import { foldRail, links, ofDesk, rooms, works } from './rail.js';
import { fillSheet } from './sheet.js';
import { AWAY, ask, sending } from './wire.js';
import { byId, clock, count, dated, el, fill, linesRead, longDay, put } from './words.js';
import { dress, turn } from './dress.js';

const VIEWS = ['sessions', 'pickups', 'board'];
const READ_NOW = 'being read now';
const PERIOD = 2000;
const NOTICE = 8000;

let view = 'sessions';
let acts = false;
let atHome = false;
let course = null;
let tag = '';
let lost = '';
let notice = 0;
let boardShown = '';

/** A link to this page may name the view. */
let asked = new URLSearchParams(location.search).get('view') ?? '';

const REASONS = {
  ...COMMON,
  open: (l) => l.pickup && !l.since,
  all: () => true,
  skipped: (l) => l.outcome === 'skipped',
  marked: (l) => l.marked,
};

function say(text) {
  put('link', text);
  byId('link').classList.toggle('lost', text !== '');
  if (text && !course) byId('desk').hidden = false;
}

async function look() {
  try {
    const answer = await ask('course', { headers: tag ? { 'If-None-Match': tag } : {} });
    if (answer.status === 401) {
      start();
      return;
    }
    await takeIn(answer);
    lost = answer.ok || answer.status === 304 ? '' : await answer.text();
  } catch {
    lost = 'Connection lost. Reconnecting…';
  }
  if (!notice) say(lost);
  setTimeout(look, PERIOD);
}

const undo = () => act({ do: 'undo', undoable: course.undoable });

/** Says something for a while; `done` says that it is good news. */
function tell(text, done = false) {
  clearTimeout(notice);
  say(text);
  byId('link').classList.toggle('lost', !done);
  notice = setTimeout(() => { notice = 0; say(lost); }, NOTICE);
}

/** Asks the plan of home for something, which is about the course that is open there. */
async function plan(what) {
  const answer = await answered('../../ask', sending({ room: 'plan', of: ownName(), ...what }));
  if (!answer.trouble && what.do !== 'show') await takeIn(await ask('course'));
  return answer;
}

async function act(action) {
  const trouble = await request(action);
  if (trouble) {
    tell(trouble);
    return;
  }
  await takeIn(await ask('course'));
}

/** Shows the current state of the course, if the program answered. */
async function takeIn(answer) {
  if (!answer.ok) return;
  tag = answer.headers.get('ETag') ?? '';
  course = await answer.json();
  learnZone(course.zone);
  listOnce();
  show();
  if (asked) go(asked);
  asked = '';
}

/** Tells two sessions of one day apart. */
const when = (s) => `${dayOf(s.began)}, ${timeOf(s.began)}`;

/** Marks lines that a later session lists too: each is listed once, as it was last read. */
function listOnce() {
  const known = new Set();
  for (const s of [...course.sessions].reverse().sort((a, b) => b.began - a.began)) {
    for (const line of s.listed) {
      const key = JSON.stringify([s.number, s.lesson, line.text]);
      line.again = known.has(key);
      if (line.pickup || line.decision) known.add(key);
    }
    s.open = s.listed.filter((l) => REASONS.open(l) && !l.again).length;
  }
}

function show() {
  byId('desk').hidden = false;
  showRail();
  put('title', course.title);
  document.title = `${course.title} · desk`;
  showSessions();
  showFilters();
  showPickups();
  if (course.board) showBoard();
}

/** The heading of a session's lesson: its number, if it is one of the course, and its title. */
const headed = ({ number, lesson }) => (number ? `${number} · ${lesson}` : lesson);

/** The same with the module in which it stands. */
const placed = (s) => (s.module ? `${headed(s)} (${s.module})` : headed(s));

function showSessions() {
  const lessons = [...new Map(course.sessions.map((s) => [`${s.number} ${s.lesson}`, s])).values()]
    .sort((a, b) => a.number - b.number || a.lesson.localeCompare(b.lesson));
  const tables = lessons.map((lesson) => el('table', {},
    el('caption', {}, placed(lesson)),
    el('tbody', {},
      el('tr', {}, el('th', { scope: 'col' }, 'Began'), el('th', { scope: 'col', class: 'n' }, 'Takes'),
        el('th', { scope: 'col', class: 'n' }, 'Length'), el('th', { scope: 'col', class: 'n' }, 'Read'),
        el('th', { scope: 'col', class: 'n' }, 'To pick up'), el('th', { scope: 'col' }, '')),
      ...course.sessions.filter((s) => s.lesson === lesson.lesson && s.number === lesson.number)
        .sort((a, b) => b.began - a.began).map(sessionRow))));
  const left = course.left.map((why) => el('p', { class: 'small' }, `Left out: ${why}`));
  byId('list').replaceChildren(...(tables.length ? tables : [el('p', { class: 'empty' }, 'No session has been recorded yet.')]), ...left);
}

function sessionRow(s) {
  return el('tr', {},
    el('td', { class: 'name' }, el('a', { href: `session/${s.name}/` }, when(s))),
    el('td', { class: 'n' }, count(s.takes, 'take')), el('td', { class: 'n' }, clock(s.length)),
    el('td', { class: 'n' }, linesRead(s)),
    el('td', { class: 'n' }, s.open ? `${s.open} to pick up` : 'none'),
    el('td', { class: 'q' }, s.standing === 'finished' ? '' : s.standing,
      ...(s.standing === READ_NOW && acts ? [' ', el('button', { type: 'button', class: 'little', onclick: () => openDesk(s) }, 'Open its desk')] : [])));
}

/** A session that another process has open is at a desk of that process. */
async function openDesk(s) {
  try {
    const answer = await ask(`elsewhere?session=${s.name}`);
    if (answer.ok) location.assign((await answer.json()).address);
    else tell(`Not opened: ${await answer.text()}.`);
  } catch {
    tell(AWAY);
  }
}

/** Updates the options of a filter and keeps the selected one. */
function fillSelect(id, options) {
  const select = byId(id);
  const shown = [...select.options].slice(1).map((o) => `${o.value} ${o.text}`).join();
  if (shown === options.map(([value, text]) => `${value} ${text}`).join()) return;
  const chosen = select.value;
  select.replaceChildren(select.options[0], ...options.map(([value, text]) => new Option(text, value)));
  select.value = options.some(([value]) => value === chosen) ? chosen : '';
}

function showFilters() {
  const lessons = [...new Set([...course.sessions].sort((a, b) => a.number - b.number).map(headed))];
  fillSelect('f-lesson', lessons.map((l) => [l, l]));
  const lesson = byId('f-lesson').value;
  const sessions = course.sessions.filter((s) => !lesson || headed(s) === lesson);
  fillSelect('f-session', sessions.map((s) => [s.name, lesson ? when(s) : `${headed(s)}, ${when(s)}`]));
  const takes = Math.max(0, ...sessions.map((s) => s.takes));
  fillSelect('f-take', Array.from({ length: takes }, (_, i) => [String(i + 1), String(i + 1)]));
}

const began = ({ s, line }) => s.began + 1000 * (line.where?.at ?? 0);
const byScript = (a, b) => a.s.number - b.s.number || a.s.lesson.localeCompare(b.s.lesson)
  || a.line.line - b.line.line || began(a) - began(b);
const ORDERS = {
  script: byScript,
  time: (a, b) => began(a) - began(b),
  sure: (a, b) => sure(b.line) - sure(a.line) || byScript(a, b),
};

/** The lines that pass the filters, in the selected order. */
function listed() {
  const lesson = byId('f-lesson').value;
  const session = byId('f-session').value;
  const take = Number(byId('f-take').value);
  return course.sessions.filter((s) => (!lesson || headed(s) === lesson) && (!session || s.name === session))
    .flatMap((s) => s.listed.filter(REASONS[byId('f-reason').value]).map((line) => ({ s, line })))
    .filter(({ line }) => within(line, take) && (session || !line.again || byId('f-reason').value !== 'open'))
    .sort(ORDERS[byId('f-order').value]);
}

function showPickups() {
  const list = listed();
  put('count', count(list.length, 'line'));
  byId('items').replaceChildren(...(byId('f-order').value === 'script' ? byLesson(list) : list.map((one) => item(one))));
  byId('print').disabled = list.length === 0;
}

/** Prints the shown list, one sheet for each lesson, in script order; each line appears once, as last read. */
function layOut() {
  const lessons = new Map();
  for (const { s, line } of listed().sort(byScript)) {
    const sheet = s.module ? placed(s) : s.lesson;
    if (!lessons.has(sheet)) lessons.set(sheet, new Map());
    const taken = line.where ? `take ${line.where.take}, ${when(s)}` : when(s);
    lessons.get(sheet).set(line.line, { number: line.line, text: line.text, why: `${why(line)} · ${taken}` });
  }
  const [reason] = byId('f-reason').selectedOptions;
  fillSheet([...lessons].map(([title, lines]) => ({ title, lines: [...lines.values()] })),
    reason.value === 'open' ? 'to pick up' : `· ${reason.text}`);
}

function print() {
  if (!byId('print').disabled) window.print();
}

/** The lines of each lesson below its title. */
const byLesson = (list) => list.flatMap((one, i) => {
  const first = i === 0 || headed(list[i - 1].s) !== headed(one.s);
  return [...(first ? [el('li', { class: 'of-lesson' }, el('h3', {}, placed(one.s)))] : []), item(one, true)];
});

/** A line; below its lesson's title that is not said again. */
function item({ s, line }, titled = false) {
  const more = [why(line),
    line.again ? 'listed again in a later session' : '',
    line.since ? 'no longer open: read clean in another session, or the line has changed' : '',
    titled ? when(s) : `${s.lesson}, ${when(s)}`, line.where ? `take ${line.where.take}` : ''].filter(Boolean).join(' · ');
  return el('li', {}, el('a', {
    class: `item ${line.outcome}${line.pickup && !line.since ? ' pickup' : ''}`, href: `session/${s.name}/?line=${line.line}`,
  }, ...entry(line, line.text, more)));
}

/** The program sends the board as escaped HTML; this adds buttons for what only people can tell. */
function showBoard() {
  byId('undo').disabled = !acts || !course.undoable;
  // An element that is rebuilt under the pointer would lose the click.
  const board = JSON.stringify([course.page, course.board, course.edited, acts]);
  if (board === boardShown) return;
  boardShown = board;
  const focused = document.activeElement?.dataset?.lesson;
  byId('standing').innerHTML = course.page;
  sayDays(byId('standing'));
  const [head, ...rows] = byId('standing').querySelectorAll('table:first-of-type tr');
  head.append(el('th', { scope: 'col' }, 'Edit'));
  rows.filter((row) => row.matches('.module')).forEach((row) => row.firstChild.setAttribute('colspan', '8'));
  rows.filter((row) => row.matches('.unreadable')).forEach((row) => row.append(el('td')));
  rows.filter((row) => !row.matches('.module, .unreadable')).forEach((row, i) => {
    row.children[1].classList.add('name');
    const { name, title, number, unread, pickups } = course.board.lessons[i];
    if (acts && atHome && unread.length + pickups.length) row.children[5].append(dayButton({ number, title }, plan, tell));
    const done = course.edited[i];
    row.append(el('td', {}, el('button', {
      type: 'button', 'data-lesson': name, 'aria-pressed': String(done), disabled: !acts,
      'aria-label': done ? `${title} is edited; take that back` : `Mark ${title} as edited`,
      onclick: () => act({ do: done ? 'not_edited' : 'edited', lesson: name }),
    }, done ? 'Edited' : 'Mark as edited')));
  });
  if (focused) document.querySelector(`[data-lesson="${CSS.escape(focused)}"]`)?.focus();
}

/** Days stand in the plan as in the terminal; here they are said as elsewhere on the pages. */
function sayDays(box) {
  const texts = document.createTreeWalker(box, NodeFilter.SHOW_TEXT);
  while (texts.nextNode()) {
    const said = dated(texts.currentNode.data);
    if (said !== texts.currentNode.data) texts.currentNode.data = said;
  }
}

function go(next) {
  if (!VIEWS.includes(next) || (next === 'board' && !course?.board)) return;
  view = next;
  // Whoever comes back from a line lands on the list again. Before the course is known, the address says what was asked for.
  if (course) history.replaceState(null, '', `${location.pathname}?view=${view}`);
  for (const name of VIEWS) {
    byId(name).hidden = name !== view;
  }
  showRail();
}

const ownName = () => /\/course\/([^/]+)\//.exec(location.pathname)?.[1] ?? '';

/** All pages if this is a course of home; else those of the desk. */
function showRail() {
  const name = ownName();
  const list = atHome ? rooms(name, '../../') : rooms('desk', './').filter(([, , own]) => ofDesk(own));
  const opens = (own) => (VIEWS.includes(own) ? () => go(own) : null);
  fill('rooms', ...links('room', list.filter(([, , own]) => own !== 'board' || !course || course.board), view, opens));
  fill('works', ...links('work', works('../../'), view, opens));
  byId('h-work-part').hidden = !atHome;
  put('here', document.querySelector('.rooms [aria-current]')?.textContent ?? '');
}

const keys = () => [['1 2 3', 'sessions, pickups, board'],
  ...(view === 'pickups' ? [['L', 'print this list']] : view === 'board' ? [['U', 'undo']] : []),
  ['D', 'dark or light'], ['?', 'these keys']];

function onKey(event) {
  if (!meant(event)) return;
  const named = VIEWS[['Digit1', 'Digit2', 'Digit3'].indexOf(event.code)];
  const key = event.key.toUpperCase();
  if (named) go(named);
  else if (key === '?') showKeys(keys());
  else if (key === 'D') turn();
  else if (key === 'L' && view === 'pickups') print();
  else if (key === 'U' && view === 'board' && acts && course.undoable) undo();
  else return;
  event.preventDefault();
}

function start() {
  enter((may) => {
    acts = may.acts;
    atHome = Boolean(may.home);
    byId('home').hidden = !atHome;
    showRail();
    look();
  }, say);
}

dress();
byId('theme').addEventListener('click', turn);
byId('help').addEventListener('click', () => showKeys(keys()));
foldRail();
for (const id of ['f-reason', 'f-lesson', 'f-session', 'f-take', 'f-order']) {
  byId(id).addEventListener('change', () => { showFilters(); showPickups(); });
}
byId('print').addEventListener('click', print);
window.addEventListener('beforeprint', () => course && layOut());
byId('undo').addEventListener('click', undo);
document.addEventListener('keydown', onKey);
const date = () => put('date', longDay(new Date(now())));
date();
setInterval(date, 60_000);
start();
go('sessions');

// For code that inspects the page from outside, such as tests.
window.courseState = () => course;
