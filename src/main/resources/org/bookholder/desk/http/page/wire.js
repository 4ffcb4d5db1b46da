// How pages ask the program: one request with a limit of time, and what is said where there is no answer.

/** Without a limit, a request on a dead network would wait for minutes. */
const PATIENCE = 8000;

export const AWAY = 'The program cannot be reached.';

export const ask = (path, options = {}) => fetch(path, { signal: AbortSignal.timeout(PATIENCE), ...options });

/** The options of a request that sends something. */
export const sending = (body) => ({ method: 'POST', headers: { 'Content-Type': 'application/json' }, body: JSON.stringify(body) });
