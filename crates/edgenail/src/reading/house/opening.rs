//! Openings, headers and patches.

use crate::house::{Header, Opening, OpeningKind, Patch};
use crate::length::Length;
use crate::reading::object::Object;

const KINDS: [OpeningKind; 4] = [
    OpeningKind::Door,
    OpeningKind::Window,
    OpeningKind::Garage,
    OpeningKind::Other,
];

/// An opening between studs of the given width.
pub(super) fn opening(object: &Object<'_>, stud_width: Length) -> Opening {
    let kind = object.choice("kind", KINDS);
    let (left, sill) = (object.length("left"), object.length("sill"));
    let (width, height) = (object.length("width"), object.length("height"));
    let trimmers = object.count("trimmers");
    let bearing = stud_width * i64::from(trimmers);
    let by_default = Place {
        from: left - bearing,
        to: left + width + bearing,
        y: sill + height,
    };
    Opening {
        name: object.text("name"),
        kind,
        left,
        sill,
        width,
        height,
        header: object.object_or_null("header", |entry| header(entry, &by_default)),
        trimmers,
        kings: object.count("kings"),
        sills: object.count_or("sills", u32::from(kind == OpeningKind::Window)),
    }
}

/// Where a header lies if nothing is said.
struct Place {
    from: Length,
    to: Length,
    y: Length,
}

fn header(object: &Object<'_>, place: &Place) -> Header {
    Header {
        from: object.length_or("from", place.from),
        to: object.length_or("to", place.to),
        plies: object.count("plies"),
        depth: object.length("depth"),
        y: object.length_or("y", place.y),
        setback: object.length("setback"),
    }
}

/// A patch.
pub(super) fn patch(object: &Object<'_>) -> Patch {
    Patch {
        name: object.text("name"),
        left: object.length("left"),
        bottom: object.length("bottom"),
        width: object.length("width"),
        height: object.length("height"),
    }
}
