// The desk: decides which view is shown and which one handles keys.

import { liveKey, liveKeys, listenToForms, showFoot, showPeople } from './actions.js';
import { showBreak, showHead, showPace, showSound, showTired } from './figures.js';
import { clockTime } from './daytime.js';
import { showDevices } from './devices.js';
import { dress, turn } from './dress.js';
import { openHandOff, showHandOff } from './handoff.js';
import { meant, showKeys, typing } from './keys.js';
import { silence } from './listen.js';
import { begin } from './link.js';
import { lineOf, model } from './model.js';
import { listenToFilters, openAt, reviewKey, reviewKeys, showReview } from './review.js';
import { buildScript, followAgain, showAsides, showChoice, showLine, showPosition, watchScrolling } from './script.js';
import { REACTION, lookAround, seenTake } from './seen.js';
import { lookAtSubject } from './subject.js';
import { heardStops, showPickups } from './pickups.js';
import { layOut, showSummary } from './summary.js';
import { aloud, byId, el, put } from './words.js';

const VIEWS = ['live', 'review', 'summary'];
const CODES = { live: 'Digit1', review: 'Digit2', summary: 'Digit3' };
let view = '';
let wasLive = false;
let settling = 0;

/** For a moment after a change the buttons still name the line before, as a key then means that; so soon after it, in ms, the new one. */
const SETTLED = REACTION + 10;

// The parts of the state that these views show. An element rebuilt under the pointer would lose the click and any
// selection, so a view is left alone while only the position in the script changes.
const PEOPLE = ['script', 'lines', 'notes', 'people', 'pace'];
const REVIEW = ['script', 'lines', 'notes', 'people'];

function changed(parts) {
  lookAround();
  lookAtSubject();
  const any = (names) => names.some((name) => parts.has(name));
  if (parts.has('script')) {
    buildScript();
  } else {
    showChangedLines(parts);
    if (parts.has('asides')) showAsides();
    if (parts.has('at') || parts.has('lines')) showPosition();
  }
  showHead();
  if (any(['lines', 'script', 'at'])) showPickups();
  if (parts.has('pace') || parts.has('points')) showPace();
  if (parts.has('sound')) showSound();
  if (parts.has('tired') || parts.has('people')) showTired();
  if (any(PEOPLE)) showPeople();
  showChoice();
  showFoot();
  clearTimeout(settling);
  settling = setTimeout(showFoot, SETTLED);
  if (any(['handoff', 'at'])) showHandOff();
  const ended = wasLive && !model.live;
  wasLive = model.live;
  if (!view) begun();
  else if (ended) over();
  else if (view !== 'review' || any(REVIEW)) refresh();
}

/** The session has ended, and the same address is now its review. */
function over() {
  show('summary');
  aloud('Session ended.');
}

/** A course's page may name the line to listen to. */
function begun() {
  const line = Number(new URLSearchParams(location.search).get('line'));
  if (line) {
    openAt(line);
    byId('back').href = '../../?view=pickups';
  }
  show(line || !model.live ? 'review' : 'live');
}

const seen = new Map();

/** A line's object is replaced whenever the line changes. */
function showChangedLines(parts) {
  if (!parts.has('lines')) return;
  for (const line of model.lines) {
    if (seen.get(line.line) !== line) {
      seen.set(line.line, line);
      showLine(line);
    }
  }
}

function refresh() {
  if (view === 'review') showReview();
  if (view === 'summary') showSummary();
}

function show(next) {
  if (next !== 'review') silence();
  heardStops();
  view = next;
  for (const name of VIEWS) {
    byId(name).hidden = name !== view;
    document.querySelector(`[data-view=${name}]`).setAttribute('aria-pressed', String(name === view));
  }
  byId('foot').hidden = view !== 'live';
  refresh();
  if (view === 'live') followAgain();
  if (view === 'review') byId('items').focus({ preventScroll: true });
}

function onKey(event) {
  if (event.key === 'Escape' && typing(event.target)) {
    event.target.blur();
    return;
  }
  if (!model.known || !meant(event)) return;
  const onButton = event.target.matches('button, a, summary, [role=slider]');
  if (onButton && (event.key === ' ' || event.key === 'Enter')) return;
  const named = VIEWS.find((name) => CODES[name] === event.code);
  const key = event.key.toUpperCase();
  if (named) show(named);
  else if (key === '?') showHelp();
  else if (key === 'D') turn();
  else if (key === 'W' && view !== 'live') openHandOff();
  else if (key === 'L' && view !== 'live') window.print();
  else if (view === 'live' ? !liveKey(key) : view === 'review' ? !reviewKey(key) : true) return;
  event.preventDefault();
}

/** The keys, and on this machine who is in. */
function showHelp() {
  showKeys(keys());
  const box = el('div', { id: 'devices' });
  byId('keys').querySelector('form').before(el('details', {}, el('summary', {}, 'Devices that are in'), box));
  showDevices(box);
}

const keys = () => [...(view === 'review' ? reviewKeys() : view === 'live' ? liveKeys() : []),
  ...(view === 'live' ? [] : [['W', 'hand off to the editor'], ['L', 'print the pickup list']]),
  ['1 2 3', 'live, review, summary'], ['D', 'dark or light'], ['?', 'these keys']];

function tick() {
  put('clock', clockTime());
  if (model.known && model.people.break_since) showBreak();
}

dress();
byId('theme').addEventListener('click', turn);
document.querySelectorAll('[data-view]').forEach((b) => b.addEventListener('click', () => show(b.dataset.view)));
byId('follow').addEventListener('click', followAgain);
document.querySelector('[data-handoff]').addEventListener('click', openHandOff);
byId('page').addEventListener('selected', showFoot);
document.addEventListener('keydown', onKey);
window.addEventListener('beforeprint', () => model.known && layOut());
listenToForms();
listenToFilters();
watchScrolling();
setInterval(tick, 500);
tick();
begin(changed);

// For code that inspects the page from outside, such as tests.
window.deskState = { model, lineOf, seenTake };
