// The program's time of day. A phone's clock or time zone may be another; the producer and the log must agree.

let ahead = 0;
let zone;

/** Takes the time from an answer of the program (RFC 9110, section 6.6.1). */
export function learnTime(answer) {
  const told = Date.parse(answer.headers.get('Date') ?? '');
  // The header counts whole seconds: on average half of one has passed.
  if (!Number.isNaN(told)) ahead = told + 500 - Date.now();
}

export function learnZone(name) {
  try {
    new Intl.DateTimeFormat('en-GB', { timeZone: name === 'Z' ? 'UTC' : name });
    zone = name === 'Z' ? 'UTC' : name;
  } catch {
    // A browser that does not know the zone shows its own.
  }
}

/** Milliseconds since 1970 by the program's clock. */
export const now = () => Date.now() + ahead;

const formatted = (ms, options) => new Date(ms).toLocaleString('en-GB', { ...options, timeZone: zone });

export const clockTime = () => formatted(now(), { hour: '2-digit', minute: '2-digit', second: '2-digit' });
export const dayOf = (ms) => formatted(ms, { day: 'numeric', month: 'long', year: 'numeric' });
export const timeOf = (ms) => formatted(ms, { hour: '2-digit', minute: '2-digit' });
