//! Fields of floor bands.

use super::storey::{ORIGIN, PLATE_FIELDS};
use super::{size, text};
use crate::reading::field::{Field, Kind, Lengths, Record, Variant};

/// A rim.
static RIM: Record = Record {
    name: "rim",
    meaning: "The board that closes the floor band",
    fields: &[
        Field::new(
            "kind",
            Kind::Choice(&["sawn", "engineered"]),
            "What it is made of",
        ),
        Field::new(
            "thickness",
            Kind::Length(Lengths::size(12)),
            "Thickness, across the wall's face",
        ),
    ],
};

/// A plate of a band.
static PLATE_LAYER: Record = Record {
    name: "plate layer",
    meaning: "A mudsill or other plate lying flat",
    fields: &PLATE_FIELDS,
};

/// Members of a band.
static MEMBERS: Record = Record {
    name: "members layer",
    meaning: "Joists or trusses",
    fields: &[
        Field::new(
            "direction",
            Kind::Choice(&["across", "along"]),
            "Across the wall or along it",
        ),
        Field::new(
            "member",
            Kind::Choice(&["sawn_joist", "i_joist", "truss"]),
            "What they are",
        ),
        Field::new(
            "width",
            Kind::Length(Lengths::size(24)),
            "Width of one member's end",
        ),
        Field::new(
            "depth",
            Kind::Length(Lengths::size(60)),
            "Height of the members and of the rim",
        ),
        Field::new(
            "spacing",
            Kind::Length(Lengths::inches(2, 96)),
            "On-centre spacing",
        )
        .usually("\"16\""),
        Field::new(
            "origin",
            Kind::Object(&ORIGIN),
            "Where their layout is pulled from",
        )
        .own("{}"),
        Field::new(
            "rim",
            Kind::Object(&RIM),
            "The board that closes the band; null for none",
        )
        .or_null(),
        Field::new(
            "blocking_between",
            Kind::Flag,
            "Blocks between the members, flush with the wall's face",
        )
        .own("false"),
    ],
};

/// The edge of the subfloor.
static SUBFLOOR: Record = Record {
    name: "subfloor layer",
    meaning: "The edge of the subfloor, which holds no nail",
    fields: &[size("thickness", "Thickness of the floor panel").usually("\"3/4\"")],
};

const LAYERS: &[Variant] = &[
    Variant {
        word: "plate",
        record: &PLATE_LAYER,
    },
    Variant {
        word: "members",
        record: &MEMBERS,
    },
    Variant {
        word: "subfloor",
        record: &SUBFLOOR,
    },
];

/// A floor band.
pub(super) static FLOOR_BAND: Record = Record {
    name: "floor band",
    meaning: "What lies between two storeys, or under the first",
    fields: &[
        text("name", "Such as `second floor band`"),
        Field::new(
            "layers",
            Kind::List {
                of: &Kind::Variant(LAYERS),
                least: 1,
                most: 20,
            },
            "From the lowest up",
        ),
    ],
};
