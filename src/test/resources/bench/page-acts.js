// Writes down what a person does on a page of the desk, what the program answers and what the page says. It is kept where it outlives
// a reload. The page's own time runs SPEED times as fast as everybody else's.
(() => {
  const real = performance.now.bind(performance);
  if (SPEED !== 1) {
    const begun = Date.now();
    const { setTimeout: later, setInterval: always } = window;
    const limit = AbortSignal.timeout.bind(AbortSignal);
    performance.now = () => real() * SPEED;
    Date.now = () => begun + real() * SPEED;
    window.setTimeout = (work, wait = 0, ...more) => later(work, wait / SPEED, ...more);
    window.setInterval = (work, wait = 0, ...more) => always(work, wait / SPEED, ...more);
    AbortSignal.timeout = (wait) => limit(wait / SPEED);
  }

  const keep = (name, value) => {
    const all = JSON.parse(sessionStorage.getItem(name) ?? '[]');
    all.push(value);
    sessionStorage.setItem(name, JSON.stringify(all));
  };

  // A key that is pressed within 400 ms of a change is about the line that was shown before.
  const RECENT = 450;
  const shown = { mark: [], note: [] };
  const look = (name, selector) => {
    const line = Number(/line (\d+)/.exec(document.querySelector(selector)?.textContent ?? '')?.[1] ?? 0);
    if (line && shown[name].at(-1)?.line !== line) shown[name].push({ line, at: real() });
  };
  const lookAround = () => {
    look('mark', '#foot [data-key=P] span');
    look('note', '#note-label');
  };
  const recent = (name) => {
    lookAround();
    const list = shown[name];
    return list.filter((s, i) => i === list.length - 1 || list[i + 1].at > real() - RECENT).map((s) => s.line);
  };

  let first = null;
  const title = () => window.deskState.model.script.title;
  window.addEventListener('input', ({ target }) => {
    if (target.id === 'note') first = target.value.trim() ? first ?? recent('note') : null;
  }, true);
  window.addEventListener('keydown', (event) => {
    if (!window.deskState?.model.known) return;
    if (event.target.id === 'note' && event.key === 'Enter' && event.target.value.trim()) {
      keep('acts', { lesson: title(), name: 'Note', lines: first ?? recent('note'), text: event.target.value.trim() });
      first = null;
    }
    const button = document.querySelector(`#foot [data-key="${event.key.toUpperCase()}"]`);
    if (event.target.matches('input') || !button || button.disabled) return;
    const name = button.querySelector('span').textContent;
    keep('acts', { lesson: title(), name, lines: name.startsWith('Mark') ? recent('mark') : [], text: '' });
  }, true);

  const ask = window.fetch.bind(window);
  window.fetch = async (path, options) => {
    if (path !== 'act') return ask(path, options);
    const act = { lesson: title(), ...JSON.parse(options.body) };
    try {
      const answer = await ask(path, options);
      keep('answers', { ...act, status: answer.status, why: answer.ok ? '' : await answer.clone().text() });
      return answer;
    } catch (failure) {
      keep('answers', { ...act, status: 0, why: failure.name });
      throw failure;
    }
  };

  const heard = {};
  new MutationObserver(() => {
    lookAround();
    for (const id of ['said-aloud', 'link']) {
      const text = document.getElementById(id)?.textContent ?? '';
      if (text && text !== heard[id]) keep('said', text);
      heard[id] = text;
    }
  }).observe(document, { childList: true, characterData: true, subtree: true });
})();
