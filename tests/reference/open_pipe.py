#!/usr/bin/env python3
"""Writes core/tests/data/open_pipe_continued.json: the open pipe outside the usual range.

Reflection of modes below their cutoff and of higher modes, and the far field of
TM01, by the Wiener-Hopf method (L. A. Weinstein, The Theory of Diffraction and
the Factorization Method, 1969). Apart from the method everything differs from the
code under test: scipy's Bessel functions (Amos), another path (36 degrees
instead of 45), another step. Needs: pip install scipy numpy
"""
import json
import pathlib

import numpy as np
from scipy.special import hankel2, ive, jn_zeros, jnp_zeros, jv, jvp, kve

STEP, ANGLE = 0.1, np.pi / 5
PARTIAL = {"TE": jnp_zeros, "TM": jn_zeros}


class Pipe:
    def __init__(self, family, m, index, ka):
        self.family, self.m, self.ka = family, m, ka
        self.root = PARTIAL[family](m, index)[-1]
        self.h = np.sqrt(complex(ka**2 - self.root**2, -0.0))
        near = min(abs(ka**2 - x * x) for z in (jn_zeros, jnp_zeros) for x in z(m, 6)) / ka**2
        s = np.arange(13, min(0, 0.5 * np.log(near)) - 45, -STEP)
        self.t = ka * np.exp(s + 1j * ANGLE)
        g = np.sqrt(self.t**2 - ka**2)
        i, i1 = ive(m, g), ive(m + 1, g)
        k, k1 = (kve(n, g) * np.exp(-1j * g.imag) for n in (m, m + 1))
        self.ln = {
            "L": self.continuous(2 * g * i * k),
            "M": self.continuous(-2 * g * (i1 + m / g * i) * (m / g * k - k1)),
        }
        ratio = self.plus("L", -ka) / self.plus("M", -ka)
        q = (m * ratio / (2 * ka)) ** 2
        s, d = 1 / (ka + self.h), 1 / (ka - self.h)
        if family == "TE":
            self.b = (s + q * d) / (1 - q)
            self.a = -1j * m * ratio / (2 * ka**2) * (self.b + d)
        else:
            self.a = -(d + q * s) / (1 - q)
            self.b = 1j * m * ratio / 2 * (self.a - s)

    @staticmethod
    def continuous(f):
        return np.log(abs(f)) + 1j * np.unwrap(np.angle(f))

    def plus(self, kernel, w):
        w = complex(w)
        integral = np.sum(self.ln[kernel] * self.t / (self.t**2 - w * w)) * STEP
        return np.exp(w / (np.pi * 1j) * integral) / np.sqrt(2j * (self.ka - w))

    def reflection(self):
        h, r = self.h, self.root
        if self.family == "TE":
            factor = (self.ka + h) * self.plus("M", -h)
            return (self.b - 1 / (2 * h)) * factor**2 / ((1 - (self.m / r) ** 2) * h)
        return -(self.a - 1 / (2 * h)) * (r * self.plus("L", -h)) ** 2 / h

    def tm01_far_field(self, theta):
        """E_theta per unit amplitude of e_rho = J0'(root rho), lengths in radii."""
        w, u = self.ka * np.cos(theta), self.ka * np.sin(theta)
        n = self.a + 1 / (w - self.h)
        field = -1j / np.pi / np.sin(theta) * n
        field *= np.pi / 2j * jv(0, u) / self.plus("L", -w) if w > 0 else self.plus("L", w) / hankel2(0, u)
        return field * self.root**2 * jvp(0, self.root) * self.plus("L", -self.h) / self.h


CASES = [("TE", 1, 1, k) for k in (0.5, 1.2, 1.5, 1.7, 1.8, 1.84, 1.8415)]
CASES += [("TM", 0, 1, k) for k in (0.5, 1.2, 1.842, 2.1, 2.3, 2.4, 2.4047, 2.405, 3.83, 7.0)]
CASES += [("TE", 2, 1, k) for k in (1.2, 1.9, 2.5, 3.0, 3.05, 3.0545, 3.83, 6.0)]
CASES += [("TE", 1, 1, k) for k in (3.83, 3.8317, 3.84, 5.33, 8.0, 11.5)]
CASES += [("TM", 1, 1, k) for k in (2.3, 3.83, 4.5, 6.0)] + [("TE", 1, 2, k) for k in (2.3, 6.5)]
CASES += [("TE", 0, 1, k) for k in (2.3, 3.83, 5.0)] + [("TM", 2, 1, k) for k in (3.0, 6.0)] + [("TM", 0, 2, k) for k in (2.3, 6.0)]

reflections = []
for family, m, index, ka in CASES:
    value = Pipe(family, m, index, ka).reflection()
    reflections.append({"family": family, "order": m, "index": index, "ka": ka, "re": value.real, "im": value.imag})
fields = []
for ka in (2.1, 2.6, 3.6):
    pipe = Pipe("TM", 0, 1, ka)
    for degrees in (5, 25, 40, 60, 85, 95, 120, 150, 175):
        value = pipe.tm01_far_field(np.radians(degrees))
        fields.append({"ka": ka, "degrees": degrees, "re": value.real, "im": value.imag})
out = pathlib.Path(__file__).parents[2] / "core/tests/data/open_pipe_continued.json"
out.write_text(json.dumps({
    "origin": "tests/reference/open_pipe.py: Weinstein 1969, scipy's Bessel functions, path at 36 degrees",
    "reflections": reflections, "tm01_far_field": fields}, indent=None).replace('{"', '\n{"') + "\n")
print(len(reflections), "reflections,", len(fields), "fields")
