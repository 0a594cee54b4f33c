//! A file server for the browser tests: GET only, on 127.0.0.1, nothing outside its folder.

use std::fs;
use std::io::{BufRead, BufReader, Write};
use std::net::{SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread::{self, JoinHandle};
use std::time::Duration;

pub struct Server {
    address: SocketAddr,
    refused: Arc<Mutex<Vec<String>>>,
    /// Milliseconds before each answer.
    wait: Arc<AtomicU64>,
    stop: Arc<AtomicBool>,
    accepting: Option<JoinHandle<()>>,
}

impl Server {
    pub fn start(root: &Path) -> Server {
        Server::start_at(root, false)
    }

    /// As hosts do that know pages without their ending: `/x.html` leads to `/x`.
    pub fn start_leading(root: &Path) -> Server {
        Server::start_at(root, true)
    }

    /// From now on each answer comes after some time.
    pub fn slow(&self, wait: Duration) {
        self.wait.store(wait.as_millis() as u64, Ordering::SeqCst);
    }

    fn start_at(root: &Path, leads: bool) -> Server {
        let root = root.canonicalize().expect("the folder to serve is there");
        let listener = TcpListener::bind(("127.0.0.1", 0)).expect("a free port on 127.0.0.1");
        let address = listener.local_addr().expect("the listener has an address");
        let refused = Arc::new(Mutex::new(Vec::new()));
        let stop = Arc::new(AtomicBool::new(false));
        let wait = Arc::new(AtomicU64::new(0));
        let accepting = thread::spawn({
            let (refused, stop, wait) =
                (Arc::clone(&refused), Arc::clone(&stop), Arc::clone(&wait));
            move || {
                for stream in listener.incoming() {
                    if stop.load(Ordering::SeqCst) {
                        break;
                    }
                    let Ok(stream) = stream else { continue };
                    let (root, refused) = (root.clone(), Arc::clone(&refused));
                    let wait = Duration::from_millis(wait.load(Ordering::SeqCst));
                    let stop = Arc::clone(&stop);
                    // A browser opens connections ahead of need and leaves them silent, so each has a thread of its own.
                    thread::spawn(move || {
                        let how = How { leads, wait, stop };
                        answer(stream, &root, &refused, &how);
                    });
                }
            }
        });
        Server {
            address,
            refused,
            wait,
            stop,
            accepting: Some(accepting),
        }
    }

    /// The address of the folder, with a slash at its end.
    pub fn base(&self) -> String {
        format!("http://{}/", self.address)
    }

    /// The request lines that were not answered with a file.
    pub fn refused(&self) -> Vec<String> {
        self.refused
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .clone()
    }
}

impl Drop for Server {
    fn drop(&mut self) {
        self.stop.store(true, Ordering::SeqCst);
        let woken = TcpStream::connect(self.address).is_ok();
        if let Some(accepting) = self.accepting.take().filter(|_| woken) {
            let _ = accepting.join();
        }
    }
}

/// How a host answers.
struct How {
    leads: bool,
    wait: Duration,
    stop: Arc<AtomicBool>,
}

fn answer(mut stream: TcpStream, root: &Path, refused: &Mutex<Vec<String>>, how: &How) {
    let _ = stream.set_read_timeout(Some(Duration::from_secs(30)));
    let _ = stream.set_write_timeout(Some(Duration::from_secs(30)));
    let Some(line) = request_line(&stream) else {
        return;
    };
    // A connection that was opened ahead of need outlives the server: no answer any more.
    if how.stop.load(Ordering::SeqCst) {
        return;
    }
    let mut words = line.split(' ');
    let (method, target) = (
        words.next().unwrap_or_default(),
        words.next().unwrap_or_default(),
    );
    thread::sleep(how.wait);
    let bare = target.split('?').next().unwrap_or_default();
    let mut file = target.to_string();
    if how.leads {
        if let Some(short) = bare.strip_suffix(".html") {
            let to = short
                .strip_suffix("/index")
                .map_or(short.to_string(), |s| format!("{s}/"));
            let head = format!(
                "HTTP/1.1 308 Permanent Redirect\r\nLocation: {to}\r\nContent-Length: 0\r\nConnection: close\r\n\r\n"
            );
            let _ = stream.write_all(head.as_bytes());
            return;
        }
        if !bare.ends_with('/') && !bare.contains('.') {
            file = format!("{bare}.html");
        }
    }
    let (status, kind, body) = if method != "GET" {
        (
            "405 Method Not Allowed",
            "text/plain; charset=utf-8",
            b"Only GET.\n".to_vec(),
        )
    } else {
        match find(root, &file).and_then(|file| Some((kind(&file), fs::read(&file).ok()?))) {
            Some((kind, body)) => ("200 OK", kind, body),
            None => (
                "404 Not Found",
                "text/plain; charset=utf-8",
                b"Not here.\n".to_vec(),
            ),
        }
    };
    if !status.starts_with("200") {
        refused
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .push(format!("{line} -> {status}"));
    }
    let head = format!(
        "HTTP/1.1 {status}\r\nContent-Type: {kind}\r\nContent-Length: {}\r\nCache-Control: no-store\r\n\
         X-Content-Type-Options: nosniff\r\nConnection: close\r\n\r\n",
        body.len()
    );
    let _ = stream
        .write_all(head.as_bytes())
        .and_then(|()| stream.write_all(&body))
        .and_then(|()| stream.flush());
}

/// The first line of a request; its headers are read to their end and not looked at.
fn request_line(stream: &TcpStream) -> Option<String> {
    let mut reader = BufReader::new(stream);
    let mut first = String::new();
    reader.read_line(&mut first).ok().filter(|n| *n > 0)?;
    let mut header = String::new();
    for _ in 0..200 {
        header.clear();
        reader.read_line(&mut header).ok()?;
        if header.trim_end().is_empty() {
            return Some(first.trim_end().to_string());
        }
    }
    None
}

/// The file an address means, or nothing: no way up, no hidden ways round, no link out of the folder.
fn find(root: &Path, target: &str) -> Option<PathBuf> {
    let path = target.split(['?', '#']).next()?.strip_prefix('/')?;
    let mut file = root.to_path_buf();
    let mut parts = path.split('/').peekable();
    while let Some(part) = parts.next() {
        let part = decode(part)?;
        if part.is_empty() && parts.peek().is_none() {
            file.push("index.html");
        } else if part.is_empty() || part.starts_with('.') || part.contains(['/', '\\', '\0']) {
            return None;
        } else {
            file.push(part);
        }
    }
    file.canonicalize()
        .ok()
        .filter(|found| found.starts_with(root) && found.is_file())
}

fn decode(part: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(part.len());
    let mut rest = part.bytes();
    while let Some(byte) = rest.next() {
        if byte == b'%' {
            let (high, low) = (
                char::from(rest.next()?).to_digit(16)?,
                char::from(rest.next()?).to_digit(16)?,
            );
            bytes.push(u8::try_from(high * 16 + low).ok()?);
        } else {
            bytes.push(byte);
        }
    }
    String::from_utf8(bytes).ok()
}

fn kind(file: &Path) -> &'static str {
    match file
        .extension()
        .and_then(|e| e.to_str())
        .unwrap_or_default()
    {
        "html" => "text/html; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "json" => "application/json",
        "webmanifest" => "application/manifest+json",
        "xml" => "application/xml",
        "txt" | "yaml" | "md" => "text/plain; charset=utf-8",
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "jpg" | "jpeg" => "image/jpeg",
        "webp" => "image/webp",
        "mp4" => "video/mp4",
        "webm" => "video/webm",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::Read;

    fn ask(server: &Server, request: &str) -> String {
        let mut stream = TcpStream::connect(server.address).expect("the server answers");
        stream
            .write_all(request.as_bytes())
            .expect("the request goes out");
        let mut answer = String::new();
        stream
            .read_to_string(&mut answer)
            .expect("an answer comes back");
        answer
    }

    fn get(server: &Server, target: &str) -> String {
        ask(server, &format!("GET {target} HTTP/1.1\r\nHost: x\r\n\r\n"))
    }

    #[test]
    fn serves_files_and_nothing_outside_the_folder() {
        let outer = tempfile::tempdir().expect("a folder for the test");
        let root = outer.path().join("site");
        fs::create_dir_all(root.join("deep")).expect("a folder to serve");
        fs::write(outer.path().join("secret.txt"), "outside").expect("a file outside");
        fs::write(root.join("index.html"), "home").expect("a page");
        fs::write(root.join("deep/a b.css"), "rule").expect("a style sheet");
        #[cfg(unix)]
        std::os::unix::fs::symlink(outer.path().join("secret.txt"), root.join("way-out.txt"))
            .expect("a link out");
        let server = Server::start(&root);

        assert!(get(&server, "/").ends_with("\r\n\r\nhome"));
        assert!(get(&server, "/index.html?a=../b#c").ends_with("\r\n\r\nhome"));
        let style = get(&server, "/deep/a%20b.css");
        assert!(
            style.contains("text/css") && style.ends_with("\r\n\r\nrule"),
            "{style}"
        );
        assert_eq!(server.refused(), Vec::<String>::new());

        let outside = [
            "/../secret.txt",
            "/deep/../../secret.txt",
            "/%2e%2e/secret.txt",
            "/..%2fsecret.txt",
            "/..%5csecret.txt",
            "//secret.txt",
            "/way-out.txt",
            "/deep",
            "/deep/",
            "/index.html%00",
            "/%zz",
            "secret.txt",
            "/favicon.ico",
        ];
        for target in outside {
            let answer = get(&server, target);
            assert!(answer.starts_with("HTTP/1.1 404"), "{target}: {answer}");
            assert!(!answer.contains("outside"), "{target}: {answer}");
        }
        assert!(ask(&server, "POST / HTTP/1.1\r\nHost: x\r\n\r\n").starts_with("HTTP/1.1 405"));
        assert_eq!(server.refused().len(), outside.len() + 1);
    }
}
