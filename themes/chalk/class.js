'use strict';
// Copies of several people, as the program reads them: JSON, a table of a class (comma, semicolon or tab), and YAML as results files
// are written; what else YAML has is refused with its line. No page, no storage, no clock.
(() => {
  const { results } = globalThis.rungbook;
  const { Refused } = results;
  const { say } = globalThis.rungbook.words;
  const COLUMNS = ['name', 'movement', 'got', 'left', 'right', 'on', 'in_reserve', 'bodyweight', 'with', 'paused', 'until', 'born', 'goal'];
  const MOST_PEOPLE = globalThis.rungbook.health.LIMITS.class;

  // ---- a table

  /** What the first row has most of, outside quotes. @param {string} text */
  const partedBy = (text) => {
    const outside = text.split(/\r?\n/, 1)[0].split('"').filter((_, i) => i % 2 === 0).join('');
    const count = (/** @type {string} */ mark) => outside.split(mark).length;
    return [',', ';', '\t'].reduce((best, mark) => (count(mark) > count(best) ? mark : best));
  };
  /** Cells of every row, with its line; texts in double quotes may hold anything. @param {string} text @returns {{ cells: string[], line: number }[]} */
  const rowsOf = (text) => {
    const mark = partedBy(text);
    /** @type {{ cells: string[], line: number }[]} */
    const rows = [];
    let cells = /** @type {string[]} */ ([]), cell = '', isQuoted = false, line = 1, begins = 1;
    const endRow = () => {
      cells.push(cell.trim());
      if (cells.some((of) => of !== '')) rows.push({ cells, line: begins });
      [cells, cell] = [[], ''];
    };
    for (let i = 0; i < text.length; i += 1) {
      const letter = text[i];
      if (isQuoted) {
        if (letter === '"' && text[i + 1] === '"') { cell += '"'; i += 1; }
        else if (letter === '"') isQuoted = false;
        else cell += letter;
      } else if (letter === '"' && cell.trim() === '') [cell, isQuoted] = ['', true];
      else if (letter === mark) { cells.push(cell.trim()); cell = ''; }
      else if (letter === '\n' || letter === '\r') { endRow(); begins = line + (letter === '\n' ? 1 : 0); }
      else cell += letter;
      if (letter === '\n') line += 1;
    }
    endRow();
    return rows;
  };
  /** @param {string} a @param {string} b */
  const distance = (a, b) => {
    let row = [...Array(b.length + 1).keys()];
    for (let i = 1; i <= a.length; i += 1) row = row.reduce((/** @type {number[]} */ next, above, j) => [...next, j === 0 ? i : Math.min(above + 1, next[j - 1] + 1, row[j - 1] + (a[i - 1] === b[j - 1] ? 0 : 1))], []);
    return row[b.length];
  };
  /** @param {string} word */
  const nearest = (word) => COLUMNS.map((of) => ({ of, far: distance(word, of) })).sort((a, b) => a.far - b.far)[0];
  /** People of a table, each as an export; rows of one name are one person. @param {string} text @param {number} day @param {Model} model @returns {{ copies: Exported[], notes: string[] }} */
  const readTable = (text, day, model) => {
    const [head, ...rows] = rowsOf(text);
    /** @type {string[]} */
    const notes = [];
    const columns = (head ? head.cells : []).map((word) => word.toLowerCase());
    for (const word of columns.filter((of) => !COLUMNS.includes(of))) {
      const { of, far } = nearest(word);
      notes.push(far <= 2 ? say('class.column_like', { column: word, like: of }) : say('class.column', { column: word, list: COLUMNS.join(', ') }));
    }
    for (const name of ['name', 'movement', ...(columns.includes('left') && columns.includes('right') ? [] : ['got'])]) {
      if (!columns.includes(name)) throw new Refused(say('class.no_column', { column: name }));
    }
    /** @type {Map<string, { copy: any, weighed: string }>} */
    const people = new Map();
    for (const { cells, line } of rows) {
      const cell = (/** @type {string} */ name) => { const at = columns.indexOf(name); return at < 0 || !cells[at] ? undefined : cells[at]; };
      const note = (/** @type {string} */ why) => notes.push(say('class.row', { line, why }));
      const name = cell('name'), movement = cell('movement'), isResult = ['got', 'left', 'right'].some((of) => cell(of) !== undefined);
      const isOfPerson = ['bodyweight', 'paused', 'born', 'goal'].some((of) => cell(of) !== undefined);
      if (name === undefined || isResult !== (movement !== undefined) || !(isResult || isOfPerson)) {
        note(say('class.row_needs'));
        continue;
      }
      if (!people.has(name) && people.size >= MOST_PEOPLE) throw new Refused(say('class.crowded', { n: MOST_PEOPLE }));
      const known = people.get(name) || { copy: { results: 1, name, tested: [], trained: [], paused: [] }, weighed: '' };
      const copy = { ...known.copy, tested: [...known.copy.tested], paused: [...known.copy.paused] };
      const on = cell('on'), load = cell('with'), given = (/** @type {string} */ key, /** @type {string | undefined} */ value) => (value === undefined ? {} : { [key]: value });
      const loaded = (/** @type {string | undefined} */ got) => (got === undefined || load === undefined ? got : `${got} with ${load}`);
      if (isResult) copy.tested.push({ movement, ...given('got', loaded(cell('got'))), ...given('left', loaded(cell('left'))), ...given('right', loaded(cell('right'))), ...given('on', on), ...given('in_reserve', cell('in_reserve')), ...given('bodyweight', cell('bodyweight')) });
      const what = cell('paused');
      if (what !== undefined) {
        const { tables } = model, key = tables.parts.includes(what) ? 'part' : tables.classes.includes(what) ? 'class' : tables.patterns.includes(what) ? 'pattern' : 'movement';
        copy.paused.push({ [key]: what, ...given('on', on), ...given('until', cell('until')) });
      }
      if (cell('born') !== undefined) {
        if (copy.born !== undefined && copy.born !== cell('born')) note(say('class.two_births', { name, one: copy.born, other: String(cell('born')) }));
        copy.born = cell('born');
      }
      if (cell('goal') !== undefined) copy.goal = cell('goal');
      const when = results.readDay(on) === null ? results.dayText(day) : String(on);
      const isNewer = cell('bodyweight') !== undefined && known.weighed <= when;
      if (isNewer) copy.bodyweight = cell('bodyweight');
      try {
        results.check(copy, day);
        people.set(name, { copy, weighed: isNewer ? when : known.weighed });
      } catch (error) {
        if (!(error instanceof Refused)) throw error;
        note(error.message);
      }
    }
    return { copies: [...people.values()].map(({ copy }) => results.check(copy, day)), notes };
  };

  // ---- YAML, as results files are written

  /** A line without its comment. @param {string} line */
  const bare = (line) => {
    let quote = '';
    for (let i = 0; i < line.length; i += 1) {
      const letter = line[i];
      if (quote) quote = letter === quote ? '' : quote;
      else if ((letter === '"' || letter === "'") && /[\s[{,:-]$/.test(line.slice(0, i) || ' ')) quote = letter;
      else if (letter === '#' && (i === 0 || /\s/.test(line[i - 1]))) return line.slice(0, i).trimEnd();
    }
    return line.trimEnd();
  };
  /** @param {number} line @returns {never} */
  const unlike = (line) => { throw new Refused(say('class.not_plain', { line })); };
  /** One value: a text, a list or a record on one line. @param {string} text @param {number} line @returns {any} */
  const valueOf = (text, line) => {
    let at = 0;
    const skip = () => { while (/\s/.test(text[at] || '')) at += 1; };
    /** @param {boolean} isInside @returns {any} */
    const one = (isInside) => {
      skip();
      const first = text[at];
      if (first === '[' || first === '{') {
        at += 1;
        /** @type {any[]} */
        const items = [];
        for (skip(); text[at] !== (first === '[' ? ']' : '}'); skip()) {
          if (at >= text.length) unlike(line);
          if (first === '[') items.push(one(true));
          else {
            const key = /^([A-Za-z_]+)\s*:(?=\s)/.exec(text.slice(at));
            if (!key || items.some(([known]) => known === key[1])) return unlike(line);
            at += key[0].length;
            items.push([key[1], one(true)]);
          }
          skip();
          if (text[at] === ',') at += 1;
          else if (text[at] !== (first === '[' ? ']' : '}')) unlike(line);
        }
        at += 1;
        return first === '[' ? items : Object.fromEntries(items);
      }
      const quoted = first === '"' ? /^"([^"\\]*)"/.exec(text.slice(at)) : first === "'" ? /^'((?:[^']|'')*)'/.exec(text.slice(at)) : null;
      if (quoted) {
        at += quoted[0].length;
        return first === "'" ? quoted[1].replace(/''/g, "'") : quoted[1];
      }
      const plain = (isInside ? /^[^,[\]{}]*/ : /^.*/).exec(text.slice(at));
      const said = (plain ? plain[0] : '').trim();
      if (/^[&*!|>%@\x60"'?]/.test(said) || /:(\s|$)/.test(said)) unlike(line);
      at += plain ? plain[0].length : 0;
      return said === '' || said === '~' || said === 'null' ? null : said;
    };
    const out = one(false);
    skip();
    return at < text.length ? unlike(line) : out;
  };
  /** A record of keys at one depth; its lists are dashes with records or texts. @param {string} text */
  const readPlain = (text) => {
    const lines = text.split(/\r?\n/).map((line, i) => ({ text: bare(line), line: i + 1 })).filter(({ text: of }) => of.trim() !== '' && of !== '---');
    for (const { text: of, line } of lines) if (/^\s*\t/.test(of)) unlike(line);
    const depth = (/** @type {number} */ i) => (i < lines.length ? lines[i].text.length - lines[i].text.trimStart().length : -1);
    let at = 0;
    const keyOf = (/** @type {string} */ of) => /^([A-Za-z_]+)\s*:(?:\s+(.*))?$/.exec(of.trim());
    /** @param {number} column @returns {any} */
    const block = (column) => (lines[at].text.trimStart().startsWith('-') ? list(column) : record(column));
    /** @param {number} column @returns {any[]} */
    const list = (column) => {
      const out = [];
      while (depth(at) === column && /^-(\s|$)/.test(lines[at].text.trimStart())) {
        const { text: of, line } = lines[at], inner = of.trimStart().slice(1), item = inner.trimStart();
        if (!item) {
          at += 1;
          if (depth(at) <= column) unlike(line);
          out.push(block(depth(at)));
        } else if (!/^[[{"']/.test(item) && keyOf(item)) {
          lines[at] = { text: ' '.repeat(column + 1 + inner.length - item.length) + item, line };
          out.push(record(depth(at)));
        } else {
          at += 1;
          out.push(valueOf(item, line));
        }
      }
      return out;
    };
    /** @param {number} column @returns {Record<string, any>} */
    const record = (column) => {
      /** @type {Record<string, any>} */
      const out = {};
      while (depth(at) === column && !lines[at].text.trimStart().startsWith('- ')) {
        const { text: of, line } = lines[at], read = keyOf(of);
        if (!read || Object.hasOwn(out, read[1])) return unlike(line);
        at += 1;
        const isList = at < lines.length && /^-(\s|$)/.test(lines[at].text.trimStart());
        out[read[1]] = read[2] ? valueOf(read[2], line) : depth(at) > column || (depth(at) === column && isList) ? block(depth(at)) : null;
      }
      return out;
    };
    const out = lines.length ? record(depth(0)) : {};
    return at < lines.length ? unlike(lines[at].line) : out;
  };

  /** The people of one file, by the ending of its name. @param {string} name @param {string} written @param {number} day @param {Model} model @returns {{ copies: Exported[], notes: string[] }} */
  const read = (name, written, day, model) => {
    if (written.length > results.LARGEST_FILE) throw new Refused(say('results.too_large'));
    const text = written.replace(/^\ufeff/, '');
    if (/\.csv$/i.test(name)) return readTable(text, day, model);
    if (/\.ya?ml$/i.test(name) && !/^\s*\{/.test(text)) return { copies: [results.check(readPlain(text), day)], notes: [] };
    return { copies: [results.readFile(text, day)], notes: [] };
  };
  globalThis.rungbook.class = { read, readPlain };
})();
