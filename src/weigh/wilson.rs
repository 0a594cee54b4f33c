//! A share of people with its 95 % interval.

/// The share of so many of so many people, and the ends of its 95 % Wilson interval; all from 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Portion {
    pub share: f64,
    pub low: f64,
    pub high: f64,
}

/// The normal quantile of 97.5 %.
pub(super) const Z: f64 = 1.959_963_984_540_054;

/// The interval of Wilson 1927 (J Am Stat Assoc 22:209-212), without continuity correction. Of nobody it says nothing: the whole
/// range.
pub fn portion(hits: usize, of: usize) -> Portion {
    if of == 0 {
        return Portion {
            share: 0.0,
            low: 0.0,
            high: 1.0,
        };
    }
    let (n, p) = (of as f64, hits as f64 / of as f64);
    let z2 = Z * Z;
    let middle = (p + z2 / (2.0 * n)) / (1.0 + z2 / n);
    let half = Z / (1.0 + z2 / n) * (p * (1.0 - p) / n + z2 / (4.0 * n * n)).sqrt();
    Portion {
        share: p,
        low: (middle - half).max(0.0),
        high: (middle + half).min(1.0),
    }
}

#[cfg(test)]
mod tests {
    use super::portion;

    /// Newcombe 1998 (Stat Med 17:857-872), table I, method 3: the Wilson score interval without continuity correction.
    #[test]
    fn published_intervals() {
        for (hits, of, low, high) in [
            (81, 263, 0.2553, 0.3662),
            (15, 148, 0.0624, 0.1605),
            (0, 20, 0.0, 0.1611),
            (1, 29, 0.0061, 0.1718),
        ] {
            let got = portion(hits, of);
            assert!(
                (got.low - low).abs() < 5e-5 && (got.high - high).abs() < 5e-5,
                "{hits} of {of}: {got:?}"
            );
        }
    }
}
