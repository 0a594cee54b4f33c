//! A generated curriculum of many movements publishes without error. `RUNGBOOK_SCALE` sets how many (default 1000);
//! `RUNGBOOK_SCALE_KEEP` keeps the folder for measuring: `/usr/bin/time -v rungbook publish --from DIR`.

mod generate;

use std::path::PathBuf;
use std::process::Command;

#[test]
fn a_large_curriculum_publishes() {
    let count: usize = std::env::var("RUNGBOOK_SCALE")
        .ok()
        .and_then(|n| n.parse().ok())
        .unwrap_or(1000);
    let temporary = tempfile::tempdir().expect("a folder");
    let dir = std::env::var("RUNGBOOK_SCALE_KEEP")
        .map_or_else(|_| temporary.path().to_path_buf(), PathBuf::from);
    generate::write(&dir, generate::Shape::tangled(count));
    let out = Command::new(env!("CARGO_BIN_EXE_rungbook"))
        .args(["publish", "--as", "json", "--from"])
        .arg(&dir)
        .output()
        .expect("the program runs");
    let said = String::from_utf8_lossy(&out.stdout).into_owned();
    assert_eq!(
        out.status.code(),
        Some(0),
        "{}",
        &said[..said.len().min(2000)]
    );
    let answer: serde_json::Value = serde_json::from_str(&said).expect("JSON");
    assert!(answer["files"].as_u64().expect("a number") as usize > count);
    let booklet = std::fs::read_to_string(dir.join("site/booklet.html")).expect("a booklet");
    // Too much for one booklet: it leads to those of the skills.
    assert_eq!(
        count > 500,
        !booklet.contains("<article") && booklet.contains("booklet-skill-000.html")
    );
    println!(
        "{count} movements: {} files, {} s",
        answer["files"], answer["seconds"]
    );
}
