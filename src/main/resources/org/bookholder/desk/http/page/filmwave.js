// Hearing a line as it is cut, and its sound with the two places where it is cut, which can be moved.

import { playStretch } from './stretch.js';
import { el, svg } from './words.js';

/** Shown beside what is used, in seconds. */
const AROUND = 1.2;
const MOST = 118;

/** Steps of the arrow keys, in seconds. */
const STEP = 0.01;
const LARGE = 0.1;
const LEAST = 0.05;
const PATIENCE = 400;

const audio = new Audio();
audio.preload = 'auto';
let shown = '';
let piece = null;

/** What is heard of a line: the part that is used, or else its last attempt; null if it was never tried. */
export function pieceOf(board, line) {
  const from = line.used ?? line.attempts.at(-1);
  if (!from || line.session < 0) return null;
  const { address, takes } = board.sessions[line.session];
  const take = takes.find(({ number }) => number === from.take);
  return { address, take, in: from.in ?? from.start, out: from.out ?? from.end, set: Boolean(line.used), start: from.start, end: from.end };
}

export const silent = () => audio.paused;

/** Plays a piece; without one falls silent. */
export function hear(what) {
  if (!what) {
    audio.pause();
    return;
  }
  const src = `${what.address}takes/${what.take.number}.wav`;
  if (!audio.src.endsWith(src)) audio.src = src;
  playStretch(audio, what.in - what.take.start, what.out - what.take.start, moveHead).catch(() => {});
}

function moveHead() {
  const head = document.querySelector('#film-wave .playhead');
  if (head && piece) {
    const at = (audio.currentTime + piece.take.start - piece.from) / (piece.to - piece.from);
    head.style.left = `${Math.max(0, Math.min(100, 100 * at))}%`;
  }
  return true;
}

/** Draws a line's sound; `moved` is called with "IN" or "OUT" and a time when a place was moved. */
export async function showWave(host, board, line, moved) {
  const what = pieceOf(board, line);
  const key = JSON.stringify([line.line, what]);
  if (key === shown && host.childElementCount) return;
  const focused = document.activeElement?.id;
  shown = key;
  piece = null;
  if (!what) {
    host.replaceChildren(el('p', { class: 'small' }, `Line ${line.line} was never read.`));
    return;
  }
  const from = Math.max(what.take.start, what.in - AROUND);
  const to = Math.min(what.take.end ?? Infinity, what.out + AROUND, from + MOST);
  piece = { ...what, from, to };
  draw(host, line, [], moved);
  if (focused) document.getElementById(focused)?.focus();
  const answer = await fetch(`${what.address}peaks?take=${what.take.number}&from=${from}&to=${to}&points=500`).catch(() => null);
  if (key !== shown) return;
  if (answer?.ok) wave(host, (await answer.json()).peaks);
  else host.append(el('p', { class: 'small' }, 'This take was not recorded.'));
}

function draw(host, line, peaks, moved) {
  const box = el('div', { class: 'sound' }, el('div', { class: 'drawn' }), el('div', { class: 'inside' }), el('div', { class: 'playhead' }));
  if (piece.set) box.append(place('IN', moved), place('OUT', moved));
  host.replaceChildren(el('p', { class: 'small' }, `Line ${line.line}, `, el('span', { id: 'film-places' })), box);
  put(host);
}

function wave(host, peaks) {
  const loudest = Math.max(20, ...peaks);
  const edge = (way) => peaks.map((p, i) => `${i} ${50 + (way * 48 * p) / loudest}`);
  const d = peaks.length ? `M${edge(-1).join('L')}L${edge(1).reverse().join('L')}Z` : 'M0 50';
  host.querySelector('.drawn').replaceChildren(svg('svg', {
    viewBox: `0 0 ${Math.max(1, peaks.length)} 100`, preserveAspectRatio: 'none', class: 'wave', 'aria-hidden': 'true' }, svg('path', { d })));
}

/** Whether as little of what is said is left as can be. */
const least = (what) => Math.min(what.end - what.in, what.out - what.start, what.out - what.in) < LEAST + 0.002;

const share = (at) => (100 * (at - piece.from)) / (piece.to - piece.from);

function put(host) {
  for (const [name, at] of [['in', piece.in], ['out', piece.out]]) {
    const button = host.querySelector(`#film-cut-${name}`);
    if (button) {
      button.style.left = `${share(at)}%`;
      button.setAttribute('aria-valuenow', Math.round((at - piece.from) * 1000));
      button.setAttribute('aria-valuetext', `${(at - piece.take.start).toFixed(2)} s of the take`);
    }
  }
  const inside = host.querySelector('.inside');
  inside.style.left = `${share(piece.in)}%`;
  inside.style.width = `${share(piece.out) - share(piece.in)}%`;
  host.querySelector('#film-places').textContent = `take ${piece.take.number}: ${(piece.in - piece.take.start).toFixed(2)} to ${
    (piece.out - piece.take.start).toFixed(2)} s${least(piece) ? '. No further: nothing of the line would be left.' : ''}`;
}

function place(edge, moved) {
  const name = edge.toLowerCase();
  const host = () => document.getElementById('film-wave');
  let waits = 0;
  const move = (at) => {
    // Something of the line stays between the two places, whatever is dragged.
    const last = Math.min(piece.out, piece.end) - LEAST;
    const first = Math.max(piece.in, piece.start) + LEAST;
    piece[name] = edge === 'IN' ? Math.max(piece.from, Math.min(at, last)) : Math.min(piece.to, Math.max(at, first));
    put(host());
  };
  const keep = (at) => moved(edge, Number(at.toFixed(4)));
  const button = el('button', { type: 'button', id: `film-cut-${name}`, class: `bound ${edge === 'IN' ? 'start' : 'end'}`, role: 'slider',
    'aria-label': edge === 'IN' ? 'Where the line begins' : 'Where the line ends',
    'aria-valuemin': 0, 'aria-valuemax': Math.round((piece.to - piece.from) * 1000) });
  button.addEventListener('pointerdown', (event) => {
    button.setPointerCapture(event.pointerId);
    let dragged = false;
    button.onpointermove = ({ clientX }) => {
      const box = button.parentElement.getBoundingClientRect();
      dragged = true;
      move(piece.from + ((clientX - box.left) / box.width) * (piece.to - piece.from));
    };
    button.onpointerup = () => {
      button.onpointermove = null;
      button.onpointerup = null;
      if (dragged) keep(piece[name]);
    };
  });
  button.addEventListener('keydown', (event) => {
    const way = { ArrowLeft: -1, ArrowRight: 1 }[event.key];
    if (!way) return;
    event.preventDefault();
    move(piece[name] + way * (event.shiftKey ? LARGE : STEP));
    const at = piece[name];
    clearTimeout(waits);
    waits = setTimeout(() => keep(at), PATIENCE);
  });
  return button;
}
