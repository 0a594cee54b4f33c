//! Addresses as browsers follow them, however they are written.

use url::Url;

/// A site's own address.
pub struct Own {
    base: Option<Url>,
    folder: String,
}

impl Own {
    pub fn new(address: &str) -> Own {
        let base = Url::parse(address).ok();
        let folder = base
            .as_ref()
            .map_or(String::new(), |b| decoded(b.path()).to_lowercase());
        Own { base, folder }
    }

    /// The page that an address leads to, by its file name in small letters; none where it leads elsewhere.
    pub fn page(&self, href: &str) -> Option<String> {
        let base = self.base.as_ref()?;
        let url = base.join(href).ok()?;
        let is_web = |url: &Url| matches!(url.scheme(), "http" | "https");
        // The usual port of either scheme is the same place.
        let is_here =
            is_web(&url) && is_web(base) && url.host() == base.host() && url.port() == base.port();
        if !is_here {
            return None;
        }
        let path = decoded(url.path()).to_lowercase();
        let inside = path.strip_prefix(&self.folder)?;
        let last = inside.split('/').rfind(|part| !part.is_empty())?;
        Some(match last.contains('.') {
            true => last.to_string(),
            false => format!("{last}.html"),
        })
    }

    /// Whether a browser would ask another server, or a program, for what an attribute names.
    pub fn is_outside(&self, value: &str) -> bool {
        let odd = |b: u8| matches!(b, b':' | b'\\' | b'\t' | b'\n' | b'\r') || !b.is_ascii();
        let bytes = value.as_bytes();
        if !bytes.iter().any(|b| odd(*b)) && !value.contains("//") {
            return false;
        }
        let Some(base) = &self.base else {
            return true;
        };
        // A browser leaves tabs and ends of lines out of an address before it reads it; so does the library. A page that is
        // opened from disk reads `https:x` as another server, a hosted one as its own.
        let leads_out = |url: &Url| url.scheme() == "javascript" || url.origin() != base.origin();
        let alone = Url::parse(value);
        alone.is_ok_and(|url| leads_out(&url))
            || base.join(value).map_or(true, |url| leads_out(&url))
    }
}

/// A path with its percent signs read, once.
fn decoded(path: &str) -> String {
    let mut out = Vec::with_capacity(path.len());
    let mut rest = path.as_bytes();
    while let Some((first, after)) = rest.split_first() {
        let number = after.get(..2).and_then(|two| std::str::from_utf8(two).ok());
        let number = number.and_then(|two| u8::from_str_radix(two, 16).ok());
        match (first, number) {
            (b'%', Some(byte)) => {
                out.push(byte);
                rest = &after[2..];
            }
            _ => {
                out.push(*first);
                rest = after;
            }
        }
    }
    String::from_utf8_lossy(&out).replace('\\', "/")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn addresses_are_read_as_browsers_do() {
        let own = Own::new("https://test.example/c/");
        for href in [
            "upside.html",
            "upside",
            "UPSIDE.HTML",
            "./upside.html?x#y",
            "https://TEST.example/c/upside.html",
            "https://test.example:443/c/upside.html",
            "http://test.example/c/upside.html",
            "//test.example/c/upside",
            "https://user@test.example/c/upside.html",
            "https://test.example/%63/%75pside.html",
            "https:\\\\test.example\\c\\upside.html",
            "/c/x/../upside.html",
            "up\tside.html",
            " https://test.example/c/upside/ ",
            "https://t\u{ad}est.example/c/upside.html",
        ] {
            assert_eq!(own.page(href).as_deref(), Some("upside.html"), "{href}");
        }
        for href in [
            "https://other.example/c/upside.html",
            "https://test.example:8443/c/upside.html",
            "mailto:upside.html",
            "/d/upside.html",
            "#upside",
        ] {
            assert_ne!(own.page(href).as_deref(), Some("upside.html"), "{href}");
        }
        for value in [
            "https://cdn.example/x.js",
            "//cdn.example/x",
            "ht\ttps://cdn.example/x",
            "/\t/cdn.example/x",
            "\\\\cdn.example\\x",
            "data:text/html,x",
            "javascript:x",
        ] {
            assert!(own.is_outside(value), "{value}");
        }
        for value in [
            "theme/x.js?v=1",
            "https://test.example/c/x.js",
            "pictures/\u{e9}.svg",
            "a/b.c",
        ] {
            assert!(!own.is_outside(value), "{value}");
        }
    }
}
