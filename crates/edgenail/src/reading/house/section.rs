//! Sections of a wall and their levels.

use super::{band, storey, top};
use crate::house::{Bearing, Bottom, Level, Section};
use crate::length::Length;
use crate::reading::object::Object;

/// A section; `alone` is the wall's length where the wall has no other section.
pub(super) fn section(object: &Object<'_>, alone: Option<Length>) -> Section {
    Section {
        from: end(object, "from", alone.map(|_| Length::ZERO)),
        to: end(object, "to", alone),
        base: end(object, "base", alone.map(|_| Length::ZERO)),
        bottom: object.object("bottom", bottom),
        stack: object.variants("stack", level),
        top: object.variant("top", top::top),
    }
}

/// A coordinate that only a wall with one section may leave out.
fn end(object: &Object<'_>, name: &str, alone: Option<Length>) -> Length {
    match alone {
        Some(length) => object.length_or(name, length),
        None => object.required_length(name),
    }
}

fn bottom(object: &Object<'_>) -> Bottom {
    Bottom {
        bears: object.choice("bears", [Bearing::Concrete, Bearing::Floor]),
        reach: object.length_or_null("reach"),
        above_grade: object.length_or_null("above_grade"),
    }
}

fn level(word: &str, object: &Object<'_>) -> Level {
    match word {
        "floor_band" => Level::FloorBand(band::band(object)),
        _ => Level::Storey(storey::storey(object)),
    }
}
