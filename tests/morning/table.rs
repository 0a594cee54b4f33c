//! A class in one table: parted by commas, semicolons or tabs, with or without a mark before the first letter; every column; what
//! is wrong in it.

use rungbook::curriculum::{BodyWeight, Day, Mass};
use rungbook::proof::{Proofread, proofread};
use rungbook::results::{self, Goal, Paused, Person, Sides};
use rungbook::source::{Findings, Snapshot};
use std::sync::LazyLock;

static PROOF: LazyLock<Proofread> = LazyLock::new(|| {
    let root = std::path::Path::new(env!("CARGO_MANIFEST_DIR"));
    proofread(&rungbook::io::snapshot(root).expect("the shipped curriculum"))
});

fn read(text: &str) -> (Vec<Person>, Findings) {
    let today = Day::read("2026-11-25").expect("a day");
    let files = Snapshot::of_texts([("class.csv", text)]);
    results::read(&files, &PROOF.curriculum, today)
}

fn messages(text: &str) -> Vec<(String, String)> {
    let (_, found) = read(text);
    found
        .iter()
        .map(|f| (f.message.clone(), f.help.clone()))
        .collect()
}

const TABLE: &str =
    "name,movement,got,left,right,on,in_reserve,bodyweight,with,paused,until,born,goal
Ana,dead-hang,41 s,,,2026-11-20,,62 kg,,,,1994,heavy-pull-up
Ben,single-leg-balance,,30 s,18 s,2026-11-20,,,,,,,
Ana,weighted-pull-up,3 reps,,,2026-11-21,1,63 kg,10 kg,,,,
Ana,,,,,2026-11-21,,,,shoulder,2026-12-20,,
Ben,,,,,2026-11-21,,,,inverted,,,
Ana,dead-hang,44 s,,,2026-11-10,,61 kg,,,,,
";

#[test]
fn every_column_is_read() {
    let (people, found) = read(TABLE);
    let said: Vec<&String> = found.iter().map(|f| &f.message).collect();
    assert!(said.is_empty(), "{said:?}");
    let [ana, ben] = people.as_slice() else {
        panic!("{people:?}");
    };
    assert_eq!((ana.name.as_str(), ben.name.as_str()), ("Ana", "Ben"));
    // The body weight of the newest day, though a row of an older one comes last; each result keeps its own.
    assert_eq!(ana.body_weight, BodyWeight::new(Mass::of_kilograms(63)));
    let weights: Vec<BodyWeight> = ana.tested.iter().filter_map(|t| t.body_weight).collect();
    assert_eq!(
        weights,
        [62, 63, 61].map(|kg| BodyWeight::new(Mass::of_kilograms(kg)).expect("a body weight"))
    );
    assert_eq!(ana.born, Some(1994));
    assert!(matches!(ana.goal, Some(Goal::Skill(_))));
    let Sides::Both(got) = ana.tested[1].sides else {
        panic!("{:?}", ana.tested[1]);
    };
    assert_eq!(
        (got.to_string().as_str(), ana.tested[1].in_reserve),
        ("3 reps with 10 kg", 1)
    );
    assert!(matches!(ana.pauses[0].what, Paused::Part(_)));
    assert_eq!(ana.pauses[0].until, Day::read("2026-12-20"));
    assert!(matches!(ben.pauses[0].what, Paused::Class(_)));
    assert!(matches!(ben.tested[0].sides, Sides::Each { .. }));
    assert_eq!((ben.body_weight, ben.born), (None, None));
}

#[test]
fn a_table_is_the_same_however_it_is_parted() {
    let comma = read(TABLE).0;
    for mark in [";", "\t"] {
        let text = TABLE.replace(',', mark);
        for text in [
            text.clone(),
            format!("\u{feff}{text}"),
            text.replace('\n', "\r\n"),
        ] {
            assert_eq!(read(&text).0, comma, "{text:?}");
        }
    }
    let quoted = format!(
        "\u{feff}\"name\",\"movement\"{}",
        &TABLE["name,movement".len()..]
    );
    assert_eq!(read(&quoted).0, comma);
    // A comma in a quoted cell does not part a table of semicolons.
    let one = read("\"name\";\"movement\";\"got\"\n\"Ana, the tall\";dead-hang;41 s\n").0;
    assert_eq!(one[0].name, "Ana, the tall");
}

#[test]
fn what_is_wrong_is_said_in_its_place() {
    let of = |text: &str| messages(text).remove(0);
    let (said, help) = of("name;movement;got;bodywieght\nAna;dead-hang;41 s;62 kg\n");
    assert_eq!(
        (said.as_str(), help.as_str()),
        (
            "a class has no column `bodywieght`",
            "did you mean `bodyweight`?"
        )
    );
    let (_, help) = of("name,movement,got,zzzzzz\nAna,dead-hang,41 s,1\n");
    assert!(help.contains("paused, until, born and goal"), "{help}");
    let (said, _) = of("name,movement,left\nAna,dead-hang,41 s\n");
    assert_eq!(said, "the column `got` is missing");
    for (row, part) in [
        (
            "Ana,dead-hang,,,,,",
            "a row needs a name, a movement and what was got",
        ),
        ("Ana,,41 s,,,,", "a row needs"),
        ("Ana,,,,,,", "a row needs"),
        ("Ana,dead-hang,41 s,,heavy,,", "is not a body weight"),
        ("Ana,weighted-pull-up,3 reps,lots,,,", "is not a result"),
        ("Ana,,,,,shuolder,", "no movement `shuolder`"),
        ("Ana,,,,,,1850", "is not a year of birth"),
    ] {
        let text = format!("name,movement,got,with,bodyweight,paused,born\n{row}\n");
        let all = messages(&text);
        assert!(all.len() == 1 && all[0].0.contains(part), "{row}: {all:?}");
    }
    // The finding points at the cell, past the mark before the first letter too.
    for before in ["", "\u{feff}"] {
        let text = format!("{before}name;movement;got\nAna;dead-hang;41 rops\n");
        let (_, found) = read(&text);
        let span = found.iter().next().expect("a finding").span;
        assert_eq!(&text[span.start as usize..span.end as usize], "rops");
    }
}
