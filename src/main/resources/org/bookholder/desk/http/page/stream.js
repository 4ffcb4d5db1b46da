// The connection over which the program tells a page what has changed. A browser allows six to one address, however many pages are
// open there: a page that nobody sees gives its own back.

/** The program sends a heartbeat every 5 s; after this time without one, the connection counts as lost. */
const SILENCE = 12_000;

/**
 * A network that comes back leaves connections behind that stay dead, up to six that the browser kept for later requests, and it tries
 * one of these each time. So that many times a new one that does not open is given up sooner than one that falls silent.
 */
const OPENING = 3000;
const DEAD = 6;

/** How often that is looked at, and how long a page waits before it logs in again, in milliseconds. */
const PERIOD = 2000;

/** A page hidden for this long closes its connection. */
const UNSEEN = 3000;

/** Identifies this page: when it opens a new connection, the program closes its previous one. */
const PAGE = Array.from(crypto.getRandomValues(new Uint32Array(2)), (n) => n.toString(36)).join('');

let page = { events: {}, opened() {}, lost() {}, again() {} };
let source = null;
let heard = 0;
let open = false;

/** How many connections in a row have fallen silent. */
let silent = 0;
let hiding = 0;

/** Whether the page may listen: it is logged in, and the program has not said goodbye for good. */
let wanted = false;

/**
 * Says what the page does with what comes.
 *
 * @param given `events`: a function for each kind of event, by its name; `opened`: called when the connection is there, also again;
 *     `lost`: called when it breaks off or nothing comes for too long, after which it is opened again; `again`: called if the program
 *     refuses it, to log in again
 */
export const listenWith = (given) => { page = given; };

/** Begins to listen, or begins anew: the program then sends its complete state first. */
export function listen() {
  wanted = true;
  connect();
}

/** Listens no more. */
export function stopListening() {
  wanted = false;
  close();
}

/** Whether somebody listens now. */
export const listening = () => source !== null;

function close() {
  source?.close();
  source = null;
}

function connect() {
  close();
  if (!wanted || document.hidden) return;
  const here = new EventSource(`events?page=${PAGE}`);
  source = here;
  open = false;
  heard = Date.now();
  for (const [name, take] of Object.entries(page.events)) {
    here.addEventListener(name, (event) => { heard = Date.now(); take(event); });
  }
  here.onopen = () => {
    heard = Date.now();
    open = true;
    silent = 0;
    page.opened();
  };
  here.onerror = () => {
    page.lost();
    // A browser does not retry if the answer was not an event stream.
    if (here.readyState === EventSource.CLOSED) setTimeout(page.again, PERIOD);
  };
}

// If a network silently drops everything, a browser reports no error for minutes, for open and new connections alike.
setInterval(() => {
  const patience = open || silent === 0 || silent > DEAD ? SILENCE : OPENING;
  if (source && source.readyState !== EventSource.CLOSED && Date.now() - heard > patience) {
    silent += 1;
    page.lost();
    connect();
  }
}, PERIOD);
document.addEventListener('visibilitychange', () => {
  clearTimeout(hiding);
  if (document.hidden) hiding = setTimeout(connect, UNSEEN);
  else if (!source) connect();
});
// A browser keeps a page that was left for the way back, with its connection; six of them, and the next page waits.
window.addEventListener('pagehide', close);
window.addEventListener('pageshow', ({ persisted }) => { if (persisted) connect(); });
