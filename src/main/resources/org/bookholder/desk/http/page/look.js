// How a script will be read: its lines with their lengths, directions between them, what is left out and why, numbers with the
// forms they may be heard in, unknown words, and what is hard to say.

import { hearButton, heardList, saidList, sayingOf } from './said.js';
import { byId, count, el, short } from './words.js';

const WATCHED_SECONDS = 360;
const MOST_FORMS = 8;

let place = null;
let say = null;
let choose = null;
let marked = -1;

/**
 * Shows it.
 *
 * @param where the element to show it in
 * @param look what the program found
 * @param saying writes into the text how a word is said, and says whether it could; null where that can't be written
 * @param choosing chooses how a word is said in the whole course; null where nothing can be chosen
 * @param forgetting forgets that a word is heard as something else; null where nothing can be forgotten
 */
export function showLook(where, look, saying, choosing = null, forgetting = null) {
  const listed = ['said', 'heard'].filter((id) => byId(id)?.open);
  place = where;
  say = saying;
  choose = choosing;
  if (!say) marked = -1;
  place.replaceChildren(...(look.wrong ? [wrong(look)]
    : [summary(look), ...findings(look), ...saidList(look, choose), ...heardList(look, forgetting),
      el('ol', { class: 'look-rows' }, ...rows(look))]));
  for (const id of listed) if (byId(id)) byId(id).open = true;
  highlight(marked);
}

const wrong = ({ wrong: what, remedy, source }) => el('div', { class: 'card wrong-card' },
  el('h3', {}, 'It can\u2019t be read yet'),
  el('p', {}, source ? `Line ${source}: ${what}.` : `${what[0].toUpperCase()}${what.slice(1)}.`),
  el('p', { class: 'small' }, `What to do: ${remedy}.`));

function summary(look) {
  const own = look['own seconds'];
  const facts = [count(look['spoken words'], 'word'), count(look.lines.length, 'line'),
    `${short(look.seconds)} at ${look.pace} words a minute`, own ? `${short(own)} at your own pace` : ''];
  return el('div', { class: 'look-sum' },
    el('p', { class: 'look-title' }, look.title), el('p', { class: 'small' }, facts.filter(Boolean).join(' · ')));
}

/** What to look at, before the lines themselves. */
function findings(look) {
  const said = [];
  if ((look['own seconds'] || look.seconds) > WATCHED_SECONDS) {
    said.push('Long: people stop watching after about 6 minutes (Guo, Kim and Rubin 2014). Could it be two lessons?');
  }
  if (look.unknown.length) said.push(`${count(look.unknown.length, 'word')} the recogniser does not know: choose one to say how it sounds.`);
  if (look.hard.length) said.push(`${count(look.hard.length, 'hard stretch', 'hard stretches')}: marked below with what to do.`);
  for (const { what, remedy, source } of look['missing pictures']) said.push(`${source ? `Line ${source} of the file: ` : ''}${what}. To mend: ${remedy}.`);
  if (look['left out'].length) said.push(`${count(look['left out'].length, 'thing')} left out: marked below with the reason.`);
  if (look.unheard) said.push(`${look.unheard[0].toUpperCase()}${look.unheard.slice(1)}. Until then the text moves steadily or by hand.`);
  else if (!look['words checked']) said.push('Unknown words were not looked for: speech recognition is busy with a reading, or is not installed.');
  return said.length ? [el('ul', { class: 'findings' }, ...said.map((text) => el('li', {}, text)))] : [];
}

function rows(look) {
  const all = [
    ...look['left out'].map((left) => ({ source: left.source, order: 2, left })),
    ...look.brackets.filter((bracket) => !bracket.alone).map((bracket) => ({ source: bracket.source, order: 3, bracket })),
    ...look.lines.map((line) => ({ source: line.source, order: 0, line })),
    ...look.directions.map((direction) => ({ source: direction.source, order: 1, direction })),
  ];
  all.sort((a, b) => a.source - b.source || a.order - b.order);
  const seen = new Map();
  let paragraph = -1;
  return all.map(({ source, line, direction, left, bracket }) => {
    if (left) return noteRow(source, el('s', {}, left.what), ` Left out: ${left.why}.`);
    if (bracket) return noteRow(source, bracket.text, ` ${bracket.read ? 'Read' : 'A direction'}: ${bracket.why}.`);
    const begins = (line ?? direction).paragraph !== paragraph;
    paragraph = (line ?? direction).paragraph;
    const place = { class: `look-row ${line ? '' : 'direction'} ${begins ? 'begins' : ''}`, 'data-source': source };
    return line ? el('li', place, ...lineParts(line, look, seen)) : el('li', place, el('span', { class: 'n' }, ''),
      el('span', { class: 'text' }, direction.text), el('span', { class: 'time' }, 'shown'));
  });
}

const noteRow = (source, ...text) => el('li', { class: 'look-row left-out', 'data-source': source },
  el('span', { class: 'n' }, ''), el('span', {}, ...text), el('span', { class: 'time' }, ''));

function lineParts(line, look, seen) {
  const hard = look.hard.filter((stretch) => stretch.line === line.line);
  const notes = el('div');
  const text = el('span', { class: 'text' }, ...line.words.flatMap((word, i) => [i ? ' ' : '', shown(word, line, look, seen, notes)]));
  return [el('span', { class: 'n' }, String(line.line)), el('div', {}, text,
    ...hard.map((stretch) => el('p', { class: 'hard' }, `${stretch.what}: “${cut(stretch.words)}”. To mend: ${stretch.remedy}.`)),
    notes), el('span', { class: 'time' }, short(line.seconds))];
}

const cut = (text) => (text.length > 60 ? `${text.slice(0, 59)}…` : text);

/** A word; a number or an unknown word can be chosen to see how it is heard. */
function shown(word, line, look, seen, place) {
  const tokens = word.said.split(' ');
  const unknown = look.unknown.find((one) => tokens.includes(one.word));
  if (!word.forms && !unknown) return word.written;
  const key = `${line.source}/${word.plain}`;
  const nth = seen.get(key) ?? 0;
  seen.set(key, nth + 1);
  return el('button', {
    type: 'button', class: `say-word ${unknown ? 'unknown' : 'number'}`, 'aria-expanded': 'false', 'data-key': `${key}/${nth}`,
    onclick: (event) => toggle(event.currentTarget, { word, line, nth, unknown, place, id: `${key}/${nth}`, saying: sayingOf(look, word.plain) }),
  }, word.written);
}

function toggle(button, about) {
  const opened = button.getAttribute('aria-expanded') === 'true';
  for (const other of place.querySelectorAll('.say-word')) other.setAttribute('aria-expanded', 'false');
  for (const other of place.querySelectorAll('.say-it')) other.remove();
  if (opened) return;
  button.setAttribute('aria-expanded', 'true');
  about.place.replaceChildren(panel(button, about));
  byId('say-as')?.focus();
}

function panel(button, { word, line, nth, unknown, id, saying }) {
  const forms = (word.forms ?? []).map((form) => form.join(' '));
  const heard = unknown?.['heard as'];
  const told = unknown
    ? (heard ? `The recogniser does not know “${unknown.word}” and listens for “${heard}”.` : `The recogniser does not know “${unknown.word}”, and nothing like it.`)
    : `May be read as: ${forms.slice(0, MOST_FORMS).join('; ')}${forms.length > MOST_FORMS ? `; and ${forms.length - MOST_FORMS} more` : ''}.`;
  return el('form', { class: 'say-it', 'data-word': id, onsubmit: (event) => {
    event.preventDefault();
    const spoken = byId('say-as').value.replace(/[()[\]\n]/g, ' ').trim();
    if (spoken && !say(line.source, word.plain, nth, spoken)) {
      byId('say-wrong').textContent = 'It was not found in the text. Write it there as [word](say:how it sounds).';
    }
  } }, el('p', { class: 'small' }, told), saying ? el('p', { class: 'small' }, `In this course you say “${saying.said}”. `,
    hearButton(saying)) : '', ...(say ? [
    el('label', { for: 'say-as' }, `Say “${word.plain}” as`),
    el('span', { class: 'say-row' },
      el('input', { id: 'say-as', value: word.said, autocomplete: 'off', onkeydown: (event) => {
        if (event.key === 'Escape') toggle(button, {});
        if (event.key === 'Escape') button.focus();
      } }),
      el('button', { type: 'submit' }, 'Write it into the text'),
      choose ? el('button', { type: 'button', id: 'say-in-course', onclick: () => choose(word.plain, byId('say-as').value) },
        'Say it so in the whole course') : ''),
    el('p', { id: 'say-wrong', class: 'wrong', role: 'alert' })]
    : [el('p', { class: 'small' }, 'How it is said can be written into Markdown files (.md).')]));
}

/** Marks the lines that come from a line of the text. */
export function highlight(source) {
  marked = source;
  for (const row of place?.querySelectorAll('.look-row') ?? []) {
    const own = Number(row.dataset.source) === source;
    row.classList.toggle('here', own);
  }
  const here = place?.querySelector('.look-row.here');
  if (here && document.activeElement === byId('text')) here.scrollIntoView({ block: 'nearest' });
}
