//! Versions: of each script and style, so that a page loads what it was published with; of the whole site, so that the worker
//! keeps anew whatever changed.

use super::{Item, Plan, ThemeError};
use rayon::prelude::*;
use std::collections::BTreeMap;

impl Plan<'_> {
    /// For each script and style its version: what a page loads is what it was published with, whatever a cache holds.
    pub(super) fn versions(&self) -> &tera::Value {
        self.parts.versions.get_or_init(|| {
            let school = &self.curriculum.school;
            let of_theme = self
                .theme
                .assets()
                .map(|path| (path.to_string(), version(&self.theme.asset(path, school))));
            let (tables, search) =
                rayon::join(|| self.tables().1.clone(), || version(self.search()));
            let data = [
                ("tables".to_string(), tables),
                ("search".to_string(), search),
            ];
            let all: BTreeMap<String, String> = of_theme.chain(data).collect();
            tera::Value::from_serializable(&all)
        })
    }

    /// Says the hashes of all files but the worker's, by path, which whoever wrote them knows: the worker's version covers them.
    pub fn wrote<'h>(&self, hashes: impl Iterator<Item = (&'h str, &'h str)>) {
        self.parts.whole.get_or_init(|| of_hashes(hashes));
    }

    /// The position of the worker, which is made last.
    pub fn last(&self) -> usize {
        let worker = self.items().iter().position(|i| *i == Item::Worker);
        worker.unwrap_or_default()
    }

    /// A hash of every file but the worker's: what was said, else worked out by making them all.
    pub(super) fn whole(&self) -> Result<&str, ThemeError> {
        if let Some(said) = self.parts.whole.get() {
            return Ok(said);
        }
        let last = self.last();
        let made: Result<Vec<(String, String)>, ThemeError> = (0..self.len())
            .into_par_iter()
            .filter(|i| *i != last)
            .map(|i| {
                let file = self.render(i)?;
                Ok((file.path, blake3::hash(&file.bytes).to_hex().to_string()))
            })
            .collect();
        let made = made?;
        self.wrote(
            made.iter()
                .map(|(path, hash)| (path.as_str(), hash.as_str())),
        );
        Ok(self.parts.whole.get().map_or("", String::as_str))
    }
}

/// One hash of many, in the order of their paths.
fn of_hashes<'h>(hashes: impl Iterator<Item = (&'h str, &'h str)>) -> String {
    let sorted: BTreeMap<&str, &str> = hashes.collect();
    let mut all = blake3::Hasher::new();
    for (path, hash) in sorted {
        all.update(path.as_bytes())
            .update(b"\n")
            .update(hash.as_bytes());
    }
    all.finalize().to_hex()[..16].to_string()
}

/// A short hash of a file's content.
pub fn version(bytes: &[u8]) -> String {
    blake3::hash(bytes).to_hex()[..8].to_string()
}
