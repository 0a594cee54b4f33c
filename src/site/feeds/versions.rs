//! The version of each script and style, by which pages name them.

use super::{search, tables};
use crate::site::material::Material;
use crate::site::theme::version;
use std::collections::BTreeMap;

/// For each script and style its version: what a page loads is what it was published with, whatever a cache holds.
pub fn of<'a>(site: &Material<'a>) -> &'a tera::Value {
    site.kept.versions.get_or_init(|| {
        let school = site.curriculum.school();
        let of_theme = site
            .theme
            .assets()
            .map(|path| (path.to_string(), version(&site.theme.asset(path, school))));
        let (tables, search) = rayon::join(
            || tables::made(site).1.clone(),
            || version(search::made(site)),
        );
        let data = [
            ("tables".to_string(), tables),
            ("search".to_string(), search),
        ];
        let all: BTreeMap<String, String> = of_theme.chain(data).collect();
        tera::Value::from_serializable(&all)
    })
}
