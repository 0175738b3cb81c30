//! Keeps a picture in the page up to date: writes only what has changed.

use web_sys::Element;

use super::figure::set_attribute;
use crate::drawing::scene::{Mark, Scene};

/// A picture in the page.
pub(super) struct LiveScene {
    stage: Element,
    /// The SVG element and its marks, once they are there.
    svg: Option<Element>,
    description: Option<Element>,
    elements: Vec<Element>,
    shown: Option<Scene>,
}

impl LiveScene {
    /// Will draw in `stage`, an empty element.
    pub(super) fn new(stage: Element) -> Self {
        Self {
            stage,
            svg: None,
            description: None,
            elements: Vec::new(),
            shown: None,
        }
    }

    /// Shows a picture. All pictures shown by one must have the same marks.
    pub(super) fn show(&mut self, scene: Scene) {
        match self.shown.take() {
            None => self.write(&scene),
            Some(before) => self.change(&before, &scene),
        }
        self.shown = Some(scene);
    }

    fn write(&mut self, scene: &Scene) {
        self.stage.set_inner_html(&scene.to_svg());
        self.svg = self.stage.first_element_child();
        let mut next = self.svg.as_ref().and_then(Element::first_element_child);
        let mut place = 0;
        while let Some(element) = next {
            next = element.next_element_sibling();
            if place == 1 {
                self.description = Some(element.clone());
            }
            if place >= Scene::LEADING {
                self.elements.push(element);
            }
            place += 1;
        }
    }

    fn change(&self, before: &Scene, scene: &Scene) {
        if let Some(svg) = self.svg.as_ref().filter(|_| before.size != scene.size) {
            set_attribute(svg, "viewBox", &scene.view_box());
        }
        if before.description != scene.description
            && let Some(description) = &self.description
        {
            description.set_text_content(Some(&scene.description));
        }
        let pairs = before.marks.iter().zip(&scene.marks);
        for (element, (old, new)) in self.elements.iter().zip(pairs) {
            change_mark(element, old, new);
        }
    }
}

fn change_mark(element: &Element, old: &Mark, new: &Mark) {
    for ((name, new), (_, old)) in new.attributes.iter().zip(&old.attributes) {
        if old != new {
            set_attribute(element, name, new);
        }
    }
    if old.class != new.class {
        set_attribute(element, "class", new.class);
    }
    if old.text != new.text {
        element.set_text_content(Some(&new.text));
    }
}
