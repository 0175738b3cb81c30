//! Reads an analyser's file.

use tinwave_core::touchstone::{Ports, Touchstone, read_touchstone};
use tinwave_protocol::measure::{FileRead, FileRefused, ReadFile};

use crate::Work;

/// The reading: one step.
pub struct ReadFileWork(pub ReadFile);

impl Work for ReadFileWork {
    type Answer = Result<FileRead, FileRefused>;

    fn total(&self) -> u32 {
        1
    }

    fn step(&mut self) {}

    fn finish(self) -> Self::Answer {
        let ReadFile {
            name,
            bytes,
            reference_ohm,
        } = self.0;
        let text = text_of(&bytes)?;
        let network = read(&text, &name)?;
        let mut ports = vec![network.reflections(reference_ohm)];
        if network.ports == Ports::Two {
            ports.push(turned(&network).reflections(reference_ohm));
        }
        Ok(FileRead {
            ports,
            reference_ohm,
            warnings: network.warnings,
        })
    }
}

/// The text of a file; such files are ASCII but for their comments, whose letters may
/// be of any kind.
fn text_of(bytes: &[u8]) -> Result<String, FileRefused> {
    if bytes.iter().all(u8::is_ascii_whitespace) {
        return Err(FileRefused::Empty);
    }
    if bytes.contains(&0) {
        return Err(FileRefused::NotText);
    }
    Ok(String::from_utf8_lossy(bytes).into_owned())
}

/// The name tells the number of ports; where the text says otherwise, the text counts.
fn read(text: &str, name: &str) -> Result<Touchstone, FileRefused> {
    let name = name.to_ascii_lowercase();
    let ports = [(".s1p", Ports::One), (".s2p", Ports::Two)]
        .into_iter()
        .find_map(|(end, ports)| name.ends_with(end).then_some(ports));
    read_touchstone(text, ports)
        .or_else(|error| read_touchstone(text, None).map_err(|_| error))
        .map_err(FileRefused::Wrong)
}

/// The network seen from its other side.
fn turned(network: &Touchstone) -> Touchstone {
    let mut turned = network.clone();
    turned.reference_ohm.swap(0, 1);
    for point in &mut turned.points {
        let [[s11, s12], [s21, s22]] = point.s;
        point.s = [[s22, s21], [s12, s11]];
    }
    turned
}
