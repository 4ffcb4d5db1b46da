// Listening to an attempt: the take's recording with a little before and after it, and bounds that can be dragged.

import { act } from './link.js';
import { byId, clock, el, svg } from './words.js';
import { inTake, model, takeOf } from './model.js';
import { playStretch } from './stretch.js';

const BEFORE = 0.8;
const AFTER = 0.8;
const AROUND = 1.6;
const NUDGE = 0.02;

const audio = new Audio();
audio.preload = 'auto';
let piece = null;
let shownKey = '';

/** The attempt that is played without a player; null if none. */
let heard = null;

export const sound = audio;

/** Draws the player for an attempt once; afterwards only takes over bounds that someone else moved. */
export async function showPlayer(host, attempt) {
  const key = `${attempt.take}.${attempt.ordinal}.${attempt.start}.${attempt.end}`;
  if (key === shownKey && host.childElementCount) return;
  shownKey = key;
  const take = takeOf(attempt.take);
  const from = Math.max(take.start, attempt.start - AROUND);
  const to = attempt.end + AROUND;
  piece = { attempt, from, to, start: attempt.start, end: attempt.end };
  load(attempt);
  heard = null;
  draw(host, []);
  const answer = await fetch(`peaks?take=${attempt.take}&from=${from}&to=${Math.min(to, from + 118)}&points=600`)
    .catch(() => null);
  if (answer?.ok && key === shownKey) {
    const { peaks, to: end } = await answer.json();
    if (key !== shownKey) return;
    piece.to = end;
    draw(host, peaks);
  } else if (key === shownKey) {
    host.append(el('p', { class: 'small' }, 'This take was not recorded.'));
  }
}

/** Loads the recording of an attempt's take. That of a rolling take grows, so it is asked for up to the attempt's end. */
function load(attempt) {
  const growing = takeOf(attempt.take).end === undefined;
  const src = `takes/${attempt.take}.wav${growing ? `?to=${Math.ceil(attempt.end)}` : ''}`;
  if (!audio.src.endsWith(src)) audio.src = src;
}

/** Plays an attempt at once, without a player. */
export function hear(attempt) {
  const start = takeOf(attempt.take).start;
  load(attempt);
  heard = attempt;
  playStretch(audio, attempt.start - start - BEFORE / 4, attempt.end + AFTER / 4 - start).catch(() => { heard = null; });
}

/** The attempt that is being heard without a player; null if none. */
export const heardNow = () => (audio.paused ? null : heard);

const share = (at) => (100 * (at - piece.from)) / (piece.to - piece.from);

function draw(host, peaks) {
  const loudest = Math.max(20, ...peaks);
  const root = svg('svg', { viewBox: `0 0 ${Math.max(1, peaks.length)} 100`, preserveAspectRatio: 'none', class: 'wave', 'aria-hidden': 'true' });
  let top = '';
  let bottom = '';
  peaks.forEach((p, i) => {
    const tall = 48 * (p / loudest);
    top += `${i ? 'L' : 'M'}${i} ${50 - tall}`;
    bottom = `L${i} ${50 + tall}${bottom}`;
  });
  root.append(svg('path', { d: peaks.length ? `${top}${bottom}Z` : 'M0 50' }));
  const box = el('div', { class: 'sound', onclick: seek }, root,
    el('div', { class: 'inside', id: 'inside' }), el('div', { class: 'playhead', id: 'playhead' }),
    handle('start'), handle('end'));
  host.replaceChildren(box, el('p', { class: 'small bounds', id: 'bounds' }));
  place();
}

function handle(which) {
  const button = el('button', {
    type: 'button', class: `bound ${which}`, id: `bound-${which}`, role: 'slider',
    'aria-label': which === 'start' ? 'Where the line begins' : 'Where the line ends',
    'aria-valuemin': 0, 'aria-valuemax': Math.round((piece.to - piece.from) * 1000),
  });
  button.addEventListener('pointerdown', (event) => {
    button.setPointerCapture(event.pointerId);
    button.onpointermove = (move) => {
      const box = button.parentElement.getBoundingClientRect();
      put(which, piece.from + ((move.clientX - box.left) / box.width) * (piece.to - piece.from));
    };
  });
  button.addEventListener('pointerup', () => { button.onpointermove = null; keep(); });
  button.addEventListener('click', (event) => event.stopPropagation());
  button.addEventListener('keydown', (event) => {
    const step = { ArrowLeft: -NUDGE, ArrowRight: NUDGE }[event.key];
    if (!step) return;
    event.preventDefault();
    event.stopPropagation();
    put(which, piece[which] + step);
    keep();
  });
  return button;
}

/** Moves a bound by one step, for the letter keys. */
export function nudge(which, steps) {
  if (!piece) return;
  put(which, piece[which] + steps * NUDGE);
  keep();
}

function put(which, at) {
  if (which === 'start') piece.start = Math.max(piece.from, Math.min(at, piece.end - 0.1));
  else piece.end = Math.min(piece.to, Math.max(at, piece.start + 0.1));
  place();
}

let pending = 0;

function keep() {
  clearTimeout(pending);
  const { attempt, start, end } = piece;
  if (start === attempt.start && end === attempt.end) return;
  pending = setTimeout(() => act({
    do: 'bound', take: attempt.take, ordinal: attempt.ordinal,
    start: Number(start.toFixed(3)), end: Number(end.toFixed(3)),
  }), 350);
}

function place() {
  for (const which of ['start', 'end']) {
    const button = byId(`bound-${which}`);
    button.style.left = `${share(piece[which])}%`;
    button.setAttribute('aria-valuenow', Math.round((piece[which] - piece.from) * 1000));
    button.setAttribute('aria-valuetext', clock(inTake(piece.attempt.take, piece[which])));
  }
  const inside = byId('inside');
  inside.style.left = `${share(piece.start)}%`;
  inside.style.width = `${share(piece.end) - share(piece.start)}%`;
  byId('bounds').textContent = `${clock(inTake(piece.attempt.take, piece.start))} to `
    + `${clock(inTake(piece.attempt.take, piece.end))} of take ${piece.attempt.take}, `
    + `${(piece.end - piece.start).toFixed(2)} s`;
}

function seek(event) {
  const box = event.currentTarget.getBoundingClientRect();
  play(piece.from + ((event.clientX - box.left) / box.width) * (piece.to - piece.from));
}

export function play(from) {
  if (!piece) return;
  heard = null;
  load(piece.attempt);
  const start = takeOf(piece.attempt.take).start;
  playStretch(audio, (from ?? Math.max(piece.from, piece.start - BEFORE)) - start, Math.min(piece.to, piece.end + AFTER) - start, moveHead)
    .catch(() => {});
}

export function playOrPause() {
  if (audio.paused) play();
  else audio.pause();
}

export function silence() {
  audio.pause();
}

/** Moves the playhead; false if there is none any more. */
function moveHead() {
  const head = byId('playhead');
  if (!piece || !head) return false;
  const at = audio.currentTime + takeOf(piece.attempt.take).start;
  head.style.left = `${Math.max(0, Math.min(100, share(at)))}%`;
  return true;
}
