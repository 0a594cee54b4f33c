//! Ways out: none bends the elbows of a body that is upside down on straight arms, and none asks for a skill that nobody was
//! taught.
//!
//! Both rules read English. What a way out says in another language its reviewer has to judge.

use crate::chain::below;
use crate::curriculum::caution::Part;
use crate::curriculum::exit::{Piece, pieces};
use crate::curriculum::words::{Arms, Pattern, Position};
use crate::curriculum::{Curriculum, Movement, MovementIx};
use crate::leverage;
use crate::source::suggest::did_you_mean;
use crate::source::{Diagnostic, Findings, Rule, Span};
use std::collections::BTreeMap;

/// What gives way when it bends, and what bending is called.
const ARMS: &[&str] = &["elbow", "elbows", "arm", "arms"];
const BEND: &[&str] = &["bend", "bends", "bending", "bent", "soften", "unlock"];

/// What may stand between the two.
const BETWEEN: &[&str] = &[
    "the", "your", "both", "one", "an", "at", "in", "a", "little", "slightly", "slowly", "gently",
    "and", "or", "hips", "knees", "to", "are",
];

/// What turns a word into its opposite.
const NOT: &[&str] = &[
    "not", "never", "no", "without", "don't", "don’t", "nor", "instead",
];

/// Skills that ways out are made of: for each the words that name it, and those of movements that teach it.
const SKILLS: &[Skill] = &[
    Skill {
        named: &[
            "roll over",
            "roll back",
            "roll out",
            "roll forward",
            "roll forwards",
            "roll on",
            "roll onto",
            "roll away",
            "roll down",
            "rolling",
            "forward roll",
            "backward roll",
            "shoulder roll",
            "somersault",
        ],
        taught: &["roll", "rolls", "rolling", "somersault"],
    },
    Skill {
        named: &[
            "cartwheel",
            "pirouette",
            "turn a quarter",
            "turns a quarter",
            "quarter turn",
            "turn out",
            "twist out",
        ],
        taught: &["cartwheel", "pirouette", "turn", "turning", "twist"],
    },
];

struct Skill {
    named: &'static [&'static str],
    taught: &'static [&'static str],
}

pub fn check(curriculum: &Curriculum, findings: &mut Findings) {
    // The school's own wordings, each with the first movement that it would let fall.
    let mut wordings: BTreeMap<Span, (String, MovementIx)> = BTreeMap::new();
    for (ix, movement) in curriculum.movements() {
        let straight = movement.inverted() && on_straight_arms(movement);
        if let Some((text, span)) = movement.exit().zip(movement.spans().exit) {
            if straight && bends_arms(text) {
                findings.push(bent("the exit", movement, span));
            }
            links(curriculum, movement, text, span, findings);
            untaught(curriculum, ix, text, span, findings);
        }
        for class in movement.cautions().iter().filter(|_| straight) {
            let class = curriculum.cautions().class(*class);
            for part in [Part::BailOut, Part::Stop] {
                let text = class.wording(part).at(Position::Inverted);
                if let Some(span) = text.span.filter(|_| bends_arms(&text.words)) {
                    wordings.entry(span).or_insert((class.id.to_string(), ix));
                }
            }
        }
    }
    for (span, (class, ix)) in wordings {
        let movement = curriculum.movement(ix);
        let of = format!("the caution `{class}`");
        findings.push(bent(&of, movement, span).related(movement.spans().id, "upside down"));
    }
}

fn bent(what: &str, movement: &Movement, span: Span) -> Diagnostic {
    Diagnostic::new(
        Rule::BentArmsInverted,
        span,
        format!(
            "{what} bends the arms, and `{}` is upside down on straight arms: who bends them falls on the head",
            movement.id()
        ),
    )
    .label("drops the body on the head")
    .help("say how the feet come down first, with the arms straight; in cautions.yaml write words of its own under `inverted:`")
}

/// By its definition, or else by its posture.
fn on_straight_arms(movement: &Movement) -> bool {
    let posture = || movement.posture().and_then(leverage::arms);
    match movement.arms() {
        Some(arms) => arms == Arms::Straight,
        None => posture().is_some_and(|p| p.elbows.iter().all(|e| *e >= STRAIGHT_FROM)),
    }
}

/// Degrees at the elbow from which an arm is straight. Common practice, no source.
const STRAIGHT_FROM: f64 = 165.0;

/// Whether a text says to bend the elbows or the arms.
fn bends_arms(text: &str) -> bool {
    clauses(text).iter().any(|words| {
        let negated = |at: usize| words[..at].iter().any(|w| NOT.contains(&w.as_str()));
        let is = |at: usize, list: &[&str]| list.contains(&words[at].as_str());
        let joined = |from: usize, to: usize| (from + 1..to).all(|i| is(i, BETWEEN));
        let pairs = |first: &[&str], second: &[&str]| {
            (0..words.len()).filter(|i| is(*i, first)).any(|i| {
                let next = (i + 1..words.len()).find(|j| is(*j, second));
                next.is_some_and(|j| joined(i, j)) && !negated(i)
            })
        };
        pairs(BEND, ARMS) || pairs(ARMS, BEND)
    })
}

/// A text in small letters, cut where a thought ends; of links the words alone.
fn clauses(text: &str) -> Vec<Vec<String>> {
    let said: String = pieces(text)
        .into_iter()
        .map(|piece| match piece {
            Piece::Text(text) => text,
            Piece::Link { words, .. } => words,
        })
        .collect();
    let cut = |c: char| matches!(c, '.' | ',' | ';' | ':' | '!' | '?');
    let words = |clause: &str| {
        let word = |c: char| !c.is_alphanumeric() && c != '\'' && c != '’';
        let parts = clause.split(word).filter(|w| !w.is_empty());
        parts.map(str::to_lowercase).collect()
    };
    said.split(cut).map(words).collect()
}

/// A way out leads to movements that exist and are published.
fn links(
    curriculum: &Curriculum,
    movement: &Movement,
    text: &str,
    span: Span,
    findings: &mut Findings,
) {
    for piece in pieces(text) {
        let Piece::Link { id, .. } = piece else {
            continue;
        };
        let found = curriculum
            .find_movement(id)
            .map(|ix| curriculum.movement(ix));
        match found {
            Some(to) if to.held_back() && !movement.held_back() => findings.push(
                Diagnostic::new(
                    Rule::HeldBack,
                    span,
                    format!(
                        "the exit of `{}` leads to `{id}`, which is held back",
                        movement.id()
                    ),
                )
                .help(format!("publish `{id}`, or take the link out")),
            ),
            Some(_) => {}
            None => {
                let known = curriculum.published().map(|(_, m)| m.id().as_str());
                let help = did_you_mean(id, known)
                    .unwrap_or_else(|| "name a movement of this curriculum".into());
                findings.push(
                    Diagnostic::new(
                        Rule::BrokenLink,
                        span,
                        format!("there is no movement `{id}`"),
                    )
                    .label("leads nowhere")
                    .help(help),
                );
            }
        }
    }
}

/// A skill that the way out names is taught by something that the movement needs.
fn untaught(
    curriculum: &Curriculum,
    ix: MovementIx,
    text: &str,
    span: Span,
    findings: &mut Findings,
) {
    let movement = curriculum.movement(ix);
    let lies = |p: &Position| matches!(p, Position::Prone | Position::Supine | Position::Side);
    if movement.pattern() == Pattern::Exit || movement.positions().iter().all(lies) {
        return;
    }
    let Some((skill, named)) = SKILLS.iter().find_map(|s| Some((s, s.named_in(text)?))) else {
        return;
    };
    let foundations = below(curriculum, ix);
    let taught = foundations
        .iter()
        .filter(|other| **other != ix)
        .map(|other| curriculum.movement(*other))
        .any(|m| skill.is_taught_by(m) || leads_to(text, m));
    if !taught {
        findings.push(
            Diagnostic::new(
                Rule::ExitUntaught,
                span,
                format!("the exit of `{}` says `{named}`, and nothing that it needs teaches that", movement.id()),
            )
            .label("a skill of its own")
            .help(format!("make the movement that teaches it a need, and link it here: `[{named}](movement:ID)`; or write a way out that needs no skill")),
        );
    }
}

/// Whether a way out links this movement.
fn leads_to(text: &str, movement: &Movement) -> bool {
    pieces(text)
        .iter()
        .any(|p| matches!(p, Piece::Link { id, .. } if *id == movement.id().as_str()))
}

impl Skill {
    /// The words by which a text asks for it.
    fn named_in(&self, text: &str) -> Option<&'static str> {
        clauses(text).iter().find_map(|words| {
            let negated = words.iter().any(|w| NOT.contains(&w.as_str()));
            let clause = format!(" {} ", words.join(" "));
            let named = |name: &&&str| clause.contains(&format!(" {name} "));
            self.named.iter().find(named).copied().filter(|_| !negated)
        })
    }

    /// An exit movement whose id, name or other names say so.
    fn is_taught_by(&self, movement: &Movement) -> bool {
        let mut names = std::iter::once(movement.id().as_str())
            .chain([movement.name()])
            .chain(movement.also().iter().map(String::as_str));
        movement.pattern() == Pattern::Exit
            && names.any(|name| {
                let small = name.to_lowercase();
                let mut words = small.split(|c: char| !c.is_alphanumeric());
                words.any(|w| self.taught.contains(&w))
            })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::curriculum::caution::{Book, Shipped};

    #[test]
    fn what_bends_the_arms() {
        for text in [
            "Bend the elbows and step down.",
            "Slowly bend both arms.",
            "Let the arms bend, then roll.",
            "With elbows bent, come down.",
            "Bend at the elbows.",
        ] {
            assert!(bends_arms(text), "{text}");
        }
        for text in [
            "Bend the hips and knees, arms straight.",
            "Never bend the elbows.",
            "Do not let the arms bend.",
            "Keep the elbows locked: bent, they drop you.",
            "Bend the knees towards the arms.",
        ] {
            assert!(!bends_arms(text), "{text}");
        }
    }

    /// No shipped class tells who is upside down on straight arms to bend them: the class itself and all others.
    #[test]
    fn no_shipped_way_out_bends_the_arms_upside_down() {
        let book = Book::default();
        for class in book.classes() {
            for part in Part::ALL {
                let text = class.wording(*part).at(Position::Inverted);
                assert!(!bends_arms(&text.words), "{}: {}", class.id, text.words);
            }
        }
        let support = book.class(Book::shipped(Shipped::StraightArm));
        let support = support.wording(Part::BailOut).at(Position::Support);
        assert!(bends_arms(&support.words), "{}", support.words);
    }
}
