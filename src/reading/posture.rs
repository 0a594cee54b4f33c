//! The `leverage` key: a named posture, or joint angles and what is touched.

use super::fields::{self, Record};
use crate::curriculum::keys;
use crate::curriculum::posture::{Joints, Posture};
use crate::source::yaml::Node;
use crate::source::{Diagnostic, Findings, Rule};

const LENGTH: &[(&str, f64)] = &[("cm", 1.0), ("in", 2.54), ("m", 100.0)];
const ANGLE: &[(&str, f64)] = &[("deg", 1.0), ("", 1.0)];

pub fn read(node: &Node, findings: &mut Findings) -> Option<Posture> {
    let record = Record::open(node, "leverage", keys::LEVERAGE, findings)?;
    let named = record.text("posture", findings);
    let touches = record
        .get("touches")
        .map_or_else(Vec::new, |n| fields::words(n, Rule::BadPosture, findings));
    let start = record.get("start").and_then(|n| joints(n, findings));
    if named.is_none() && (touches.is_empty() || start.is_none()) {
        findings.push(
            Diagnostic::new(
                Rule::BadPosture,
                node.span,
                "a posture needs a name, or `touches` and `start`",
            )
            .label("not enough to stand on")
            .help("write `leverage: { posture: plank }`, or what is touched and the joint angles"),
        );
        return None;
    }
    Some(Posture {
        named,
        touches,
        start: start.unwrap_or_default(),
        end: record.get("end").and_then(|n| joints(n, findings)),
        hands_at: record.amount("hands_at", LENGTH, findings),
        feet_at: record.amount("feet_at", LENGTH, findings),
        with: record
            .get("with")
            .map_or_else(Vec::new, |n| fields::words(n, Rule::BadPosture, findings)),
        span: node.span,
    })
}

fn joints(node: &Node, findings: &mut Findings) -> Option<Joints> {
    let record = Record::open(node, "a set of joint angles", keys::JOINTS, findings)?;
    let mut angle = |name: &str| {
        let degrees = record.amount(name, ANGLE, findings)?;
        if !(-60.0..=300.0).contains(&degrees) {
            findings.push(
                Diagnostic::new(
                    Rule::BadPosture,
                    record.get(name).map_or(node.span, |n| n.span),
                    format!("no {name} bends to {degrees} degrees"),
                )
                .help("180 deg is straight"),
            );
            return None;
        }
        Some(degrees)
    };
    Some(Joints {
        shoulder: angle("shoulder"),
        elbow: angle("elbow"),
        hip: angle("hip"),
        knee: angle("knee"),
    })
}
