// Beside what can be set: the keys of the reading window, the speech model, the sessions with the room they take, and the
// devices that are in. An old session is packed, or removed after asking twice.

import { question } from './ask.js';
import { showDevices } from './devices.js';
import { byId, count, el, short, size } from './words.js';

let shown = false;

/** Shows it when the settings are entered. */
export async function showStorage() {
  const [facts, kept] = await Promise.all([question('settings', { do: 'facts' }), question('settings', { do: 'sessions' })]);
  const open = shown ? [...byId('more-settings').querySelectorAll('details')].map((one) => one.open) : [];
  byId('more-settings').replaceChildren(
    part('Keys of the reading window', keys(facts)),
    part('Speech recognition', speech(facts)),
    part('Sessions', el('div', { id: 'storage' })),
    part('Devices', el('div', { id: 'devices' })));
  [...byId('more-settings').querySelectorAll('details')].forEach((one, i) => { one.open = open[i] ?? false; });
  shown = true;
  sessions(kept);
  showDevices(byId('devices'));
}

const part = (title, ...children) => el('section', { class: 'group' }, el('h3', {}, title), ...children);

function keys({ keys: all = [], trouble }) {
  if (trouble) return el('p', { class: 'wrong' }, trouble);
  return el('details', {}, el('summary', {}, 'All keys; the button of a remote is taught in the window: T, the button, and the key whose work it is to do'),
    el('dl', { class: 'key-list' }, ...all.flatMap(({ keys: names, does }) => [
      el('dt', {}, el('kbd', { class: 'shown' }, names)), el('dd', {}, does)])));
}

const speech = ({ model, modelThere, trouble }) => el('div', {}, trouble ? '' : el('p', { class: modelThere ? 'small path' : 'wrong' },
  modelThere ? `English, on this machine only: ${model}` : `The speech model is missing: ${model}. Install Bookholder again.`),
el('p', { class: 'small' }, '“It\u2019s” and “it is” may be read for each other. A script that says contractions: as-written at its head wants them as they stand.'));

function sessions({ place, sessions: all = [], trouble }) {
  if (trouble) {
    byId('storage').replaceChildren(el('p', { class: 'wrong', role: 'alert' }, trouble));
    return;
  }
  const sum = all.reduce((bytes, one) => bytes + one.bytes, 0);
  byId('storage').replaceChildren(
    el('p', {}, all.length ? `${count(all.length, 'session')}, ${size(sum)} together.` : 'No session is kept yet.'),
    el('p', { class: 'small path' }, `New ones are kept in ${place}`),
    all.length ? el('details', {}, el('summary', {}, 'All sessions, the oldest first'),
      el('ul', { class: 'storage-list' }, ...all.map(row))) : '');
}

function row(one) {
  const when = one.began ? new Date(one.began).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' }) : '';
  return el('li', {}, el('span', { class: 'name' }, one.title || 'Nothing recorded'),
    el('span', { class: 'small' }, [when, one.seconds ? short(one.seconds) : '', size(one.bytes), one.trouble || one.standing].filter(Boolean).join(' · ')),
    el('span', { class: 'choices' },
      el('a', { class: 'button', href: '?view=pack' }, 'Pack…'),
      el('button', { type: 'button', id: `remove-${one.name}`, onclick: () => askToRemove(one, when) }, 'Remove…')));
}

/** Asks twice: a box has to be ticked before the button does anything. */
function askToRemove(one, when) {
  const sure = el('input', { type: 'checkbox', id: 'remove-sure', onchange: () => { byId('remove-now').disabled = !sure.checked; } });
  byId('ask').replaceChildren(el('h2', { id: 'ask-title' }, 'Remove this session?'),
    el('p', {}, `${one.title || 'Nothing recorded'}${when ? `, ${when}` : ''}: its sound and notes (${size(one.bytes)}) will be gone for good. Pack it first if you may want it again.`),
    el('p', {}, sure, ' ', el('label', { for: 'remove-sure' }, 'I don\u2019t need it any more')),
    el('p', { id: 'remove-wrong', class: 'wrong', role: 'alert' }),
    el('form', { method: 'dialog', class: 'choices' }, el('button', { type: 'submit' }, 'Keep it'),
      el('button', { type: 'button', id: 'remove-now', disabled: true, onclick: () => remove(one) }, 'Remove it')));
  byId('ask').showModal();
}

async function remove(one) {
  const answer = await question('settings', { do: 'remove', name: one.name, sure: true });
  if (answer.trouble) {
    byId('remove-wrong').textContent = answer.trouble;
    return;
  }
  byId('ask').close();
  sessions(answer);
  const list = byId('storage').querySelector('details');
  if (list) list.open = true;
}
