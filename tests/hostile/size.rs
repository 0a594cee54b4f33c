//! Reading stays in proportion to what is read: four times the text takes nowhere near sixteen times the work.

use super::check;
use rungbook::proof::proofread;
use rungbook::source::Snapshot;
use std::fs;
use std::time::Duration;

type Make = fn(usize) -> String;

/// Shapes that grow. The unit gives about a hundred kilobytes at 2,000.
const NOTES: &[(&str, Make)] = &[
    ("open brackets", |n| "[".repeat(n * 20)),
    ("open pictures", |n| "![".repeat(n * 10)),
    ("links", |n| "[a](movement:plank) ".repeat(n)),
    ("half links", |n| "[a](".repeat(n * 10)),
    ("emphasis", |n| "*a_ ".repeat(n * 10)),
    ("backticks", |n| {
        (1..n / 4).map(|i| "`".repeat(i % 200) + " ").collect()
    }),
    ("quotes", |n| ">".repeat(n)),
    ("nested lists", |n| {
        (0..n / 40).map(|i| " ".repeat(i) + "- a\n").collect()
    }),
    ("footnotes", |n| {
        (0..n)
            .map(|i| format!("a[^{i}]\n\n[^{i}]: b\n\n"))
            .collect()
    }),
    ("references", |n| {
        (0..n)
            .map(|i| format!("[a{i}]\n\n[a{i}]: https://x.example/{i}\n\n"))
            .collect()
    }),
    ("table", |n| {
        format!("|{}\n|{}\n", "a|".repeat(n), "-|".repeat(n)) + &"|b".repeat(n)
    }),
    ("html", |n| "<a <!-- <![CDATA[ <?x ".repeat(n)),
    ("entities", |n| "&amp;&#0;&x".repeat(n * 2)),
    ("headings", |n| "# a\n\n".repeat(n * 4)),
    ("sessions", |n| {
        "```session\nplank 3x5 s\nnobody 9\n```\n\n".repeat(n)
    }),
    ("one line", |n| "a".repeat(n * 50)),
];

const RECORDS: &[(&str, Make)] = &[
    ("one text", |n| {
        format!("{PLANK}exit: {}\n", "a".repeat(n * 50))
    }),
    ("one line of escapes", |n| {
        format!("{PLANK}exit: \"{}\"\n", "\\u00e9".repeat(n * 10))
    }),
    ("cues", |n| {
        format!("{PLANK}cues:\n{}", "  - up\n".repeat(n))
    }),
    ("unknown keys", |n| {
        PLANK.to_string() + &(0..n).map(|i| format!("key{i}: 1\n")).collect::<String>()
    }),
    ("the same key", |n| {
        PLANK.to_string() + &"cues: [a]\n".repeat(n)
    }),
    ("open lists", |n| {
        format!("{PLANK}needs: {}", "[".repeat(n * 10))
    }),
    ("open records", |n| {
        format!("{PLANK}needs: {}", "{a: ".repeat(n * 10))
    }),
    ("nothing but colons", |n| {
        format!("{PLANK}{}", ": ".repeat(n * 10))
    }),
    ("needs", |n| {
        format!("{PLANK}needs: [{}]\n", "plank, ".repeat(n))
    }),
    ("unknown needs", |n| {
        format!(
            "{PLANK}needs:\n{}",
            (0..n)
                .map(|i| format!("  - nobody-{i}: 5 s\n"))
                .collect::<String>()
        )
    }),
    ("a number", |n| {
        format!("{PLANK}weeks: {}\n", "9".repeat(n * 50))
    }),
    ("old ids", |n| {
        format!(
            "{PLANK}was:\n{}",
            (0..n).map(|i| format!("  - old-{i}\n")).collect::<String>()
        )
    }),
    ("comments", |n| "# a\n".repeat(n * 10) + PLANK),
    ("empty lines", |n| "\n".repeat(n * 50) + PLANK),
    ("anchors", |n| {
        (0..n)
            .map(|i| format!("a{i}: &a{i} [*a{}]\n", i / 2))
            .collect()
    }),
    ("tabs", |n| PLANK.to_string() + &"\tx: 1\n".repeat(n)),
];

const PLANK: &str = "movement: plank\nname: Plank\npattern: core\nposition: prone\nload: body\nequipment: []\nsummary: Hold.\nstandard: 60 s\n";
const SCHOOL: &str = "school: Room\naddress: https://room.example/\nlanguage: en\nunits: metric\n";

/// The time in which a processor worked for this thread: it does not grow where others work beside it.
fn worked() -> Duration {
    let said = fs::read_to_string("/proc/thread-self/schedstat").expect("the kernel counts");
    let nanoseconds = said.split(' ').next().map(str::parse);
    Duration::from_nanos(nanoseconds.expect("a first word").expect("a number"))
}

/// The least work of three tries.
fn work(note: &str, record: &str) -> Duration {
    let files = Snapshot::of_texts([
        ("content/school.yaml", SCHOOL),
        ("content/movements/plank.yaml", record),
        ("content/notes/plank.md", note),
    ]);
    let mut best = Duration::MAX;
    for _ in 0..3 {
        let before = worked();
        std::hint::black_box(proofread(&files));
        best = best.min(worked() - before);
        if best < Duration::from_millis(40) {
            break;
        }
    }
    best
}

fn grows(name: &str, make: Make, of: impl Fn(&str) -> Duration) {
    let (small, large) = (of(&make(500)), of(&make(2000)));
    println!("{name}: {small:.1?}, four times {large:.1?}");
    let limit = small.max(Duration::from_millis(15)) * 9;
    assert!(
        large < limit,
        "{name}: {small:?} of work, and four times as much takes {large:?}"
    );
}

#[test]
fn reading_takes_work_in_proportion() {
    // One thread does all of it, and is asked what it worked.
    let one = rayon::ThreadPoolBuilder::new().num_threads(1).build();
    one.expect("a thread").install(|| {
        for (name, make) in NOTES {
            grows(name, *make, |text| work(text, PLANK));
        }
        for (name, make) in RECORDS {
            grows(name, *make, |text| work("A note.\n", text));
        }
    });
}

/// Deep, long and huge texts are findings or stand; whatever stands is published.
#[test]
fn large_and_deep_texts_hold() {
    for (name, make) in NOTES {
        let note = make(300);
        let files = [
            ("content/school.yaml", SCHOOL),
            ("content/movements/plank.yaml", PLANK),
            ("content/notes/plank.md", note.as_str()),
        ];
        check::curriculum(&Snapshot::of_texts(files), 1, false)
            .unwrap_or_else(|why| panic!("{name}: {why:.300}"));
    }
    for (name, make) in RECORDS {
        let record = make(300);
        let files = [
            ("content/school.yaml", SCHOOL),
            ("content/movements/plank.yaml", record.as_str()),
        ];
        check::curriculum(&Snapshot::of_texts(files), 1, false)
            .unwrap_or_else(|why| panic!("{name}: {why:.300}"));
    }
}
