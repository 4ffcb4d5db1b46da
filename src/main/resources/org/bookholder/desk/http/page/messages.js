// Short messages to the presenter: ready phrases, own words, and whether the last one was seen.

import { act, connected } from './link.js';
import { byId, clock, el, put } from './words.js';
import { inTake, model, takeAt } from './model.js';

const PHRASES = ['A little slower', 'A little louder', 'Chin up', 'Smile', 'Once more, please', 'Very good'];

/** Whether a message is under way. An empty one takes the last one back, so a second press of Enter must not send one. */
let saying = false;

const when = (at) => clock(inTake(takeAt(at), at));

/** What became of the last message. */
export function showSaid() {
  const message = model.people.message;
  put('said', !message ? '' : !message.text ? 'taken back'
    : `${message.shown === undefined ? `sent at ${when(message.at)}, not shown yet` : `shown at ${when(message.shown)}`}: ${message.text}`);
  byId('said').classList.toggle('seen', message?.shown !== undefined);
}

export function showMessageForm() {
  const off = !model.acts || !model.live || !connected();
  byId('say').disabled = off;
  document.querySelectorAll('#phrases button').forEach((button) => { button.disabled = off; });
}

export function listenToMessages() {
  byId('phrases').append(...PHRASES.map((text) =>
    el('button', { type: 'button', onclick: () => act({ do: 'say', text }) }, text)));
  byId('say-form').addEventListener('submit', (event) => {
    event.preventDefault();
    if (!saying) say(byId('say'));
  });
}

/** Empty at once, so that nobody is told the same twice. A message that was refused is put back. */
async function say(field) {
  const text = field.value.trim();
  field.value = '';
  field.blur();
  saying = true;
  const done = await act({ do: 'say', text });
  saying = false;
  if (!done && !field.value) field.value = text;
}
