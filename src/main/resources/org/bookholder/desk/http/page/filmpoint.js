// Choosing the point of a camera's picture that stays in place when it is framed closer, on the draft's picture.

import { byId, el } from './words.js';

/** Steps of the arrow keys, in thousandths of the picture. */
const STEP = 10;
const LARGE = 50;

const within = (value) => Math.max(0, Math.min(1000, value));

/**
 * Shows the point over the picture; `chosen` is called with the new one, in thousandths of the picture as shot.
 *
 * A picture that is framed closer already is shown around the point as it is now: what is clicked there lies nearer to it as shot.
 */
export function choosePoint(host, { scale, point }, chosen) {
  host.querySelector('.film-point')?.remove();
  const now = { ...point };
  const factor = scale / 100;
  const shown = (side) => within(point[side] + (now[side] - point[side]) * factor);
  const asShot = (side, at) => Math.round(within(point[side] + (at - point[side]) / factor));
  const mark = el('span', { class: 'mark', 'aria-hidden': 'true' });
  const layer = el('div', { class: 'film-point', tabindex: '0', role: 'application',
    'aria-label': 'Point that stays in place: arrow keys move it, Enter keeps it, Escape leaves it as it was' }, mark);
  const put = () => {
    mark.style.left = `${shown('across') / 10}%`;
    mark.style.top = `${shown('down') / 10}%`;
  };
  const end = (keep) => {
    layer.remove();
    byId('film-lines').focus();
    if (keep) chosen(now);
  };
  layer.addEventListener('click', ({ clientX, clientY }) => {
    const box = layer.getBoundingClientRect();
    now.across = asShot('across', (1000 * (clientX - box.left)) / box.width);
    now.down = asShot('down', (1000 * (clientY - box.top)) / box.height);
    end(true);
  });
  layer.addEventListener('keydown', (event) => {
    const step = event.shiftKey ? LARGE : STEP;
    const way = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] }[event.key];
    if (way) {
      now.across = within(now.across + way[0]);
      now.down = within(now.down + way[1]);
      put();
    } else if (event.key === 'Enter') end(true);
    else if (event.key === 'Escape') end(false);
    else return;
    event.preventDefault();
    event.stopPropagation();
  });
  put();
  host.append(layer);
  layer.focus();
}
