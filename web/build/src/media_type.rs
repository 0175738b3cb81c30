//! The media type of each kind of file in a built page.

/// The type by the file name's ending, as registered with IANA; browsers
/// refuse to compile WebAssembly, or to run a module, under another one.
pub(crate) fn media_type(file_name: &str) -> &'static str {
    match file_name.rsplit_once('.').map(|(_, ending)| ending) {
        Some("html") => "text/html; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("webmanifest") => "application/manifest+json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("txt") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

/// Whether a file gets smaller by gzip; PNG is compressed already.
pub(crate) fn compressible(media_type: &str) -> bool {
    !matches!(media_type, "image/png" | "application/octet-stream")
}
