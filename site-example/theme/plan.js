'use strict';
(() => {
const { targets, results } = globalThis.rungbook;
const MOST_WEEKS = 12, MOST_SESSIONS = 3, LEAST_WEEKLY = 6;
const PUSH = ['vertical push', 'horizontal push'], PULL = ['vertical pull', 'horizontal pull'];
const text = (pick, sets) => targets.text({
measure: pick.measure, atMost: false, sets, amount: pick.amount * targets.ONE, seconds: pick.seconds, unit: pick.unit, load: pick.load, hits: 0, of: 0,
});
const lay = (model, picks, from) => {
const { tables } = model, school = tables.dose_of_school;
const count = Math.min(MOST_WEEKS, Math.max(1, Math.floor(school.lighter_every / 7)));
const times = Math.min(MOST_SESSIONS, Math.max(1, school.a_week));
const sets = picks.map((pick) => pick.sets);
const isOf = (i, side) => !tables.straight[picks[i].movement] && side.includes(tables.patterns[tables.pattern[picks[i].movement]]);
const sum = (side) => sets.reduce((all, n, i) => all + (isOf(i, side) ? n : 0), 0);
for (;;) {
const push = sum(PUSH), pull = sum(PULL), heavier = push >= pull ? PUSH : PULL;
if (Math.min(push, pull) === 0 || Math.max(push, pull) * 3 <= Math.min(push, pull) * 4) break;
let most = -1;
sets.forEach((n, i) => {
const gives = isOf(i, heavier) && picks[i].measure === targets.REPS && n > 1 && (n - 1) * times >= LEAST_WEEKLY;
if (gives && (most < 0 || n >= sets[most])) most = i;
});
if (most < 0) break;
sets[most] -= 1;
}
const weeks = Array.from({ length: count }, (_, week) => {
const lighter = count > 1 && week + 1 === count;
return {
week: week + 1, lighter,
sessions: Array.from({ length: times }, (__, i) => ({
on: results.dayText(from + week * 7 + Math.floor((i * 7) / times)),
sets: picks.map((pick, p) => ({ movement: pick.movement, target: text(pick, lighter ? Math.ceil(sets[p] / 2) : sets[p]) })),
})),
};
});
return { weeks, retest: results.dayText(from + 7 * count), push: sum(PUSH) * times, pull: sum(PULL) * times };
};
globalThis.rungbook.plan = { lay };
})();
