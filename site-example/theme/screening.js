'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"screening.answer_each":"Answer each question, yes or no.","screening.cleared":"A clinician has cleared me for hard effort","screening.said_on":"{says} ({day})","screening.says_ask":"Ask a licensed clinician first, and show them what you want to do. Until then this site asks only for numbers from your training and offers no test.","screening.says_clear":"Your answers raise nothing. Test with a fresh head, and stop at the first sign listed beside a test.","screening.says_light":"Your answers raise nothing, but you do not exercise regularly yet: test lightly, keep two or three reps in reserve, and build up. Inverted, loaded and lowering tests wait until you have trained regularly for three months.","screening.to_self_test":"To the self-test","screening.what_follows":"What follows"});
'use strict';
(() => {
const { results, store, page } = globalThis.rungbook;
const { make, byId } = page;
const { say, sayNodes } = globalThis.rungbook.words;
const questions = (byId('questions'));
const outcome = byId('outcome');
const yes = (name) => {
const chosen = (questions.querySelector(`input[name="${name}"]:checked`));
return chosen ? chosen.value === 'yes' : null;
};
const SAYS = { clear: say('screening.says_clear'), light: say('screening.says_light'), ask: say('screening.says_ask') };
const draw = () => {
const kept = store.get('screening');
outcome.hidden = !kept;
if (!kept) return;
const said = String(kept.outcome);
outcome.replaceChildren(make('h3', { tabindex: -1, id: 'outcome-head', text: say('screening.what_follows') }), make('p', {}, ...sayNodes('screening.said_on', { says: SAYS[said] || SAYS.ask, day: make('time', { datetime: kept.on, text: results.readDay(kept.on) === null ? kept.on : results.dayWords(Number(results.readDay(kept.on))) }) })),
...(said === 'ask' ? [make('p', {}, make('button', { type: 'button', class: 'quiet', text: say('screening.cleared'), on: { click: () => {
store.set('screening', { on: results.dayText(results.today()), outcome: 'clear', cleared: true });
} } }))] : []),
make('p', {}, make('a', { class: 'act', href: 'self-test.html', text: say('screening.to_self_test') })));
};
questions.hidden = false;
questions.addEventListener('submit', (event) => {
event.preventDefault();
const names = [...new Set([...(questions.querySelectorAll('input[type="radio"]'))].map((input) => input.name))];
const open = names.find((name) => yes(name) === null);
const fault = byId('questions-fault');
fault.textContent = open ? say('screening.answer_each') : '';
if (open) {
const first = (questions.querySelector(`input[name="${open}"]`));
if (first) first.focus();
return;
}
const always = names.filter((name) => !['regular', 'disease', 'symptoms'].includes(name)).some((name) => yes(name));
const rows = [...(document.querySelectorAll('tr[data-outcome]'))];
const word = (name) => (yes(name) ? 'yes' : 'no');
const row = rows.find(({ dataset }) => dataset.regular === word('regular') && dataset.symptoms === word('symptoms') && ['either', word('disease')].includes(dataset.disease || ''));
const follows = always || !row ? 'ask' : row.dataset.outcome;
questions.reset();
store.set('screening', { on: results.dayText(results.today()), outcome: follows });
byId('outcome-head').focus();
});
store.onChange(draw);
draw();
})();
