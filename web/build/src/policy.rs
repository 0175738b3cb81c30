//! What the page's browser may load and run.

/// The content security policy that `index.html` carries.
///
/// Nothing but the page's own files and WebAssembly; no inline script or style, no
/// forms, no frames, no other host.
pub const CONTENT_POLICY: &str = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; \
     style-src 'self'; img-src 'self'; connect-src 'self'; manifest-src 'self'; \
     worker-src 'self'; base-uri 'none'; form-action 'none'";
