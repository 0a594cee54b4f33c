'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"list.separator":", ","pattern.balance":"balance","pattern.carry":"carry","pattern.core":"core","pattern.exit":"exit","pattern.hinge":"hinge","pattern.horizontal_pull":"horizontal pull","pattern.horizontal_push":"horizontal push","pattern.mobility":"mobility","pattern.squat":"squat","pattern.vertical_pull":"vertical pull","pattern.vertical_push":"vertical push","today.plan_end":"Test again from {day}.","today.plan_sides":"Pushing sets a week {push}, pulling sets {pull}.","today.volume":"Sets a week: {list}.","today.volume_of":"{pattern} {sets}","today.volume_straight":"Straight-arm sets a week: {list}.","today.week":"Week {number}: {days}","today.week_lighter":"Week {number}, lighter: {days}","today.weeks":"Weeks {number} to {last}: {days}"});
'use strict';
(() => {
const { targets, results } = globalThis.rungbook;
const MOST_WEEKS = 12, MOST_SESSIONS = 3, MOST_MONOTONY = 10;
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
const volume = (straight) => {
const out = {};
for (const { movement, sets: of } of picks) {
const pattern = tables.patterns[tables.pattern[movement]];
if (tables.straight[movement] === straight) out[pattern] = (out[pattern] || 0) + of * times;
}
return out;
};
return { weeks, retest: results.dayText(from + 7 * count), volume: volume(0), straight_arm: volume(1), push: sum(PUSH) * times, pull: sum(PULL) * times };
};
const lastWeek = (sessions, today) => {
const days = [0, 0, 0, 0, 0, 0, 0];
for (const { effort, minutes, on } of sessions) if (on <= today && today - on < 7) days[today - on] += effort * minutes;
const total = days.reduce((all, day) => all + day, 0);
if (total <= 0) return null;
const mean = total / 7, variance = days.reduce((all, day) => all + (day - mean) * (day - mean), 0) / 7;
const monotony = variance > 0 ? Math.min(MOST_MONOTONY, mean / Math.sqrt(variance)) : MOST_MONOTONY;
return { total, monotony, strain: total * monotony };
};
const shown = (model, movement, target) => {
const { states, readiness } = globalThis.rungbook, got = targets.readGot(target);
return got ? states.shown(got, model.is(movement, readiness.EACH_SIDE)) : target;
};
const items = (model, laid) => {
const { page, states, words } = globalThis.rungbook, { make, named } = page, { say, sayNodes } = words;
const asks = ({ lighter, sessions }) => JSON.stringify([lighter, sessions[0].sets]);
const alike = [];
for (const week of laid.weeks) {
const last = alike[alike.length - 1];
if (last && asks(last[0]) === asks(week)) last.push(week);
else alike.push([week]);
}
return alike.map((weeks) => {
const [{ week, lighter, sessions }] = weeks;
const of = { number: week, last: weeks[weeks.length - 1].week, days: weeks.flatMap((one) => one.sessions).flatMap(({ on }, i) => [i ? say('list.separator') : '', states.day(on)]) };
const head = lighter ? sayNodes('today.week_lighter', of) : weeks.length > 1 ? sayNodes('today.weeks', of) : sayNodes('today.week', of);
return make('li', {}, ...head, make('ul', {}, ...sessions[0].sets.map(({ movement, target }) => make('li', {}, named(model.tables, movement), ' ', shown(model, movement, target)))));
});
};
const end = (laid) => {
const { states, words } = globalThis.rungbook, { say, sayNodes } = words;
const joined = (of) => Object.keys(of).sort()
.map((pattern) => say('today.volume_of', { pattern: say(`pattern.${pattern.replace(/ /g, '_')}`), sets: of[pattern] })).join(say('list.separator'));
const bent = joined(laid.volume), straight = joined(laid.straight_arm);
const volume = [...(bent ? [say('today.volume', { list: bent }), ' '] : []), ...(straight ? [say('today.volume_straight', { list: straight }), ' '] : [])];
const sides = laid.push + laid.pull > 0 ? [say('today.plan_sides', { push: laid.push, pull: laid.pull }), ' '] : [];
return [...volume, ...sides, ...sayNodes('today.plan_end', { day: states.day(laid.retest) })].map((part) => (part));
};
globalThis.rungbook.plan = { lay, lastWeek, shown, items, end };
})();
