// The middle of the live view: the script with the outcome of each line.

import { aloud, byId, clock, count, el, put } from './words.js';
import { inTake, lineOf, model, telling, text } from './model.js';
import { hearLine } from './pickups.js';
import { chooseLine, chosenLine } from './subject.js';

let rows = new Map();
let following = true;

/** The chosen line as it is shown. */
let shownChoice = 0;

/** Where the page is scrolling to, whether it has arrived, and the heights at that time. */
let glide = { to: 0, arrived: true, layout: '' };

/** Scrolling by less than this, in pixels, does not count as scrolling away. */
const SWAY = 40;

export function buildScript() {
  rows = new Map();
  const nodes = [];
  let paragraph = -1;
  for (const element of model.script.elements) {
    const first = element.paragraph !== paragraph;
    paragraph = element.paragraph;
    const row = element.line ? lineRow(element) : el('div', { class: 'row direction' },
      el('span', { class: 'time' }), el('p', { class: 'text' }, element.direction), el('p', { class: 'what' }, 'direction'));
    if (first) row.classList.add('paragraph');
    nodes.push(row);
  }
  byId('script').replaceChildren(...nodes);
  shownChoice = chosenLine();
  model.lines.forEach(showLine);
  showAsides();
  showPosition();
}

function lineRow(element) {
  const written = el('p', { class: 'text' });
  element.words.forEach((word, i) => written.append(i ? ' ' : '', el('span', { class: 'word' }, word)));
  const row = el('div', { class: 'row line', 'data-line': element.line, onclick: () => select(element.line) },
    el('button', { type: 'button', class: 'time', tabindex: -1, disabled: true, onclick: (event) => {
      event.stopPropagation();
      hearLine(element.line);
    } }), written, el('p', { class: 'what' }));
  rows.set(element.line, row);
  return row;
}

export function showLine(line) {
  const row = rows.get(line.line);
  if (!row) return;
  const touched = line.reached || line.attempts.length > 0;
  const attempt = telling(line);
  const outcome = touched ? line.outcome : 'ahead';
  const current = row.classList.contains('current');
  row.className = `row line ${outcome}${line.pickup ? ' pickup' : ''}${row.classList.contains('paragraph') ? ' paragraph' : ''}`
    + `${current ? ' current' : ''}${line.line === shownChoice ? ' selected' : ''}`;
  const time = row.querySelector('.time');
  time.disabled = !attempt;
  time.setAttribute('aria-label', attempt ? `Hear line ${line.line}` : `Line ${line.line}, nothing to hear`);
  time.textContent = attempt ? clock(inTake(attempt.take, attempt.start)) : touched && outcome === 'skipped' ? '—' : '';
  markWords(row, attempt);
  row.querySelector('.what').textContent = what(line, outcome);
}

export function markWords(row, attempt) {
  const words = row.querySelectorAll('.word');
  words.forEach((w) => { w.className = 'word'; w.removeAttribute('title'); });
  for (const deviation of attempt?.words ?? []) {
    const word = words[Math.min(words.length, deviation.word) - 1];
    if (!word) continue;
    word.classList.add(deviation.kind);
    word.title = deviation.kind === 'dropped' ? 'left out'
      : deviation.kind === 'added' ? `“${deviation.said}” added here` : `said “${deviation.said}”`;
  }
}

function what(line, outcome) {
  const parts = [];
  if (outcome === 'skipped' || outcome === 'incomplete' || outcome === 'misread' || outcome === 'not judged') {
    parts.push(line.said && line.said !== 'not read' ? line.said : outcome);
  }
  if (line.attempts.length > 1) parts.push(count(line.attempts.length, 'attempt'));
  if (line.marked) parts.push('marked');
  if (line.decision) parts.push(line.decision.label);
  return parts.join(' · ');
}

export function showAsides() {
  document.querySelectorAll('.row.aside').forEach((r) => r.remove());
  for (const aside of model.asides) {
    const before = aside.line ? rows.get(aside.line) : null;
    const row = el('div', { class: 'row aside' },
      el('span', { class: 'time' }, clock(inTake(aside.take, aside.start))),
      el('p', { class: 'text' }, aside.said || '…'),
      el('p', { class: 'what' }, `aside, ${Math.max(1, Math.round(aside.end - aside.start))} s`));
    if (before) {
      let last = before;
      while (last.nextElementSibling?.classList.contains('aside')) last = last.nextElementSibling;
      last.after(row);
    } else {
      byId('script').prepend(row);
    }
  }
}

export function showPosition() {
  const { at } = model;
  const before = document.querySelector('.row.current');
  const row = rows.get(at.line);
  if (before && before !== row) {
    before.classList.remove('current');
    before.removeAttribute('aria-current');
    showLine(lineOf(Number(before.dataset.line)));
  }
  if (!row) return;
  row.classList.add('current');
  row.setAttribute('aria-current', 'location');
  row.querySelectorAll('.word').forEach((word, i) => word.classList.toggle('read', i < at.word - 1));
  const doing = { FOLLOWING: at.held ? 'held' : 'reading', ASIDE: 'aside', LOST: 'finding the place' };
  if (model.live) row.querySelector('.what').textContent = at.rolling ? doing[at.follow] : 'here';
  put('strip-reading', at.rolling ? `${doing[at.follow]}: line ${at.line}` : model.live ? 'no take is rolling' : '');
  if (following && row !== before) bring(row);
}

const layout = (page) => `${page.scrollHeight} ${page.clientHeight}`;

function bring(row) {
  const page = byId('page');
  const most = page.scrollHeight - page.clientHeight;
  const to = Math.max(0, Math.min(most, row.offsetTop - page.clientHeight * 0.38));
  const far = Math.abs(page.scrollTop - to);
  glide = { to, arrived: far < 2, layout: layout(page) };
  if (far < 2) return;
  page.scrollTo({ top: to, behavior: matchMedia('(prefers-reduced-motion: reduce)').matches ? 'auto' : 'smooth' });
}

export function followAgain() {
  following = true;
  byId('follow').hidden = true;
  const row = rows.get(model.at.line) ?? rows.get(model.lines.length);
  if (row) bring(row);
}

function byHand() {
  if (!model.known) return;
  following = false;
  byId('follow').hidden = false;
}

/** The page leaves a reader alone who scrolls away, whether by wheel, finger, key, scrollbar or in another way. */
export function watchScrolling() {
  const page = byId('page');
  page.addEventListener('wheel', byHand, { passive: true });
  page.addEventListener('touchmove', byHand, { passive: true });
  page.addEventListener('pointerdown', (e) => { if (e.target === page && e.offsetX >= page.clientWidth) byHand(); });
  page.addEventListener('keydown', (e) => {
    if (['PageUp', 'PageDown', 'Home', 'End'].includes(e.key)) byHand();
  });
  page.addEventListener('scroll', watchGlide, { passive: true });
  new ResizeObserver(() => { if (following && model.known) followAgain(); }).observe(page);
}

/**
 * If the page has moved from where our scrolling ended, we did not scroll it, unless the script itself has moved.
 * Nothing can be concluded while it is scrolling: given a new target, a browser may continue the old way for a while.
 */
function watchGlide() {
  const page = byId('page');
  if (!following || !model.known || page.clientHeight === 0) return;
  if (layout(page) !== glide.layout) {
    followAgain();
    return;
  }
  const far = Math.abs(page.scrollTop - glide.to);
  if (far < 2) glide.arrived = true;
  else if (glide.arrived && far > SWAY) byHand();
}

const told = (row) => row.querySelector('.what').textContent
  || (row.classList.contains('ahead') ? 'not read yet' : 'clean');

export function select(line) {
  chooseLine(line === chosenLine() ? 0 : line);
  showChoice();
  const row = rows.get(chosenLine());
  row?.scrollIntoView({ block: 'nearest' });
  if (row) aloud(`Line ${line}, ${told(row)}: ${text(line)}`);
  byId('page').dispatchEvent(new CustomEvent('selected', { bubbles: true }));
}

/** Shows which line is chosen; a choice lapses by itself. */
export function showChoice() {
  const line = chosenLine();
  if (line === shownChoice) return;
  rows.get(shownChoice)?.classList.remove('selected');
  shownChoice = line;
  rows.get(line)?.classList.add('selected');
}

export function selectNext(step) {
  const from = chosenLine() || model.at.line - (step > 0 ? 1 : 0);
  const to = Math.max(1, Math.min(model.lines.length, from + step));
  if (to !== chosenLine()) select(to);
  byHand();
}

/** Gives up the chosen line; with none, goes back to the line being read. */
export function leave() {
  if (chosenLine()) select(chosenLine());
  else followAgain();
}
