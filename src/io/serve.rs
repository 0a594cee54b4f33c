//! The preview: a site made page by page, served on the loopback address alone. Nothing is read from the disk for a request, so
//! no path leads out of anything.

use super::Error;
use super::http::{self, Reply, Request};
use crate::words::escape::escape;
use std::hash::{BuildHasher, Hasher, RandomState};
use std::io::Write;
use std::net::TcpStream;
use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender, channel};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread;
use std::time::Duration;

/// Where the page listens for news.
const NEWS: &str = "rehearse-news";
/// The script that is added to pages while they are served; it is never written.
const SCRIPT: &str = "rehearse.js";
/// So many pages are kept told; of more, the oldest are let go.
const LISTENERS: usize = 64;
/// How often it is seen which pages have gone.
const GONE: Duration = Duration::from_secs(2);
/// A page that takes no news within this time is let go.
const TAKEN_WITHIN: Duration = Duration::from_secs(1);

/// A site that can be asked for its files.
pub trait Shown: Send + Sync {
    /// The file at a path, or why it cannot be shown; `None` when the site has no such file.
    fn file(&self, path: &str) -> Option<Result<Vec<u8>, String>>;
}

/// What is served now.
#[derive(Clone, Default)]
struct Preview {
    site: Option<Arc<dyn Shown>>,
    told: Told,
    /// Of this state alone, and of this run: a page that shows another one is told to load again.
    number: u64,
}

/// What is found in the curriculum as it stands, as text; empty where nothing is.
#[derive(Clone, Default)]
pub struct Told {
    /// Why the last good site stays.
    pub errors: String,
    pub warnings: String,
    /// What became other since the last publish.
    pub changes: String,
    /// "0 errors, 4 warnings".
    pub counted: String,
}

impl Told {
    /// As news for a page; `None` where there is nothing to tell.
    fn news(&self) -> Option<String> {
        let is_quiet = self.warnings.is_empty() && self.changes.is_empty();
        let event = match (self.errors.is_empty(), is_quiet) {
            (true, true) => return None,
            (true, false) => "warnings",
            _ => "trouble",
        };
        let data = serde_json::json!({
            "errors": self.errors, "warnings": self.warnings, "changes": self.changes, "counted": self.counted,
        });
        Some(format!("event: {event}\ndata: {data}\n\n"))
    }
}

/// A running preview.
pub struct Serving {
    shown: Arc<Mutex<Preview>>,
    teller: Sender<Word>,
    pub address: String,
}

/// What the thread that tells pages is told.
enum Word {
    /// Another page listens; the number of the state that it shows.
    Page(TcpStream, Option<u64>),
    News(String),
}

fn preview(shown: &Mutex<Preview>) -> MutexGuard<'_, Preview> {
    shown.lock().unwrap_or_else(PoisonError::into_inner)
}

impl Serving {
    /// Serves on the loopback address.
    ///
    /// # Errors
    /// When the port is taken or refused.
    pub fn start(port: u16) -> Result<Serving, Error> {
        let (listener, port) = http::bind(port)?;
        let shown = Arc::new(Mutex::new(Preview {
            number: RandomState::new().build_hasher().finish() >> 1,
            ..Preview::default()
        }));
        let (teller, words) = channel();
        let hosts = [format!("127.0.0.1:{port}"), format!("localhost:{port}")];
        let (of_requests, of_news) = (Arc::clone(&shown), Arc::clone(&shown));
        let joining = Mutex::new(teller.clone());
        http::serve(
            listener,
            Arc::new(move |request| answer(&request, &of_requests, &joining, &hosts)),
        );
        thread::spawn(move || tell(&words, &of_news));
        Ok(Serving {
            shown,
            teller,
            address: format!("http://127.0.0.1:{port}/"),
        })
    }

    /// Shows another state of the site and tells every open page; each asks then for the warnings.
    pub fn show(&self, site: Arc<dyn Shown>, told: Told) {
        let mut now = preview(&self.shown);
        *now = Preview {
            site: Some(site),
            told,
            number: now.number.wrapping_add(1),
        };
        drop(now);
        let _ = self.teller.send(Word::News(RELOAD_NOW.to_string()));
    }

    /// Tells every page what is wrong. The last good site stays.
    pub fn trouble(&self, told: Told) {
        let news = told.news();
        preview(&self.shown).told = told;
        let _ = self.teller.send(Word::News(news.unwrap_or_default()));
    }
}

const RELOAD_NOW: &str = "event: reload\ndata: now\n\n";

/// Keeps all pages told: server-sent events. A page that has gone, or takes nothing, is let go.
fn tell(words: &Receiver<Word>, shown: &Mutex<Preview>) {
    let mut pages: Vec<TcpStream> = Vec::new();
    let send = |page: &mut TcpStream, text: &str| {
        page.write_all(text.as_bytes())
            .and_then(|()| page.flush())
            .is_ok()
    };
    loop {
        match words.recv_timeout(GONE) {
            Ok(Word::Page(mut page, number)) => {
                let now = preview(shown).clone();
                let old = number.is_some_and(|n| n != now.number);
                let first = match old {
                    true => RELOAD_NOW.to_string(),
                    false => now.told.news().unwrap_or_default(),
                };
                let headers = http::HEADERS;
                let head = format!(
                    "HTTP/1.1 200 OK\r\nContent-Type: text/event-stream\r\n{headers}\r\nretry: 500\n\n{first}"
                );
                let limit = page.set_write_timeout(Some(TAKEN_WITHIN));
                if limit.is_ok() && send(&mut page, &head) {
                    pages.push(page);
                }
                if pages.len() > LISTENERS {
                    pages.remove(0);
                }
            }
            Ok(Word::News(text)) => pages.retain_mut(|page| send(page, &text)),
            Err(RecvTimeoutError::Timeout) => pages.retain(http::is_open),
            Err(RecvTimeoutError::Disconnected) => return,
        }
    }
}

/// Whether a browser asks for a page of its own, or the user does. Another site's page must not read or drive the preview: not by
/// a name of its own, and not by a script, picture or frame. Where a browser does not say who asks, the headers of the answer
/// keep it from what is not its own.
fn is_own(request: &Request, hosts: &[String]) -> bool {
    let known = request
        .header("Host")
        .is_some_and(|h| hosts.iter().any(|own| own == h));
    let own_origin = |o: &str| hosts.iter().any(|h| o == format!("http://{h}"));
    let origin = request.header("Origin").is_none_or(own_origin);
    let is = |name: &str, value: &str| request.header(name) == Some(value);
    // A link on another site's page may be followed.
    let followed = is("Sec-Fetch-Mode", "navigate") && is("Sec-Fetch-Dest", "document");
    let asker = match request.header("Sec-Fetch-Site") {
        None | Some("same-origin" | "none") => true,
        Some(_) => followed && kind(name(request).unwrap_or("")).starts_with("text/html"),
    };
    known && origin && asker && request.method == "GET"
}

/// The name of the file that is asked for.
fn name(request: &Request) -> Option<&str> {
    match request.path.as_deref()?.trim_start_matches('/') {
        "" => Some("index.html"),
        name => Some(name),
    }
}

fn answer(
    request: &Request,
    shown: &Mutex<Preview>,
    joining: &Mutex<Sender<Word>>,
    hosts: &[String],
) -> Reply {
    if !is_own(request, hosts) {
        return Reply::refused(403, "refused");
    }
    let Some(name) = name(request) else {
        return Reply::refused(400, "not understood");
    };
    let html = "text/html; charset=utf-8";
    let give = |status, kind, bytes| Reply::Answer {
        status,
        kind,
        bytes,
    };
    if name == SCRIPT {
        return give(200, "text/javascript; charset=utf-8", RELOAD.into());
    }
    if name == NEWS {
        let number = request.query.strip_prefix("of=");
        let number = number.and_then(|n| n.parse().ok());
        let teller = joining
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .clone();
        return Reply::Kept(Box::new(move |page| {
            let _ = teller.send(Word::Page(page, number));
        }));
    }
    let (site, number) = {
        let now = preview(shown);
        (now.site.clone(), now.number)
    };
    match site.and_then(|s| s.file(name)) {
        Some(Ok(bytes)) => match kind(name) {
            kind if kind == html => give(200, html, rehearsed(&bytes, number)),
            kind => give(200, kind, bytes),
        },
        Some(Err(why)) => {
            anstream::eprintln!("{why}");
            let page = in_place_of("This page cannot be shown", &why);
            give(500, html, rehearsed(&page, number))
        }
        // A new movement in error has no page yet: the script says why, and loads it when it has.
        None => {
            let page = in_place_of("This page is not here", "");
            give(404, html, rehearsed(&page, number))
        }
    }
}

/// A page with the reload script, and without the worker that would keep old pages.
fn rehearsed(bytes: &[u8], number: u64) -> Vec<u8> {
    let text = String::from_utf8_lossy(bytes);
    let text = text.replacen(" data-worker=\"worker.js\"", "", 1);
    text.replacen(
        "</head>",
        &format!("<script defer src=\"/rehearse.js?of={number}\"></script>\n</head>"),
        1,
    )
    .into_bytes()
}

/// In the place of a page that cannot be shown.
fn in_place_of(title: &str, why: &str) -> Vec<u8> {
    let why = escape(why);
    format!(
        "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>{title}</title>\n</head>\n<body><h1>{title}</h1>\n<pre>{why}</pre></body></html>\n"
    )
    .into_bytes()
}

/// The media type of a file by its ending, letters in any case.
fn kind(name: &str) -> &'static str {
    let ending = name.rsplit('.').next().unwrap_or("").to_ascii_lowercase();
    match ending.as_str() {
        "html" => "text/html; charset=utf-8",
        "css" => "text/css; charset=utf-8",
        "js" => "text/javascript; charset=utf-8",
        "json" => "application/json; charset=utf-8",
        "webmanifest" => "application/manifest+json",
        "svg" => "image/svg+xml",
        "xml" => "application/xml; charset=utf-8",
        "atom" => "application/atom+xml; charset=utf-8",
        "png" => "image/png",
        "jpg" | "jpeg" => "image/jpeg",
        "webp" => "image/webp",
        "gif" => "image/gif",
        "avif" => "image/avif",
        "mp4" | "m4v" => "video/mp4",
        "mov" => "video/quicktime",
        "webm" => "video/webm",
        "vtt" => "text/vtt; charset=utf-8",
        "ics" => "text/calendar; charset=utf-8",
        "txt" => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

/// Loads the page again where the reader was, and shows what is wrong. A hidden page lets go of its connection: a browser opens
/// few to one host.
const RELOAD: &str = r"'use strict';
(() => {
  const of = new URL(document.currentScript.src).search;
  const key = 'rungbook-rehearse-scroll';
  const kept = sessionStorage.getItem(key);
  if (kept) scrollTo(0, Number(kept));
  sessionStorage.removeItem(key);
  let news = null;
  const made = (name, text) => Object.assign(document.createElement(name), { textContent: text });
  const panel = made('div', '');
  panel.id = 'rehearse-trouble';
  panel.className = 'rehearse-trouble';
  panel.hidden = true;
  // Errors stand first; warnings are folded behind their count.
  const tell = (event) => {
    const { errors, warnings, changes, counted } = JSON.parse(event.data);
    const folded = made('details', '');
    folded.append(made('summary', counted), made('pre', warnings));
    panel.setAttribute('role', errors ? 'alert' : 'status');
    panel.replaceChildren(...(errors ? [made('pre', errors)] : []), ...(changes ? [made('pre', changes)] : []), ...(warnings ? [folded] : errors && counted ? [made('p', counted)] : []));
    panel.hidden = false;
  };
  document.addEventListener('DOMContentLoaded', () => document.body.prepend(panel));
  if (document.body) document.body.prepend(panel);
  const listen = () => {
    if (news || document.hidden) return;
    news = new EventSource('/rehearse-news' + of);
    news.addEventListener('reload', () => {
      sessionStorage.setItem(key, String(scrollY));
      location.reload();
    });
    news.addEventListener('trouble', tell);
    news.addEventListener('warnings', tell);
  };
  const stop = () => { if (news) news.close(); news = null; };
  document.addEventListener('visibilitychange', () => (document.hidden ? stop() : listen()));
  addEventListener('pagehide', stop);
  listen();
})();
";
