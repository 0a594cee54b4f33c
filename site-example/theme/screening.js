'use strict';
(() => {
const { results, store, page } = globalThis.rungbook;
const { make, byId } = page;
const questions = /** @type {HTMLFormElement} */ (byId('questions'));
const outcome = byId('outcome');
const yes = (/** @type {string} */ name) => {
const chosen = /** @type {HTMLInputElement | null} */ (questions.querySelector(`input[name="${name}"]:checked`));
return chosen ? chosen.value === 'yes' : null;
};
const SAYS = {
clear: 'Your answers raise nothing. Test with a fresh head, and stop at the first sign listed beside a test.',
light: 'Your answers raise nothing, but you do not exercise regularly yet: test lightly, keep two or three reps in reserve, and build up. Inverted, loaded and lowering tests wait until you have trained regularly for three months.',
ask: 'Ask a licensed clinician first, and show them what you want to do. Until then this site asks only for numbers from your training and offers no test.',
};
const draw = () => {
const kept = store.get('screening');
outcome.hidden = !kept;
if (!kept) return;
const said = /** @type {keyof typeof SAYS} */ (kept.outcome);
outcome.replaceChildren(make('h3', { tabindex: -1, id: 'outcome-head', text: 'What follows' }), make('p', { text: `${SAYS[said] || SAYS.ask} (${kept.on})` }),
...(said === 'ask' ? [make('p', {}, make('button', { type: 'button', class: 'quiet', text: 'A clinician has cleared me for hard effort', on: { click: () => {
store.set('screening', { on: results.dayText(results.today()), outcome: 'clear', cleared: true });
} } }))] : []),
make('p', {}, make('a', { class: 'act', href: 'self-test.html', text: 'To the self-test' })));
};
questions.hidden = false;
questions.addEventListener('submit', (event) => {
event.preventDefault();
const names = [...new Set([.../** @type {NodeListOf<HTMLInputElement>} */ (questions.querySelectorAll('input[type="radio"]'))].map((input) => input.name))];
const open = names.find((name) => yes(name) === null);
const fault = byId('questions-fault');
fault.textContent = open ? 'Answer each question, yes or no.' : '';
if (open) {
const first = /** @type {HTMLInputElement | null} */ (questions.querySelector(`input[name="${open}"]`));
if (first) first.focus();
return;
}
const always = names.filter((name) => !['regular', 'disease', 'symptoms'].includes(name)).some((name) => yes(name));
const rows = [.../** @type {NodeListOf<HTMLElement>} */ (document.querySelectorAll('tr[data-outcome]'))];
const word = (/** @type {string} */ name) => (yes(name) ? 'yes' : 'no');
const row = rows.find(({ dataset }) => dataset.regular === word('regular') && dataset.symptoms === word('symptoms') && ['either', word('disease')].includes(dataset.disease || ''));
const follows = always || !row ? 'ask' : row.dataset.outcome;
questions.reset();
store.set('screening', { on: results.dayText(results.today()), outcome: follows });
byId('outcome-head').focus();
});
store.onChange(draw);
draw();
})();
