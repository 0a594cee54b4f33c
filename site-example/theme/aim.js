'use strict';self.rungbookIs+="aim.js=ff58b4cf ";
'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, {"aim.goal":"Your goal","aim.nearest":"the nearest one","aim.nearest_needs":"The nearest goal is {goal}. First you need {movement}: you have {got}, it asks {target}.","aim.nearest_unknown":"The nearest goal is {goal}. First you need {movement}, {target}. You have no number for it yet.","aim.needs":"For {goal} you first need {movement}: you have {got}, it asks {target}.","aim.needs_unknown":"For {goal} you first need {movement}, {target}. You have no number for it yet.","aim.nothing":"Nothing on the way to {goal} can be trained now. What you have is kept up.","aim.nothing_but":"No step of the way to {goal} can be trained as it is now; what comes nearest stands in its place.","aim.reached":"{goal} is yours. Choose the next goal.","aim.rule_why":"{rule}: {why}","aim.session":"{day}: {minutes} minutes","aim.session_lighter":"{day}: a lighter session, {minutes} minutes","aim.session_named":"{day}: session {name}, {minutes} minutes","aim.sets_of":"{pattern} {n}","aim.sets_straight":"{pattern} with straight arms {n}","aim.step":"{movement}: {got} of {target}","aim.step_unknown":"{movement}: {target}, no number yet","aim.time":"From there to the goal it is {time}.","aim.towards":"Towards {movement}, {target}","aim.towards_itself":"Towards {target}","aim.week":"Week {n}","aim.week_lighter":"Week {n}, lighter","list.separator":", ","pattern.balance":"balance","pattern.carry":"carry","pattern.core":"core","pattern.exit":"exit","pattern.hinge":"hinge","pattern.horizontal_pull":"horizontal pull","pattern.horizontal_push":"horizontal push","pattern.mobility":"mobility","pattern.squat":"squat","pattern.vertical_pull":"vertical pull","pattern.vertical_push":"vertical push","target.held_bottom":"{n} s held at the bottom","target.held_top":"{n} s held at the top","target.tempo":"tempo {tempo}","training.ask":"The health questions said: ask a clinician first. Until then there is no plan and no test.","training.block.kept_up":"kept up","training.block.practice":"practice","training.block.range":"range","training.block.strength":"strength","training.block_head":"Block","training.breathe":"Breathe out with each effort, do not hold the breath","training.careful":"Estimates. Not medical advice. With pain, illness, pregnancy or an injury, ask a licensed clinician first. Learn inverted and loaded work under a qualified coach.","training.child":"Under 12 there is no plan and no test from here: only with a coach in person.","training.coach_present":"With your coach present and a parent’s consent.","training.common_practice":"common practice, no source","training.each_side":"each side","training.easy_set":"One easy set: {amount} of {movement}.","training.estimate":"{movement}: {moved} for {reps} reps, {low} to {high} for one","training.estimates":"One-rep maximum by seven formulas","training.event":"Training, week {week} ({name})","training.event_lighter":"Training, week {week}, lighter ({name})","training.event_rested":"A rested day. Read before you start first: {list}","training.event_retest":"Test again","training.goal":"Goal: {goal}","training.goal_nearest":"Goal: {goal} (not chosen: the nearest)","training.group.core":"core","training.group.legs":"legs","training.group.pull":"pull","training.group.push":"push","training.leave_out":"Leave out whatever you feel in what is spared: {parts}.","training.left.apart":"{group} was trained less than 48 h before","training.left.below":"waits for what is paused","training.left.careful":"harder than what is known; waits while something asks for care","training.left.enough":"enough on a part that was worse the next morning","training.left.equipment":"equipment is missing","training.left.heavy":"heavy work on the same part less than 48 h before","training.left.light":"light training only","training.left.minor":"waits until you are 18","training.left.pain":"paused for pain: {what}","training.left.paused":"rests: {what}","training.left.restricted":"left alone: {what}","training.left.sets":"enough sets of this kind","training.left.show_turns":"to be shown, by turns","training.left.sore":"nothing new on it while it hurts: {what}","training.left.time":"no time today","training.left.too_hard":"too hard yet, and nothing easier is open","training.left.try_turns":"a first try, by turns","training.left.turns":"by turns","training.left.waits":"waits for its result","training.left_of":"{movements} ({why})","training.left_out":"Left out: {list}","training.lighter":"{session}, lighter","training.limiter":"Between you and it, first: {movement}, {got}; {target} is asked; {time}","training.limiter_close":"Between you and it, first: {movement}, {got}; {target} is asked","training.line_minutes":"{n} min","training.more_left":"one set more left","training.more_right":"one set more right","training.no_estimate":"{movement}: {moved} for {reps} reps, no estimate","training.no_goal":"Every skill is yours: choose a new one.","training.not_alone":"Not alone, somebody stands by","training.nothing":"Nothing on the way can be worked on now; what is there is kept up.","training.nothing_but":"No step of the way can be trained as it is now; what comes nearest stands in its place.","training.printed":"Plan for {name}","training.reached":"It is reached: choose the next.","training.reserve":"{n} left","training.rest_min":"rest {n} min","training.rest_s":"rest {n} s","training.retest":"Test again on {day}: {list}","training.rule.balance":"balance from 65","training.rule.builder":"builder","training.rule.care":"care first","training.rule.first_try":"first try","training.rule.goes_on":"goes on","training.rule.harder":"harder","training.rule.instead":"instead","training.rule.itself":"the gap itself","training.rule.kept_up":"kept up","training.rule.pain":"pain","training.rule.pause":"after a pause","training.rule.practice":"practice","training.rule.range":"range","training.rule.show":"show it","training.rule.shows":"what training shows","training.rule.singles":"singles","training.rule.strict":"strict","training.rule.time_off":"time off","training.rule.two_for_two":"two for two","training.rule.until_tested":"until it is tested","training.rules":"The rules of training by name","training.rules_lead":"R: reps or seconds of one set of the movement's dose, else the school's. What decided about a line of a session stands beside it by this name.","training.says.balance":"From 65 an upright balance movement stands in every session.","training.says.builder":"What does not fit is built by what stands closest below it of its pattern that fits or is unknown.","training.says.care":"Under a restriction, where something hurts, and for a week or two after 14 days off, nothing is tried first that is harder than what is known of its pattern; on a part at 3 to 5 of 10 nothing new at all. What is known below it is asked instead, or nothing.","training.says.first_try":"Of what is unknown two sets of a few reps or 5 s, at most two such lines a session, four where little else is known.","training.says.goes_on":"What was trained in the last 14 days on the way to the goal keeps its line, twice in seven days before others of its group, with as many sets as last time while the week has room; at least the two of what is kept up.","training.says.harder":"Six reps above the dose, or three times its seconds: the lowest open harder neighbour takes over.","training.says.instead":"What rests or lacks its equipment gives way to what fits, of its pattern and arms, the fewest rungs away.","training.says.itself":"What fits is trained itself: at least R reps in one set, but not more than 5 nor less than 2; a hold of 5 s; with weight on record, one plate. Reps: 0.7 of the best set, at most 12 (8 upside down, with weight, lowering or with straight arms), so two to four are left; sets until the dose's volume is kept, 2 to 5. Holds: half of the best, at most 45 s, 30 to 90 s in all.","training.says.kept_up":"Two sets (from 60 three), at most twice in seven days, of what has no known gap: a third of the volume keeps what was built.","training.says.pain":"0 to 2 of 10 go on; at 3 to 5 nothing on that part on the day it began, and for 14 days nothing heavy, no stretch, nothing new, neither sets nor amounts grow; light and easier if the next morning was worse, three lines of strength on it at most; above 5, in the neck from 3, or with any sign, it rests; under 18 at any pain in a wrist, an elbow, the lower back, a hip, a knee, an ankle or a foot. One tendon was studied, the rest is common practice, no source.","training.says.pause":"After a week or more: light and easier, then easier, then light; no steps.","training.says.practice":"Ways out, balance and turnovers are attempted while fresh, at most a quarter of the minutes, ended at the first loss of form: the dose, at most 0.7 of the best; without one, half of it.","training.says.range":"60 s in all, in holds of 10 to 30 s; what holds you back gets four sets. Two lines at most while pulling, pushing or legs have no time, and none where that would be their only line in seven days.","training.says.show":"What is known to reach its target is asked to show it once, at most two a session.","training.says.shows":"A session that fell short is not raised; two that fell short well below what was known are what is known now.","training.says.singles":"Who can do one to three full reps does three singles while fresh, beside what builds the movement.","training.says.strict":"Upside down, loaded, lowering, straight-arm, balance and rings: three sessions in full with two in reserve; then one rep, 2 s, or one plate if that is at most 5 % of what moves.","training.says.time_off":"14 to 27 days off: a week of half the sets and 0.8 of the amount; 28 to 55: two weeks, and a rung easier; from 56: what was before is unknown.","training.says.two_for_two":"Two reps over in the last set, two sessions running: one rep or 2 s more.","training.says.until_tested":"Three sets of the same until its number is in.","training.session":"{day}, week {week}, {minutes} min","training.session_named":"{day}, week {week} {name}, {minutes} min","training.sets":"{sets} x {amount}","training.sign.giving_way":"gives way","training.sign.night":"wakes at night","training.sign.numb":"numb or tingling","training.sign.sharp":"sharp","training.sixes":"Added weight in sets of six and more; the heaviest single waits until you are 18.","training.the_rule":"Rule","training.then.did":"enter what you did","training.then.result":"enter the result","training.then.step":"if all was done: one step; else the same again","training.then.stop_two":"in the second set go on while it is clean, stop with two left, and enter that number","training.time.between.months":{"one":"about {low} to {n} month","other":"about {low} to {n} months"},"training.time.between.weeks":{"one":"about {low} to {n} week","other":"about {low} to {n} weeks"},"training.time.months":{"one":"about {n} month","other":"about {n} months"},"training.time.weeks":{"one":"about {n} week","other":"about {n} weeks"},"training.toward":"towards {movement}, {target}","training.unanswered":"No health answers are on file: answer them before the first set.","training.unknown":"not known","training.wall_near":"Balance and work on one leg beside a wall or a rail, a hand always near it.","training.warm_up":"Warm-up","training.weaker_first":"each side, weaker first","training.week_load":"Session load of seven days, effort x minutes: {total}; monotony {monotony}, strain {strain}","training.week_sets":"Hard sets this week: {list}","training.what_it_says":"What it says","training.why.after_pause":"week {n} after a pause","training.why.asked":"{got}, {standard} is asked","training.why.best":"{got} in one set","training.why.both":"{why}; {more}","training.why.counts":"counts as {got}, from {movement}","training.why.days_off":{"one":"{n} day off","other":"{n} days off"},"training.why.easy":"{movement} is easy: {got}","training.why.easy_kept":"{movement} is easy","training.why.fell_short":"the last session fell short","training.why.goes_on":"trained lately on the way to the goal","training.why.in_full":"three sessions in full with two in reserve","training.why.instead":"for {movement} ({why})","training.why.load":"from the low end of the one-rep range","training.why.load_held":"{weight} was done in full","training.why.measure":"measure it and enter the number","training.why.no_gap":"no known gap in {pattern}","training.why.nothing_known":"nothing is known of it","training.why.nothing_of_group":"nothing is known of the {group}","training.why.pain_hold":"{part} {score} of 10, nothing moves on","training.why.pain_worse":"{part} {score} of 10, worse next morning","training.why.short_sets":"in short sets","training.why.show":"{got} is known; the target has to be shown","training.why.show_counts":"counts as {got}, from {movement}; the target has to be shown","training.why.single":"{got}: single reps while fresh","training.why.too_few":"{movement}: {got}, too few for sets","training.why.tried_anew":"long off: it is tried anew","training.why.two_over":"two over in the last set, two sessions running","training.why.until_number":"the same again until its number is in","training.why.waits":"{movement} is harder than what is known and waits","training.why.whole_body":"the whole body is kept up"});
'use strict';
(() => {
const { targets, results, readiness, store, page, states, training } = globalThis.rungbook;
const { make, named, namedList, byId } = page;
const { say, sayNodes } = globalThis.rungbook.words;
const { model } = states;
if (!model) return;
const { tables } = model;
const MINUTE = 60;
const noteNext = (of, { found }) => {
const [session] = of.sessions, lines = session ? session.lines : [];
const line = lines.find((one) => of.limiter && one.gap && one.gap.movement === of.limiter.movement) || lines.find(({ block }) => block === 'strength') || lines[0];
if (!line || !of.goal) return;
const m = line.movement, got = training.got(of.trainee, m), skill = tables.skills.find(({ id }) => of.goal && id === of.goal.id);
const next = { id: tables.ids[m], name: tables.names[m], mark: tables.marks[tables.mark[m]] || null, sets: sets(line).textContent, got: got ? states.shown(got).textContent : '',
goal: skill ? skill.name : page.marked(tables, model.of(of.goal.leaf)), test: skill && skill.id,
drawn: model.is(m, readiness.DRAWN), places: Object.fromEntries(tables.skills.map(({ id, members }) => [id, Math.max(-1, ...members.filter((one) => found.states[one] === readiness.OWNED).map((one) => tables.stage[one]))])) };
if (JSON.stringify(store.get('next')) !== JSON.stringify(next)) store.note('next', next);
};
const plans = new WeakMap();
const planOf = (stand) => {
const known = plans.get(stand) || training.plan(model, stand.person, stand.found, stand.day);
plans.set(stand, known);
noteNext(known, stand);
return known;
};
const nodes = (parts) => parts.filter((part) => part !== null).map((part) => (part));
const goalName = ({ id, leaf }) => {
const skill = tables.skills.find((one) => one.id === id);
return skill ? page.namedSkill(tables, skill, model.of(leaf)) : named(tables, model.of(leaf));
};
const goalChoice = (place) => {
const { goal } = store.facts(), other = goal && !tables.skills.some(({ id }) => id === goal) ? model.numbers.get(goal) : undefined;
const select = (make('select', { id: `${place}-goal` }, make('option', { value: '', text: say('aim.nearest') }),
...tables.skills.map(({ id, name }) => make('option', { value: id, text: name })), other === undefined ? null : make('option', { value: tables.ids[other], text: page.marked(tables, other) })));
select.value = goal && (other !== undefined || tables.skills.some(({ id }) => id === goal)) ? goal : '';
select.addEventListener('change', () => {
store.put('goal', select.value || null);
const drawn = document.getElementById(select.id);
if (drawn) drawn.focus();
});
return make('p', { class: 'goal-choice screen-only' }, make('label', { for: select.id, text: say('aim.goal') }), ' ', select);
};
const asked = ({ trainee }, { movement, leaf }) => {
const got = training.got(trainee, movement);
const from = training.followsFrom(trainee, movement);
const there = !got ? say('training.unknown') : from === null ? states.shown(got) : nodes(sayNodes('training.why.counts', { got: states.shown(got), movement: named(tables, from) }));
return { movement: named(tables, movement), got: there, target: states.target(leaf) };
};
const sentence = (of) => {
const { goal, limiter } = of;
if (!goal) return [say('training.no_goal')];
const named_ = { goal: goalName(goal) };
if (training.isReached(goal)) return nodes(sayNodes('aim.reached', named_));
if (!limiter) return nodes(sayNodes(of.sessions.some(({ lines }) => lines.some(({ gap }) => gap !== null)) ? 'aim.nothing_but' : 'aim.nothing', named_));
const key = goal.chosen ? (limiter.now ? 'aim.needs' : 'aim.needs_unknown') : limiter.now ? 'aim.nearest_needs' : 'aim.nearest_unknown';
return nodes(sayNodes(key, { ...named_, ...asked(of, limiter) }));
};
const plain = (parts) => nodes(parts).map((part) => {
if (typeof part === 'string') return part;
const copy = (part.cloneNode(true));
copy.querySelectorAll('.aside').forEach((aside) => aside.remove());
copy.querySelectorAll('.mark-word').forEach((word) => { word.textContent = `[${word.textContent}]`; });
return String(copy.textContent);
}).join('');
const sentenceText = (of) => plain(sentence(of));
const howLong = ({ goal, limiter }) => {
if (!goal || !limiter) return [];
const time = training.timeOf(tables, limiter);
return time === null ? [] : [say('aim.time', { time })];
};
const way = (of, field = () => null) => {
const { limiter, gaps, goal } = of;
if (!goal || !limiter) return null;
const steps = [];
for (let at = (limiter); at && !steps.includes(at);) {
steps.push(at);
at = at.opens.map((m) => gaps.get(m)).filter((gap) => gap !== undefined).map((gap) => (gap)).sort(training.heavier)[0];
}
return make('ol', { class: 'ladder way-up' }, ...steps.map((gap) => make('li', { 'data-movement': tables.ids[gap.movement] }, states.figure(gap.movement), ...nodes(sayNodes(gap.now ? 'aim.step' : 'aim.step_unknown', asked(of, gap))), field(gap.movement))));
};
const sets = (line) => {
const got = training.gotOf(line);
const side = line.side === null ? [] : [say(line.side === 'each' ? 'training.each_side' : 'training.weaker_first'), ...(line.weaker ? [say(`training.more_${line.weaker}`)] : [])];
const other = targets.words(got, page.units.ofOther), own = targets.words(got, page.units.ofSchool);
const [end, held] = tables.hold[line.movement] || ['', 0], tempo = tables.tempo[line.movement];
const paced = line.unit !== 'reps' ? [] : [...(tempo ? [say('target.tempo', { tempo })] : []), ...(held ? [say(end === 'top' ? 'target.held_top' : 'target.held_bottom', { n: held })] : [])];
const all = (text) => [text, ...paced, ...side].join(say('list.separator'));
return make('bdi', { text: all(own), 'data-other': own === other ? null : all(other) });
};
const restWords = ({ rest, left }) => [rest % MINUTE ? say('training.rest_s', { n: rest }) : say('training.rest_min', { n: rest / MINUTE }),
...(left === null ? [] : [say('training.reserve', { n: left })])].join(say('list.separator'));
const reason = ({ trainee }, { key, values }) => nodes(sayNodes(`training.${key}`, { ...training.valuesOf(trainee, values), ...(values.movement === undefined ? {} : { movement: named(tables, values.movement), what: named(tables, values.movement) }) }));
const why = (of, line) => {
const key = tables.rules[line.rule], link = make('a', { href: `about-the-numbers.html#rule-${key.replace(/_/g, '-')}`, text: say(`training.rule.${key}`) });
const all = line.why.map((one) => reason(of, one)).reduce((before, more) => (before.length ? nodes(sayNodes('training.why.both', { why: before, more })) : more), ([]));
return all.length ? nodes(sayNodes('aim.rule_why', { rule: link, why: all })) : [link];
};
const towards = (of, { gap, movement }) => (gap ? nodes(sayNodes(gap.movement === movement ? 'aim.towards_itself' : 'aim.towards', { movement: named(tables, gap.movement), target: states.target(gap.leaf) })) : null);
const head = ({ on, week, name, minutes, lighter }) => {
const values = { day: states.dayOf(on), n: week, name, minutes };
return nodes(sayNodes(lighter ? 'aim.session_lighter' : name ? 'aim.session_named' : 'aim.session', values));
};
const warmUp = ({ trainee: { tables: { names } } }, { warmUp: { sore, text, easy } }) => [
...(sore ? [make('li', { text: say('training.leave_out', { parts: sore }) })] : []), ...text.map((line) => make('li', { text: line })),
...(easy && names ? [make('li', {}, ...nodes(sayNodes('training.easy_set', { amount: easy.amount, movement: named(tables, easy.movement) })))] : []),
];
const care = ({ trainee }, session) => training.care(trainee, session).map(({ asks, movements }) => make('li', {}, asks, ': ', ...namedList(tables, movements)));
const leftOut = (of, all) => {
const together = new Map();
for (const { movement, why: because } of all) {
const key = training.whyOf(of.trainee, because), known = together.get(key) || { why: because, list: [] };
if (!known.list.includes(movement)) known.list.push(movement);
together.set(key, known);
}
return [...together.values()].map(({ why: because, list }) => make('li', {}, ...nodes(sayNodes('training.left_of', { movements: namedList(tables, list), why: reason(of, because) }))));
};
const weeks = (of) => [...new Set(of.sessions.map(({ week }) => week))].map((week, i) => {
const all = of.sessions.filter((one) => one.week === week);
return make('details', i ? {} : { open: true }, make('summary', { text: say(all[0].lighter ? 'aim.week_lighter' : 'aim.week', { n: week }) }),
...all.map((one) => make('section', { class: 'ahead' }, make('h3', {}, ...head(one)),
make('ul', { class: 'plain' }, ...one.lines.map((line) => make('li', { 'data-movement': tables.ids[line.movement] }, named(tables, line.movement), ' ', make('span', { class: 'target' }, sets(line))))))));
});
const weeksEnd = ({ retest, weekSets }) => {
const kinds = [...weekSets].map(([kind, count]) => {
const pattern = say(`pattern.${tables.patterns[kind >> 1].replace(/ /g, '_')}`);
return say(kind & 1 ? 'aim.sets_straight' : 'aim.sets_of', { pattern, n: count });
});
return [...(retest ? [make('p', {}, ...nodes(sayNodes('training.retest', { day: states.dayOf(retest.on), list: namedList(tables, retest.tests) })))] : []),
...(kinds.length ? [make('p', { class: 'hint', text: say('training.week_sets', { list: kinds.join(say('list.separator')) }) })] : [])];
};
globalThis.rungbook.aim = { planOf, goalName, goalChoice, plain, sentenceText, sentence, howLong, way, sets, restWords, reason, why, towards, head, warmUp, care, leftOut, weeks, weeksEnd, nodes };
})();
