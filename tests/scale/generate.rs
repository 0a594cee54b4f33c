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
    // The last ones are the goals: they stand on top of the layers, and together need all of the last layer.
    let skills = (count / 100).max(1);
    let body = count - skills;
    let layers = shape.layers.min(body.max(1));
    // As wide as each other, or blocks would not stand above blocks; the first has what is left over.
    let start_of = |layer: usize| match layer {
        0 => 0,
        layer => body - (layers - layer) * (body / layers),
    };
    // Each layer is cut into blocks, and a movement's needs are in the block below its own. A goal's needs are in one block too:
    // it leads to as many goals as go into its width.
    let wanted = (shape.chain / layers).max(1);
    let goals = (wanted.min(count) * skills * layers + body / 2) / body.max(1);
    let goals = goals.clamp(1, skills);
    let bound = |goal: usize, width: usize| goal.min(skills) * width / skills;
    let mut random = 12345u64;
    let mut next = |below: usize| {
        random = random
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (random >> 33) as usize % below.max(1)
    };
    for i in 0..count {
        let layer = (0..layers).rfind(|l| start_of(*l) <= i).unwrap_or(0);
        let mut needs = String::new();
        if i >= body {
            let (first, width) = (start_of(layers - 1), body - start_of(layers - 1));
            let (from, to) = (bound(i - body, width), bound(i - body + 1, width));
            needs.push_str("needs:\n");
            for below in from..to.max(from + 1) {
                let _ = writeln!(needs, "  - {}: 6 reps", id(first + below));
            }
        } else if layer > 0 {
            let (below, start) = (start_of(layer - 1), start_of(layer));
            let width = start - below;
            // The first need is the one straight below.
            let straight = i - start;
            let block = ((straight + 1) * skills - 1) / width / goals;
            let first = bound(block * goals, width).min(straight);
            let size = (bound((block + 1) * goals, width).max(straight + 1)) - first;
            let one = next(size);
            let other = (one + 1 + next(size - 1)) % size;
            let _ = write!(
                needs,
                "needs:\n  - {}: 6 reps\n  - any of:\n      - {}\n      - {}\n",
                id(below + straight),
                id(below + first + one),
                id(below + first + other)
            );
            // What is left over in the first layer is needed too.
            let own = body / layers;
            for over in (straight + own..width).step_by(own) {
                let _ = writeln!(needs, "  - {}: 5 reps", id(below + over));
            }
        }
        let (position, load, extra) = match i % 10 {
            0 => ("inverted", "body", "exit: Step down the way you came up.\n"),
            1 => ("hanging", "added", ""),
            _ => ("prone", "body", ""),
        };
        // So many that each chain has its way out.
        let pattern = if (7 * i + layer) % 25 == 2 {
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
    for s in 0..skills {
        let goal = id(body + s);
        put(
            format!("content/skills/skill-{s:03}.yaml"),
            &format!("skill: skill-{s:03}\nname: Skill {s}\ngoal: {goal}\n"),
        );
    }
}
