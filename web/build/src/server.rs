//! A static file server for this machine alone: what `cargo run` opens, and
//! what the browser tests load the page from.
//!
//! It answers GET and HEAD on the loopback address, with the media types that
//! browsers insist on, gzip where the browser takes it, and caching as a
//! careful static host would set it.

use crate::failure::{Failure, Result};
use crate::fingerprint::fingerprint;
use crate::media_type::{compressible, media_type};
use crate::weight::gzip;
use std::io::{BufRead, BufReader, Read, Write};
use std::net::{Ipv4Addr, SocketAddr, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

/// The port that is tried first when none is asked for, and how many after it.
const FIRST_PORT: u16 = 8713;
const PORTS_TRIED: u16 = 20;
/// The longest request head that is read, in bytes.
const HEAD_LIMIT: u64 = 16_384;
/// How long a browser may keep a connection open without asking.
const PATIENCE: Duration = Duration::from_secs(15);

/// What to serve, and where.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ServerOptions {
    /// The folder of static files.
    pub folder: PathBuf,
    /// The port; `None` for 8713 or the next free one, `Some(0)` for any.
    pub port: Option<u16>,
    /// The path under which the folder appears: `/` or `/some/sub/path/`.
    pub prefix: String,
}

/// A server that holds its port.
#[derive(Debug)]
pub struct Server {
    listener: TcpListener,
    site: Arc<Site>,
    address: SocketAddr,
}

impl Server {
    /// Takes the port.
    ///
    /// # Errors
    /// [`Failure::NoPort`] when none can be had, [`Failure::Usage`] for a
    /// prefix without a slash at both ends.
    pub fn bind(options: &ServerOptions) -> Result<Self> {
        let prefix = options.prefix.clone();
        if !(prefix.starts_with('/') && prefix.ends_with('/')) {
            return Err(Failure::Usage(format!(
                "--prefix {prefix}: must begin and end with a slash"
            )));
        }
        let (first, last) = match options.port {
            Some(port) => (port, port),
            None => (FIRST_PORT, FIRST_PORT + PORTS_TRIED),
        };
        let mut refused = std::io::Error::from(std::io::ErrorKind::AddrInUse);
        for port in first..=last {
            let bound = TcpListener::bind((Ipv4Addr::LOCALHOST, port))
                .and_then(|listener| Ok((listener.local_addr()?, listener)));
            match bound {
                Ok((address, listener)) => {
                    let folder = options.folder.clone();
                    return Ok(Self {
                        listener,
                        site: Arc::new(Site { folder, prefix }),
                        address,
                    });
                }
                Err(error) => refused = error,
            }
        }
        Err(Failure::NoPort {
            first,
            last,
            source: refused,
        })
    }

    /// The address to open in a browser.
    pub fn address(&self) -> String {
        format!("http://{}{}", self.address, self.site.prefix)
    }

    /// Serves until the process ends.
    pub fn run(&self) {
        for stream in self.listener.incoming().flatten() {
            let site = Arc::clone(&self.site);
            // A browser that goes away in the middle is no matter for us.
            std::thread::spawn(move || site.converse(&stream).unwrap_or_default());
        }
    }
}

#[derive(Debug)]
struct Site {
    folder: PathBuf,
    prefix: String,
}

/// The parts of a request that matter here.
#[derive(Debug, Default)]
struct Request {
    method: String,
    target: String,
    takes_gzip: bool,
    /// The `If-None-Match` header.
    known: String,
    last: bool,
}

/// A response: status, further header lines, body.
struct Response {
    status: &'static str,
    headers: String,
    body: Vec<u8>,
}

impl Response {
    fn plain(status: &'static str, headers: String) -> Self {
        Self {
            status,
            headers: format!("Content-Type: text/plain; charset=utf-8\r\n{headers}"),
            body: format!("{status}\n").into_bytes(),
        }
    }
}

impl Site {
    /// Answers the requests of one connection in turn.
    fn converse(&self, stream: &TcpStream) -> std::io::Result<()> {
        stream.set_read_timeout(Some(PATIENCE))?;
        stream.set_nodelay(true)?;
        let mut reader = BufReader::new(stream);
        while let Some(request) = read_request(&mut reader)? {
            let response = self.answer(&request);
            let mut message = format!(
                "HTTP/1.1 {}\r\nContent-Length: {}\r\nX-Content-Type-Options: nosniff\r\n{}{}\r\n",
                response.status,
                response.body.len(),
                if request.last {
                    "Connection: close\r\n"
                } else {
                    ""
                },
                response.headers
            )
            .into_bytes();
            if request.method != "HEAD" {
                message.extend_from_slice(&response.body);
            }
            let mut writer = stream;
            writer.write_all(&message)?;
            if request.last {
                break;
            }
        }
        Ok(())
    }

    fn answer(&self, request: &Request) -> Response {
        if request.method != "GET" && request.method != "HEAD" {
            let allow = "Allow: GET, HEAD\r\n".to_owned();
            return Response::plain("405 Method Not Allowed", allow);
        }
        let path = request.target.split(['?', '#']).next().unwrap_or_default();
        if format!("{path}/") == self.prefix {
            let to = format!("Location: {}\r\n", self.prefix);
            return Response::plain("308 Permanent Redirect", to);
        }
        let found = path
            .strip_prefix(self.prefix.as_str())
            .and_then(safe_relative)
            .and_then(|name| Some((std::fs::read(self.folder.join(&name)).ok()?, name)));
        match found {
            Some((bytes, name)) => file_response(&name, bytes, request),
            None => Response::plain("404 Not Found", "Cache-Control: no-cache\r\n".to_owned()),
        }
    }
}

fn file_response(name: &str, bytes: Vec<u8>, request: &Request) -> Response {
    let kind = media_type(name);
    let caching = if is_hashed(name) {
        "public, max-age=31536000, immutable"
    } else {
        "no-cache"
    };
    let tag = format!("\"{}-{:x}\"", fingerprint(&[&bytes]), bytes.len());
    let mut headers = format!(
        "Content-Type: {kind}\r\nCache-Control: {caching}\r\nETag: {tag}\r\nVary: Accept-Encoding\r\n"
    );
    if request.known.contains(&tag) {
        return Response {
            status: "304 Not Modified",
            headers,
            body: Vec::new(),
        };
    }
    let body = if request.takes_gzip && compressible(kind) {
        headers.push_str("Content-Encoding: gzip\r\n");
        gzip(&bytes)
    } else {
        bytes
    };
    Response {
        status: "200 OK",
        headers,
        body,
    }
}

/// Reads one request head; `None` when the browser has closed the connection.
fn read_request(reader: &mut BufReader<&TcpStream>) -> std::io::Result<Option<Request>> {
    let mut head = reader.by_ref().take(HEAD_LIMIT);
    let mut line = String::new();
    if head.read_line(&mut line)? == 0 {
        return Ok(None);
    }
    let mut words = line.split_whitespace();
    let mut request = Request {
        method: words.next().unwrap_or_default().to_owned(),
        target: words.next().unwrap_or_default().to_owned(),
        last: words.next() != Some("HTTP/1.1"),
        ..Request::default()
    };
    loop {
        line.clear();
        if head.read_line(&mut line)? == 0 {
            // Cut off, or longer than we read.
            return Ok(None);
        }
        let Some((name, value)) = line.trim_end().split_once(':') else {
            return Ok(Some(request));
        };
        let value = value.trim();
        match name.to_ascii_lowercase().as_str() {
            "accept-encoding" => request.takes_gzip = accepts_gzip(value),
            "if-none-match" => value.clone_into(&mut request.known),
            "connection" if value.eq_ignore_ascii_case("close") => request.last = true,
            // A body would be taken for the next request.
            "content-length" | "transfer-encoding" if value != "0" => request.last = true,
            _ => {}
        }
    }
}

fn accepts_gzip(accept_encoding: &str) -> bool {
    accept_encoding.split(',').any(|coding| {
        let mut parts = coding.split(';').map(str::trim);
        parts.next() == Some("gzip") && !parts.any(|p| matches!(p, "q=0" | "q=0.0"))
    })
}

/// The file that a path below the prefix names: `index.html` for a folder, and
/// nothing outside of the served folder whatever the path says.
fn safe_relative(path: &str) -> Option<String> {
    let mut decoded = percent_decoded(path)?;
    if decoded.is_empty() || decoded.ends_with('/') {
        decoded.push_str("index.html");
    }
    let plain = |part: &str| {
        !part.is_empty() && !part.starts_with('.') && !part.contains(['\\', ':', '\0'])
    };
    decoded.split('/').all(plain).then_some(decoded)
}

fn percent_decoded(path: &str) -> Option<String> {
    let mut pieces = path.split('%');
    let mut bytes = pieces.next()?.as_bytes().to_vec();
    for piece in pieces {
        let (digits, rest) = (piece.get(..2)?, piece.get(2..)?);
        bytes.push(u8::from_str_radix(digits, 16).ok()?);
        bytes.extend_from_slice(rest.as_bytes());
    }
    String::from_utf8(bytes).ok()
}

/// Whether the name carries its content's fingerprint (`app-1a2b3c4d.js`).
fn is_hashed(name: &str) -> bool {
    let stem = Path::new(name).file_stem().unwrap_or_default();
    let stem = stem.to_string_lossy();
    stem.rsplit_once('-')
        .is_some_and(|(_, hash)| hash.len() == 8 && hash.bytes().all(|b| b.is_ascii_hexdigit()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::atomic::{AtomicUsize, Ordering};

    #[test]
    fn nothing_outside_the_folder_has_a_name() {
        for path in [
            "../secret",
            "a/../../secret",
            "%2e%2e/secret",
            "..%2fsecret",
            "/etc/passwd",
            "/",
            "a//b",
            "a\\..\\b",
            "c:/x",
            "%00",
            "%zz",
            "%c3",
            ".git/config",
        ] {
            assert_eq!(safe_relative(path), None, "{path}");
        }
        assert_eq!(safe_relative("").as_deref(), Some("index.html"));
        assert_eq!(safe_relative("a/").as_deref(), Some("a/index.html"));
        assert_eq!(safe_relative("a%20b.svg").as_deref(), Some("a b.svg"));
    }

    #[test]
    fn gzip_is_sent_only_to_who_takes_it() {
        assert!(accepts_gzip("br, gzip;q=0.8"), "offered");
        assert!(!accepts_gzip("gzip;q=0, br"), "refused");
        assert!(!accepts_gzip("identity"), "not named");
    }

    #[test]
    fn only_names_with_a_fingerprint_are_kept_for_good() {
        assert!(is_hashed("app-1a2b3c4d.wasm"), "hashed");
        for name in ["sw.js", "index.html", "icon-512.png", "icon.svg"] {
            assert!(!is_hashed(name), "{name}");
        }
    }

    fn exchange(request: &str) -> std::io::Result<String> {
        // A folder for each exchange: tests run side by side.
        static COUNT: AtomicUsize = AtomicUsize::new(0);
        let number = COUNT.fetch_add(1, Ordering::Relaxed);
        let name = format!("tinwave-site-{}-{number}", std::process::id());
        let folder = std::env::temp_dir().join(name);
        std::fs::create_dir_all(&folder)?;
        std::fs::write(folder.join("index.html"), "hello")?;
        std::fs::write(folder.join("app-00000000.wasm"), "\0asm")?;
        let options = ServerOptions {
            folder: folder.clone(),
            port: Some(0),
            prefix: "/sub/path/".to_owned(),
        };
        let server = Server::bind(&options).map_err(std::io::Error::other)?;
        let mut stream = TcpStream::connect(server.address)?;
        std::thread::spawn(move || server.run());
        stream.write_all(request.as_bytes())?;
        let mut response = String::new();
        stream.read_to_string(&mut response)?;
        std::fs::remove_dir_all(&folder)?;
        Ok(response)
    }

    #[test]
    fn answers_as_a_static_host_does() -> std::io::Result<()> {
        let get =
            |path: &str| exchange(&format!("GET {path} HTTP/1.1\r\nConnection: close\r\n\r\n"));
        let page = get("/sub/path/?a=1")?;
        assert!(page.starts_with("HTTP/1.1 200 OK\r\n"), "{page}");
        assert!(page.contains("Content-Type: text/html"), "{page}");
        assert!(page.contains("Cache-Control: no-cache"), "{page}");
        assert!(page.ends_with("\r\n\r\nhello"), "{page}");

        let wasm = get("/sub/path/app-00000000.wasm")?;
        assert!(
            wasm.contains("Content-Type: application/wasm\r\n"),
            "{wasm}"
        );
        assert!(wasm.contains("immutable"), "{wasm}");

        assert!(
            get("/sub/path")?.contains("Location: /sub/path/\r\n"),
            "the slash"
        );
        assert!(get("/")?.starts_with("HTTP/1.1 404"), "outside the prefix");
        assert!(
            get("/sub/path/no")?.starts_with("HTTP/1.1 404"),
            "no such file"
        );
        Ok(())
    }

    #[test]
    fn head_sends_no_body_and_other_methods_are_refused() -> std::io::Result<()> {
        let head = exchange("HEAD /sub/path/ HTTP/1.0\r\n\r\n")?;
        assert!(head.contains("Content-Length: 5\r\n"), "{head}");
        assert!(head.ends_with("\r\n\r\n"), "{head}");
        let post = exchange("POST /sub/path/ HTTP/1.0\r\nContent-Length: 2\r\n\r\nhi")?;
        assert!(post.starts_with("HTTP/1.1 405"), "{post}");
        Ok(())
    }
}
