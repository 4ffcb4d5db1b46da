// Formats times, figures and small parts of the page as text.

export function clock(seconds) {
  const s = Math.max(0, Math.floor(seconds));
  const minutes = Math.floor(s / 60);
  const rest = String(s % 60).padStart(2, '0');
  return minutes < 60 ? `${String(minutes).padStart(2, '0')}:${rest}`
    : `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}:${rest}`;
}

export function short(seconds) {
  const s = Math.max(0, Math.round(seconds));
  return `${Math.floor(s / 60)}:${String(s % 60).padStart(2, '0')}`;
}

export const hours = (minutes) => `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')}`;

export function figure(value, unknown = '–') {
  return value === null || value === undefined ? unknown : String(value).replace('-', '−');
}

/** The size of a file. */
export function size(bytes) {
  if (bytes < 1e4) return `${bytes} B`;
  return bytes < 1e6 ? `${Math.round(bytes / 1e3)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;
}

/** How many lines were read, skipped and not reached. */
export const linesRead = (s) => [`${s.read} of ${count(s.lines, 'line')} read`, s.skipped ? `${s.skipped} skipped` : '',
  s.not_reached ? `${s.not_reached} not reached` : ''].filter(Boolean).join(', ');

/** A day as people say it, from yyyy-mm-dd; with its weekday if `exact`. */
export const said = (date, exact = false) => new Date(`${date}T12:00`).toLocaleDateString('en-GB', { weekday: exact ? 'long' : undefined,
  day: 'numeric', month: 'long', year: 'numeric' });

/** A weekday with its date; with the year, if it is not this one. */
export const longDay = (date) => date.toLocaleDateString('en-GB', { weekday: 'long', day: 'numeric', month: 'long',
  year: date.getFullYear() === new Date().getFullYear() ? undefined : 'numeric' });

/** A moment, in milliseconds since 1970, as day and time of day. */
export const when = (ms) => new Date(ms).toLocaleString('en-GB', { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' });

/** A sentence of the program, in which days stand as in the terminal, with days as people say them. */
export const dated = (text) => text.replace(/\b\d{4}-\d\d-\d\d\b/g, (date) => said(date));

export function count(n, one, many = `${one}s`) {
  return `${n} ${n === 1 ? one : many}`;
}

/** Creates an element with attributes and children; text is never treated as mark-up. */
export function el(name, attributes = {}, ...children) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (value === false || value === undefined || value === null) continue;
    if (key.startsWith('on')) element.addEventListener(key.slice(2), value);
    else if (key === 'class') element.className = value;
    else element.setAttribute(key, value === true ? '' : value);
  }
  element.append(...children.filter((c) => c !== null && c !== undefined && c !== ''));
  return element;
}

export function svg(name, attributes = {}, ...children) {
  const element = document.createElementNS('http://www.w3.org/2000/svg', name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.append(...children);
  return element;
}

export const byId = (id) => document.getElementById(id);

/** Sets a text only if it differs, so that screen readers are not disturbed. */
export function put(id, text) {
  const element = byId(id);
  if (element.textContent !== text) element.textContent = text;
}

/** Replaces what an element holds, and gives the focus back to the thing of the same id. */
export function fill(id, ...children) {
  const focused = document.activeElement?.id;
  byId(id).replaceChildren(...children.filter(Boolean));
  if (focused) byId(focused)?.focus();
}

let spoken = 0;

/** Tells a screen reader without showing anything. */
export function aloud(text) {
  spoken += 1;
  byId('said-aloud').textContent = spoken % 2 ? text : `${text}\u00a0`;
}
