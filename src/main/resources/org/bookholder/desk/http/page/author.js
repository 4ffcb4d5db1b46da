// The name under which this browser's acts are its own: only it can undo them.

/** The same in all tabs of a browser, and after the program or the page was started again. */
export const ME = (() => {
  const kept = localStorage.getItem('author');
  if (kept && /^[0-9a-z]{8,40}$/.test(kept)) return kept;
  const fresh = Array.from(crypto.getRandomValues(new Uint32Array(3)), (n) => n.toString(36)).join('').padEnd(8, '0');
  localStorage.setItem('author', fresh);
  return fresh;
})();
