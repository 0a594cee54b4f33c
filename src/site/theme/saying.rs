//! The words of the interface in a theme: put into templates and style sheets once, when the theme is loaded; filled by
//! functions where they have placeholders; handed to each script, those that it says and no others. The numbers that results are judged by reach the scripts here too.

use super::{ThemeError, bundle};
use crate::results::LIMITS;
use crate::source::suggest::did_you_mean;
use crate::training::K;
use crate::words::escape::escape;
use crate::words::{Entry, Form, Value, Words};
use serde_json::json;
use std::collections::{BTreeMap, BTreeSet, HashMap};
use tera::{Kwargs, State, Tera, TeraResult};

/// By this a script asks for the numbers that results are judged by.
const LIMITS_OF_SCRIPT: &str = "globalThis.rungbookLimits";
/// What stands before the words of a script.
const ASSIGN: &str =
    "'use strict'; globalThis.rungbookWords = Object.assign(globalThis.rungbookWords || {}, ";

/// The numbers by which results are judged, and for how many days what hurt settles.
fn limits() -> serde_json::Value {
    let mut out = json!(LIMITS);
    out["pain_days"] = json!(K.pain_days);
    out
}

/// A template with its plain words in place.
///
/// # Errors
/// A key that no words file has; the error names it and the template.
pub fn template(path: &str, text: &str, words: &Words) -> Result<String, ThemeError> {
    for key in quoted_after(text, "say(key=\"") {
        known(path, &key, words)?;
    }
    placed(path, text, words, Form::Html)
}

/// An asset: a style sheet with its words in place, a script with those that it says before it, anything else as it is. What a
/// script that it names in `'after other.js';` has said before it is not said again; `others` holds those scripts.
///
/// # Errors
/// As [`template`].
pub fn asset(
    path: &str,
    bytes: Vec<u8>,
    words: &Words,
    others: &BTreeMap<String, Vec<u8>>,
) -> Result<Vec<u8>, ThemeError> {
    let Ok(text) = std::str::from_utf8(&bytes) else {
        return Ok(bytes);
    };
    if path.ends_with(".css") {
        return sheet(path, text, words).map(String::into_bytes);
    }
    if !path.ends_with(".js") {
        return Ok(bytes);
    }
    let head = head(&[(path, text)], words, others)?;
    Ok(format!("{head}{text}").into_bytes())
}

/// Files that are published as one: style sheets, or scripts with what any of them says before the first.
///
/// # Errors
/// As [`template`].
pub fn bundle(
    parts: &[&str],
    words: &Words,
    files: &BTreeMap<String, Vec<u8>>,
) -> Result<Vec<u8>, ThemeError> {
    let text_of = |path: &str| {
        let bytes = files.get(path).map(Vec::as_slice).unwrap_or_default();
        String::from_utf8_lossy(bytes).into_owned()
    };
    let texts: Vec<(&str, String)> = parts.iter().map(|path| (*path, text_of(path))).collect();
    if parts.iter().all(|path| path.ends_with(".css")) {
        let sheets = texts.iter().map(|(path, text)| sheet(path, text, words));
        return Ok(sheets.collect::<Result<String, ThemeError>>()?.into_bytes());
    }
    let scripts: Vec<(&str, &str)> = texts.iter().map(|(p, text)| (*p, text.as_str())).collect();
    let head = head(&scripts, words, files)?;
    let code = bundle::joined(scripts.iter().map(|(_, text)| *text));
    Ok(format!("{head}{code}").into_bytes())
}

/// A style sheet with its words in place.
fn sheet(path: &str, text: &str, words: &Words) -> Result<String, ThemeError> {
    let placed = placed(path, text, words, Form::Css)?;
    // The heads of printed pages have no logical side.
    Ok(match words.is_right_to_left() {
        true => placed.replace("@top-left", "@top-right"),
        false => placed,
    })
}

/// What stands before scripts: the numbers that results are judged by, where one asks for them, and what they say.
fn head(
    scripts: &[(&str, &str)],
    words: &Words,
    others: &BTreeMap<String, Vec<u8>>,
) -> Result<String, ThemeError> {
    let mut keys = BTreeSet::new();
    for (path, text) in scripts {
        let mut own = keys_of_script(path, text, words)?;
        for other in scripts_before(text) {
            let known = others
                .get(other)
                .map(|bytes| String::from_utf8_lossy(bytes));
            for key in keys_of_script(other, &known.unwrap_or_default(), words)? {
                own.remove(&key);
            }
        }
        keys.extend(own);
    }
    let mut head = String::new();
    if scripts
        .iter()
        .any(|(_, text)| text.contains(LIMITS_OF_SCRIPT))
    {
        head.push_str(&format!("{LIMITS_OF_SCRIPT} = {};\n", limits()));
    }
    if !keys.is_empty() {
        let said = said(keys.iter().map(String::as_str), words);
        head.push_str(&format!("{ASSIGN}{said});\n"));
    }
    Ok(head)
}

/// Entries as the page's script reads them.
fn said<'k>(keys: impl Iterator<Item = &'k str>, words: &Words) -> serde_json::Value {
    keys.filter_map(|key| {
        let value = match words.entry(key)? {
            Entry::Text(text) => json!(text),
            Entry::Plural(forms) => json!(forms),
        };
        Some((key.to_string(), value))
    })
    .collect::<serde_json::Map<_, _>>()
    .into()
}

/// What stands before the scripts, for those who run them without a page: every entry, and the numbers.
pub fn all(words: &Words) -> serde_json::Value {
    json!({ "words": said(words.entries().map(|(key, _)| key), words), "limits": limits() })
}

/// The functions of the templates: `say`, `list`, `number`, `day`.
pub fn register(tera: &mut Tera, words: &Words) {
    let html: HashMap<String, Entry> = words
        .entries()
        .map(|(key, entry)| (key.to_string(), entry.map(&|text| Form::Html.of(text))))
        .collect();
    let of = words.clone();
    let say = move |args: Kwargs, _: &State| -> TeraResult<tera::Value> {
        let key: String = args.must_get("key")?;
        let entry = html
            .get(&key)
            .ok_or_else(|| tera::Error::message(format!("no words file has `{key}`")))?;
        Ok(tera::Value::safe_string(&filled(&of, entry, &args)))
    };
    tera.register_function("say", say);
    let of = words.clone();
    tera.register_function(
        "list",
        move |args: Kwargs, _: &State| -> TeraResult<tera::Value> {
            let items: Vec<String> = args.must_get("of")?;
            let items: Vec<String> = items.iter().map(|i| escape(i)).collect();
            Ok(tera::Value::safe_string(&of.list_html(&items)))
        },
    );
    let of = words.clone();
    tera.register_function(
        "number",
        move |args: Kwargs, _: &State| -> TeraResult<String> {
            let n: f64 = args.must_get("n")?;
            Ok(of.decimal((n * 1e6).round() as i64))
        },
    );
    let of = words.clone();
    tera.register_function(
        "day",
        move |args: Kwargs, _: &State| -> TeraResult<tera::Value> {
            let on: String = args.must_get("on")?;
            let html = format!(
                "<time datetime=\"{}\">{}</time>",
                escape(&on),
                escape(&of.day(&on))
            );
            Ok(tera::Value::safe_string(&html))
        },
    );
}

/// An entry with what a template says for its placeholders.
fn filled(words: &Words, entry: &Entry, args: &Kwargs) -> String {
    let mut texts: BTreeMap<&str, String> = BTreeMap::new();
    let mut numbers: BTreeMap<&str, i64> = BTreeMap::new();
    for (name, value) in args.iter() {
        let name = name.as_str().unwrap_or("");
        match value.as_i64() {
            Some(number) => {
                numbers.insert(name, number);
            }
            None => {
                texts.insert(name, shown(value));
            }
        }
    }
    let values: Vec<(&str, Value<'_>)> = texts
        .iter()
        .map(|(name, text)| (*name, Value::Text(text)))
        .chain(numbers.iter().map(|(name, n)| (*name, Value::Whole(*n))))
        .collect();
    words.fill_entry(entry, &values)
}

/// A value as HTML: what is safe stays, anything else is escaped.
fn shown(value: &tera::Value) -> String {
    match value.as_str() {
        Some(text) if value.is_safe() => text.to_string(),
        Some(text) => escape(text),
        None => escape(&value.to_string()),
    }
}

/// A text with every `{{ w.KEY }}` replaced.
fn placed(path: &str, text: &str, words: &Words, form: Form) -> Result<String, ThemeError> {
    const OPEN: &str = "{{ w.";
    let mut out = String::with_capacity(text.len() * 2);
    let mut pieces = text.split(OPEN);
    out.push_str(pieces.next().unwrap_or(""));
    for piece in pieces {
        let (key, rest) = piece.split_once(" }}").unwrap_or((piece, ""));
        known(path, key, words)?;
        out.push_str(&form.of(words.say(key)));
        out.push_str(rest);
    }
    Ok(out)
}

/// The keys that a script says: `say('a.b'`, `sayNodes('a.b'`, every other quoted text that is a key (`say(open ? 'a.b' : 'a.c')`),
/// and of a made-up key, as in `` say(`a.${b}`) ``, all that begin so.
fn keys_of_script(path: &str, text: &str, words: &Words) -> Result<BTreeSet<String>, ThemeError> {
    let mut out = BTreeSet::new();
    for call in ["say(", "sayNodes("] {
        for key in quoted_after(text, &format!("{call}'")) {
            known(path, &key, words)?;
            out.insert(key);
        }
        for prefix in made_up_after(text, &format!("{call}`")) {
            let all: Vec<String> = words.keys_from(&prefix).map(str::to_string).collect();
            // Without its section it would be every word that there is.
            if all.is_empty() || !prefix.contains('.') {
                return Err(unknown(path, &prefix, words));
            }
            out.extend(all);
        }
    }
    let quoted = text.split('\'').filter(|part| is_key(part));
    out.extend(
        quoted
            .filter(|key| words.entry(key).is_some())
            .map(str::to_string),
    );
    Ok(out)
}

/// The scripts after which a script says that it runs, in a line of its own: wherever it is loaded, they were before.
fn scripts_before(text: &str) -> impl Iterator<Item = &str> {
    let said = text.lines().find_map(|line| {
        let inside = line.strip_prefix("'after ")?;
        inside.strip_suffix("';")
    });
    said.unwrap_or_default().split_whitespace()
}

/// Whether a text looks like a key.
fn is_key(text: &str) -> bool {
    let sound = |c: char| c.is_ascii_lowercase() || c.is_ascii_digit() || c == '_' || c == '.';
    text.contains('.') && text.chars().all(sound)
}

fn quoted_after(text: &str, open: &str) -> Vec<String> {
    let quote = open.chars().last().unwrap_or('\'');
    text.split(open)
        .skip(1)
        .filter_map(|rest| rest.split_once(quote).map(|(key, _)| key.to_string()))
        .collect()
}

fn made_up_after(text: &str, open: &str) -> Vec<String> {
    text.split(open)
        .skip(1)
        .filter_map(|rest| rest.split_once("${").map(|(prefix, _)| prefix.to_string()))
        .collect()
}

fn known(path: &str, key: &str, words: &Words) -> Result<(), ThemeError> {
    match words.entry(key) {
        Some(_) => Ok(()),
        None => Err(unknown(path, key, words)),
    }
}

fn unknown(path: &str, key: &str, words: &Words) -> ThemeError {
    ThemeError {
        message: format!("{path} says `{key}`, which no words file has"),
        detail: did_you_mean(key, words.entries().map(|(key, _)| key))
            .unwrap_or_else(|| "`rungbook schema words` lists the keys".to_string()),
    }
}
