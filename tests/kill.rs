//! Killed at any moment, a publish leaves the whole old site or the whole new one. `RUNGBOOK_KILLS=300` measures; the usual run
//! kills a few.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

fn tree(dir: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    walkdir::WalkDir::new(dir)
        .into_iter()
        .map(|e| e.expect("an entry"))
        .filter(|e| e.file_type().is_file())
        .map(|e| {
            let inside = e.path().strip_prefix(dir).expect("inside").to_path_buf();
            (inside, fs::read(e.path()).expect("a file"))
        })
        .collect()
}

fn publish(from: &Path, to: &Path) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_rungbook"));
    command
        .arg("publish")
        .arg("--from")
        .arg(from)
        .arg("--to")
        .arg(to);
    command.stdout(Stdio::null()).stderr(Stdio::null());
    command
}

#[test]
fn a_killed_publish_leaves_a_whole_site() {
    let kills: usize = std::env::var("RUNGBOOK_KILLS")
        .ok()
        .and_then(|n| n.parse().ok())
        .unwrap_or(10);
    let dir = tempfile::tempdir().expect("a folder");
    let from = dir.path().join("curriculum");
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    for entry in walkdir::WalkDir::new(root.join("content")) {
        let entry = entry.expect("an entry");
        let to = from.join(entry.path().strip_prefix(root).expect("inside"));
        match entry.file_type().is_dir() {
            true => fs::create_dir_all(&to).expect("a folder"),
            false => drop(fs::copy(entry.path(), &to).expect("a copy")),
        }
    }
    // Two states of the curriculum in which every page differs.
    let school = from.join("content/school.yaml");
    let first = fs::read_to_string(&school).expect("the school");
    let second = first.replace("Tidewall Movement Room", "Tidewall Movement Hall");
    assert_ne!(first, second);
    let mut whole = Vec::new();
    let mut usual = Duration::ZERO;
    for (i, text) in [&first, &second].into_iter().enumerate() {
        fs::write(&school, text).expect("the school");
        let to = dir.path().join(format!("whole-{i}"));
        let started = Instant::now();
        assert!(publish(&from, &to).status().expect("it runs").success());
        usual = started.elapsed();
        whole.push(tree(&to));
    }
    let to = dir.path().join("site");
    assert!(publish(&from, &to).status().expect("it runs").success());
    let staging = dir.path().join(".site.new");
    let (mut dice, mut writing, mut old, mut new) = (88_172_645_463_325_252_u64, 0, 0, 0);
    for i in 0..kills {
        let text = if i % 2 == 0 { &first } else { &second };
        fs::write(&school, text).expect("the school");
        dice ^= dice << 13;
        dice ^= dice >> 7;
        dice ^= dice << 17;
        let wait = usual.mul_f64(0.3 + (dice % 1000) as f64 / 1000.0);
        let mut child = publish(&from, &to).spawn().expect("it runs");
        std::thread::sleep(wait);
        child.kill().expect("it is killed");
        child.wait().expect("it is gone");
        writing += usize::from(staging.exists());
        let found = tree(&to);
        match whole.iter().position(|w| *w == found) {
            Some(state) if state == i % 2 => new += 1,
            Some(_) => old += 1,
            None => panic!(
                "kill {i} after {wait:?} left {} files that are neither site",
                found.len()
            ),
        }
    }
    println!("{kills} kills: {writing} while writing, {old} left the old site, {new} the new one");
    assert!(
        publish(&from, &to).status().expect("it runs").success(),
        "the next publish repairs"
    );
    assert!(!staging.exists());
    assert!(old > 0 && writing > 0, "some kills struck before the swap");
}
