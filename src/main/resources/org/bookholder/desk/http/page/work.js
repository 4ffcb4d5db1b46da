// Rooms for long work: each with what it is good for, its form, and how its jobs stand.

import { question } from './ask.js';
import { takingFiles } from './drag.js';
import { drop } from './fields.js';
import { lasts, outcome, running } from './jobs.js';
import { ROOMS } from './rooms.js';
import { showSources } from './sources.js';
import { byId, el } from './words.js';

let open = '';
let cards = () => {};

/** Shows a room, with an empty form if another one was open. */
export function showRoom(kind, home, act) {
  const room = ROOMS[kind];
  if (kind !== open) {
    open = kind;
    byId('work').replaceChildren(
      el('h2', { id: 'h-work', class: 'headline' }, room.title),
      el('p', { class: 'good' }, room.good),
      form(kind, room, home),
      el('div', { id: 'work-jobs' }),
      el('div', { id: 'work-below' }));
    cards = jobCards(byId('work-jobs'), kind);
  }
  room.fields.forEach((field) => field.fill?.(byId(`w-${field.name}`), home));
  cards(home, act);
  if (kind === 'match') showSources(home);
}

/** The fields of the room that is open, when what can be chosen has changed. */
export function refreshRoom(home, act) {
  if (open && !byId('work').hidden) showRoom(open, home, act);
}

function form(kind, room, home) {
  const trouble = el('p', { id: 'work-wrong', class: 'wrong', role: 'alert' });
  const begin = async (event) => {
    event.preventDefault();
    trouble.textContent = '';
    const values = Object.fromEntries(room.fields.map((field) => [field.name, field.value(byId(`w-${field.name}`))]));
    const answer = await question('work', { kind, form: values });
    trouble.textContent = answer.trouble ?? '';
    if (/^nothing is chosen/i.test(answer.trouble ?? '')) {
      const missing = room.fields.find((field) => !field.aside && field.value(byId(`w-${field.name}`)).length === 0);
      (missing && (byId(`w-${missing.name}-choose`) ?? byId(`w-${missing.name}`)))?.focus();
    }
  };
  const made = (aside) => room.fields.filter((field) => Boolean(field.aside) === aside)
    .map((field) => field.element(`w-${field.name}`, home));
  const more = made(true);
  return el('form', { class: 'card work-form', onsubmit: begin, ...dropping(room) },
    ...made(false),
    more.length ? el('details', {}, el('summary', {}, 'More choices'), ...more) : null,
    trouble,
    el('p', { class: 'choices' }, el('button', { type: 'submit', class: 'main', id: 'work-begin' }, room.button)));
}

/** Takes files that are dropped on the form, if it asks for files. */
function dropping(room) {
  const field = room.fields.find((each) => each.drops);
  if (!field) return {};
  return takingFiles('dropping', (dropped) => drop(byId(`w-${field.name}`), dropped));
}

/** Shows the jobs of a kind, the newest first; returns what shows them again. */
export function jobCards(host, kind) {
  const cards = new Map();
  return (home, act) => {
    const jobs = home.jobs.filter((job) => job.kind === kind);
    for (const [id, card] of cards) {
      if (!jobs.some((job) => job.id === id)) {
        card.element.remove();
        cards.delete(id);
      }
    }
    jobs.forEach((job, i) => {
      const known = cards.get(job.id);
      if (known?.step === job.step) {
        known.update(job);
        return;
      }
      const made = lasts(job) ? running(job, act) : { element: result(job, act), update() {} };
      const element = el('section', { class: 'card', 'aria-label': `${job.title}: ${job.on}` }, made.element);
      if (known) known.element.replaceWith(element);
      else host.insertBefore(element, host.children[i] ?? null);
      cards.set(job.id, { element, step: job.step, update: made.update });
    });
  };
}

function result(job, act) {
  const { rows, links } = job.result ?? { rows: job.said.map((what) => ({ mark: '', where: '', what, more: '' })), links: [] };
  return el('div', {},
    el('p', { class: 'small' }, job.on),
    el('p', { class: job.step === 'FAILED' ? 'wrong' : 'outcome', role: 'status' }, outcome(job)),
    rows.length ? el('ul', { class: 'found' }, ...rows.map(found)) : null,
    el('p', { class: 'choices' }, ...links.filter((l) => l.kind !== 'FILE').map((l) => link(l, act)),
      el('button', { type: 'button', class: 'quiet', onclick: () => act({ do: 'forget_job', id: job.id }) }, 'Close')),
    links.some((l) => l.kind === 'FILE') ? el('ul', { class: 'files' }, ...links.filter((l) => l.kind === 'FILE').map((l) => el('li', {},
      el('a', { href: l.address, download: l.title }, l.title)))) : null);
}

const link = (to, act) => (to.kind === 'PAGE' ? el('a', { class: 'button', href: to.address }, to.title)
  : el('button', { type: 'button', onclick: () => act({ do: 'show', folder: to.address }) }, to.title));

const found = (row) => el('li', { class: row.mark },
  row.mark ? el('span', { class: 'mark' }, row.mark) : '', row.where ? el('span', { class: 'where' }, row.where) : '',
  el('span', { class: 'what' }, row.what), row.more ? el('span', { class: 'small more' }, row.more) : '');
