//! A curriculum of any size: layers of movements, each needing some of the layer below, one skill for each hundred.

use std::fmt::Write;
use std::fs;
use std::path::Path;

/// What a generated curriculum is like.
#[derive(Clone, Copy)]
pub struct Shape {
    pub count: usize,
    /// Each movement needs some of the layer below it.
    pub layers: usize,
    /// About the largest number of movements in a chain: each movement needs near ones only.
    pub chain: usize,
}

impl Shape {
    /// Twenty layers, and any movement may need any of the layer below: chains hold most of the curriculum.
    pub fn tangled(count: usize) -> Shape {
        Shape {
            count,
            layers: 20,
            chain: usize::MAX,
        }
    }
}

/// Writes a curriculum. The same shape gives the same folder.
pub fn write(dir: &Path, shape: Shape) {
    let count = shape.count;
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
    let layers = shape.layers.min(count.max(1));
    let mut random = 12345u64;
    let mut next = |below: usize| {
        random = random
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (random >> 33) as usize % below.max(1)
    };
    for i in 0..count {
        let layer = i * layers / count;
        let mut needs = String::new();
        if layer > 0 {
            let (below, start) = ((layer - 1) * count / layers, layer * count / layers);
            let width = (start - below).max(1);
            // The layer is cut into blocks; a movement's needs are in its own.
            let block = (shape.chain / layers).clamp(1, width);
            let first = (i - start).min(width - 1) / block * block;
            let mut pick = || id(below + first + next(block.min(width - first)));
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
            for line in 0..5 {
                let _ = write!(
                    note,
                    "Line {line} of number {i} speaks of hands, feet and breath, and says it plainly enough to fill a page. "
                );
            }
            let _ = write!(
                note,
                "\n\n- *Slow* is steady.\n- See [](movement:{}).\n\n",
                id((i + 1) % count)
            );
        }
        put(format!("content/notes/{:02}/{}.md", layer, id(i)), &note);
    }
    let top = (layers - 1) * count / layers;
    let skills = (count / 100).max(1);
    for s in 0..skills {
        let goal = id(top + s * (count - top) / skills);
        put(
            format!("content/skills/skill-{s:03}.yaml"),
            &format!("skill: skill-{s:03}\nname: Skill {s}\ngoal: {goal}\n"),
        );
    }
}
