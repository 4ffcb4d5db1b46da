// The lines of the film's page: each with where it stands in the film and what becomes of it.

import { el, short } from './words.js';

/** "line 3" or "lines 3, 5 and 8". */
export const count = (lines) => (lines.length === 1 ? `line ${lines[0]}` : `lines ${lines.slice(0, -1).join(', ')} and ${lines.at(-1)}`);

/** The lines as options of a list; `choose` is called with the number of the one that is clicked. */
export const entries = (board, current, choose) => board.lines.flatMap((line) => [
  ...board.covers.filter((cover) => cover.line === line.line).map(over), entry(line, board, current, choose)]);

/** What is laid over the lines that follow, as a row that can't be chosen. */
const over = ({ text, film, seconds }) => el('li', { role: 'presentation', class: 'film-line cover' }, el('span', { class: 'time' }, short(film)),
  el('span', { class: 'text' }, text), el('span', { class: 'what' }, el('span', {}, `your picture, ${seconds.toFixed(1)} s, over the voice`)));

const entry = (line, board, current, choose) => el('li', {
  id: `film-line-${line.line}`, role: 'option', 'aria-selected': String(line.line === current), class: `film-line ${kind(line)}`,
  onclick: () => choose(line.line),
}, el('span', { class: 'time' }, line.used ? short(line.used.film) : '–'),
el('span', { class: 'text' }, el('span', { class: 'small number' }, `${line.line} `), line.text),
el('span', { class: 'what' }, ...becomes(line, board).map((text) => el('span', {}, text))));

function kind(line) {
  if (line.out) return 'out';
  if (!line.used) return 'gap';
  return line.listen ? 'listen' : '';
}

/** What becomes of a line, one short sentence each. */
function becomes(line, board) {
  if (line.out) return ['left out on purpose'];
  if (line.session < 0) return ['new since it was read'];
  if (!line.used) {
    return [line.attempts.length ? `nothing to use; ${line.attempts.length === 1 ? 'an attempt was' : `${line.attempts.length} attempts were`} broken off`
      : 'not read; pick it up, or leave it out'];
  }
  const { used, attempts } = line;
  const which = attempts.findIndex((a) => a.take === used.take && a.ordinal === used.ordinal) + 1;
  return [
    [`take ${used.take}`, attempts.length > 1 ? `attempt ${which} of ${attempts.length}` : '',
      used.scale > 100 ? `closer, ${used.scale}\u00a0%` : line.framing === 'AS_SHOT' ? 'as shot, as you chose' : ''].filter(Boolean).join(', '),
    line.listen ? `listen: ${line.listen}` : '',
    used.pause !== undefined ? `${used.pause.toFixed(2)} s of quiet before${line.pauseSet >= 0 ? ', set' : ''}` : '',
    line.moved ? 'cut by hand' : '',
    line.cameras.length > 1 && used.camera !== line.cameras[0] ? `shown by ${used.camera}` : '',
    used.seen || !board.filmed ? '' : 'no camera shows it',
  ].filter(Boolean);
}
