// The connection to the program: being let in, being told, and acting.

import { aloud, byId, put } from './words.js';
import { model, takeChange, takeWhole } from './model.js';

let stream = null;
let changed = () => {};

async function post(path, body) {
  const answer = await fetch(path, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(body),
  });
  return { ok: answer.ok, text: answer.ok ? '' : await answer.text(), status: answer.status };
}

/** Asks for something; what has become of it is seen by what the program tells. */
export async function act(action) {
  if (!model.acts) {
    aloud('You were let in to look, not to act.');
    return false;
  }
  try {
    const answer = await post('/act', action);
    if (!answer.ok) say(`Not done: ${answer.text}`);
    return answer.ok;
  } catch {
    say('Not done: the program cannot be reached.');
    return false;
  }
}

function say(text) {
  put('link', text);
  byId('link').classList.toggle('lost', text !== '');
}

export async function begin(whenChanged) {
  changed = whenChanged;
  const key = location.hash.slice(1);
  if (key) {
    history.replaceState(null, '', location.pathname);
    await post('/join', { code: key }).catch(() => null);
  }
  await enter();
}

async function enter() {
  try {
    const who = await fetch('/who');
    if (who.ok) {
      model.acts = (await who.json()).acts;
      byId('door').hidden = true;
      listen();
    } else {
      askForCode();
    }
  } catch {
    say('The program cannot be reached; trying again.');
    setTimeout(enter, 2000);
  }
}

function askForCode() {
  byId('desk').hidden = true;
  byId('door').hidden = false;
  byId('code').focus();
  byId('join').onsubmit = async (event) => {
    event.preventDefault();
    const answer = await post('/join', { code: byId('code').value }).catch(() => ({ text: 'The program cannot be reached.' }));
    put('refused', answer.ok ? '' : answer.text);
    if (answer.ok) enter();
  };
}

function listen() {
  stream?.close();
  stream = new EventSource('/events');
  stream.addEventListener('whole', (event) => {
    changed(takeWhole(JSON.parse(event.data)));
    byId('desk').hidden = false;
  });
  stream.addEventListener('change', (event) => changed(takeChange(JSON.parse(event.data))));
  stream.onopen = () => {
    if (byId('link').classList.contains('lost')) aloud('The connection is back.');
    say('');
  };
  stream.onerror = () => {
    say('Connection lost; coming back by itself.');
    // A browser gives up for good when it is answered otherwise than by a stream.
    if (stream.readyState === EventSource.CLOSED) setTimeout(enter, 2000);
  };
}
