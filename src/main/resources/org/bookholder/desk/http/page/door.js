// Logging in: with the key in the address that the terminal shows, with an earlier cookie, or with a join code.

import { learnTime } from './daytime.js';
import { bare, find, goIn, join, remember, returned } from './place.js';
import { AWAY, ask, sending } from './wire.js';
import { byId, el, put } from './words.js';

const AGAIN = 2000;

/** The attempt to log in that is under way: a second one beside it would find used up what the first one comes back with. */
let entering = null;
let next = 0;

async function post(path, body) {
  const answer = await ask(path, sending(body));
  // Always read the answer to its end, which frees the connection.
  const text = await answer.text();
  return { ok: answer.ok, status: answer.status, text: answer.ok ? '' : text };
}

/** What the answer to an action that got none is. */
export const UNREACHED = 'Not done, because the program cannot be reached.';
export const UNANSWERED = 'The program does not answer; it may not be done.';

/**
 * Requests an action. The answer's `trouble` is empty if it was done, otherwise the reason why not, for people to read; `refused` says
 * that it would be refused again. If not refused, it may be sent again later.
 */
export async function attempt(action) {
  try {
    const answer = await post('act', action);
    if (answer.ok) return { trouble: '', refused: false };
    // If the session has ended or the disk is full, the answer is already a whole sentence.
    if (answer.status === 503) return { trouble: answer.text, refused: false };
    return { trouble: `Not done: ${answer.text}.`, refused: true };
  } catch (failure) {
    return { trouble: failure.name === 'TimeoutError' ? UNANSWERED : UNREACHED, refused: false };
  }
}

/** Nothing is given to a program that can't prove that it has let us in before. */
const ANOTHER = 'Another program answers at this address. When Bookholder runs here again, this page goes on by itself.';

/** Requests an action; returns an empty text if it was done, otherwise the reason why not, for people to read. */
export const request = async (action) => (await attempt(action)).trouble;

/**
 * Finds out who we are, and asks for the code if we are not logged in.
 *
 * @param inside called with our rights once we are logged in
 * @param say shows why we cannot log in; called with an empty text if we can
 */
export function enter(inside, say) {
  clearTimeout(next);
  entering ??= attemptToEnter(inside, say).finally(() => { entering = null; });
  return entering;
}

async function attemptToEnter(inside, say) {
  const later = () => { next = setTimeout(() => enter(inside, say), AGAIN); };
  const key = location.hash.slice(1);
  if (key) {
    history.replaceState(null, '', location.pathname + location.search);
    if (goIn(await join(key).catch(() => null))) return;
  } else if (bare() && find()) {
    return;
  }
  try {
    let who = await ask('who');
    if (who.status === 401) {
      const { known, same } = await returned();
      if (known && !same) {
        say(ANOTHER);
        later();
        return;
      }
      if (same) who = await ask('who');
    }
    learnTime(who);
    if (who.ok) {
      const may = await who.json();
      remember(may);
      byId('door').hidden = true;
      inside(may);
    } else if (who.status === 401) {
      askForCode(await who.text(), inside, say);
    } else {
      say(await who.text());
      later();
    }
  } catch {
    say('The program cannot be reached; trying again.');
    later();
  }
}

function askForCode(how, inside, say) {
  const tryCode = async (event) => {
    event.preventDefault();
    const answer = await join(byId('code').value).catch(() => ({ trouble: AWAY }));
    put('refused', answer.trouble ?? '');
    if (answer.place && !goIn(answer)) enter(inside, say);
  };
  byId('door').replaceChildren(el('form', { id: 'join', onsubmit: tryCode },
    el('h1', {}, document.body.dataset.name ?? 'The desk'),
    el('label', { for: 'code' }, how),
    el('input', { id: 'code', autocomplete: 'off', autocapitalize: 'characters', spellcheck: 'false', required: true }),
    el('button', { type: 'submit' }, 'Join'),
    el('p', { id: 'refused', role: 'alert' })));
  byId('desk').hidden = true;
  byId('door').hidden = false;
  byId('code').focus();
}
