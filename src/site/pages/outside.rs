//! What pages outside the site have in common: the policy, the language, the school.

use crate::curriculum::Curriculum;
use crate::site::theme::guard::POLICY;
use crate::site::theme::{Theme, ThemeError};
use tera::Context;

/// A context with what every such page says.
pub fn context(curriculum: &Curriculum, title: &str) -> Context {
    let words = curriculum.words();
    let mut context = Context::new();
    context.insert("policy", POLICY);
    context.insert("language", words.language());
    context.insert("direction", words.direction().word());
    context.insert("school", &curriculum.school().name);
    context.insert("title", title);
    context
}

/// # Errors
/// When the theme cannot make it.
pub fn render(theme: &Theme, template: &str, context: &Context) -> Result<String, ThemeError> {
    theme
        .tera()
        .render(template, context)
        .map_err(|e| ThemeError {
            message: format!("the page `{template}` cannot be made"),
            detail: e.to_string(),
        })
}
