// The sound check: what to do now, and afterwards a picture of room, voice and peaks with what to try.

import { byId, el, svg } from './words.js';

const LEAST = -90;
const GOOD = [-12, -6];
const SAMPLE = 'Read aloud, as you will in the take: “Spring is when a hive decides whether it will stay. Open it on a warm day, and look for eggs before you look for honey.”';

let began = 0;
let step = '';
let ticking = 0;

/** Shows how far the check has come, or what came of it. */
export function showSound(place, sound, { begin, stop }) {
  if (sound.step !== step) {
    step = sound.step;
    began = performance.now();
  }
  const focused = document.activeElement?.id;
  const going = ['OPENING', 'ROOM', 'VOICE'].includes(sound.step);
  place.replaceChildren(...(going ? doing(sound) : result(sound)),
    el('p', { class: 'choices' }, going ? el('button', { type: 'button', id: 'sound-stop', onclick: stop }, 'Stop')
      : el('button', { type: 'button', id: 'sound-begin', onclick: begin }, sound.step === 'NONE' ? 'Check the sound' : 'Check again')));
  if (focused === 'sound-begin' || focused === 'sound-stop') (byId('sound-begin') ?? byId('sound-stop')).focus();
  clearInterval(ticking);
  if (going) ticking = setInterval(() => tick(sound.seconds), 200);
}

function tick(seconds) {
  const bar = byId('sound-progress');
  if (bar) bar.value = Math.min(1, (performance.now() - began) / 1000 / (seconds || 1));
}

function doing({ step: now, source }) {
  const said = { OPENING: 'Opening the microphone…', ROOM: 'Say nothing for a moment: the room is measured.', VOICE: SAMPLE }[now];
  return [el('p', { class: 'sound-do', role: 'status' }, said), el('p', { class: 'small' }, source),
    el('progress', { id: 'sound-progress', max: '1', value: '0', class: 'sound-progress', 'aria-label': 'How far the check has come' })];
}

function result(sound) {
  if (sound.step === 'FAILED') return [el('p', { class: 'wrong', role: 'alert' }, `${sound.trouble}.`)];
  if (sound.step !== 'DONE') {
    return [el('p', { class: 'small' }, 'Measures the room for 5 seconds and your voice for 12, and says what to try.')];
  }
  const { check } = sound;
  const time = new Date(sound.when).toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
  return [el('p', { class: `verdict ${check.verdict}` }, VERDICTS[check.verdict]),
    el('p', { class: 'small' }, `${sound.source}, checked at ${time}`), drawn(check), ...noise(check.noise),
    el('dl', { class: 'remarks' }, ...check.remarks.flatMap(({ about, grade, figure, advice }) => [
      el('dt', {}, about), el('dd', {}, el('span', { class: `grade ${grade}` }, grade), ` ${figure}`,
        advice ? el('span', { class: 'try' }, `Try: ${advice}.`) : '')])),
    el('details', {}, el('summary', {}, 'Where the limits come from'), ...check.sources.map((source) => el('p', { class: 'small' }, source)))];
}

const VERDICTS = {
  good: 'The sound is good: begin.',
  fair: 'The sound will do. Whatever is marked fair can be better.',
  poor: 'Don\u2019t record yet. Fix whatever is marked poor, then check again.',
};

const QUIETEST_BAND = -110;
const LOUDEST_BAND = -30;

/** The room's noise over frequency: a column for each third of an octave, dark where something was named, and what was named below. */
function noise({ bands, parts }) {
  if (!bands.length) return [];
  const width = 372 / bands.length;
  const height = (level) => 90 * Math.max(0.02, Math.min(1, ((level ?? QUIETEST_BAND) - QUIETEST_BAND) / (LOUDEST_BAND - QUIETEST_BAND)));
  const edge = 2 ** (1 / 6);
  const named = (hertz) => parts.some(({ from, to }) => hertz * edge >= from && hertz / edge <= to);
  const label = (hertz) => (hertz < 950 ? `${Number(hertz.toPrecision(1))}` : `${Number((hertz / 1000).toPrecision(1))} k`);
  const texts = bands.flatMap(({ hertz }, i) => {
    if (i % 6 !== 2) return [];
    const text = svg('text', { x: 14 + width * (i + 0.5), y: 112, class: 'scale-text', 'text-anchor': 'middle' });
    text.textContent = label(hertz);
    return [text];
  });
  const said = parts.length ? parts.map((part) => part.said).join('; ') : 'nothing stands out';
  return [el('h4', {}, 'Noise of the room, from low to high (Hz)'),
    svg('svg', { viewBox: '0 0 400 116', class: 'sound-picture', role: 'img', 'aria-label': `Noise of the room over frequency: ${said}` },
      ...bands.map(({ hertz, level }, i) => svg('rect', { class: named(hertz) ? 'noise-bar named' : 'noise-bar',
        x: 14 + width * i, y: 96 - height(level), width: Math.max(1, width - 2), height: height(level) })), ...texts),
    parts.length ? el('ul', { class: 'noise-parts' }, ...parts.map((part) => el('li', {}, part.said))) : el('p', { class: 'small' }, 'Nothing stands out.')];
}

/** Room, voice and peaks on one scale of levels, with the place where peaks belong. */
function drawn({ room, voice }) {
  const x = (level) => 14 + 372 * (Math.max(LEAST, Math.min(0, level ?? LEAST)) - LEAST) / -LEAST;
  const text = (at, y, said, anchor = 'middle') => {
    const words = svg('text', { x: at, y, class: 'scale-text', 'text-anchor': anchor });
    words.textContent = said;
    return words;
  };
  const bar = (y, level, kind) => svg('rect', { class: kind, x: 14, y, width: Math.max(1, x(level) - 14), height: 14, rx: 3 });
  return svg('svg', { viewBox: '0 0 400 112', class: 'sound-picture', role: 'img',
    'aria-label': `Room ${Math.round(room.floor)}, voice ${Math.round(voice.speech)}, peaks ${Math.round(voice.peak)} dBFS; peaks belong between ${GOOD[0]} and ${GOOD[1]}` },
  svg('rect', { class: 'good-band', x: x(GOOD[0]), y: 6, width: x(GOOD[1]) - x(GOOD[0]), height: 76 }),
  text((x(GOOD[0]) + x(GOOD[1])) / 2, 108, 'peaks here'),
  bar(14, room.floor, 'room-bar'), text(19, 25, 'room', 'start'), bar(36, voice.speech, 'voice-bar'), text(19, 47, 'voice', 'start'),
  svg('rect', { class: 'peak-mark', x: x(voice.peak) - 2, y: 32, width: 4, height: 22 }),
  ...[-80, -60, -40, -20, 0].flatMap((level) => [svg('rect', { class: 'scale', x: x(level), y: 66, width: 1, height: 8 }), text(x(level), 90, `${level}`)]));
}
