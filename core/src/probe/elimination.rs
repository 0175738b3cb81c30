//! Elimination of a complex symmetric matrix, packed by rows of its lower
//! triangle: `M = L D Lᵀ` without pivoting, which the reaction matrices of a few
//! wires do not need.

use crate::complex::Complex;

/// Smallest squared pivot divided by; below it the pivot counts as this root.
const LEAST_PIVOT: f64 = 1e-150;

/// Eliminates all unknowns but the last and returns the last pivot: the last
/// diagonal element less `vᵀ M⁻¹ v`, where `v` is the rest of the last row.
/// Afterwards the rows hold `L`, with `1/D` on the diagonal of all but the last.
pub(super) fn eliminate(size: usize, matrix: &mut [Complex]) -> Complex {
    let mut pivot = Complex::ZERO;
    let mut start = 0;
    for i in 0..size {
        let (above, rest) = matrix.split_at_mut(start.min(matrix.len()));
        start += i + 1;
        let Some(row) = rest.get_mut(..=i) else { break };
        let mut start_j = 0;
        for j in 1..i {
            start_j += j;
            let mut sum = Complex::ZERO;
            for (w, l) in row.iter().zip(above.iter().skip(start_j).take(j)) {
                sum += *w * *l;
            }
            row[j] -= sum;
        }
        pivot = row[i];
        let mut diagonal = 0;
        for (j, w) in row.iter_mut().take(i).enumerate() {
            let Some(inverse) = above.get(diagonal) else {
                break;
            };
            diagonal += j + 2;
            let l = *w * *inverse;
            pivot -= *w * l;
            *w = l;
        }
        if i + 1 < size {
            row[i] = invert(pivot);
        }
    }
    pivot
}

/// After [`eliminate`]: the unknowns that the last row, taken as the excitation,
/// gives rise to.
pub(super) fn substitute_back(size: usize, matrix: &[Complex], unknowns: &mut [Complex]) {
    let count = size.saturating_sub(1);
    let last = count * (count + 1) / 2;
    for (x, l) in unknowns
        .iter_mut()
        .zip(matrix.iter().skip(last).take(count))
    {
        *x = *l;
    }
    for i in (1..count).rev() {
        let Some(&x) = unknowns.get(i) else { continue };
        let row = matrix.iter().skip(i * (i + 1) / 2).take(i);
        for (target, l) in unknowns.iter_mut().zip(row) {
            *target -= *l * x;
        }
    }
}

fn invert(pivot: Complex) -> Complex {
    if pivot.norm_sqr() < LEAST_PIVOT * LEAST_PIVOT {
        Complex::real(1.0 / LEAST_PIVOT)
    } else {
        pivot.inv()
    }
}
