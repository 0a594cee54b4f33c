//! Files that are always loaded together, published as one: fewer for a page to ask for, and lighter when packed.

/// What is published as one file, and of what, in the order in which they run or hold.
const BUNDLES: &[(&str, &[&str])] = &[
    ("look.css", &["tokens.css", "layout.css", "parts.css"]),
    ("kept.js", &["targets.js", "results.js", "store.js"]),
    ("ready.js", &["readiness.js", "held.js", "states.js"]),
    (
        "plan.js",
        &[
            "training-known.js",
            "training-route.js",
            "training-back.js",
            "training-lines.js",
            "training-choice.js",
            "training-retest.js",
            "training.js",
            "aim.js",
        ],
    ),
    ("ask.js", &["number.js", "entry.js"]),
    ("session.js", &["rest.js", "today.js"]),
];

/// Parts that a page asks for alone too.
const ALONE: &[&str] = &["number.js"];

/// The bundles with their parts.
pub fn all() -> impl Iterator<Item = (&'static str, &'static [&'static str])> {
    BUNDLES.iter().copied()
}

/// Whether a file is published in a bundle, and not by itself.
pub fn is_part(path: &str) -> bool {
    !ALONE.contains(&path) && all().any(|(_, parts)| parts.contains(&path))
}

/// Scripts one after the other. What each says of itself in lines of their own holds for all, or was read before.
pub fn joined<'t>(scripts: impl Iterator<Item = &'t str>) -> String {
    let lines = scripts.flat_map(str::lines);
    let code = lines.filter(|line| *line != "'use strict';" && !line.starts_with("'after "));
    code.flat_map(|line| [line, "\n"]).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_file_is_in_one_bundle_at_most() {
        let mut parts: Vec<&str> = all().flat_map(|(_, parts)| parts.to_vec()).collect();
        let count = parts.len();
        parts.sort_unstable();
        parts.dedup();
        assert_eq!(parts.len(), count);
        assert!(all().all(|(name, _)| !is_part(name)));
    }

    #[test]
    fn scripts_follow_each_other() {
        let scripts = [
            "'use strict';\n'after page.js';\n(()=>{a();})();\n",
            "'use strict';\nb();\n",
        ];
        assert_eq!(joined(scripts.into_iter()), "(()=>{a();})();\nb();\n");
    }
}
