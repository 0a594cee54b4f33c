//! Publishing hurts nothing: it refuses the coach's own folders, follows no link, takes away only what it wrote, and on a full or
//! read-only disk leaves the old site whole.

use std::collections::BTreeMap;
use std::fs;
use std::os::unix::fs::{MetadataExt, symlink};
use std::path::{Path, PathBuf};
use std::process::{Command, Output, Stdio};
use std::time::{Duration, Instant};

const PROGRAM: &str = env!("CARGO_BIN_EXE_rungbook");

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

/// A folder with a first curriculum in `c`.
fn started() -> (tempfile::TempDir, PathBuf) {
    let dir = tempfile::tempdir().expect("a folder");
    let from = dir.path().join("c");
    let made = Command::new(PROGRAM).arg("start").arg(&from).output();
    assert!(made.expect("it runs").status.success());
    (dir, from)
}

fn publish(from: &Path, to: impl AsRef<Path>) -> Output {
    let mut command = Command::new(PROGRAM);
    command.arg("publish").arg("--from").arg(from);
    command.arg("--to").arg(to.as_ref()).env("NO_COLOR", "1");
    command.output().expect("it runs")
}

fn published(from: &Path, to: impl AsRef<Path>) -> String {
    let out = publish(from, to);
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
    text(&out.stdout)
}

/// The program ends with 2, and says each of these words.
fn refused(out: &Output, words: &[&str]) {
    let said = text(&out.stderr);
    assert_eq!(out.status.code(), Some(2), "{words:?}: {said}");
    assert_eq!(text(&out.stdout), "", "{words:?}");
    for word in words {
        assert!(said.contains(word), "`{word}` in {said}");
    }
}

/// Everything below a folder: content of files, `-> place` for links, `/` for folders.
fn tree(dir: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let entries = walkdir::WalkDir::new(dir).min_depth(1).into_iter();
    let one = |entry: walkdir::DirEntry| {
        let inside = entry.path().strip_prefix(dir).expect("inside");
        let kind = entry.file_type();
        let bytes = if kind.is_symlink() {
            let to = fs::read_link(entry.path()).expect("a link");
            format!("-> {}", to.display()).into_bytes()
        } else if kind.is_dir() {
            b"/".to_vec()
        } else {
            fs::read(entry.path()).expect("a file")
        };
        (inside.to_path_buf(), bytes)
    };
    entries.map(|e| one(e.expect("an entry"))).collect()
}

/// Another name of the school: every page changes.
fn rename_school(from: &Path, name: &str) {
    let path = from.join("content/school.yaml");
    let old = fs::read_to_string(&path).expect("the school");
    let at = old.find("school: ").expect("a name");
    let end = at + old[at..].find('\n').expect("a line");
    fs::write(
        &path,
        format!("{}school: {name}{}", &old[..at], &old[end..]),
    )
    .expect("written");
}

#[test]
fn the_coachs_own_folders_are_refused() {
    let (dir, from) = started();
    fs::create_dir_all(from.join("themes/own")).expect("a folder");
    // Ways round: a link to a folder of the curriculum, a link to the curriculum, a theme that lies elsewhere.
    let at = |path: &str| dir.path().join(path);
    symlink(from.join("content"), at("to-content")).expect("a link");
    symlink(&from, at("to-c")).expect("a link");
    fs::create_dir_all(at("d/real/movements")).expect("a folder");
    symlink(at("d/real"), at("d/content")).expect("a link");
    for file in ["content/school.yaml", "content/skills/slow-way-down.yaml"] {
        assert!(from.join(file).exists(), "{file}");
    }
    let before = tree(dir.path());
    for to in [
        "c",
        "c/",
        "c/.",
        ".",
        "./c/../c",
        "c/content",
        "c/content/",
        "c/content/site",
        "c/content/a/b/site",
        "c/themes",
        "c/themes/own",
        "c/themes/own/site",
        "c/themes/new/site",
        "c/content/movements/../site",
        "c/site/../content/site",
        "c/site/../content",
        "to-content",
        "to-content/site",
        "to-c",
        "to-c/content/site",
        "to-c/themes/x",
        "c/content/..",
        "..",
        "/",
        "",
    ] {
        let out = Command::new(PROGRAM)
            .args(["publish", "--from", "c", "--to", to])
            .current_dir(dir.path())
            .output()
            .expect("it runs");
        assert_eq!(out.status.code(), Some(2), "{to}: {}", text(&out.stderr));
        assert_eq!(tree(dir.path()), before, "{to}");
    }
    // A curriculum whose content folder is itself a link.
    let copied = Command::new("cp")
        .arg("-r")
        .args([from.join("content/."), at("d/real")])
        .status();
    assert!(copied.expect("it runs").success());
    let before = tree(dir.path());
    for to in ["d/real", "d/real/site", "d/real/x/site", "d/content/site"] {
        refused(&publish(&at("d"), at(to)), &["publish to"]);
        assert_eq!(tree(dir.path()), before, "{to}");
    }
    published(&at("d"), at("d/site"));
}

#[test]
fn links_in_the_site_are_never_followed() {
    let (dir, from) = started();
    let (site, out) = (from.join("site"), dir.path().join("out"));
    published(&from, &site);
    let plain = tree(&site);
    // A page's place is taken by a link to a file of the same bytes, and of other bytes; a folder's place by a link to a folder
    // of the same files; links of others' lead out, and one nowhere.
    fs::create_dir(&out).expect("a folder");
    fs::rename(site.join("theme"), out.join("theme")).expect("moved");
    symlink(out.join("theme"), site.join("theme")).expect("a link");
    fs::rename(site.join("404.html"), out.join("404.html")).expect("moved");
    symlink(out.join("404.html"), site.join("404.html")).expect("a link");
    // One that no change of the school's name touches.
    fs::rename(site.join("robots.txt"), out.join("robots.txt")).expect("moved");
    symlink(out.join("robots.txt"), site.join("robots.txt")).expect("a link");
    fs::remove_file(site.join("index.html")).expect("gone");
    fs::write(out.join("letter.txt"), "dear").expect("written");
    symlink(out.join("letter.txt"), site.join("index.html")).expect("a link");
    fs::create_dir(out.join("photos")).expect("a folder");
    fs::write(out.join("photos/a.jpg"), "a").expect("written");
    symlink(out.join("photos"), site.join("album")).expect("a link");
    symlink("nowhere", site.join("theme-old")).expect("a link");
    let outside = tree(&out);
    for name in ["First Room", "Second Room"] {
        rename_school(&from, name);
        let said = published(&from, &site);
        assert!(
            said.contains("Kept, not written by this program: album, theme-old."),
            "{said}"
        );
        assert_eq!(tree(&out), outside, "what lies outside is as it was");
        let now = tree(&site);
        for path in plain.keys() {
            let kind = fs::symlink_metadata(site.join(path))
                .expect("it stands")
                .file_type();
            assert!(!kind.is_symlink(), "{}", path.display());
        }
        for link in ["album", "theme-old"] {
            assert!(
                now[Path::new(link)].starts_with(b"-> "),
                "{link} is kept as a link"
            );
        }
    }
    // Nor does a file of the site share its content with one outside.
    let inode = |p: PathBuf| fs::metadata(p).expect("a file").ino();
    for file in fs::read_dir(out.join("theme"))
        .expect("a folder")
        .flatten()
        .filter(|f| f.path().is_file())
    {
        assert_ne!(
            inode(file.path()),
            inode(site.join("theme").join(file.file_name()))
        );
    }
    // The site's folder as a link.
    symlink(&out, dir.path().join("shown")).expect("a link");
    refused(&publish(&from, dir.path().join("shown")), &["it is a link"]);
    assert_eq!(tree(&out), outside);
}

#[test]
fn a_folder_without_its_marker_is_never_taken_away() {
    let (dir, from) = started();
    let at = |path: &str| dir.path().join(path);
    published(&from, at("site"));
    rename_school(&from, "Other Room");
    let whole = tree(&at("site"));
    for beside in [".site.new", ".site.old"] {
        fs::create_dir(at(beside)).expect("a folder");
        fs::write(at(beside).join("letter.txt"), "dear").expect("written");
        refused(&publish(&from, at("site")), &[beside, "move it away"]);
        assert_eq!(
            fs::read(at(beside).join("letter.txt")).expect("kept"),
            b"dear"
        );
        assert_eq!(tree(&at("site")), whole);
        // The same as a link, and as a file.
        fs::rename(at(beside), at("letters")).expect("moved");
        symlink(at("letters"), at(beside)).expect("a link");
        refused(&publish(&from, at("site")), &[beside]);
        fs::remove_file(at(beside)).expect("gone");
        fs::write(at(beside), "dear").expect("written");
        refused(&publish(&from, at("site")), &[beside]);
        fs::remove_file(at(beside)).expect("gone");
        assert_eq!(fs::read(at("letters/letter.txt")).expect("kept"), b"dear");
        fs::remove_dir_all(at("letters")).expect("gone");
    }
    // A site without its manifest, with another program's, with a link in its place.
    for manifest in [None, Some("{\"made_by\":\"hand\",\"files\":{}}"), Some("{")] {
        fs::remove_file(at("site/files.json")).expect("gone");
        if let Some(text) = manifest {
            fs::write(at("site/files.json"), text).expect("written");
        }
        let before = tree(&at("site"));
        refused(&publish(&from, at("site")), &["did not write"]);
        assert_eq!(tree(&at("site")), before);
        fs::write(at("site/files.json"), &whole[Path::new("files.json")]).expect("written");
    }
    fs::rename(at("site/files.json"), at("elsewhere.json")).expect("moved");
    symlink(at("elsewhere.json"), at("site/files.json")).expect("a link");
    refused(&publish(&from, at("site")), &["did not write"]);
    fs::write(at("letter"), "dear").expect("written");
    refused(&publish(&from, at("letter")), &["letter"]);
    assert_eq!(fs::read(at("letter")).expect("kept"), b"dear");
}

#[test]
fn others_files_are_kept_wherever_they_lie() {
    use std::os::unix::ffi::OsStrExt;
    let (_dir, from) = started();
    let site = from.join("site");
    published(&from, &site);
    let odd = site.join(std::ffi::OsStr::from_bytes(b"odd-\xff"));
    for path in ["theme/mine.css", "theme/deep/er/mine.css", "CNAME"] {
        fs::create_dir_all(site.join(path).parent().expect("a folder")).expect("a folder");
        fs::write(site.join(path), path).expect("written");
    }
    fs::write(&odd, "odd").expect("written");
    rename_school(&from, "Other Room");
    let said = published(&from, &site);
    assert!(
        said.contains("CNAME, odd-\u{fffd}, theme/deep, theme/mine.css"),
        "{said}"
    );
    for path in ["theme/mine.css", "theme/deep/er/mine.css", "CNAME"] {
        assert_eq!(fs::read_to_string(site.join(path)).expect("kept"), path);
    }
    assert_eq!(fs::read(&odd).expect("kept"), b"odd");
    // The site comes to use a folder in which others' files lie.
    fs::create_dir(site.join("pictures")).expect("a folder");
    fs::write(site.join("pictures/mine.txt"), "mine").expect("written");
    fs::create_dir_all(from.join("content/pictures")).expect("a folder");
    let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\"><path d=\"M0 0h9\"/></svg>\n";
    fs::write(from.join("content/pictures/line.svg"), svg).expect("written");
    published(&from, &site);
    assert!(site.join("pictures/line.svg").exists());
    assert_eq!(
        fs::read(site.join("pictures/mine.txt")).expect("kept"),
        b"mine"
    );
    // The site comes to need a name that is taken: said, nothing lost.
    fs::write(site.join("about-us.html"), "mine").expect("written");
    fs::create_dir_all(from.join("content/notes/pages")).expect("a folder");
    fs::write(
        from.join("content/notes/pages/about-us.md"),
        "# About us\n\nWe climb.\n",
    )
    .expect("written");
    let before = tree(&site);
    refused(&publish(&from, &site), &["about-us.html", "move it away"]);
    assert_eq!(tree(&site), before);
    fs::remove_file(site.join("about-us.html")).expect("gone");
    published(&from, &site);
    assert!(site.join("about-us.html").exists());
}

#[test]
fn unchanged_files_keep_their_times_and_old_ones_go() {
    let (_dir, from) = started();
    let site = from.join("site");
    fs::create_dir_all(from.join("content/pictures")).expect("a folder");
    let picture = from.join("content/pictures/line.svg");
    let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\"><path d=\"M0 0h9\"/></svg>\n";
    fs::write(&picture, svg).expect("written");
    published(&from, &site);
    assert!(site.join("pictures/line.svg").exists());
    let times = || -> BTreeMap<PathBuf, (i64, i64, u64)> {
        let of = |p: &PathBuf| {
            let data = fs::symlink_metadata(site.join(p)).expect("it stands");
            (data.mtime(), data.mtime_nsec(), data.ino())
        };
        tree(&site)
            .keys()
            .filter(|p| site.join(p).is_file())
            .map(|p| (p.clone(), of(p)))
            .collect()
    };
    let (first, bytes) = (times(), tree(&site));
    std::thread::sleep(Duration::from_millis(20));
    let said = published(&from, &site);
    assert!(said.contains("0 new, 0 changed, 0 removed"), "{said}");
    assert_eq!(times(), first, "nothing is touched");
    // One note changes and a picture goes: every file of the same bytes keeps its time.
    fs::remove_file(&picture).expect("gone");
    fs::write(
        from.join("content/notes/dead-hang.md"),
        "Hang like a wet towel.\n",
    )
    .expect("written");
    let said = published(&from, &site);
    assert!(said.contains("1 removed"), "{said}");
    assert!(
        !site.join("pictures").exists(),
        "an emptied folder goes too"
    );
    let (later, now) = (times(), tree(&site));
    let mut same = 0;
    for (path, time) in &first {
        let Some(after) = later.get(path) else {
            assert_eq!(path, Path::new("pictures/line.svg"));
            continue;
        };
        assert_eq!(
            after == time,
            bytes[path] == now[path],
            "{}",
            path.display()
        );
        same += usize::from(after == time);
    }
    assert!(
        same > 10 && same < first.len() - 1,
        "{same} of {}",
        first.len()
    );
}

#[test]
fn two_publishes_at_once_do_not_mix() {
    let (dir, from) = started();
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    let (site, staging) = (dir.path().join("site"), dir.path().join(".site.new"));
    let signal = |name: &str, id: u32| {
        let sent = Command::new("kill").args([name, &id.to_string()]).status();
        assert!(sent.expect("it runs").success());
    };
    for _ in 0..20 {
        let mut command = Command::new(PROGRAM);
        command
            .arg("publish")
            .arg("--from")
            .arg(root)
            .arg("--to")
            .arg(&site);
        let mut first = command.stdout(Stdio::null()).spawn().expect("it runs");
        let until = Instant::now() + Duration::from_secs(60);
        // Two entries: its mark, which is locked by then, and a page.
        let at_work = || fs::read_dir(&staging).is_ok_and(|d| d.count() > 1);
        while !at_work() && Instant::now() < until && first.try_wait().expect("a child").is_none() {
            std::thread::sleep(Duration::from_micros(100));
        }
        signal("-STOP", first.id());
        let caught = at_work();
        // The second time with a place of its own for temporary files.
        let second = caught.then(|| {
            let elsewhere = Command::new(PROGRAM)
                .arg("publish")
                .arg("--from")
                .arg(&from)
                .arg("--to")
                .arg(&site)
                .env("TMPDIR", dir.path())
                .output()
                .expect("it runs");
            [publish(&from, &site), elsewhere]
        });
        signal("-CONT", first.id());
        assert!(first.wait().expect("it ends").success());
        let Some(second) = second else {
            fs::remove_dir_all(&site).expect("gone");
            continue;
        };
        for second in &second {
            refused(second, &["another publish is at work"]);
        }
        assert!(site.join("one-leg-to-the-floor.html").exists() && !staging.exists());
        return;
    }
    panic!("no publish was caught at work in 20 tries");
}

/// How to run a script that may mount, or a line that says why the test is left out.
fn mounting() -> Option<Vec<&'static str>> {
    for way in [&["unshare", "-m"][..], &["unshare", "-rm"]] {
        let tried = Command::new(way[0])
            .args(&way[1..])
            .args(["sh", "-c", "mount -t tmpfs none /mnt"])
            .output();
        if tried.is_ok_and(|o| o.status.success()) {
            return Some(way.to_vec());
        }
    }
    eprintln!("SKIPPED: this machine lets nobody mount a small disk (unshare -m)");
    None
}

fn script(way: &[&str], script: &str, arguments: &[&Path]) -> Output {
    let mut command = Command::new(way[0]);
    command
        .args(&way[1..])
        .args(["sh", "-c", script, PROGRAM])
        .args(arguments);
    command.env("NO_COLOR", "1").output().expect("it runs")
}

/// Written in one small disk: an old site, then less and less room for a new one.
const FULL: &str = r#"
set -eu
from=$1; disk=$2
mount -t tmpfs -o size=8m none "$disk"
"$0" publish --from "$from" --to "$disk/site" >/dev/null
sum() { (cd "$disk/site" && find . -type f | sort | while read -r f; do echo "$f"; cat "$f"; done | cksum); }
sum
sed -i 's/^school: .*/school: Other Room/' "$from/content/school.yaml"
for free in 0 4 8 40 120 300; do
    rm -f "$disk/fill"
    room=$(df -Pk "$disk" | awk 'NR == 2 { print $4 }')
    head -c "$(((room - free) * 1024))" /dev/zero >"$disk/fill"
    status=0
    "$0" publish --from "$from" --to "$disk/site" --note "Full." --today 2026-03-01 2>"$disk.said" >/dev/null || status=$?
    echo "$status $(sum) $(ls -A "$disk" | tr '\n' ' ') $(tr '\n' ' ' <"$disk.said")"
done
rm "$disk/fill"
"$0" publish --from "$from" --to "$disk/site" >/dev/null
grep -l 'Other Room' "$disk/site/index.html"
"#;

#[test]
fn a_full_disk_leaves_the_old_site() {
    let (dir, from) = started();
    let disk = dir.path().join("disk");
    fs::create_dir(&disk).expect("a folder");
    if let Some(way) = mounting() {
        let ledger = fs::read(from.join("content/ledger.yaml")).ok();
        let out = script(&way, FULL, &[&from, &disk]);
        let said = text(&out.stdout);
        assert!(out.status.success(), "{said}\n{}", text(&out.stderr));
        let lines: Vec<&str> = said.lines().collect();
        assert_eq!(lines.len(), 8, "{said}");
        for line in &lines[1..7] {
            let sound = line.starts_with(&format!("2 {} fill site  rungbook: cannot ", lines[0]));
            assert!(
                sound && line.contains("disk/.site.new"),
                "{line}\nafter {}",
                lines[0]
            );
        }
        assert_eq!(
            fs::read(from.join("content/ledger.yaml")).ok(),
            ledger,
            "no entry without a site"
        );
    }
    // The same where nobody may mount: no file may grow beyond 4 KB.
    let site = dir.path().join("site");
    published(&from, &site);
    rename_school(&from, "Third Room");
    let before = tree(dir.path());
    let small = r#"trap '' XFSZ; ulimit -f 8; exec "$0" publish --from "$1" --to "$2""#;
    let out = script(&["env"], small, &[&from, &site]);
    refused(&out, &[".site.new"]);
    assert_eq!(tree(dir.path()), before);
}

#[test]
fn a_read_only_disk_is_said() {
    let (dir, from) = started();
    let site = dir.path().join("file/site");
    fs::write(dir.path().join("file"), "x").expect("written");
    refused(&publish(&from, &site), &["file"]);
    let Some(way) = mounting() else { return };
    let site = from.join("site");
    published(&from, &site);
    rename_school(&from, "Other Room");
    let before = tree(dir.path());
    let fixed =
        r#"mount --bind "$1" "$1" && mount -o remount,ro,bind "$1" && shift && exec "$0" "$@""#;
    let run = |arguments: &[&str]| {
        let mut all = vec![from.as_path()];
        all.extend(arguments.iter().map(Path::new));
        script(&way, fixed, &all)
    };
    let path = from.to_str().expect("text");
    refused(
        &run(&["publish", "--from", path]),
        &[".site.new", "ead-only"],
    );
    refused(
        &run(&["publish", "--from", path, "--note", "A."]),
        &[path, "ead-only"],
    );
    let inner = from.join("new");
    refused(
        &run(&["start", inner.to_str().expect("text")]),
        &["ead-only"],
    );
    assert_eq!(tree(dir.path()), before);
    // What only reads goes on reading.
    assert_eq!(run(&["proof", "--from", path]).status.code(), Some(0));
    assert_eq!(tree(dir.path()), before);
}
