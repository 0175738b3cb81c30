#!/usr/bin/env python3
"""Writes core/tests/data/modified_bessel.json: I and K in the first quadrant.

mpmath at 30 digits. Needs: pip install mpmath
"""
import json
import pathlib

import mpmath as mp

mp.mp.dps = 30
SIZES = ["0.05", "0.3", "1", "1.9", "2.1", "2.404825557695773", "3.7", "5.5", "8", "12", "18", "24.9", "25.1", "40", "300", "2e5"]
EIGHTHS = [0, 1, 2, 3, 4]  # eighths of pi: 0 to 90 degrees

rows = []
for size in SIZES:
    for eighth in EIGHTHS:
        z = mp.mpf(size) * (mp.mpc(0, 1) if eighth == 4 else mp.expjpi(mp.mpf(eighth) / 8))
        # The argument the computation under test is given is the rounded one.
        zf = complex(z)
        z = mp.mpc(zf.real, zf.imag)
        row = {"z": [zf.real, zf.imag], "i": [], "di": [], "k": [], "dk": []}
        for m in range(3):
            for key, value in (
                ("i", mp.besseli(m, z) * mp.exp(-z)),
                ("di", (mp.besseli(m + 1, z) + m / z * mp.besseli(m, z)) * mp.exp(-z)),
                ("k", mp.besselk(m, z) * mp.exp(z)),
                ("dk", (m / z * mp.besselk(m, z) - mp.besselk(m + 1, z)) * mp.exp(z)),
            ):
                v = complex(value)
                row[key].append([v.real, v.imag])
        rows.append(row)
hankel = []
for x in ["1e-6", "0.01", "0.5", "1.841183781340659", "2.5", "5.1", "12"]:
    x = mp.mpf(float(x))
    for m in range(3):
        h = complex(mp.hankel2(m, x))
        d = complex((mp.hankel2(m - 1, x) - mp.hankel2(m + 1, x)) / 2)
        hankel.append({"m": m, "x": float(x), "h": [h.real, h.imag], "dh": [d.real, d.imag]})
out = pathlib.Path(__file__).parents[2] / "core/tests/data/modified_bessel.json"
out.write_text(json.dumps({"origin": "mpmath, 30 digits; i, di times exp(-z), k, dk times exp(z)", "rows": rows, "hankel": hankel}) + "\n")
print(len(rows), "arguments")
