// The connection of the program's own page: what it shows comes as named parts, each replaced when it changes.

import { enter } from './door.js';
import { ask } from './wire.js';
import { byId, el } from './words.js';

/** The program sends a heartbeat every 5 s; after this time without one, the connection counts as lost. */
const SILENCE = 12_000;

/** A page hidden for this long closes its connection: a browser allows six, however many tabs show the page. */
const UNSEEN = 3000;

/** A hidden page still tells that it is there, or the program would end some minutes later. */
const HERE = 60_000;

const PAGE = Array.from(crypto.getRandomValues(new Uint32Array(2)), (n) => n.toString(36)).join('');
const LOST = 'Connection lost. Reconnecting…';

let stream = null;
let heard = 0;
let hiding = 0;
let over = false;
let changed = () => {};
let say = () => {};

export function begin(whenChanged, saying) {
  changed = whenChanged;
  say = saying;
  again();
}

const again = () => enter(() => { say(''); listen(); }, say);

/** The program has ended as it was asked to: says so, and looks for it no more. */
export function ended(text) {
  over = true;
  stream?.close();
  byId('desk').hidden = true;
  byId('door').hidden = false;
  byId('door').replaceChildren(el('div', {}, el('h1', {}, 'Bookholder'), el('p', { id: 'ended' }, text)));
}

function listen() {
  stream?.close();
  stream = null;
  if (document.hidden || over) return;
  const here = new EventSource(`events?page=${PAGE}`);
  stream = here;
  heard = Date.now();
  const on = (name, take) => here.addEventListener(name, (event) => { heard = Date.now(); take(event); });
  on('whole', (event) => changed(JSON.parse(event.data)));
  on('change', (event) => changed(JSON.parse(event.data)));
  on('beat', () => {});
  here.onopen = () => {
    heard = Date.now();
    say('');
  };
  here.onerror = () => {
    if (over) return;
    say(LOST);
    // A browser does not retry if the answer was not an event stream.
    if (here.readyState === EventSource.CLOSED) setTimeout(again, 2000);
  };
}

setInterval(() => {
  if (stream && stream.readyState !== EventSource.CLOSED && Date.now() - heard > SILENCE) {
    say(LOST);
    listen();
  }
}, 2000);
setInterval(() => { if (!over) ask('who').catch(() => {}); }, HERE);
document.addEventListener('visibilitychange', () => {
  clearTimeout(hiding);
  if (document.hidden) hiding = setTimeout(() => { if (stream) listen(); }, UNSEEN);
  else if (!stream && heard) listen();
});
// A browser keeps a page that was left for the way back, with its connection; six of them, and the next page waits.
window.addEventListener('pagehide', () => {
  stream?.close();
  stream = null;
});
window.addEventListener('pageshow', ({ persisted }) => { if (persisted && heard) listen(); });
