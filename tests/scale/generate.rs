//! A curriculum of any size: layers of movements, each needing some of the layer below, one skill for each hundred.

use std::fmt::Write;
use std::fs;
use std::path::Path;

/// Writes a curriculum of `count` movements. The same count gives the same folder.
pub fn write(dir: &Path, count: usize) {
    let put = |path: String, text: &str| {
        let path = dir.join(path);
        fs::create_dir_all(path.parent().expect("a folder")).expect("a folder is made");
        fs::write(path, text).expect("a file is written");
    };
    put(
        "content/school.yaml".into(),
        "school: Large Room\naddress: https://large.example/\nlanguage: en\nunits: metric\nequipment:\n  bar: A bar\n  mat: A mat\n  plates: Plates\n",
    );
    let id = |i: usize| format!("movement-{i:05}");
    let layers = 20.min(count.max(1));
    let mut random = 12345u64;
    let mut next = |below: usize| {
        random = random
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (random >> 33) as usize % below.max(1)
    };
    for i in 0..count {
        let (layer, width) = (i * layers / count, count / layers);
        let mut needs = String::new();
        if layer > 0 {
            let start = (layer - 1) * count / layers;
            let mut pick = || id(start + next(width.max(1)));
            let _ = write!(
                needs,
                "needs:\n  - {}: 6 reps\n  - any of:\n      - {}\n      - {}\n",
                pick(),
                pick(),
                pick()
            );
        }
        let (position, load, extra) = match i % 10 {
            0 => ("inverted", "body", "exit: Step down the way you came up.\n"),
            1 => ("hanging", "added", ""),
            _ => ("prone", "body", ""),
        };
        let pattern = if i % 50 == 2 {
            "exit"
        } else {
            ["core", "squat", "vertical pull", "horizontal push"][i % 4]
        };
        put(
            format!("content/movements/{:02}/{}.yaml", layer, id(i)),
            &format!(
                "movement: {0}\nname: Movement number {i}\npattern: {pattern}\nposition: {position}\nload: {load}\nequipment: [bar, plates]\nsummary: The movement with the number {i}.\nstandard: 8 reps\n{extra}{needs}test:\n  how: One set after a warm-up, filmed from the side.\n  counts: [full range, steady pace]\n  stop: [sharp pain, a broken shape]\n  rest: 3 min\nstresses: [shoulder, elbow]\ncues:\n  - Long and quiet, number {i}.\n  - Breathe out on the way up.\nfaults:\n  - see: The hips sag in number {i}\n    because: The trunk lets go\n    try: Shorter sets\nweeks: {1}-{2}\n",
                id(i),
                1 + i % 4,
                4 + i % 9
            ),
        );
        let mut note = String::new();
        for part in [
            "Set up",
            "What good looks like",
            "How to get out",
            "How to move on",
        ] {
            let _ = write!(note, "## {part}\n\n");
            for line in 0..6 {
                let _ = write!(
                    note,
                    "Line {line} of number {i} speaks of hands, feet and breath, and says it plainly enough to fill a page. "
                );
            }
            let _ = write!(note, "See [](movement:{}).\n\n", id((i + 1) % count));
        }
        put(format!("content/notes/{:02}/{}.md", layer, id(i)), &note);
    }
    let top = (layers - 1) * count / layers;
    for s in 0..(count / 100).max(1) {
        let goal = id(top + s % (count - top));
        put(
            format!("content/skills/skill-{s:03}.yaml"),
            &format!("skill: skill-{s:03}\nname: Skill {s}\ngoal: {goal}\n"),
        );
    }
}
