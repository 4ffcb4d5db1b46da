// How numbers and the like are said in the course: what was chosen and what was heard, to be heard again and changed.

import { playStretch } from './stretch.js';
import { count, el } from './words.js';

const MOST = 60;

/** Whoever reads without having said a name. */
const SOLE = 'presenter';

let audio = null;

/** What was chosen or heard for a written word; the list of the course has the most likely first. */
export const sayingOf = (look, written) =>
  (look['said in this course'] ?? []).find((saying) => saying.written === written.toLowerCase());

/** Plays the place in a recording where it was said last. */
function hear({ address, take, from, to }) {
  audio ??= new Audio();
  const src = `${address}takes/${take}.wav`;
  if (!audio.src.endsWith(src)) audio.src = src;
  // A little around it, so that a short word is understood.
  playStretch(audio, from - 0.3, to + 0.3).catch(() => {});
}

/** A button that plays it; nothing where it was not recorded. */
export const hearButton = (saying) => (saying?.address
  ? el('button', { type: 'button', class: 'hear-said', 'aria-label': `Hear how ${saying.written} was said`,
    onclick: () => hear(saying) }, 'Hear') : '');

const how = ({ chosen, times }) => [chosen ? 'chosen by you' : '', times ? `said ${count(times, 'time')}` : ''].filter(Boolean).join(', ');

/**
 * The list.
 *
 * @param look what the program found
 * @param choose takes what is written and how it is said; an empty form takes the choice back
 */
export function saidList(look, choose) {
  const all = look['said in this course'] ?? [];
  if (!all.length || !choose) return [];
  return [el('details', { id: 'said', class: 'sayings' },
    el('summary', {}, `How you say it in this course (${all.length})`),
    el('p', { class: 'small' }, 'What you say at least twice, and more often than anything else, is expected first. All other ways stay right.'),
    el('ul', { class: 'saying-rows' }, ...all.slice(0, MOST).map((saying) => el('li', { class: 'saying-row' },
      el('span', {}, el('b', {}, saying.written), ` “${saying.said}”`), el('span', { class: 'small' }, how(saying)),
      hearButton(saying),
      saying.chosen
        ? el('button', { type: 'button', class: 'quiet', 'aria-label': `Take back how ${saying.written} is said`,
          onclick: () => choose(saying.written, '') }, 'Take back')
        : el('button', { type: 'button', class: 'quiet', 'aria-label': `Always say ${saying.written} as ${saying.said}`,
          onclick: () => choose(saying.written, saying.said) }, 'Always so')))),
    all.length > MOST ? el('p', { class: 'small' }, `And ${all.length - MOST} more.`) : '')];
}

/**
 * Which words are heard as something else when somebody reads them.
 *
 * @param look what the program found
 * @param forget takes one of them, to be called misread again; null where nothing can be forgotten
 */
export function heardList(look, forget) {
  const all = look['heard as'] ?? [];
  if (!all.length || !forget) return [];
  return [el('details', { id: 'heard', class: 'sayings' },
    el('summary', {}, `Heard as something else (${all.length})`),
    el('p', { class: 'small' }, 'These words were called misread, and somebody decided that they were read right. When the same person reads them again,',
      ' in any lesson, and the same is heard, they aren\u2019t called misread. Anything else heard in their place is.'),
    el('ul', { class: 'saying-rows' }, ...all.slice(0, MOST).map((one) => el('li', { class: 'saying-row' },
      el('span', {}, el('b', {}, one.written), ` heard as “${one.heard}”`),
      el('span', { class: 'small' }, one.presenter === SOLE ? '' : `when ${one.presenter} reads it`),
      el('button', { type: 'button', class: 'quiet', 'aria-label': `Forget that ${one.written} is heard as ${one.heard}`,
        onclick: () => forget(one) }, 'Forget')))),
    all.length > MOST ? el('p', { class: 'small' }, `And ${all.length - MOST} more.`) : '')];
}
