'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"dose.below":"{best} in one set is below the dose: sets of what you can do","dose.best_hold":"best hold {best} s: sets of {amount} s, {all} s in all","dose.close":"{best} in one set is close to the limit: shorter sets","dose.even":"{why}; {sets} sets, to keep push and pull even","dose.few_seconds":"{why}; less than 30 s in all","dose.few_seconds_sets":"{why}; less than 30 s in all, as more sets would be over 15 a week","dose.in_reserve":"{best} in one set: {sets} sets of {amount} leave {left} in reserve","dose.missed_easier":"{movement} was missed twice: one step easier. {why}","dose.missed_shorter":"missed twice: shorter sets","dose.missed_twice":"missed twice: fewer sets","dose.more":"{best} in one set is more than the dose asks, and nothing harder fits today: more reps","dose.moved_on":"moved on: the dose was done in full","dose.moved_on_from":"moved on from {movement}: {why}","dose.never_tested":"never tested: a first try, then enter the number","dose.next_above":"next above what you own: few, fresh attempts","dose.off_easier":"two weeks off {movement}: one step easier. {why}","dose.off_shorter":"two weeks off: shorter sets","dose.short_hold":"{why}; less than half of it, to stay within 90 s in all","dose.weeks_off":"two weeks off: fewer sets"});
'use strict';
(() => {
const { text: targetText, ONE, REPS, TIME, DONE, NO_LOAD, MASS, BODY_WEIGHT } = globalThis.rungbook.targets;
const { OPEN, OWNED, GUARDED, LOWERING } = globalThis.rungbook.readiness;
const PATTERNS = ['vertical push', 'vertical pull', 'horizontal push', 'horizontal pull', 'squat', 'hinge', 'carry', 'core'];
const { say } = globalThis.rungbook.words;
const UNTESTED = 'untested', ABOVE = 'above', KEEP = 'keep', SHORT = 'short', BELOW = 'below';
const PUSH = ['vertical push', 'horizontal push'], PULL = ['vertical pull', 'horizontal pull'];
const LONG_OFF = 14, A_WEEK = 7, MOST_SESSIONS = 3, WEEKLY_LEAST = 6, WEEKLY_MOST = 15, HELD_LEAST = 30, HELD_MOST = 90;
const threeFifths = (part) => Math.floor((part * 3) / 5);
const plain = ({ unit, load }) => (load === 0 ? { unit: NO_LOAD, load: 0 } : { unit, load });
const compareLoads = (a, b) => {
const [x, y] = [plain(a), plain(b)];
return Math.sign(x.load) - Math.sign(y.load) || (x.unit === BODY_WEIGHT ? 1 : 0) - (y.unit === BODY_WEIGHT ? 1 : 0) || x.load - y.load;
};
const working = (model, assessment, person, list, today) => {
const { tables } = model, school = tables.dose_of_school;
const sessionsAWeek = Math.min(MOST_SESSIONS, Math.max(1, school.a_week));
const fewestSets = Math.ceil(WEEKLY_LEAST / sessionsAWeek), mostSets = Math.floor(WEEKLY_MOST / sessionsAWeek);
const trainedBefore = person.trained.filter(({ on }) => on < today);
const counts = (on) => today - on >= 0 && today - on <= tables.results_last_days;
const measure = (m) => model.target(m).measure;
const state = (m) => assessment.states[m];
const harder = (a, b) => tables.stage[a] - tables.stage[b] || a - b;
const ofTest = ({ sides, reserve }) => {
const load = sides.map((side) => ({ unit: side.unit, load: side.load })).reduce((a, b) => (compareLoads(b, a) < 0 ? b : a));
const sets = Math.min(...sides.map((side) => side.sets));
const more = sides[0].measure === REPS ? reserve + (sets >= 3 ? 2 : 0) : 0;
return { amount: Math.floor(Math.min(...sides.map((side) => side.amount)) / ONE) + more, ...plain(load) };
};
const known = new Map();
const best = (m) => {
const kept = known.get(m);
if (kept !== undefined) return kept;
const tested = person.tested.filter(({ movement, on }) => movement === m && counts(on));
const latest = Math.max(...tested.map(({ on }) => on));
let found = null;
for (const one of tested.filter(({ on }) => on === latest).map(ofTest)) {
const by = found ? compareLoads(one, found) || one.amount - found.amount : 1;
if (by > 0) found = one;
}
if (!found) {
const trained = trainedBefore.filter(({ movement, on }) => movement === m && counts(on));
const last = Math.max(...trained.map(({ on }) => on));
const session = trained.find(({ on }) => on === last);
if (session) {
const reserve = measure(m) === REPS ? session.reserve || 0 : 0;
found = { amount: Math.floor(Math.max(0, ...session.did) / ONE) + reserve, ...plain(session) };
}
}
known.set(m, found);
return found;
};
const isAtHand = (m) => {
const { have } = person;
return have === null || tables.equipment[m].every((oneOf) => oneOf.some((word) => have.includes(word)));
};
const canDo = (m) => { const b = best(m); return b === null || b.amount > 0; };
const isTrainable = (m) => (state(m) === OPEN || state(m) === OWNED) && PATTERNS.includes(tables.patterns[tables.pattern[m]])
&& (measure(m) === REPS || measure(m) === TIME) && isAtHand(m) && canDo(m);
const doseOf = (m) => {
const own = tables.dose[m], each = model.target(m).seconds;
if (own && own[0] === measure(m)) return { sets: own[1], amount: Math.floor(own[2] / ONE), seconds: own[3] > 0 ? own[3] : each };
return measure(m) === TIME ? { sets: school.hold_sets, amount: school.hold_seconds, seconds: 0 } : { sets: school.sets, amount: school.reps, seconds: each };
};
const firstLoad = (m) => {
const own = tables.dose[m], { unit, load } = model.target(m);
if (own && own[0] === measure(m) && own[5] !== 0) return { unit: own[4], load: own[5] };
return load < 0 ? { unit, load } : { unit: NO_LOAD, load: 0 };
};
const fitOf = (m) => {
const b = best(m), { amount } = doseOf(m);
if (!b) return UNTESTED;
if (measure(m) === TIME) return b.amount > 3 * amount ? ABOVE : b.amount >= 5 ? KEEP : SHORT;
const over = b.amount - amount;
return over >= 6 ? ABOVE : over >= 2 ? KEEP : over >= 0 ? SHORT : BELOW;
};
const held = (b) => {
const hold = Math.max(1, threeFifths(b));
const sets = Math.min(mostSets, Math.max(fewestSets, Math.ceil(HELD_LEAST / hold)));
const longer = Math.min(Math.floor((b * 2) / 3), Math.ceil(HELD_LEAST / sets));
return { sets, hold: Math.min(Math.max(hold, longer), Math.floor(HELD_MOST / sets)) };
};
const prescribe = (m) => {
const fit = fitOf(m), dose = doseOf(m), at = best(m), b = at ? at.amount : 0;
const careful = model.is(m, GUARDED) || model.is(m, LOWERING), timed = measure(m) === TIME;
let { amount } = dose, sets = Math.min(mostSets, Math.max(fewestSets, dose.sets)), why = '';
if (fit === UNTESTED) {
sets = 2;
amount = timed ? (careful ? 3 : 5) : careful ? 2 : 3;
why = say('dose.never_tested');
} else if (timed) {
const of = held(b);
sets = of.sets;
amount = of.hold;
why = say('dose.best_hold', { best: b, amount, all: sets * amount });
if (2 * amount < b) why = say('dose.short_hold', { why });
} else if (fit === KEEP) {
why = say('dose.in_reserve', { best: b, sets, amount, left: b - amount });
} else if (fit === SHORT) {
amount = Math.max(1, threeFifths(amount));
why = say('dose.close', { best: b });
} else if (fit === ABOVE) {
amount = Math.min(b - 4, 20);
why = say('dose.more', { best: b });
} else {
amount = Math.max(1, b - 1);
why = say('dose.below', { best: b });
}
return { movement: m, measure: measure(m), sets, amount, seconds: timed ? 0 : dose.seconds, ...(at ? plain(at) : firstLoad(m)), text: '', why, fit };
};
const sessionsOf = (m, load) => {
const tested = Math.max(...person.tested.filter(({ movement, on }) => movement === m && on <= today).map(({ on }) => on));
const out = [];
for (const of of trainedBefore) {
const { unit, load: number } = plain(of);
if (of.movement === m && unit === load.unit && number === load.load && counts(of.on) && of.on > tested && out.every(({ on }) => on !== of.on)) out.push(of);
}
return out.sort((a, b) => a.on - b.on);
};
const isEasing = (group, m) => {
const trained = trainedBefore.filter(({ movement }) => movement === m).map(({ on }) => on);
const tested = person.tested.filter(({ movement, on }) => movement === m && counts(on)).map(({ on }) => on);
const latest = tested.length ? [Math.max(...tested)] : [];
const days = [...latest, ...trained.filter((on) => counts(on) && latest.every((day) => on > day))].sort((a, b) => a - b);
const left = days.filter((day, i) => (i + 1 < days.length ? days[i + 1] : today) - day > LONG_OFF);
if (!trained.length || !left.length) return false;
const since = trainedBefore.filter(({ movement, on }) => group.includes(movement) && on > left[left.length - 1]).map(({ on }) => on);
return !since.length || today - Math.min(...since) < A_WEEK;
};
const isDone = (pick, asked, after) => {
const m = pick.movement, amount = pick.amount * ONE, sessions = sessionsOf(m, pick).filter(({ on }) => on > after);
const strict = model.is(m, GUARDED) || model.is(m, LOWERING) || tables.straight[m] || tables.unstable[m];
const sets = Math.min(pick.sets, strict ? asked : fewestSets), count = strict ? 3 : 2;
return sessions.length >= count && sessions.slice(-count).every(({ did, reserve }) => did.length >= sets && did.every((set) => set >= amount)
&& (strict ? (reserve || 0) >= 2 : did[did.length - 1] >= amount + 2 * ONE));
};
const log = (group, pick, easier, asked) => {
const m = pick.movement;
if (isEasing(group, m)) return 'return';
const two = sessionsOf(m, pick).slice(-2);
const missed = two.length === 2 && two.every(({ did, reserve }) => !reserve && did.some((set) => set < pick.amount * ONE));
if (missed && (easier === undefined || !isDone(prescribe(easier), asked, two[1].on))) return 'easier';
const first = Math.min(...trainedBefore.filter(({ movement }) => movement === m).map(({ on }) => on));
const waits = tables.waits[m] && (first === Infinity || today - first < 7 * tables.weeks_from[m]);
return !waits && isDone(pick, asked, -Infinity) ? 'on' : 'stay';
};
const movedOn = (group, pick, asked) => {
if (pick.fit !== KEEP && pick.fit !== ABOVE) return pick;
const old = pick.movement, id = tables.ids[old];
const easier = [...group].reverse().find((m) => tables.stage[m] < tables.stage[old]);
const says = log(group, pick, easier, asked);
const instead = (m, before) => { const other = prescribe(m); return { ...other, why: before(other.why) }; };
if (says === 'stay') return pick;
if (says === 'on') {
const next = group.find((m) => tables.stage[m] > tables.stage[old] && fitOf(m) !== BELOW);
if (next !== undefined) return instead(next, (why) => say('dose.moved_on_from', { movement: id, why }));
const b = best(old), amount = b ? b.amount : 0, plate = Math.max(1, school.smallest_plate);
const why = say('dose.moved_on');
if (pick.unit === MASS && pick.load > 0) return { ...pick, why, load: pick.load + Math.max(plate, Math.floor(Math.floor(pick.load / 10) / plate) * plate) };
if (pick.unit === BODY_WEIGHT && pick.load > 0) return { ...pick, why, load: pick.load + ONE / 40 };
if (pick.measure === TIME) return { ...pick, why, amount: Math.max(pick.amount, Math.min(pick.amount + 2, Math.floor((amount * 2) / 3), Math.floor(HELD_MOST / Math.max(1, pick.sets)))) };
return { ...pick, why, amount: pick.amount + 1 };
}
if (easier !== undefined) return instead(easier, (why) => (says === 'easier' ? say('dose.missed_easier', { movement: id, why }) : say('dose.off_easier', { movement: id, why })));
if (pick.sets > fewestSets) return { ...pick, sets: Math.max(fewestSets, pick.sets - 2), why: says === 'easier' ? say('dose.missed_twice') : say('dose.weeks_off') };
return { ...pick, amount: Math.max(1, threeFifths(pick.amount)), why: says === 'easier' ? say('dose.missed_shorter') : say('dose.off_shorter') };
};
const afterTraining = (group, pick, asked) => {
const of = movedOn(group, pick, asked), { why } = of;
if (of.measure !== TIME || of.fit === UNTESTED || of.sets * of.amount >= HELD_LEAST) return of;
return { ...of, why: of.sets === mostSets ? say('dose.few_seconds_sets', { why }) : say('dose.few_seconds', { why }) };
};
const choose = (group) => {
const falling = [...group].reverse();
const hardest = (fit) => falling.find((m) => fitOf(m) === fit);
let chosen = hardest(KEEP);
if (chosen === undefined) chosen = hardest(SHORT);
const above = hardest(ABOVE);
if (above !== undefined && (chosen === undefined || tables.stage[chosen] < tables.stage[above])) {
const next = group.find((m) => fitOf(m) === UNTESTED && tables.stage[m] > tables.stage[above]);
chosen = next === undefined ? above : next;
}
const below = hardest(BELOW);
const easier = (m) => fitOf(m) === UNTESTED && (below === undefined || tables.stage[m] < tables.stage[below]);
if (chosen === undefined) chosen = falling.find((m) => easier(m) && state(m) === OPEN);
if (chosen === undefined) chosen = falling.find(easier);
if (chosen === undefined) chosen = below;
return chosen;
};
const balance = (picks) => {
const weighed = (side) => picks.filter(({ movement, fit, measure: of }) => !tables.straight[movement] && of === REPS && fit !== UNTESTED && side.includes(tables.patterns[tables.pattern[movement]]));
const [push, pull] = [weighed(PUSH), weighed(PULL)], before = picks.map(({ sets }) => sets);
const sum = (of) => of.reduce((all, { sets }) => all + sets, 0);
while (push.length && pull.length && Math.max(sum(push), sum(pull)) * 3 > Math.min(sum(push), sum(pull)) * 4) {
const giving = (sum(push) >= sum(pull) ? push : pull).filter(({ sets }) => sets > 1 && (sets - 1) * sessionsAWeek >= WEEKLY_LEAST);
if (!giving.length) break;
giving.reduce((most, pick) => (pick.sets >= most.sets ? pick : most)).sets -= 1;
}
picks.forEach((pick, i) => { if (pick.sets < before[i]) pick.why = say('dose.even', { why: pick.why, sets: pick.sets }); });
};
const members = [...new Set(list)];
const groups = [];
const chosen = [];
for (const pattern of PATTERNS) {
for (const straight of [0, 1]) {
const group = members.filter((m) => isTrainable(m) && tables.patterns[tables.pattern[m]] === pattern && tables.straight[m] === straight).sort(harder);
const first = choose(group);
if (first === undefined) continue;
groups.push(group);
chosen.push(prescribe(first));
}
}
const asked = chosen.map((pick) => ({ ...pick }));
balance(asked);
const picks = chosen.map((pick, i) => afterTraining(groups[i], pick, asked[i].sets));
balance(picks);
for (const pick of picks) pick.text = targetText({ ...pick, amount: pick.amount * ONE, atMost: false, hits: 0, of: 0 });
const picked = new Set(picks.map(({ movement }) => movement));
const open = members.filter((m) => state(m) === OPEN && !picked.has(m) && tables.patterns[tables.pattern[m]] !== 'mobility' && isAtHand(m) && canDo(m))
.sort((a, b) => harder(b, a)).slice(0, 2);
const practice = open.map((m) => {
const of = measure(m), measured = of === REPS || of === TIME;
const always = tables.inverted[m] || tables.high[m] || tables.patterns[tables.pattern[m]] === 'balance';
const text = targetText({
measure: measured ? of : DONE, atMost: false, sets: measured ? 3 : 1, amount: (of === TIME ? 3 : 1) * ONE, seconds: of === REPS ? model.target(m).seconds : 0,
unit: NO_LOAD, load: 0, hits: 0, of: 0,
});
return { movement: m, text, when: (always || school.practice === 'before' ? 'before' : 'after'), why: say('dose.next_above') };
});
return { picks, practice };
};
globalThis.rungbook.dose = { working };
})();
