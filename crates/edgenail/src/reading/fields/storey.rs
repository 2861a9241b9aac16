//! Fields of a storey and of what it is framed with.

use super::opening::{OPENING, PATCH};
use super::{PLACES, distance, place, size, text};
use crate::reading::field::{Field, Kind, Lengths, Numbers, Record};

/// The words for an end.
pub(super) const ENDS: Kind = Kind::Choice(&["left", "right"]);

pub(super) const PLATE_FIELDS: [Field; 2] = [
    Field::new("thickness", Kind::Length(Lengths::size(12)), "Height of its face").usually("\"1 1/2\""),
    Field::new("treated", Kind::Flag, "Preservative-treated").usually("false"),
];

/// A plate.
pub(super) static PLATE: Record = Record {
    name: "plate",
    meaning: "One horizontal plate",
    fields: &PLATE_FIELDS,
};

/// A stud's size.
static STUD: Record = Record {
    name: "stud",
    meaning: "A stud's size",
    fields: &[
        Field::new(
            "width",
            Kind::Length(Lengths::size(12)),
            "Width of the face that is nailed",
        )
        .usually("\"1 1/2\""),
        Field::new("depth", Kind::Length(Lengths::size(24)), "Depth of the wall").usually("\"3 1/2\""),
        size("length", "Length between the plates").usually("\"92 5/8\""),
    ],
};

/// Where layout is pulled from.
pub(super) static ORIGIN: Record = Record {
    name: "layout origin",
    meaning: "Where on-centre layout is pulled from",
    fields: &[
        Field::new("end", ENDS, "The end that the tape is hooked on").own("\"left\""),
        place(
            "offset",
            "From that end to the zero of the layout, towards the middle",
        )
        .own("\"0\""),
    ],
};

const fn end_studs(name: &'static str, meaning: &'static str) -> Field {
    Field::new(name, Kind::Integer(Numbers::new(1, 10)), meaning).usually("1")
}

/// Studs at the ends.
static END_STUDS: Record = Record {
    name: "end studs",
    meaning: "How many studs stand side by side at each end",
    fields: &[
        end_studs("left", "At the left end"),
        end_studs("right", "At the right end"),
    ],
};

/// The lumber.
static SPECIES: Record = Record {
    name: "species",
    meaning: "The framing lumber",
    fields: &[
        text("group", "Name of the species group").usually("\"spruce-pine-fir\""),
        Field::new(
            "specific_gravity",
            Kind::Decimal(Numbers::new(0, 2)),
            "Specific gravity, oven-dry",
        )
        .usually("0.42"),
    ],
};

static A_PLATE: Kind = Kind::Object(&PLATE);
static A_PATCH: Kind = Kind::Object(&PATCH);

const fn plates(name: &'static str, meaning: &'static str) -> Field {
    let kind = Kind::List {
        of: &A_PLATE,
        least: 1,
        most: 6,
    };
    Field::new(name, kind, meaning)
}

const fn patches(name: &'static str, meaning: &'static str) -> Field {
    Field::new(name, Kind::list(&A_PATCH, 500), meaning).optional()
}

/// A storey.
pub(super) static STOREY: Record = Record {
    name: "storey",
    meaning: "Plates and studs of one storey",
    fields: &[
        text("name", "Storeys of one name in several walls belong together"),
        plates("bottom_plates", "From the lowest up").usually("[{\"thickness\": \"1 1/2\", \"treated\": false}]"),
        Field::new("stud", Kind::Object(&STUD), "The studs").usually("{}"),
        plates("top_plates", "From the lowest up").usually(
            "[{\"thickness\": \"1 1/2\", \"treated\": false}, {\"thickness\": \"1 1/2\", \"treated\": false}]",
        ),
        Field::new("spacing", Kind::Length(Lengths::inches(2, 96)), "On-centre spacing of the studs").usually("\"16\""),
        Field::new("origin", Kind::Object(&ORIGIN), "Where layout is pulled from").own("{}"),
        Field::new("end_studs", Kind::Object(&END_STUDS), "Studs at the ends").usually("{}"),
        Field::new("species", Kind::Object(&SPECIES), "The lumber").usually("{}"),
        Field::new("block_rows", Kind::list(PLACES, 20), "Heights of block rows that are framed anyway").optional(),
        Field::new("openings", Kind::list(&Kind::Object(&OPENING), 500), "Rough openings").optional(),
        patches("penetrations", "Holes that are cut in place and need no framing"),
        patches("bare_zones", "Places that stay without sheathing"),
        patches("straps", "Straps and bolts that no nail may hit"),
    ],
};

/// The distance that a member's face lies behind the sheathing plane.
pub(super) const fn setback(meaning: &'static str) -> Field {
    distance("setback", meaning).own("\"0\"")
}
