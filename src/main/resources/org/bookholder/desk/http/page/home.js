// The program's own page: courses, today's lessons, the reading that is going on, and settings.

import { askOf, ofCourse } from './ask.js';
import { request } from './door.js';
import { dress, turn } from './dress.js';
import { chooseFolder } from './folder.js';
import { begin, ended } from './homelink.js';
import { lasts, showJobs } from './jobs.js';
import { meant, showKeys } from './keys.js';
import { showSettings } from './options.js';
import { showStorage } from './storage.js';
import { paper } from './paper.js';
import { foldRail, links, ofDesk, rooms, works } from './rail.js';
import { ROOMS } from './rooms.js';
import { goesOn, readNext, showNext, showOrder, showReading } from './today.js';
import { refreshRoom, showRoom } from './work.js';
import { OWN } from './views.js';
import { byId, count, dated, el, fill, hours, longDay, put } from './words.js';

const NUMBERED = ['today', 'settings', 'tools'];
const VIEWS = [...NUMBERED, ...Object.keys(OWN)];
const WORK = Object.keys(ROOMS);
const NOTICE = 8000;

/** What is done to the course that the page shows. */
const OF_COURSE = ['read', 'order', 'begin'];

const home = {};
let view = 'today';
let notice = 0;

/** Asks the program for something; returns whether it was done, and says why if it was not. */
async function act(action) {
  const trouble = await request(OF_COURSE.includes(action.do) ? ofCourse(action) : action);
  if (trouble) tell(trouble);
  return !trouble;
}

function tell(text, done = false) {
  clearTimeout(notice);
  say(text);
  byId('link').classList.toggle('lost', text !== '' && !done);
  notice = setTimeout(() => say(''), NOTICE);
}

function say(text) {
  put('link', text);
  byId('link').classList.toggle('lost', text !== '');
}

function changed(parts) {
  const first = !home.courses;
  Object.assign(home, parts);
  byId('desk').hidden = false;
  byId('desk').classList.remove('opening');
  const has = (...names) => names.some((name) => name in parts);
  if (has('courses', 'course')) showCourses();
  if (has('course', 'looking')) showHead();
  if (has('damaged')) showDamaged();
  if (has('reading', 'course')) showReading(home, act);
  if (has('course', 'reading')) {
    showNext(home, act);
    showOrder(home, act);
    showRest();
  }
  if (has('jobs')) showJobs(home, act, go);
  if (has('jobs', 'shelf', 'course')) refreshRoom(home, act);
  if (has('before')) showBefore();
  if (has('settings', 'before')) showSettings(home);
  if (OWN[view]) OWN[view].changed?.(home, act, has);
  if (first) go(view);
}

function showCourses() {
  const { name } = home.course;
  fill('courses', ...home.courses.map((course) => el('li', {},
    el('button', {
      type: 'button', id: `course-${course.name}`, class: 'course', 'aria-current': course.name === name && 'true',
      title: course.folder, onclick: () => act({ do: 'choose', course: course.name }),
    }, el('span', { class: 'name' }, course.title), el('span', { class: 'small' }, course.note)))));
  const current = ROOMS[view]?.rare ? 'tools' : view;
  const opens = (other) => (ofDesk(other) ? null : () => go(other));
  fill('rooms', ...links('room', rooms(name), current, opens));
  fill('works', ...links('work', works(), current, opens));
  put('here', document.querySelector('.rooms [aria-current]')?.textContent ?? OWN[view]?.title ?? '');
}

function showHead() {
  const { today, trouble, name } = home.course;
  put('title', today?.title ?? '');
  document.title = today ? `${today.title} · Bookholder` : 'Bookholder';
  put('h-today', home.looking?.all ? 'Your sessions are being read' : headline(today));
  put('next-day', nextDay(today));
  fill('trouble',
    home.looking?.all && el('div', { class: 'looking' }, el('progress', { max: home.looking.all, value: home.looking.known, 'aria-labelledby': 'h-today' }),
      el('p', { class: 'small' }, `${home.looking.known} of ${home.looking.all}. Only what changes is read again later.`)),
    trouble && el('div', { class: 'card wrong-card' }, el('h3', {}, 'This course can\u2019t be read'), el('p', {}, trouble),
      el('p', { class: 'small' }, 'Mend the file and save it: the course then comes back by itself. Taking it off the list leaves all its files as they are.'),
      el('p', { class: 'choices' }, el('button', { type: 'button', id: 'forget',
        onclick: () => act({ do: 'forget', course: name }) }, 'Take it off the list'))),
    ...(today?.remarks ?? []).map((text) => el('p', { class: 'small', id: 'left-out' }, `Left out: ${text}.`)),
    !name && el('div', { class: 'card' }, el('h3', {}, 'Where are your lessons?'),
      el('p', {}, 'A course is a folder with your lessons in it, one file for each: Markdown, plain text or DOCX. New course turns other documents into such files.'),
      el('p', { class: 'choices' }, el('button', { type: 'button', class: 'main', id: 'open-first', onclick: openFolder },
        'Open a folder…'), el('button', { type: 'button', id: 'new-first', onclick: () => go('new') }, 'Make a new course…'),
      el('button', { type: 'button', id: 'demo', onclick: () => act({ do: 'demo' }) }, 'Try the demo lesson')),
      el('p', { class: 'small' }, 'The demo plays a recorded reading into the reading window: watch it follow, then see what it found.')));
}

function headline(today) {
  if (!today) return 'Welcome';
  if (today.finished) return 'Every lesson is finished';
  if (today.day === 'none') return dated(today.agenda.headline);
  if (today.day === 'today') return `Today: ${amount(today)}`;
  return today.day === 'unset' ? `Next: ${amount(today)}` : 'Nothing is planned today';
}

const amount = (today) => `${count(today.lessons, 'lesson')}, about ${count(today.minutes, 'minute')} before the camera`;

function nextDay(today) {
  if (today?.day !== 'later' || today.finished) return '';
  return `Next recording day: ${longDay(new Date(`${today.date}T12:00`))}. ${amount(today)}.`;
}

function readToday(day) {
  if (!day?.sessions?.length) return 'Nothing has been read at a microphone today.';
  const length = day.reading < 60 ? count(day.reading, 'minute') : hours(day.reading);
  return `Read ${day.reading ? length : 'less than a minute'} today, all lessons together.`;
}

function showRest() {
  const today = home.course.today;
  byId('voice').hidden = !today;
  if (!today) return;
  fill('rest',
    el('p', {}, readToday(home.day)),
    el('p', { class: 'small' }, 'Stop sooner if your voice hurts or you grow hoarse. ',
      el('a', { href: '#settings', onclick: (event) => { event.preventDefault(); go('settings'); } }, 'Break reminders')));
}

function showDamaged() {
  fill('damaged', ...home.damaged.map(({ name, folder }) => el('div', { class: 'card wrong-card' },
    el('h3', {}, `The notes of ${name} are damaged`),
    el('p', {}, 'What can still be read is shown. Repair saves it, puts back what it can, and keeps the files as they were.'),
    el('p', { class: 'choices' }, el('button', { type: 'button', class: 'main', onclick: () =>
      act({ do: 'begin', kind: 'repair', form: { session: folder } }) }, 'Repair')))));
}

/** How many microphones there are, and how many of them could not be opened when they were last listened to. */
function foundSaid(microphones) {
  const refused = (home.refused ?? []).filter((name) => microphones.includes(name)).length;
  const found = `${count(microphones.length, 'microphone')} found`;
  if (!microphones.length) return 'Looking for microphones…';
  if (!refused) return `${found}. \u201cHear and see\u201d tells whether ${microphones.length === 1 ? 'it works' : 'they work'}.`;
  if (refused < microphones.length) return `${found}; ${refused} of them can't be opened.`;
  return `${found}, but ${refused === 1 ? "it can't" : "they can't"} be opened. Another program may be using ${refused === 1 ? 'it' : 'them'}.`;
}

function showBefore() {
  const { microphones, microphone, trouble, room, scarce } = home.before;
  const select = el('select', { id: 'microphone', onchange: (event) =>
    act({ do: 'set', group: 'home', name: 'microphone', value: event.target.value }) },
  el('option', { value: '' }, 'System default'),
  ...[...new Set([...microphones, ...(microphone ? [microphone] : [])])].map((name) => el('option', { value: name }, name)));
  select.value = microphone;
  fill('before', el('label', { for: 'microphone', class: 'label' }, 'Microphone'), select,
    trouble ? el('p', { class: 'wrong', role: 'alert' }, trouble) : el('p', { class: 'small' }, foundSaid(microphones)),
    room ? el('p', { id: 'room', class: scarce ? 'wrong' : 'small' }, scarce ? `${room} Free some space before you read.` : room) : null,
    el('p', { class: 'choices' }, el('button', { type: 'button', id: 'look', onclick: () => act({ do: 'microphones' }) }, 'Look again'),
    el('button', { type: 'button', id: 'to-before', onclick: () => go('before-room') }, 'Hear and see ', el('kbd', {}, 'B'))));
}

function showTools() {
  fill('tool-list', ...WORK.filter((kind) => ROOMS[kind].rare).map((kind) => el('li', {},
    el('a', { id: `tool-${kind}`, href: `?view=${kind}`, onclick: (event) => { event.preventDefault(); go(kind); } }, ROOMS[kind].title),
    el('p', { class: 'small' }, ROOMS[kind].good))));
}

const openFolder = () => chooseFolder((folder) => act({ do: 'open', folder }).then((done) => { if (done) go('today'); return done; }));

function go(next) {
  if (next !== view) {
    scrollTo(0, 0);
    paper('');
  }
  view = next;
  for (const name of VIEWS) byId(name).hidden = name !== view;
  byId('work').hidden = !WORK.includes(view);
  byId('desk').toggleAttribute('data-wide', Boolean(OWN[view]?.wide));
  if (!location.search.startsWith(`?view=${view}`)) history.replaceState(null, '', view === 'today' ? './' : `?view=${view}`);
  if (WORK.includes(view) && home.jobs) showRoom(view, home, act);
  if (OWN[view] && home.courses) OWN[view].show(home, act);
  if (view === 'settings' && home.courses) showStorage();
  if (home.courses) showCourses();
}

async function quit(sure) {
  const trouble = await request({ do: 'quit', sure });
  if (!trouble) {
    ended('Bookholder has ended. Start it again to go on.');
  } else if (!sure && (goesOn(home) || home.jobs.some(lasts))) {
    askToEnd();
  } else {
    tell(trouble);
  }
}

function askToEnd() {
  const reads = goesOn(home);
  const jobs = home.jobs.filter(lasts);
  byId('ask').replaceChildren(
    el('h2', { id: 'ask-title' }, reads ? 'A lesson is being read' : 'Work is going on in the background'),
    reads ? el('p', {}, `End the reading of ${home.reading.title} and close Bookholder? What was read so far is kept.`) : '',
    ...jobs.map((job) => el('p', {}, `${job.title}, ${job.on}: if it is stopped, ${job.ifStopped}.`)),
    el('form', { method: 'dialog', class: 'choices' }, el('button', { type: 'submit' }, reads ? 'Go on reading' : 'Go on'),
      el('button', { type: 'submit', onclick: () => quit(true) }, reads ? 'End both' : 'Stop it and end')));
  byId('ask').showModal();
}

const keys = () => [['Enter', 'read the next lesson'], ['O', 'open a folder'], ['1 2 3', NUMBERED.join(', ')],
  ...Object.values(OWN).map(({ key, title }) => [key, title.toLowerCase()]),
  ['D', 'dark or light'], ['?', 'these keys']];

function showHelp() {
  showKeys(keys());
  const list = el('dl', {}, ...home.services.flatMap(({ name, good, where }) => [
    el('dt', {}, home.course.name || !where.includes('COURSE')
      ? el('a', { href: where.replace('COURSE', home.course.name) }, name) : name), el('dd', {}, good)]));
  byId('keys').querySelector('form').before(el('h2', {}, 'What you can do here'), list);
}

function onKey(event) {
  if (!home.courses || !meant(event)) return;
  const key = event.key.toUpperCase();
  const named = NUMBERED[Number(/^Digit([1-9])$/.exec(event.code)?.[1]) - 1] ?? Object.keys(OWN).find((name) => OWN[name].key === key);
  if (named) go(named);
  else if (key === 'ENTER' && event.target === document.body && view === 'today') readNext(home, act);
  else if (key === '?') showHelp();
  else if (key === 'D') turn();
  else if (key === 'O') openFolder();
  else return;
  event.preventDefault();
}

askOf(() => home.course?.name);
dress();
showTools();
foldRail();
byId('theme').addEventListener('click', turn);
byId('help').addEventListener('click', showHelp);
byId('open').addEventListener('click', openFolder);
byId('new-course').addEventListener('click', () => go('new'));
document.addEventListener('tell', ({ detail }) => tell(detail.text, detail.done));
document.addEventListener('go', ({ detail }) => go(detail));
byId('quit').addEventListener('click', () => quit(false));
document.addEventListener('keydown', onKey);
const date = () => put('date', longDay(new Date()));
date();
setInterval(date, 60_000);
const asked = new URLSearchParams(location.search).get('view');
if (VIEWS.includes(asked) || WORK.includes(asked)) go(asked);
begin(changed, say);

// For code that inspects the page from outside, such as tests.
window.homeState = home;
