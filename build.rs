//! Lists the files that stand in the program, the shipped theme and the first curriculum, and compiles the two grammars that the
//! site highlights with, so that the program carries no grammar reader.

use std::path::{Path, PathBuf};
use syntect::dumps::dump_to_uncompressed_file;
use syntect::parsing::{SyntaxDefinition, SyntaxSetBuilder};

fn main() {
    println!("cargo:rerun-if-changed=src/site/pages/grammars");
    println!("cargo:rerun-if-changed=themes/chalk");
    println!("cargo:rerun-if-changed=src/command/first");
    let out = std::env::var("OUT_DIR").expect("cargo sets OUT_DIR");
    let out = Path::new(&out);
    list(out, "chalk", "themes/chalk");
    list(out, "first", "src/command/first");
    grammars(out);
}

/// Writes `grammars.bin`: both grammars, ready to be read.
fn grammars(out: &Path) {
    let mut builder = SyntaxSetBuilder::new();
    for name in ["session", "definition"] {
        let path = format!("src/site/pages/grammars/{name}.sublime-syntax");
        let text = std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{path}: {e}"));
        builder.add(
            SyntaxDefinition::load_from_str(&text, true, Some(name))
                .unwrap_or_else(|e| panic!("{path}: {e}")),
        );
    }
    dump_to_uncompressed_file(&builder.build(), out.join("grammars.bin"))
        .expect("the build folder can be written");
}

/// Writes `NAME.rs`: a slice of paths below `folder` with their bytes, sorted by path.
fn list(out: &Path, name: &str, folder: &str) {
    let root = std::env::current_dir().expect("cargo runs this where Cargo.toml lies");
    let root = root.join(folder);
    let mut open = vec![root.clone()];
    let mut files = Vec::new();
    while let Some(path) = open.pop() {
        match path.is_dir() {
            true => open.extend(entries(&path)),
            false => files.push(path),
        }
    }
    files.sort();
    let line = |path: &PathBuf| {
        let below = path.strip_prefix(&root).expect("it lies in the folder");
        let below = below.display().to_string().replace('\\', "/");
        format!("({below:?}, include_bytes!({:?})),\n", path.display())
    };
    let lines: String = files.iter().map(line).collect();
    std::fs::write(out.join(format!("{name}.rs")), format!("&[\n{lines}]\n"))
        .expect("the build folder can be written");
}

fn entries(folder: &Path) -> Vec<PathBuf> {
    let read = std::fs::read_dir(folder).unwrap_or_else(|e| panic!("{}: {e}", folder.display()));
    let all = read.map(|entry| entry.expect("an entry of the folder").path());
    all.collect()
}
