#!/usr/bin/env python3
"""Writes core/tests/data/radio_link.json: worked values of a radio link.

Each case is a published value, or is worked out here on another road than the
computation under test: walls by transfer matrices, knife edges by Fresnel's integrals,
zones by the lengths of paths, polarisations by Jones vectors, clearances by trying
every place, a station's noise by Friis' cascade. Python's standard library alone.
"""
import cmath
import json
import math
import pathlib

C = 299_792_458.0
EPS0 = 8.8541878128e-12
K = 1.380649e-23
cases = []


def case(quantity, inputs, value, source):
    cases.append({"quantity": "radio_link::" + quantity, "inputs": inputs, "value": value, "source": source})


# Free space.
for mhz, km, published in [(2437, 0.1, 80.1849), (2437, 1, 100.1849), (2437, 10, 120.1849), (5500, 1, 107.2550), (868, 5, 105.1976), (1090, 100, 133.1963), (1694.1, 36000, 188.1526), (10368, 50, 146.7411)]:
    loss = 20 * math.log10(km) + 20 * math.log10(mhz) + 20 * math.log10(4e9 * math.pi / C)
    assert abs(loss - published) < 1e-4
    case("free_space_loss_db", [km * 1e3, mhz * 1e6], published, "ITU-R P.525, eq. 4 with its constant to all digits (32.4478)")
case("wavelength_m", [2.437e9], 0.123017, "c/f by hand")
case("free_space_distance_m", [100.1849, 2.437e9], 1000.0, "ITU-R P.525, inverse of the case of 1 km")

# Walls.
TABLE = {"concrete": (5.24, 0.0462, 0.7822), "brick": (3.91, 0.0238, 0.16), "plasterboard": (2.73, 0.0085, 0.9395), "wood": (1.99, 0.0047, 1.0718), "glass": (6.31, 0.0036, 1.3394), "chipboard": (2.58, 0.0217, 0.78), "ceiling_board": (1.48, 0.0011, 1.075), "plywood": (2.71, 0.33, 0.0), "marble": (7.074, 0.0055, 0.9262)}
P2040 = "ITU-R P.2040-3 (08/2023), Table 3"


def wall(material, mm, ghz, spread=0.0):
    """Loss by the transfer matrix of a slab between free spaces; spread adds a phase
    to the slab's half-turns, its decay held."""
    a, c, d = TABLE[material]
    sigma = c * ghz ** d
    n = cmath.sqrt(complex(a, -sigma / (2 * math.pi * ghz * 1e9 * EPS0)))
    q = n * 2 * math.pi * ghz * 1e9 / C * mm / 1e3 + spread
    z = 1 / n
    A, B, CC = cmath.cos(q), 1j * z * cmath.sin(q), 1j / z * cmath.sin(q)
    return abs(2 / (A + B + CC + A)) ** 2


for material, ghz, eps, sigma in [("brick", 2.437, 3.91, 0.027446), ("brick", 5.5, 3.91, 0.031263), ("concrete", 2.437, 5.24, 0.092734), ("concrete", 5.5, 5.24, 0.175289), ("plasterboard", 2.437, 2.73, 0.019628), ("wood", 5.5, 1.99, 0.029216), ("glass", 2.437, 6.31, 0.011870), ("chipboard", 5.5, 2.58, 0.082024), ("ceiling_board", 2.437, 1.48, 0.002866)]:
    case("BuildingMaterial::relative_permittivity", [material, ghz * 1e9], eps, P2040)
    case("BuildingMaterial::conductivity_s_per_m", [material, ghz * 1e9], sigma, P2040 + ", c f^d by hand")
WALLS = [("brick", 102.5), ("brick", 110.0), ("brick", 215.0), ("concrete", 100.0), ("concrete", 200.0), ("plasterboard", 12.5), ("plasterboard", 25.0), ("wood", 40.0), ("glass", 4.0), ("glass", 6.0), ("chipboard", 18.0), ("ceiling_board", 15.0), ("plywood", 18.0), ("marble", 20.0)]
for material, mm in WALLS:
    for ghz in (2.437, 5.5):
        loss = -10 * math.log10(wall(material, mm, ghz))
        case("Wall::loss_db", [material, mm / 1e3, ghz * 1e9], loss, P2040 + "; slab by transfer matrix")
        steps = 720
        mean = sum(wall(material, mm, ghz, math.pi * k / steps) for k in range(steps)) / steps
        case("Wall::averaged_loss_db", [material, mm / 1e3, ghz * 1e9], -10 * math.log10(mean), P2040 + "; slab by transfer matrix, 720 phases averaged")

# Trees.
for m, db in [(5, 2.898), (10, 5.795), (14, 8.113), (20, 9.971), (50, 17.089), (100, 25.687)]:
    case("weissberger_loss_db", [m, 2.437e9], db, "M. A. Weissberger, ESD-TR-81-101, 1982, by hand")
for m, db in [(5, 5.451), (10, 8.262), (20, 12.523), (50, 21.700), (100, 32.892)]:
    case("early_itu_loss_db", [m, 2.437e9], db, "CCIR Report 236-2 (from memory), by hand")
for n, db in enumerate([63.41, 32.89, 36.24]):
    case("WoodlandSet::maximum_attenuation_db", [n, 2.437e9], db, "ITU-R P.833, section 2.1 (sets from memory), by hand")
for m, gamma, most in [(10, 0.35, 32.89), (100, 0.35, 32.89), (400, 0.8, 36.24)]:
    # dA/dd = gamma - A gamma/A_m, A(0) = 0, by 20,000 steps of the midpoint rule.
    a, h = 0.0, m / 20_000
    for _ in range(20_000):
        middle = a + 0.5 * h * gamma * (1 - a / most)
        a += h * gamma * (1 - middle / most)
    case("woodland_loss_db", [m, gamma, most], a, "ITU-R P.833, section 2.1, eq. 1, as its differential equation solved in steps")
for ghz, span in [(1.0, (0.1, 0.2)), (2.4, (0.3, 0.4)), (5.0, (0.6, 1.0))]:
    for n in (0, 1):
        case("specific_attenuation_db_per_m", [ghz * 1e9, 2 * n], span[n], "ITU-R P.833, Fig. 2 (from memory, to 50 %)")
case("foliage_loss", [20, 2.437e9], 9.971, "M. A. Weissberger, ESD-TR-81-101, 1982, by hand")

# Cables, dB per 100 m.
GUIDE = "a public training guide for repeater systems, appendix H"
POINTS = {
    "rg58": ([(144, 20.3), (220, 24.3), (450, 34.8), (915, 54.1), (1200, 69.2), (2400, 105.6), (5800, 169.2)], "a table in wide use among amateurs"),
    "rg213": ([(50, 4.9), (150, 8.9), (450, 16.3), (850, 24.7)], GUIDE),
    "rg142": ([(50, 8.8), (150, 15.1), (450, 27.6), (850, 37.0)], GUIDE + " (RG-303)"),
    "rg8_foam": ([(50, 3.9), (150, 7.2), (450, 13.0), (850, 17.0)], GUIDE),
    "corrugated_half_inch": ([(50, 1.6), (150, 2.8), (450, 5.2), (850, 6.8)], GUIDE),
    "rg8x": ([(50, 7.546), (150, 15.420), (450, 28.215)], "cable table of a county's amateur emergency service"),
    "rg174": ([(100, 27.6), (400, 62.3), (1000, 111.5)], "usual makers' data, from memory"),
    "rg316": ([(100, 27.2), (400, 56.8), (1000, 92.5), (3000, 167)], "usual makers' data, from memory"),
    "micro113": ([(1000, 200), (2400, 330), (5800, 540)], "usual makers' data, from memory"),
    "micro137": ([(1000, 150), (2400, 240), (5800, 400)], "usual makers' data, from memory"),
}
for key, (points, source) in POINTS.items():
    for mhz, db in points:
        case("CoaxType::attenuation_db_per_m", [key, mhz * 1e6], db / 100, source)
# dB per 100 ft at 2500 MHz.
for key, db in [("foam100", 39.8), ("foam195", 19.0), ("foam200", 16.9), ("foam240", 12.9), ("foam400", 6.8), ("foam600", 4.4)]:
    case("CoaxType::attenuation_db_per_m", [key, 2.5e9], db / 30.48, "makers' tables at 2500 MHz, from memory")
case("CoaxLine::loss_db", ["rg213", 3.0, 850e6], 0.741, GUIDE + ": 3 m")
for n, ghz, db in [(0, 2.4, 0.0465), (1, 2.4, 0.0775), (2, 2.4, 0.15), (1, 9.0, 0.15)]:
    case("Connector::pair_loss_db", [n, ghz * 1e9], db, "MIL-PRF-39012 (from memory): 0.03 or 0.05 root of GHz; others common practice, no source")


# Polarisation by Jones vectors.
def jones(ratio_db, sense, tilt_deg):
    """Ellipse of an axial ratio (None: linear), sense +1 or -1, tilt."""
    short = 0 if ratio_db is None else 10 ** (-ratio_db / 20)
    x, y = 1, -1j * sense * short
    t = math.radians(tilt_deg)
    size = math.sqrt(1 + short * short)
    return ((x * math.cos(t) - y * math.sin(t)) / size, (x * math.sin(t) + y * math.cos(t)) / size)


for one, other in [((None, 1, 0), (None, 1, 30)), ((None, 1, 0), (None, 1, 45)), ((None, 1, 10), (None, 1, 70)), ((None, 1, 0), (0, 1, 0)), ((None, 1, 77), (0, -1, 0)), ((0, 1, 0), (0, 1, 0)), ((3, 1, 0), (None, 1, 0)), ((3, 1, 0), (None, 1, 90)), ((3, 1, 20), (6, 1, 65)), ((3, 1, 20), (6, -1, 65)), ((2, 1, 0), (0, -1, 0))]:
    a, b = jones(*one), jones(*other)
    share = abs(a[0] * b[0].conjugate() + a[1] * b[1].conjugate() if isinstance(b[0], complex) else a[0] * b[0] + a[1] * complex(b[1]).conjugate()) ** 2
    what = "product of Jones vectors"
    case("polarisation_efficiency", [*one, *other], share, what)
    case("polarisation_loss_db", [*one, *other], -10 * math.log10(share), what)
case("practical_polarisation_loss_db", [None, 1, 0, None, 1, 90], 25.0, "common practice, no source")

# Pointing: points that the main lobe's law gives by its definition.
for error, width, db in [(0, 60, 0.0), (30, 60, 3.0), (15, 60, 0.75), (60, 60, 12.0), (10, 20, 3.0), (80, 60, 20.0)]:
    case("pointing_loss_db", [math.radians(error), math.radians(width)], db, "ITU-R F.1336 main lobe (form from memory): 3 dB at half the half-power width; capped at 20")
case("error_for_loss_rad", [3.0, math.radians(60)], math.radians(30), "definition of the half-power width")

# Aim.
for lever, degrees in [(0.2, 0.286477), (0.1, 0.572939), (1.5, 0.0381972)]:
    case("degrees_per_mm", [lever], degrees, "right triangle by hand")
case("turn_of_lever_rad", [0.1, 0.1], math.pi / 4, "right triangle: equal sides")
case("sideways_of_turn_m", [math.pi / 6, 0.3], 0.3 / math.sqrt(3), "right triangle of 30 degrees")
case("spot_width_m", [1000.0, math.radians(60)], 2000 / math.sqrt(3), "equilateral triangle")
case("spot_width_m", [1000.0, math.radians(90)], 2000.0, "right triangle")

# 802.11.
SENSITIVITY = [(-82, -79, -76, -73), (-79, -76, -73, -70), (-77, -74, -71, -68), (-74, -71, -68, -65), (-70, -67, -64, -61), (-66, -63, -60, -57), (-65, -62, -59, -56), (-64, -61, -58, -55), (-59, -56, -53, -50), (-57, -54, -51, -48), (-54, -51, -48, -45), (-52, -49, -46, -43)]
for coding, row in enumerate(SENSITIVITY):
    for width, dbm in enumerate(row):
        case("Coding::minimum_sensitivity_dbm", [coding, width], dbm, "IEEE Std 802.11-2020, Tables 17-18, 19-23, 21-25; 802.11ax-2021, Table 27-51")
RATES = [(0, 0, 6.5), (1, 0, 13), (2, 0, 19.5), (3, 0, 26), (4, 0, 39), (5, 0, 52), (6, 0, 58.5), (7, 0, 65), (8, 0, 78), (7, 1, 135), (9, 1, 180), (9, 2, 390), (9, 3, 780), (10, 0, 129.0), (11, 0, 143.4), (11, 1, 286.8), (11, 2, 600.5), (11, 3, 1201.0)]
for coding, width, rate in RATES:
    case("Coding::data_rate_mbps", [coding, width], rate, "IEEE Std 802.11-2020 and 802.11ax-2021, rate tables of one stream (from memory)")
for n, (rate, dbm) in enumerate([(2, -80), (11, -76), (6, -82), (9, -81), (12, -79), (18, -77), (24, -74), (36, -70), (48, -66), (54, -65)]):
    case("OlderRate::minimum_sensitivity_dbm", [n], dbm, "IEEE Std 802.11, clauses 15.4.6.2, 16.3.8.2, Table 17-18 (from memory)")
    case("OlderRate::data_rate_mbps", [n], rate, "IEEE Std 802.11")

# Noise.
for mhz, dbm in [(1e-6, -173.975), (0.125, -123.006), (1, -113.975), (2, -110.965), (20, -100.965), (40, -97.955), (80, -94.944), (160, -91.934)]:
    case("thermal_noise_dbm", [mhz * 1e6, 290], dbm, "kTB, CODATA 2018")
case("sensitivity_from_noise_dbm", [20e6, 6, 5], -89.965, "kTB + NF + SNR by hand")
for gain, ta, line, figure in [(12, 60, 0.5, 1.0), (15, 290, 3.0, 6.0), (20, 30, 0.0, 0.5)]:
    # Cascade of an attenuator at 290 K (noise figure its loss) and a receiver.
    loss, f2 = 10 ** (line / 10), 10 ** (figure / 10)
    total = loss + (f2 - 1) * loss
    system = ta + 290 * (total - 1)
    inputs = [gain, ta, line, 290, figure]
    friis = "H. T. Friis, Proc. IRE 32 (1944) 419, cascade of line and receiver"
    case("ReceiveStation::system_temperature_k", inputs, system, friis)
    case("ReceiveStation::g_over_t_db_per_k", inputs, gain - 10 * math.log10(system), friis)
    received, path, width = 50.0, 188.1526, 1.2e6
    carrier = 10 ** ((received - path + gain - line) / 10)
    noise = K * (ta / loss + 290 * (1 - 1 / loss) + 290 * (f2 - 1)) * width * 1e3
    case("ReceiveStation::carrier_to_noise_db", inputs + [received, path, width], 10 * math.log10(carrier / noise), "carrier and noise reckoned at the receiver's input, as powers")


# Knife edge.
def knife_edge(v):
    """ITU-R P.526, eq. 30: Fresnel's integrals by Simpson's rule."""
    n = 4000
    h = v / n
    weights = [(4 if k % 2 else 2) if 0 < k < n else 1 for k in range(n + 1)]
    c = sum(w * math.cos(0.5 * math.pi * (k * h) ** 2) for k, w in enumerate(weights)) * h / 3
    s = sum(w * math.sin(0.5 * math.pi * (k * h) ** 2) for k, w in enumerate(weights)) * h / 3
    return -20 * math.log10(math.sqrt((1 - c - s) ** 2 + (c - s) ** 2) / 2)


for v, db in [(-0.78, 0.004), (-0.5, 1.9592), (0, 6.0329), (0.5, 10.2878), (1, 13.9257), (2, 19.0429)]:
    case("knife_edge_loss_db", [v], db, "ITU-R P.526, section 4.1, eq. 31, by hand")
for v in [-0.5, -0.2, 0, 0.3, 0.5, 1, 1.7, 2.4, 3]:
    case("knife_edge_loss_db integral", [v], knife_edge(v), "ITU-R P.526, section 4.1, eq. 30: Fresnel's integrals by Simpson's rule")
for height, near, far, mhz in [(10, 500, 1500, 2437), (-3, 2000, 800, 5500), (25, 5000, 5000, 868)]:
    # P.526: v² = 4 (way over the edge less the straight way) / wavelength.
    more = math.hypot(near, height) + math.hypot(far, height) - near - far
    v = math.copysign(2 * math.sqrt(more * mhz * 1e6 / C), height)
    case("diffraction_parameter", [height, near, far, mhz * 1e6], v, "ITU-R P.526, section 4.1: by the difference of path lengths")

# Fresnel zones.
for ghz, km, r1 in [(2.437, 0.5, 3.921), (2.437, 1, 5.546), (2.437, 5, 12.400), (2.437, 10, 17.537), (5.5, 5, 8.254), (10.368, 50, 19.012)]:
    case("fresnel_radius_m", [1, km * 500, km * 500, ghz * 1e9], r1, "ITU-R P.526, section 2.1, eq. 2, by hand")
for n, near, far, mhz in [(1, 300, 700, 2437), (2, 300, 700, 2437), (3, 4000, 1000, 868)]:
    low, high = 0.0, 1000.0
    for _ in range(100):
        r = 0.5 * (low + high)
        more = math.hypot(near, r) + math.hypot(far, r) - near - far
        low, high = (low, r) if more > n * C / mhz / 2e6 else (r, high)
    case("fresnel_radius_m ellipsoid", [n, near, far, mhz * 1e6], low, "ITU-R P.526, section 2.1, eq. 1: ellipsoid by bisection")
for near, far, k in [(25e3, 25e3, 4 / 3), (5e3, 15e3, 4 / 3), (500, 500, 1), (5e3, 5e3, 2 / 3)]:
    # Arc of a circle over its chord.
    radius = 6.371e6 * k
    half, off = 0.5 * (near + far) / radius, 0.5 * abs(near - far) / radius
    bulge = radius * (math.cos(off) - math.cos(half))
    case("earth_bulge_m", [near, far, k], bulge, "circle of 6371 km times k: arc over chord")


# Clearance, every place tried.
def profile(distance, ha, hb, hz, k, obstacles):
    places = [(distance * n / 200_000, 0.0) for n in range(1000, 199_001)]

    def lie(place):
        x, top = place
        y = distance - x
        clear = ha + (hb - ha) * x / distance - top - x * y / (2 * k * 6.371e6)
        r1 = math.sqrt(C / hz * x * y / distance)
        return clear / r1, 0.6 * r1 - clear

    ground = min(lie(place)[0] for place in places)
    ratios = [lie(place)[0] for place in obstacles]
    lacking = max([0.0] + [lie(place)[1] for place in places + obstacles])
    return ground, ratios, lacking


for distance, ha, hb, mhz, k, obstacles in [(1000, 5, 5, 2437, 4 / 3, [(400, 3.0)]), (5000, 4, 12, 2437, 4 / 3, [(500, 2.0), (3000, 8.0)]), (20000, 30, 10, 5500, 4 / 3, [(12000, 6.0)]), (300, 2, 2, 868, 1, [])]:
    ground, ratios, lacking = profile(distance, ha, hb, mhz * 1e6, k, obstacles)
    flat = [distance, ha, hb, mhz * 1e6, k, [list(place) for place in obstacles]]
    case("PathClearance::new ground", flat, ground, "ITU-R P.526 and P.530, every one of 198,000 places tried")
    case("PathClearance::new raise", flat, lacking, "ITU-R P.526 and P.530, every one of 198,000 places tried")
    for n, ratio in enumerate(ratios):
        case("PathClearance::new obstacle", flat + [n], ratio, "ITU-R P.526 and P.530")
for distance, mhz, height in [(1000, 2437, 3.342), (5000, 2437, 7.808), (50000, 10368, 48.196)]:
    at = 0.6 * 0.5 * math.sqrt(C / mhz / 1e6 * distance) + distance ** 2 / 4 / (2 * 4 / 3 * 6.371e6)
    assert abs(at - height) < 2e-3, at
    case("equal_heights_over_flat_ground_m", [distance, mhz * 1e6, 4 / 3], height, "60 % radius of the zone (ITU-R P.526, eq. 2) plus d²/8ka, by hand")

# Exposure.
ICNIRP = "ICNIRP 2020, Table 5, general public (from memory)"
FCC = "47 CFR 1.1310, Table 1(B)"
for n, mhz, limit, source in [(0, 868, 4.34, ICNIRP), (0, 2000, 10, ICNIRP), (0, 2437, 10, ICNIRP), (0, 10368, 10, ICNIRP), (1, 915, 6.1, FCC), (1, 1500, 10, FCC), (1, 2437, 10, FCC)]:
    case("ExposureStandard::limit_w_m2", [n, mhz * 1e6], limit, source)
OET = "FCC OET Bulletin 65 ed. 97-01"
for dbm, r, reflected in [(10, 0.0089, 0.0143), (14, 0.0141, 0.0226), (20, 0.0282, 0.0451), (30, 0.0892, 0.1427), (36, 0.1780, 0.2848), (46, 0.5629, 0.9006), (50, 0.8921, 1.4273)]:
    watts = 10 ** (dbm / 10 - 3)
    case("far_field_distance_m", [watts, 10, 0], r, OET + ", eq. 4, 10 W/m²")
    case("far_field_distance_m", [watts, 10, 1], reflected, OET + ", eq. 7, 10 W/m²")
case("power_density_w_m2", [100.0, 2.0, 0], 1.98944, OET + ", eq. 4 by hand")
case("power_density_w_m2", [100.0, 2.0, 2], 7.95775, OET + ", eq. 6 by hand")
# Power W, gain dBi, mouth m, Hz, standard, reflection.
LAMBDA = C / 2.437e9
for inputs, r, source in [
    ([1.0, 6.0206, 0.09, 2.437e9, 0, 0], 0.1784, OET + ", eq. 4: 36 dBm EIRP"),
    ([1e-4, 8.0, 0.09, 2.437e9, 0, 0], LAMBDA / (2 * math.pi), "reactive near field of a small source, one wavelength over two pi"),
    ([0.2, 6.0, 0.30, 2.437e9, 0, 0], 0.30 ** 2 / (4 * LAMBDA) * 4 * 0.2 / (math.pi * 0.15 ** 2) / 10, OET + ", eqs. 11, 12 and 17 by hand (from memory)"),
    ([1.0, 6.0, 0.30, 2.437e9, 0, 0], 0.6 * 0.30 ** 2 / LAMBDA, OET + ", eq. 16: not beyond where the far field begins (from memory)"),
]:
    case("safe_distance", inputs, r, source)

# A budget by hand: 20 dBm, 3 m of cable and two pairs a side, antennas of 12 and 8 dBi.
line = 3 * 0.47874  # RG-213 at 2437 MHz by its law 0.6434 sqrt(f) + 0.006609 f, dB per 100 m
pair = 0.05 * math.sqrt(2.437)
crossed = -20 * math.log10(math.cos(math.radians(30)))
free = 100.1849
brick = -10 * math.log10(wall("brick", 102.5, 2.437))
received = 20 - line - 2 * pair - 0.2 + 12 - 0.75 - free - brick - 5.795 - 1.5 - 0.5 - crossed + 8 - pair
case("Link::budget", [0], received, "sum by hand of the parts' own cases")
case("Link::budget", [1], received - 5, "the same way back with 15 dBm: reciprocity")
case("Link::reach_m", [0, 10.0], 1000 * 10 ** ((received + 82 - 10) / 20), "free space: 20 dB a decade, by hand")
case("Link::what_buys_most", ["halve"], 20 * math.log10(2), "free space: 20 log10 2")
case("Link::what_buys_most", ["aim"], 0.75, "the pointing loss")
case("Link::what_buys_most", ["polarisation"], crossed, "cos² law (Malus)")
case("Link::what_buys_most", ["trees"], 5.795, "Weissberger's loss")
case("Link::what_buys_most", ["wall"], brick, "the wall's loss")
case("Link::what_buys_most", ["line"], line + pair, "line and one of two pairs of connectors")

out = pathlib.Path(__file__).parents[2] / "core/tests/data/radio_link.json"
rows = ",\n".join(json.dumps(row, ensure_ascii=False) for row in cases)
out.write_text('{"origin": "Written by tests/reference/radio_link.py. SI units; ends, materials and the like by key or place in the list of all.", "cases": [\n' + rows + "\n]}\n")
print(len(cases))
