//! The SVG of a placed map. Lines first, then what stands on each row from the ground up: that is also the order of the keyboard.

use super::Member;
use super::layers::{Kind, Layered};
use super::place::{Curve, HEAD, LINE, MARGIN, Placed, Spot};
use crate::site::draw::figure::number;
use crate::site::names::stage_words;
use crate::words::Words;
use crate::words::escape::escape;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write;

/// Where the plumb line hangs.
const PLUMB: f64 = 10.0;

/// What one sheet of A4 or Letter takes of a map whose letters are printed no smaller than 7 points: width and height. A larger
/// map stays on the screen; on paper the rows of its rungs say the same.
const SHEET: (f64, f64) = (884.0, 1050.0);

/// The class of lines that read downwards.
pub const DOWN: &str = "map-line map-down";

/// From which side the map is drawn: in a language that is written from the right, everything but the letters is mirrored.
#[derive(Clone, Copy)]
struct Side {
    width: f64,
    from_right: bool,
}

impl Side {
    fn x(self, x: f64) -> f64 {
        match self.from_right {
            true => self.width - x,
            false => x,
        }
    }
}

/// The drawing as text.
pub fn draw(
    layered: &Layered,
    placed: &Placed,
    members: &[Member],
    label: &str,
    words: &Words,
) -> String {
    let side = Side {
        width: placed.width,
        from_right: words.is_right_to_left(),
    };
    let (width, height) = (number(placed.width), number(placed.height));
    let class = match placed.width > SHEET.0 || placed.height > SHEET.1 {
        true => "map map-large",
        false => "map",
    };
    let mut out = format!(
        "<svg class=\"{class}\" xmlns=\"http://www.w3.org/2000/svg\" role=\"group\" aria-label=\"{}\" viewBox=\"0 0 {width} {height}\" width=\"{width}\" height=\"{height}\">",
        escape(label)
    );
    levels(&mut out, placed, side, words);
    for (class, down) in [("map-line", false), (DOWN, true)] {
        let mut path = String::new();
        let of_kind = |c: &&Curve| c.down == down && (down || !c.heavy);
        placed
            .curves
            .iter()
            .filter(of_kind)
            .for_each(|c| curve(&mut path, c, side));
        if !path.is_empty() {
            let _ = write!(out, "<path class=\"{class}\" d=\"{path}\"/>");
        }
    }
    essential(&mut out, layered, placed, members, side);
    heads(&mut out, placed, side);
    for node in placed.order.iter().flatten() {
        let spot = &placed.spots[*node];
        match &layered.nodes[*node].kind {
            Kind::Movement(i) => {
                movement(&mut out, spot, &members[*i], &placed.names[*i], side, words)
            }
            Kind::Joint(says) => joint(&mut out, spot, says, side),
            Kind::Point => {}
        }
    }
    out.push_str("</svg>");
    out
}

/// The heads of all lines that arrive.
fn heads(out: &mut String, placed: &Placed, side: Side) {
    let mut path = String::new();
    for c in placed.curves.iter().filter(|c| c.arrives) {
        let (x, y) = c.low;
        let _ = write!(
            path,
            "M{} {}L{} {}L{} {}",
            number(side.x(x - 4.0)),
            number(y - 7.0),
            number(side.x(x)),
            number(y),
            number(side.x(x + 4.0)),
            number(y - 7.0)
        );
    }
    if !path.is_empty() {
        let _ = write!(out, "<path class=\"map-line\" d=\"{path}\"/>");
    }
}

/// The lines of the essential path, those that lead to the same movements in one stroke: a page lights those that somebody still
/// has to go.
fn essential(out: &mut String, layered: &Layered, placed: &Placed, members: &[Member], side: Side) {
    let mut above: Vec<BTreeSet<usize>> = vec![BTreeSet::new(); layered.nodes.len()];
    for row in layered.layers.iter().rev() {
        for node in row {
            let through = match layered.nodes[*node].kind {
                Kind::Movement(i) => BTreeSet::from([i]),
                Kind::Joint(_) | Kind::Point => {
                    let heavy = layered.edges.iter().filter(|e| e.low == *node && e.heavy);
                    heavy.flat_map(|e| &above[e.high]).copied().collect()
                }
            };
            above[*node] = through;
        }
    }
    let mut strokes: BTreeMap<&BTreeSet<usize>, String> = BTreeMap::new();
    for (edge, c) in layered.edges.iter().zip(&placed.curves) {
        if c.heavy && !c.down {
            curve(strokes.entry(&above[edge.high]).or_default(), c, side);
        }
    }
    for (to, path) in strokes {
        let ids: Vec<&str> = to.iter().map(|i| members[*i].id.as_str()).collect();
        let _ = write!(
            out,
            "<path class=\"map-line map-heavy\" data-to=\"{}\" d=\"{path}\"/>",
            escape(&ids.join(" "))
        );
    }
}

/// The plumb line, and a level rung for each stage with its words.
fn levels(out: &mut String, placed: &Placed, side: Side, words: &Words) {
    let foot = placed.rungs.first().map_or(placed.height, |r| r.1);
    let _ = write!(
        out,
        "<path class=\"map-plumb\" d=\"M{} {}V{}\"/>",
        number(side.x(PLUMB)),
        number(MARGIN),
        number(foot)
    );
    for (stage, y) in &placed.rungs {
        let class = if *stage == 0 {
            "map-rung map-ground"
        } else {
            "map-rung"
        };
        let _ = write!(
            out,
            "<path class=\"{class}\" d=\"M{} {}H{}\"/><text class=\"map-stage\" x=\"{}\" y=\"{}\">{}</text>",
            number(side.x(PLUMB - 6.0)),
            number(*y),
            number(side.x(placed.width - 2.0)),
            number(side.x(PLUMB + 7.0)),
            number(y - 6.0),
            escape(&stage_words(words, *stage))
        );
    }
}

fn curve(path: &mut String, c: &Curve, side: Side) {
    let ((x, y), (to_x, to_y)) = (c.low, c.high);
    let (x, to_x) = (side.x(x), side.x(to_x));
    let start = c.foot.unwrap_or(y);
    let _ = write!(path, "M{} {}", number(x), number(start));
    if start != y {
        let _ = write!(path, "V{}", number(y));
    }
    if x == to_x {
        let _ = write!(path, "V{}", number(to_y));
    } else {
        let middle = number((y + to_y) / 2.0);
        let (x, to_x, to_y) = (number(x), number(to_x), number(to_y));
        let _ = write!(path, "C{x} {middle} {to_x} {middle} {to_x} {to_y}");
    }
}

fn joint(out: &mut String, spot: &Spot, says: &str, side: Side) {
    let x = side.x(spot.x);
    let _ = write!(
        out,
        "<g class=\"map-joint\"><rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" rx=\"{}\"/><text x=\"{}\" y=\"{}\">{}</text></g>",
        number(x - spot.half),
        number(spot.top),
        number(2.0 * spot.half),
        number(spot.high),
        number(spot.high / 2.0),
        number(x),
        number(spot.top + spot.high / 2.0 + 4.0),
        escape(says)
    );
}

/// Whether a movement is essential, and what its mark says.
fn kind(member: &Member, words: &Words) -> String {
    let kind = if member.essential {
        words.say("map.essential")
    } else {
        words.say("map.alternative")
    };
    match &member.mark {
        None => kind.to_string(),
        Some((_, signal, says)) => words.fill(
            "map.with_mark",
            &[
                ("kind", kind.into()),
                ("signal", signal.into()),
                ("says", says.into()),
            ],
        ),
    }
}

fn movement(
    out: &mut String,
    spot: &Spot,
    member: &Member,
    name: &[String],
    side: Side,
    words: &Words,
) {
    // From where one begins to read.
    let (start, end) = (spot.x - spot.half, spot.x + spot.half);
    let (top, high) = (spot.top, spot.high);
    let label = kind(member, words);
    let class = if member.essential {
        "map-movement map-essential"
    } else {
        "map-movement"
    };
    let (id, label) = (escape(&member.id), escape(&label));
    let _ = write!(
        out,
        "<g class=\"{class}\" data-movement=\"{id}\"><a href=\"{id}.html\" aria-description=\"{label}\"><rect class=\"map-box-shape\" x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/><path class=\"map-stand\" d=\"M{} {}h{}\"/><text>",
        number(side.x(spot.x) - spot.half),
        number(top),
        number(2.0 * spot.half),
        number(high),
        number(side.x(spot.x) - spot.half),
        number(top + high),
        number(2.0 * spot.half)
    );
    for (i, line) in name.iter().enumerate() {
        let _ = write!(
            out,
            "<tspan x=\"{}\" y=\"{}\">{} </tspan>",
            number(side.x(start + 8.0)),
            number(top + HEAD + 11.0 + LINE * i as f64),
            escape(line)
        );
    }
    out.push_str("</text>");
    if let Some((signal, ..)) = &member.mark {
        // A mark is 30 wide.
        let x = match side.from_right {
            true => side.x(end - 36.0) - 30.0,
            false => end - 36.0,
        };
        mark(out, signal, x, top + high - 20.0, words);
    }
    let _ = write!(
        out,
        "<text class=\"map-state\" data-state-map=\"{id}\" x=\"{}\" y=\"{}\"></text></a></g>",
        number(side.x(start + 29.0)),
        number(top + high - 7.0)
    );
}

/// The mark in the shapes of the pages: a double edge, rounded, or dashed.
fn mark(out: &mut String, signal: &str, x: f64, y: f64, words: &Words) {
    let round = if signal == "caution" { 6 } else { 0 };
    let says = escape(words.say(&format!("map.sign_{signal}")));
    let rect = |out: &mut String, inset: f64| {
        let _ = write!(
            out,
            "<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" rx=\"{round}\"/>",
            number(x + inset),
            number(y + inset),
            number(30.0 - 2.0 * inset),
            number(15.0 - 2.0 * inset)
        );
    };
    let _ = write!(
        out,
        "<g class=\"map-mark map-mark-{signal}\" data-caution=\"{signal}\">"
    );
    rect(out, 0.0);
    if signal == "warning" {
        rect(out, 2.5);
    }
    let _ = write!(
        out,
        "<text x=\"{}\" y=\"{}\">{says}</text></g>",
        number(x + 15.0),
        number(y + 11.5)
    );
}
