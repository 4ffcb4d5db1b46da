// A stretch of a recording, played to its end.

/** The stretch that each recording plays now. */
const now = new WeakMap();

/**
 * Plays it; another one of the same recording takes its place.
 *
 * @param audio what plays, with the recording loaded
 * @param from where it begins, in seconds of the recording
 * @param to where it ends
 * @param each called for each picture while it plays; when it returns false, the rest is played without it, and to the recording's end
 * @return fulfilled when it has begun
 */
export function playStretch(audio, from, to, each = () => true) {
  const mine = {};
  now.set(audio, mine);
  const step = () => {
    if (now.get(audio) !== mine || !each()) return;
    if (audio.currentTime >= to) audio.pause();
    if (!audio.paused) requestAnimationFrame(step);
  };
  audio.currentTime = Math.max(0, from);
  return audio.play().then(step);
}
