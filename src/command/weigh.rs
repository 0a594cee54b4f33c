//! `weigh RESULTS...`: the curriculum held against what people did.

use super::{Common, Form, Status, report};
use crate::curriculum::Weeks;
use crate::curriculum::{Curriculum, MovementIx};
use crate::io::{self, Error};
use crate::proof::proofread;
use crate::results;
use crate::site::printed_weighed;
use crate::source::{Snapshot, Span};
use crate::weigh::{
    self, LedTo, PEOPLE, Portion, Verdict, Weighed, WeighedNeed, WeighedStandard, WeighedWay,
};
use crate::words::{Value as Said, Words};
use serde_json::{Value, json};
use std::fmt::Write;
use std::path::PathBuf;

#[derive(clap::Args)]
pub struct Options {
    /// Results files: YAML or JSON for one client, CSV for a class
    #[arg(value_name = "RESULTS", required = true)]
    results: Vec<PathBuf>,
    #[command(flatten)]
    common: Common,
    /// Write needs, weeks with their curves, and standards as a page into this file
    #[arg(long, value_name = "FILE")]
    page: Option<PathBuf>,
}

pub fn run(options: &Options) -> Result<Status, Error> {
    let snapshot = io::snapshot(&options.common.from)?;
    let proof = proofread(&snapshot);
    if report::is_no_curriculum(&proof.findings, &snapshot, options.common.form) {
        return Ok(Status::AtFault);
    }
    let files = io::results(&options.results)?;
    let (people, found) = results::read(&files, &proof.curriculum, io::today());
    let weighed = weigh::weigh(&proof.curriculum, &people);
    if let Some(path) = &options.page {
        match printed_weighed(&snapshot, &proof.curriculum, &weighed) {
            Ok(text) => io::replace(path, &text)?,
            Err(why) => {
                anstream::eprintln!("rungbook: {why}");
                return Ok(Status::AtFault);
            }
        }
    }
    let at = At {
        curriculum: &proof.curriculum,
        snapshot: &snapshot,
    };
    match options.common.form {
        Form::Json => {
            let mut findings = report::json(&proof.findings, &snapshot);
            if let (Value::Array(all), Value::Array(more)) =
                (&mut findings, report::json(&found, &files))
            {
                all.extend(more);
            }
            report::answer(&at.json(&weighed, findings));
        }
        Form::Text => {
            report::print_errors(&proof.findings, &snapshot, &options.common.from);
            report::print(&found, &files);
            anstream::print!("{}", at.text(&weighed));
        }
    }
    Ok(super::assess::worst(&proof.findings, &found))
}

/// The curriculum, and the files in which its lines stand.
struct At<'a> {
    curriculum: &'a Curriculum,
    snapshot: &'a Snapshot,
}

impl At<'_> {
    fn id(&self, ix: MovementIx) -> &str {
        self.curriculum.movement(ix).id().as_str()
    }

    fn words(&self) -> &Words {
        self.curriculum.words()
    }

    fn place(&self, span: Span) -> (&str, usize) {
        let (line, _) = self.snapshot.place(span.file, span.start);
        (self.snapshot.path(span.file), line)
    }

    fn json(&self, weighed: &Weighed, findings: Value) -> Value {
        let needs: Vec<Value> = weighed.needs.iter().map(|n| self.need_json(n)).collect();
        let ways: Vec<Value> = weighed.movements.iter().map(|w| self.way_json(w)).collect();
        let standards: Vec<Value> = weighed
            .standards
            .iter()
            .map(|s| self.standard_json(s))
            .collect();
        let sees = weighed
            .sees()
            .map(|s| json!({ "owners": s.owners, "too_high_from": s.too_high, "holds_from_owners": s.least }));
        json!({
            "people": weighed.people, "sees": sees, "needs": needs, "movements": ways, "standards": standards, "findings": findings,
        })
    }

    fn need_json(&self, need: &WeighedNeed) -> Value {
        let (file, line) = self.place(need.span);
        json!({
            "movement": self.id(need.movement),
            "need": { "movement": self.id(need.needed), "target": need.target.to_string() },
            "owners": need.owners, "below": need.below,
            "share": thousandth(need.portion.share), "low": thousandth(need.portion.low), "high": thousandth(need.portion.high),
            "verdict": need.verdict.word(), "suggest": need.suggest.map(|t| t.to_string()), "file": file, "line": line,
        })
    }

    fn way_json(&self, way: &WeighedWay) -> Value {
        let (file, line) = self.place(self.curriculum.movement(way.movement).spans().id);
        let weeks = |w: &Weeks| json!([w.from(), w.to()]);
        let curve: Vec<Value> = way
            .curve
            .steps
            .iter()
            .map(|s| {
                json!([
                    thousandth(f64::from(s.days) / 7.0),
                    thousandth(s.share),
                    thousandth(s.low),
                    thousandth(s.high)
                ])
            })
            .collect();
        json!({
            "movement": self.id(way.movement), "declared": way.declared.as_ref().map(weeks),
            "people": way.curve.people, "events": way.curve.arrived,
            "median": way.median.map(thousandth), "low": way.low.map(thousandth), "high": way.high.map(thousandth),
            "verdict": way.verdict.word(), "suggest": way.suggest.map(|weeks| weeks.to_string()), "curve": curve, "file": file, "line": line,
        })
    }

    fn standard_json(&self, standard: &WeighedStandard) -> Value {
        let movement = self.curriculum.movement(standard.movement);
        let (file, line) = self.place(movement.spans().standard);
        let led = |led: &LedTo| {
            json!({
                "movement": self.id(led.movement), "people": led.people, "within": led.within,
                "share": thousandth(led.portion.share), "low": thousandth(led.portion.low), "high": thousandth(led.portion.high),
            })
        };
        json!({
            "movement": self.id(standard.movement), "standard": movement.standard().to_string(),
            "tested": standard.tested, "met": standard.met, "met_at_first": standard.met_at_first,
            "opens": standard.opens.iter().map(led).collect::<Vec<_>>(),
            "verdict": standard.verdict.word(), "file": file, "line": line,
        })
    }

    /// What should be looked at, each with its line; what holds is counted.
    fn text(&self, weighed: &Weighed) -> String {
        let people = [("n", Said::Whole(weighed.people as i64))];
        if weighed.people < PEOPLE {
            return format!("{}\n", self.words().fill("weigh.too_early", &people));
        }
        let mut out = format!("{}\n", self.words().fill("weigh.people", &people));
        let needs: Vec<String> = weighed.needs.iter().filter_map(|n| self.need(n)).collect();
        let ways: Vec<String> = weighed
            .movements
            .iter()
            .filter_map(|w| self.way(w))
            .collect();
        let standards = weighed.standards.iter();
        let standards: Vec<String> = standards.filter_map(|s| self.standard(s)).collect();
        for (head, lines) in [
            ("weigh.needs", needs),
            ("weigh.weeks", ways),
            ("weigh.standards", standards),
        ] {
            let _ = writeln!(out, "\n{}", self.words().say(head));
            if lines.is_empty() {
                let _ = writeln!(out, "  {}", self.words().say("weigh.nothing"));
            }
            for line in lines {
                let _ = writeln!(out, "  {line}");
            }
        }
        let verdicts = weighed
            .needs
            .iter()
            .map(|n| n.verdict)
            .chain(weighed.movements.iter().map(|w| w.verdict))
            .chain(weighed.standards.iter().map(|s| s.verdict));
        let (mut holds, mut few, mut unclear) = (0, 0, 0);
        for verdict in verdicts {
            match verdict {
                Verdict::Holds => holds += 1,
                Verdict::TooFew => few += 1,
                Verdict::Unclear => unclear += 1,
                Verdict::TooHigh | Verdict::TooLow => {}
            }
        }
        let counts = [
            ("holds", Said::Whole(holds)),
            ("unclear", Said::Whole(unclear)),
            ("few", Said::Whole(few)),
        ];
        let _ = writeln!(out, "\n{}", self.words().fill("weigh.rest", &counts));
        if let Some(sees) = weighed.sees() {
            let _ = writeln!(out, "{}", weigh::sees(self.words(), &sees));
        }
        let _ = writeln!(out, "{}", self.words().say("weigh.how"));
        out
    }

    fn need(&self, need: &WeighedNeed) -> Option<String> {
        if need.verdict != Verdict::TooHigh {
            return None;
        }
        let name = report::named(self.curriculum, need.movement);
        let needed = report::named(self.curriculum, need.needed);
        let target = need
            .target
            .say(self.curriculum.school().units, self.words());
        let (low, high) = percents(&need.portion);
        let values = [
            ("movement", Said::Text(&name)),
            ("needed", Said::Text(&needed)),
            ("target", Said::Text(&target)),
            ("below", Said::Whole(need.below as i64)),
            ("owners", Said::Whole(need.owners as i64)),
            ("low", Said::Whole(low)),
            ("high", Said::Whole(high)),
        ];
        let said = self.words().fill("weigh.need", &values);
        let line = need
            .suggest
            .map(|t| format!("{}: {t}", self.id(need.needed)));
        Some(self.with_line(&said, need.span, line))
    }

    fn way(&self, way: &WeighedWay) -> Option<String> {
        let declared = way.declared?;
        let key = match way.verdict {
            Verdict::TooHigh => "weigh.quicker",
            Verdict::TooLow => "weigh.slower",
            _ => return None,
        };
        let name = report::named(self.curriculum, way.movement);
        let half = weigh::half(self.words(), way);
        let declared = declared.to_string();
        let values = [
            ("movement", Said::Text(&name)),
            ("declared", Said::Text(&declared)),
            ("half", Said::Text(&half)),
            ("n", Said::Whole(way.curve.people as i64)),
        ];
        let said = self.words().fill(key, &values);
        let span = self.curriculum.movement(way.movement).spans().id;
        let line = way.suggest.map(|w| format!("weeks: {w}"));
        Some(self.with_line(&said, span, line))
    }

    fn standard(&self, standard: &WeighedStandard) -> Option<String> {
        let key = match standard.verdict {
            Verdict::TooLow => "weigh.everybody",
            Verdict::TooHigh => "weigh.nobody",
            _ => return None,
        };
        let movement = self.curriculum.movement(standard.movement);
        let name = report::named(self.curriculum, standard.movement);
        let target = movement
            .standard()
            .say(self.curriculum.school().units, self.words());
        let values = [
            ("movement", Said::Text(&name)),
            ("target", Said::Text(&target)),
            ("n", Said::Whole(standard.tested as i64)),
        ];
        let said = self.words().fill(key, &values);
        Some(self.with_line(&said, movement.spans().standard, None))
    }

    /// A sentence, where its line stands, and what it would say.
    fn with_line(&self, said: &str, span: Span, line: Option<String>) -> String {
        let (file, at) = self.place(span);
        match line {
            Some(line) => {
                let values = [("line", Said::Text(line.as_str()))];
                let write = self.words().fill("weigh.write", &values);
                format!("{said}\n    {file}:{at}  {write}")
            }
            None => format!("{said}\n    {file}:{at}"),
        }
    }
}

/// The ends of an interval in whole percent, rounded outwards.
fn percents(portion: &Portion) -> (i64, i64) {
    let (low, high) = (portion.low * 100.0, portion.high * 100.0);
    (low.floor() as i64, high.ceil() as i64)
}

fn thousandth(x: f64) -> f64 {
    (x * 1000.0).round() / 1000.0
}
