// The film of a lesson: each line of the script with what becomes of it, and what can be done about that.

import { question } from './ask.js';
import { showDraft, watchDraft } from './filmdraft.js';
import { entries } from './filmline.js';
import { choosePoint } from './filmpoint.js';
import { hear, pieceOf, silent, showWave } from './filmwave.js';
import { lasts } from './jobs.js';
import { meant } from './keys.js';
import { jobCards } from './work.js';
import { byId, count, el, put, short } from './words.js';

/** Steps by which a pause is made longer or shorter, in milliseconds. */
const STEP = 100;
const SHORTEST = 0;
const LONGEST = 5000;

/** A longer reason stands at the top of the page only, not beside the button, too. */
const MOST_BESIDE = 90;

let board = null;
let place = '';
let current = 1;
let home = null;
let acts = null;
let cards = null;
let made = '';
let asking = Promise.resolve();

const lineOf = (number) => board?.lines[number - 1];

function another(chosen) {
  place = chosen;
  board = null;
  current = 1;
}

export function showFilm(now, act) {
  home = now;
  acts = act;
  if (!byId('film-lines')) build();
  fillPlaces();
  cards(home, act);
  if (!board && place) load();
}

/** Shows the film of another lesson. */
export function filmOf(lesson) {
  another(lesson);
  fillPlaces();
  load();
}

export function filmChanged(now, act, has) {
  home = now;
  if (!byId('film-lines')) return;
  if (has('shelf', 'course')) {
    const before = place;
    fillPlaces();
    if (place !== before || has('shelf')) load();
  }
  if (has('jobs')) {
    cards(home, act);
    watchDraft(home.jobs.some((job) => job.kind === 'film' && job.title === 'Draft' && lasts(job)), () => place);
    const done = home.jobs.filter((job) => job.kind === 'film' && !lasts(job)).map((job) => job.id).join();
    if (done !== made) {
      made = done;
      load();
    }
  }
}

const lessons = () => home.shelf.lessons
  .filter(({ title }) => home.shelf.sessions.some((s) => s.lesson === title))
  .map(({ number, title, file }) => [file, `${number} · ${title}`]);

const sessions = () => home.shelf.sessions.map((s) => [s.folder, `One session of ${s.lesson}, ${new Date(s.began).toLocaleString('en-GB',
  { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' })}, ${count(s.usable, 'good line')}`]);

function fillPlaces() {
  const all = [...lessons(), ...sessions()];
  const select = byId('film-place');
  const key = JSON.stringify(all);
  if (select.dataset.key !== key) {
    select.dataset.key = key;
    select.replaceChildren(...all.map(([value, text]) => el('option', { value }, text)));
  }
  if (!all.some(([value]) => value === place)) {
    another(newest(all));
  }
  select.value = place;
  byId('film-none').hidden = all.length > 0;
  byId('film-room').hidden = all.length === 0;
}

/** The lesson that was read last. */
function newest(all) {
  const last = home.shelf.sessions[0];
  const lesson = home.shelf.lessons.find(({ title }) => title === last?.lesson);
  return all.find(([value]) => value === lesson?.file)?.[0] ?? all[0]?.[0] ?? '';
}

function build() {
  byId('film').replaceChildren(
    el('h2', { class: 'headline', id: 'h-film' }, 'The film'),
    el('p', { id: 'film-none', class: 'good' }, 'Nothing has been recorded yet. Read a lesson first; then its film is made here.'),
    el('div', { id: 'film-room' },
      el('div', { class: 'film-top' },
        el('label', { for: 'film-place', class: 'label' }, 'Of'),
        el('select', { id: 'film-place', onchange: (event) => { another(event.target.value); load(); } }),
        el('p', { id: 'film-standing', class: 'small' }),
        el('div', { id: 'film-obstacles', hidden: true }, el('p', { class: 'label' }, 'In the way of the film'), el('ul', { class: 'wrong' })),
        el('details', {}, el('summary', {}, 'More choices'),
          tick('film-title', 'Begin with a card that says the title', () => load()),
          tick('film-cameras', 'Change the camera at joins, where several show a line', () => load()),
          tick('film-as-shot', 'Never frame closer to hide a cut', () => load()),
          tick('film-enlarge', 'Blow a small picture up to the size that the profile asks for'),
          tick('film-anew', 'Make the film again though nothing has changed'))),
      el('p', { id: 'film-wrong', class: 'wrong', role: 'alert' }),
      el('div', { class: 'film-parts' },
        el('div', { class: 'film-left' },
          el('div', { id: 'film-picture' }, el('video', { id: 'film-video', controls: true, preload: 'metadata', hidden: true, 'aria-label': 'The draft' })),
          el('p', { id: 'film-draft-said', class: 'small' }),
          el('div', { id: 'film-wave', role: 'group', 'aria-label': 'Where the line begins and ends' }),
          el('p', { id: 'film-files', class: 'small' }),
          el('div', { id: 'film-jobs' })),
        el('ul', { id: 'film-lines', role: 'listbox', tabindex: '0', 'aria-label': 'Lines of the script with what becomes of each in the film' })),
      el('div', { class: 'film-foot', role: 'toolbar', 'aria-label': 'What can be done' }, ...buttons()),
      el('p', { id: 'film-said', class: 'hidden-text', role: 'status' })));
  cards = jobCards(byId('film-jobs'), 'film');
  made = home.jobs.filter((job) => job.kind === 'film' && !lasts(job)).map((job) => job.id).join();
  document.addEventListener('keydown', onKey, true);
}

const tick = (id, text, onchange) => el('label', { class: 'switch', for: id }, el('input', { type: 'checkbox', id, onchange }), text);

const ACTS = [
  { id: 'final', key: 'G', name: 'Make the film', main: true, run: () => make(true), can: () => !whyNot() },
  { id: 'draft', key: 'M', name: 'Make a draft', run: () => make(false) },
  { id: 'hear', key: 'Space', name: 'Hear it', run: () => hearLine() },
  { id: 'attempt', key: 'A', name: 'Other attempt', run: () => otherAttempt(), can: (line) => line.attempts.length > (line.used ? 1 : 0) },
  { id: 'leave', key: 'X', name: 'Leave the line out', run: () => decide({ do: 'leave' }), can: (line) => line.session >= 0 },
  { id: 'closer', key: 'Z', name: 'Closer', run: () => frame(), can: (line) => line.used?.seen && board.closest > 100 },
  { id: 'point', key: 'P', name: 'Point to keep', run: () => startPoint(), can: (line) => line.used?.seen && board.closest > 100 && board.draft?.fresh },
  { id: 'camera', key: 'C', name: 'Other camera', run: () => otherCamera(), can: (line) => line.cameras.length > 1 },
  { id: 'sound', key: 'S', name: 'Other sound', run: () => otherSound(), can: (line) => line.sounds.length > 1 },
  { id: 'shorter', key: '-', name: 'Shorter pause', run: () => pause(-STEP), can: (line) => line.used?.pause !== undefined },
  { id: 'longer', key: '+', name: 'Longer pause', run: () => pause(STEP), can: (line) => line.used?.pause !== undefined },
  { id: 'undo', key: 'U', name: 'Undo', run: () => ask({ do: 'undo' }), can: () => Boolean(board.undo) },
  { id: 'editor', key: 'W', name: 'For the editor instead', run: () => document.dispatchEvent(new CustomEvent('go', { detail: 'handoff' })) },
];

/** They stay off until the film is known. */
const buttons = () => ACTS.flatMap(({ id, key, name, main, run }) => [
  el('button', { type: 'button', id: `film-${id}`, class: main && 'main', disabled: true, onclick: run, 'aria-describedby': main && 'film-why' },
    el('span', {}, name), ' ', el('kbd', {}, key)),
  ...(main ? [el('p', { id: 'film-why', class: 'small' })] : [])]);

function onKey(event) {
  if (byId('film').hidden || !board || !meant(event)) return;
  const { target, key } = event;
  if (target.matches('.film-point')) return;
  if (target.matches('button, a, summary, video') && [' ', 'Enter'].includes(key)) return;
  if (target.matches('video, [role=slider]') && key.startsWith('Arrow')) return;
  const step = { ArrowDown: 1, ArrowUp: -1, Home: -Infinity, End: Infinity }[key];
  const act = ACTS.find((each) => (each.key === 'Space' ? key === ' ' : each.key === key.toUpperCase()));
  if (step) choose(Math.max(1, Math.min(board.lines.length, current + step)));
  else if (act) { if (!byId(`film-${act.id}`).disabled) act.run(); } else return;
  event.preventDefault();
  event.stopImmediatePropagation();
}

/** What is chosen for the whole film. */
const wished = () => ({
  asShot: byId('film-as-shot').checked, title: byId('film-title').checked, cameras: byId('film-cameras').checked,
});

/**
 * Asks one thing after another, each about the film as the one before left it.
 *
 * @param wish what is asked, or what says so when its turn comes
 * @param told says what came of it, from the line before and after
 */
function ask(wish, told = () => '') {
  const number = current;
  asking = asking.then(async () => {
    const asked = place;
    const what = typeof wish === 'function' ? wish(lineOf(number)) : wish;
    if (!what) return;
    const answer = await question('film', { place: asked, ...wished(), ...what });
    if (asked !== place) return;
    put('film-wrong', answer.trouble ?? '');
    if (answer.trouble) {
      if (!board) byId('film-lines').replaceChildren();
      return;
    }
    if (what.do !== 'show') {
      const done = what.do === 'undo' ? `Undone: ${board.undo}.` : `Done: ${answer.undo ?? 'taken back'}.`;
      put('film-said', told(lineOf(number), answer.lines[number - 1]) || done);
    }
    board = answer;
    show();
  });
  return asking;
}

const load = () => (place ? ask({ do: 'show' }) : asking);

function decide(what) {
  const line = current;
  return ask({ ...what, line });
}

function otherAttempt() {
  ask(({ line, attempts, used }) => {
    const now = attempts.findIndex((a) => a.take === used?.take && a.ordinal === used?.ordinal);
    const next = attempts[now < 0 ? attempts.length - 1 : (now + 1) % attempts.length];
    return next && { do: 'attempt', line, take: next.take, ordinal: next.ordinal };
  }).then(hearLine);
}

const frame = () => ask(({ line, used }) => used && { do: 'framing', line, framing: used.scale > 100 ? 'AS_SHOT' : 'CLOSER' });

/** The one in a list after the given one; after the last the first. */
const oneAfter = (list, now) => list[(list.indexOf(now) + 1) % list.length];

function otherCamera() {
  ask(({ line, cameras, used }) => cameras.length > 1 && { do: 'camera', line, camera: oneAfter(cameras, used.camera) },
    (before, after) => `Line ${after.line} is shown by ${after.used.camera}.`);
}

/** Which file is heard is decided for the whole session. */
function otherSound() {
  ask(({ line, sounds, used }) => sounds.length > 1 && { do: 'sound', line, sound: oneAfter(sounds, used.sound) },
    (before, after) => `The sound is that of ${after.used.sound}.`);
}

function startPoint() {
  const line = lineOf(current);
  byId('film-video').pause();
  put('film-said', 'Click the point that should stay in place, or move it with the arrow keys and press Enter. Esc leaves it as it was.');
  choosePoint(byId('film-picture'), line.used, (point) => ask({ do: 'point', line: line.line, ...point }));
}

function pause(change) {
  ask(({ line, used, pauseSet }) => {
    if (used?.pause === undefined) return null;
    const now = pauseSet >= 0 ? pauseSet : Math.round((used.pause * 1000) / STEP) * STEP;
    return { do: 'pause', line, millis: Math.max(SHORTEST, Math.min(LONGEST, now + change)) };
  }, (before, after) => (change > 0 && after.used.pause <= before.used.pause + 0.01
    ? `The pause stays ${after.used.pause.toFixed(2)} s: no more quiet was recorded here.` : `The pause is ${after.used.pause.toFixed(2)} s.`));
}

function hearLine() {
  const line = lineOf(current);
  if (!silent()) hear(null);
  else if (pieceOf(board, line)) hear(pieceOf(board, line));
}

function make(final) {
  question('work', { kind: 'film', form: { session: place, final, ...wished(), enlarge: byId('film-enlarge').checked, anew: byId('film-anew').checked } }).then((answer) => {
    put('film-wrong', answer.trouble ?? '');
    if (answer.trouble) return;
    put('film-said', final ? 'The film is being made.' : 'A draft is being made.');
  });
}

function choose(number) {
  current = number;
  show();
  byId(`film-line-${current}`)?.scrollIntoView({ block: 'nearest' });
  const video = byId('film-video');
  const at = lineOf(current).used?.film;
  if (at !== undefined && board.draft?.fresh && video.paused && video.src) video.currentTime = at;
}

// What a line is heard from: the file, its channel, and why.
function heard({ session, used }) {
  const of = board.heard.filter((each) => each.session === session && each.take === used.take);
  return (of.length > 1 ? of.find(({ file }) => file === used.sound) : of[0])?.said ?? (used.sound || 'none');
}

// Why no finished film can be made now; empty if one can.
function whyNot() {
  const [first, ...more] = board.obstacles;
  if (!first) return '';
  const here = more.length === 0 && first.what.length <= MOST_BESIDE;
  return here ? `Not yet: ${first.what}.` : `Not yet: ${count(board.obstacles.length, 'thing')} in the way, listed at the top of this page.`;
}

function showObstacles() {
  const place = byId('film-obstacles');
  place.hidden = board.obstacles.length === 0;
  place.querySelector('ul').replaceChildren(...board.obstacles.map(({ what, remedy }) => el('li', {}, `${what}. What to do: ${remedy}.`)));
  put('film-why', whyNot());
}

function show() {
  current = Math.max(1, Math.min(current, board.lines.length));
  const missing = board.missing.length;
  put('film-standing', [short(board.seconds), count(board.joins, 'join'), `sound: ${board.sound}`, board.format,
    missing ? `${count(missing, 'line')} without anything to use` : '', ...board.remarks].filter(Boolean).join(' · '));
  showObstacles();
  const list = byId('film-lines');
  list.replaceChildren(...entries(board, current, (number) => { choose(number); list.focus(); hear(null); hearLine(); }));
  list.setAttribute('aria-activedescendant', `film-line-${current}`);
  const line = lineOf(current);
  for (const { id, can } of ACTS) byId(`film-${id}`).disabled = can ? !can(line) : false;
  put('film-closer', '');
  byId('film-closer').replaceChildren(line.used?.scale > 100 ? 'As shot' : 'Closer', ' ', el('kbd', {}, 'Z'));
  byId('film-leave').replaceChildren(line.out ? 'Put the line back' : 'Leave the line out', ' ', el('kbd', {}, 'X'));
  byId('film-camera').hidden = !board.lines.some(({ cameras }) => cameras.length > 1);
  byId('film-sound').hidden = !board.lines.some(({ sounds }) => sounds.length > 1);
  put('film-files', line.used ? `Picture: ${line.used.camera ?? 'none'}. Sound: ${heard(line)}.` : '');
  byId('film-undo').title = board.undo ? `Undo: ${board.undo}` : '';
  showDraft(board, place);
  showWave(byId('film-wave'), board, line, (edge, at) => ask({ do: 'cut', edge, at, line: line.line }));
}

// For code that inspects the page from outside, such as tests.
window.filmState = () => ({ board, current, place });
