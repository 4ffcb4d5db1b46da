// Settings: each with its meaning and present value, saved when it is changed; what is wrong with a value stands beside it.

import { request } from './door.js';
import { byId, el } from './words.js';

const TITLES = {
  limits: ['Break reminders', 'In minutes: early warning, limit, well over.'],
  window: ['Reading window', 'How the reading window opens. You can change all of this in the window, too: K shows its keys.'],
};
let shown = '';

export function showSettings(home) {
  const now = JSON.stringify([home.settings, home.day.cautions]);
  // A field that is being edited is left alone.
  if (now === shown || byId('groups').contains(document.activeElement)) return;
  shown = now;
  if (!Array.isArray(home.settings)) {
    byId('groups').replaceChildren(el('p', { class: 'wrong', role: 'alert' }, home.settings.trouble));
    return;
  }
  byId('groups').replaceChildren(...home.settings.map((group) => el('section', { class: 'group', 'aria-labelledby': `g-${group.name}` },
    el('h3', { id: `g-${group.name}` }, TITLES[group.name][0]),
    el('p', { class: 'small' }, TITLES[group.name][1]),
    group.name === 'limits' ? el('ul', { class: 'cautions' }, ...home.day.cautions.map((text) => el('li', {}, text))) : '',
    el('div', { class: 'fields' }, ...group.fields.map((field) => line(group, field))),
    el('p', { class: 'small path' }, `Kept in ${group.file}`))));
}

function line(group, field) {
  const id = `s-${group.name}-${field.name}`;
  const input = el('input', { id, value: field.value, autocomplete: 'off', 'aria-describedby': `${id}-m ${id}-w`,
    onchange: () => save(group, field, id) });
  return el('div', { class: 'field' },
    el('label', { for: id }, field.name.replaceAll('-', ' ')), input,
    el('span', { id: `${id}-m`, class: 'small' }, field.meaning),
    el('p', { id: `${id}-w`, class: 'wrong', role: 'alert' }));
}

async function save(group, field, id) {
  const input = byId(id);
  const trouble = await request({ do: 'set', group: group.name, name: field.name, value: input.value });
  input.setAttribute('aria-invalid', String(Boolean(trouble)));
  byId(`${id}-w`).textContent = trouble;
  if (!trouble) shown = '';
}
