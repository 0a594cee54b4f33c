//! The words of the interface: every one of them comes from a words file; English and Hebrew are complete; targets read alike in
//! the program and in the page's script.

#[path = "words/marked.rs"]
mod marked;
#[path = "words/used.rs"]
mod used;

use html5gum::{Token, Tokenizer};
use proptest::prelude::*;
use proptest::test_runner::{Config, RngAlgorithm, TestRng, TestRunner};
use rungbook::curriculum::Target;
use rungbook::curriculum::words::Units;
use rungbook::site::{self, Theme, before_scripts};
use rungbook::source::{Content, Snapshot, SourceFile};
use rungbook::words::{Entry, Words, shipped};
use serde_json::{Value, json};
use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::io::{BufRead, BufReader, Write};
use std::path::Path;
use std::process::{Command, Stdio};
use std::sync::Arc;

fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// What becomes of a file's text.
type Change<'a> = &'a dyn Fn(&str) -> String;

/// The small Hebrew curriculum, some of its files replaced.
fn snapshot(instead: &[(&str, Change<'_>)], more: &[(&str, String)]) -> Snapshot {
    let folder = root().join("tests/words/he");
    let mut files: Vec<SourceFile> = walkdir::WalkDir::new(&folder)
        .into_iter()
        .map(|e| e.expect("an entry").into_path())
        .filter(|p| p.is_file())
        .map(|p| {
            let path = p
                .strip_prefix(&folder)
                .expect("inside")
                .display()
                .to_string();
            let text = fs::read_to_string(&p).expect("text");
            let changed = instead.iter().find(|(of, _)| *of == path);
            SourceFile {
                content: Content::Text(changed.map_or(text.clone(), |(_, change)| change(&text))),
                path,
            }
        })
        .collect();
    files.extend(more.iter().map(|(path, text)| SourceFile {
        path: (*path).to_string(),
        content: Content::Text(text.clone()),
    }));
    files.sort_by(|a, b| a.path.cmp(&b.path));
    Snapshot::new(files)
}

/// The files of the site of a snapshot that has no finding.
fn published(snapshot: &Snapshot) -> BTreeMap<String, Vec<u8>> {
    let built = site::build(snapshot, &site::Options::default());
    let findings = built.proof().findings.iter();
    let findings: Vec<String> = findings.map(|f| f.message.clone()).collect();
    assert_eq!(findings, Vec::<String>::new());
    let plan = built.renderer().expect("a site");
    (0..plan.len())
        .map(|i| plan.render(i).expect("a file"))
        .map(|file| (file.path, file.bytes))
        .collect()
}

/// The curriculum whose own words are Hebrew and whose interface is marked English: any other Latin letter comes from nowhere.
fn pseudo() -> Snapshot {
    let school: &dyn Fn(&str) -> String = &|text| text.replace("language: he", "language: qps");
    snapshot(
        &[("content/school.yaml", school)],
        &[("content/words/qps.yaml", marked::marked())],
    )
}

/// What stands outside the marks, which nest.
fn outside(text: &str) -> String {
    let mut depth = 0;
    text.chars()
        .filter(|c| {
            depth += i32::from(*c == '⟦') - i32::from(*c == '⟧');
            depth == 0 && *c != '⟧'
        })
        .collect()
}

/// Latin letters that no words file says.
fn is_stray(text: &str) -> bool {
    outside(text).chars().any(|c| c.is_ascii_alphabetic())
}

/// Attributes that people read or hear.
const READ: &[&str] = &[
    "title",
    "aria-label",
    "aria-description",
    "alt",
    "placeholder",
    "data-label",
    "data-other",
];
/// Elements whose text is no language: code, definitions, citations, addresses.
const NO_LANGUAGE: &[&str] = &["script", "style", "pre", "code"];

/// Every text and attribute of a page with letters from nowhere.
fn strays(page: &str) -> Vec<String> {
    let mut out = Vec::new();
    let mut silent: Vec<String> = Vec::new();
    for token in Tokenizer::new(page) {
        match token.expect("infallible") {
            Token::StartTag(tag) => {
                let name = String::from_utf8_lossy(&tag.name).to_string();
                let get = |key: &str| {
                    tag.attributes
                        .iter()
                        .find(|(k, _)| k.as_slice() == key.as_bytes())
                        .map(|(_, v)| String::from_utf8_lossy(&v.value).to_string())
                };
                let of_meta = name == "meta"
                    && (get("name").as_deref() == Some("description")
                        || get("property")
                            .is_some_and(|p| ["og:title", "og:description"].contains(&p.as_str())));
                for key in READ.iter().copied().chain(of_meta.then_some("content")) {
                    out.extend(
                        get(key)
                            .filter(|v| is_stray(v))
                            .map(|v| format!("{key}={v}")),
                    );
                }
                let is_silent = NO_LANGUAGE.contains(&name.as_str())
                    || get("lang").as_deref() == Some("en")
                    || get("class")
                        .is_some_and(|c| ["file", "address", "gone"].contains(&c.as_str()));
                let open = !tag.self_closing
                    && !["meta", "link", "img", "input", "br"].contains(&name.as_str());
                if open && (is_silent || silent.contains(&name)) {
                    silent.push(name);
                }
            }
            Token::EndTag(tag) => {
                let name = String::from_utf8_lossy(&tag.name).to_string();
                if silent.last() == Some(&name) {
                    silent.pop();
                }
            }
            Token::String(text) => {
                let text = String::from_utf8_lossy(&text).to_string();
                if silent.is_empty() && is_stray(&text) {
                    out.push(text);
                }
            }
            _ => {}
        }
    }
    out
}

/// Marks may run over several elements: the text of a page is read with its elements taken away first.
#[test]
fn every_word_of_the_site_comes_from_a_words_file() {
    let site = published(&pseudo());
    let mut faults = Vec::new();
    let mut pages = 0;
    for (path, bytes) in &site {
        let text = String::from_utf8_lossy(bytes);
        if path.ends_with(".html") {
            pages += 1;
            let whole = unmarked_elements(&text);
            faults.extend(strays(&whole).into_iter().map(|s| format!("{path}: {s:?}")));
        }
    }
    for (path, bytes) in site.iter().filter(|(path, _)| path.ends_with(".css")) {
        let text = String::from_utf8_lossy(bytes);
        let said = text
            .split("content: \"")
            .skip(1)
            .filter_map(|t| t.split('"').next());
        // The letter that a notice bears as its sign.
        let stray = said.filter(|s| is_stray(s) && *s != "i");
        faults.extend(stray.map(|s| format!("{path}: {s}")));
    }
    assert!(pages > 35, "{pages} pages");
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    let feed = String::from_utf8_lossy(&site["changes.atom"]);
    for text in ["<title>⟦", "⟦Not medical advice"] {
        assert!(feed.contains(text), "{text} in {feed}");
    }
}

/// The page without what stands between marks, elements included, so that a link inside a text is read as part of it.
fn unmarked_elements(page: &str) -> String {
    outside(page)
}

#[test]
fn a_stray_word_is_seen() {
    assert_eq!(
        strays("<p>⟦a <b>b⟧</b></p>").len(),
        1,
        "a text node of its own"
    );
    assert!(strays(&unmarked_elements("<p>⟦a <b>b</b>⟧ שלום 5</p>")).is_empty());
    assert_eq!(strays("<p title=\"x\">ש</p><pre>code</pre>"), ["title=x"]);
    assert_eq!(strays("<pre>code</pre>and <time>May</time>").len(), 2);
}

/// English and Hebrew have the same keys and placeholders, and every plural form that their language tells apart.
/// What nothing says any more is taken out.
#[test]
fn every_key_of_the_words_is_said_somewhere() {
    let sources = used::Sources::read(root());
    let english = shipped("en").expect("shipped").entries;
    let said = |(key, _): &&(String, Entry)| !sources.use_key(key);
    let unused: Vec<&String> = english.iter().filter(said).map(|(key, _)| key).collect();
    assert!(unused.is_empty(), "{unused:#?}");
    for gone in [
        "dose.close",
        "training.left.abandoned",
        "morning.months_between",
    ] {
        assert!(!sources.use_key(gone), "{gone}");
    }
}

#[test]
fn the_shipped_languages_are_complete() {
    let of = |language: &str| -> BTreeMap<String, Entry> {
        shipped(language)
            .expect("shipped")
            .entries
            .into_iter()
            .collect()
    };
    let (english, hebrew) = (of("en"), of("he"));
    let keys = |of: &BTreeMap<String, Entry>| of.keys().cloned().collect::<BTreeSet<_>>();
    assert_eq!(keys(&english), keys(&hebrew));
    for (key, entry) in &english {
        match (entry, &hebrew[key]) {
            (Entry::Text(_), Entry::Text(_)) => {}
            (Entry::Plural(en), Entry::Plural(he)) => {
                assert_eq!(en.keys().collect::<Vec<_>>(), ["one", "other"], "{key}");
                assert_eq!(
                    he.keys().collect::<Vec<_>>(),
                    ["one", "other", "two"],
                    "{key}"
                );
            }
            _ => panic!("{key} is a plural in one language alone"),
        }
        let same = [
            "results.did_of",
            "list.separator",
            "map.sign_warning",
            "map.sign_caution",
            "map.sign_notice",
        ];
        let letters = |e: &Entry| {
            e.texts()
                .iter()
                .any(|t| t.chars().any(|c| ('א'..='ת').contains(&c)))
        };
        let bare = |e: &Entry| {
            let text = e.texts().join(" ");
            let mut depth = 0;
            !text.chars().any(|c| {
                depth += i32::from(c == '{') - i32::from(c == '}');
                depth == 0 && c.is_alphabetic()
            })
        };
        assert!(
            letters(&hebrew[key])
                || bare(entry)
                || same.contains(&key.as_str())
                || key.starts_with("numbers.hundred"),
            "{key} is not translated"
        );
    }
    // Read as a coach's file each is without a finding: the same keys, placeholders and links.
    for language in ["en", "he"] {
        let text = fs::read_to_string(root().join(format!("themes/chalk/words/{language}.yaml")))
            .expect("the file");
        let school: &dyn Fn(&str) -> String =
            &|text| text.replace("language: he", &format!("language: {language}"));
        published(&snapshot(
            &[("content/school.yaml", school)],
            &[(&format!("content/words/{language}.yaml"), text)],
        ));
    }
}

#[test]
fn the_hebrew_site_is_hebrew_on_every_page() {
    let site = published(&snapshot(&[], &[]));
    for (path, bytes) in site.iter().filter(|(path, _)| path.ends_with(".html")) {
        let text = String::from_utf8_lossy(bytes);
        assert!(text.contains("<html lang=\"he\" dir=\"rtl\""), "{path}");
    }
    let page = String::from_utf8_lossy(&site["weighted-pull-up.html"]).to_string();
    for text in [
        "<bdi data-other=\"3 חזרות עם תוספת של 44.1 ליברות\">3 חזרות עם תוספת של 20 ק״ג</bdi>",
        "אזהרה",
        "זה אינו ייעוץ רפואי.",
    ] {
        assert!(page.contains(text), "{text}");
    }
    let changes = String::from_utf8_lossy(&site["changes.html"]).to_string();
    assert!(
        changes.contains("<time datetime=\"2026-03-01\">1 במרץ 2026</time>"),
        "{changes}"
    );
    // The answers of programs stay in English, whatever the site speaks.
    let data: Value = serde_json::from_slice(&site["data/curriculum.json"]).expect("JSON");
    assert_eq!(data["movements"][0]["pattern"], "vertical pull");
}

#[test]
fn a_word_that_nobody_has_names_its_template() {
    for (path, text, says) in [
        (
            "themes/own/home.html",
            "{{ w.home.familes }}",
            "home.html says `home.familes`, which no words file has\ndid you mean `home.families`?",
        ),
        (
            "themes/own/home.html",
            "{{ say(key=\"home.x\", n=1) }}",
            "home.html says `home.x`",
        ),
        ("themes/own/own.js", "say('home.x')", "own.js says `home.x`"),
        // What begins with a hole may be every word that there is.
        ("themes/own/own.js", "say(`${section}.x`)", "own.js says ``"),
        (
            "themes/own/own.css",
            "a::before { content: \"{{ w.home.x }}\" }",
            "own.css says `home.x`",
        ),
    ] {
        let snapshot = snapshot(&[], &[(path, text.to_string())]);
        let error = Theme::load("own", &snapshot, Words::english())
            .err()
            .expect(path);
        assert!(error.to_string().contains(says), "{error}");
    }
}

#[test]
fn a_script_brings_the_words_that_it_says_and_no_others() {
    let snapshot = snapshot(
        &[],
        &[(
            "themes/own/own.js",
            "'use strict';\nsay('home.families'); say(`signal.${a}`); say(a ? 'home.to_read' : 'list.and');\n".to_string(),
        )],
    );
    let theme = Theme::load("own", &snapshot, Words::english()).expect("a theme");
    let theme = Some(Arc::new(theme));
    let built = site::build(&snapshot, &site::Options { theme });
    let plan = built.renderer().expect("a site");
    let script = (0..plan.len())
        .map(|i| plan.render(i).expect("a file"))
        .find(|f| f.path == "theme/own.js")
        .expect("the script");
    let text = String::from_utf8(script.bytes).expect("text");
    let (stamp, text) = text.split_once('\n').expect("it says its version");
    assert!(stamp.contains("\"own.js="), "{stamp}");
    let (first, rest) = text.split_once('\n').expect("two lines");
    assert!(
        first.starts_with("'use strict';") && rest.starts_with("'use strict';"),
        "{text}"
    );
    let said = first
        .split_once("|| {}, ")
        .expect("words")
        .1
        .trim_end_matches(");");
    let said: Value = serde_json::from_str(said).expect("JSON");
    assert_eq!(
        said,
        json!({ "home.families": "Families", "home.to_read": "To read", "list.and": "{before} and {last}", "signal.caution": "caution", "signal.notice": "notice", "signal.warning": "warning" })
    );
}

#[test]
fn numbers_days_and_plurals_by_language() {
    let of = |language: &str| Words::of(language, &[]);
    for (language, micro, shown) in [
        ("en", 2_500_000, "2.5"),
        ("en", 1_234_000_000, "1234"),
        ("en", 12_345_000_000, "12,345"),
        ("de", 2_500_000, "2,5"),
        ("de", 12_345_000_000, "12.345"),
        ("he", 2_500_000, "2.5"),
    ] {
        assert_eq!(of(language).decimal(micro), shown, "{language}");
    }
    assert_eq!(of("en").day("2026-03-01"), "1 March 2026");
    assert_eq!(of("he").day("2026-03-01"), "1 במרץ 2026");
    assert_eq!(of("he").day("soon"), "soon");
    let stage = |language: &str, n: u32| of(language).fill("stage.rungs_up", &[("n", n.into())]);
    assert_eq!(stage("en", 1), "1 rung up");
    assert_eq!(stage("he", 2), "שני שלבים למעלה");
    assert_eq!(stage("he", 5), "5 שלבים למעלה");
    assert_eq!(of("he-IL").language(), "he-IL");
    assert!(of("he-IL").is_right_to_left() && !of("en-GB").is_right_to_left());
}

fn targets() -> impl Strategy<Value = String> {
    let number = prop_oneof![
        (1u32..60).prop_map(|n| n.to_string()),
        (1u32..40_000).prop_map(|n| format!("{}.{:03}", n / 1000, n % 1000)),
        Just("0.45359237".to_string()),
        Just("12000".to_string()),
    ];
    let number = move || number.clone();
    let sets = prop_oneof![Just(String::new()), (2u32..9).prop_map(|n| format!("{n}x"))];
    let load = prop_oneof![
        Just(String::new()),
        (
            number(),
            prop_oneof![Just("kg"), Just("lb"), Just("bw")],
            any::<bool>()
        )
            .prop_map(|(n, unit, help)| format!(
                " with {n} {unit}{}",
                if help { " help" } else { "" }
            )),
    ];
    let amount = prop_oneof![
        number().prop_map(|n| format!("{n} reps")),
        (number(), number()).prop_map(|(n, s)| format!("{n} reps of {s} s")),
        number().prop_map(|n| format!("{n} s")),
        (1u32..9).prop_map(|n| format!("{n} min")),
        (number(), 1u32..4).prop_map(|(n, hits)| format!("{n} s in {hits} of 5 tries")),
        number().prop_map(|n| format!("{n} cm")),
        number().prop_map(|n| format!("{n} in")),
        number().prop_map(|n| format!("{n} deg")),
        Just("done".to_string()),
    ];
    let side = prop_oneof![Just(""), Just(" each side")];
    prop_oneof![
        4 => (sets, amount, load, side).prop_map(|(s, a, l, e)| format!("{s}{a}{l}{e}")),
        1 => (number(), prop_oneof![Just("cm"), Just("in"), Just("deg"), Just("s")])
            .prop_map(|(n, unit)| format!("at most {n} {unit}")),
    ]
}

/// A target as the tables give it to the script.
fn parts(target: &Target) -> Value {
    use rungbook::curriculum::target::{Added, Measure};
    let measure = match target.measure() {
        Measure::Reps => 0,
        Measure::Time => 1,
        Measure::Length => 2,
        Measure::Angle => 3,
        Measure::Done => 4,
    };
    let (unit, load) = match target.added() {
        None => (0, 0),
        Some(load @ Added::Mass(_)) => (1, load.signed()),
        Some(load @ Added::BodyWeight(_)) => (2, load.signed()),
    };
    let (hits, of) = target.tries().map_or((0, 0), |t| (t.hits, t.of));
    json!({
        "measure": measure, "atMost": target.at_most(), "sets": target.sets(), "amount": target.amount(),
        "seconds": target.seconds(), "unit": unit, "load": load, "hits": hits, "of": of,
    })
}

/// Program and script say the same of any target, in both units, in English and in Hebrew.
#[test]
fn targets_read_alike() {
    if Command::new("node").arg("--version").output().is_err() {
        assert_ne!(
            std::env::var("CI").as_deref(),
            Ok("true"),
            "node is not installed"
        );
        eprintln!(
            "SKIPPED PAGE SCRIPT TESTS: node is not installed (Debian: apt-get install nodejs)"
        );
        return;
    }
    for language in ["en", "he", "de"] {
        let words = Words::of(language, &[]);
        let file = Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("words-{language}.json"));
        fs::write(&file, before_scripts(&words).to_string()).expect("the words");
        let mut node = Command::new("node")
            .arg(root().join("tests/page/answer.js"))
            .arg(root().join("themes/chalk"))
            .arg(&file)
            .arg(language)
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .expect("node");
        let ask = RefCell::new((
            node.stdin.take().expect("its input"),
            BufReader::new(node.stdout.take().expect("its output")),
        ));
        let config = Config {
            cases: 400,
            failure_persistence: None,
            ..Config::default()
        };
        let mut runner =
            TestRunner::new_with_rng(config, TestRng::deterministic_rng(RngAlgorithm::ChaCha));
        let read = RefCell::new(0);
        runner
            .run(&targets(), |text| {
                // Some combinations are no target.
                let Ok(target) = Target::read(&text) else { return Ok(()) };
                *read.borrow_mut() += 1;
                for units in [Units::Metric, Units::Imperial] {
                    let ours = target.say(units, &words);
                    let unit = if units == Units::Metric { "metric" } else { "imperial" };
                    let question = json!({ "words": parts(&target), "units": unit, "side": target.each_side() });
                    let mut ask = ask.borrow_mut();
                    writeln!(ask.0, "{question}").expect("asked");
                    let mut line = String::new();
                    ask.1.read_line(&mut line).expect("answered");
                    let theirs: Value = serde_json::from_str(&line).expect("JSON");
                    prop_assert_eq!(&json!(ours), &theirs, "{} in {}, {}", text, unit, language);
                }
                Ok(())
            })
            .unwrap_or_else(|e| panic!("{e}"));
        assert!(read.into_inner() > 200);
        node.kill().expect("ended");
        node.wait().expect("ended");
    }
}

/// Meeting the number that is shown in the other units meets the target.
#[test]
fn shown_numbers_are_enough() {
    for (text, units, shown) in [
        ("10 cm", Units::Imperial, "4 in"),
        ("at most 5 cm", Units::Imperial, "at most 1.9 in"),
        (
            "5 reps with 20 kg",
            Units::Imperial,
            "5 reps with 44.1 lb added",
        ),
        (
            "5 reps with 20 kg help",
            Units::Imperial,
            "5 reps with 44 lb of help",
        ),
        (
            "5 reps with 10 lb",
            Units::Metric,
            "5 reps with 4.6 kg added",
        ),
        (
            "5 reps with 10 lb help",
            Units::Metric,
            "5 reps with 4.5 kg of help",
        ),
        (
            "5 reps with 10 lb",
            Units::Imperial,
            "5 reps with 10 lb added",
        ),
        (
            "5 reps with 1.125 kg",
            Units::Metric,
            "5 reps with 1.125 kg added",
        ),
    ] {
        let target = Target::read(text).expect(text);
        assert_eq!(target.words(units), shown, "{text}");
    }
}
