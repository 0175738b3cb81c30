//! Many phases at once: sine and cosine without branches, so that a loop over a
//! list of them is quick.
//!
//! Reduction by whole quarter turns after W. J. Cody and W. Waite, *Software
//! Manual for the Elementary Functions*, 1980, chapter 8; polynomials on an eighth
//! turn of R. P. Brent's and K. C. Ng's kind, coefficients as in FreeBSD's msun
//! (`k_sin.c`, `k_cos.c`).

/// Largest magnitude of an angle taken, rad.
pub const LARGEST_ANGLE: f64 = 1e5;

/// Adding and taking away `3·2^51` leaves the nearest whole number.
const TO_WHOLE: f64 = 6_755_399_441_055_744.0;
/// A quarter turn: 33 bits, and the rest.
const QUARTER: [f64; 2] = [1.570_796_326_734_125_6, 6.077_100_506_506_192e-11];
const SINE: [f64; 6] = [
    -1.666_666_666_666_663_2e-1,
    8.333_333_333_322_49e-3,
    -1.984_126_982_985_795e-4,
    2.755_731_370_707_006_8e-6,
    -2.505_076_025_340_686_3e-8,
    1.589_690_995_211_55e-10,
];
const COSINE: [f64; 6] = [
    4.166_666_666_666_66e-2,
    -1.388_888_888_887_411e-3,
    2.480_158_728_947_673e-5,
    -2.755_731_435_139_066_3e-7,
    2.087_572_321_298_175e-9,
    -1.135_964_755_778_819_5e-11,
];

/// Sine and cosine of an angle in radians, magnitude up to [`LARGEST_ANGLE`];
/// absolute error below 4e-16 there, larger beyond.
#[must_use]
pub fn sine_and_cosine(angle: f64) -> (f64, f64) {
    let [[sine], [cosine]] = sines_and_cosines([angle]);
    (sine, cosine)
}

/// The same of several angles at once: all sines, all cosines.
#[inline]
#[must_use]
pub(crate) fn sines_and_cosines<const N: usize>(angles: [f64; N]) -> [[f64; N]; 2] {
    let [s1, s2, s3, s4, s5, s6] = SINE;
    let [c1, c2, c3, c4, c5, c6] = COSINE;
    let whole = |x: [f64; N]| x.map(|x| (x + TO_WHOLE) - TO_WHOLE);
    let quarters = whole(angles.map(|angle| angle * core::f64::consts::FRAC_2_PI));
    let pairs = whole(quarters.map(|quarters| quarters * 0.5));
    let fours = whole(pairs.map(|pairs| pairs * 0.5));
    let (mut sines, mut cosines) = ([0.0; N], [0.0; N]);
    for lane in 0..N {
        let x = (angles[lane] - quarters[lane] * QUARTER[0]) - quarters[lane] * QUARTER[1];
        let z = x * x;
        let sine = x + x * z * (s1 + z * (s2 + z * (s3 + z * (s4 + z * (s5 + z * s6)))));
        let even =
            (1.0 - 0.5 * z) + z * z * (c1 + z * (c2 + z * (c3 + z * (c4 + z * (c5 + z * c6)))));
        // Quarters = 2 pairs + way, way one of -1, 0, 1: odd quarters swap the two.
        let way = quarters[lane] - 2.0 * pairs[lane];
        let stay = 1.0 - way * way;
        // Pairs of quarters: -1 to the power of their number.
        let flip = pairs[lane] - 2.0 * fours[lane];
        let sign = 1.0 - 2.0 * flip * flip;
        sines[lane] = sign * (stay * sine + way * even);
        cosines[lane] = sign * (stay * even - way * sine);
    }
    [sines, cosines]
}
