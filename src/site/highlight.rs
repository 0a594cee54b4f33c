//! Sessions and definitions as HTML with class names, by two small grammars of our own.

use std::sync::LazyLock;
use syntect::dumps::from_uncompressed_data;
use syntect::html::{ClassStyle, ClassedHTMLGenerator};
use syntect::parsing::SyntaxSet;
use syntect::util::LinesWithEndings;

static GRAMMARS: LazyLock<SyntaxSet> = LazyLock::new(|| {
    from_uncompressed_data(include_bytes!(concat!(env!("OUT_DIR"), "/grammars.bin")))
        .expect("the grammars were compiled with the program")
});

/// The text as HTML spans whose classes begin with `hl-`. `grammar` is `Session` or `Definition`.
pub fn html(grammar: &str, text: &str) -> String {
    let Some(syntax) = GRAMMARS.find_syntax_by_name(grammar) else {
        return super::link::escape(text);
    };
    let style = ClassStyle::SpacedPrefixed { prefix: "hl-" };
    let mut generator = ClassedHTMLGenerator::new_with_class_style(syntax, &GRAMMARS, style);
    for line in LinesWithEndings::from(text) {
        if generator
            .parse_html_for_line_which_includes_newline(line)
            .is_err()
        {
            return super::link::escape(text);
        }
    }
    generator.finalize()
}
