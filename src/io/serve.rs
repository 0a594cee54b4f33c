//! The preview: a site made page by page, served on the loopback address alone. Nothing is read from the disk for a request, so
//! no path leads out of anything.

use super::Error;
use std::io::Write;
use std::path::Path;
use std::sync::mpsc::{Sender, channel};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use std::thread;
use tiny_http::{Header, Method, Request, Response, Server};

/// Where the page listens for news.
const NEWS: &str = "/rehearse-news";
/// The script that is added to pages while they are served; it is never written.
const SCRIPT: &str = "/rehearse.js";
const WORKERS: usize = 4;

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
}

/// What is found in the curriculum as it stands, as text; empty where nothing is.
#[derive(Clone, Default)]
pub struct Told {
    /// Why the last good site stays.
    pub errors: String,
    pub warnings: String,
    /// "0 errors, 4 warnings".
    pub counted: String,
}

impl Told {
    /// As news for a page; `None` where there is nothing to tell.
    fn news(&self) -> Option<String> {
        let event = match (self.errors.is_empty(), self.warnings.is_empty()) {
            (true, true) => return None,
            (true, false) => "warnings",
            _ => "trouble",
        };
        let data = serde_json::json!({ "errors": self.errors, "warnings": self.warnings, "counted": self.counted });
        Some(format!("event: {event}\ndata: {data}\n\n"))
    }
}

/// A running preview.
pub struct Serving {
    shown: Arc<Mutex<Preview>>,
    listeners: Arc<Mutex<Vec<Sender<String>>>>,
    pub address: String,
}

impl Serving {
    /// Serves on the loopback address.
    ///
    /// # Errors
    /// When the port is taken or refused.
    pub fn start(port: u16) -> Result<Serving, Error> {
        let wanted = format!("127.0.0.1:{port}");
        let server =
            Server::http(&wanted).map_err(|e| Error::new("serve on", Path::new(&wanted), e))?;
        let server = Arc::new(server);
        let port = server.server_addr().to_ip().map_or(port, |a| a.port());
        let shown = Arc::new(Mutex::new(Preview::default()));
        let listeners = Arc::new(Mutex::new(Vec::new()));
        let hosts = [format!("127.0.0.1:{port}"), format!("localhost:{port}")];
        for _ in 0..WORKERS {
            let (server, shown, listeners, hosts) = (
                Arc::clone(&server),
                Arc::clone(&shown),
                Arc::clone(&listeners),
                hosts.clone(),
            );
            thread::spawn(move || {
                while let Ok(request) = server.recv() {
                    answer(request, &shown, &listeners, &hosts);
                }
            });
        }
        Ok(Serving {
            shown,
            listeners,
            address: format!("http://127.0.0.1:{port}/"),
        })
    }

    /// Shows another state of the site and tells every open page; each asks then for the warnings.
    pub fn show(&self, site: Arc<dyn Shown>, told: Told) {
        *self.preview() = Preview {
            site: Some(site),
            told,
        };
        self.tell("event: reload\ndata: now\n\n");
    }

    /// Tells every page what is wrong. The last good site stays.
    pub fn trouble(&self, told: Told) {
        let news = told.news();
        self.preview().told = told;
        self.tell(&news.unwrap_or_default());
    }

    fn preview(&self) -> MutexGuard<'_, Preview> {
        self.shown.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn tell(&self, news: &str) {
        let mut listeners = self
            .listeners
            .lock()
            .unwrap_or_else(PoisonError::into_inner);
        listeners.retain(|l| l.send(news.to_string()).is_ok());
    }
}

fn answer(
    request: Request,
    shown: &Mutex<Preview>,
    listeners: &Mutex<Vec<Sender<String>>>,
    hosts: &[String],
) {
    let header = |name: &'static str| {
        let of = request.headers().iter().find(|h| h.field.equiv(name));
        of.map(|h| h.value.as_str().to_string())
    };
    // Another site's page must not read or drive the preview by a name of its own.
    let known = header("Host").is_some_and(|h| hosts.contains(&h));
    let foreign =
        header("Origin").is_some_and(|o| !hosts.iter().any(|h| o == format!("http://{h}")));
    if !known || foreign || *request.method() != Method::Get {
        let _ = request.respond(Response::from_string("refused").with_status_code(403));
        return;
    }
    let path = request
        .url()
        .split(['?', '#'])
        .next()
        .unwrap_or("/")
        .to_string();
    match path.as_str() {
        NEWS => listen(request, shown, listeners),
        SCRIPT => give(
            request,
            200,
            "text/javascript; charset=utf-8",
            RELOAD.as_bytes().to_vec(),
        ),
        _ => {
            let name = match path.trim_start_matches('/') {
                "" => "index.html",
                name => name,
            };
            let site = shown
                .lock()
                .unwrap_or_else(PoisonError::into_inner)
                .site
                .clone();
            let bytes = match site.and_then(|s| s.file(name)) {
                Some(Ok(bytes)) => bytes,
                Some(Err(why)) => {
                    anstream::eprintln!("{why}");
                    let page = rehearsed(&in_place_of("This page cannot be shown", &why));
                    return give(request, 500, "text/html; charset=utf-8", page);
                }
                None => {
                    // A new movement in error has no page yet: the script says why, and loads it when it has.
                    let page = rehearsed(&in_place_of("This page is not here", ""));
                    return give(request, 404, "text/html; charset=utf-8", page);
                }
            };
            let kind = kind(name);
            let bytes = match kind.starts_with("text/html") {
                true => rehearsed(&bytes),
                false => bytes,
            };
            give(request, 200, kind, bytes);
        }
    }
}

/// A page with the reload script, and without the worker that would keep old pages.
fn rehearsed(bytes: &[u8]) -> Vec<u8> {
    let text = String::from_utf8_lossy(bytes);
    let text = text.replacen(" data-worker=\"worker.js\"", "", 1);
    text.replacen(
        "</head>",
        "<script defer src=\"/rehearse.js\"></script>\n</head>",
        1,
    )
    .into_bytes()
}

/// In the place of a page that cannot be shown.
fn in_place_of(title: &str, why: &str) -> Vec<u8> {
    let why = why.replace('&', "&amp;").replace('<', "&lt;");
    format!(
        "<!doctype html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><title>{title}</title>\n</head>\n<body><h1>{title}</h1>\n<pre>{why}</pre></body></html>\n"
    )
    .into_bytes()
}

fn give(request: Request, status: u16, kind: &str, bytes: Vec<u8>) {
    let header = |name: &str, value: &str| Header::from_bytes(name.as_bytes(), value.as_bytes());
    let mut response = Response::from_data(bytes).with_status_code(status);
    for (name, value) in [
        ("Content-Type", kind),
        ("Cache-Control", "no-store"),
        ("X-Content-Type-Options", "nosniff"),
    ] {
        if let Ok(header) = header(name, value) {
            response.add_header(header);
        }
    }
    // A reader who has gone away is no fault.
    let _ = request.respond(response);
}

/// Keeps one page told: server-sent events, on a thread of its own.
fn listen(request: Request, shown: &Mutex<Preview>, listeners: &Mutex<Vec<Sender<String>>>) {
    let (send, news) = channel();
    let told = shown
        .lock()
        .unwrap_or_else(PoisonError::into_inner)
        .told
        .news();
    if let Some(told) = told {
        let _ = send.send(told);
    }
    listeners
        .lock()
        .unwrap_or_else(PoisonError::into_inner)
        .push(send);
    thread::spawn(move || {
        let mut to = request.into_writer();
        let head = "HTTP/1.1 200 OK\r\nContent-Type: text/event-stream\r\nCache-Control: no-store\r\nConnection: close\r\n\r\nretry: 500\n\n";
        let mut sound = to
            .write_all(head.as_bytes())
            .and_then(|()| to.flush())
            .is_ok();
        while sound && let Ok(text) = news.recv() {
            sound = to
                .write_all(text.as_bytes())
                .and_then(|()| to.flush())
                .is_ok();
        }
    });
}

fn kind(name: &str) -> &'static str {
    match name.rsplit('.').next() {
        Some("html") => "text/html; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("json" | "webmanifest") => "application/json; charset=utf-8",
        Some("svg") => "image/svg+xml",
        Some("xml" | "atom") => "application/xml; charset=utf-8",
        Some("png") => "image/png",
        Some("jpg" | "jpeg") => "image/jpeg",
        Some("webp") => "image/webp",
        Some("mp4") => "video/mp4",
        Some("txt") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

/// Loads the page again where the reader was, and shows what is wrong. A hidden page lets go of its connection: a browser opens
/// few to one host.
const RELOAD: &str = r"'use strict';
(() => {
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
    const { errors, warnings, counted } = JSON.parse(event.data);
    const folded = made('details', '');
    folded.append(made('summary', counted), made('pre', warnings));
    panel.setAttribute('role', errors ? 'alert' : 'status');
    panel.replaceChildren(...(errors ? [made('pre', errors)] : []), ...(warnings ? [folded] : errors && counted ? [made('p', counted)] : []));
    panel.hidden = false;
  };
  document.addEventListener('DOMContentLoaded', () => document.body.prepend(panel));
  if (document.body) document.body.prepend(panel);
  const listen = () => {
    if (news || document.hidden) return;
    news = new EventSource('/rehearse-news');
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
