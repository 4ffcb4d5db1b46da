// What a person had seen when they pressed a key. If two producers press the same key at the same moment, each sends
// what they wanted, and neither undoes what the other did.

import { model } from './model.js';

/** Nobody reacts to a change faster than this, in milliseconds. A key pressed sooner refers to what was shown before. */
export const REACTION = 400;

/**
 * Tracks a value that other people can change too.
 *
 * @param read returns what the page shows now
 * @param now returns the time in milliseconds
 */
export function seen(read, now = () => performance.now()) {
  let before;
  let shown = read();
  let since = -Infinity;
  let expected;
  const look = () => {
    const next = read();
    if (next === shown) return;
    before = shown;
    shown = next;
    since = before === undefined || next === expected ? -Infinity : now();
    expected = undefined;
  };
  return {
    /** To be called whenever the page shows something new. */
    look,
    /** Call this when this person's own action was done, because they expect its result. */
    expect(value) {
      look();
      if (shown === value) since = -Infinity;
      else expected = value;
    },
    /** What the person has seen. */
    value() {
      look();
      return now() - since < REACTION ? before : shown;
    },
  };
}

export const seenHeld = seen(() => model.at?.held);
export const seenResting = seen(() => Boolean(model.people.break_since));
export const seenRound = seen(() => model.at?.round?.line);
export const seenTake = seen(() => model.takes.length);

const OWN = {
  hold: () => seenHeld.expect(true),
  go_on: () => seenHeld.expect(false),
  break: () => seenResting.expect(true),
  back: () => seenResting.expect(false),
  next_take: (action) => seenTake.expect(action.take + 1),
};

/** To be called whenever the page shows something new. */
export const lookAround = () => [seenHeld, seenResting, seenRound, seenTake].forEach((s) => s.look());

/** Call this when an action of this page was done. */
export const ownIsDone = (action) => OWN[action.do]?.(action);
