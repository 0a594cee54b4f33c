//! Versions: of each script and style, so that a page loads what it was published with.

/// A short hash of a file's content.
pub fn version(bytes: &[u8]) -> String {
    blake3::hash(bytes).to_hex()[..8].to_string()
}
