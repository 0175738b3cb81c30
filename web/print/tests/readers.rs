//! Each kind of file opened by a reader that knows nothing of this crate, with
//! names that try to break out of their strings.

mod common;

use std::collections::BTreeSet;

use dxf::entities::EntityType;
use tinwave_print::{PrintError, write_file};
use tinwave_protocol::print::FileKind;
use tinwave_protocol::print::PrintJob;
use tinwave_protocol::print::TextImage;
use usvg::roxmltree;

/// Signs that mean something in PDF, XML or DXF, and signs of other scripts.
const HOSTILE: &str = ")(\\ <&\"' %%c ^J \\U+0041 ünï 日本";
/// The same without what the standard fonts don't hold.
const HOSTILE_LATIN: &str = ")(\\ <&\"' %%c ^J \\U+0041 ünï €";

fn named(name: &str) -> Result<PrintJob, String> {
    let mut job = common::jobs::orchard_gate();
    job.name = name.into();
    Ok(job)
}

fn printed(job: &PrintJob, kind: FileKind) -> Result<Vec<u8>, String> {
    write_file(job, kind)
        .map(|file| file.bytes)
        .map_err(|error| error.to_string())
}

fn text(job: &PrintJob, kind: FileKind) -> Result<String, String> {
    String::from_utf8(printed(job, kind)?).map_err(|error| error.to_string())
}

fn open_pdf(bytes: &[u8]) -> Result<lopdf::Document, String> {
    lopdf::Document::load_mem(bytes).map_err(|error| error.to_string())
}

/// A picture of a text: one black square for each of its characters.
fn squares(words: &str) -> TextImage {
    let count = u32::try_from(words.chars().count()).unwrap_or(1);
    TextImage {
        words: words.into(),
        em_px: 16,
        baseline_px: 14,
        width_px: 16 * count,
        height_px: 18,
        bits: vec![0xff; 2 * count as usize * 18],
    }
}

#[test]
fn pdf_has_real_pages_and_asks_not_to_be_scaled() -> Result<(), String> {
    for (job, size) in [
        (common::jobs::orchard_gate(), [595.276, 841.89]),
        (common::jobs::barn_roof(), [612.0, 792.0]),
    ] {
        let file = open_pdf(&printed(&job, FileKind::Pdf)?)?;
        let fail = |error: lopdf::Error| error.to_string();
        let catalog = file.catalog().map_err(fail)?;
        let preferences = catalog.get(b"ViewerPreferences").map_err(fail)?;
        let preferences = preferences.as_dict().map_err(fail)?;
        let scaling = preferences.get(b"PrintScaling").map_err(fail)?;
        assert_eq!(scaling.as_name().map_err(fail)?, b"None");
        let pages = file.get_pages();
        let layout = tinwave_print::layout::lay_out(&job).map_err(|e| e.to_string())?;
        assert_eq!(pages.len(), layout.sheets.len());
        for page in pages.values() {
            let page = file.get_dictionary(*page).map_err(fail)?;
            let media_box = page.get(b"MediaBox").map_err(fail)?;
            let sides: Vec<f32> = media_box
                .as_array()
                .map_err(fail)?
                .iter()
                .filter_map(|side| side.as_float().ok())
                .collect();
            let [left, bottom, a, b] = sides.as_slice() else {
                return Err(format!("{sides:?}"));
            };
            assert_eq!((*left, *bottom), (0.0, 0.0));
            assert!((a.min(*b) - size[0]).abs() < 0.001, "{a} {b}");
            assert!((a.max(*b) - size[1]).abs() < 0.001, "{a} {b}");
        }
    }
    Ok(())
}

#[test]
fn pdf_gives_names_back_as_they_were() -> Result<(), String> {
    let file = open_pdf(&printed(&named(HOSTILE_LATIN)?, FileKind::Pdf)?)?;
    let words = file.extract_text(&[1]).map_err(|error| error.to_string())?;
    assert!(words.contains(HOSTILE_LATIN), "{words}");
    let info = file
        .trailer
        .get(b"Info")
        .and_then(|info| info.as_reference());
    let info = info.and_then(|info| file.get_dictionary(info));
    let title = info.and_then(|info| info.get(b"Title")?.as_str().map(<[u8]>::to_vec));
    let title = title.map_err(|error| error.to_string())?;
    let units: Vec<u16> = title
        .chunks_exact(2)
        .map(|pair| u16::from_be_bytes([pair[0], pair[1]]))
        .collect();
    let title = String::from_utf16_lossy(&units);
    assert_eq!(title, format!("\u{feff}Tinwave: {HOSTILE_LATIN}"));
    Ok(())
}

#[test]
fn pdf_needs_images_of_other_scripts_and_paints_them() -> Result<(), String> {
    let mut job = named(HOSTILE)?;
    match write_file(&job, FileKind::Pdf) {
        Err(PrintError::NeedsImages(texts)) => assert_eq!(texts, [HOSTILE]),
        other => return Err(format!("{:?}", other.map(|file| file.bytes.len()))),
    }
    job.images = vec![squares(HOSTILE)];
    let file = open_pdf(&printed(&job, FileKind::Pdf)?)?;
    let masks = file.objects.values().filter(|object| {
        let stream = object.as_stream();
        stream.is_ok_and(|s| {
            let mask = s.dict.get(b"ImageMask").and_then(lopdf::Object::as_bool);
            mask.is_ok_and(|is_mask| is_mask)
        })
    });
    assert_eq!(masks.count(), 1);
    let content = file.get_page_content(file.get_pages()[&1]);
    let content = lopdf::content::Content::decode(&content).map_err(|e| e.to_string())?;
    let painted = content.operations.iter().filter(|o| o.operator == "Do");
    assert!(painted.count() >= 1);
    Ok(())
}

#[test]
fn svg_is_sound_in_millimetres_and_gives_names_back() -> Result<(), String> {
    let document = text(&named(HOSTILE)?, FileKind::Svg)?;
    let xml = roxmltree::Document::parse(&document).map_err(|error| error.to_string())?;
    let is_named = |node: &roxmltree::Node| node.text() == Some(HOSTILE);
    let mut texts = xml.descendants().filter(|node| node.has_tag_name("text"));
    assert!(texts.any(|node| is_named(&node)));
    let root = xml.root_element();
    let width = root.attribute("width").unwrap_or_default();
    let millimetres: f64 = width
        .strip_suffix("mm")
        .and_then(|w| w.parse().ok())
        .unwrap_or(0.0);

    // usvg counts 96 to the inch.
    let options = usvg::Options::default();
    let tree = usvg::Tree::from_str(&document, &options).map_err(|error| error.to_string())?;
    let width = f64::from(tree.size().width());
    assert!((width - millimetres / 25.4 * 96.0).abs() < 0.01, "{width}");
    Ok(())
}

/// Every page by itself, and together in one document with distinct ids.
#[test]
fn svg_pages_are_as_large_as_the_paper() -> Result<(), String> {
    let mut job = common::jobs::barn_roof();
    job.name = HOSTILE.into();
    let pages = format!("<body>{}</body>", common::svg_sheets(&job)?);
    let xml = roxmltree::Document::parse(&pages).map_err(|error| error.to_string())?;
    let mut ids = BTreeSet::new();
    for node in xml.descendants() {
        if let Some(id) = node.attribute("id") {
            assert!(ids.insert(id), "{id} twice");
        }
    }
    let sheets = tinwave_print::layout::lay_out(&job)
        .map_err(|e| e.to_string())?
        .sheets;
    let found: Vec<_> = xml
        .root_element()
        .children()
        .filter(roxmltree::Node::is_element)
        .collect();
    assert_eq!(found.len(), sheets.len());
    for (node, sheet) in found.iter().zip(&sheets) {
        let side = |name| node.attribute(name).unwrap_or_default().to_owned();
        let right = (sheet.paper.width == 279_400).then_some(["279.4mm", "215.9mm"]);
        let [width, height] = right.unwrap_or(["215.9mm", "279.4mm"]);
        assert_eq!([side("width"), side("height")], [width, height]);
        let page = &pages[node.range()];
        let options = usvg::Options::default();
        usvg::Tree::from_str(page, &options).map_err(|error| error.to_string())?;
    }
    Ok(())
}

#[test]
fn dxf_has_its_layers_and_true_lengths() -> Result<(), String> {
    let mut job = named(HOSTILE)?;
    job.parts = vec![tinwave_protocol::print::Part::DrillTemplate];
    let bytes = printed(&job, FileKind::Dxf)?;
    assert!(bytes.is_ascii());
    let drawing = dxf::Drawing::load(&mut bytes.as_slice()).map_err(|error| error.to_string())?;
    assert_eq!(drawing.header.version, dxf::enums::AcadVersion::R12);
    let layers: BTreeSet<String> = drawing.layers().map(|layer| layer.name.clone()).collect();
    for name in ["CUT", "FOLD", "DRILL", "CENTRE", "NOTE"] {
        assert!(layers.contains(name), "{name} of {layers:?}");
    }
    // The hole of 10 mm, half a circumference along and 45 + 4.2 mm up.
    let half_round = std::f64::consts::PI * 83.5 / 2.0;
    let mut holes = drawing
        .entities()
        .filter_map(|entity| match &entity.specific {
            EntityType::Circle(c) if entity.common.layer == "DRILL" && c.radius == 5.0 => Some(c),
            _ => None,
        });
    let hole = holes.next().ok_or("no hole")?;
    let corner = drawing
        .entities()
        .find_map(|entity| match &entity.specific {
            EntityType::Polyline(line) if entity.common.layer == "CUT" => {
                line.vertices().next().map(|vertex| vertex.location.clone())
            }
            _ => None,
        });
    let corner = corner.ok_or("no outline")?;
    let (x, y) = (hole.center.x - corner.x, hole.center.y - corner.y);
    assert!((x - half_round).abs() < 0.002, "{x} {half_round}");
    assert!((y - 49.2).abs() < 0.002, "{y}");
    Ok(())
}

/// What the file says of a name is plain ASCII without any sign that begins a
/// code, and a reader makes the name of it again.
#[test]
fn dxf_gives_names_back_as_they_were() -> Result<(), String> {
    let bytes = printed(&named(HOSTILE)?, FileKind::Dxf)?;
    let drawing = dxf::Drawing::load(&mut bytes.as_slice()).map_err(|error| error.to_string())?;
    let texts: Vec<String> = drawing
        .entities()
        .filter_map(|entity| match &entity.specific {
            EntityType::Text(text) => Some(text.value.clone()),
            _ => None,
        })
        .collect();
    assert!(texts.iter().any(|text| text == HOSTILE), "{texts:#?}");
    Ok(())
}
