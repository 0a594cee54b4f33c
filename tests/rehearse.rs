//! Rehearsing: saves show, mistakes are said and go away, the preview answers only the loopback address and its own name.

#[path = "dice/mod.rs"]
mod dice;

use proptest::prelude::*;
use proptest::test_runner::{TestCaseError, TestRunner};
use std::fs;
use std::io::{BufRead, BufReader, ErrorKind, Read, Write};
use std::net::TcpStream;
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::time::{Duration, Instant};

struct Rehearsal {
    child: Child,
    /// Host and port.
    host: String,
}

impl Rehearsal {
    fn start(from: &Path) -> Rehearsal {
        Rehearsal::start_by(Command::new(env!("CARGO_BIN_EXE_rungbook")), from)
    }

    /// Started by a command that ends in the program's name.
    fn start_by(mut command: Command, from: &Path) -> Rehearsal {
        let mut child = command
            .args(["rehearse", "--port", "0", "--from"])
            .arg(from)
            .stdout(Stdio::piped())
            .stderr(Stdio::null())
            .spawn()
            .expect("the program runs");
        let mut lines = BufReader::new(child.stdout.take().expect("piped")).lines();
        let first = lines.next().expect("a line").expect("text");
        let host = first
            .split("http://")
            .nth(1)
            .and_then(|r| r.split('/').next())
            .expect("an address")
            .to_string();
        // The second line says that the first build stands; the rest is read so that the pipe never fills.
        lines.next();
        std::thread::spawn(move || lines.for_each(drop));
        Rehearsal { child, host }
    }

    fn raw(&self, request: &str) -> String {
        let mut stream = TcpStream::connect(&self.host).expect("it listens");
        stream
            .set_read_timeout(Some(Duration::from_secs(10)))
            .expect("a limit");
        stream.write_all(request.as_bytes()).expect("it reads");
        let mut answer = Vec::new();
        let _ = stream.read_to_end(&mut answer);
        String::from_utf8_lossy(&answer).into_owned()
    }

    fn get(&self, path: &str) -> String {
        self.raw(&format!(
            "GET {path} HTTP/1.1\r\nHost: {}\r\nConnection: close\r\n\r\n",
            self.host
        ))
    }

    /// The stream of news, after its head.
    fn news(&self) -> BufReader<TcpStream> {
        self.news_from("retry")
    }

    /// The stream up to the warnings.
    fn news_after_warnings(&self) -> BufReader<TcpStream> {
        self.news_from("event: warnings")
    }

    fn news_from(&self, words: &str) -> BufReader<TcpStream> {
        let mut stream = TcpStream::connect(&self.host).expect("it listens");
        stream
            .set_read_timeout(Some(Duration::from_secs(20)))
            .expect("a limit");
        let request = format!("GET /rehearse-news HTTP/1.1\r\nHost: {}\r\n\r\n", self.host);
        stream.write_all(request.as_bytes()).expect("it reads");
        let mut reader = BufReader::new(stream);
        next(&mut reader, words);
        reader
    }
}

impl Drop for Rehearsal {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// Reads on until a line holds these words.
fn next(news: &mut BufReader<TcpStream>, words: &str) -> String {
    let mut all = String::new();
    loop {
        let mut line = String::new();
        let read = news
            .read_line(&mut line)
            .unwrap_or_else(|e| panic!("waiting for `{words}`: {e}\n{all}"));
        assert!(read > 0, "the stream ended before `{words}`\n{all}");
        all.push_str(&line);
        if line.contains(words) {
            return all;
        }
    }
}

/// Saves as many editors do: another file, renamed over the first.
fn save(path: &Path, text: &str) {
    let beside = path.with_extension("swp-new");
    fs::write(&beside, text).expect("written");
    fs::rename(&beside, path).expect("renamed");
}

fn curriculum() -> tempfile::TempDir {
    let dir = tempfile::tempdir().expect("a folder");
    let made = Command::new(env!("CARGO_BIN_EXE_rungbook"))
        .arg("start")
        .arg(dir.path().join("c"))
        .output()
        .expect("it runs");
    assert!(made.status.success());
    dir
}

#[test]
fn saves_show_and_mistakes_are_said() {
    let dir = curriculum();
    let from = dir.path().join("c");
    let rehearsal = Rehearsal::start(&from);
    let page = rehearsal.get("/dead-hang.html");
    assert!(
        page.starts_with("HTTP/1.1 200") && page.contains("/rehearse.js"),
        "{page}"
    );
    assert!(
        !page.contains("data-worker"),
        "the worker is never registered"
    );
    let mut news = rehearsal.news();

    let note = from.join("content/notes/dead-hang.md");
    save(&note, "Hang like a wet towel.\n");
    next(&mut news, "event: reload");
    assert!(
        rehearsal
            .get("/dead-hang.html")
            .contains("Hang like a wet towel.")
    );

    let movement = from.join("content/movements/dead-hang.yaml");
    let sound = fs::read_to_string(&movement).expect("text");
    fs::write(&movement, sound.replace("standard: 30 s", "standard: 30 y")).expect("written");
    next(&mut news, "event: trouble");
    let said = next(&mut news, "dead-hang.yaml");
    assert!(said.contains("bad-target"), "{said}");
    let page = rehearsal.get("/dead-hang.html");
    assert!(page.contains("30 seconds"), "the last good site stays");
    // Who opens a page now hears of it too.
    next(&mut rehearsal.news(), "bad-target");

    fs::write(&movement, sound.replace("standard: 30 s", "standard: 45 s")).expect("written");
    next(&mut news, "event: reload");
    assert!(rehearsal.get("/dead-hang.html").contains("45 seconds"));

    // A burst of saves, and a folder that vanishes and comes back.
    for i in 0..500 {
        fs::write(&note, format!("Save {i}.\n")).expect("written");
    }
    let away = from.join("content/away");
    fs::rename(from.join("content/notes"), &away).expect("renamed");
    fs::rename(&away, from.join("content/notes")).expect("renamed");
    let deadline = Instant::now() + Duration::from_secs(60);
    while !rehearsal.get("/dead-hang.html").contains("Save 499.") {
        assert!(Instant::now() < deadline, "the last save shows");
        std::thread::sleep(Duration::from_millis(100));
    }
    assert!(!from.join("site").exists(), "nothing is written");
}

/// Errors come first, warnings behind their count; a movement that is new and in error has an address that says why.
/// Loosenings stand first in what a page is told, as it stands against the last publish.
#[test]
fn changes_since_the_last_publish_are_told() {
    let dir = curriculum();
    let from = dir.path().join("c");
    let published = Command::new(env!("CARGO_BIN_EXE_rungbook"))
        .args(["publish", "--from"])
        .arg(&from)
        .output()
        .expect("it runs");
    assert!(published.status.success());
    let rehearsal = Rehearsal::start(&from);
    let mut news = rehearsal.news();
    let path = from.join("content/movements/pull-up-lowering.yaml");
    let text = fs::read_to_string(&path).expect("a file");
    let less = text
        .replace(", pain in an elbow]", "]")
        .replace("weeks: 4-8", "weeks: 4-9")
        .replace(
            "straight arms at the end]",
            "straight arms at the end, no swing at all]",
        );
    save(&path, &less);
    next(&mut news, "event: reload");
    let mut later = rehearsal.news_after_warnings();
    let told = next(&mut later, "data: ");
    let first = told.find("asks less: ").unwrap_or_else(|| panic!("{told}"));
    let second = told.find("new: ").unwrap_or_else(|| panic!("{told}"));
    assert!(
        first < second && told.contains("“pain in an elbow” is gone"),
        "{told}"
    );
    save(&path, &text);
}

#[test]
fn an_error_is_not_buried_and_a_new_page_says_why_it_is_not_here() {
    let dir = curriculum();
    let from = dir.path().join("c");
    let rehearsal = Rehearsal::start(&from);
    let mut news = rehearsal.news();
    let pages = from.join("content/notes/pages");
    fs::create_dir_all(&pages).expect("a folder");
    save(&pages.join("lone.md"), "# Lone\n");
    next(&mut news, "event: reload");
    let told = |line: &str| -> serde_json::Value {
        let data = line.trim_end().rsplit("data: ").next().expect("data");
        serde_json::from_str(data).expect("JSON")
    };
    let mut later = rehearsal.news();
    next(&mut later, "event: warnings");
    let said = told(&next(&mut later, "data: "));
    assert_eq!(said["counted"], "0 errors, 1 warning");
    assert_eq!(said["errors"], "");

    let new = from.join("content/movements/towel-hang.yaml");
    let sound = fs::read_to_string(from.join("content/movements/dead-hang.yaml"))
        .expect("text")
        .replace("dead-hang", "towel-hang")
        .replace("Dead hang", "Towel hang");
    fs::write(&new, sound.replace("standard: 30 s", "standard: 30 y")).expect("written");
    next(&mut news, "event: trouble");
    let said = told(&next(&mut news, "data: "));
    let text = |key: &str| said[key].as_str().expect("text").to_string();
    assert!(text("errors").contains("bad-target") && !text("errors").contains("unlinked-note"));
    // What may follow from the error is said again when it is mended.
    assert!(!text("warnings").contains("unlinked-note"));
    let page = rehearsal.get("/towel-hang.html");
    assert!(
        page.starts_with("HTTP/1.1 404") && page.contains("/rehearse.js"),
        "{page}"
    );
    next(&mut rehearsal.news(), "bad-target");
    fs::write(&new, sound).expect("written");
    next(&mut news, "event: reload");
    assert!(
        rehearsal
            .get("/towel-hang.html")
            .starts_with("HTTP/1.1 200")
    );
}

#[test]
fn the_preview_answers_only_its_own() {
    let dir = curriculum();
    let rehearsal = Rehearsal::start(&dir.path().join("c"));
    let host = &rehearsal.host;
    assert!(host.starts_with("127.0.0.1:"));
    for request in [
        "GET / HTTP/1.1\r\nHost: evil.example\r\nConnection: close\r\n\r\n".to_string(),
        format!(
            "GET / HTTP/1.1\r\nHost: {host}\r\nOrigin: http://evil.example\r\nConnection: close\r\n\r\n"
        ),
        format!(
            "POST / HTTP/1.1\r\nHost: {host}\r\nContent-Length: 0\r\nConnection: close\r\n\r\n"
        ),
        "GET / HTTP/1.0\r\n\r\n".to_string(),
    ] {
        let answer = rehearsal.raw(&request);
        assert!(answer.contains(" 403 "), "{request}\n{answer}");
    }
    for path in [
        "/../content/school.yaml",
        "/%2e%2e/content/school.yaml",
        "//etc/passwd",
        "/content/school.yaml",
        "/.%00",
        "/..\\x",
    ] {
        let answer = rehearsal.get(path);
        assert!(
            answer.contains(" 404 ") || answer.contains(" 400 "),
            "{path}: {answer}"
        );
        assert!(!answer.contains("language:"), "{path}");
    }
    let port = host.rsplit(':').next().expect("a port");
    let second = Command::new(env!("CARGO_BIN_EXE_rungbook"))
        .args(["rehearse", "--port", port, "--from"])
        .arg(dir.path().join("c"))
        .output()
        .expect("it runs");
    assert_eq!(second.status.code(), Some(2));
    assert!(
        String::from_utf8_lossy(&second.stderr).contains(port),
        "a taken port is said"
    );
}

/// Rehearsing writes nothing: a folder that nobody can write to does, and nothing appears in it or beside it.
#[test]
fn a_read_only_folder_is_enough() {
    let dir = curriculum();
    let from = dir.path().join("c");
    let listed = || -> Vec<_> {
        let entries = walkdir::WalkDir::new(dir.path()).sort_by_file_name();
        let one = |e: walkdir::DirEntry| {
            let data = e.metadata().expect("it stands");
            (e.path().to_path_buf(), data.modified().expect("a time"))
        };
        entries
            .into_iter()
            .map(|e| one(e.expect("an entry")))
            .collect()
    };
    let before = listed();
    let script = r#"mount --bind "$1" "$1" && mount -o remount,ro,bind "$1" || exit 9
        touch "$1/x" 2>/dev/null && exit 8
        shift && exec "$@""#;
    let ways = [["unshare", "-m"], ["unshare", "-rm"]];
    let command = |way: &[&str; 2]| {
        let mut command = Command::new(way[0]);
        command
            .args([way[1], "sh", "-c", script, "sh"])
            .arg(dir.path());
        command
    };
    let way = ways.iter().find(|way| {
        let tried = command(way).arg("true").output();
        tried.is_ok_and(|o| o.status.success())
    });
    let Some(way) = way else {
        eprintln!("SKIPPED: this machine lets nobody mount a folder read-only (unshare -m)");
        return;
    };
    let mut command = command(way);
    command.arg(env!("CARGO_BIN_EXE_rungbook"));
    let rehearsal = Rehearsal::start_by(command, &from);
    assert!(rehearsal.get("/dead-hang.html").starts_with("HTTP/1.1 200"));
    assert!(rehearsal.get("/theme/look.css").starts_with("HTTP/1.1 200"));
    drop(rehearsal);
    assert_eq!(listed(), before);
}

/// What another site's page could load as a script, a picture or a frame is refused; a link may be followed. By the Fetch
/// Metadata headers that browsers send (W3C, Fetch Metadata Request Headers); the header that keeps older ones off goes along.
#[test]
fn other_sites_read_nothing() {
    let dir = curriculum();
    let rehearsal = Rehearsal::start(&dir.path().join("c"));
    let ask = |path: &str, headers: &str| {
        let host = &rehearsal.host;
        let request =
            format!("GET {path} HTTP/1.1\r\nHost: {host}\r\n{headers}Connection: close\r\n\r\n");
        rehearsal.raw(&request)
    };
    let page = rehearsal.get("/dead-hang.html");
    let script = page
        .split("src=\"")
        .find(|s| s.starts_with("data/") || s.starts_with("theme/"))
        .expect("a script");
    let script = format!("/{}", script.split('"').next().expect("an end"));
    let paths = [
        "/dead-hang.html",
        &script,
        "/rehearse.js",
        "/rehearse-news",
        "/files.json",
        "/theme/look.css",
    ];
    for site in ["cross-site", "same-site"] {
        for path in paths {
            for more in [
                "Sec-Fetch-Mode: no-cors\r\nSec-Fetch-Dest: script\r\n",
                "Sec-Fetch-Mode: navigate\r\nSec-Fetch-Dest: iframe\r\n",
                "",
            ] {
                let answer = ask(path, &format!("Sec-Fetch-Site: {site}\r\n{more}"));
                assert!(
                    answer.starts_with("HTTP/1.1 403 "),
                    "{path} {site} {more}\n{answer}"
                );
                assert!(answer.contains("Content-Type: text/plain"), "{answer}");
            }
        }
        let followed = format!(
            "Sec-Fetch-Site: {site}\r\nSec-Fetch-Mode: navigate\r\nSec-Fetch-Dest: document\r\n"
        );
        assert!(ask("/dead-hang.html", &followed).starts_with("HTTP/1.1 200 "));
        assert!(
            ask(&script, &followed).starts_with("HTTP/1.1 403 "),
            "{script}"
        );
    }
    for site in ["same-origin", "none"] {
        for path in ["/dead-hang.html", &script, "/theme/look.css"] {
            let answer = ask(
                path,
                &format!(
                    "Sec-Fetch-Site: {site}\r\nSec-Fetch-Mode: no-cors\r\nSec-Fetch-Dest: script\r\n"
                ),
            );
            assert!(answer.starts_with("HTTP/1.1 200 "), "{path}\n{answer}");
            for header in [
                "Cross-Origin-Resource-Policy: same-origin",
                "X-Content-Type-Options: nosniff",
                "frame-ancestors 'self'",
            ] {
                assert!(answer.contains(header), "{header} of {path}");
            }
        }
    }
}

#[test]
fn every_name_and_kind_of_file_is_served() {
    let dir = curriculum();
    let from = dir.path().join("c");
    fs::create_dir_all(from.join("content/pictures/a b")).expect("a folder");
    let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\"><path d=\"M0 0h9\"/></svg>\n";
    let names = [
        ("é.svg", "%C3%A9.svg"),
        ("x,y.svg", "x,y.svg"),
        ("x,y.svg", "x%2Cy.svg"),
        ("a b/100%.svg", "a%20b/100%25.svg"),
        ("UP.SVG", "UP.SVG"),
    ];
    for (name, _) in names {
        fs::write(from.join("content/pictures").join(name), svg).expect("written");
    }
    let rehearsal = Rehearsal::start(&from);
    for (name, asked) in names {
        let answer = rehearsal.get(&format!("/pictures/{asked}"));
        let sound = answer.starts_with("HTTP/1.1 200 ")
            && answer.contains("Content-Type: image/svg+xml\r\n");
        assert!(sound, "{name}: {answer}");
    }
    for wrong in ["/pictures/%C3.svg", "/pictures/%zz.svg", "/%"] {
        let answer = rehearsal.get(wrong);
        assert!(
            answer.contains(" 400 ") || answer.contains(" 404 "),
            "{wrong}: {answer}"
        );
    }
}

/// Connections that say nothing, or never end, keep nobody out and are let go.
#[test]
fn unfinished_requests_and_closed_streams_cost_nothing() {
    let dir = curriculum();
    let rehearsal = Rehearsal::start(&dir.path().join("c"));
    rehearsal.get("/dead-hang.html");
    let count = |what: &str| {
        fs::read_dir(format!("/proc/{}/{what}", rehearsal.child.id()))
            .expect("a process")
            .count()
    };
    let (threads, files) = (count("task"), count("fd"));
    let half = |text: &[u8]| {
        let mut stream = TcpStream::connect(&rehearsal.host).expect("it listens");
        stream.write_all(text).expect("it reads");
        stream
    };
    let unfinished: Vec<TcpStream> = (0..400)
        .map(|i| half(if i % 2 == 0 { b"GET / HTT" } else { b"" }))
        .collect();
    // Who comes later is answered while who came before is still waited for, not after. Where the machine is busy some that are
    // waited for may have had their time.
    let mut before = 0;
    for _ in 0..5 {
        let mut waiting = half(b"GET / HTT");
        assert!(
            rehearsal
                .get("/dead-hang.html")
                .starts_with("HTTP/1.1 200 ")
        );
        waiting.set_nonblocking(true).expect("a stream");
        let said = waiting.read(&mut [0]).map_err(|e| e.kind());
        before += usize::from(said == Err(ErrorKind::WouldBlock));
    }
    assert!(
        before > 0,
        "answered only when those before had been let go"
    );
    assert!(count("task") < threads + 200, "{} threads", count("task"));
    drop(unfinished);
    for _ in 0..100 {
        drop(rehearsal.news());
    }
    // Settled by itself, not when something is saved next.
    let until = Instant::now() + Duration::from_secs(60);
    while (count("task"), count("fd")) > (threads + 2, files + 8) {
        assert!(
            Instant::now() < until,
            "{} threads, {} files",
            count("task"),
            count("fd")
        );
        std::thread::sleep(Duration::from_millis(100));
    }
    // A head has an end.
    let long = format!(
        "GET / HTTP/1.1\r\nHost: {}\r\nX: {}",
        rehearsal.host,
        "x".repeat(1_000_000)
    );
    let mut stream = TcpStream::connect(&rehearsal.host).expect("it listens");
    stream
        .set_read_timeout(Some(Duration::from_secs(5)))
        .expect("a limit");
    let _ = stream.write_all(long.as_bytes());
    let mut answer = String::new();
    let _ = stream.read_to_string(&mut answer);
    assert!(!answer.contains(" 200 "), "{answer}");
    assert!(
        rehearsal
            .get("/dead-hang.html")
            .starts_with("HTTP/1.1 200 ")
    );
}

/// A page that shows an earlier state is told to load again when it listens, and not before something changed.
#[test]
fn a_page_that_was_away_loads_again() {
    let dir = curriculum();
    let from = dir.path().join("c");
    let rehearsal = Rehearsal::start(&from);
    let page = rehearsal.get("/dead-hang.html");
    let of = page
        .split("/rehearse.js?")
        .nth(1)
        .and_then(|r| r.split('"').next())
        .expect("its state")
        .to_string();
    let listen = || {
        let mut stream = TcpStream::connect(&rehearsal.host).expect("it listens");
        let request = format!(
            "GET /rehearse-news?{of} HTTP/1.1\r\nHost: {}\r\n\r\n",
            rehearsal.host
        );
        stream.write_all(request.as_bytes()).expect("it reads");
        stream
            .set_read_timeout(Some(Duration::from_secs(20)))
            .expect("a limit");
        BufReader::new(stream)
    };
    let mut there = listen();
    save(
        &from.join("content/notes/dead-hang.md"),
        "Hang like a wet towel.\n",
    );
    next(&mut there, "event: reload");
    next(&mut listen(), "event: reload");
}

/// Pieces of requests, sound and damaged, in any order: whatever is sent the preview goes on, and nothing outside its site is told.
#[test]
fn whatever_is_sent_it_goes_on() {
    let dir = curriculum();
    fs::write(dir.path().join("secret.txt"), "not for anybody").expect("a file");
    let rehearsal = Rehearsal::start(&dir.path().join("c"));
    let host = rehearsal.host.clone();
    let piece = prop_oneof![
        Just("GET ".to_string()),
        Just("POST ".to_string()),
        Just("/".to_string()),
        Just("/index.html".to_string()),
        Just("/rehearse-news".to_string()),
        Just("/../secret.txt".to_string()),
        Just("/%2e%2e/secret.txt".to_string()),
        Just("/..%5csecret.txt".to_string()),
        Just("//secret.txt".to_string()),
        Just("?a=b".to_string()),
        Just("%".to_string()),
        Just("%zz%00".to_string()),
        Just(" HTTP/1.1\r\n".to_string()),
        Just(" HTTP/9\n".to_string()),
        Just(format!("Host: {host}\r\n")),
        Just("Host: \r\n".to_string()),
        Just("Connection: close\r\n".to_string()),
        Just("Sec-Fetch-Site: cross-site\r\n".to_string()),
        Just("Content-Length: 99999999999999999999\r\n".to_string()),
        Just("Transfer-Encoding: chunked\r\n".to_string()),
        Just(": \r\n".to_string()),
        Just("\r\n".to_string()),
        Just("A".repeat(20_000)),
        "\\PC{0,12}",
        "[\\x00-\\x7f]{0,12}",
    ];
    let requests = proptest::collection::vec(piece, 1..10);
    TestRunner::new(dice::config(150))
        .run(&requests, |pieces| {
            let mut stream = TcpStream::connect(&host).expect("it listens");
            let limit = Some(Duration::from_millis(300));
            stream.set_read_timeout(limit).expect("a limit");
            // Who is refused early may find the line closed.
            let _ = stream.write_all(pieces.concat().as_bytes());
            let _ = stream.shutdown(std::net::Shutdown::Write);
            let mut answer = Vec::new();
            let _ = stream.read_to_end(&mut answer);
            let answer = String::from_utf8_lossy(&answer);
            let told = answer.contains("not for anybody");
            let is_one = answer.is_empty() || answer.starts_with("HTTP/1.1 ");
            match is_one && !told {
                true => Ok(()),
                false => Err(TestCaseError::fail(answer.into_owned())),
            }
        })
        .unwrap_or_else(|e| panic!("{e}"));
    let home = rehearsal.get("/index.html");
    assert!(home.starts_with("HTTP/1.1 200"), "{home}");
}
