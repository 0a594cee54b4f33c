//! The page's script in a JavaScript engine and the reference in Python: programs that answer one JSON line with another.

use serde_json::Value;
use std::io::{BufRead, BufReader, Write};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdin, ChildStdout, Command, Stdio};
use std::sync::OnceLock;

pub struct Answerer {
    child: Child,
    input: ChildStdin,
    output: BufReader<ChildStdout>,
}

impl Answerer {
    fn start(mut command: Command) -> Answerer {
        let mut child = command
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .spawn()
            .expect("it starts");
        Answerer {
            input: child.stdin.take().expect("piped"),
            output: BufReader::new(child.stdout.take().expect("piped")),
            child,
        }
    }

    pub fn ask(&mut self, question: &Value) -> Value {
        writeln!(self.input, "{question}").expect("it reads");
        let mut line = String::new();
        self.output.read_line(&mut line).expect("it answers");
        serde_json::from_str(&line).unwrap_or_else(|e| panic!("{e}: {line}"))
    }
}

impl Drop for Answerer {
    fn drop(&mut self) {
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

pub fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// The words that the page's scripts say, as a file; written once, for all tests of this run.
fn english() -> &'static Path {
    static FILE: OnceLock<PathBuf> = OnceLock::new();
    FILE.get_or_init(|| {
        let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join("training-words.json");
        let words = rungbook::site::before_scripts(rungbook::words::Words::english());
        std::fs::write(&path, words.to_string()).expect("the words");
        path
    })
}

/// The page's script; a loud line where there is no engine, a failure under `CI=true`.
pub fn page() -> Option<Answerer> {
    if Command::new("node")
        .arg("--version")
        .stdout(Stdio::null())
        .status()
        .is_err()
    {
        assert!(
            std::env::var("CI").as_deref() != Ok("true"),
            "node is not installed"
        );
        eprintln!(
            "SKIPPED PAGE SCRIPT TESTS: node is not installed (Debian: apt-get install nodejs)"
        );
        return None;
    }
    let mut command = Command::new("node");
    command
        .arg(root().join("tests/page/answer.js"))
        .arg(root().join("themes/chalk"))
        .arg(english());
    Some(Answerer::start(command))
}

/// The reference; a loud line where there is no interpreter, a failure under `CI=true`.
pub fn reference() -> Option<Answerer> {
    let Some(python) = std::env::var_os("RUNGBOOK_PYTHON") else {
        assert!(
            std::env::var("CI").as_deref() != Ok("true"),
            "RUNGBOOK_PYTHON is not set"
        );
        eprintln!("SKIPPED REFERENCE TESTS: RUNGBOOK_PYTHON is not set");
        return None;
    };
    let mut command = Command::new(python);
    command.arg(root().join("tests/reference/training.py"));
    Some(Answerer::start(command))
}
