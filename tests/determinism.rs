//! The same folder gives the same bytes: with one thread or eight, in any locale and zone, from any folder, wherever the
//! curriculum lies, in whatever order its files were made.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

/// Every file below a folder with its content.
fn tree(dir: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let entries = walkdir::WalkDir::new(dir).into_iter();
    let files = entries
        .map(|e| e.expect("an entry"))
        .filter(|e| e.file_type().is_file());
    files
        .map(|e| {
            let inside = e.path().strip_prefix(dir).expect("inside").to_path_buf();
            (inside, fs::read(e.path()).expect("a file"))
        })
        .collect()
}

/// Copies the shipped curriculum, its files made in this order.
fn copy(to: &Path, backwards: bool) {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut files: Vec<PathBuf> = walkdir::WalkDir::new(root.join("content"))
        .into_iter()
        .map(|e| e.expect("an entry").into_path())
        .filter(|p| p.is_file())
        .collect();
    files.sort();
    if backwards {
        files.reverse();
    }
    for file in files {
        let copy = to.join(file.strip_prefix(root).expect("inside"));
        fs::create_dir_all(copy.parent().expect("a folder")).expect("a folder");
        fs::copy(&file, &copy).expect("a copy");
    }
}

struct Run<'a> {
    from: &'a Path,
    /// Where the program is started.
    at: &'a Path,
    /// The folder's name as it is typed there.
    typed: &'a str,
    env: &'a [(&'a str, &'a str)],
}

impl Run<'_> {
    fn output(&self, arguments: &[&str]) -> Vec<u8> {
        let out = Command::new(env!("CARGO_BIN_EXE_rungbook"))
            .args(arguments)
            .args(["--from", self.typed])
            .current_dir(self.at)
            .envs(self.env.iter().copied())
            .output()
            .expect("it runs");
        let said = String::from_utf8_lossy(&out.stderr);
        assert!(out.status.success(), "{:?}: {said}", self.env);
        out.stdout
    }

    /// The site, the ledger, and what the chain command prints.
    fn all(&self) -> BTreeMap<PathBuf, Vec<u8>> {
        let site = self.from.join("out/site");
        let to = site.to_str().expect("text");
        self.output(&[
            "publish",
            "--to",
            to,
            "--note",
            "Ünder way.",
            "--today",
            "2026-12-01",
        ]);
        let mut all = tree(&site);
        let ledger = fs::read(self.from.join("content/ledger.yaml")).expect("a ledger");
        all.insert("ledger".into(), ledger);
        let chain = self.output(&["chain", "strict-ring-muscle-up", "--as", "json"]);
        all.insert("chain".into(), chain);
        all
    }
}

#[test]
fn the_same_folder_gives_the_same_bytes() {
    let dir = tempfile::tempdir().expect("a folder");
    let first = dir.path().join("first");
    copy(&first, false);
    let expected = Run {
        from: &first,
        at: dir.path(),
        typed: "first",
        env: &[
            ("RAYON_NUM_THREADS", "1"),
            ("LC_ALL", "C"),
            ("LANG", "C"),
            ("TZ", "UTC"),
        ],
    }
    .all();
    assert!(expected.len() > 150, "{} files", expected.len());

    let runs: [&[(&str, &str)]; 4] = [
        &[
            ("RAYON_NUM_THREADS", "8"),
            ("LC_ALL", "tr_TR.UTF-8"),
            ("LANG", "tr_TR.UTF-8"),
            ("TZ", "Pacific/Kiritimati"),
        ],
        &[
            ("RAYON_NUM_THREADS", "8"),
            ("LC_ALL", "de_DE.ISO-8859-1"),
            ("TZ", "America/St_Johns"),
            ("HOME", "/nonexistent"),
        ],
        &[
            ("RAYON_NUM_THREADS", "3"),
            ("LC_ALL", "ar_EG.UTF-8"),
            ("LC_NUMERIC", "fr_FR.UTF-8"),
            ("TZ", "Asia/Kathmandu"),
        ],
        &[
            ("RAYON_NUM_THREADS", "1"),
            ("LC_ALL", ""),
            ("LANG", ""),
            ("TZ", ":nowhere"),
            ("NO_COLOR", ""),
            ("TERM", "dumb"),
        ],
    ];
    let lengths = [
        "b",
        "another folder with blanks/and ünicode/deeper",
        "c",
        "d",
    ];
    for (i, env) in runs.into_iter().enumerate() {
        let from = dir.path().join(lengths[i]);
        copy(&from, i % 2 == 0);
        let whole = from.to_str().expect("text").to_string();
        let content = from.join("content");
        let (at, typed) = match i {
            0 => (from.as_path(), "."),
            1 => (Path::new("/"), whole.as_str()),
            2 => (content.as_path(), ".."),
            _ => (dir.path(), "./first/../d"),
        };
        let found = Run {
            from: &from,
            at,
            typed,
            env,
        }
        .all();
        let names = |all: &BTreeMap<PathBuf, Vec<u8>>| all.keys().cloned().collect::<Vec<_>>();
        assert_eq!(names(&found), names(&expected), "{env:?}");
        for (path, bytes) in &found {
            assert!(
                *bytes == expected[path],
                "{} differs with {env:?}",
                path.display()
            );
        }
    }
}
