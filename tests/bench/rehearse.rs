//! How soon a save is seen: `rungbook rehearse` runs, files are saved one after the other, and each time the reload event and
//! the new page are waited for.

use crate::run::{median, quantile};
use std::collections::HashMap;
use std::fs;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};
use std::sync::mpsc::{Receiver, channel};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread;
use std::time::{Duration, Instant};

/// A coach does not save again at once; what the program does after a reload has come to its end by then.
const REST: Duration = Duration::from_millis(500);
const LIMIT: Duration = Duration::from_secs(60);
const SAVES: usize = 40;

struct Rehearsal {
    child: Child,
    host: String,
    /// What the program says each rebuild took, in milliseconds.
    own: Arc<Mutex<Vec<f64>>>,
}

impl Drop for Rehearsal {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

/// The milliseconds in a line such as `Shown after 4.2 ms` or `Rebuilt in 4 ms`.
fn own_time(line: &str) -> Option<f64> {
    let rest = ["Shown after ", "Rebuilt in "]
        .iter()
        .find_map(|words| line.strip_prefix(words))?;
    rest.split(" ms").next()?.parse().ok()
}

impl Rehearsal {
    fn start(program: &Path, from: &Path) -> Rehearsal {
        let mut child = Command::new(program)
            .args(["rehearse", "--port", "0", "--from"])
            .arg(from)
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn()
            .expect("the program runs");
        let own = Arc::new(Mutex::new(Vec::new()));
        let listen = |lines: Box<dyn Read + Send>,
                      tell: Option<std::sync::mpsc::Sender<String>>| {
            let own = Arc::clone(&own);
            thread::spawn(move || {
                for line in BufReader::new(lines).lines().map_while(Result::ok) {
                    if let Some(ms) = own_time(&line) {
                        own.lock().unwrap_or_else(PoisonError::into_inner).push(ms);
                    }
                    let _ = tell.as_ref().map(|t| t.send(line));
                }
            });
        };
        let (send, said) = channel();
        listen(Box::new(child.stdout.take().expect("piped")), Some(send));
        listen(Box::new(child.stderr.take().expect("piped")), None);
        let first = said.recv_timeout(LIMIT).expect("a line");
        let host = first
            .split("http://")
            .nth(1)
            .and_then(|r| r.split('/').next())
            .expect("an address")
            .to_string();
        said.recv_timeout(LIMIT).expect("the first build stands");
        Rehearsal { child, host, own }
    }

    fn ask(&self, path: &str) -> TcpStream {
        let mut stream = TcpStream::connect(&self.host).expect("it listens");
        stream.set_read_timeout(Some(LIMIT)).expect("a limit");
        let host = &self.host;
        write!(
            stream,
            "GET {path} HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n"
        )
        .expect("it reads");
        stream
    }

    fn get(&self, path: &str) -> String {
        let mut answer = Vec::new();
        let _ = self.ask(path).read_to_end(&mut answer);
        String::from_utf8_lossy(&answer).into_owned()
    }

    /// When each reload was announced, as an open page hears it.
    fn news(&self) -> Receiver<Instant> {
        let mut lines = BufReader::new(self.ask("/rehearse-news")).lines();
        for line in lines.by_ref().map_while(Result::ok) {
            if line.starts_with("retry") {
                break;
            }
        }
        let (send, news) = channel();
        thread::spawn(move || {
            for line in lines.map_while(Result::ok) {
                assert!(!line.contains("event: trouble"), "a save is at fault");
                if line.contains("event: reload") && send.send(Instant::now()).is_err() {
                    return;
                }
            }
        });
        news
    }

    fn own_times(&self) -> Vec<f64> {
        std::mem::take(&mut *self.own.lock().unwrap_or_else(PoisonError::into_inner))
    }
}

/// Saves notes and definitions of a generated curriculum, and gives a row of the table for each.
pub fn rows(program: &Path, from: &Path, count: usize) -> Vec<String> {
    let paths: HashMap<String, PathBuf> = walkdir::WalkDir::new(from.join("content"))
        .into_iter()
        .map(|e| e.expect("an entry").into_path())
        .map(|p| {
            (
                p.file_name().unwrap_or_default().to_string_lossy().into(),
                p,
            )
        })
        .collect();
    let rehearsal = Rehearsal::start(program, from);
    let news = rehearsal.news();
    assert!(rehearsal.get("/movement-00000.html").contains(" 200 OK"));
    thread::sleep(REST * 4);
    let mut rows = Vec::new();
    let note = |text: &str, k: usize, _: usize| format!("{text}\nSave {k} of it.\n");
    let summary = |text: &str, k: usize, i: usize| {
        let old = format!("The movement with the number {i}.");
        text.replacen(&old, &format!("Save {k} of it."), 1)
    };
    let standard = |text: &str, k: usize, i: usize| {
        let new = format!("standard: {} reps", 9 + k % 3);
        summary(text, k, i).replacen("standard: 8 reps", &new, 1)
    };
    type Edit<'a> = &'a dyn Fn(&str, usize, usize) -> String;
    let kinds: [(&str, &str, Edit); 3] = [
        ("a note", "md", &note),
        ("a definition's summary", "yaml", &summary),
        ("a definition's summary and standard", "yaml", &standard),
    ];
    for (kind, (what, extension, edit)) in kinds.into_iter().enumerate() {
        let (mut told, mut seen) = (Vec::new(), Vec::new());
        rehearsal.own_times();
        for save in 0..SAVES {
            let k = kind * SAVES + save;
            // All over the curriculum, so bottom, middle and top of it.
            let i = k * 7919 % count;
            let path = &paths[&format!("movement-{i:05}.{extension}")];
            let text = fs::read_to_string(path).expect("text");
            let new = edit(&text, k, i);
            assert_ne!(text, new, "{} is edited", path.display());
            // Some editors write over the file, some rename another one into its place.
            let beside = path.with_extension("new");
            if save % 2 == 0 {
                fs::write(&beside, &new).expect("written");
            }
            let saved = Instant::now();
            match save % 2 {
                0 => fs::rename(&beside, path).expect("renamed"),
                _ => fs::write(path, &new).expect("written"),
            }
            let reload = news.recv_timeout(LIMIT).expect("a reload");
            let (page, words) = (format!("/movement-{i:05}.html"), format!("Save {k} of it."));
            while !rehearsal.get(&page).contains(&words) {
                assert!(saved.elapsed() < LIMIT, "the save shows on {page}");
            }
            seen.push(saved.elapsed().as_secs_f64() * 1000.0);
            told.push(reload.duration_since(saved).as_secs_f64() * 1000.0);
            thread::sleep(REST);
        }
        let own = rehearsal.own_times();
        let both = |v: &[f64]| match v.is_empty() {
            true => "- | -".to_string(),
            false => format!("{:.1} | {:.1}", median(v), quantile(v, 0.95)),
        };
        rows.push(format!(
            "| {count} | {what} | {SAVES} | {} | {} | {} |",
            both(&own),
            both(&told),
            both(&seen)
        ));
    }
    rows
}
