// Acts on their way to the program: one after another, so that they are done in the order in which they were made. Acts made while
// the program can't be reached are sent when it is back. Only acts that name their line or their attempt are kept: a hold or a cut
// would come at a moment for which nobody meant it.

import { attempt } from './door.js';
import { aloud, count } from './words.js';

const KEPT = ['mark', 'note', 'edit', 'decide', 'bound'];

/** How long a page that goes over to another session waits for answers, in milliseconds. */
const GRACE = 2000;

/** Acts to be sent, in order; the first may be under way. An entry that is `kept` was told to the person as such. */
const queue = [];

/** Acts that are not kept and have no answer yet. */
const underWay = new Set();

/** What was refused after it had been kept, and why; told together with the rest of what was kept. */
const refused = [];

/** Acts without an answer when the page gave up waiting for one. */
let unsure = [];

let sending = null;
let over = false;
let tell = () => {};
let draft = () => '';

/** Says how messages to the person are shown: for a while, or until they were read. */
export const tellWith = (how) => { tell = how; };

/** Says how to find out what somebody is writing and has not sent; the answer is a few words, or empty. */
export const draftsFrom = (find) => { draft = find; };

/** Names an act, so that the program does it once, however often it is sent. */
const named = (action) => ({
  ...action, once: Array.from(crypto.getRandomValues(new Uint32Array(2)), (n) => n.toString(36)).join(''),
});

const WORDS = {
  mark: (a) => `mark on line ${a.line}`,
  note: (a) => `note on line ${a.line} (${a.text})`,
  edit: (a) => `change of a note (${a.text})`,
  decide: (a) => `decision on line ${a.line}`,
  bound: (a) => `bounds of an attempt in take ${a.take}`,
  say: (a) => `message (${a.text})`,
};

const inWords = (act) => WORDS[act.do]?.(act) ?? act.do.replaceAll('_', ' ');

/** What becomes of an act that is done, or will be sent later. */
const FINE = { trouble: '', refused: false };

/**
 * Requests an act. The answer's `trouble` is empty if it was done or will be sent later, otherwise says why not; `refused` says that it
 * would be refused again.
 *
 * @param later called when an act that was kept has been done
 */
export function send(action, later) {
  return KEPT.includes(action.do) ? inTurn(named(action), later) : atOnce(action);
}

async function atOnce(action) {
  underWay.add(action);
  const answer = await attempt(action);
  underWay.delete(action);
  return answer;
}

function inTurn(act, later) {
  return new Promise((answer) => {
    queue.push({ act, later, answer, kept: false });
    if (!sending && queue[0].kept) keep();
    else flush();
  });
}

/** How many acts wait. */
export const waits = () => queue.length;

/** Sends what waits, in order; to be called when the program can be reached again. Ends when all is sent or the rest must wait on. */
export function flush() {
  sending ??= sendAll().finally(() => { sending = null; });
  return sending;
}

function keep() {
  for (const entry of queue.filter((e) => !e.kept)) {
    entry.kept = true;
    entry.answer(FINE);
  }
  tell(`${count(queue.length, 'act')} kept: sent when the program can be reached again.`);
}

async function sendAll() {
  let late = 0;
  while (queue.length && !over) {
    const entry = queue[0];
    const answer = await attempt(entry.act);
    const { trouble, refused: never } = answer;
    if (trouble && !never) {
      if (!entry.kept) keep();
      break;
    }
    // Once the session is over, the next page says what was refused.
    if (over && never) break;
    queue.shift();
    if (!entry.kept) entry.answer(answer);
    else late += 1;
    if (entry.kept && never) refused.push(`${inWords(entry.act)}. ${trouble}`);
    if (entry.kept && !never) entry.later(entry.act);
  }
  if (!late || over) return;
  const words = ofKept() || `${count(late, 'kept act')} sent.`;
  tell(words, refused.length > 0);
  refused.length = 0;
  aloud(words);
}

const ofKept = () => (refused.length ? `Kept, but then refused: ${refused.join(' ')}` : '');

/** The session in which these acts were meant is over: the next page says what was not done. */
export async function giveUp() {
  over = true;
  await Promise.race([sending, new Promise((done) => { setTimeout(done, GRACE); })]);
  unsure = [...underWay, ...(sending ? queue.slice(0, 1).map((e) => e.act) : [])];
  leaveWord();
}

/** Leaves word for the next page of what was not done. */
function leaveWord() {
  const undone = queue.map((e) => e.act).filter((act) => !unsure.includes(act));
  const words = [
    ofKept(),
    undone.length ? `Not done, because that lesson ended first: ${undone.map(inWords).join('; ')}.` : '',
    unsure.length ? `May not have been done, because that lesson ended: ${unsure.map(inWords).join('; ')}.` : '',
    draft() ? `Not sent, because that lesson ended first: ${draft()}.` : '',
  ].filter(Boolean).join(' ');
  sessionStorage.setItem('given up', words);
}

/** What the page before could not send; empty if nothing. Said once. */
export function givenUp() {
  const words = sessionStorage.getItem('given up') ?? '';
  sessionStorage.removeItem('given up');
  return words;
}

// Leaving the page would lose what waits, unless the next page says it.
window.addEventListener('beforeunload', (event) => { if (queue.length && !over) event.preventDefault(); });
// Until the next page is there, which takes long on a bad network, people go on pressing keys and writing.
window.addEventListener('pagehide', () => { if (over) leaveWord(); });
