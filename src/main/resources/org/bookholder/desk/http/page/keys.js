// The list of a page's keys, and whether single-key shortcuts are on.

import { byId, el } from './words.js';

const keysOff = () => localStorage.getItem('keys') === 'off';

const BOXES = 'input[type=checkbox], input[type=radio]';

/** Whether someone is typing into this element, so that keys mean letters. */
export const typing = (target) => target.matches(`input:not(${BOXES}), textarea, select`) || target.isContentEditable;

/** A box or a row of choices needs the arrows and the space bar for itself; letters and digits mean nothing to it. */
const needed = (event) => event.target.matches(BOXES) && !/^[\p{L}\d?]$/u.test(event.key);

/** Whoever presses Enter twice in a field, or too long, means the field with all of it, in milliseconds. */
const LONG_ENTER = 1000;
let submitted = -Infinity;
document.addEventListener('submit', () => { submitted = performance.now(); }, true);
document.addEventListener('keydown', (event) => { if (event.key !== 'Enter') submitted = -Infinity; }, true);

const forField = (event) => event.key === 'Enter' && (event.repeat || performance.now() - submitted < LONG_ENTER);

/** Whether a key is meant for the page, and not for the browser, a field, a dialog or another program. */
export const meant = (event) => !forField(event) && !event.ctrlKey && !event.metaKey && !event.altKey && !typing(event.target) && !needed(event)
  && !document.querySelector('dialog[open]') && (event.key === '?' || !keysOff());

/** Shows pairs of a key and its action. */
export function showKeys(list) {
  const off = el('input', { type: 'checkbox', id: 'keys-off', onchange: () =>
    localStorage.setItem('keys', byId('keys-off').checked ? 'off' : 'on') });
  off.checked = keysOff();
  byId('keys').replaceChildren(el('h2', { id: 'keys-title' }, 'Keys'),
    el('dl', {}, ...list.flatMap(([key, name]) => [el('dt', {}, el('kbd', {}, key)), el('dd', {}, name)])),
    el('p', {}, off, ' ', el('label', { for: 'keys-off' }, 'turn off single-key shortcuts')),
    el('form', { method: 'dialog' }, el('button', { type: 'submit' }, 'Close')));
  byId('keys').showModal();
}
