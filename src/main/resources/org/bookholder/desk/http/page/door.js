// Logging in: by the key in the terminal's address, by a token from before, or by a join code.

import { byId, el, put } from './words.js';

const AGAIN = 2000;

/** Without a limit, a dead network would let a request wait for minutes. */
const PATIENCE = 8000;

export const ask = (path, options = {}) => fetch(path, { ...options, signal: AbortSignal.timeout(PATIENCE) });

async function post(path, body) {
  const answer = await ask(path, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(body),
  });
  // Read to its end in any case, which lets go of the connection.
  const text = await answer.text();
  return { ok: answer.ok, status: answer.status, text: answer.ok ? '' : text };
}

/** Asks for an action; what stands in its way, for people, or an empty text if nothing does. */
export async function request(action) {
  try {
    const answer = await post('act', action);
    if (answer.ok) return '';
    // A session that has ended, or a full disk, is told of in whole sentences.
    return answer.status === 503 ? answer.text : `Not done: ${answer.text}.`;
  } catch (failure) {
    return failure.name === 'TimeoutError' ? 'The program does not answer; it may not be done.'
      : 'Not done: the program cannot be reached.';
  }
}

/**
 * Asks who we are, and for the code if we are nobody.
 *
 * @param inside called with what we may do, once we are in
 * @param say how to say that we cannot get in; an empty text if we can
 */
export async function enter(inside, say) {
  const key = location.hash.slice(1);
  if (key) {
    history.replaceState(null, '', location.pathname + location.search);
    await post('join', { code: key }).catch(() => null);
  }
  try {
    const who = await ask('who');
    if (who.ok) {
      const may = await who.json();
      byId('door').hidden = true;
      inside(may);
    } else if (who.status === 401) {
      askForCode(await who.text(), inside, say);
    } else {
      say(await who.text());
      setTimeout(() => enter(inside, say), AGAIN);
    }
  } catch {
    say('The program cannot be reached; trying again.');
    setTimeout(() => enter(inside, say), AGAIN);
  }
}

function askForCode(how, inside, say) {
  const join = async (event) => {
    event.preventDefault();
    const answer = await post('join', { code: byId('code').value })
      .catch(() => ({ text: 'The program cannot be reached.' }));
    put('refused', answer.ok ? '' : answer.text);
    if (answer.ok) enter(inside, say);
  };
  byId('door').replaceChildren(el('form', { id: 'join', onsubmit: join },
    el('h1', {}, 'The desk'),
    el('label', { for: 'code' }, how),
    el('input', { id: 'code', autocomplete: 'off', autocapitalize: 'characters', spellcheck: 'false', required: true }),
    el('button', { type: 'submit' }, 'Join'),
    el('p', { id: 'refused', role: 'alert' })));
  byId('desk').hidden = true;
  byId('door').hidden = false;
  byId('code').focus();
}
