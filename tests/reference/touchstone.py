#!/usr/bin/env python3
"""Writes core/tests/data/touchstone.json: files and what scikit-rf reads in them.

Half of the texts are written by scikit-rf itself (networks of random numbers,
seeded), half by hand; the values are those that scikit-rf reads. Needs:
pip install scikit-rf
"""
import io
import json
import pathlib

import numpy as np
import skrf

rng = np.random.default_rng(20)


def io_named(text, ports):
    stream = io.StringIO(text)
    stream.name = f"case.s{ports}p"
    return stream


def read(text, ports):
    return skrf.Network(io_named(text, ports))


def entry(name, text, ports):
    net = read(text, ports)
    s = net.s
    # The library multiplies normalised admittances by R where it should divide, so
    # for these kinds its conversions are given ohms and siemens.
    kind = next((k for k in (" Y ", " H ", " G ") if k in text and "[Version]" not in text), None)
    if kind:
        lines = text.splitlines()[1:]
        pairs = np.array([[float(word) for word in line.split()[1:]] for line in lines])
        form = "MA" if " MA " in text else "RI"
        first, second = pairs[:, 0::2], pairs[:, 1::2]
        values = first * np.exp(1j * np.radians(second)) if form == "MA" else first + 1j * second
        r = float(net.z0[0, 0].real)
        if ports == 1:
            m = values.reshape(-1, 1, 1)
        else:
            m = np.empty((len(values), 2, 2), complex)
            m[:, 0, 0], m[:, 1, 0], m[:, 0, 1], m[:, 1, 1] = values.T
        if kind == " Y ":
            s = skrf.network.y2s(m / r, r)
        else:
            scale = np.array([[r, 1.0], [1.0, 1.0 / r]])
            s = skrf.network.h2s(m * scale if kind == " H " else np.linalg.inv(m / scale), r)
    return {
        "name": name,
        "ports": ports,
        "text": text,
        "z0": [float(z.real) for z in net.z0[0]],
        "f_hz": [float(f) for f in net.f],
        "s": [[[[v.real, v.imag] for v in row] for row in one] for one in s],
    }


cases = []
for ports in (1, 2):
    for form in ("ri", "ma", "db"):
        for unit in ("Hz", "kHz", "MHz", "GHz"):
            f = skrf.Frequency(2.2, 2.7, 4, unit="GHz")
            f.unit = unit
            s = rng.uniform(-0.6, 0.6, (4, ports, ports)) + 1j * rng.uniform(-0.6, 0.6, (4, ports, ports))
            z0 = [50.0, 75.0, 10.5][len(cases) % 3]
            net = skrf.Network(frequency=f, s=s, z0=z0)
            text = net.write_touchstone("case", return_string=True, form=form, write_z0=False, r_ref=z0)
            cases.append(entry(f"written by scikit-rf, {ports} ports, {form}, {unit}", text, ports))

HAND = [
    ("nothing but the mark", 1, "#\n2.4 0.5 90\n2.5 0.25 -90\n"),
    ("decibel, CR LF, blank line", 1, "# Hz S DB R 50\r\n2400000000 -6.0205999 45\r\n\r\n2500000000 -20 0\r\n"),
    ("tabs and exponents", 1, "#\tGHZ\tS\tRI\tR\t50\n1.0E0\t1.0e-1\t-2.5E-01\n"),
    ("a second option line", 1, "# MHz S RI R 50\n# GHz S MA R 50\n100 0.3 0.4\n"),
    ("odd spacing and comments", 1, "! a can\n!\n#   MHz  S   MA   R   75\n   2400   .5    90   ! first\n\t2410  5.0E-1\t-45\n"),
    ("impedance", 1, "# MHz Z RI R 50\n100 1.5 0.5\n"),
    ("admittance", 1, "# MHz Y RI R 50\n100 1.5 0.5\n200 0.2 -0.7\n"),
    ("two-port impedance", 2, "# MHz Z RI R 50\n100 1.5 0.5 0.2 0.1 0.3 -0.1 0.9 -0.4\n"),
    ("two-port admittance", 2, "# MHz Y MA R 50\n100 1.5 20 0.2 100 0.3 -70 0.9 -40\n"),
    ("two-port hybrid", 2, "# MHz H RI R 50\n100 1.5 0.5 0.2 0.1 0.3 -0.1 0.9 -0.4\n"),
    ("two-port inverse hybrid", 2, "# MHz G RI R 50\n100 1.5 0.5 0.2 0.1 0.3 -0.1 0.9 -0.4\n"),
    ("noise", 2, "# GHz S MA R 50\n2 .95 -26 3.57 157 .04 76 .66 -14\n22 .60 -144 1.30 40 .14 40 .56 -85\n! noise\n4 .7 .64 69 .38\n18 2.7 .46 -33 .40\n"),
    ("version 2, 12 first", 2, "[Version] 2.0\n# GHz S RI R 50\n[Number of Ports] 2\n[Two-Port Data Order] 12_21\n[Number of Frequencies] 1\n[Reference] 50 50\n[Network Data]\n1 0.11 0 0.12 0 0.21 0 0.22 0\n[End]\n"),
    ("version 2, 21 first, own references", 2, "[Version] 2.0\n# MHz S MA\n[Number of Ports] 2\n[Two-Port Data Order] 21_12\n[Number of Frequencies] 2\n[Reference] 75 25\n[Network Data]\n1 0.11 10 0.12 20 0.21 30 0.22 40\n2 0.12 10 0.13 20 0.22 30 0.23 40\n[End]\n"),
    ("version 2, one port", 1, "[Version] 2.0\n# MHz S MA R 60\n[Number of Ports] 1\n[Number of Frequencies] 1\n[Network Data]\n2400 0.11 10\n[End]\n"),
]
left_out = []
for name, ports, text in HAND:
    try:
        cases.append(entry(name, text, ports))
    except Exception as problem:  # the library itself can't: say so, keep no value
        left_out.append(f"{name}: {problem}")
out = pathlib.Path(__file__).parents[2] / "core/tests/data/touchstone.json"
origin = f"values as scikit-rf {skrf.__version__} reads them (tests/reference/touchstone.py)"
out.write_text(json.dumps({"origin": origin, "cases": cases}, indent=0) + "\n")
print(len(cases), "cases; left out:", left_out)
