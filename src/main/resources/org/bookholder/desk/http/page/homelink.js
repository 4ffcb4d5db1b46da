// The connection of the program's own page: what it shows comes as named parts, each replaced when it changes.

import { enter } from './door.js';
import { ask } from './wire.js';
import { listen, listenWith, stopListening } from './stream.js';
import { byId, el } from './words.js';

/** A hidden page still tells that it is there, or the program would end some minutes later. */
const HERE = 60_000;

const LOST = 'Connection lost. Reconnecting…';

let over = false;

/** Has `changed` told of the parts that change, and `say` of the connection; an empty text says that all is well. */
export function begin(changed, say) {
  const again = () => enter(() => { say(''); if (!over) listen(); }, say);
  const take = (event) => changed(JSON.parse(event.data));
  listenWith({
    events: { whole: take, change: take, beat() {} },
    opened: () => say(''),
    lost: () => say(LOST),
    again,
  });
  again();
}

/** The program has ended as it was asked to: says so, and looks for it no more. */
export function ended(text) {
  over = true;
  stopListening();
  byId('desk').hidden = true;
  byId('door').hidden = false;
  byId('door').replaceChildren(el('div', {}, el('h1', {}, 'Bookholder'), el('p', { id: 'ended' }, text)));
}

setInterval(() => { if (!over) ask('who').catch(() => {}); }, HERE);
