//! Did-you-mean: the nearest known words. Deterministic, and silent when unsure.

/// The known words nearest to `word`, best first, at most three; empty when none is near.
///
/// Near means: at most a third of the word's letters differ (two at least for words of four letters and more), or one
/// begins with the other, or both are made of the same words in another order. Where none is so near, those that have this as a
/// word, or that are a word of it.
pub fn nearest<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Vec<&'a str> {
    let word = word.to_lowercase();
    let letters = word.chars().count();
    if letters < 2 {
        return Vec::new();
    }
    let limit = if letters < 4 { 1 } else { (letters / 3).max(2) };
    let all: Vec<&str> = known.into_iter().collect();
    let mut found: Vec<(usize, &str)> = all
        .iter()
        .copied()
        .filter(|k| k.len().abs_diff(word.len()) <= limit || k.starts_with(&word))
        .filter_map(|k| {
            let distance = match same_words(&word, k) {
                true => 1,
                false => edits(&word, &k.to_lowercase()),
            };
            let begins = k.starts_with(&word) && letters >= 4;
            (distance <= limit || begins).then_some((distance, k))
        })
        .collect();
    found.sort();
    found.dedup();
    if found.is_empty() {
        return within(&word, &all);
    }
    let best = found.first().map_or(0, |f| f.0);
    found
        .into_iter()
        .filter(|f| f.0 == best)
        .take(3)
        .map(|f| f.1)
        .collect()
}

/// How many letters must be added, taken away, replaced or exchanged with their neighbour to make one text of the other, no place
/// twice: the optimal string alignment.
pub fn edits(a: &str, b: &str) -> usize {
    let (a, b): (Vec<char>, Vec<char>) = (a.chars().collect(), b.chars().collect());
    let mut before: Vec<usize> = Vec::new();
    let mut above: Vec<usize> = (0..=b.len()).collect();
    for i in 1..=a.len() {
        let mut row = vec![i];
        for j in 1..=b.len() {
            let replaced = above[j - 1] + usize::from(a[i - 1] != b[j - 1]);
            let mut least = replaced.min(above[j] + 1).min(row[j - 1] + 1);
            if i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1] {
                least = least.min(before[j - 2] + 1);
            }
            row.push(least);
        }
        before = std::mem::replace(&mut above, row);
    }
    above[b.len()]
}

/// The known words of which this is one word, or that are one word of it: `bar` for `pull-up bar`; at most three.
fn within<'a>(word: &str, known: &[&'a str]) -> Vec<&'a str> {
    let parts = |text: &str| -> Vec<String> {
        let words = text.split(|c: char| !c.is_alphanumeric());
        words
            .filter(|w| w.chars().count() > 2)
            .map(str::to_lowercase)
            .collect()
    };
    let holds = |outer: &[String], inner: &[String]| {
        !inner.is_empty() && inner.iter().all(|w| outer.contains(w))
    };
    let typed = parts(word);
    let mut found: Vec<&str> = known
        .iter()
        .copied()
        .filter(|k| {
            let k = parts(k);
            holds(&k, &typed) || holds(&typed, &k)
        })
        .collect();
    found.sort_by_key(|k| (k.len().abs_diff(word.len()), *k));
    found.dedup();
    found.truncate(3);
    found
}

/// Whether two names have the same words in another order.
fn same_words(one: &str, other: &str) -> bool {
    let words = |text: &str| {
        let mut words: Vec<String> = text.split(['-', ' ', '_']).map(str::to_lowercase).collect();
        words.sort();
        words
    };
    one.len() == other.len() && one != other && words(one) == words(other)
}

/// "did you mean `a` or `b`?", or nothing.
pub fn did_you_mean<'a>(word: &str, known: impl IntoIterator<Item = &'a str>) -> Option<String> {
    let near = nearest(word, known);
    let quoted: Vec<String> = near.iter().map(|n| format!("`{n}`")).collect();
    (!quoted.is_empty()).then(|| format!("did you mean {}?", listed(&quoted, "or")))
}

/// "a, b or c".
pub fn listed<S: AsRef<str>>(items: &[S], join: &str) -> String {
    match items {
        [] => String::new(),
        [one] => one.as_ref().to_string(),
        [head @ .., last] => {
            let head: Vec<&str> = head.iter().map(AsRef::as_ref).collect();
            format!("{} {join} {}", head.join(", "), last.as_ref())
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn near_words_are_found_and_far_ones_are_not() {
        let known = ["push-up", "pull-up", "plank"];
        assert_eq!(nearest("puhs-up", known), ["push-up"]);
        assert_eq!(nearest("handstand", known), Vec::<&str>::new());
        assert_eq!(nearest("p", known), Vec::<&str>::new());
        assert_eq!(
            nearest("deficit-dip-x", ["dip-x-deficit", "deficit-dip"]),
            ["dip-x-deficit"]
        );
        assert_eq!(
            did_you_mean("plnk", known).as_deref(),
            Some("did you mean `plank`?")
        );
    }
}
