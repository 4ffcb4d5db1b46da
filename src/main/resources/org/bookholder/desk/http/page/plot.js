// Two small plots, each with a description in words.

import { svg, short } from './words.js';

const WIDTH = 240;

function frame(host, height, label) {
  const root = svg('svg', { viewBox: `0 0 ${WIDTH} ${height}`, role: 'img', 'aria-label': label });
  host.replaceChildren(root);
  return root;
}

function tick(text, attributes) {
  const label = svg('text', { class: 'tick', ...attributes });
  label.append(text);
  return label;
}

/** How many of the takes before are drawn behind the current one. */
const BEFORE = 3;

/**
 * The pace of a take over its time, with the target, the band that counts as on pace, and the takes before.
 *
 * @param all the points of all takes: second, take, words a minute or null
 * @param take the take that is shown
 */
export function pacePlot(host, all, take, target, tolerance) {
  const height = 96;
  const foot = 14;
  const wide = WIDTH - 26;
  const takes = new Map();
  for (const p of all) {
    if (p[1] > take - 1 - BEFORE) takes.set(p[1], [...(takes.get(p[1]) ?? []), p]);
  }
  const points = takes.get(take) ?? [];
  const values = points.filter((p) => p[2] !== null).map((p) => p[2]);
  const low = Math.min(target * 0.7, ...values) - 4;
  const high = Math.max(target * 1.3, ...values) + 4;
  const lengthOf = (list) => (list.length ? list[list.length - 1][0] - list[0][0] : 0);
  const to = Math.max(60, lengthOf(points));
  const x = (second) => 2 + ((wide - 4) * second) / to;
  const y = (value) => height - 2 - ((height - 4) * (Math.max(low, Math.min(high, value)) - low)) / (high - low);
  const last = values.length ? `now ${values[values.length - 1]}` : 'nothing measured yet';
  const root = frame(host, height + foot, `Pace over the take, target ${target} words a minute, ${last}`);
  root.append(svg('rect', {
    class: 'band', x: 0, width: wide, y: y(target * (1 + tolerance)),
    height: y(target * (1 - tolerance)) - y(target * (1 + tolerance)),
  }), svg('line', { class: 'target', x1: 0, x2: wide, y1: y(target), y2: y(target) }));
  for (const value of [target * (1 + tolerance), target, target * (1 - tolerance)]) {
    root.append(tick(String(Math.round(value)), { x: WIDTH, y: y(value) + 4, 'text-anchor': 'end' }));
  }
  root.append(tick('0:00', { x: 0, y: height + foot - 3 }),
    tick(short(to), { x: wide, y: height + foot - 3, 'text-anchor': 'end' }));
  for (const [number, list] of takes) {
    if (number !== take) root.append(svg('path', { class: 'curve before', d: curve(list.filter((p) => p[0] - list[0][0] <= to), x, y) }));
  }
  root.append(svg('path', { class: 'curve', d: curve(points, x, y) }));
}

/** The path of one take's pace, interrupted where it is not known. */
function curve(points, x, y) {
  let path = '';
  let open = false;
  const step = Math.max(1, Math.floor(points.length / 480));
  points.forEach((p, i) => {
    if (p[2] === null) { open = false; return; }
    if (i % step && i !== points.length - 1) return;
    path += `${open ? 'L' : 'M'}${x(p[0] - points[0][0]).toFixed(1)} ${y(p[2]).toFixed(1)}`;
    open = true;
  });
  return path || 'M0 0';
}

/** Fluffs per 100 words, stretch by stretch; the hardest stretch, if any, is highlighted. */
export function fluffPlot(host, stretches, hardest) {
  const height = 120;
  const most = Math.max(4, ...stretches.map((s) => s.rate ?? 0));
  const total = stretches.reduce((sum, s) => sum + s.words, 0) || 1;
  const root = frame(host, height, hardest
    ? `Fluffs in 100 words over time; in the hardest stretch ${hardest.rate}, from ${short(hardest.from)} on`
    : 'Fluffs in 100 words over time');
  let left = 0;
  for (const s of stretches) {
    const width = (WIDTH * s.words) / total;
    const tall = ((height - 30) * (s.rate ?? 0)) / most;
    root.append(svg('rect', {
      class: s.fluffs && s.from === hardest?.from ? 'bar hardest' : 'bar',
      x: left + 1, width: Math.max(1, width - 2), y: height - 14 - tall, height: Math.max(1, tall),
    }));
    if (width > 18) root.append(tick(String(s.rate ?? '–'), { x: left + 2, y: height - 18 - tall }));
    if (width > 30) root.append(tick(short(s.from), { x: left + 2, y: height - 2 }));
    left += width;
  }
}
