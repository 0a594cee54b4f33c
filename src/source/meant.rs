//! What was meant by a word that is known elsewhere in the trade, but not here.

use super::suggest::listed;
use std::borrow::Cow;

/// Words that people type for a key, each with the keys that say it; the first that a record has is meant. Common practice, no
/// source.
const KEYS: &[(&str, &[&str])] = &[
    ("video", &["clip"]),
    ("movie", &["clip"]),
    ("image", &["pictures"]),
    ("images", &["pictures"]),
    ("picture", &["pictures"]),
    ("photo", &["pictures"]),
    ("photos", &["pictures"]),
    ("pain", &["paused", "pain"]),
    ("hurts", &["pain", "paused"]),
    ("injury", &["paused", "restrict"]),
    ("injuries", &["paused", "restrict"]),
    ("date", &["on"]),
    ("day", &["on"]),
    ("when", &["on"]),
    ("weight", &["with", "bodyweight", "load"]),
    ("bw", &["bodyweight"]),
    ("mass", &["bodyweight"]),
    ("comment", &["words", "summary"]),
    ("comments", &["remarks"]),
    ("description", &["summary"]),
    ("title", &["name"]),
    ("id", &["movement", "skill", "family", "school"]),
    ("exercise", &["movement"]),
    ("move", &["movement"]),
    ("aka", &["also"]),
    ("alias", &["also"]),
    ("aliases", &["also"]),
    ("synonyms", &["also"]),
    ("prerequisites", &["needs"]),
    ("prerequisite", &["needs"]),
    ("requires", &["needs"]),
    ("require", &["needs"]),
    ("before", &["needs"]),
    ("goal", &["standard"]),
    ("target", &["standard", "goal"]),
    ("passed_at", &["standard"]),
    ("sets", &["dose", "did"]),
    ("programming", &["dose"]),
    ("prescription", &["dose"]),
    ("result", &["got"]),
    ("score", &["got"]),
    ("reps", &["got", "standard"]),
    ("seconds", &["got", "standard"]),
    ("muscles", &["stresses"]),
    ("joints", &["stresses"]),
    ("type", &["pattern"]),
    ("category", &["pattern"]),
    ("gear", &["equipment", "have"]),
    ("tools", &["equipment", "have"]),
    ("apparatus", &["equipment", "have"]),
    ("mistakes", &["faults"]),
    ("errors", &["faults"]),
    ("tips", &["cues"]),
    ("coaching", &["cues"]),
    ("warnings", &["cautions"]),
    ("warning", &["cautions"]),
    ("caution", &["cautions"]),
    ("safety", &["cautions", "exit"]),
    ("bail", &["exit"]),
    ("way_out", &["exit"]),
    ("duration", &["weeks"]),
    ("months", &["weeks"]),
    ("references", &["sources"]),
    ("unilateral", &["each_side"]),
    ("per_side", &["each_side"]),
    ("why", &["because"]),
    ("cause", &["because"]),
    ("fix", &["try"]),
    ("correction", &["try"]),
    ("fault", &["see"]),
    ("what", &["see"]),
    ("player", &["name"]),
    ("client", &["name"]),
    ("rir", &["in_reserve"]),
    ("reserve", &["in_reserve"]),
    ("rpe", &["in_reserve"]),
    ("birthday", &["born"]),
    ("age", &["born"]),
    ("year", &["born"]),
    ("end", &["until"]),
    ("to", &["until"]),
    ("from", &["on"]),
    ("url", &["address"]),
    ("website", &["address"]),
    ("license", &["licence"]),
    ("email", &["contact"]),
    ("output", &["publish_to"]),
];

/// Words that people type for a value, each with those that say it here. Common practice, no source.
const VALUES: &[(&str, &[&str])] = &[
    ("negative", &["lowering"]),
    ("negatives", &["lowering"]),
    ("eccentric", &["lowering"]),
    ("concentric", &["raising"]),
    ("isometric", &["hold"]),
    ("static", &["hold"]),
    ("upside down", &["inverted"]),
    ("upside-down", &["inverted"]),
    ("standing", &["upright"]),
    ("sitting", &["upright"]),
    ("face down", &["prone"]),
    ("face up", &["supine"]),
    ("on the back", &["supine"]),
    ("dips", &["support"]),
    ("locked", &["straight"]),
    ("bodyweight", &["body"]),
    ("weighted", &["added"]),
    ("weight", &["added"]),
    ("band", &["assisted"]),
    ("legs", &["squat", "hinge"]),
    ("push", &["vertical push", "horizontal push"]),
    ("pull", &["vertical pull", "horizontal pull"]),
    ("press", &["vertical push", "horizontal push"]),
    ("row", &["horizontal pull"]),
    ("stretch", &["mobility"]),
    ("flexibility", &["mobility"]),
    ("abs", &["core"]),
    ("lats", &["upper-back"]),
    ("back", &["upper-back", "lower-back"]),
    ("spine", &["lower-back", "neck"]),
    ("chest", &["shoulder"]),
    ("biceps", &["elbow"]),
    ("triceps", &["elbow"]),
    ("forearm", &["wrist", "fingers"]),
    ("grip", &["fingers"]),
    ("hand", &["wrist", "fingers"]),
    ("calf", &["ankle"]),
    ("quads", &["knee"]),
    ("kg", &["metric"]),
    ("cm", &["metric"]),
    ("lb", &["imperial"]),
    ("lbs", &["imperial"]),
];

/// "did you mean ...?" of a value that is known elsewhere, where some of what says it here is among the possible ones.
pub fn value_of(word: &str, possible: &[&str]) -> Option<String> {
    let lower = word.trim().to_lowercase();
    let (_, said) = VALUES.iter().find(|(typed, _)| *typed == lower)?;
    let said: Vec<String> = said
        .iter()
        .filter(|value| possible.contains(*value))
        .map(|value| format!("`{value}`"))
        .collect();
    (!said.is_empty()).then(|| format!("did you mean {}?", listed(&said, "or")))
}

/// What is done instead of a key that no record has.
const OTHERWISE: &[(&str, &[&str], &str)] = &[
    (
        "movement",
        &["note", "notes", "text", "body"],
        "write it as Markdown in `content/notes/`, in a file named by the movement's id and `.md`",
    ),
    (
        "skill",
        &["note", "notes", "text", "body"],
        "write it as Markdown in `content/notes/`, in a file named by the skill's id and `.md`",
    ),
    (
        "movement",
        &["tags", "tag", "keywords", "labels"],
        "other names that people look for go under `also: [...]`; what it trains is said by `pattern` and `stresses`",
    ),
    (
        "movement",
        &["level", "difficulty", "grade"],
        "no level is typed: how hard it is follows from `needs`",
    ),
    (
        "movement",
        &["unlocks", "opens", "leads_to", "next"],
        "what it opens is not typed: the harder movement says so under `needs`",
    ),
];

/// What is typed in place of a key that a record does not have: among its keys, or in another way.
pub fn instead_of<'k>(
    what: &str,
    word: &str,
    keys: impl Iterator<Item = &'k str>,
) -> Option<Cow<'static, str>> {
    let lower = word.to_lowercase().replace([' ', '-'], "_");
    let keys: Vec<&str> = keys.collect();
    let near = KEYS.iter().find(|(typed, _)| *typed == lower);
    let near = near.and_then(|(_, said)| said.iter().find(|key| keys.contains(*key)));
    if let Some(key) = near {
        return Some(format!("did you mean `{key}`?").into());
    }
    if let Some(key) = keys.iter().find(|key| **key == lower) {
        return Some(format!("type `{key}`").into());
    }
    let other = OTHERWISE
        .iter()
        .find(|(of, typed, _)| what.ends_with(of) && typed.contains(&lower.as_str()));
    other.map(|(_, _, says)| (*says).into())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_of_others_lead_to_ours() {
        let of = |what: &str, word: &str, keys: &[&str]| {
            instead_of(what, word, keys.iter().copied()).map(Cow::into_owned)
        };
        assert_eq!(
            of("a movement", "video", &["name", "clip"]).as_deref(),
            Some("did you mean `clip`?")
        );
        assert_eq!(
            of("a test's entry", "Date", &["on"]).as_deref(),
            Some("did you mean `on`?")
        );
        assert_eq!(
            of("a movement", "Each Side", &["each_side"]).as_deref(),
            Some("type `each_side`")
        );
        assert!(
            of("a movement", "note", &["name"]).is_some_and(|says| says.contains("content/notes/"))
        );
        assert_eq!(
            value_of("Eccentric", &["hold", "lowering"]).as_deref(),
            Some("did you mean `lowering`?")
        );
        assert_eq!(
            value_of("back", &["upper-back", "lower-back"]).as_deref(),
            Some("did you mean `upper-back` or `lower-back`?")
        );
        assert_eq!(value_of("eccentric", &["upright"]), None);
        assert_eq!(of("a school", "note", &["name"]), None);
    }
}
