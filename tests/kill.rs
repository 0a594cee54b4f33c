//! Killed at any moment, a publish leaves the whole old site or the whole new one, and every file of others'. `RUNGBOOK_KILLS=300
//! RUNGBOOK_SIGNALS=100` measures, with `-- --include-ignored` in a mount namespace of its own; the usual run kills a few.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

/// Between two looks at what a publish has done so far: its processor is not taken from it.
const GLANCE: Duration = Duration::from_micros(100);

/// What others put into the site: path and content.
const OTHERS: &[(&str, &str)] = &[
    ("CNAME", "tidewall.example"),
    ("photos.zip", "photographs"),
    ("archive/2025/a.txt", "old"),
    ("theme/mine.css", "body {}"),
    ("theme/deep/er/mine.css", "main {}"),
    (".git/config", "[core]"),
];
/// Where the large run has a small disk mounted, and a file that cannot be changed: each stops the exchange while it is there.
const MOUNTED: &str = "uploads";
const FIXED: &str = "fixed.txt";

/// Files of the site, and of others.
type Trees = (BTreeMap<PathBuf, Vec<u8>>, BTreeMap<PathBuf, Vec<u8>>);

fn tree(dir: &Path) -> Trees {
    let is_others = |p: &Path| {
        let names = OTHERS.iter().map(|o| o.0).chain([FIXED]);
        names.into_iter().any(|o| Path::new(o) == p) || p.starts_with(MOUNTED)
    };
    if !dir.exists() {
        return Trees::default();
    }
    walkdir::WalkDir::new(dir)
        .into_iter()
        .map(|e| e.expect("an entry"))
        .filter(|e| e.file_type().is_file())
        .map(|e| {
            let inside = e.path().strip_prefix(dir).expect("inside").to_path_buf();
            (inside, fs::read(e.path()).expect("a file"))
        })
        .partition(|(path, _)| !is_others(path))
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

fn number(name: &str, usual: usize) -> usize {
    let set = std::env::var(name).ok().and_then(|n| n.parse().ok());
    set.unwrap_or(usual)
}

/// A curriculum in two states in which every page differs, the site of each, and the site that is published over.
struct Ground {
    dir: tempfile::TempDir,
    from: PathBuf,
    site: PathBuf,
    school: [String; 2],
    whole: Vec<Trees>,
    usual: Duration,
    dice: u64,
}

impl Ground {
    /// With the shipped curriculum, or a first one, whose publishes are short.
    fn new(shipped: bool) -> Ground {
        let dir = tempfile::tempdir().expect("a folder");
        let from = dir.path().join("curriculum");
        let root = Path::new(env!("CARGO_MANIFEST_DIR"));
        let content = match shipped {
            true => root.join("content"),
            false => root.join("src/command/first/content"),
        };
        for entry in walkdir::WalkDir::new(&content) {
            let entry = entry.expect("an entry");
            let inside = entry.path().strip_prefix(&content).expect("inside");
            let to = from.join("content").join(inside);
            match entry.file_type().is_dir() {
                true => fs::create_dir_all(&to).expect("a folder"),
                false => drop(fs::copy(entry.path(), &to).expect("a copy")),
            }
        }
        let school = fs::read_to_string(from.join("content/school.yaml")).expect("the school");
        let other = school.replacen("school: ", "school: The other ", 1);
        assert_ne!(school, other);
        let mut ground = Ground {
            site: dir.path().join("site"),
            school: [school, other],
            whole: Vec::new(),
            usual: Duration::ZERO,
            dice: 88_172_645_463_325_252,
            from,
            dir,
        };
        for state in 0..2 {
            ground.set(state);
            let to = ground.dir.path().join(format!("whole-{state}"));
            let started = Instant::now();
            assert!(
                publish(&ground.from, &to)
                    .status()
                    .expect("it runs")
                    .success()
            );
            ground.usual = started.elapsed();
            ground.whole.push(tree(&to));
        }
        assert!(
            publish(&ground.from, &ground.site)
                .status()
                .expect("it runs")
                .success()
        );
        for (path, text) in OTHERS {
            let path = ground.site.join(path);
            fs::create_dir_all(path.parent().expect("a folder")).expect("a folder");
            fs::write(path, text).expect("written");
        }
        ground
    }

    fn set(&self, state: usize) {
        fs::write(self.from.join("content/school.yaml"), &self.school[state]).expect("the school");
    }

    /// A moment of a publish, at random.
    fn moment(&mut self) -> Duration {
        self.dice ^= self.dice << 13;
        self.dice ^= self.dice >> 7;
        self.dice ^= self.dice << 17;
        self.usual.mul_f64(0.3 + (self.dice % 1000) as f64 / 1000.0)
    }

    fn staging(&self) -> PathBuf {
        self.dir.path().join(".site.new")
    }

    /// Publishes a state and ends it by a signal when it is asked to.
    fn strike(&mut self, signal: &str, state: usize, when: When, struck: &mut Struck) {
        self.set(state);
        let mut wait = self.moment();
        let mut child = publish(&self.from, &self.site).spawn().expect("it runs");
        if when == When::Writing {
            // As soon as something is written, so that some strike before the exchange however busy the machine is.
            while !self.staging().exists() && child.try_wait().expect("a child").is_none() {
                std::thread::sleep(GLANCE);
            }
        } else if when == When::Held || self.dice & 64 == 0 {
            std::thread::sleep(wait);
        } else {
            // About the exchange itself: from when the new site's manifest stands.
            let manifest = self.staging().join("files.json");
            while !manifest.exists() && child.try_wait().expect("a child").is_none() {
                std::thread::sleep(GLANCE);
            }
            wait /= 100;
            let started = Instant::now();
            while started.elapsed() < wait {
                std::hint::spin_loop();
            }
        }
        // One that has ended already is not struck.
        let sent = Command::new("kill")
            .args([signal, &child.id().to_string()])
            .stderr(Stdio::null())
            .status();
        let ended = child.wait().expect("it is gone");
        struck.while_at_work +=
            usize::from(sent.is_ok_and(|s| s.success()) && ended.code().is_none());
        struck.while_writing += usize::from(self.staging().exists());
        let (site, others) = tree(&self.site);
        match self.whole.iter().position(|w| w.0 == site) {
            Some(found) if found == state => struck.new += 1,
            Some(_) => struck.old += 1,
            None => panic!(
                "{signal} after {wait:?} left {} files that are neither site",
                site.len()
            ),
        }
        let beside = tree(&self.staging()).1;
        for (path, text) in OTHERS {
            let (here, there) = (others.get(Path::new(path)), beside.get(Path::new(path)));
            struck.aside += usize::from(here.is_none());
            assert_eq!(
                here.or(there).map(Vec::as_slice),
                Some(text.as_bytes()),
                "{path} after {signal}, {wait:?}"
            );
        }
    }

    /// Nothing stands in the way any more: the next publish repairs, and every file of others is in its place.
    fn mended(&self) {
        let done = publish(&self.from, &self.site).status().expect("it runs");
        assert!(done.success(), "the next publish repairs");
        assert!(!self.staging().exists());
        let others = tree(&self.site).1;
        for (path, text) in OTHERS {
            let found = others.get(Path::new(path)).map(Vec::as_slice);
            assert_eq!(found, Some(text.as_bytes()), "{path}");
        }
    }
}

/// When a publish is ended.
#[derive(Clone, Copy, PartialEq, Eq)]
enum When {
    /// As soon as it has written something.
    Writing,
    /// At any moment: something holds the exchange up.
    Held,
    /// At any moment, or about the exchange.
    Any,
}

#[derive(Debug, Default)]
struct Struck {
    while_at_work: usize,
    while_writing: usize,
    old: usize,
    new: usize,
    /// Files of others that waited beside the site for the next publish.
    aside: usize,
}

#[test]
fn a_killed_publish_leaves_a_whole_site_and_every_file_of_others() {
    let mut ground = Ground::new(true);
    for (signal, times) in [
        ("-KILL", number("RUNGBOOK_KILLS", 10)),
        ("-TERM", number("RUNGBOOK_SIGNALS", 4)),
    ] {
        let mut struck = Struck::default();
        for i in 0..times {
            let when = match i % 4 {
                1 => When::Writing,
                _ => When::Any,
            };
            ground.strike(signal, i % 2, when, &mut struck);
            if i % 10 == 9 {
                ground.mended();
            }
        }
        println!("{times} times {signal}: {struck:?}");
        assert!(
            struck.old > 0 && struck.while_writing > 0,
            "some struck before the exchange"
        );
    }
    ground.mended();
}

/// A mounted folder and an immutable file come and go while publishes are killed: whatever the moment, all of it is there.
#[test]
#[ignore = "mounts and sets file attributes: run it as root by `unshare -m`"]
fn what_cannot_move_is_there_after_every_kill() {
    let mut ground = Ground::new(false);
    let done = |name: &str, words: &[&str], path: &Path| {
        let status = Command::new(name).args(words).arg(path).status();
        assert!(status.is_ok_and(|s| s.success()), "{name} {words:?}");
    };
    let (mounted, fixed) = (ground.site.join(MOUNTED), ground.site.join(FIXED));
    fs::write(&fixed, "fixed").expect("written");
    for (signal, times) in [
        ("-KILL", number("RUNGBOOK_KILLS", 10)),
        ("-TERM", number("RUNGBOOK_SIGNALS", 4)),
    ] {
        let (mut struck, mut refused) = (Struck::default(), 0);
        for i in 0..times {
            // In turn: a mounted folder, nothing, an immutable file, nothing, both, nothing.
            let (mount, fix) = (matches!(i % 6, 0 | 4), matches!(i % 6, 2 | 4));
            if mount {
                fs::create_dir_all(&mounted).expect("a folder");
                done("mount", &["-t", "tmpfs", "none"], &mounted);
                fs::write(mounted.join("upload.jpg"), "upload").expect("written");
            }
            if fix {
                done("chattr", &["+i"], &fixed);
            }
            let when = match mount || fix {
                true => When::Held,
                false => When::Any,
            };
            ground.strike(signal, i / 2 % 2, when, &mut struck);
            if mount || fix {
                let whole = publish(&ground.from, &ground.site)
                    .status()
                    .expect("it runs");
                refused += usize::from(whole.code() == Some(2));
            }
            let site = [ground.site.clone(), ground.staging()];
            let found = |path: &str| site.iter().find_map(|s| fs::read(s.join(path)).ok());
            assert_eq!(found(FIXED).as_deref(), Some(&b"fixed"[..]), "{signal} {i}");
            if mount {
                assert_eq!(
                    found("uploads/upload.jpg").as_deref(),
                    Some(&b"upload"[..]),
                    "{signal} {i}"
                );
                done("umount", &[], &mounted);
            }
            if fix {
                done("chattr", &["-i"], &fixed);
            }
            ground.mended();
        }
        println!("{times} times {signal}: {struck:?}, and {refused} refused afterwards");
        assert!(struck.while_at_work > 0 && refused > 0);
    }
}
