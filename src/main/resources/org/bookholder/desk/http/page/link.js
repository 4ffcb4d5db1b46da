// The connection to the program: log in, receive changes, send actions.

import { learnZone } from './daytime.js';
import { enter } from './door.js';
import { flush, giveUp, givenUp, send, tellWith, waits } from './outbox.js';
import { ME } from './author.js';
import { listen, listenWith, listening, stopListening } from './stream.js';
import { ask } from './wire.js';
import { aloud, byId, put } from './words.js';
import { model, takeChange, takeWhole } from './model.js';
import { ownIsDone } from './seen.js';

const NOTICE = 8_000;

const HERE = 60_000;

/** The change that an act makes arrives beside its answer, and often a little later. */
const ARRIVAL = 2000;
const LOOK = 20;

/** Acts that change what this browser would undo next. */
const COUNTED = ['mark', 'note', 'edit', 'say', 'decide', 'bound', 'undo'];

let changed = () => {};
let lost = '';
let lostAt = 0;
let notice = '';
let noticeEnds = 0;

/** What was not done and would not be done later: it stays until somebody closes it, or goes on after having had time to read it. */
let refusal = '';
let refusedAt = 0;

let had = '';
let home = false;

/** Done when the page knows of the last act of this browser; an undo before that would be of an older one. */
let counted = Promise.resolve();

/** Whether this is the state of another session than the one that the page shows. */
const isAnother = (whole) => model.known && whole.session !== model.session;

/** The id of the message after the given one; ids have no gaps. */
const after = (id) => id.replace(/\d+$/, (number) => String(Number(number) + 1));

/** Requests an action; returns whether it was done. Its effect arrives with the changes that the program sends. */
export async function act(action) {
  if (!model.acts) {
    aloud('With your code you can watch, but not change anything.');
    return false;
  }
  if (refusal && Date.now() - refusedAt > NOTICE) refuse('');
  const before = undoable()?.act;
  const answer = send({ ...action, by: ME, session: model.session }, ownIsDone);
  if (COUNTED.includes(action.do)) counted = answer.then(({ trouble }) => (trouble ? '' : until(() => undoable()?.act !== before)));
  const { trouble, refused } = await answer;
  if (trouble) warn(trouble, refused);
  else ownIsDone(action);
  return !trouble;
}

function warn(text, stays) {
  tell(text, stays);
  aloud(text);
}

/** What this browser would undo next: the act's number, and what it was; undefined if nothing. */
export const undoable = () => model.people.undo?.[ME];

/** Waits until something is so, for a short while at most. */
async function until(so) {
  for (let waited = 0; !so() && waited < ARRIVAL; waited += LOOK) await new Promise((done) => { setTimeout(done, LOOK); });
}

/** Undoes what this browser did last; returns what that was, or undefined if nothing was undone. */
export async function undo() {
  await counted;
  if (waits()) {
    warn('Not undone: what you did last has not been sent yet.', true);
    return undefined;
  }
  const last = undoable();
  if (!last || !await act({ do: 'undo', act: last.act })) return undefined;
  aloud(`Undone: ${last.what}.`);
  return last;
}

function show() {
  const text = notice || [lost, refusal].filter(Boolean).join(' ');
  if (text && !model.known) byId('desk').hidden = false;
  put('link', text);
  byId('link').classList.toggle('lost', text !== '');
  byId('link-close').hidden = !refusal || notice !== '';
}

/** Shows the state of the connection until it changes; empty if all is well. */
function say(text) {
  if (!lost) lostAt = Date.now();
  const before = lost;
  lost = text;
  show();
  if (before !== text && model.known) changed(new Set(['link']));
}

/** Shows a message for a while, before the state of the connection; one that `stays` until it was read, beside that state. */
function tell(text, stays) {
  clearTimeout(noticeEnds);
  notice = stays ? '' : text;
  if (stays) refuse(text);
  else noticeEnds = setTimeout(() => { notice = ''; show(); }, NOTICE);
  show();
}

function refuse(text) {
  refusal = text;
  refusedAt = Date.now();
  show();
}

byId('link-close').addEventListener('click', () => refuse(''));
tellWith(tell);

/** Whether the program can be reached, as far as this page knows. */
export const connected = () => !lost;

export async function begin(whenChanged) {
  changed = whenChanged;
  const before = givenUp();
  if (before) warn(before, true);
  await again();
}

const again = () => enter((may) => {
  model.acts = may.acts;
  byId('back').hidden = !may.course;
  home = may.home === true;
  if (may.running && model.known && model.live && !location.pathname.includes(`/session/${may.running}/`)) {
    // The lesson that this page showed is over, and the next one is being read. This address is now that of the review, which takes
    // what was kept.
    flush().finally(giveUp).finally(() => location.assign(`../${may.running}/`));
    return;
  }
  listen();
}, say);

function takeState(event) {
  had = event.lastEventId;
  const whole = JSON.parse(event.data);
  if (isAnother(whole)) {
    // The next lesson of the running order: nothing of the one before may be left on the page.
    stopListening();
    giveUp().finally(() => location.reload());
    return;
  }
  learnZone(whole.zone);
  changed(takeWhole(whole));
  byId('desk').hidden = false;
  flush();
}

function takeNext(event) {
  if (event.lastEventId !== after(had)) {
    // A message was lost. A new stream begins with the complete state.
    listen();
    return;
  }
  had = event.lastEventId;
  changed(takeChange(JSON.parse(event.data)));
  flush();
}

/** The program said goodbye; the page goes on looking for it, in case the next lesson begins at the same address. */
const CLOSED = 'Session ended. Its review opens from home, or with "bookholder desk".';

const LOST = 'Connection lost. Reconnecting…';
const LONG_LOST = `${LOST} If you started another session, open the address in the terminal.`;
const LONG = 30_000;

listenWith({
  events: { whole: takeState, change: takeNext, beat: flush, closed: () => say(CLOSED) },
  opened() {
    if (lost) aloud('The connection is back.');
    say('');
  },
  lost() { if (!lost) say(LOST); },
  again,
});

// Home goes on while one of its pages is open, also one that is hidden.
setInterval(() => { if (home) ask('who').catch(() => {}); }, HERE);
setInterval(() => { if (lost === LOST && Date.now() - lostAt > LONG) say(LONG_LOST); }, 2000);
window.addEventListener('online', () => { if (lost && listening()) listen(); });
