//! Colours of a figure that stands as a file of its own.

use std::fmt::Write;

/// Those of the shipped theme, in the light and in the dark. The mark's tone is told from the body and from the paper alike.
const COLOURS: &str = "svg{color:#23262a;--far:#7d8288;--rule:#cfc9bd;--paper:#f7f5f0;--mark:#c0573a}\
@media(prefers-color-scheme:dark){svg{color:#eeece4;--far:#82878a;--rule:#4a535b;--paper:#20262b}}\
path,circle,rect{fill:none;stroke-linecap:round;stroke-linejoin:round}";

/// What is in it, by class.
const LOOKS: [(&[&str], &str); 15] = [
    (
        &["body", "near", "far"],
        "fill:currentColor;stroke:var(--paper);stroke-width:2;paint-order:stroke",
    ),
    (&["far"], "fill:var(--far)"),
    (
        &["ground"],
        "fill:var(--rule);stroke:var(--far);stroke-width:2",
    ),
    (
        &["grip", "strap", "chain"],
        "stroke:var(--far);stroke-width:4",
    ),
    (&["strap", "chain"], "stroke-width:2.5"),
    (&["behind"], "opacity:.55"),
    (&["bar"], "fill:var(--paper);stroke-width:2.5"),
    (
        &["band"],
        "fill:var(--rule);stroke:var(--far);stroke-width:2",
    ),
    (&["belt"], "stroke:var(--paper);stroke-width:4"),
    (
        &["plate"],
        "fill:var(--far);stroke:var(--paper);stroke-width:2",
    ),
    (&["hole"], "fill:var(--paper)"),
    (
        &["plumb"],
        "stroke:var(--mark);stroke-width:2.5;stroke-dasharray:5 6",
    ),
    (
        &["centre"],
        "fill:var(--mark);stroke:var(--paper);stroke-width:2",
    ),
    (
        &["ghost"],
        "stroke:var(--paper);filter:drop-shadow(2px 0 0 var(--far))drop-shadow(-2px 0 0 var(--far))drop-shadow(0 2px 0 var(--far))drop-shadow(0 -2px 0 var(--far))",
    ),
    (&["sign"], "stroke:var(--mark);stroke-width:3.6"),
];

/// As small as in a list: no stroke under a pixel and a half, and no ghost but where something is only lowered from.
const SMALL: [(&[&str], &str); 9] = [
    (&["grip", "ground"], "stroke-width:7"),
    (&["strap", "chain"], "stroke-width:5"),
    (&["band"], "stroke-width:4"),
    (&["plate"], "stroke-width:3"),
    (&["bar"], "fill:var(--far)"),
    (&["plumb"], "stroke-width:5.5;stroke-dasharray:8 9"),
    (&["sign"], "stroke-width:9"),
    (&["ghost"], "display:none"),
    (&["from"], "display:inline"),
];

/// The colours of what a drawing holds; `small` where it may stand in a list.
pub fn colours(svg: &str, small: bool) -> String {
    let mut out = COLOURS.to_string();
    rules(&mut out, svg, &LOOKS);
    if small {
        out.push_str("@media(max-width:72px){");
        rules(&mut out, svg, &SMALL);
        out.push('}');
    }
    out
}

fn rules(out: &mut String, svg: &str, looks: &[(&[&str], &str)]) {
    for (classes, look) in looks {
        let held: Vec<String> = classes
            .iter()
            .map(|class| format!("figure-{class}"))
            .filter(|class| {
                svg.contains(&format!("{class}\"")) || svg.contains(&format!("{class} "))
            })
            .map(|class| format!(".{class}"))
            .collect();
        if !held.is_empty() {
            let _ = write!(out, "{}{{{look}}}", held.join(","));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::COLOURS;

    /// Relative luminance and contrast as WCAG 2.2 defines them.
    fn luminance(hex: &str) -> f64 {
        let part = |from: usize| {
            let value = u8::from_str_radix(&hex[from..from + 2], 16).expect("two digits");
            let value = f64::from(value) / 255.0;
            match value <= 0.04045 {
                true => value / 12.92,
                false => libm::pow((value + 0.055) / 1.055, 2.4),
            }
        };
        0.2126 * part(0) + 0.7152 * part(2) + 0.0722 * part(4)
    }

    fn contrast(one: &str, other: &str) -> f64 {
        let (a, b) = (luminance(one), luminance(other));
        (a.max(b) + 0.05) / (a.min(b) + 0.05)
    }

    /// The colour after a name, in the light or, of the second half, in the dark.
    fn colour(name: &str, dark: bool) -> &'static str {
        let (light, night) = COLOURS.split_once("@media").expect("two halves");
        let from = |half: &'static str| {
            half.split_once(&format!("{name}:#"))
                .map(|(_, rest)| &rest[..6])
        };
        let own = if dark { from(night) } else { None };
        own.or(from(light)).expect("a colour")
    }

    /// WCAG 2.2, 1.4.11: what is needed to understand a drawing has 3:1 against what it lies on.
    #[test]
    fn marks_and_far_limbs_are_told_from_body_and_paper() {
        for dark in [false, true] {
            for tone in ["--mark", "--far"] {
                for ground in ["color", "--paper"] {
                    let told = contrast(colour(tone, dark), colour(ground, dark));
                    assert!(told >= 3.0, "{tone} on {ground}, dark {dark}: {told:.2}");
                }
            }
        }
        // Black on white is 21:1 by the same standard.
        assert!((contrast("000000", "ffffff") - 21.0).abs() < 1e-9);
    }
}
