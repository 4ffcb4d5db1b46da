// Things that are dragged by a handle, with any pointer.

/** A handle must be dragged this far, in pixels, before anything moves: a click is no drag. */
const FAR = 6;

/** So near an edge of the window, in pixels, the page scrolls while something is dragged, and so fast. */
const EDGE = 70;
const SPEED = 9;

/**
 * Follows a pointer that was put down on a handle.
 *
 * @param row what moves with it
 * @param begins called once the handle has moved far enough
 * @param over called with each point of the window that it comes over; with nothing at the end
 * @param drop called with the point at which it was let go
 */
export function drag(event, row, { begins = () => {}, over, drop, sideways = true }) {
  if (event.button !== 0) return;
  const handle = event.currentTarget;
  const from = { x: event.clientX, y: event.clientY + scrollY };
  let at = null;
  let moves = false;
  let frame = 0;
  handle.setPointerCapture(event.pointerId);
  const show = () => {
    row.style.translate = `${sideways ? at.x - from.x : 0}px ${at.y + scrollY - from.y}px`;
    over(at);
  };
  const scroll = () => {
    const by = at.y < EDGE ? -SPEED : at.y > innerHeight - EDGE ? SPEED : 0;
    if (by) {
      scrollBy(0, by);
      show();
    }
    frame = requestAnimationFrame(scroll);
  };
  const moved = (e) => {
    at = { x: e.clientX, y: e.clientY };
    if (!moves && Math.hypot(at.x - from.x, at.y + scrollY - from.y) > FAR) {
      moves = true;
      row.classList.add('dragged');
      begins();
      frame = requestAnimationFrame(scroll);
    }
    if (moves) show();
  };
  const end = (e) => {
    handle.removeEventListener('pointermove', moved);
    handle.removeEventListener('pointerup', end);
    handle.removeEventListener('pointercancel', end);
    cancelAnimationFrame(frame);
    const dropped = moves && e.type === 'pointerup';
    if (dropped) drop(at);
    row.classList.remove('dragged');
    row.style.translate = '';
    if (moves) over(null);
  };
  handle.addEventListener('pointermove', moved);
  handle.addEventListener('pointerup', end);
  handle.addEventListener('pointercancel', end);
}

/** What makes a thing take files that are dropped on it; `name` is the class that it has while they are over it. */
export const takingFiles = (name, then) => {
  const over = (on) => (event) => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    event.currentTarget.classList.toggle(name, on);
  };
  return {
    ondragover: over(true),
    ondragleave: over(false),
    ondrop(event) {
      over(false)(event);
      then([...event.dataTransfer.files]);
    },
  };
};
