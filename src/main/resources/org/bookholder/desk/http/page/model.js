// The state received from the program: first all of it, then the parts that change.

export const model = {
  known: false, session: '', acts: false, live: false, script: null, at: null, pace: null, sound: null, tired: null,
  takes: [], asides: [], notes: [], people: {}, cautions: [], lines: [], summary: null, points: [], handoff: null, order: {},
};

export function takeWhole(whole) {
  Object.assign(model, whole, { known: true });
  return new Set(['script', ...Object.keys(whole)]);
}

export function takeChange(change) {
  const { lines, points, ...parts } = change;
  Object.assign(model, parts);
  if (parts.script) {
    model.lines = lines;
  } else if (lines) {
    for (const line of lines) model.lines[line.line - 1] = line;
  }
  if (points) model.points.push(...points);
  return new Set(Object.keys(change));
}

export const lineOf = (number) => model.lines[number - 1];

export const takeOf = (number) => model.takes.find((t) => t.take === number);

export const words = (number) => model.script.elements.find((e) => e.line === number).words;

export const text = (number) => words(number).join(' ');

/** The length of a take in seconds; for one that is rolling, its length so far. */
export const lengthOf = (take) => (take.end ?? model.at.now) - take.start;

/** The total length of all takes, in seconds. */
export const lengthOfAll = () => model.takes.reduce((sum, take) => sum + lengthOf(take), 0);

/** The number of the take that was rolling then, or the last one before; undefined before the first. */
export const takeAt = (at) => model.takes.filter((t) => t.start <= at).pop()?.take;

/** Seconds since the start of a take. */
export const inTake = (take, at) => Math.max(0, at - (takeOf(take)?.start ?? 0));

/** The attempt that decides a line's outcome. */
export function telling(line) {
  if (line.best) return attemptOf(line, line.best[0], line.best[1]);
  return line.attempts[line.attempts.length - 1];
}

/** How certain it is, 0 to 1, that a line was not read as written; skipped or marked lines are certain. */
export function sure(line) {
  const called = line.outcome === 'misread' ? telling(line)?.words ?? [] : [];
  return called.length ? Math.max(...called.map((w) => w.certainty)) : 1;
}

export const attemptOf = (line, take, ordinal) =>
  line.attempts.find((a) => a.take === take && a.ordinal === ordinal);

export const notesOf = (number) => model.notes.filter((n) => n.line === number);

/** The line to which something just heard belongs. */
export function justRead() {
  const { line, word } = model.at;
  return Math.max(1, Math.min(model.lines.length, word > 1 ? line : line - 1));
}
