// Loads the theme's own scripts as a page would, with the words of a file, and answers cases on standard input: one JSON line
// in, one out.
// { keys: true } -> the keys of the results layout
// { words: a target's parts, units, side } -> its words
// { tables, results, today, skill?, asked? } -> { movements: { id: { state, presumed, missing, first, paused_by } }, aside, next, questions, forToday }
// { train: true, tables, results, today, skill? } -> what `dose` answers in JSON about one person, but for the name
// { history: true, tables, results, today } -> the histories: tests, trend, plateau, falling, their line, the drawing's numbers
// { morning: true, tables, results, today } -> the lines on a person, by their keys; a pause as its kind
// { together: [results, ...], tables, today } -> the three tables on a class: a heading's key and its lines
// { class: text, name, tables, today } -> the people of a file, or why it is refused
// { load: true, tables, results, today } -> the load of the last seven days
'use strict';
const fs = require('node:fs');
const path = require('node:path');
const readline = require('node:readline');
const vm = require('node:vm');

const theme = process.argv[2];
// What a published script has in its first line.
globalThis.rungbookLanguage = process.argv[4];
const head = JSON.parse(fs.readFileSync(process.argv[3], 'utf8'));
globalThis.rungbookWords = head.words;
globalThis.rungbookLimits = head.limits;
for (const name of ['health.js', 'page.js', 'targets.js', 'readiness.js', 'results.js', 'placement.js', 'held.js', 'training-known.js', 'training-route.js', 'training-back.js', 'training-lines.js', 'training-choice.js', 'training-retest.js', 'training.js', 'history.js', 'morning.js', 'class.js']) {
  const file = path.join(theme, name);
  vm.runInThisContext(fs.readFileSync(file, 'utf8'), { filename: file });
}
require('./plan.js');
const { readiness, results, placement, targets, training } = globalThis.rungbook;

let known = '';
let model = null;
const saying = () => {
  const { tables } = model, { words: { say } } = globalThis.rungbook;
  const name = (m) => { const mark = tables.marks[tables.mark[m]]; return tables.names[m] + (mark ? ` [${mark.word}]` : ''); };
  return { say, name, join: (parts, between) => parts.join(between), causes: (causes) => causes.map(({ kind }) => `<${kind}>`) };
};
readline.createInterface({ input: process.stdin }).on('line', (line) => {
  const asked = JSON.parse(line);
  if (asked.read) {
    const read = asked.read.map((text) => {
      const got = targets.readGot(text);
      return got && [got.measure, got.sets, got.amount, got.seconds, got.unit, got.load, got.hits, got.of, targets.text(got)];
    });
    process.stdout.write(JSON.stringify(read) + '\n');
    return;
  }
  if (asked.keys) {
    process.stdout.write(JSON.stringify(results.KEYS) + '\n');
    return;
  }
  if (asked.words) {
    process.stdout.write(JSON.stringify(targets.words(asked.words, asked.units, asked.side)) + '\n');
    return;
  }
  if (asked.tables && JSON.stringify(asked.tables) !== known) {
    known = JSON.stringify(asked.tables);
    model = readiness.prepare(asked.tables);
  }
  const day = results.readDay(asked.today);
  if (asked.class !== undefined) {
    let out;
    try {
      out = globalThis.rungbook.class.read(asked.name, asked.class, day, model);
    } catch (error) {
      out = { refused: error.message };
    }
    process.stdout.write(JSON.stringify(out) + '\n');
    return;
  }
  if (asked.together) {
    const { morning } = globalThis.rungbook;
    const looks = asked.together.map((of) => {
      const { person, aside } = results.person(results.check(of, day), model, day);
      return morning.look(model, person, readiness.assess(model, person, day), aside, day);
    });
    process.stdout.write(JSON.stringify(morning.together(looks, (i) => asked.together[i].name, saying())) + '\n');
    return;
  }
  let sound;
  try {
    sound = results.check(asked.results, day);
  } catch (error) {
    process.stdout.write(JSON.stringify({ refused: error.message }) + '\n');
    return;
  }
  const { person, aside } = results.person(sound, model, day);
  const found = readiness.assess(model, person, day);
  const { tables } = model;
  if (asked.train) {
    if (asked.skill) person.goal = asked.skill;
    process.stdout.write(JSON.stringify(training.answer(model, person, found, day)) + '\n');
    return;
  }
  if (asked.morning) {
    if (asked.skill) person.goal = asked.skill;
    const { morning } = globalThis.rungbook;
    process.stdout.write(JSON.stringify(Object.fromEntries(morning.lines(morning.look(model, person, found, aside, day), saying()))) + '\n');
    return;
  }
  if (asked.history) {
    if (asked.skill) person.goal = asked.skill;
    process.stdout.write(JSON.stringify(globalThis.rungbook.history.answer(model, person, found, day)) + '\n');
    return;
  }
  if (asked.load) {
    process.stdout.write(JSON.stringify(training.lastWeek(person.sessions, day)) + '\n');
    return;
  }
  const movements = {};
  for (let m = 0; m < model.count; m += 1) {
    const line = ({ leaf, movement, got, share }) =>
      ({ movement: tables.ids[movement], target: tables.target_text[tables.leaves[2 * leaf + 1]], got, share });
    const missing = found.missing(m).map(line);
    const waits = found.needs[m] !== readiness.TRUE && found.states[m] !== readiness.PAUSED;
    const { direct, steps } = waits ? found.first(m) : { direct: true, steps: [] };
    const first = { direct, steps: steps.map(line) };
    const paused = found.states[m] === readiness.PAUSED ? found.pausedBy(m).map(({ kind, entry }) => [kind, kind === 'pain' ? person.pains.findIndex((of) => of.entry === entry) : entry]) : [];
    const nearly = found.states[m] === readiness.ALMOST ? tables.ids[model.of(found.nearly(m))] : null;
    movements[tables.ids[m]] = { state: readiness.STATES[found.states[m]], presumed: found.counted[m] === 1, missing, first, paused, nearly, root: found.counted[m] ? tables.ids[found.countedBecause(m)] : null };
  }
  const questions = tables.skills.map((skill) => {
    const question = placement.next(model, found, skill.members, [], day);
    return question && [tables.ids[question.movement], question.today];
  });
  const forToday = tables.skills.map((skill) => skill.members.filter((m) => placement.mayBeTested(model, found, m, day)).map((m) => tables.ids[m]).sort());
  process.stdout.write(JSON.stringify({ movements, aside, questions, forToday }) + '\n');
});
