#!/usr/bin/env python3
"""Writes core/tests/data/waveguide_mode.json: circular-guide values from scikit-rf.

Air filling only. Needs: pip install scikit-rf scipy
"""
import json
import pathlib

import skrf
from skrf.media import CircularWaveguide

MODES = [("te", 1, 1), ("tm", 0, 1), ("te", 2, 1), ("te", 0, 1), ("tm", 1, 1), ("te", 3, 1), ("tm", 2, 2)]
GUIDES = [(50.0, 2.437e9, 1.72e-8), (41.5, 2.2e9, 1.43e-7), (77.0, 5.5e9, 6.0e-8), (20.0, 10.0e9, 2.65e-8)]

rows = []
for radius_mm, f, rho in GUIDES:
    frequency = skrf.Frequency.from_f([f], unit="hz")
    for family, n, m in MODES:
        ideal = CircularWaveguide(frequency, r=radius_mm / 1000, mode_type=family, m=n, n=m)
        lossy = CircularWaveguide(frequency, r=radius_mm / 1000, mode_type=family, m=n, n=m, rho=rho)
        passes = bool(f > ideal.f_cutoff)
        z0 = complex(ideal.z0_characteristic[0])
        rows.append({
            "family": family, "order": n, "index": m,
            "radius_m": radius_mm / 1000, "frequency_hz": f,
            "surface_resistance_ohm": float((3.141592653589793 * f * 1.25663706212e-6 * rho) ** 0.5),
            "cutoff_hz": float(ideal.f_cutoff),
            "guide_wavelength_m": float(2 * 3.141592653589793 / ideal.gamma[0].imag) if passes else None,
            "decay_np_per_m": None if passes else float(ideal.gamma[0].real),
            "wall_np_per_m": float(lossy.alpha_c[0]) if passes else None,
            "impedance_re": z0.real, "impedance_im": z0.imag,
        })
out = pathlib.Path(__file__).parents[2] / "core/tests/data/waveguide_mode.json"
out.write_text(json.dumps({"origin": f"scikit-rf {skrf.__version__}, CircularWaveguide, air", "rows": rows}, indent=1) + "\n")
print(len(rows), "rows")
