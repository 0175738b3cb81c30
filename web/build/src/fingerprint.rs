//! Names that change when the content does.
//!
//! FNV-1a, 64 bits (Glenn Fowler, Landon Curt Noll, Phong Vo; offset basis and
//! prime as published): it need not resist an attacker, only tell one build
//! from another, and must give the same name with every compiler.

const OFFSET_BASIS: u64 = 0xcbf2_9ce4_8422_2325;
const PRIME: u64 = 0x0000_0100_0000_01b3;

fn fnv1a(start: u64, bytes: &[u8]) -> u64 {
    bytes.iter().fold(start, |hash, byte| {
        (hash ^ u64::from(*byte)).wrapping_mul(PRIME)
    })
}

/// The fingerprint of some parts in order, as the 8 hexadecimal digits that go
/// into a file name.
pub(crate) fn fingerprint(parts: &[&[u8]]) -> String {
    let hash = parts.iter().fold(OFFSET_BASIS, |hash, part| {
        // The length keeps ("ab", "c") apart from ("a", "bc").
        let length = (part.len() as u64).to_le_bytes();
        fnv1a(fnv1a(hash, part), &length)
    });
    format!("{:08x}", (hash >> 32) ^ (hash & 0xffff_ffff))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn equals_the_published_vectors() {
        // IETF draft-eastlake-fnv, "FNV-1a 64-bit test vectors".
        assert_eq!(fnv1a(OFFSET_BASIS, b""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(fnv1a(OFFSET_BASIS, b"a"), 0xaf63_dc4c_8601_ec8c);
        assert_eq!(fnv1a(OFFSET_BASIS, b"foobar"), 0x8594_4171_f739_67e8);
    }

    #[test]
    fn tells_apart_where_a_part_ends() {
        assert_ne!(fingerprint(&[b"ab", b"c"]), fingerprint(&[b"a", b"bc"]));
        assert_eq!(fingerprint(&[b"x"]).len(), 8);
    }
}
