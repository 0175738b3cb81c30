#!/usr/bin/env python3
"""Writes core/src/bessel_roots.rs: every root of J_n and J_n' up to 36.

Roots are bracketed by scipy's zeros and polished with mpmath at 30 digits, so
the table comes from two general-purpose libraries and not from our own code.
Needs: pip install mpmath scipy
"""
import pathlib
import mpmath as mp
from scipy.special import jn_zeros, jnp_zeros

LIMIT = 36.0
mp.mp.dps = 30


def rows():
    for n in range(0, 40):
        for prime, zeros in ((False, jn_zeros), (True, jnp_zeros)):
            for m, guess in enumerate(zeros(n, 14), start=1):
                if guess > LIMIT:
                    break
                f = (lambda x: mp.besselj(n, x, derivative=1)) if prime else (lambda x: mp.besselj(n, x))
                yield float(mp.findroot(f, guess)), prime, n, m


table = sorted(rows())
out = pathlib.Path(__file__).parents[2] / "core/src/bessel_roots.rs"
lines = [
    "//! Roots of the Bessel functions J_n and of their derivatives, up to 36.",
    "//!",
    "//! Written by `tests/reference/bessel_roots.py` (scipy brackets, mpmath at 30",
    "//! digits); checked against M. Abramowitz and I. A. Stegun, *Handbook of",
    "//! Mathematical Functions*, 1964, table 9.5. The root x = 0 of J_0' that the",
    "//! handbook counts is left out, as waveguide books do.",
    "",
    "/// One root: a mode's cutoff wavenumber times the guide's radius.",
    "#[derive(Clone, Copy, Debug, PartialEq)]",
    "pub struct BesselRoot {",
    "    /// The root.",
    "    pub x: f64,",
    "    /// Whether it is a root of the derivative J_n' (TE modes) or of J_n (TM modes).",
    "    pub of_derivative: bool,",
    "    /// Order n.",
    "    pub order: u8,",
    "    /// Which root of that order, from 1.",
    "    pub index: u8,",
    "}",
    "",
    "const fn root(x: f64, of_derivative: bool, order: u8, index: u8) -> BesselRoot {",
    "    BesselRoot {",
    "        x,",
    "        of_derivative,",
    "        order,",
    "        index,",
    "    }",
    "}",
    "",
    "/// Largest argument up to which the table is complete.",
    f"pub const COMPLETE_UP_TO: f64 = {LIMIT};",
    "",
    "/// Every root up to [`COMPLETE_UP_TO`], ascending.",
    "#[rustfmt::skip]",
    f"pub static BESSEL_ROOTS: [BesselRoot; {len(table)}] = [",
]
for x, prime, n, m in table:
    lines.append(f"    root({x!r}, {str(prime).lower()}, {n}, {m}),")
lines += ["];", ""]
out.write_text("\n".join(lines))
print(len(table), "roots")
