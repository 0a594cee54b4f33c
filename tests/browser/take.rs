//! Taking in a copy: what may be another person's is asked about, and what is not taken changes nothing.

use super::webdriver::Browser;
use super::{disk, site};
use serde_json::{Value, json};
use std::fs;
use std::path::Path;

const KEPT: &str = "return [rungbook.store.get('about'), rungbook.store.all()]";

fn keep(browser: &Browser, export: &Value) {
    browser.run(
        "rungbook.store.replace(rungbook.results.check(arguments[0], rungbook.results.today()))",
        &json!([export]),
    );
}

/// Offers a copy to the page and gives back the title of what it asks; nothing where it took the copy in, or refused it.
fn offer(browser: &Browser, folder: &Path, export: &Value) -> String {
    let file = folder.join("copy.json");
    fs::write(&file, export.to_string()).expect("a copy");
    browser.run(
        "document.getElementById('take-says').textContent = ''",
        &json!([]),
    );
    browser.upload(&browser.find("#open"), &file);
    browser.wait_until(
        "document.querySelector('dialog[open]') || document.getElementById('take-says').textContent !== ''",
    );
    let title = "const asked = document.querySelector('dialog[open] h2'); return asked ? asked.textContent : ''";
    browser
        .run(title, &json!([]))
        .as_str()
        .expect("text")
        .to_string()
}

fn choose(browser: &Browser, value: &str) {
    browser.run(
        "document.querySelector(`dialog[open] button[value='${arguments[0]}']`).click()",
        &json!([value]),
    );
    browser.wait_until("document.querySelector('dialog[open]') || document.getElementById('take-says').textContent !== ''");
}

fn test(got: &str, on: &str) -> Value {
    json!({ "movement": "squat", "got": got, "on": on })
}

#[test]
fn another_persons_copy_is_asked_about() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.open(&format!("{}where-i-stand.html", disk(&site())));
    let folder = tempfile::tempdir().expect("a folder");
    let kept = || browser.run(KEPT, &json!([]));
    let of = |name: Option<&str>, tested: Value| {
        let mut out = json!({ "results": 1, "bodyweight": "70 kg", "tested": tested, "trained": [], "paused": [] });
        if let Some(name) = name {
            out["name"] = json!(name);
        }
        out
    };
    let (first, second, other) = (
        test("5 reps", "2026-11-02"),
        test("7 reps", "2026-11-09"),
        test("9 reps", "2026-11-02"),
    );
    let mine = of(Some("Ada"), json!([first, second]));
    let whose = "Whose numbers are these?";
    // What is here already, and what holds all that is here, comes in unasked.
    for (here, copy) in [
        (&mine, of(Some("Ada"), json!([first]))),
        (&of(Some("Ada"), json!([first])), mine.clone()),
        (&of(None, json!([])), mine.clone()),
    ] {
        keep(&browser, here);
        assert_eq!(offer(&browser, folder.path(), &copy), "", "{copy}");
    }
    for (here, copy, says) in [
        (&mine, of(Some("Ben"), json!([first, second])), "is of Ben"),
        (
            &of(None, json!([first])),
            of(Some("Ben"), json!([first])),
            "bear no name",
        ),
        (
            &mine,
            of(Some("Ada"), json!([other, second])),
            "1 test in the copy has another result here",
        ),
        (
            &of(None, json!([first])),
            of(None, json!([second])),
            "only in the copy: 1; only here: 1",
        ),
    ] {
        keep(&browser, here);
        browser.run(
            "rungbook.store.put('screened', { says: 'clear', on: '2026-11-02' })",
            &json!([]),
        );
        let before = kept();
        assert_eq!(offer(&browser, folder.path(), &copy), whose, "{copy}");
        let asked = browser.run(
            "return document.querySelector('dialog[open]').textContent",
            &json!([]),
        );
        assert!(asked.as_str().is_some_and(|t| t.contains(says)), "{asked}");
        choose(&browser, "");
        assert_eq!(kept(), before, "cancelled: {copy}");
        // Escape is a way to say no.
        assert_eq!(offer(&browser, folder.path(), &copy), whose);
        browser.run("document.querySelector('dialog[open]').close()", &json!([]));
        browser.wait_until(
            "document.getElementById('take-says').textContent.includes('Nothing was changed')",
        );
        assert_eq!(kept(), before, "escaped: {copy}");

        offer(&browser, folder.path(), &copy);
        choose(&browser, "merge");
        let both = kept();
        assert_eq!(
            both[0]["name"],
            before[0]
                .get("name")
                .or(copy.get("name"))
                .cloned()
                .unwrap_or_default()
        );
        for entry in before[1]["tested"]
            .as_array()
            .into_iter()
            .chain(copy["tested"].as_array())
            .flatten()
        {
            assert!(
                both[1]["tested"]
                    .as_array()
                    .is_some_and(|all| all.contains(entry)),
                "{entry}"
            );
        }

        keep(&browser, here);
        browser.run(
            "rungbook.store.put('screened', { says: 'clear', on: '2026-11-02' })",
            &json!([]),
        );
        offer(&browser, folder.path(), &copy);
        choose(&browser, "replace");
        assert_eq!(kept()[1], copy, "the copy alone");
        let screening = browser.run("return rungbook.store.get('screened')", &json!([]));
        assert_eq!(
            screening,
            Value::Null,
            "nobody's answers to the health questions"
        );
    }
    // One's own copy with another body weight: which one counts; or nothing.
    keep(&browser, &mine);
    let mut heavier = mine.clone();
    heavier["bodyweight"] = json!("72 kg");
    for (choice, weight) in [("", "70 kg"), ("mine", "70 kg"), ("theirs", "72 kg")] {
        assert_eq!(offer(&browser, folder.path(), &heavier), "Two body weights");
        choose(&browser, choice);
        assert_eq!(kept()[0]["bodyweight"], weight);
    }
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

#[test]
fn an_unknown_key_is_refused_and_a_set_in_another_measure_is_said() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.open(&format!("{}where-i-stand.html", disk(&site())));
    let folder = tempfile::tempdir().expect("a folder");
    keep(
        &browser,
        &json!({ "results": 1, "tested": [test("5 reps", "2026-11-02")] }),
    );
    let before = browser.run(KEPT, &json!([]));
    let odd = json!({ "results": 1, "tested": [{ "movement": "squat", "got": "5 reps", "goot": "6 reps" }] });
    assert_eq!(offer(&browser, folder.path(), &odd), "");
    let notice = browser.run(
        "return document.getElementById('take-says').textContent",
        &json!([]),
    );
    assert!(
        notice.as_str().is_some_and(|t| t.contains("“goot”")),
        "{notice}"
    );
    assert_eq!(browser.run(KEPT, &json!([])), before, "nothing changed");

    let held = json!({ "results": 1, "tested": [test("5 reps", "2026-11-02")], "trained": [{ "movement": "squat", "did": ["20 s"], "on": "2026-11-02" }] });
    assert_eq!(offer(&browser, folder.path(), &held), "");
    let aside = browser.run(
        "const of = document.getElementById('aside'); return of.hidden ? '' : of.textContent",
        &json!([]),
    );
    assert!(
        aside
            .as_str()
            .is_some_and(|t| t.contains("20") && t.contains("another thing")),
        "{aside}"
    );
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// YAML and a table are taken in as JSON is; what reads them is loaded only then. Of several people the one of the name that stands
/// on the page is taken, and nobody where none has it.
#[test]
fn yaml_and_tables_are_taken_in() {
    let Some(browser) = Browser::start() else {
        return;
    };
    let folder = tempfile::tempdir().expect("a folder");
    browser.open(&format!("{}where-i-stand.html", disk(&site())));
    let is_loaded = "return Boolean(rungbook.class) || document.querySelectorAll('script[src*=\"class.js\"]').length > 0";
    assert_eq!(browser.run(is_loaded, &json!([])), json!(false));
    let take = |name: &str, text: &str| -> (String, Value) {
        browser.run(
            "rungbook.store.erase(); document.getElementById('take-says').textContent = ''",
            &json!([]),
        );
        if name.ends_with("named.csv") {
            browser.run("rungbook.store.put('name', 'Ben')", &json!([]));
        }
        let file = folder.path().join(name);
        fs::write(&file, text).expect("a copy");
        browser.upload(&browser.find("#open"), &file);
        browser.wait_until("document.querySelector('dialog[open]') || document.getElementById('take-says').textContent !== ''");
        let asked = browser.run(
            "return Boolean(document.querySelector('dialog[open]'))",
            &json!([]),
        );
        if asked == json!(true) {
            choose(&browser, "merge");
        }
        let said = browser.run(
            "return document.getElementById('take-says').textContent",
            &json!([]),
        );
        let kept = browser.run(
            "return rungbook.store.all().tested.map(t => [t.movement, t.got, t.on])",
            &json!([]),
        );
        (said.as_str().expect("text").to_string(), kept)
    };
    let yaml =
        "results: 1\nname: Ana\ntested:\n  - { movement: squat, got: 9 reps, on: 2026-11-02 }\n";
    assert_eq!(
        take("a.yaml", yaml).1,
        json!([["squat", "9 reps", "2026-11-02"]])
    );
    assert_eq!(browser.run(is_loaded, &json!([])), json!(true));
    let one = "name;movement;got;on\nAna;squat;9 reps;2026-11-02\n";
    assert_eq!(
        take("a.csv", one).1,
        json!([["squat", "9 reps", "2026-11-02"]])
    );
    let two = "name,movement,got,on\nAna,squat,9 reps,2026-11-02\nBen,squat,4 reps,2026-11-03\n";
    let (said, kept) = take("two.csv", two);
    assert_eq!(kept, json!([]), "{said}");
    assert!(said.contains("2 people are in the file"), "{said}");
    assert_eq!(
        take("named.csv", two).1,
        json!([["squat", "4 reps", "2026-11-03"]])
    );
    let (said, kept) = take("odd.yaml", "results: 1\nname: &a Ana\n");
    assert_eq!(kept, json!([]));
    assert!(said.contains("line 2"), "{said}");
    assert_eq!(browser.complaints(), Vec::<String>::new());
}

/// What rests here rests there: a copy of a day with 5, 2 and 5, and of one with a sign, taken in where nothing is yet.
#[test]
fn a_copy_keeps_what_rests() {
    let Some(browser) = Browser::start() else {
        return;
    };
    browser.open(&format!("{}where-i-stand.html", disk(&site())));
    let folder = tempfile::tempdir().expect("a folder");
    let on = browser.run(
        "return rungbook.results.dayText(rungbook.results.today())",
        &json!([]),
    );
    let pain = |score: u32, signs: &[&str]| {
        let mut out = json!({ "part": "shoulder", "score": score, "on": on });
        if !signs.is_empty() {
            out["signs"] = json!(signs);
        }
        out
    };
    let rests = "return document.getElementById('rests').hidden ? '' : document.getElementById('rests-list').textContent";
    for (pains, says) in [
        (vec![pain(5, &[]), pain(2, &[]), pain(5, &[])], "5 of 10"),
        (
            vec![pain(8, &["numb"]), pain(1, &[]), pain(8, &["numb"])],
            "clinician",
        ),
    ] {
        browser.run("rungbook.store.erase(); rungbook.store.add('tested', { movement: 'squat', got: '9 reps', on: arguments[0] })", &json!([on]));
        for of in &pains {
            browser.run("rungbook.store.add('pain', arguments[0])", &json!([of]));
        }
        let copy = browser.run("return rungbook.store.all()", &json!([]));
        browser.run("rungbook.store.erase()", &json!([]));
        assert_eq!(offer(&browser, folder.path(), &copy), "");
        assert_eq!(browser.run(KEPT, &json!([]))[1], copy);
        let said = browser.run(
            "return document.getElementById('take-says').textContent",
            &json!([]),
        );
        assert_eq!(said, "4 entries taken in.");
        browser.wait_until(&format!("(() => {{ {rests} }})() !== ''"));
        let said = browser.run(rests, &json!([]));
        assert!(
            said.as_str()
                .is_some_and(|t| t.contains("houlder") && t.contains(says)),
            "{said}"
        );
    }
    // A copy of the same day with a lower number, made elsewhere: the higher one stands, and no
    // lower one of that day lifts it.
    browser.run("rungbook.store.erase()", &json!([]));
    browser.run(
        "rungbook.store.add('pain', arguments[0])",
        &json!([pain(7, &[])]),
    );
    let copy =
        json!({ "results": 1, "tested": [], "trained": [], "paused": [], "pain": [pain(1, &[])] });
    assert_eq!(
        offer(&browser, folder.path(), &copy),
        "Whose numbers are these?"
    );
    choose(&browser, "merge");
    let held =
        "return rungbook.states.mine().found.causes.filter(({ kind }) => kind === 'pain').length";
    assert_eq!(browser.run(held, &json!([])), 1);
    browser.run(
        "rungbook.store.add('pain', arguments[0])",
        &json!([pain(1, &[])]),
    );
    assert_eq!(browser.run(held, &json!([])), 1);
    browser.run(
        "rungbook.store.add('pain', { ...arguments[0], score: 5, on: rungbook.results.dayText(rungbook.results.today() - 1) })",
        &json!([pain(1, &[])]),
    );
    assert_eq!(browser.run(held, &json!([])), 1);
    browser.run(
        r"
        const { store } = rungbook;
        store.entries('pain').filter(({ entry }) => entry.score === 7).forEach(({ key }) => store.remove(key));",
        &json!([]),
    );
    assert_eq!(browser.run(held, &json!([])), 0, "taken back");
}
