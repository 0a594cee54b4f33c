//! `cargo bench`: publishing, proofreading and rehearsing generated curricula, beside the floor (the bare libraries doing the same
//! kind of work, with the system's allocator) and a plain Python script. Prints tables; asserts no time.
//!
//! `cargo bench -- [--sizes 100,1000] [--chain N] [--large] [--deep] [--tangled] [--python] [--runs N] [--people N]`: without any, 100, 1,000
//! and 10,000 movements, with about 100 movements in the chain of each skill, and 10,000 in 200 layers, which makes chains of
//! 200, beside the same in 20 layers; `--chain 1000` makes the chains ten times as long. `--large` adds 50,000, and the script
//! at 10,000; `--people` measures `assess` on so many people alone; `--tangled` a curriculum whose chains hold most of it.

mod floor;
#[path = "../scale/generate.rs"]
mod generate;
mod people;
mod rehearse;
mod run;

use generate::Shape;
use run::{Ran, median, run};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

const PROGRAM: &str = env!("CARGO_BIN_EXE_rungbook");
/// About the most movements in a chain, if nothing else is asked: more than a coach teaches for one skill.
const CHAIN: usize = 100;

struct Wish {
    sizes: Vec<usize>,
    chain: usize,
    deep: bool,
    tangled: bool,
    python: bool,
    runs: Option<usize>,
    people: Option<usize>,
}

impl Wish {
    fn read(args: &[String]) -> Wish {
        let has = |name: &str| args.iter().any(|a| a == name);
        let value = |name: &str| {
            let at = args.iter().position(|a| a == name)?;
            args.get(at + 1).cloned()
        };
        let numbers = |text: String| -> Vec<usize> {
            text.split(',')
                .map(|n| n.trim().parse().expect("a number"))
                .collect()
        };
        let chosen = value("--sizes").map(numbers);
        let mut sizes = chosen.clone().unwrap_or_else(|| vec![100, 1000, 10_000]);
        if has("--large") {
            sizes.push(50_000);
        }
        Wish {
            sizes,
            chain: value("--chain").map_or(CHAIN, |n| n.parse().expect("a number")),
            deep: has("--deep") || chosen.is_none(),
            tangled: has("--tangled"),
            python: has("--python") || has("--large"),
            people: value("--people").map(|n| n.parse().expect("a number")),
            runs: value("--runs").map(|n| n.parse().expect("a number")),
        }
    }
}

fn main() {
    let args: Vec<String> = std::env::args().skip(1).collect();
    if let [what, from, to] = args.as_slice()
        && what == "floor"
    {
        return floor::run(Path::new(from), Path::new(to));
    }
    let wish = Wish::read(&args);
    let memory = Path::new("/dev/shm");
    let (place, on) = match memory.is_dir() {
        true => (memory.to_path_buf(), "memory-backed storage, /dev/shm"),
        false => (std::env::temp_dir(), "the temporary folder, on disk"),
    };
    let scratch = tempfile::tempdir_in(place).expect("a folder");
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    let load = fs::read_to_string("/proc/loadavg").unwrap_or_default();
    let load = load.split(' ').next().unwrap_or("?");
    println!(
        "{cores} cores, load {load} before; chains of about {}; files on {on}. Medians; a ratio is the median of the ratios of neighbouring runs.\n",
        wish.chain
    );

    let wide = |count| Shape {
        count,
        layers: 20,
        chain: wish.chain,
    };
    let mut shapes: Vec<(String, Shape)> = Vec::new();
    for count in &wish.sizes {
        shapes.push((count.to_string(), wide(*count)));
    }
    // A chain has a movement of each layer at least: what is as deep is compared with what is as long.
    let deep = |layers| Shape {
        count: 10_000,
        layers,
        chain: wish.chain.max(200),
    };
    if wish.deep {
        shapes.push(("10000, chains of 200".into(), deep(20)));
        shapes.push(("10000, 200 layers".into(), deep(200)));
    }
    if wish.tangled {
        shapes.push(("10000, tangled".into(), Shape::tangled(10_000)));
    }
    if let Some(people) = wish.people {
        println!(
            "| goals | people | assess ms | CPU ms | proof ms |\n| --- | ---: | ---: | ---: | ---: |"
        );
        for (_, shape) in shapes {
            let from = scratch.path().join("curriculum");
            generate::write(&from, shape);
            let rows = people::rows(
                Path::new(PROGRAM),
                &from,
                scratch.path(),
                people,
                shape.count,
            );
            println!("{}", rows.join("\n"));
            fs::remove_dir_all(&from).expect("removed");
        }
        return;
    }
    let rehearsed = wish.sizes.iter().copied().filter(|n| *n <= 10_000).max();
    let (mut rows, mut stages, mut rehearsals) = (Vec::new(), Vec::new(), Vec::new());
    for (name, shape) in shapes {
        eprintln!("{name}: {} movements", shape.count);
        let from = scratch.path().join("curriculum");
        generate::write(&from, shape);
        let measured = Measured::of(&from, scratch.path(), shape.count, wish.runs);
        let plain = name == shape.count.to_string();
        let most = if wish.python { 10_000 } else { 1000 };
        let python = (plain && shape.count <= most).then(|| python(&from, scratch.path()));
        rows.push(measured.row(&name, python));
        stages.push(measured.stages(&name));
        if plain && rehearsed == Some(shape.count) {
            rehearsals = rehearse::rows(Path::new(PROGRAM), &from, shape.count);
        }
        fs::remove_dir_all(&from).expect("removed");
    }
    println!(
        "| N | floor ms | publish ms | ratio | CPU ratio | floor MB | publish MB | unchanged ms (files written) | one note edited ms (files written) | floor to graph ms | proof ms | ratio | Python s | Python / publish |\n| ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n{}",
        rows.join("\n")
    );
    println!(
        "\nThe floor's stages, ms: pages is Markdown, context, rendering and writing in one parallel pass.\n\n| N | walk | read | YAML | graph | pages |\n| ---: | ---: | ---: | ---: | ---: | ---: |\n{}",
        stages.join("\n")
    );
    if !rehearsals.is_empty() {
        println!(
            "\nRehearsing, ms from a save, median and 95th percentile. The program's own time begins when the saving has come to rest.\n\n| N | saved | saves | own | p95 | reload told | p95 | page served | p95 |\n| ---: | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n{}",
            rehearsals.join("\n")
        );
    }
}

/// This program again, as the floor: a process of its own, so that time and memory compare.
fn floor_into(from: &Path, to: &Path, scratch: &Path) -> Ran {
    let me = std::env::current_exe().expect("this program");
    run(&me, &[Path::new("floor"), from, to], scratch)
}

/// What was measured of one curriculum, a value for each run.
#[derive(Default)]
struct Measured {
    floor: Vec<f64>,
    publish: Vec<f64>,
    floor_cpu: Vec<f64>,
    publish_cpu: Vec<f64>,
    floor_peak: Vec<f64>,
    publish_peak: Vec<f64>,
    unchanged: Vec<f64>,
    edited: Vec<f64>,
    proof: Vec<f64>,
    /// Walk, read, YAML, graph, pages.
    stages: [Vec<f64>; 5],
    written_unchanged: u64,
    written_edited: u64,
}

impl Measured {
    fn of(from: &Path, scratch: &Path, count: usize, runs: Option<usize>) -> Measured {
        let mut all = Measured::default();
        let usual = match count {
            0..=2000 => 9,
            2001..=20_000 => 5,
            _ => 3,
        };
        // One more, not counted, so that everything is in memory.
        for at in 0..=runs.unwrap_or(usual) {
            let mut one = Measured::default();
            one.run_once(from, scratch, at);
            if at > 0 {
                all.add(one);
            }
        }
        all
    }

    fn run_once(&mut self, from: &Path, scratch: &Path, at: usize) {
        let keep = |ran: Ran, times: &mut Vec<f64>| {
            times.push(ran.ms);
            ran.out
        };
        let from_text = from.to_str().expect("a path in UTF-8");
        let to = scratch.join(format!("to-{at}"));
        let to_text = to.to_str().expect("a path in UTF-8");

        let ran = floor_into(from, &to, scratch);
        self.floor_cpu.extend(ran.cpu_ms);
        self.floor_peak.extend(ran.peak_mb);
        let said = keep(ran, &mut self.floor);
        let said: serde_json::Value = serde_json::from_str(&said).expect("JSON");
        for (times, name) in self
            .stages
            .iter_mut()
            .zip(["walk", "read", "yaml", "graph", "pages"])
        {
            times.push(said[name].as_f64().expect("a number"));
        }
        fs::remove_dir_all(&to).expect("removed");

        let program = Path::new(PROGRAM);
        let publish = ["publish", "--from", from_text, "--to", to_text];
        let ran = run(program, &publish, scratch);
        self.publish_cpu.extend(ran.cpu_ms);
        self.publish_peak.extend(ran.peak_mb);
        keep(ran, &mut self.publish);

        let again = [&publish[..], &["--as", "json"]].concat();
        let written = |out: &str| -> u64 {
            let answer: serde_json::Value = serde_json::from_str(out).expect("JSON");
            answer["written"].as_u64().expect("a number")
        };
        let ran = run(program, &again, scratch);
        self.written_unchanged = written(&keep(ran, &mut self.unchanged));

        let notes = walkdir::WalkDir::new(from.join("content/notes"));
        let note = notes
            .into_iter()
            .filter_map(Result::ok)
            .find(|e| e.file_type().is_file())
            .expect("a note")
            .into_path();
        let text = fs::read_to_string(&note).expect("text");
        fs::write(&note, format!("{text}\nRun {at}.\n")).expect("written");
        let ran = run(program, &again, scratch);
        self.written_edited = written(&keep(ran, &mut self.edited));
        fs::write(&note, text).expect("written");

        let ran = run(program, &["proof", "--from", from_text], scratch);
        keep(ran, &mut self.proof);
        fs::remove_dir_all(&to).expect("removed");
    }

    fn add(&mut self, one: Measured) {
        self.floor.extend(one.floor);
        self.publish.extend(one.publish);
        self.floor_cpu.extend(one.floor_cpu);
        self.publish_cpu.extend(one.publish_cpu);
        self.floor_peak.extend(one.floor_peak);
        self.publish_peak.extend(one.publish_peak);
        self.unchanged.extend(one.unchanged);
        self.edited.extend(one.edited);
        self.proof.extend(one.proof);
        for (all, one) in self.stages.iter_mut().zip(one.stages) {
            all.extend(one);
        }
        // The most, so that one run that writes too much is seen.
        self.written_unchanged = self.written_unchanged.max(one.written_unchanged);
        self.written_edited = self.written_edited.max(one.written_edited);
    }

    fn row(&self, name: &str, python: Option<f64>) -> String {
        let ratio = |a: &[f64], b: &[f64]| {
            let ratios: Vec<f64> = a.iter().zip(b).map(|(a, b)| a / b).collect();
            median(&ratios)
        };
        let to_graph: Vec<f64> = (0..self.floor.len())
            .map(|run| self.stages[..4].iter().map(|s| s[run]).sum())
            .collect();
        let peak = |v: &[f64]| match v.is_empty() {
            true => "-".into(),
            false => format!("{:.0}", median(v)),
        };
        let cpu = match self.floor_cpu.is_empty() {
            true => "-".into(),
            // Sums: one small run is below what the timer can tell.
            false => {
                let [all, floor] =
                    [&self.publish_cpu, &self.floor_cpu].map(|v| v.iter().sum::<f64>());
                format!("{:.2}", all / floor)
            }
        };
        let (script, faster) = match python {
            Some(ms) => (
                format!("{:.1}", ms / 1000.0),
                format!("{:.0}", ms / median(&self.publish)),
            ),
            None => ("-".into(), "-".into()),
        };
        format!(
            "| {name} | {:.0} | {:.0} | {:.2} | {} | {} | {} | {:.0} ({}) | {:.0} ({}) | {:.0} | {:.0} | {:.2} | {script} | {faster} |",
            median(&self.floor),
            median(&self.publish),
            ratio(&self.publish, &self.floor),
            cpu,
            peak(&self.floor_peak),
            peak(&self.publish_peak),
            median(&self.unchanged),
            self.written_unchanged,
            median(&self.edited),
            self.written_edited,
            median(&to_graph),
            median(&self.proof),
            ratio(&self.proof, &to_graph),
        )
    }

    fn stages(&self, name: &str) -> String {
        let cells: Vec<String> = self
            .stages
            .iter()
            .map(|s| format!("{:.1}", median(s)))
            .collect();
        format!("| {name} | {} |", cells.join(" | "))
    }
}

/// How long the script takes, in milliseconds: the median of three runs, of one where it is slow. It writes what the floor writes,
/// byte for byte, or the two are not comparable.
fn python(from: &Path, scratch: &Path) -> f64 {
    let interpreter = environment();
    let script = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/bench/script.py");
    let (to, ours) = (scratch.join("python"), scratch.join("floor"));
    floor_into(from, &ours, scratch);
    let mut times = Vec::new();
    while times.len() < 3 && times.iter().all(|t| *t < 10_000.0) {
        let ran = run(&interpreter, &[script.as_path(), from, &to], scratch);
        times.push(ran.ms);
        let files = |dir: &Path| fs::read_dir(dir).expect("a folder").count();
        assert_eq!(files(&ours), files(&to));
        for file in fs::read_dir(&ours).expect("a folder") {
            let file = file.expect("an entry");
            let same = fs::read(file.path()).ok() == fs::read(to.join(file.file_name())).ok();
            assert!(same, "{} differs", file.path().display());
        }
        fs::remove_dir_all(&to).expect("removed");
    }
    fs::remove_dir_all(&ours).expect("removed");
    median(&times)
}

/// The interpreter of an environment with the libraries the script needs; made when it is missing.
fn environment() -> PathBuf {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let (wanted, venv) = (
        root.join("tests/bench/requirements.txt"),
        root.join("target/venv-bench"),
    );
    let (made, interpreter) = (venv.join("requirements.txt"), venv.join("bin/python"));
    let text = fs::read(&wanted).expect("the list of libraries");
    if fs::read(&made).is_ok_and(|m| m == text) {
        return interpreter;
    }
    eprintln!("making {}", venv.display());
    let ran = |command: &mut Command| {
        assert!(command.status().expect("it runs").success(), "{command:?}");
    };
    ran(Command::new("python3")
        .args(["-m", "venv", "--clear"])
        .arg(&venv));
    let pip = [
        "-m",
        "pip",
        "install",
        "-q",
        "--disable-pip-version-check",
        "-r",
    ];
    ran(Command::new(&interpreter).args(pip).arg(&wanted));
    fs::write(&made, text).expect("written");
    interpreter
}
