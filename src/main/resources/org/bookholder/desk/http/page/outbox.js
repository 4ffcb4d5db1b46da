// Acts that were made while the program could not be reached, to be sent when it is back. Only acts that name their line or
// their attempt are kept: a hold or a cut would come at a moment for which nobody meant it.

import { UNANSWERED, UNREACHED, attempt, request } from './door.js';
import { aloud, count } from './words.js';

const KEPT = ['mark', 'note', 'edit', 'decide', 'bound'];

const waiting = [];
let sending = null;
let tell = () => {};

/** Says how messages to the person are shown. */
export const tellWith = (how) => { tell = how; };

/** Names an act, so that the program does it once, however often it is sent. */
const named = (action) => ({
  ...action, once: Array.from(crypto.getRandomValues(new Uint32Array(2)), (n) => n.toString(36)).join(''),
});

/**
 * Requests an act; returns an empty text if it was done or will be sent later, otherwise why not.
 *
 * @param later called when an act that was kept has been done
 */
export async function send(action, later) {
  if (!KEPT.includes(action.do)) return request(action);
  const act = named(action);
  const trouble = waiting.length ? UNREACHED : await request(act);
  if (trouble !== UNREACHED && trouble !== UNANSWERED) return trouble;
  waiting.push({ act, later });
  tell(`${count(waiting.length, 'act')} kept: sent when the program can be reached again.`);
  return '';
}

/** How many acts wait. */
export const waits = () => waiting.length;

/** Sends what waits, in order; to be called when the program can be reached again. Ends when all is sent or the rest must wait on. */
export function flush() {
  sending ??= sendAll().finally(() => { sending = null; });
  return sending;
}

async function sendAll() {
  const refused = [];
  let sent = 0;
  while (waiting.length) {
    const { act, later } = waiting[0];
    const answer = await attempt(act);
    if (answer.trouble && !answer.refused) break;
    waiting.shift();
    if (answer.refused) refused.push(answer.trouble);
    else later(act);
    sent += 1;
  }
  if (!sent) return;
  const words = refused.length ? refused.join(' ') : `${count(sent, 'kept act')} sent.`;
  tell(words);
  aloud(words);
}

/** The session in which these acts were meant is over: the next page says what was not done. */
export function giveUp() {
  if (waiting.length) sessionStorage.setItem('given up', `${count(waiting.length, 'act')} not done: that session ended first.`);
  waiting.length = 0;
}

/** What the page before could not send; empty if nothing. Said once. */
export function givenUp() {
  const words = sessionStorage.getItem('given up') ?? '';
  sessionStorage.removeItem('given up');
  return words;
}

// Leaving the page would lose what waits.
window.addEventListener('beforeunload', (event) => { if (waiting.length) event.preventDefault(); });
