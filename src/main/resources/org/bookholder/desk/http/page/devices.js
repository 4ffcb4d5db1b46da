// The devices that were let in: each can be let out again. Shown to the program's own page on this machine only.

import { AWAY, ask, sending } from './wire.js';
import { el, when } from './words.js';

/** Fills a box with the list; leaves it empty on a page that may not see it. */
export async function showDevices(box) {
  const answer = await ask('devices').catch(() => null);
  if (answer?.ok) list(box, await answer.json());
}

function list(box, { devices, joinCode, lookCode }) {
  box.replaceChildren(
    el('p', { class: 'small' }, 'A device that joins with a code stays for a day. This machine\u2019s own browser stays until it has been away for a day.'),
    joinCode ? el('p', {}, 'Join code: ', el('strong', {}, joinCode), '. To look only: ', el('strong', {}, lookCode), '. Both are new each day.') : '',
    el('ul', { class: 'device-list' }, ...devices.map((device) => row(box, device))),
    joinCode ? el('p', { class: 'small' }, 'Letting a device out makes new codes, so that it can\u2019t come back by the old ones.') : '',
    el('p', { class: 'wrong', role: 'alert' }));
}

function row(box, { id, name, own, acts, self, since, seen }) {
  const facts = [self ? 'This browser' : own ? 'On this machine' : acts ? 'By the join code' : 'By the code to look only',
    `in since ${when(since)}`, self ? '' : `last seen ${when(seen)}`].filter(Boolean).join(' · ');
  return el('li', {}, el('span', { class: 'name' }, name), el('span', { class: 'small' }, facts),
    self ? '' : el('span', { class: 'choices' }, el('button', { type: 'button', 'aria-label': `Let out ${name}, in since ${when(since)}`,
      onclick: () => letOut(box, id) }, 'Let out')));
}

async function letOut(box, id) {
  const answer = await ask('devices', sending({ out: id })).catch(() => null);
  if (answer?.ok) list(box, await answer.json());
  else box.querySelector('.wrong').textContent = answer ? await answer.text() : AWAY;
}
