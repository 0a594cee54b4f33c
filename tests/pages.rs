//! What pages say: true sentences about what opens what, in the order in which a reader needs them.

use rungbook::site;
use rungbook::source::Snapshot;

const SCHOOL: (&str, &str) = (
    "content/school.yaml",
    "school: Test Room\naddress: https://test.example/c/\nlanguage: en\nunits: metric\nequipment:\n  wall: A wall\n",
);

fn movement(id: &str, pattern: &str, position: &str, rest: &str) -> (String, String) {
    let text = format!(
        "movement: {id}\nname: The {id}\npattern: {pattern}\nposition: {position}\nload: body\nequipment: []\nsummary: Do it.\ntest: {{ how: Try }}\ncues: [quiet]\nfaults: [{{ see: noise }}]\n{rest}"
    );
    (format!("content/movements/{id}.yaml"), text)
}

/// A page's text without its tags, spaces made one.
fn page(path: &str) -> String {
    let mut files = vec![
        movement("lean", "core", "prone", "standard: 20 s each side\n"),
        movement(
            "shrug",
            "vertical push",
            "prone",
            "standard: 8 reps\nneeds: [lean: 10 s]\n",
        ),
        movement(
            "stand",
            "balance",
            "inverted",
            "standard: 30 s\nexit: Step down.\nneeds: [lean, shrug: 5 reps]\n",
        ),
        movement(
            "press",
            "vertical push",
            "inverted",
            "standard: 3 reps\nexit: Step down.\nneeds: [stand]\n",
        ),
    ];
    let skill = "skill: up\nname: Up\ngoal: press\n";
    files.push(("content/skills/up.yaml".into(), skill.into()));
    let files = files.iter().map(|(p, t)| (p.as_str(), t.as_str()));
    let snapshot = Snapshot::of_texts(files.chain([SCHOOL]));
    let built = site::build(&snapshot, &site::Options::default());
    let findings = &built.proof().findings;
    let found: Vec<&str> = findings.iter().map(|f| f.message.as_str()).collect();
    assert!(!findings.has_errors(), "{found:?}");
    let plan = built.renderer().expect("a site");
    let at = plan.position(path).expect("a page");
    let html = String::from_utf8(plan.render(at).expect("a page").bytes).expect("text");
    let main = &html[html.find("<main").expect("a main part")..];
    let mut text = String::new();
    for part in main.split('<') {
        text.push_str(part.split_once('>').map_or(part, |(_, t)| t));
        text.push(' ');
    }
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn in_order(text: &str, parts: &[&str]) {
    let mut at = 0;
    for part in parts {
        let found = text[at..].find(part);
        assert!(found.is_some(), "`{part}` does not come next in: {text}");
        at += found.unwrap_or(0) + part.len();
    }
}

#[test]
fn a_side_is_said_once() {
    let text = page("lean.html");
    in_order(
        &text,
        &["Standard 20 seconds, each side", "Standard and test", "Try"],
    );
    assert!(!text.contains("each side, each side"), "{text}");
}

/// 20 seconds of the lean open nothing by themselves, 10 open the shrug.
#[test]
fn a_number_opens_only_what_needs_nothing_else() {
    let text = page("lean.html");
    in_order(
        &text,
        &[
            // The hardest on top, as on a ladder.
            "20 seconds is enough for The stand",
            "10 seconds opens The shrug",
        ],
    );
    in_order(&page("stand.html"), &["30 seconds opens The press"]);
    in_order(
        &page("self-test-up.html"),
        &["20 seconds is enough for The stand"],
    );
}

#[test]
fn what_waits_for_its_needs_is_tested_last() {
    // Behind each folded group stands how many it holds.
    for path in ["self-test.html", "self-test-up.html"] {
        in_order(
            &page(path),
            &[
                "Vertical push 1 The shrug",
                "Trunk 1 The lean",
                "each only when its needs are yours",
                "The stand",
                "The press",
            ],
        );
    }
}

#[test]
fn the_first_rung_is_called_so() {
    let text = page("lean.html");
    in_order(
        &text,
        &[
            "Do it. first rung",
            "What must be there first Nothing needed first.",
        ],
    );
}

#[test]
fn the_way_out_comes_before_the_test() {
    let parts = [
        "Cautions first",
        "The way out Step down.",
        "Standard and test",
    ];
    in_order(&page("stand.html"), &parts);
    in_order(
        &page("booklet.html"),
        &["The way out Step down.", "Standard and test 30 seconds"],
    );
}

#[test]
fn a_hold_ends_with_its_shape_and_reps_with_the_last_clean_one() {
    let (hold, reps) = (page("stand.html"), page("press.html"));
    in_order(&hold, &["Stop while the shape is still clean."]);
    assert!(!hold.contains("last clean rep"), "{hold}");
    in_order(
        &reps,
        &["Stop at the last clean rep, one short of failure."],
    );
}

#[test]
fn the_goal_does_not_stand_under_itself() {
    in_order(
        &page("up.html"),
        &["3 movements stand under it, 3 of them essential"],
    );
}
