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
  name: string;
  /** A demand. */
  goal: number;
  members: number[];
}

/** `data/tables.js`: columns by the movement's number; `leaves` holds a movement and a target for each demand. */
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
  flags: number[];
  stresses: number[];
  marks: Mark[];
  mark: number[];
  straight: number[];
  inverted: number[];
  high: number[];
  waits: number[];
  unstable: number[];
  equipment: string[][][];
  /** The words for equipment as readers see them. */
  gear: Record<string, string>;
  weeks_from: number[];
  /** measure, sets, amount, seconds of each rep. */
  /** Measure, sets, amount, seconds of each rep, unit and number of the load. */
  dose: ([number, number, number, number, number, number] | null)[];
  dose_of_school: {
    sets: number; reps: number; hold_sets: number; hold_seconds: number; a_week: number; lighter_every: number;
    practice: string; smallest_plate: number;
  };
  warm_up: Record<string, string[]>;
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
  /** Days since 1970-01-01. */
  on: number;
  reserve: number;
  bodyWeight: number | null;
  /** Its place among the exported entries. */
  entry: number;
}

/** Something that keeps movements from being trained: a pause, a restriction, a pain, or that the health questions said light. One of
 * movement, part, class and pattern is a number; none where they said light. */
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
  screened: { says: string; on: number; until: number | null; by: string | null } | null;
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

/** The best set of a movement: whole reps or seconds, with its load. */
interface Best {
  amount: number;
  unit: number;
  load: number;
}

interface WorkingPick {
  movement: number;
  measure: number;
  sets: number;
  /** Whole reps, or seconds of a hold. */
  amount: number;
  /** Seconds of each rep, in millionths. */
  seconds: number;
  unit: number;
  load: number;
  text: string;
  why: string;
  fit: string;
}

interface WorkingPractice {
  movement: number;
  text: string;
  when: 'before' | 'after';
  why: string;
}

interface TrainingPlan {
  weeks: { week: number; lighter: boolean; sessions: { on: string; sets: { movement: number; target: string }[] }[] }[];
  retest: string;
  /** Sets of a usual week by pattern; straight-arm sets apart. */
  volume: Record<string, number>;
  straight_arm: Record<string, number>;
  push: number;
  pull: number;
}

interface WeekLoad {
  total: number;
  monotony: number;
  strain: number;
}

interface Question {
  movement: number;
  today: boolean;
  /** Movements still open to doubt. */
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
  screened?: { says: string; on: string; until?: string; by?: string };
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
    /** The longest that a clearance lasts, in days. */
    A_YEAR: number;
    saysOn: (screened: { says: string; on: number; until: number | null } | null, today: number) => string | null;
  };
  targets: {
    readGot: (text: string) => Got | null;
    text: (got: Got) => string;
    words: (got: Got, units: string, eachSide?: boolean) => string;
    decimal: (micro: number) => string;
    kilograms: (mass: number) => string;
    readMass: (written: string) => number | null;
    ONE: number; KILOGRAM: number;
    REPS: 0; TIME: 1; LENGTH: 2; ANGLE: 3; DONE: 4;
    NO_LOAD: 0; MASS: 1; BODY_WEIGHT: 2;
  };
  readiness: {
    prepare: (tables: Tables) => Model;
    assess: (model: Model, person: Person, today: number) => Assessment;
    evidence: (model: Model, person: Person, today: number) => Evidence;
    presume: (model: Model, owned: number[], isTested: (m: number) => boolean, presumed: Uint8Array, tell?: (leaf: number) => void) => void;
    value: (tree: number[], of: (leaf: number) => number) => number;
    leavesOf: (tree: number[]) => number[];
    sidesText: (tested: Tested, atMost: boolean) => string;
    verdict: (tested: Tested, target: Got, bodyWeight: number | null) => number;
    STATES: string[];
    TRUE: 2; UNKNOWN: 1; FALSE: 0; UNTESTED: 3; MEETS: 0; MISSES: 1;
    EACH_SIDE: 1; GUARDED: 2; LOWERING: 8;
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
    today: () => number;
  };
  placement: {
    next: (model: Model, assessment: Assessment, chain: number[], asked: number[], today: number) => Question | null;
    mayBeTested: (model: Model, assessment: Assessment, m: number, today: number) => boolean;
  };
  dose: {
    working: (model: Model, assessment: Assessment, person: Person, list: number[], today: number) => { picks: WorkingPick[]; practice: WorkingPractice[] };
  };
  plan: {
    lay: (model: Model, picks: WorkingPick[], from: number) => TrainingPlan;
    lastWeek: (sessions: { effort: number; minutes: number; on: number }[], today: number) => WeekLoad | null;
    shown: (model: Model, movement: number, target: string) => Node | string;
    items: (model: Model, laid: TrainingPlan) => Node[];
    end: (laid: TrainingPlan) => (Node | string)[];
  };
  search: { find: (typed: string) => number[] };
  store: {
    entries: (kind: string) => Kept[];
    add: (kind: string, entry: object) => string;
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
    namedList: (tables: Tables, list: number[]) => (Node | string | null)[];
    byId: (id: string) => HTMLElement;
    download: (name: string, content: string, type: string) => void;
    ask: (title: string, inside: (Node | string)[], choices: [string, string][]) => Promise<string | null>;
    drawHealth: () => void;
    units: { ofSchool: string; ofOther: string; current: () => string; onChange: (act: () => void) => void };
  };
  states: {
    model: Model | null;
    mine: () => Stand | null;
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
    barred: () => '' | 'first' | 'ask';
    causeWords: (cause: Pause) => (Node | string)[];
    asideGot: (got: string) => PagePart | PagePart[];
    /** How a cause is lifted; null where its own list has a button for it. */
    liftedBy: (cause: Pause) => string | null;
  };
  entry: {
    form: (m: number, options: { today: boolean; kept: (key: string) => void; hurt: () => void }) => HTMLElement;
    hurt: (m: number, where?: 'test' | 'training') => Promise<boolean>;
    /** Whether a number is more likely a slip than a result, and whether the reader means it all the same. */
    doubtful: (model: Model, m: number, got: Got) => boolean;
    isMeant: (m: number, got: Got) => Promise<boolean>;
  };
}

declare var rungbook: Rungbook;
/** Kind, address, name, signal, what the mark says, where it leads, other names, everything else. */
type SearchEntry = [string, string, string, string, string, string, string[], string];

declare var rungbookSearch: SearchEntry[] | undefined;
declare var rungbookTables: Tables | undefined;
declare var rungbookOffline: { site: string; version: string; shell: string[] };
declare var rungbookWords: Record<string, string | Record<string, string>> | undefined;
/** The language where there is no page. */
declare var rungbookLanguage: string | undefined;
