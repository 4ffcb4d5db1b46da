// The connection to the program: being let in, being told, and acting.

import { enter, post } from './door.js';
import { aloud, byId, put } from './words.js';
import { model, takeChange, takeWhole } from './model.js';

/** The program says that all is well every 5 s; a page that hears nothing for longer than this has lost it. */
const SILENCE = 12_000;
const NOTICE = 8_000;

let stream = null;
let changed = () => {};
let heard = 0;
let lost = '';
let lostAt = 0;
let notice = 0;

/** Asks for something; what has become of it is seen by what the program tells. */
export async function act(action) {
  if (!model.acts) {
    aloud('You were let in to look, not to act.');
    return false;
  }
  try {
    const answer = await post('act', action);
    if (!answer.ok) tell(`Not done: ${answer.text}.`);
    return answer.ok;
  } catch {
    tell('Not done: the program cannot be reached.');
    return false;
  }
}

function show(text) {
  if (text && !model.known) byId('desk').hidden = false;
  put('link', text);
  byId('link').classList.toggle('lost', text !== '');
}

/** Says how the connection is, for as long as it is so; empty if all is well. */
function say(text) {
  if (!lost) lostAt = Date.now();
  lost = text;
  show(text);
}

/** Says something for a while. */
function tell(text) {
  clearTimeout(notice);
  show(text);
  notice = setTimeout(() => show(lost), NOTICE);
}

export async function begin(whenChanged) {
  changed = whenChanged;
  await again();
}

const again = () => enter((may) => {
  model.acts = may.acts;
  byId('back').hidden = !may.course;
  listen();
}, say);

function listen() {
  stream?.close();
  stream = new EventSource('events');
  const here = stream;
  const on = (name, take) => here.addEventListener(name, (event) => { heard = Date.now(); take(event); });
  on('whole', (event) => {
    changed(takeWhole(JSON.parse(event.data)));
    byId('desk').hidden = false;
  });
  on('change', (event) => changed(takeChange(JSON.parse(event.data))));
  on('beat', () => {});
  heard = Date.now();
  here.onopen = () => {
    heard = Date.now();
    if (lost) aloud('The connection is back.');
    say('');
  };
  here.onerror = () => {
    if (!lost) say(LOST);
    // A browser gives up for good when it is answered otherwise than by a stream.
    if (here.readyState === EventSource.CLOSED) setTimeout(again, 2000);
  };
}

const LOST = 'Connection lost; coming back by itself.';
const LONG_LOST = `${LOST} If another session was begun, open the address that the terminal shows.`;
const LONG = 30_000;

/** A network that swallows everything is no error to a browser for minutes. */
setInterval(() => {
  if (stream?.readyState === EventSource.OPEN && Date.now() - heard > SILENCE) {
    say(LOST);
    listen();
  }
  if (lost === LOST && Date.now() - lostAt > LONG) say(LONG_LOST);
}, 2000);
