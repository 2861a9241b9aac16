//! Storeys and what they are framed with.

use super::opening::{opening, patch};
use crate::house::{End, EndStuds, LayoutOrigin, Plate, Species, Storey, Stud};
use crate::reading::object::Object;

/// A storey.
pub(super) fn storey(object: &Object<'_>) -> Storey {
    let stud = object.object("stud", stud);
    Storey {
        name: object.text("name"),
        bottom_plates: object.list("bottom_plates", plate),
        stud,
        top_plates: object.list("top_plates", plate),
        spacing: object.length("spacing"),
        origin: object.object("origin", origin),
        end_studs: object.object("end_studs", end_studs),
        species: object.object("species", species),
        block_rows: object.lengths("block_rows"),
        openings: object.list("openings", |entry| opening(entry, stud.width)),
        penetrations: object.list("penetrations", patch),
        bare_zones: object.list("bare_zones", patch),
        straps: object.list("straps", patch),
    }
}

/// A plate.
pub(super) fn plate(object: &Object<'_>) -> Plate {
    Plate {
        thickness: object.length("thickness"),
        treated: object.flag("treated"),
    }
}

/// Where layout is pulled from.
pub(super) fn origin(object: &Object<'_>) -> LayoutOrigin {
    LayoutOrigin {
        end: end(object, "end"),
        offset: object.length("offset"),
    }
}

/// An end.
pub(super) fn end(object: &Object<'_>, name: &str) -> End {
    object.choice(name, [End::Left, End::Right])
}

fn stud(object: &Object<'_>) -> Stud {
    Stud {
        width: object.length("width"),
        depth: object.length("depth"),
        length: object.length("length"),
    }
}

fn end_studs(object: &Object<'_>) -> EndStuds {
    EndStuds {
        left: object.count("left"),
        right: object.count("right"),
    }
}

fn species(object: &Object<'_>) -> Species {
    Species {
        group: object.text("group"),
        specific_gravity: object.decimal("specific_gravity"),
    }
}
