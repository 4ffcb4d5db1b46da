// A button in a list of lessons that puts one on a recording day; the plan has a handle for the same.

import { chooseDay } from './onday.js';
import { byId, el, said } from './words.js';

/**
 * The button, with a space before it that is gone where the button begins a row.
 *
 * @param lesson its number and title
 * @param ask asks the plan for something; gives its answer, or why there is none in `trouble`
 * @param tell says what came of it: a sentence, and whether it was done
 */
export const dayButton = (lesson, ask, tell) => el('span', { class: 'day-place' }, ' ', el('button', {
  type: 'button', class: 'quiet day-button', id: `day-${lesson.number}`, 'aria-haspopup': 'dialog',
  'aria-label': `Put ${lesson.title} on a recording day`, onclick: () => offer(lesson, ask, tell),
}, 'Day…'));

async function offer({ number, title }, ask, tell) {
  const plan = await ask({ do: 'show' });
  if (plan.trouble) {
    tell(plan.trouble, false);
    return;
  }
  const { script } = plan.lessons[number - 1];
  const [at] = (plan.plan?.sessions ?? []).flatMap(({ day, slots }) => slots.filter(({ lesson }) => lesson === number)
    .map(({ chosen }) => ({ day, chosen })));
  chooseDay({ script, title, ...at }, plan.days.filter((day) => day >= plan.today), async (day) => {
    const { trouble } = await ask({ do: 'put', script, day });
    const done = day ? `${title} is to be recorded on ${said(day, true)}.` : `The plan chooses a day for ${title}.`;
    tell(trouble || done, !trouble);
    byId(`day-${number}`)?.focus();
  });
}
