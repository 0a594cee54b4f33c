//! Training sessions in notes: sets with rest and reserve, pairs, warm-ups, practice by time.

use super::note::held_back_finding;
use super::resolve::{Ids, different_measure};
use crate::curriculum::note::{Done, SessionLine};
use crate::curriculum::target::{Measure, TargetError, in_reserve};
use crate::curriculum::{MovementIx, Owner, Target};
use crate::source::markdown::Line;
use crate::source::suggest::did_you_mean;
use crate::source::{Diagnostic, Findings, Rule, Span};

/// How a line reads.
const SHAPE: &str = "a line reads `movement-id  5x5  rest 2 min  2 in reserve`";
const WARM_UP: &str = "warm-up:";

/// The lines of a block that can be read.
pub fn read(
    block: &[Line],
    held_back: bool,
    ids: &Ids<'_>,
    findings: &mut Findings,
) -> Vec<SessionLine> {
    let mut out: Vec<SessionLine> = Vec::new();
    let mut pairs: Vec<(char, Span, usize)> = Vec::new();
    for line in block {
        let mut reader = Reader {
            line,
            held_back,
            ids,
            findings,
        };
        let words = words(&line.text);
        if let Some(letter) = words.first().and_then(|w| pair(w.text)) {
            match pairs.iter_mut().find(|(known, ..)| *known == letter) {
                Some((.., count)) => *count += 1,
                None => pairs.push((letter, reader.place(&words[..1]), 1)),
            }
        }
        out.extend(reader.line(&words));
    }
    for (letter, span, _) in pairs.into_iter().filter(|(.., count)| *count == 1) {
        findings.push(
            Diagnostic::new(
                Rule::BadSession,
                span,
                format!("nothing is paired with `{letter}`"),
            )
            .label("alone")
            .help(format!(
                "begin the line that is done in turn with it with `{letter}2`, or leave this out"
            )),
        );
    }
    out
}

/// A word of a line and where it begins.
#[derive(Clone, Copy)]
struct Word<'a> {
    text: &'a str,
    at: usize,
}

fn words(text: &str) -> Vec<Word<'_>> {
    text.split_whitespace()
        .map(|word| Word {
            text: word,
            at: word.as_ptr() as usize - text.as_ptr() as usize,
        })
        .collect()
}

/// The letter of `A1`, `B2` and the like.
fn pair(word: &str) -> Option<char> {
    let letter = word.chars().next().filter(char::is_ascii_uppercase)?;
    let number = &word[1..];
    (!number.is_empty() && number.bytes().all(|b| b.is_ascii_digit())).then_some(letter)
}

/// What to write for what is left in reserve, where a text says it in the shorthand of notebooks.
fn shorthand(text: &str) -> Option<String> {
    let (at, left) = in_reserve(text)?;
    Some(match left {
        Some(n) => format!("write `{n} in reserve` for `{}`", text[at].trim()),
        None => "write it like `2 in reserve`".into(),
    })
}

/// What to write for an amount that cannot be read.
fn meant(id: &str, text: &str) -> Option<String> {
    if let Some(help) = shorthand(text) {
        return Some(help);
    }
    if let Some(plain) = text.strip_suffix(',') {
        return Some(format!("leave out the comma: `{id}  {plain}`"));
    }
    let time = text.strip_prefix("for ")?.trim();
    Some(format!("practice by time begins with it: `{time}  {id}`"))
}

struct Reader<'a, 'f> {
    line: &'a Line,
    held_back: bool,
    ids: &'a Ids<'a>,
    findings: &'f mut Findings,
}

impl Reader<'_, '_> {
    /// Where words stand; the whole line for none.
    fn place(&self, of: &[Word<'_>]) -> Span {
        match (of.first(), of.last()) {
            (Some(first), Some(last)) => self.line.span.within(first.at, last.at + last.text.len()),
            _ => self.line.span,
        }
    }

    fn bad(&mut self, at: Span, message: String, help: &str) {
        let finding = Diagnostic::new(Rule::BadSession, at, message).label("here");
        self.findings.push(finding.help(help));
    }

    /// Whether a word is the id of a movement.
    fn known(&self, id: &Word<'_>) -> bool {
        matches!(self.ids.by_id.get(id.text), Some(Owner::Movement(_)))
    }

    /// The text of words as it was written.
    fn text(&self, of: &[Word<'_>]) -> &str {
        match (of.first(), of.last()) {
            (Some(first), Some(last)) => &self.line.text[first.at..last.at + last.text.len()],
            _ => "",
        }
    }

    fn line(&mut self, words: &[Word<'_>]) -> Option<SessionLine> {
        let mut words = words;
        let mut out = SessionLine {
            pair: None,
            warm_up: false,
            what: Done::Words(String::new()),
            rest: None,
            in_reserve: None,
        };
        if let [first, more @ ..] = words
            && pair(first.text).is_some()
        {
            out.pair = Some(first.text.to_string());
            words = more;
        }
        if let [first, more @ ..] = words
            && first.text.eq_ignore_ascii_case(WARM_UP)
        {
            out.warm_up = true;
            words = more;
            if self.is_free(words) {
                out.what = Done::Words(self.text(words).to_string());
                return Some(out);
            }
        }
        let starts_with_time = words
            .first()
            .is_some_and(|w| w.text.starts_with(|c: char| c.is_ascii_digit()));
        if starts_with_time {
            out.what = self.practice(words)?;
            return Some(out);
        }
        let Some((id, more)) = words.split_first() else {
            self.bad(self.line.span, "nothing follows".into(), SHAPE);
            return None;
        };
        let ix = self.movement(id)?;
        let (amount, rest, reserve) = self.parts(more)?;
        (out.rest, out.in_reserve) = (rest, reserve);
        out.what = Done::Sets(ix, self.target(ix, amount)?);
        Some(out)
    }

    /// A line of a warm-up in words: no movement with an amount behind it.
    fn is_free(&self, words: &[Word<'_>]) -> bool {
        match words {
            [] => false,
            [id, amount, ..] if amount.text.starts_with(|c: char| c.is_ascii_digit()) => {
                let known = self.ids.by_id.contains_key(id.text);
                let time = id.text.starts_with(|c: char| c.is_ascii_digit());
                !known && (time || !id.text.contains('-'))
            }
            [time, .., id] if time.text.starts_with(|c: char| c.is_ascii_digit()) => {
                !self.ids.by_id.contains_key(id.text)
            }
            [id, ..] => !matches!(self.ids.by_id.get(id.text), Some(Owner::Movement(_))),
        }
    }

    /// `10 min  free-kick-up`.
    fn practice(&mut self, words: &[Word<'_>]) -> Option<Done> {
        let is_time = |t: &Target| t.measure() == Measure::Time && t.sets() == 1;
        let reads = |n: usize| {
            let time = words.get(..n).map(|of| self.text(of))?;
            Target::read(time).ok().filter(is_time).map(|t| (n, t))
        };
        let Some((n, time)) = reads(2).or_else(|| reads(1)) else {
            let turned = match words {
                [amount, id] => self
                    .known(id)
                    .then(|| format!("write `{}  {}`", id.text, amount.text)),
                _ => None,
            };
            let help = turned.unwrap_or_else(|| {
                "practice by time reads `10 min  movement-id`; sets read `movement-id  5x5`".into()
            });
            self.bad(
                self.place(&words[..1]),
                "a line begins with the id of a movement, or with a time".into(),
                &help,
            );
            return None;
        };
        let Some((id, more)) = words[n..].split_first() else {
            self.bad(
                self.line.span,
                "what to practise is missing".into(),
                "write the id of a movement behind the time: `10 min  movement-id`",
            );
            return None;
        };
        if let ("of" | "for", [id, ..]) = (id.text, more) {
            let help = format!("write `{}  {}`", self.text(&words[..n]), id.text);
            self.bad(
                self.place(&words[n..=n]),
                "a movement follows the time".into(),
                &help,
            );
            return None;
        }
        let ix = self.movement(id)?;
        if !more.is_empty() {
            self.bad(
                self.place(more),
                "practice by time has no sets".into(),
                "leave this out, or write sets: `movement-id  5x5`",
            );
            return None;
        }
        Some(Done::For(ix, time))
    }

    fn movement(&mut self, id: &Word<'_>) -> Option<MovementIx> {
        let span = self.place(&[*id]);
        let id = id.text;
        let Some(Owner::Movement(ix)) = self.ids.by_id.get(id).copied() else {
            let movements = self
                .ids
                .by_id
                .iter()
                .filter(|(_, o)| matches!(o, Owner::Movement(_)));
            if !self.ids.unread.contains(id) {
                let bare = id.trim_end_matches(':');
                let help = match bare.to_lowercase().as_str() {
                    "warmup" | "warm_up" | "warm" => "write `warm-up:`".to_string(),
                    "practice" | "practise" => {
                        "leave it out: a time before a movement is practice, `10 min  movement-id`"
                            .to_string()
                    }
                    lower if pair(&lower.to_uppercase()).is_some() => {
                        format!("leave out the colon: `{}`", lower.to_uppercase())
                    }
                    _ => did_you_mean(bare, movements.map(|(id, _)| id.as_str()))
                        .unwrap_or_else(|| "begin the line with the id of a movement".into()),
                };
                self.bad(
                    span,
                    format!("there is no movement `{id}` in this session"),
                    &help,
                );
            }
            return None;
        };
        if self.ids.movements[ix.at()].held_back() && !self.held_back {
            self.findings.push(held_back_finding(span, id));
        }
        Some(ix)
    }

    /// The words of the amount, how long to rest, and what is left in reserve.
    fn parts<'w>(
        &mut self,
        words: &'w [Word<'w>],
    ) -> Option<(&'w [Word<'w>], Option<String>, Option<u32>)> {
        let rest = words.iter().position(|w| w.text == "rest");
        let reserve = words
            .windows(2)
            .position(|two| two[0].text == "in" && two[1].text == "reserve");
        let number = reserve.and_then(|at| at.checked_sub(1));
        let left = number.and_then(|at| words[at].text.parse::<u32>().ok());
        if reserve.is_some() && left.is_none() {
            let at = reserve.map_or(0, |at| at.saturating_sub(1));
            self.bad(
                self.place(&words[at..]),
                "how many are left in reserve is missing".into(),
                "write a whole number, like `2 in reserve`",
            );
            return None;
        }
        let end = [rest, number].into_iter().flatten().min();
        let amount = &words[..end.unwrap_or(words.len())];
        let pause = rest.map(|at| {
            let end = number.filter(|n| *n > at).unwrap_or(words.len());
            self.text(&words[at + 1..end]).to_string()
        });
        if let (Some(at), Some(pause)) = (rest, &pause)
            && let Some(help) = shorthand(pause)
        {
            self.bad(
                self.place(&words[at + 1..]),
                "what is left in reserve is said in words".into(),
                &help,
            );
            return None;
        }
        if pause.as_deref() == Some("") {
            self.bad(
                self.line.span,
                "how long to rest is missing".into(),
                "write it like `rest 2 min`",
            );
            return None;
        }
        let last = reserve
            .map(|at| at + 2)
            .filter(|last| rest.is_none_or(|r| r < *last));
        if let Some(more) = last
            .and_then(|last| words.get(last..))
            .filter(|more| !more.is_empty())
        {
            self.bad(
                self.place(more),
                format!("`{}` is not read here", self.text(more)),
                SHAPE,
            );
            return None;
        }
        Some((amount, pause, left))
    }

    fn target(&mut self, ix: MovementIx, amount: &[Word<'_>]) -> Option<Target> {
        let (text, span) = (self.text(amount).to_string(), self.place(amount));
        let movement = &self.ids.movements[ix.at()];
        let target = match Target::read(&text) {
            Ok(target) => target,
            Err(TargetError { message, .. }) => {
                let id = movement.id().as_str();
                let help = meant(id, &text).unwrap_or_else(|| SHAPE.into());
                let message = match shorthand(&text) {
                    Some(_) => "what is left in reserve is said in words".into(),
                    None => format!("`{text}` is not a target: {message}"),
                };
                self.bad(span, message, &help);
                return None;
            }
        };
        let fits = target.compares_with(&movement.standard())
            || movement.dose().is_some_and(|d| d.compares_with(&target));
        if !fits && !movement.faulty() {
            let by_time = target.measure() == Measure::Time && text.contains("min");
            let mut finding = different_measure(&target, span, movement);
            if by_time {
                let id = movement.id();
                finding.help = format!("practice by time begins with it: `{text}  {id}`");
            }
            self.findings.push(finding);
            return None;
        }
        Some(target)
    }
}
