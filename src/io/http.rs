//! As much of HTTP as a preview on the loopback address needs: one GET on each connection, with limits on how long its head may
//! be, how long it may take, and how many connections there are.

use super::Error;
use std::collections::BTreeMap;
use std::io::{ErrorKind, Read, Write};
use std::net::{Shutdown, TcpListener, TcpStream};
use std::path::Path;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread;
use std::time::{Duration, Instant};

/// A head above this many bytes is refused.
const LARGEST_HEAD: usize = 16 * 1024;
/// A head that takes longer is not waited for.
const HEAD_WITHIN: Duration = Duration::from_secs(10);
/// One write that takes longer ends the connection.
const WRITE_WITHIN: Duration = Duration::from_secs(10);
/// Where more are open, the oldest is closed: who opens connections and says nothing keeps nobody else out.
const CONNECTIONS: usize = 128;
/// How long a reader may take to close, and how much it may still send, before what it was told is cut off.
const CLOSE_WITHIN: Duration = Duration::from_millis(500);
const LARGEST_REST: usize = 256 * 1024;

/// A request's head.
pub struct Request {
    pub method: String,
    /// What is asked for, decoded, without its first slash; `None` where it is no text.
    pub path: Option<String>,
    /// What stands after the question mark, as it is.
    pub query: String,
    headers: Vec<(String, String)>,
}

impl Request {
    /// The value of a header, its name in any case; `None` where it is missing or stands twice.
    pub fn header(&self, name: &str) -> Option<&str> {
        let mut of = self
            .headers
            .iter()
            .filter(|(n, _)| n.eq_ignore_ascii_case(name));
        match (of.next(), of.next()) {
            (Some((_, value)), None) => Some(value),
            _ => None,
        }
    }
}

/// What a request is answered.
pub enum Reply {
    Answer {
        status: u16,
        kind: &'static str,
        bytes: Vec<u8>,
    },
    /// Somebody else writes to the connection from here on.
    Kept(Box<dyn FnOnce(TcpStream) + Send>),
}

impl Reply {
    pub fn refused(status: u16, why: &str) -> Reply {
        Reply::Answer {
            status,
            kind: "text/plain; charset=utf-8",
            bytes: why.as_bytes().to_vec(),
        }
    }
}

pub type Handler = dyn Fn(Request) -> Reply + Send + Sync;

/// Connections whose answer is not written yet, by number: the oldest first.
type Open = Arc<Mutex<BTreeMap<u64, TcpStream>>>;

/// Takes a port of the loopback address; 0 takes any that is free. Returns its number too.
///
/// # Errors
/// When the port is taken or refused.
pub fn bind(port: u16) -> Result<(TcpListener, u16), Error> {
    let wanted = format!("127.0.0.1:{port}");
    let fail = |e| Error::new("serve on", Path::new(&wanted), e);
    let listener = TcpListener::bind(&wanted).map_err(fail)?;
    let port = listener.local_addr().map_err(fail)?.port();
    Ok((listener, port))
}

/// Answers, each connection on a thread of its own, until the process ends.
pub fn serve(listener: TcpListener, handler: Arc<Handler>) {
    thread::spawn(move || {
        let open = Open::default();
        for (number, stream) in (0..).zip(listener.incoming()) {
            match stream {
                Ok(stream) => take(number, stream, &open, &handler),
                // No descriptor is free: those that are open end within seconds.
                Err(_) => thread::sleep(Duration::from_millis(50)),
            }
        }
    });
}

fn all(open: &Open) -> MutexGuard<'_, BTreeMap<u64, TcpStream>> {
    open.lock().unwrap_or_else(PoisonError::into_inner)
}

fn take(number: u64, stream: TcpStream, open: &Open, handler: &Arc<Handler>) {
    let Ok(again) = stream.try_clone() else {
        return;
    };
    {
        let mut all = all(open);
        all.insert(number, again);
        while all.len() > CONNECTIONS
            && let Some((_, oldest)) = all.pop_first()
        {
            let _ = oldest.shutdown(Shutdown::Both);
        }
    }
    let (open, handler) = (Arc::clone(open), Arc::clone(handler));
    let spawned = thread::Builder::new().spawn({
        let open = Arc::clone(&open);
        move || {
            converse(stream, handler.as_ref(), || {
                drop(all(&open).remove(&number))
            });
            all(&open).remove(&number);
        }
    });
    if spawned.is_err() {
        all(&open).remove(&number);
    }
}

/// One request and its answer. `handed` is called before somebody else gets the connection.
fn converse(mut stream: TcpStream, handler: &Handler, handed: impl FnOnce()) {
    let limits = stream.set_write_timeout(Some(WRITE_WITHIN));
    let reply = match head(&mut stream) {
        Ok(head) => read(&head).map_or_else(|| Reply::refused(400, "not understood"), handler),
        Err(Some(reply)) => reply,
        Err(None) => return,
    };
    match reply {
        Reply::Answer {
            status,
            kind,
            bytes,
        } => {
            // A reader who has gone away is no fault.
            if limits.is_ok() && answer(&mut stream, status, kind, &bytes).is_ok() {
                see_off(&mut stream);
            }
        }
        Reply::Kept(taker) => {
            handed();
            taker(stream);
        }
    }
}

/// Reads until an empty line. `Err(None)` where nobody is there to be answered.
fn head(stream: &mut TcpStream) -> Result<Vec<u8>, Option<Reply>> {
    let until = Instant::now() + HEAD_WITHIN;
    let mut head = Vec::new();
    let mut part = [0; 2048];
    while !head
        .windows(4)
        .rev()
        .take(part.len() + 4)
        .any(|w| w == b"\r\n\r\n")
    {
        if head.len() > LARGEST_HEAD {
            return Err(Some(Reply::refused(431, "too long")));
        }
        let left = until.saturating_duration_since(Instant::now());
        if left.is_zero() || stream.set_read_timeout(Some(left)).is_err() {
            return Err(Some(Reply::refused(408, "too slow")));
        }
        match stream.read(&mut part) {
            Ok(0) => return Err(None),
            Ok(n) => head.extend_from_slice(&part[..n]),
            Err(e) if e.kind() == ErrorKind::Interrupted => {}
            Err(e) if matches!(e.kind(), ErrorKind::WouldBlock | ErrorKind::TimedOut) => {}
            Err(_) => return Err(None),
        }
    }
    Ok(head)
}

/// The head of a request as it is understood here; `None` where it is not.
fn read(head: &[u8]) -> Option<Request> {
    let text = std::str::from_utf8(head).ok()?;
    let mut lines = text.split("\r\n");
    let mut first = lines.next()?.split(' ');
    let (method, target, version) = (first.next()?, first.next()?, first.next()?);
    if first.next().is_some() || !version.starts_with("HTTP/1.") {
        return None;
    }
    let headers = lines.take_while(|line| !line.is_empty()).map(|line| {
        let (name, value) = line.split_once(':')?;
        let sound = !name.is_empty() && !name.contains(char::is_whitespace);
        sound.then(|| (name.to_string(), value.trim().to_string()))
    });
    let target = target.split('#').next()?.strip_prefix('/')?;
    let (path, query) = target.split_once('?').unwrap_or((target, ""));
    Some(Request {
        method: method.to_string(),
        path: decoded(path),
        query: query.to_string(),
        headers: headers.collect::<Option<_>>()?,
    })
}

/// A path without its percent signs (RFC 3986, 2.1); `None` where it is not UTF-8 then, or a sign stands alone.
fn decoded(path: &str) -> Option<String> {
    let mut bytes = Vec::with_capacity(path.len());
    let mut parts = path.split('%');
    bytes.extend_from_slice(parts.next()?.as_bytes());
    for part in parts {
        let code = part
            .get(..2)
            .filter(|c| c.bytes().all(|b| b.is_ascii_hexdigit()))?;
        bytes.push(u8::from_str_radix(code, 16).ok()?);
        bytes.extend_from_slice(&part.as_bytes()[2..]);
    }
    String::from_utf8(bytes).ok()
}

fn answer(stream: &mut TcpStream, status: u16, kind: &str, bytes: &[u8]) -> std::io::Result<()> {
    let length = bytes.len();
    // No other origin may load, frame or hold a window of what is shown here.
    let head = format!(
        "HTTP/1.1 {status} {}\r\nContent-Type: {kind}\r\nContent-Length: {length}\r\n{HEADERS}\r\n",
        said(status)
    );
    stream.write_all(head.as_bytes())?;
    stream.write_all(bytes)?;
    stream.flush()
}

/// Go with every answer.
pub const HEADERS: &str = "Cache-Control: no-store\r\nConnection: close\r\nX-Content-Type-Options: nosniff\r\nCross-Origin-Resource-Policy: same-origin\r\nCross-Origin-Opener-Policy: same-origin\r\nContent-Security-Policy: frame-ancestors 'self'\r\n";

/// The words of RFC 9110 for a status.
fn said(status: u16) -> &'static str {
    match status {
        200 => "OK",
        400 => "Bad Request",
        403 => "Forbidden",
        404 => "Not Found",
        408 => "Request Timeout",
        431 => "Request Header Fields Too Large",
        _ => "Internal Server Error",
    }
}

/// Lets a reader take what was written: closed at once, a connection on which more was sent would cut it off.
fn see_off(stream: &mut TcpStream) {
    let until = Instant::now() + CLOSE_WITHIN;
    let (mut part, mut rest) = ([0; 4096], 0);
    if stream.shutdown(Shutdown::Write).is_err() {
        return;
    }
    while rest < LARGEST_REST {
        let left = until.saturating_duration_since(Instant::now());
        if left.is_zero() || stream.set_read_timeout(Some(left)).is_err() {
            return;
        }
        match stream.read(&mut part) {
            Ok(0) | Err(_) => return,
            Ok(n) => rest += n,
        }
    }
}

/// Whether the reader has not closed a connection.
pub fn is_open(stream: &TcpStream) -> bool {
    let mut one = [0];
    let still = stream.set_nonblocking(true).is_ok()
        && match stream.peek(&mut one) {
            Ok(n) => n > 0,
            Err(e) => e.kind() == ErrorKind::WouldBlock,
        };
    still && stream.set_nonblocking(false).is_ok()
}
