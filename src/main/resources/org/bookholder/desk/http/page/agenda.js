// What to do today and why, in the words that the terminal has, too.

import { dated, el } from './words.js';

/** Where on the page each kind of work is done. */
const PLACES = { READ: 'today', FACT: 'gate', FILM: 'today', SCRIPT: 'scripts', PLAN: 'plan', LAUNCH: 'lists' };

const go = (view) => (event) => {
  event.preventDefault();
  document.dispatchEvent(new CustomEvent('go', { detail: view }));
};

/** What to do, one after another, each with its reasons; `here` is the view that shows it. */
export const items = (all, here) => (all.length ? el('ol', { class: 'agenda-items' }, ...all.map(({ kind, text, why }) => {
  const place = PLACES[kind];
  return el('li', {}, place && place !== here ? el('a', { href: `?view=${place}`, onclick: go(place) }, dated(text)) : dated(text),
    why.length ? el('p', { class: 'small' }, `Why: ${dated(why.join('; '))}.`) : '');
})) : '');

/** Why these lessons and no others, and how the launch stands. */
export const reasons = ({ why, launch }) => [
  why.length ? el('p', { class: 'small why-today' }, el('strong', {}, 'Why today: '), dated(why.join(' '))) : '',
  el('p', { class: 'launch-room' }, dated(launch))];

/** All of it, as the head of the plan's page. */
export const agenda = (today) => el('section', { id: 'agenda', class: 'card agenda', 'aria-labelledby': 'h-agenda' },
  el('h3', { id: 'h-agenda' }, dated(today.headline)), items(today.items, 'plan'), ...reasons(today));
