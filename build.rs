//! What is built into the program is built in again when it changes.

fn main() {
    println!("cargo:rerun-if-changed=themes/chalk");
    println!("cargo:rerun-if-changed=src/command/first");
}
