//! My people against `assess`: the same class table and the same list of what everyone may train, from the same exports.

use super::webdriver::Browser;
use super::{disk, root, site, texts};
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::PathBuf;
use std::process::Command;

/// The class as the page shows it: names, each movement with everyone's state (and whether it is marked as counted from
/// another), what everyone may train, and how many entries are kept aside.
const CLASS: &str = r"
    const { readiness, states } = rungbook, table = document.getElementById('class-table');
    const words = new Map(readiness.STATES.map((state, i) => [state, states.stateWord(i)]));
    const cell = td => { const of = td.querySelector('.state'); return [of.dataset.state, of.dataset.sore === undefined && of.textContent.trim() !== words.get(of.dataset.state)]; };
    return {
        names: [...table.querySelectorAll('thead th')].slice(1).map(th => th.textContent),
        rows: [...table.querySelectorAll('tbody tr')].map(tr => [tr.dataset.movement, ...[...tr.querySelectorAll('td')].map(cell)]),
        everyone: [...document.querySelectorAll('#everyone [data-movement]')].map(e => e.dataset.movement),
        aside: document.querySelectorAll('#class-aside li').length,
        sore: [...table.querySelectorAll('td')].filter(td => td.querySelector('[data-sore], small')).map(td => [td.querySelector('.state').dataset.state, td.textContent.trim()]),
        together: [...document.querySelectorAll('#together ul')].map(ul => [...ul.querySelectorAll('li')].map(li =>
            [[...li.querySelectorAll('[data-movement]')].map(e => e.dataset.movement), li.textContent])),
    };";

/// What the exports are made of, from the page's own tables.
struct Stock {
    ids: Vec<String>,
    standards: Vec<String>,
    sided: Vec<bool>,
    /// The day that the page takes for today.
    today: String,
    days: Vec<String>,
}

impl Stock {
    fn of(browser: &Browser) -> Stock {
        let found = browser.run(
            r"
            const { results, readiness, states: { model } } = rungbook, t = model.tables, today = results.today();
            return {
                ids: t.ids, standards: t.ids.map((_, m) => t.target_text[t.leaves[2 * m + 1]]),
                sided: t.ids.map((_, m) => model.is(m, readiness.EACH_SIDE)),
                days: [0, 1, 5, 30, 400, -2].map(ago => results.dayText(today - ago)),
            };",
            &json!([]),
        );
        let days = texts(&found["days"]);
        Stock {
            ids: texts(&found["ids"]),
            standards: texts(&found["standards"]),
            sided: found["sided"]
                .as_array()
                .into_iter()
                .flatten()
                .map(|s| s == true)
                .collect(),
            today: days[0].clone(),
            days,
        }
    }

    /// One person's export.
    fn export(&self, name: &str, roll: &mut impl FnMut(u64) -> u64) -> Value {
        let able = 1 + roll(8);
        let mut tested = Vec::new();
        for (i, id) in self.ids.iter().enumerate() {
            if roll(10) >= able {
                continue;
            }
            let target = self.standards[i]
                .replace("at most ", "")
                .replace(" each side", "");
            let mut got = || match roll(4) {
                0 => target.replacen(|c: char| c.is_ascii_digit(), "1", 1),
                _ => target.clone(),
            };
            let mut entry = match self.sided[i] {
                true => json!({ "movement": id, "left": got(), "right": got() }),
                false => json!({ "movement": id, "got": got() }),
            };
            entry["on"] = json!(self.days[roll(8).saturating_sub(3) as usize]);
            if roll(8) == 0 {
                entry["in_reserve"] = json!(2);
            }
            if roll(8) == 0 {
                entry["bodyweight"] = json!("150 lb");
            }
            tested.push(entry);
        }
        tested
            .push(json!({ "movement": "nothing-of-the-kind", "got": "5 reps", "on": self.today }));
        let paused = match roll(3) {
            0 => json!([{ "part": "shoulder", "on": self.today, "by": "client" }]),
            1 => {
                json!([{ "movement": self.ids[roll(self.ids.len() as u64) as usize], "on": self.days[2], "until": self.today }])
            }
            _ => json!([]),
        };
        let pain = match roll(3) {
            0 => json!([{ "part": "shoulder", "score": 4, "on": self.today }]),
            _ => json!([]),
        };
        let mut out = json!({ "results": 1, "name": name, "bodyweight": "70 kg", "tested": tested, "trained": [], "paused": paused, "pain": pain });
        if roll(20) > 0 {
            out["screened"] = json!({ "says": "clear", "on": self.today });
        }
        out
    }
}

fn assess(files: &[PathBuf], today: &str, skill: Option<&str>) -> Value {
    let mut command = Command::new(env!("CARGO_BIN_EXE_rungbook"));
    command
        .args(["assess", "--as", "json", "--today", today, "--from"])
        .arg(root())
        .args(files);
    if let Some(skill) = skill {
        command.args(["--skill", skill]);
    }
    let out = command.output().expect("the program runs");
    let said = String::from_utf8_lossy(&out.stderr);
    assert!(out.status.success(), "{said}");
    serde_json::from_slice(&out.stdout).expect("an answer")
}

/// Fails where the page and the program differ; counts the states.
fn compare(page: &Value, program: &Value, states: &mut BTreeMap<String, usize>) {
    let people = program["people"].as_array().expect("people");
    let names: Vec<&Value> = people.iter().map(|p| &p["name"]).collect();
    assert_eq!(json!(names), page["names"], "the same people");
    assert_eq!(
        program["everyone"], page["everyone"],
        "what everyone may train"
    );
    let aside: usize = people
        .iter()
        .map(|p| p["aside"].as_array().map_or(0, Vec::len))
        .sum();
    assert_eq!(json!(aside), page["aside"], "kept aside");
    let rows = page["rows"].as_array().expect("rows");
    let shown: BTreeSet<&str> = rows.iter().filter_map(|row| row[0].as_str()).collect();
    for (at, person) in people.iter().enumerate() {
        let movements = person["movements"].as_object().expect("movements");
        let ours: BTreeSet<&str> = movements.keys().map(String::as_str).collect();
        assert_eq!(ours, shown, "the same movements");
        for row in rows {
            let id = row[0].as_str().expect("an id");
            let ours = json!([movements[id]["state"], movements[id]["presumed"]]);
            assert_eq!(ours, row[at + 1], "{} {id}", person["name"]);
            let state = row[at + 1][0].as_str().expect("a state");
            *states.entry(state.to_string()).or_default() += 1;
            if row[at + 1][1] == true {
                *states.entry("presumed".into()).or_default() += 1;
            }
        }
    }
}

/// The three tables on all of them: the movements and the numbers of `assess`.
fn compare_tables(page: &Value, program: &Value) -> usize {
    let class = &program["class"];
    let lists = [
        (&class["held_back"], "people"),
        (&class["together"], ""),
        (&class["tests"], "decides"),
    ];
    let mut lines = 0;
    for (shown, (list, number)) in lines_of(page).iter().zip(lists) {
        let all: Vec<&Value> = list.as_array().expect("a list").iter().take(5).collect();
        let shown: Vec<&Value> = shown
            .iter()
            .filter(|l| l[0] != json!([]))
            .copied()
            .collect();
        assert_eq!(all.len(), shown.len(), "{list} {shown:?}");
        for (ours, line) in all.iter().zip(shown) {
            let text = line[1].as_str().expect("text");
            let n = match &ours[number] {
                Value::Array(people) => people.len().to_string(),
                n => n.to_string(),
            };
            match ours["movement"].is_string() {
                true => {
                    assert_eq!(json!([ours["movement"]]), line[0], "{text}");
                    assert!(text.contains(&format!(" {n} ")), "{n}: {text}");
                }
                // Of many movements the first are named.
                false => assert!(
                    texts(&ours["movements"]).starts_with(&texts(&line[0])),
                    "{ours} {text}"
                ),
            }
            lines += 1;
        }
    }
    lines
}

fn lines_of(page: &Value) -> Vec<Vec<&Value>> {
    let tables = page["together"].as_array().expect("tables");
    assert_eq!(tables.len(), 3);
    tables
        .iter()
        .map(|t| t.as_array().into_iter().flatten().collect())
        .collect()
}

fn open(browser: &Browser, files: &[PathBuf]) {
    for file in files {
        browser.upload(&browser.find("#open"), file);
    }
    let shown = format!(
        "document.querySelectorAll('#class-table thead th').length === {}",
        files.len() + 1
    );
    browser.wait_until(&shown);
}

#[test]
fn my_people_is_the_class_of_assess() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.open(&format!("{}my-people.html", disk(&site())));
    let stock = Stock::of(&browser);
    let mut dice = 20_261_125_u64;
    let mut roll = |below: u64| {
        dice ^= dice << 13;
        dice ^= dice >> 7;
        dice ^= dice << 17;
        dice % below
    };
    let folder = tempfile::tempdir().expect("a folder");
    let mut states = BTreeMap::new();
    let mut lists = BTreeSet::new();
    let mut lines = 0;
    let mut sore = BTreeSet::new();
    for (class, people) in [2, 3, 5, 6].into_iter().enumerate() {
        let files: Vec<PathBuf> = (0..people)
            .map(|i| {
                let name = format!("c{class}{i}");
                let file = folder.path().join(format!("{name}.json"));
                let export = stock.export(&name, &mut roll);
                fs::write(&file, export.to_string()).expect("an export");
                file
            })
            .collect();
        open(&browser, &files);
        let program = assess(&files, &stock.today, None);
        let page = browser.run(CLASS, &json!([]));
        compare(&page, &program, &mut states);
        lines += compare_tables(&page, &program);
        // What bears on a part that hurts is called neither open nor to be tested: one true word.
        for cell in page["sore"].as_array().expect("cells") {
            let (state, said) = (&cell[0], cell[1].as_str().expect("text"));
            let plain = *state == "open" || *state == "test first";
            assert!(plain || said.starts_with("owned"), "{cell}");
            assert!(!plain || said.ends_with("shoulder"), "{cell}");
            assert!(
                !plain || !(said.contains("open") || said.contains("test")),
                "{cell}"
            );
            sore.insert(state.to_string());
        }
        lists.insert(program["everyone"].to_string());
        let skill = browser.run(
            r"
            const skills = rungbook.states.model.tables.skills, at = arguments[0] % skills.length, choice = document.getElementById('of-skill');
            choice.value = String(at);
            choice.dispatchEvent(new Event('change'));
            return skills[at].id;",
            &json!([class]),
        );
        let program = assess(&files, &stock.today, skill.as_str());
        compare(&browser.run(CLASS, &json!([])), &program, &mut states);
        browser.run(
            "const choice = document.getElementById('of-skill'); choice.value = ''; choice.dispatchEvent(new Event('change')); document.getElementById('close-all').click()",
            &json!([]),
        );
    }
    assert!(lines > 8, "{lines} lines of the three tables");
    assert_eq!(states.len(), 7, "every state came up: {states:?}");
    assert_eq!(sore.len(), 3, "each came up: {sore:?}");
    assert!(lists.len() > 2, "the classes differ: {lists:?}");
    assert_eq!(browser.complaints(), Vec::<String>::new());
}
