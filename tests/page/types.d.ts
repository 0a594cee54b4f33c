// The shapes that the page's scripts share.

/** A result or a target in whole numbers: millionths, and hundred-millionths of a kilogram. */
interface Got {
  measure: number;
  atMost: boolean;
  sets: number;
  amount: number;
  seconds: number;
  /** 0 no load, 1 mass, 2 shares of body weight. */
  unit: number;
  load: number;
  hits: number;
  /** 0 without tries. */
  of: number;
}

interface Mark {
  signal: string;
  /** The signal word for readers. */
  word: string;
  says: string;
  href: string;
}

interface Skill {
  id: string;
  /** With the signal word of its goal, for texts. */
  name: string;
  plain: string;
  /** A demand. */
  goal: number;
  members: number[];
}

/** `data/tables.js`: columns by the movement's number; `leaves` holds a movement and a target for each demand. */
/** What is said, the parts that are stressed more than lightly as bits, what is wanted. */
type WarmUpLine = [string, number, string[][]];

interface Tables {
  /** By which a page names them; absent where a test makes them. */
  version?: string;
  site: string;
  school: string;
  presume: boolean;
  results_last_days: number;
  /** By movement the first day of today's way to measure it. */
  since: Record<number, string>;
  units: string;
  patterns: string[];
  parts: string[];
  ids: string[];
  names: string[];
  stage: number[];
  pattern: number[];
  day_order: number[];
  /** All-out sets of one pattern on one day. */
  placement: { strength: number; all_out_sets: number; state: number };
  flags: number[];
  stresses: number[];
  marks: Mark[];
  mark: number[];
  /** Bits of the parts that it loads heavily. */
  heavy_on: number[];
  light_on: number[];
  try_group: number[];
  /** Seconds of a rep where they are not the usual; a tempo, where each rep is held, seconds of rest, and when to go back. */
  rep_s: Record<number, number>;
  tempo: Record<number, string>;
  /** The part whose range a movement is. */
  joint: Record<number, number>;
  hold: Record<number, [string, number]>;
  rest_s: Record<number, number>;
  back_when: Record<number, string[]>;
  /** What goes in its place, in the coach's order. */
  instead: Record<number, CoachsInstead[]>;
  /** Bits: straight arms, strict, turnover, loaded, a dose of its own, upright balance, inverted. */
  traits: number[];
  /** 0 none, 1 hold, 2 lowering, 3 raising, 4 full. */
  phase: number[];
  /** From and to in half weeks, two numbers for each movement. */
  weeks: number[];
  /** The easier neighbours. */
  easier: number[][];
  /** Of body weight on the hands, of what is trained by its weight. */
  share: Record<number, number>;
  /** For each pattern its group; -1 for none. */
  groups: number[];
  group_names: string[];
  /** Words for equipment that only measures. */
  measures: string[];
  /** Patterns in the order of a session. */
  pattern_order: number[];
  /** The lowest one-rep maximum by 1 to 12 reps, as a multiple of what moves, and the load chart in per cent. */
  one_rep: number[];
  chart: number[];
  training: TrainingNumbers;
  history: { trend_days: number; still_days: number; tests: number; falling: number; sliding: number; lighter_days: number; days_a_week: number };
  morning: { round_days: number; runs_out_days: number; tests: number; named: number; bests: number };
  /** Where all of a history's drawing stands, in tenths of a pixel. */
  drawing: { width: number; height: number; left: number; right: number; top: number; foot: number; apart: number; narrowest: number; band: [number, number]; tick: [number, number]; days: number; mark: number; drop: number };
  /** Sets looked at before the search for a route is cut, and from which size on a chain is searched step by step. */
  route: { looked_at: number; large: number };
  /** For each rule by its name the key of its words. */
  rules: Record<string, string>;
  equipment: string[][][];
  /** The words for equipment as readers see them. */
  gear: Record<string, string>;
  /** Measure, sets, amount, seconds of each rep, unit and number of the load. */
  dose: ([number, number, number, number, number, number] | null)[];
  dose_of_school: {
    sets: number; reps: number; hold_sets: number; hold_seconds: number; a_week: number; lighter_every: number;
    practice: string; smallest_plate: number;
  };
  warm_up: Record<string, WarmUpLine[]>;
  classes: string[];
  /** As readers see them. */
  class_names: string[];
  cautions: number[][];
  needs: number[][];
  necessary: number[][];
  skills: Skill[];
  old: Record<string, number>;
  leaves: number[];
  implied: number[][];
  targets: number[][];
  target_text: string[];
}

/** The numbers by which results are judged: `src/results/limits.rs`. */
interface Limits {
  pain_days: number;
  pain: [number, number]; adult: number; youth: number; older: number; alone: number; clearance: number; body_weight: [number, number]; class: number;
  growing: string[]; near: number; near_length: number; near_angle: number; far: number; widest: number; same_mass: number; monotony: number;
  in_reserve: number; effort: number; minutes: number;
}

interface Model {
  tables: Tables;
  count: number;
  demands: number[][];
  order: number[];
  numbers: Map<string, number>;
  target: (leaf: number) => Got;
  of: (leaf: number) => number;
  is: (m: number, flag: number) => boolean;
}

interface Tested {
  movement: number;
  sides: Got[];
  /** Days since 1970-01-01; of a span the first, which counts, and the last, null where it was a day. */
  on: number;
  until: number | null;
  reserve: number;
  bodyWeight: number | null;
  /** Its place among the exported entries. */
  entry: number;
}

/** Something that keeps movements from being trained: a pause, a restriction, a pain, or that the health questions said light. One of
 * movement, part, class and pattern is a number; none where they said light. */
/** What it is for (0 a part, 1 a class, 2 missing equipment), which, and the movement that goes in its place. */
type CoachsInstead = [number, number | string, number];

interface Pause {
  kind: 'paused' | 'restrict' | 'pain' | 'light';
  movement: number | null;
  part: number | null;
  cls: number | null;
  pattern: number | null;
  on: number;
  until: number | null;
  by: string | null;
  because: string | null;
  /** Its place among the exported entries of its kind. */
  entry: number;
}

/** What a clinician allowed: a caution class. */
interface Cleared {
  cls: number;
  on: number;
  until: number | null;
  by: string | null;
  entry: number;
}

interface Pain {
  part: number;
  /** 0 to 10. */
  score: number;
  nextMorning: number | null;
  signs: string[];
  on: number;
  entry: number;
}

interface Trained {
  movement: number;
  /** Millionths. */
  did: number[];
  unit: number;
  load: number;
  reserve: number | null;
  on: number;
}

interface Person {
  bodyWeight: number | null;
  tested: Tested[];
  /** Measured in a way that the curriculum has changed since. */
  otherwise: Tested[];
  trained: Trained[];
  sessions: { effort: number; minutes: number; on: number }[];
  pauses: Pause[];
  /** Equipment at hand; null where it was not said. */
  have: string[] | null;
  /** The year of birth. */
  born: number | null;
  /** The id of a skill or a movement. */
  goal: string | null;
  train: TrainTimes | null;
  /** The outcome of the health questions: clear, light or ask. */
  screened: { says: string; on: number; until: number | null; by: string | null; lasts: number | null } | null;
  cleared: Cleared[];
  pains: Pain[];
  remarks: { movement: number; on: number; words: string }[];
}

interface TrainTimes {
  a_week?: number;
  minutes?: number;
  days?: string[];
}

interface Aside {
  movement: string;
  got: string;
  on: string;
  why: string;
}

interface Missing {
  leaf: number;
  movement: number;
  got: string | null;
  share: number | null;
}

interface Repair {
  leaves: number;
  shortfall: number;
  which: number[];
}

interface Board {
  shown: Uint8Array;
  presumed: Uint8Array;
  isTested: (m: number) => boolean;
}

interface Evidence {
  latest: Map<number, Tested[]>;
  shown: Uint8Array;
  presumed: Uint8Array;
  roots: Map<number, number>;
  bodyWeight: (tested: Tested) => number | null;
}

interface Assessment {
  reached: Uint8Array;
  needs: Uint8Array;
  states: Uint8Array;
  counted: Uint8Array;
  known: Evidence;
  judge: (m: number) => (leaf: number) => number;
  countedBecause: (m: number) => number;
  missing: (m: number) => Missing[];
  first: (m: number) => { direct: boolean, steps: Missing[] };
  nearly: (m: number) => number;
  /** Everything that keeps movements from being trained today. */
  causes: Pause[];
  pausedBy: (m: number) => Pause[];
  closest: (leaf: number) => { share: number; tested: Tested } | null;
}

// ---- training

/** What a person can do of a movement. */
interface Now {
  /** Millionths; reps and seconds are whole. */
  amount: number;
  /** Hundred-millionths of a kilogram; help below 0. */
  load: number;
  left: number | null;
  right: number | null;
  hits: number;
  of: number;
}

/** What follows from the tables alone. */
interface TrainingFacts {
  measure: (m: number) => number;
  has: (m: number, trait: number) => boolean;
  harder: number[][];
  /** The pattern. */
  word: (m: number) => string;
  /** Sets, whole reps or seconds of each, all of them in millionths, seconds of a rep, the load. */
  dose: (m: number) => { sets: number; each: number; all: number; seconds: number; unit: number; load: number };
  seconds: (m: number) => number;
  isCounted: (m: number) => boolean;
  isMobility: (m: number) => boolean;
  isPractice: (m: number) => boolean;
  /** By its number; -1 for none. */
  group: (m: number) => number;
  kind: (m: number) => number;
  /** Full reps to which weight is added. */
  isByMax: (m: number) => boolean;
}

/** A logged session of a movement, its load in hundred-millionths of a kilogram. */
type Logged = Trained;
/** A set: hundred-millionths of a kilogram added, whole reps with those left. */
type ShownSet = { load: number; reps: number };

interface Ended {
  spares: (m: number) => boolean;
  what: Reason['values'];
  /** Its first day, and its last. */
  from: number;
  until: number;
}

/** A part that hurt and is better: the last entry that was not low, the first day of these, whether it rested. */
interface Eased {
  part: number;
  score: number;
  on: number;
  from: number;
  rested: boolean;
}

/** What hurt or rested and is over: its first day, the last day of less, and what a line says of it. */
interface Lately {
  what: Reason['values'];
  from: number;
  until: number;
  why: Reason;
}

/** A candidate in turn: its line; where it has none, what it waits for. */
interface InTurn {
  movement: number;
  asked: Line | null;
  late: Lately | null;
}

interface Trainee {
  model: Model;
  tables: Tables;
  K: TrainingNumbers;
  person: Person;
  found: Assessment;
  day: number;
  log: Logged[];
  facts: TrainingFacts;
  tests: Map<number, Tested[]>;
  trained: Map<number, Logged[]>;
  daysOf: Map<number, Logged[]>;
  aWeek: number;
  minutes: number;
  weekdays: string[];
  age: number | null;
  minor: boolean;
  young: boolean;
  memo: { own: (Now | null)[]; now: (Now | null)[]; foot: number[]; fits: (boolean | null)[]; below: number[][]; builders: number[][]; ended: Ended[] | null; care: boolean | null; back: boolean | null; before: boolean[]; reach: number[]; lately: (Logged | null)[] };
}

/** What is asked of what holds a movement back; a trainee is one. */
type Heeded = Pick<Trainee, 'model' | 'tables' | 'K' | 'person' | 'found' | 'day' | 'minor'> & { memo: { ended: Ended[] | null } };

/** A tree of needs: true when k of its parts are; a demand is a leaf. */
interface Tree {
  k: number;
  /** -1 for a group. */
  leaf: number;
  all: boolean;
  parts: Tree[];
}

interface TrainingGoal {
  id: string;
  leaf: number;
  chain: number[];
  chosen: boolean;
  route: { movements: number[]; cost: number } | null;
}

interface Gap {
  movement: number;
  leaf: number;
  now: Now | null;
  /** Thousandths. */
  share: number;
  opens: number[];
  /** Half weeks times thousandths. */
  weight: number;
  low: number;
  high: number;
  /** Where its way ends for now: the first step that is closed, or waits for one that is. */
  stop: Stop | null;
}
interface Stop {
  at: number;
  by: number;
  why: 'age' | 'equipment' | 'falls';
  /** Each of several words that would do. */
  missing: string[][];
}

/** A reason: its key under `training` in the words, and what it speaks of. */
interface Reason {
  key: string;
  values: { sides?: Got[]; movement?: number; part?: number; pattern?: number; group?: number; cls?: number; got?: Got; standard?: number; weight?: number; why?: Reason; n?: number; score?: number };
}

interface LeftOut {
  movement: number;
  why: Reason;
}

type TrainingBlock = 'practice' | 'strength' | 'kept up' | 'range';

interface Candidate {
  movement: number;
  gap: Gap | null;
  block: TrainingBlock;
  rule: string;
  why: Reason[];
  single: boolean;
  insteadOf: number | null;
  weight: number;
  first: boolean;
  /** Of the goal's chain, and trained in the last two weeks. */
  goesOn: boolean;
  /** What its kind is trained by. */
  mainstay: boolean;
  /** It has no line any more once it was shown in the plan: this goes on for its gap. */
  then: number | null;
  /** It has a line only once this was shown in the plan. */
  after: number | null;
}

interface Pool {
  out: Map<string, Candidate>;
  lost: LeftOut[];
  /** A gap rests or lacks its equipment, and nothing stands in its place. */
  rests: boolean;
  add: (m: number, gap: Gap | null, rule: string, more?: { why?: Reason[]; single?: boolean; insteadOf?: number; block?: TrainingBlock; then?: number | null; after?: number | null }) => void;
}

/** The last session of a movement before time off. */
interface Most {
  amount: number;
  sets: number;
  load: number;
  reserve: number | null;
}

interface Ease {
  light: boolean;
  /** Light, but nearer to what it was. */
  nearly: boolean;
  easier: boolean;
  hold: boolean;
  /** A part hurts: nothing grows; and it was worse the next morning. */
  sore: boolean;
  worse: boolean;
  /** It is at 5, or rests: half as much, and a rung further down. */
  least: boolean;
  rule: string | null;
  why: Reason | null;
  /** Back from time off: no more than before it. */
  most: Most | null;
}

interface Amounts {
  sets: number;
  amount: number;
  load: number | null;
  rule: string;
  why: Reason | null;
  left: number | null;
  /** Said after why. */
  more?: Reason[];
}

interface Line {
  block: TrainingBlock;
  movement: number;
  sets: number;
  /** Reps, or seconds. */
  amount: number;
  unit: 'reps' | 's';
  /** Of each rep. */
  seconds: number | null;
  load: number | null;
  side: null | 'weaker first' | 'each';
  weaker: null | 'left' | 'right';
  rest: number;
  left: number | null;
  minutes: number;
  gap: Gap | null;
  insteadOf: number | null;
  rule: string;
  why: Reason[];
  then: string;
  /** Of an open set: reps or seconds at most. */
  most: number;
  eased: boolean;
  sore: boolean;
  worse: boolean;
  candidate: Candidate;
}

/** A day on which is tested again. */
interface Retest {
  on: number;
  tests: number[];
}

interface WarmUp {
  /** What to leave out, and with what to go gently; empty where nothing rests or hurts. */
  sore: string;
  text: string[];
  easy: { movement: number; bare: boolean; amount: string }[];
}

interface PlannedSession {
  on: number;
  week: number;
  name: string;
  lighter: boolean;
  minutes: number;
  warmUp: WarmUp;
  lines: Line[];
  leftOut: LeftOut[];
}

interface Diary {
  did: (m: number, on: number, hard: boolean) => void;
  stood: (m: number, on: number) => void;
  times: (m: number, on: number, days: number) => number;
  trained: (group: number, on: number, days: number) => boolean;
  groupIsNear: (group: number, on: number) => boolean;
  partIsNear: (m: number, on: number) => boolean;
}

interface Work {
  /** Of each movement in a block the newest line of a full week. */
  full: Map<string, Line>;
  all: Candidate[];
  lost: LeftOut[];
  limiter: Gap | null;
  balance: Candidate | null;
  first: number;
  mostFirst: number;
  few: boolean;
  /** Sessions of a week. */
  perWeek: number;
  /** A session with more than range or one line was laid. */
  hasFull: boolean;
  diary: Diary;
  /** Tried or shown earlier in the plan. */
  tried: Set<number>;
  done: Map<Candidate, number>;
  /** Full weeks in which a kind could not grow. */
  sore: Map<number, number>;
  /** The same plan if nothing hurt and nothing rested. */
  unhurt: Unhurt | null;
}

/** The plan without pains, pauses, and restrictions of a part, a pattern or a movement. */
interface Unhurt {
  /** Each line: the movement, and what it was laid for. */
  lines: { on: number; of: number; movement: number }[];
}

interface DayDraft {
  lines: Line[];
  lost: LeftOut[];
  state: Entry['state'];
  without: (only: boolean) => number;
}

interface Planned {
  number: number;
  lighter: boolean;
  before: Map<Candidate, number>;
  full: number;
  sets: Map<number, number>;
  sore: Set<number>;
  toCome: number;
}

interface Entry {
  on: number;
  line: Line;
  lines: Line[];
  state: { left: number; used: Map<string, number>; sets: Map<number, number>; firsts: number; shows: number; mostRange: number; mostFirst: number };
}

/** The best of one day. */
interface Point extends Now {
  on: number;
}
interface MovementHistory {
  movement: number;
  points: Point[];
  trend: { perWeek: number; byLoad: boolean } | null;
  still: { since: number; weeks: number; falling: boolean; advice: { key: string; movement: number | null } } | null;
  fallen: { best: Point; last: Point[] } | null;
}
/** What one person's verdict is made from. */
interface MorningLook {
  c: Trainee;
  isRefused: boolean;
  goal: TrainingGoal | null;
  gaps: Map<number, Gap>;
  limiter: Gap | null;
  session: PlannedSession | null;
  /** What has a line in the first week. */
  trains: Set<number>;
  /** What the next session trains where no step of the way can be trained as it is, or what holds back waits. */
  meanwhile: number[];
  aside: Aside[];
  histories: MovementHistory[];
}
/** How a verdict is told: as texts, or as parts of a page. */
interface Saying {
  say: (key: string, values: Record<string, any>) => any;
  name: (m: number) => any;
  join: (parts: any[], between: string) => any;
  causes: (causes: Pause[]) => any[];
}
interface FreshBest {
  movement: number;
  test: Tested;
  was: Tested | null;
  owned: boolean;
  opens: number[];
}
/** In tenths of a pixel. */
interface HistoryDrawing {
  rungs: { y: number; at: Got; named: boolean }[];
  marks: number[][];
  ticks: number[];
  bands: number[][];
  from: number;
  to: number;
  rests: number[][];
}

interface Training {
  trainee: Trainee;
  goal: TrainingGoal | null;
  gaps: Map<number, Gap>;
  limiter: Gap | null;
  sessions: PlannedSession[];
  retests: Retest[];
  weekSets: Map<number, number>;
}

/** What is ticked on a card and not kept yet. */
interface Draft {
  ticks: boolean[];
  amounts: (string | number)[];
  left: string;
  weight: string | null;
}

/** The numbers of the training rules, as the tables carry them. */
interface TrainingNumbers {
  reserve: number; missed: number; several: number; sets_hide: number; fits: [number, number]; hold_fits: number; singles: number; single_sets: number; easy: number; easy_hold: number; far: number; itself: number;
  share: number; hold: number; reps: number; reps_strict: number; sets: [number, number]; held: [number, number]; hold_most: number; attempts: [number, number]; practice_fewest: number;
  fewest: number; try_reps: number; try_reps_few: number; try_dose: number; try_s: number; try_carry: number; try_back: [number, number]; try_back_s: number; try_sets: number; again: number; first: number; first_new: number; first_back: number; known: number; shows: number;
  left: number; left_step: number; lines: number; lines_most: number; keep_lines: number; keep_sets: [number, number]; keep_age: number; keep_week: number; range_s: number; range_sets: number; range_limiter: number;
  unknown_s: number; range_lines: number; block: number; warm_up: number; warm_up_most: number; minutes: number; balance_age: number; one_leg_s: number; rest: { guarded: number; strength: number; easy: number; range: number };
  rep_s: number; short: number; of_body: number; of_body_side: number; of_standard: number; of_record: number; load_reps: number; bound: number; plate_share: number; two: number; three: number; over: number; step_s: number;
  planned: number; off: [number, number, number]; off_for: [number, number]; back_for: number; back: number; back_most: number; short_sets: number; exit_from: number; light: number; pain_days: number; sore_lines: number; pain_less: number; pain_least: number; least: number; long_hold: number; breath_lines: number; pause_days: number; pause_weeks: number;
  sides: number; sides_cm: number; sides_deg: number; minor_reps: number; weeks: number; weeks_a_month: number; said_in_weeks: number; apart: number; turns: number; overdue: number; overdue_lines: number;
  cap: [number, number]; cap_days: number; week_one: number; rise: [number, number]; logged: number; per_week: number; heavy_sets: number; tests: number; tests_day: number; tests_kind: number; tests_times: number; tests_ahead: number;
}

interface WeekLoad {
  total: number;
  monotony: number;
  strain: number;
}

interface Question {
  movement: number;
  today: boolean;
  /** So many questions are left at most, this one among them. */
  left: number;
}

/** Where this device's person stands today. */
interface Stand {
  person: Person;
  aside: Aside[];
  exported: Exported;
  day: number;
  found: Assessment;
}

interface Kept {
  key: string;
  entry: any;
}

interface ExportedTest {
  movement: string;
  got?: string;
  left?: string;
  right?: string;
  on: string;
  until?: string;
  in_reserve?: number;
  bodyweight?: string;
}

interface ExportedTraining {
  movement: string;
  did: (number | string)[];
  with?: string;
  in_reserve?: number;
  on: string;
}

interface ExportedPause {
  movement?: string;
  part?: string;
  class?: string;
  pattern?: string;
  on: string;
  until?: string;
  by?: string;
  because?: string;
}

/** The results layout, every entry with its day. */
interface Exported {
  results: number;
  name?: string;
  bodyweight?: string;
  have?: string[];
  tested: ExportedTest[];
  trained: ExportedTraining[];
  sessions?: { effort: number; minutes: number; on: string }[];
  paused: ExportedPause[];
  born?: number;
  goal?: string;
  train?: TrainTimes;
  screened?: { says: string; on: string; until?: string; by?: string; was?: string; lasts?: number };
  restrict?: ExportedPause[];
  cleared?: { class: string; on: string; until?: string; by?: string }[];
  pain?: { part: string; score: number; next_morning?: number; on: string; signs?: string[] }[];
  remarks?: { movement: string; on: string; words: string }[];
}

/** Something kept on this device that is no sound entry. */
interface Odd {
  key: string;
  why: string;
  text: string;
}

type PagePart = Node | string | null;

interface Rungbook {
  words: {
    say: (key: string, values?: Record<string, string | number>) => string;
    sayNodes: (key: string, values: Record<string, number | PagePart | PagePart[]>) => PagePart[];
    number: (n: number) => string;
  };
  health: {
    LIMITS: Limits;
    draw: () => void;
    /** Before the keys of this site, and of whom the page is for. */
    own: string;
    prefix: string;
    saysOn: (screened: { says: string; on: number; until: number | null; lasts?: number | null } | null, today: number, born: number | null | undefined) => string | null;
    /** Whether nothing is planned before the health questions are answered. */
    mustAnswer: (screened: { says: string; on: number; until: number | null; lasts?: number | null } | null, today: number, born: number | null | undefined) => boolean;
    isChild: (born: unknown, today: number) => boolean;
    /** Whether what is kept under a name says something of a body. */
    isResult: (key: string) => boolean;
    ageOn: (born: unknown, today: number) => number | null;
    goesOnTo: (part: string, age: number | null) => number;
    worstOfDay: <P extends { part: unknown; on: unknown; score: number; signs?: unknown }>(pains: P[]) => (P & { signs: any[] })[];
  };
  targets: {
    readGot: (text: string) => Got | null;
    /** A mass in words, rounded up or down. */
    massInWords: (size: number, up: boolean, units: string) => string;
    text: (got: Got) => string;
    words: (got: Got, units: string, eachSide?: boolean) => string;
    decimal: (micro: number) => string;
    kilograms: (mass: number) => string;
    readMass: (written: string) => number | null;
    ONE: number; KILOGRAM: number;
    REPS: 0; TIME: 1; LENGTH: 2; ANGLE: 3; DONE: 4;
    NO_LOAD: 0; MASS: 1; BODY_WEIGHT: 2;
  };
  /** What holds a movement back. */
  held: {
    begin: (model: Model, person: Person, found: Assessment, day: number) => Heeded;
    by: <T>(list: T[], key: (one: T) => number) => Map<number, T[]>;
    isOwned: (c: Heeded, m: number) => boolean;
    isOpen: (c: Heeded, m: number) => boolean;
    isHolding: (pain: Pain) => boolean;
    takesBack: (c: Heeded, pain: Pain) => boolean;
    stresses: (c: Heeded, m: number, part: number) => boolean;
    bearsOn: (c: Heeded, m: number, part: number) => boolean;
    whatOf: (cause: Pick<Pause, 'movement' | 'part' | 'cls' | 'pattern'>) => Reason['values'];
    newestPains: (c: Heeded) => Pain[];
    sorePains: (c: Heeded) => Pain[];
    ended: (c: Heeded) => Ended[];
    easedPains: (c: Heeded) => Eased[];
    isEasedOn: (c: Heeded, of: Eased, m: number) => boolean;
    lately: (c: Heeded, m: number, on: number) => Lately[];
    pulledNerve: (c: Heeded, m: number) => number;
    waitsForAge: (c: Heeded, m: number) => boolean;
    heldBy: (c: Heeded, m: number) => 'rests' | 'sore' | 'lately' | 'age' | 'closed' | null;
    LOADED: number;
  };
  readiness: {
    prepare: (tables: Tables) => Model;
    assess: (model: Model, person: Person, today: number) => Assessment;
    doubtful: (model: Model, m: number, got: { measure: number; amount: number }) => boolean;
    evidence: (model: Model, person: Person, today: number) => Evidence;
    presume: (model: Model, owned: number[], isTested: (m: number) => boolean, presumed: Uint8Array, tell?: (leaf: number) => void) => void;
    value: (tree: number[], of: (leaf: number) => number) => number;
    leavesOf: (tree: number[]) => number[];
    sidesText: (tested: Tested, atMost: boolean) => string;
    verdict: (tested: Tested, target: Got, bodyWeight: number | null) => number;
    mass: (unit: number, load: number, bodyWeight: number | null) => number | null;
    reaches: (model: Model, cause: Pause, m: number) => boolean;
    isPausing: (model: Model, person: Person, pain: Pain, today: number) => boolean;
    goesOnTo: (model: Model, person: Person, part: number, today: number) => number;
    untilWords: (pain: Pain, above: number) => string;
    WHOLE: number;
    STATES: string[];
    TRUE: 2; UNKNOWN: 1; FALSE: 0; UNTESTED: 3; MEETS: 0; MISSES: 1;
    EACH_SIDE: 1; GUARDED: 2; LOWERING: 8; DRAWN: 16;
    PAUSED: 0; OWNED: 1; OPEN: 2; ALMOST: 3; NOT_YET: 4; TEST_FIRST: 5;
  };
  results: {
    VERSION: number; LARGEST_FILE: number;
    KEYS: Record<string, string[]>;
    /** The kinds of entries, the facts about a person, and what a pain may come with. */
    KINDS: string[]; FACTS: string[]; SIGNS: string[];
    Refused: new (why: string) => Error;
    check: (object: unknown, day: number) => Exported;
    entry: (kind: string, item: unknown, day: number) => { sound: any; why: string };
    fact: (key: string, value: unknown, day: number) => { sound: any; why: string };
    nobody: () => Person;
    ageOn: (born: number | null, today: number) => number | null;
    readFile: (written: string, day: number) => Exported;
    person: (exported: Exported, model: Model, day: number) => { person: Person; aside: Aside[] };
    readDay: (written: unknown) => number | null;
    dayText: (day: number) => string;
    dayWords: (day: number) => string;
    spanWords: (on: number, until: number) => string;
    today: () => number;
  };
  class: {
    read: (name: string, written: string, day: number, model: Model) => { copies: Exported[]; notes: string[] };
    readPlain: (text: string) => Record<string, any>;
  };
  morning: {
    look: (model: Model, person: Person, found: Assessment, aside: Aside[], day: number) => MorningLook;
    lines: (of: MorningLook, saying: Saying) => [string, any][];
    head: (of: MorningLook, saying: Saying) => any[];
    goalOf: (of: MorningLook, goal: any, saying: Saying) => any;
    together: (all: MorningLook[], called: (i: number) => any, saying: Saying) => [string, any[]][];
  };
  history: {
    points: (c: Trainee, m: number, of?: Tested[]) => Point[];
    isAbove: (a: Point, b: Point, atMost: boolean) => boolean;
    covers: (a: Point, b: Point, atMost: boolean) => boolean;
    histories: (c: Trainee, limiter: number | null) => MovementHistory[];
    limiterOf: (c: Trainee) => number | null;
    line: <T>(c: Trainee, of: MovementHistory, tell: (key: string, values: Record<string, any>) => T, name: (m: number) => any) => T;
    drawing: (c: Trainee, of: MovementHistory) => HistoryDrawing | null;
    picture: (c: Trainee, of: MovementHistory) => Element | null;
    table: (c: Trainee, of: MovementHistory) => HTMLElement;
    beside: (c: Trainee, of: MovementHistory) => HTMLElement[];
    says: (c: Trainee, of: MovementHistory) => HTMLElement;
    answer: (model: Model, person: Person, found: Assessment, day: number) => object;
  };
  placement: {
    next: (model: Model, assessment: Assessment, chain: number[], asked: number[], today: number) => Question | null;
    mayBeTested: (model: Model, assessment: Assessment, m: number, today: number) => boolean;
  };
  training: {
    begin: (model: Model, person: Person, found: Assessment, day: number) => Trainee;
    by: <T>(list: T[], key: (one: T) => number) => Map<number, T[]>;
    foot: (c: Trainee, pattern: number) => number;
    countsFrom: (c: Trainee, m: number) => number;
    isBackLately: (c: Trainee) => boolean;
    asksForCare: (c: Trainee) => boolean;
    isRestricted: (c: Trainee, name: string) => boolean;
    because: (key: string, values?: Reason['values']) => Reason;
    told: (c: Trainee, m: number, key: string) => Reason[];
    measured: (c: Trainee, m: number, key: string) => Reason[];
    isLowering: (c: Trainee, m: number) => boolean;
    isGuarded: (c: Trainee, m: number) => boolean;
    higher: (c: Trainee) => (a: number, b: number) => number;
    lower: (c: Trainee) => (a: number, b: number) => number;
    isAnew: (c: Trainee, m: number) => boolean;
    fits: (c: Trainee, m: number) => boolean | null;
    isTooEasy: (c: Trainee, m: number) => boolean;
    builder: (c: Trainee, m: number, plain?: boolean) => number | undefined;
    harder: (c: Trainee, m: number) => number | undefined;
    isHeavyOnSore: (c: Trainee, m: number) => boolean;
    onward: (c: Trainee, m: number, inChain: Set<number>, fits: (c: Trainee, m: number) => boolean | null, isTooEasy: (c: Trainee, m: number) => boolean) => number | null;
    above: (c: Trainee, m: number) => Set<number>;
    ofTest: (c: Trainee, m: number, tested: Tested) => Now;
    isOwned: (c: Trainee, m: number) => boolean;
    isOpen: (c: Trainee, m: number) => boolean;
    wasDone: (c: Trainee, m: number) => boolean;
    isBack: (c: Trainee) => boolean;
    wasLongOff: (c: Trainee) => boolean;
    sparesBreath: (c: Trainee) => boolean;
    bearsOn: (c: Trainee, m: number, part: number) => boolean;
    bearsMore: (c: Trainee, m: number, than: number) => boolean;
    heavyBelow: (c: Trainee, m: number, than: number) => number;
    isAtHand: (c: Trainee, m: number) => boolean;
    hasAll: (c: Trainee, m: number) => boolean;
    isHolding: (pain: Pain) => boolean;
    takesBack: (c: Trainee, pain: Pain) => boolean;
    hasSign: (c: Trainee) => boolean;
    easedPains: (c: Trainee) => Eased[];
    isEasedOn: (c: Trainee, of: Eased, m: number) => boolean;
    sorePart: (c: Trainee, m: number) => number;
    pulledNerve: (c: Trainee, m: number) => number;
    isOnlyUnsure: (c: Trainee, m: number) => boolean;
    isTooNew: (c: Trainee, m: number) => boolean;
    isForAll: (c: Trainee, m: number) => boolean;
    mayTest: (c: Trainee, m: number) => boolean;
    slips: (c: Trainee) => [number, number][];
    daysOff: (c: Trainee) => number;
    wasLifted: (c: Trainee, m: number) => boolean;
    lighterStep: (c: Trainee, m: number) => number;
    gentlest: (c: Trainee, m: number) => number;
    isHeldBack: (c: Trainee) => boolean;
    reachOf: (c: Trainee, pattern: number) => number;
    whatOf: (cause: Pick<Pause, 'movement' | 'part' | 'cls' | 'pattern'>) => Reason['values'];
    touchedPart: (c: Trainee, m: number) => number;
    stresses: (c: Trainee, m: number, part: number) => boolean;
    lately: (c: Trainee, m: number, on: number) => Lately[];
    waitsLately: (c: Trainee, m: number, on: number) => Lately | null;
    isGrave: (c: Trainee, m: number) => boolean;
    overheadOn: (c: Trainee, m: number) => number;
    hasResult: (c: Trainee, m: number) => boolean;
    retestDays: (c: Trainee, days: number[], last: number, tests: (on: number) => number[]) => Retest[];
    retests: (c: Trainee, goal: TrainingGoal | null, gaps: Map<number, Gap>, on: number, sessions: PlannedSession[]) => number[];
    makeRoom: (c: Trainee, sessions: PlannedSession[], days: Retest[]) => PlannedSession[];
    thenOf: (line: Line) => string;
    ease: (c: Trainee, m: number, on: number, first: number) => Ease;
    afterTimeOff: (c: Trainee, m: number, on: number, first: number) => Partial<Ease>;
    comesBack: (taken: Ease) => boolean;
    shareOf: (c: Trainee, taken: Ease) => number;
    leavesBack: (taken: Ease, amount: number) => number;
    didLately: (c: Trainee, m: number) => Logged | null;
    setsOf: (c: Trainee, of: Logged) => number;
    tooMuchOn: (c: Trainee, m: number, day: number) => number;
    leftFor: (c: Trainee, m: number, part: number) => Reason;
    whyNotToday: (c: Trainee, m: number) => Reason | null;
    may: (c: Trainee, m: number) => boolean;
    could: (c: Trainee, m: number) => boolean;
    isNoHarder: (c: Trainee, one: number, than: number) => boolean;
    isMissed: (of: Trained) => boolean;
    now: (c: Trainee, m: number) => Now | null;
    own: (c: Trainee, m: number) => Now | null;
    whole: (of: Now) => number;
    down: (n: number) => number;
    share: (c: Trainee, of: Now | null, target: Got) => number;
    got: (c: Trainee, m: number) => Got | null;
    followsFrom: (c: Trainee, m: number) => number | null;
    measuredOtherwise: (c: Trainee, m: number) => Got[] | null;
    apart: (c: Trainee, m: number) => Got[] | null;
    comesTo: (c: Trainee, target: Got) => number | null;
    firstSet: (c: Trainee, m: number) => Got;
    sidesInWords: (sides: Got[]) => string;
    asksInWords: (c: Trainee, leaf: number) => string;
howLong: (c: Trainee, gap: Gap, saying: Pick<Saying, 'say' | 'name'>) => any;
    timeOf: (tables: Tables, gap: Gap) => string | null;
    gearWords: (tables: Tables, oneOf: string[]) => string;
    paceInWords: (tables: Tables, line: Line) => string[];
    setsInWords: (tables: Tables, line: Line) => string;
    missing: (c: Trainee, m: number) => string[][];
    toBeHad: (c: Trainee, all: Map<number, Gap>, next: Gap | null) => { oneOf: string[]; stops: number[] }[];
    falls: (c: Trainee) => { movement: number; left: number; right: number } | null;
    painWords: (tables: Tables, pain: Pain, above: number | null) => string;
    clinician: (c: Trainee) => string[];
    latelyWords: (c: Trainee) => string[];
    care: (c: Trainee, session: PlannedSession) => { asks: string; movements: number[] }[];
    newestPains: (c: Trainee) => Pain[];
    ended: (c: Trainee) => Ended[];
    NEVER: number;
    TRAITS: Record<'STRAIGHT' | 'STRICT' | 'TURNOVER' | 'HEAVY' | 'LOADED' | 'OWN_DOSE' | 'UPRIGHT' | 'INVERTED' | 'OVER_FLOOR', number>;
    goalOf: (c: Trainee) => TrainingGoal | null;
    gaps: (c: Trainee, goal: TrainingGoal) => Map<number, Gap>;
    heavier: (a: Gap, b: Gap) => number;
    limiter: (c: Trainee, candidates: Candidate[]) => Gap | null;
    chainOf: (model: Model, from: number[]) => number[];
    candidates: (c: Trainee, goal: TrainingGoal | null, gaps: Map<number, Gap>) => { all: Candidate[]; lost: LeftOut[]; limiter: Gap | null; balance: Candidate | null };
    whyNot: (c: Trainee, m: number) => Reason;
    sides: (c: Trainee, m: number) => { side: Line['side']; weaker: Line['weaker'] };
    line: (c: Trainee, of: Candidate, at: { on: number; first: number; before: number; tried: boolean; again: boolean; isLimiter: boolean }) => Line | null;
    minutes: (c: Trainee, line: Line) => number;
    plan: (model: Model, person: Person, found: Assessment, day: number, count?: number) => Training;
    answer: (model: Model, person: Person, found: Assessment, day: number) => object;
    gotOf: (line: Line) => Got;
    inWords: (line: Line) => string;
    whyOf: (c: Trainee, of: Reason) => string;
    wordsOf: (of: Reason) => string;
    valuesOf: (c: Trainee, values: Reason['values']) => Record<string, string | number>;
    conditions: (of: Training) => string[];
    isRefused: (person: Person, day: number) => boolean;
    /** Why nothing may be planned, and what to do first. */
    refusal: (person: Person, day: number) => string;
    isReached: (goal: TrainingGoal | null) => boolean;
    weeksOf: (path: number) => number;
    lastWeek: (sessions: { effort: number; minutes: number; on: number }[], today: number) => WeekLoad | null;
  };
  /** What a page told last of a person's own numbers. */
  told: {
    /** All that decides what is told, as one short text. */
    keyNow: () => string;
    /** Whether what the page told last stands in it, and still holds. */
    holds: () => boolean;
    more: () => any;
    drop: () => void;
    keep: (key: string, whole: string[], frames: string[], late: string[], more: any) => void;
  };
  aim: {
    BLOCKS: readonly TrainingBlock[];
    dated: (text: string) => string;
    planOf: (stand: Stand) => Training;
    aimOf: (stand: Stand) => Training;
    isPlanned: (stand: Stand) => boolean;
    goalName: (goal: TrainingGoal) => HTMLElement;
    goalChoice: (place: string) => HTMLElement;
    sentence: (of: Training) => (Node | string)[];
    howLong: (of: Training) => (Node | string)[];
    /** What comes before the step, at most three sentences, each a list item. */
    acts: (of: Training) => HTMLElement[];
    /** What was said today to be never tried comes last. */
    inOrder: (lines: Line[]) => Line[];
    way: (of: Training, field?: (m: number) => HTMLElement | null) => HTMLElement | null;
    sentenceText: (of: Training) => string;
    sets: (line: Line) => HTMLElement;
    restWords: (line: Line) => (Node | string)[];
    reason: (of: Training, reason: Reason) => (Node | string)[];
    why: (of: Training, line: Line) => (Node | string)[];
    towards: (of: Training, line: Line) => (Node | string)[] | null;
    head: (of: PlannedSession) => (Node | string)[];
    warmUp: (of: Training, session: PlannedSession) => HTMLElement[];
    care: (of: Training, session: PlannedSession) => HTMLElement[];
    leftOut: (of: Training, all: LeftOut[]) => HTMLElement[];
    weeks: (of: Training) => HTMLElement[];
    weeksEnd: (of: Training) => HTMLElement[];
    nodes: (parts: PagePart[]) => (Node | string)[];
  };
  rest: {
    timer: () => { element: HTMLElement; start: (seconds: number) => void; end: () => void };
    choices: () => HTMLElement;
  };
  /** In pixels of a picture; loaded only when it is asked for. */
  angle: {
    open: (options: { measure: number; unit: string; done: (value: number, off: number) => void }) => void;
    joint: (points: { x: number; y: number }[]) => number;
    level: (points: { x: number; y: number }[]) => number;
    length: (points: { x: number; y: number }[], known: number) => number;
    doubt: (of: (points: { x: number; y: number }[]) => number, points: { x: number; y: number }[], off: number) => number;
  };
  /** Over all skills; loaded only when it is looked at. */
  standing: { draw: (stand: Stand) => void };
  search: { find: (typed: string) => number[] };
  store: {
    /** Under 16: what an adult says, and whether one of it is still to be said today. */
    adults: { KEYS: readonly ['parent', 'coach']; isSaid: (key: string) => boolean; isDue: () => boolean };
    entries: (kind: string) => Kept[];
    add: (kind: string, entry: object, soon?: boolean) => string;
    addAll: (list: [string, object][], soon?: boolean) => string[];
    /** Several people on one device: the first has no number. */
    people: () => { who: string; name: string; isHere: boolean }[];
    become: (who: string) => void;
    welcome: (called: string) => void;
    all: () => Exported;
    /** What is kept here and is no sound entry. */
    odd: () => Odd[];
    /** `fits` is false where storage has no room for it: then nothing was changed. */
    merge: (exported: Exported, weightToo: boolean) => { added: number; same: number; fits: boolean };
    replace: (exported: Exported) => { added: number; same: number; fits: boolean };
    keeps: () => boolean;
    facts: () => Pick<Exported, 'name' | 'bodyweight' | 'have' | 'born' | 'goal' | 'train' | 'screened'>;
    put: (key: string, value: unknown) => void;
    beside: (exported: Exported) => { there: number; here: number; unlike: number };
    note: (key: string, value: unknown) => void;
    remove: (key: string) => void;
    erase: () => void;
    get: (key: string) => any;
    set: (key: string, value: unknown) => void;
    trouble: () => '' | 'full' | 'forbidden';
    isEmpty: () => boolean;
    onChange: (act: () => void) => void;
  };
  page: {
    make: (name: string, set?: Record<string, unknown>, ...inside: (Node | string | null)[]) => HTMLElement;
    named: (tables: Tables, m: number) => HTMLElement;
    namedSkill: (tables: Tables, skill: Skill, goal: number) => HTMLElement;
    marked: (tables: Tables, m: number) => string;
    namedList: (tables: Tables, list: number[]) => (Node | string | null)[];
    byId: (id: string) => HTMLElement;
    download: (name: string, content: string, type: string) => void;
    ask: (title: string | (Node | string)[], inside: (Node | string)[], choices: [string, string][]) => Promise<string | null>;
    /** Says what is wrong with a field, or with an empty reason that all of its form is well. */
    blame: (input: Element, fault: HTMLElement, why: string) => void;
    /** Draws anew and leaves the focus with the same control, or with an element that can have it. */
    hold: (draw: () => void, place: string) => void;
    later: (all: (() => void)[], place: string) => void;
    go: (href: string) => void;
    /** Loads the scripts that an element names in `data-src`. */
    load: (id: string) => Promise<void>;
    bring: (id: string) => Promise<void>;
    onWork: (act: () => void) => void;
    keepPages: (pages: string[], whole?: boolean) => Promise<void>;
    units: { ofSchool: string; ofOther: string; current: () => string; onChange: (act: () => void) => void };
  };
  states: {
    figure(m: number, size?: number): HTMLElement | null;
    model: Model | null;
    keepsGoal: (select: HTMLSelectElement) => void;
    mine: () => Stand | null;
    latest: () => Stand | null;
    mark: (state: number, counted?: boolean, askFirst?: boolean) => HTMLElement;
    stateWord: (state: number) => string;
    shown: (got: Got, eachSide?: boolean) => HTMLElement;
    target: (leaf: number) => HTMLElement;
    got: (kept: string | { left: string; right: string }) => PagePart[];
    partWord: (part: string) => string;
    day: (text: string) => HTMLElement;
    dayOf: (day: number) => HTMLElement;
    /** What the health questions say today: none where they are not answered, or were answered more than a year ago. */
    health: () => 'none' | 'clear' | 'light' | 'ask';
    /** Why nothing may be tested or trained: the questions come first, or a clinician does; empty when it may. */
    isChild: () => boolean;
    barred: () => '' | 'first' | 'ask';
    causeWords: (cause: Pause, all?: Pause[]) => (Node | string)[];
    /** The newest pains that keep their parts from anything new, whether a movement bears on one, and what is said of those that do not rest. */
    sore: (stand: Stand) => Pain[];
    bearsOnSore: (stand: Stand, m: number) => boolean;
    soreLines: (stand: Stand) => HTMLElement[];
    /** Whether something began to hurt today, and whether a number of a movement is asked for. */
    hurtsToday: () => boolean;
    /** Whether something rests, hurts, hurt lately or waits for the age, why a movement is not tried today, and that beside a field. */
    isHeld: (stand: Stand, m: number) => boolean;
    whyHeld: (m: number) => (Node | string)[][];
    hints: (m: number) => HTMLElement[];
    /** The first day of what settles of a movement: only a number from before it is taken. Null where nothing does. */
    since: (m: number) => number | null;
    /** How a number of a movement is asked for: tried today, only one that was there before, or not at all. */
    asks: (m: number) => 'today' | 'told' | '';
    adultsFirst: () => HTMLElement;
    neverTried: () => string[];
    mayAsk: (m: number) => boolean;
    when: (of: { on: number; until: number | null }) => HTMLElement;
    plain: (parts: PagePart[]) => string;
    whatRests: (all: Pause[]) => (Node | string)[];
    together: (all: Pause[]) => Pause[][];
    asideGot: (got: string) => PagePart | PagePart[];
    /** How a cause is lifted; null where its own list has a button for it. */
    liftedBy: (cause: Pause) => string | null;
  };
  entry: {
    form: (m: number, options: { today: boolean; told?: boolean; kept: (key: string) => void; hurt: () => void; more?: (HTMLElement | null)[] }) => HTMLElement;
    hurt: (m: number, where?: 'test' | 'training') => Promise<{ follows: 'on' | 'light' | 'rests'; says: string } | null>;
  };
  /** Under 16: whether an adult's word is still to be said today, and the ticks that say it. */
  adult: { isDue: () => boolean; ask: (onward: () => HTMLElement) => HTMLElement };
  /** The scale of pain: its row to touch, what follows from a number, and what is kept of one. */
  scale: {
    NUMBERS: number[];
    row: (name: string) => { boxes: HTMLInputElement[]; whole: HTMLElement; value: () => number | null };
    wordOf: (n: number) => string; hurtMore: (part: string, score: number) => boolean;
    follows: (parts: string[], score: number | null, signs: string[]) => 'on' | 'light' | 'rests';
    morning: (key: string, entry: any, much: number) => string;
    partsText: (parts: string[]) => string;
    saysOf: (what: 'on' | 'light' | 'rests', parts: string[]) => string;
    lift: (key: string, what: string) => Promise<string>;
  };
  number: {
    /** Whether a number is more likely a slip than a result, and whether the reader means it all the same. */
    isMeant: (m: number, got: Got) => Promise<boolean>;
    /** What a number of a movement changed since a stand. */
    news: (m: number, before: Stand | null, key: string) => (Node | string)[];
    isPlain: (m: number) => boolean;
    unitOf: (m: number) => [string, string];
    read: (m: number, typed: string) => Got | null;
    /** The day or the span that was given; null where it is not known, undefined where nothing is chosen. */
    given: (span: string, written: string, today: number, before?: number | null) => { on: string; until?: string } | null | undefined;
    keep: (m: number, sides: Got[], when: { on: string; until?: string } | null) => { key: string; kept: (Node | string)[]; news: () => (Node | string)[] };
    /** Where an earlier number may be from, for a choice; the words of what is refused, or of what is missing. */
    spans: (m: number) => [string, string][];
    noDay: (m: number) => string;
    isMore: (m: number, sides: Got[]) => boolean;
    line: (m: number, kept: (of: { key: string; news: (Node | string)[] }) => void, isOpen?: boolean) => HTMLElement | null;
    labelOf: (m: number, side?: string) => string;
    fromPicture: (m: number, input: HTMLInputElement) => HTMLElement | null;
    SPANS: [string, string][];
  };
}

declare var rungbook: Rungbook;
/** Kind, address, name, signal, what the mark says, where it leads, other names, everything else. */
type SearchEntry = [string, string, string, string, string, string, string[], string];

declare var rungbookSearch: SearchEntry[] | undefined;
declare var rungbookTables: Tables | undefined;
declare var rungbookOffline: { site: string; version: string; shell: string[]; language: string };
declare var rungbookWords: Record<string, string | Record<string, string>> | undefined;
declare var rungbookLimits: Limits;
/** The language where there is no page. */
declare var rungbookLanguage: string | undefined;
