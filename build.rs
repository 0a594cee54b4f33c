//! Compiles the two grammars that the site highlights with, so that the program carries no grammar reader.

use std::path::Path;
use syntect::dumps::dump_to_uncompressed_file;
use syntect::parsing::{SyntaxDefinition, SyntaxSetBuilder};

fn main() {
    println!("cargo:rerun-if-changed=src/site/pages/grammars");
    println!("cargo:rerun-if-changed=themes/chalk");
    println!("cargo:rerun-if-changed=src/command/first");
    let mut builder = SyntaxSetBuilder::new();
    for name in ["session", "definition"] {
        let path = format!("src/site/pages/grammars/{name}.sublime-syntax");
        let text = std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{path}: {e}"));
        builder.add(
            SyntaxDefinition::load_from_str(&text, true, Some(name))
                .unwrap_or_else(|e| panic!("{path}: {e}")),
        );
    }
    let out = std::env::var("OUT_DIR").expect("cargo sets OUT_DIR");
    dump_to_uncompressed_file(&builder.build(), Path::new(&out).join("grammars.bin"))
        .expect("the build folder can be written");
}
