//! Runs a program to its end, and says how long it took and how much memory it had at most.

use std::ffi::OsStr;
use std::path::Path;
use std::process::Command;
use std::sync::LazyLock;
use std::time::Instant;

/// GNU time asks the kernel (`wait4`) for the most memory its child ever had resident; it is a small process, so nothing of ours
/// is counted in. Without it no memory is reported.
const TIMER: &str = "/usr/bin/time";
static TIMED: LazyLock<bool> = LazyLock::new(|| {
    let version = Command::new(TIMER).arg("--version").output();
    version.is_ok_and(|v| v.status.success())
});

pub struct Ran {
    pub ms: f64,
    /// Processor time on all cores, to 10 ms: steadier than `ms` on a busy machine.
    pub cpu_ms: Option<f64>,
    pub peak_mb: Option<f64>,
    pub out: String,
}

/// # Panics
/// When the program fails: there is nothing to measure then.
pub fn run<S: AsRef<OsStr>>(program: &Path, args: &[S], scratch: &Path) -> Ran {
    let peak = scratch.join("peak");
    let mut command = match *TIMED {
        true => {
            let mut timer = Command::new(TIMER);
            timer
                .args(["-q", "-f", "%M %U %S", "-o"])
                .arg(&peak)
                .arg(program);
            timer
        }
        false => Command::new(program),
    };
    let started = Instant::now();
    let done = command.args(args).output().expect("the program runs");
    let ms = started.elapsed().as_secs_f64() * 1000.0;
    let text = |bytes: &[u8]| String::from_utf8_lossy(bytes).into_owned();
    let (out, said) = (text(&done.stdout), text(&done.stderr));
    assert!(
        done.status.success(),
        "{}: {}\n{said}\n{out}",
        program.display(),
        done.status
    );
    let told: Vec<f64> = match *TIMED {
        true => std::fs::read_to_string(&peak)
            .expect("what the timer wrote")
            .split_whitespace()
            .map(|n| n.parse().expect("a number"))
            .collect(),
        false => Vec::new(),
    };
    Ran {
        ms,
        cpu_ms: told.get(1..3).map(|c| c.iter().sum::<f64>() * 1000.0),
        peak_mb: told.first().map(|kb| kb / 1024.0),
        out,
    }
}

/// The value below which a share of the values lies; 0.5 is the median.
pub fn quantile(values: &[f64], share: f64) -> f64 {
    let mut values = values.to_vec();
    values.sort_by(f64::total_cmp);
    let last = values.len().saturating_sub(1);
    let (at, part) = (
        (share * last as f64) as usize,
        (share * last as f64).fract(),
    );
    match values.get(at) {
        Some(low) => low + part * (values[(at + 1).min(last)] - low),
        None => f64::NAN,
    }
}

pub fn median(values: &[f64]) -> f64 {
    quantile(values, 0.5)
}
