//! What was weighed in words that the terminal and the page share.

use super::{Sees, WeighedWay};
use crate::words::{Value, Words};

/// How long half of the people took, as far as the curve comes: where half do not own it yet, that is said.
pub fn half(words: &Words, way: &WeighedWay) -> String {
    let tenth = |weeks: f64| words.tenth(weeks);
    let key = match (way.median, way.low, way.high) {
        (Some(_), Some(_), Some(_)) => "weigh.half",
        (Some(_), Some(_), None) => "weigh.half_from",
        (Some(_), None, _) => "weigh.half_alone",
        (None, Some(_), _) => "weigh.not_half_from",
        (None, None, _) => "weigh.not_half",
    };
    let of = |weeks: Option<f64>| weeks.map(tenth).unwrap_or_default();
    let (median, low, high) = (of(way.median), of(way.low), of(way.high));
    let values = [
        ("median", (&median).into()),
        ("low", (&low).into()),
        ("high", (&high).into()),
    ];
    words.fill(key, &values)
}

/// What so many owners can show at all, and what is not seen.
pub fn sees(words: &Words, of: &Sees) -> String {
    let values = [
        ("n", Value::Whole(of.owners as i64)),
        ("high", Value::Whole(of.too_high as i64)),
        ("least", Value::Whole(of.least as i64)),
    ];
    words.fill("weigh.sees", &values)
}
