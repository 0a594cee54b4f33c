//! The style of a page that stands by itself, to be printed: in the page, and allowed by its hash alone.

use super::guard::POLICY;

/// The theme's file with it.
pub const STYLE: &str = "paper.html";

/// The policy of a page with this style and nothing else: no file beside it is loaded.
///
/// # Source
/// W3C Content Security Policy Level 3, 2.3.1: a hash source is the base64 of the hash of what stands between the tags.
pub fn policy(style: &str) -> String {
    let hash = base64(&sha256(style.as_bytes()));
    POLICY.replace("style-src 'self'", &format!("style-src 'sha256-{hash}'"))
}

/// The page without its style and with every page's policy, as the audit reads it; `None` where it has not exactly this style.
pub fn without(html: &str, style: &str) -> Option<String> {
    let tag = format!("<style>{style}</style>");
    let one = |what: &str| html.matches(what).count() == 1;
    let own = policy(style);
    (one(&tag) && one(&own)).then(|| html.replacen(&tag, "", 1).replacen(&own, POLICY, 1))
}

/// The first 32 bits of the fractional parts of the roots of the first primes: cube roots for the rounds, square roots to begin with.
fn roots(count: usize, root: fn(f64) -> f64) -> Vec<u32> {
    let is_prime = |n: &u32| (2..*n).all(|d| !n.is_multiple_of(d));
    let fraction = |n: u32| {
        let of = root(f64::from(n));
        ((of - of.floor()) * f64::from(2u32).powi(32)) as u32
    };
    (2..).filter(is_prime).take(count).map(fraction).collect()
}

/// SHA-256.
///
/// # Source
/// NIST FIPS 180-4, 4.1.2, 4.2.2, 5.1.1, 5.3.3 and 6.2.2.
fn sha256(bytes: &[u8]) -> [u8; 32] {
    let k = roots(64, f64::cbrt);
    let mut state = roots(8, f64::sqrt);
    let mut padded = bytes.to_vec();
    padded.push(0x80);
    while padded.len() % 64 != 56 {
        padded.push(0);
    }
    padded.extend((bytes.len() as u64 * 8).to_be_bytes());
    for block in padded.chunks(64) {
        let word = |four: &[u8]| four.iter().fold(0u32, |all, b| (all << 8) | u32::from(*b));
        let mut w: Vec<u32> = block.chunks(4).map(word).collect();
        for t in 16..64 {
            let (a, b) = (w[t - 15], w[t - 2]);
            let low = a.rotate_right(7) ^ a.rotate_right(18) ^ (a >> 3);
            let high = b.rotate_right(17) ^ b.rotate_right(19) ^ (b >> 10);
            let sum = w[t - 16].wrapping_add(low).wrapping_add(w[t - 7]);
            w.push(sum.wrapping_add(high));
        }
        let mut v = state.clone();
        for t in 0..64 {
            let high = v[4].rotate_right(6) ^ v[4].rotate_right(11) ^ v[4].rotate_right(25);
            let choice = (v[4] & v[5]) ^ (!v[4] & v[6]);
            let one = v[7].wrapping_add(high).wrapping_add(choice);
            let one = one.wrapping_add(k[t]).wrapping_add(w[t]);
            let low = v[0].rotate_right(2) ^ v[0].rotate_right(13) ^ v[0].rotate_right(22);
            let most = (v[0] & v[1]) ^ (v[0] & v[2]) ^ (v[1] & v[2]);
            v.rotate_right(1);
            v[4] = v[4].wrapping_add(one);
            v[0] = one.wrapping_add(low.wrapping_add(most));
        }
        for (of, v) in state.iter_mut().zip(v) {
            *of = of.wrapping_add(v);
        }
    }
    let mut out = [0; 32];
    for (four, of) in out.chunks_mut(4).zip(state) {
        four.copy_from_slice(&of.to_be_bytes());
    }
    out
}

/// Base64 (RFC 4648, section 4).
fn base64(bytes: &[u8]) -> String {
    const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut out = String::new();
    for three in bytes.chunks(3) {
        let at = |i: usize| u32::from(three.get(i).copied().unwrap_or(0));
        let all = (at(0) << 16) | (at(1) << 8) | at(2);
        for i in 0..4 {
            let letter = LETTERS[(all >> (18 - 6 * i)) as usize & 63];
            out.push(if i > three.len() { '=' } else { letter.into() });
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::{POLICY, base64, policy, sha256, without};

    fn hex(bytes: &[u8]) -> String {
        bytes.iter().map(|b| format!("{b:02x}")).collect()
    }

    /// NIST's examples of SHA-256 for one and for two blocks, and the empty message; from memory, checked with Python's hashlib.
    #[test]
    fn the_hash_is_the_published_one() {
        for (text, hash) in [
            (
                "",
                "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855",
            ),
            (
                "abc",
                "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad",
            ),
            (
                "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
                "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1",
            ),
        ] {
            assert_eq!(hex(&sha256(text.as_bytes())), hash, "{text}");
        }
    }

    /// RFC 4648, section 10.
    #[test]
    fn base64_is_the_published_one() {
        for (text, letters) in [
            ("", ""),
            ("f", "Zg=="),
            ("fo", "Zm8="),
            ("foo", "Zm9v"),
            ("foobar", "Zm9vYmFy"),
        ] {
            assert_eq!(base64(text.as_bytes()), letters);
        }
    }

    #[test]
    fn only_its_own_style_is_taken_out() {
        let page = |policy: &str, style: &str| {
            format!("<meta content=\"{policy}\"><style>{style}</style><p>a</p>")
        };
        let (style, other) = ("p { margin: 0 }", "p { display: none }");
        let right = page(&policy(style), style);
        assert_eq!(
            without(&right, style).as_deref(),
            Some(&*format!("<meta content=\"{POLICY}\"><p>a</p>"))
        );
        assert_eq!(without(&page(&policy(style), other), style), None);
        assert_eq!(without(&page(&policy(other), style), style), None);
        assert_eq!(without(&page(POLICY, style), style), None);
    }
}
