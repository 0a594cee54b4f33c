//! Changing a text in some places and nowhere else.

/// The bytes from one place to another, and what stands there instead.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Edit {
    pub from: usize,
    pub to: usize,
    pub text: String,
}

/// Makes all edits; places that are named twice are changed once.
pub fn apply(text: &str, mut edits: Vec<Edit>) -> String {
    edits.sort();
    edits.dedup();
    let mut out = String::with_capacity(text.len() + 64);
    let mut done = 0;
    for edit in edits {
        out.push_str(text.get(done..edit.from).unwrap_or_default());
        out.push_str(&edit.text);
        done = edit.to;
    }
    out.push_str(text.get(done..).unwrap_or_default());
    out
}
