// The reading window in small: rows as large and as wide as they will be, around the row being read.

import { svg } from './words.js';

const HEIGHT = 540;
const TEXT = `Spring is when a hive decides whether it will stay. Open it on a warm day, and look for eggs before you look for honey. If
 you see three frames of brood, close it again and let them work. Come back in a week, and bring a second box. Nothing you do in
 spring matters more than leaving them alone at the right time.`.split(/\s+/);
const READ = 2;

/** Breaks the words into rows of about so many. */
function rows(words) {
  const all = [];
  for (let i = 0; i < TEXT.length; i += words) all.push(TEXT.slice(i, i + words).join(' '));
  return all;
}

/** Draws it into a place. */
export function drawPicture(place, picture) {
  const width = picture.width * HEIGHT;
  const em = picture.em * HEIGHT;
  const left = picture.columnLeft * HEIGHT;
  const column = picture.columnWidth * HEIGHT;
  const turned = [picture.mirrored ? `translate(${width} 0) scale(-1 1)` : '', picture.upsideDown ? `translate(0 ${HEIGHT}) scale(1 -1)` : '']
    .filter(Boolean).join(' ');
  const all = rows(picture.words);
  const eye = picture.eyeLine * HEIGHT;
  const lines = all.map((text, i) => {
    const y = eye + (i - READ) * picture.pitch * HEIGHT + 0.36 * em;
    return y > 0 && y < HEIGHT + em ? line(text, i, { x: left, y, em, column }) : null;
  });
  const mark = (x) => svg('rect', { class: 'footlight', x, y: eye - 0.05 * em, width: 0.5 * em, height: 0.1 * em });
  place.replaceChildren(svg('svg', { viewBox: `0 0 ${width} ${HEIGHT}`, class: 'window-small', role: 'img',
    'aria-label': `The reading window: about ${picture.words} words in a row${picture.mirrored ? ', mirrored' : ''}` },
  svg('rect', { width, height: HEIGHT, class: 'glass' }),
  svg('g', { transform: turned }, ...lines.filter(Boolean), mark(left - 1.1 * em), mark(left + column + 0.6 * em))));
}

function line(text, i, { x, y, em, column }) {
  const row = svg('text', { x, y, 'font-size': em, class: i < READ ? 'spoken' : 'to-come' });
  row.textContent = text;
  // A row that would be longer is broken in the window.
  if (text.length * 0.53 * em > column) row.setAttribute('textLength', column);
  if (row.hasAttribute('textLength')) row.setAttribute('lengthAdjust', 'spacingAndGlyphs');
  return row;
}
