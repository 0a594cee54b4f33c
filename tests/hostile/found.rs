//! Inputs that once failed, by name.

#[test]
#[ignore]
fn show() {
    let seed: u64 = std::env::var("SHOW")
        .expect("a seed")
        .parse()
        .expect("a seed");
    let files = super::records::random(seed);
    for f in &files {
        if let rungbook::source::Content::Text(t) = &f.content {
            println!("--- {}\n{t}", f.path);
        }
    }
    let s = rungbook::source::Snapshot::new(files);
    let p = rungbook::proof::proofread(&s);
    println!("{}", rungbook::command::report::texts(&p.findings, &s));
}
