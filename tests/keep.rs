//! Nothing of others' is lost when a site is published: not where it cannot be moved, not where a file system is mounted, not
//! what lies where the new site is prepared. What the site's folder is, its new files are. Two schools do not share a folder.

use std::collections::BTreeMap;
use std::fs;
use std::os::unix::fs::{MetadataExt, PermissionsExt, symlink};
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

const PROGRAM: &str = env!("CARGO_BIN_EXE_rungbook");

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

/// A script run with the program as `$0`. Root ignores modes, so root becomes nobody first where `plain` is asked.
fn script(before: &[&str], plain: bool, script: &str, arguments: &[&Path]) -> Output {
    let is_root = fs::metadata("/proc/self").expect("a process").uid() == 0;
    let nobody = [
        "setpriv",
        "--reuid=65534",
        "--regid=65534",
        "--clear-groups",
    ];
    let mut words: Vec<&str> = before.to_vec();
    if plain && is_root {
        words.extend(nobody);
    }
    words.extend(["sh", "-c", script, PROGRAM]);
    let mut command = Command::new(words[0]);
    command.args(&words[1..]).args(arguments);
    command.env("NO_COLOR", "1").output().expect("it runs")
}

/// A folder that anybody may write to, with a published first curriculum in `c`.
fn started() -> (tempfile::TempDir, PathBuf) {
    let dir = tempfile::tempdir().expect("a folder");
    fs::set_permissions(dir.path(), fs::Permissions::from_mode(0o777)).expect("a mode");
    let from = dir.path().join("c");
    let made = "\"$0\" start \"$1\" && \"$0\" publish --from \"$1\"";
    let out = script(&[], true, made, &[&from]);
    assert!(out.status.success(), "{}", text(&out.stderr));
    (dir, from)
}

const RENAME: &str = r#"sed -i "s/^school: .*/school: $2/" "$1/content/school.yaml""#;

/// Publishes under another name, as a normal user; every page changes.
fn again(before: &[&str], prepare: &str, from: &Path, name: &str) -> Output {
    let all = format!("{prepare}\n{RENAME} && exec \"$0\" publish --from \"$1\"");
    script(before, true, &all, &[from, Path::new(name)])
}

/// Every file below a folder with its bytes, links as links; folders that cannot be read are passed over.
fn tree(dir: &Path) -> BTreeMap<PathBuf, Vec<u8>> {
    let entries = walkdir::WalkDir::new(dir).min_depth(1).into_iter();
    let of = |e: walkdir::DirEntry| {
        let inside = e.path().strip_prefix(dir).expect("inside").to_path_buf();
        let bytes = match e.file_type() {
            t if t.is_symlink() => b"->".to_vec(),
            t if t.is_dir() => b"/".to_vec(),
            _ => fs::read(e.path()).expect("a file"),
        };
        (inside, bytes)
    };
    entries.flatten().map(of).collect()
}

fn is_refused(out: &Output, words: &[&str]) {
    let said = text(&out.stderr);
    assert_eq!(out.status.code(), Some(2), "{words:?}: {said}");
    for word in words {
        assert!(said.contains(word), "`{word}` in {said}");
    }
}

fn is_published(out: &Output) {
    assert_eq!(out.status.code(), Some(0), "{}", text(&out.stderr));
}

#[test]
fn what_cannot_be_moved_stops_the_exchange() {
    let (_dir, from) = started();
    let site = from.join("site");
    // A folder that its owner may not write to cannot get another parent, and a note is not written for a site that is not.
    let out = script(
        &[],
        true,
        r#"cd "$1/site" && mkdir archive && echo a >archive/a && echo mine >photos.zip && mkdir theme/own && chmod 555 archive"#,
        &[&from],
    );
    assert!(out.status.success(), "{}", text(&out.stderr));
    let before = tree(&site);
    is_refused(&again(&[], "", &from, "Other Room"), &["site/archive"]);
    assert_eq!(tree(&site), before, "the old site and all others' files");
    assert!(!from.join(".site.new").exists());
    let noted = script(
        &[],
        true,
        r#"exec "$0" publish --from "$1" --note "A." --today 2026-03-01"#,
        &[&from],
    );
    is_refused(&noted, &["site/archive"]);
    assert!(!from.join("content/ledger.yaml").exists());
    // A folder of the site itself from which nothing may be taken.
    let ways = [
        "chmod 755 \"$1/site/archive\"; chmod 555 \"$1/site/theme\"",
        "chmod 755 \"$1/site/theme\"; chmod 555 \"$1/site\"",
    ];
    for (way, said) in ways.iter().zip(["site/theme", "/site"]) {
        is_refused(&again(&[], way, &from, "Other Room"), &[said]);
        assert_eq!(tree(&site), before, "{way}");
        assert!(!from.join(".site.new").exists(), "{way}");
    }
    is_published(&again(&[], "chmod 755 \"$1/site\"", &from, "Other Room"));
    for kept in ["archive/a", "photos.zip", "theme/own"] {
        assert_eq!(tree(&site)[Path::new(kept)], before[Path::new(kept)]);
    }
    let page = fs::read_to_string(site.join("index.html")).expect("a page");
    assert!(page.contains("Other Room"));
}

#[test]
fn a_mounted_file_system_is_never_entered() {
    let (dir, from) = started();
    let may = Command::new("unshare").args(["-m", "true"]).status();
    if !may.is_ok_and(|s| s.success()) {
        eprintln!("SKIPPED: this machine lets nobody mount a folder (unshare -m)");
        return;
    }
    let volume = dir.path().join("volume");
    fs::create_dir(&volume).expect("a folder");
    fs::write(volume.join("upload.jpg"), "mine").expect("written");
    // A small disk, and a folder of the same disk; in a folder of others' and in one of the site's own; under one file.
    let ways = [
        (
            "uploads",
            r#"mount -t tmpfs none "$at" && echo mine >"$at/u""#,
        ),
        ("uploads", r#"mount --bind "$2" "$at""#),
        ("theme", r#"mount --bind "$2" "$at""#),
        (
            "theme/uploads",
            r#"mount -t tmpfs none "$at" && echo mine >"$at/u""#,
        ),
        ("index.html", r#"mount --bind "$2/upload.jpg" "$at""#),
    ];
    for (i, (at, mount)) in ways.iter().enumerate() {
        let whole = format!(
            r#"set -eu
            at="$1/site/{at}"; [ -e "$at" ] || mkdir "$at"; echo mine >"$1/site/a.txt"; echo mine >"$1/site/zip"
            {mount}
            sum() {{ (cd "$1/site" && find . -type f | sort | xargs cksum; cd "$2" && find . -type f | xargs cksum); }}
            before=$(sum "$1" "$2"); status=0
            sed -i "s/^school: .*/school: Room {i}/" "$1/content/school.yaml"
            "$0" publish --from "$1" || status=$?
            [ "$before" = "$(sum "$1" "$2")" ] || echo LOST
            [ ! -e "$1/.site.new" ] || echo LEFT
            umount "$at"
            [ "$(cat "$1/site/a.txt" "$1/site/zip")" = "mine
mine" ] || echo LOST
            exit $status"#
        );
        let out = script(&["unshare", "-m"], false, &whole, &[&from, &volume]);
        is_refused(&out, &[&format!("site/{at}"), "mounted there"]);
        assert_eq!(text(&out.stdout), "", "{at} {mount}");
        assert_eq!(fs::read(volume.join("upload.jpg")).expect("kept"), b"mine");
    }
    // One below a folder of others' moves with it; the site's folder itself may not be one.
    let below = r#"set -eu; mkdir -p "$1/site/mine/deep"; mount -t tmpfs none "$1/site/mine/deep"; echo mine >"$1/site/mine/deep/u"
        "$0" publish --from "$1" >&2; cat "$1/site/mine/deep/u"; mkdir -p "$1/disk"; mount -t tmpfs none "$1/disk"; status=0
        "$0" publish --from "$1" --to "$1/disk" || status=$?; ls -A "$1/disk"; exit $status"#;
    let out = script(&["unshare", "-m"], false, below, &[&from]);
    is_refused(&out, &["disk", "mounted there"]);
    assert_eq!(text(&out.stdout), "mine\n");
}

#[test]
fn an_immutable_file_costs_nobody_anything() {
    let (_dir, from) = started();
    let site = from.join("site");
    fs::write(site.join("a.txt"), "mine").expect("written");
    fs::write(site.join("z.txt"), "mine").expect("written");
    let change = |flag: &str, path: &Path| {
        let done = Command::new("chattr").arg(flag).arg(path).output();
        done.is_ok_and(|o| o.status.success())
    };
    // Others' file, a page, a folder of the site.
    for at in ["z.txt", "index.html", "theme"] {
        let at = site.join(at);
        if !change("+i", &at) {
            eprintln!("SKIPPED: this file system has no immutable files (chattr +i)");
            return;
        }
        let before = tree(&site);
        let name = at.file_name().expect("a name").to_str().expect("text");
        let out = again(&[], "", &from, &format!("Room {name}"));
        let (after, left) = (tree(&site), from.join(".site.new").exists());
        assert!(change("-i", &at));
        is_refused(&out, &[name, "immutable"]);
        assert_eq!(after, before);
        assert!(!left);
    }
    is_published(&again(&[], "", &from, "Other Room"));
    for kept in ["a.txt", "z.txt"] {
        assert_eq!(fs::read(site.join(kept)).expect("kept"), b"mine");
    }
}

/// A file in the place of one of the site's folders, and what somebody put where a killed run had prepared a site.
#[test]
fn only_what_is_listed_is_erased() {
    let (_dir, from) = started();
    let site = from.join("site");
    let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\"><path d=\"M0 0h9\"/></svg>\n";
    fs::create_dir_all(from.join("content/pictures")).expect("a folder");
    fs::write(from.join("content/pictures/line.svg"), svg).expect("written");
    let all = fs::Permissions::from_mode(0o777);
    fs::set_permissions(from.join("content/pictures"), all).expect("a mode");
    is_published(&again(&[], "", &from, "First Room"));
    let gone = r#"rm -r "$1/site/pictures"; echo mine >"$1/site/pictures"; mv "$1/content/pictures" "$1/put-away""#;
    is_published(&again(&[], gone, &from, "Second Room"));
    assert_eq!(fs::read(site.join("pictures")).expect("kept"), b"mine\n");
    // Killed while it wrote, and again while it cleaned up: what is not the program's comes back to the site.
    let whole = tree(&site);
    let killed = r#"cd "$1"; cp -r site .site.new; rm .site.new/files.json .site.new/index.html
        echo mine >.site.new/letter.txt; mkdir -p .site.new/theme/own; echo mine >.site.new/theme/own/a.css
        printf '%s' '{"made_by":"rungbook","format":1,"files":{"404.html":"","theme/layout.css":""}}' >.site.new/.rungbook-unfinished"#;
    let out = again(&[], killed, &from, "Third Room");
    // Pages that its list does not name are nobody's to erase either, and stand in the site already.
    is_refused(&out, &[".site.new", "move it away"]);
    assert_eq!(
        fs::read(from.join(".site.new/letter.txt")).expect("kept"),
        b"mine\n"
    );
    assert_eq!(tree(&site), whole);
    let listed = r#"cd "$1"; rm -r .site.new; cp -r site .site.new; rm .site.new/pictures
        echo mine >.site.new/letter.txt; mkdir -p .site.new/theme/own; echo mine >.site.new/theme/own/a.css"#;
    is_published(&again(&[], listed, &from, "Third Room"));
    assert!(!from.join(".site.new").exists());
    for kept in ["letter.txt", "theme/own/a.css", "pictures"] {
        assert_eq!(
            fs::read(site.join(kept)).expect("kept"),
            b"mine\n",
            "{kept}"
        );
    }
}

#[test]
fn new_files_are_as_the_folder_is() {
    let (_dir, from) = started();
    let site = from.join("site");
    let mode = |path: &str| fs::metadata(site.join(path)).expect("it stands").mode() & 0o7777;
    let set = |mode: &str| {
        format!(
            "umask 077; chmod -R u=rwX,go=rX \"$1/site\"; chmod {mode} \"$1/site\"; chmod 2770 \"$1/site/theme\"; chmod 604 \"$1/site/cautions.html\""
        )
    };
    for (words, folder, file) in [
        ("755", 0o755, 0o644),
        ("710", 0o710, 0o640),
        ("2775", 0o2775, 0o664),
    ] {
        let out = again(&[], &set(words), &from, &format!("Room {words}"));
        is_published(&out);
        assert_eq!(mode(""), folder);
        assert_eq!(mode("theme"), 0o2770);
        assert_eq!(mode("cautions.html"), 0o604, "a file keeps its own");
        let said = script(
            &[],
            true,
            "rm \"$1/site/404.html\"; exec \"$0\" publish --from \"$1\"",
            &[&from],
        );
        is_published(&said);
        assert_eq!(mode("404.html"), file, "a new one is as the folder");
    }
    // An attribute that somebody gave the folder.
    let flags = rustix::fs::XattrFlags::empty();
    if let Err(why) = rustix::fs::setxattr(&site, "user.kept", b"yes", flags) {
        eprintln!("SKIPPED: no extended attributes here ({why})");
        return;
    }
    is_published(&again(&[], "", &from, "Last Room"));
    let mut value = [0; 3];
    let read = rustix::fs::getxattr(&site, "user.kept", &mut value);
    assert_eq!((read, &value), (Ok(3), b"yes"));
}

#[test]
fn locking_leaves_nothing_behind_and_denies_nobody() {
    let (dir, from) = started();
    let own = dir.path().join("tmp");
    fs::create_dir(&own).expect("a folder");
    fs::set_permissions(&own, fs::Permissions::from_mode(0o1777)).expect("a mode");
    let as_root = "TMPDIR=\"$2\" \"$0\" publish --from \"$1\" >/dev/null";
    let out = script(&[], false, as_root, &[&from, &own]);
    is_published(&out);
    let out = script(&[], true, as_root, &[&from, &own]);
    is_published(&out);
    assert_eq!(tree(&own), BTreeMap::new());
    let names: Vec<PathBuf> = tree(dir.path())
        .into_keys()
        .filter(|p| p.components().count() < 3)
        .collect();
    let usual = ["c", "c/content", "c/site", "tmp"].map(PathBuf::from);
    assert_eq!(names, usual);
}

#[test]
fn another_schools_site_is_not_published_over() {
    let (_dir, from) = started();
    let site = from.join("site");
    let manifest = fs::read_to_string(site.join("files.json")).expect("a manifest");
    let manifest: serde_json::Value = serde_json::from_str(&manifest).expect("JSON");
    let address = manifest["school"]
        .as_str()
        .expect("the manifest names its school");
    assert!(
        fs::read_to_string(from.join("content/school.yaml"))
            .expect("text")
            .contains(address.trim_end_matches('/'))
    );
    // A new name is the same school; another address is another.
    is_published(&again(&[], "", &from, "Other Room"));
    let before = tree(&site);
    let moved =
        r#"sed -i "s|^address: .*|address: https://b.example/school/|" "$1/content/school.yaml""#;
    let out = again(&[], moved, &from, "B Room");
    is_refused(&out, &["--to", address]);
    assert_eq!(tree(&site), before);
    let out = script(
        &[],
        true,
        "exec \"$0\" publish --from \"$1\" --to \"$1/site\"",
        &[&from],
    );
    is_published(&out);
    is_published(&again(&[], "", &from, "B Hall"));
}

#[test]
fn publish_to_stays_in_the_folder() {
    let (dir, from) = started();
    let out = dir.path().join("out");
    fs::create_dir(&out).expect("a folder");
    fs::set_permissions(&out, fs::Permissions::from_mode(0o777)).expect("a mode");
    symlink(&out, from.join("away")).expect("a link");
    for place in [
        "../out/site",
        "/tmp/nowhere/site",
        "a/../../out/site",
        "~/site",
    ] {
        let set =
            format!("sed -i 's|^publish_to: .*|publish_to: {place}|' \"$1/content/school.yaml\"");
        let run = again(&[], &set, &from, "Other Room");
        assert_eq!(run.status.code(), Some(1), "{place}: {}", text(&run.stderr));
        assert!(text(&run.stderr).contains("publish_to"), "{place}");
    }
    let set = "sed -i 's|^publish_to: .*|publish_to: away/site|' \"$1/content/school.yaml\"";
    is_refused(&again(&[], set, &from, "Other Room"), &["--to", "out/site"]);
    assert_eq!(tree(&out), BTreeMap::new());
}

/// A plan is written over nobody's `plan.tmp`, whatever lies there, and is on the disk before it has its name.
#[test]
fn one_file_is_replaced_through_no_other() {
    let (dir, from) = started();
    let at = |name: &str| dir.path().join(name);
    fs::write(at("victim"), "mine").expect("written");
    symlink(at("victim"), at("plan.tmp")).expect("a link");
    symlink(at("victim"), at("plan.ics")).expect("a link");
    fs::write(at("ana.yaml"), "results: 1\nname: Ana\ntested: []\n").expect("written");
    let dose = |calendar: &str, more: &str| {
        let run = format!(
            "cd \"$2\"; {more} \"$0\" dose ana.yaml --from \"$1\" --today 2026-03-02 --calendar {calendar} >/dev/null; cat {calendar}"
        );
        let out = script(&[], true, &run, &[&from, dir.path()]);
        assert!(out.status.success(), "{}", text(&out.stderr));
        text(&out.stdout)
    };
    assert!(dose("plan.ics", "").starts_with("BEGIN:VCALENDAR"));
    assert_eq!(fs::read(at("victim")).expect("kept"), b"mine");
    assert!(
        fs::symlink_metadata(at("plan.tmp"))
            .expect("kept")
            .is_symlink()
    );
    assert!(
        fs::symlink_metadata(at("plan.ics"))
            .expect("written")
            .is_file()
    );
    // Again over itself: its mode stays. Nothing is left beside it.
    fs::set_permissions(at("plan.ics"), fs::Permissions::from_mode(0o640)).expect("a mode");
    dose("plan.ics", "");
    assert_eq!(
        fs::metadata(at("plan.ics")).expect("written").mode() & 0o777,
        0o640
    );
    let names = fs::read_dir(dir.path()).expect("a folder").count();
    assert_eq!(names, 5, "c, victim, plan.tmp, plan.ics, ana.yaml");
    let traced = Command::new("strace").arg("-V").output();
    if !traced.is_ok_and(|o| o.status.success()) {
        eprintln!("SKIPPED: what is synced is not seen without strace");
        return;
    }
    let trace = at("trace");
    let all = format!(
        "strace -f -o {} -e trace=fsync,fdatasync,rename,renameat,renameat2",
        trace.display()
    );
    let calls = |before: &str| {
        let all = fs::read_to_string(&trace).expect("a trace");
        assert!(all.contains("fsync("), "{before}: {all}");
        let of = |words: &str| {
            all.lines()
                .position(|l| l.contains(words))
                .unwrap_or_else(|| panic!("{words}: {all}"))
        };
        assert!(of("fsync(") < of(before), "synced first: {all}");
        all
    };
    dose("plan.ics", &all);
    calls("\"plan.ics\"");
    let run = format!(r#"{all} "$0" publish --from "$1" --note "A." --today 2026-03-01"#);
    is_published(&script(&[], true, &run, &[&from]));
    let all = calls("ledger.yaml\"");
    assert!(all.contains("RENAME_EXCHANGE"), "in one step: {all}");
}

/// Names that would colour or clear a terminal, or turn what stands beside them around: shown, never obeyed. In JSON they are
/// the same texts.
#[test]
fn names_do_not_steer_a_terminal() {
    let (dir, from) = started();
    let odd = "a\u{1b}[31m\u{9b}2J\u{202e}gpj\u{7f}\u{200f}";
    fs::write(from.join("content").join(format!("{odd}.txt")), "x").expect("written");
    fs::write(
        from.join("content/pictures.yaml")
            .with_file_name(format!("{odd}.yml")),
        "x",
    )
    .expect("written");
    let elsewhere = dir.path().join(odd);
    let runs: [&[&str]; 7] = [
        &["proof", "--from", "c"],
        &["proof", "--from", "c", "--as", "json"],
        &["publish", "--from", odd],
        &["publish", "--from", "sound", "--to", odd],
        &["publish", "--from", "sound", "--as", "json", "--to", odd],
        &["start", odd],
        &["assess", "--from", "sound", odd],
    ];
    let made = Command::new(PROGRAM)
        .arg("start")
        .arg(dir.path().join("sound"))
        .output();
    assert!(made.expect("it runs").status.success());
    for run in runs {
        let out = Command::new(PROGRAM)
            .args(run)
            .current_dir(dir.path())
            .output()
            .expect("it runs");
        let said = text(&out.stdout) + &text(&out.stderr);
        let obeyed = |c: &char| {
            *c != '\n'
                && (c.is_control()
                    || matches!(c, '\u{200e}'..='\u{200f}' | '\u{202a}'..='\u{202e}' | '\u{2066}'..='\u{2069}'))
        };
        assert_eq!(
            said.chars().find(obeyed),
            None,
            "{run:?}: {}",
            said.escape_debug()
        );
        assert!(said.contains("gpj"), "{run:?}: {said}");
        if run.contains(&"json") {
            let value: serde_json::Value = serde_json::from_slice(&out.stdout).expect("JSON");
            let told = value["to"]
                .as_str()
                .or(value["findings"][0]["file"].as_str());
            assert!(told.expect("a name").contains(odd), "{value}");
        }
        if run.contains(&"--to") {
            fs::write(elsewhere.join(format!("mine{odd}")), "x").expect("written");
        }
        if run[0] == "publish" && run.contains(&"json") {
            fs::remove_dir_all(&elsewhere).expect("gone");
        }
    }
}

/// A folder that may not be read is said to be so, not to be in the wrong place.
#[test]
fn an_unreadable_folder_is_said() {
    let (_dir, from) = started();
    let closed = r#"mkdir "$1/content/movements/closed" "$1/content/closed"; chmod 000 "$1/content/movements/closed" "$1/content/closed"
        "$0" proof --from "$1"; status=$?; chmod 700 "$1/content/movements/closed" "$1/content/closed"; exit $status"#;
    let out = script(&[], true, closed, &[&from]);
    let said = text(&out.stderr);
    assert_eq!(out.status.code(), Some(1), "{said}");
    assert_eq!(said.matches("error[unreadable-file]").count(), 2, "{said}");
    assert!(!said.contains("unknown-place"), "{said}");
}
