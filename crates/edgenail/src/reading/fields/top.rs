//! Fields of what is above the uppermost plate.

use super::storey::{ORIGIN, setback};
use super::{distance, place, size};
use crate::reading::field::{Field, Kind, Lengths, Record, Variant};

/// A slope.
static PITCH: Record = Record {
    name: "pitch",
    meaning: "A slope, rise over run",
    fields: &[
        distance("rise", "Rise"),
        size("run", "Run, above zero").usually("\"12\""),
    ],
};

const fn pitch(name: &'static str, meaning: &'static str) -> Field {
    Field::new(name, Kind::Object(&PITCH), meaning)
}

static FLAT: Record = Record {
    name: "flat top",
    meaning: "Nothing that concerns the sheathing",
    fields: &[],
};

static RAKE: Record = Record {
    name: "rake",
    meaning: "A wall whose top follows the roof",
    fields: &[
        place(
            "ridge_x",
            "Where the highest point stands, from the wall's left end",
        ),
        distance(
            "peak",
            "Height of the highest point above where a flat wall of these studs would end",
        ),
        pitch("left", "Slope to the left of the ridge"),
        pitch("right", "Slope to the right of the ridge"),
        Field::new(
            "build",
            Kind::Choice(&["raked_plates", "ladder"]),
            "How it is framed",
        )
        .usually("\"raked_plates\""),
    ],
};

static GABLE_TRUSS: Record = Record {
    name: "gable truss",
    meaning: "A gable truss standing on the uppermost plate",
    fields: &[
        place("ridge_x", "Where its peak stands, from the wall's left end"),
        distance("heel", "Height at the ends, above the plate"),
        pitch("pitch", "Slope on both sides"),
        Field::new(
            "chord",
            Kind::Length(Lengths::size(24)),
            "Face height of its chords",
        )
        .usually("\"3 1/2\""),
        Field::new(
            "web_width",
            Kind::Length(Lengths::size(24)),
            "Face width of its webs",
        )
        .usually("\"1 1/2\""),
        Field::new(
            "web_spacing",
            Kind::Length(Lengths::inches(2, 96)),
            "On-centre spacing of its upright webs",
        )
        .usually("\"24\""),
        setback("How far its face lies behind the sheathing plane; above zero it holds no nail"),
        Field::new("sheathed", Kind::Flag, "The triangle is sheathed too").usually("true"),
        distance(
            "hold_up",
            "How far sheets stick up past the plate where the triangle is not sheathed",
        )
        .own("\"0\""),
    ],
};

static EAVE_TRUSSES: Record = Record {
    name: "eave trusses",
    meaning: "Roof trusses or rafters that bear on the wall",
    fields: &[
        Field::new(
            "spacing",
            Kind::Length(Lengths::inches(2, 96)),
            "On-centre spacing",
        )
        .usually("\"24\""),
        Field::new(
            "origin",
            Kind::Object(&ORIGIN),
            "Where their layout is pulled from",
        )
        .own("{}"),
        Field::new("width", Kind::Length(Lengths::size(24)), "Face width of a heel").usually("\"1 1/2\""),
        distance("heel", "Height of the heels above the plate"),
        Field::new("blocked", Kind::Flag, "Blocks stand between the heels").own("false"),
        distance("vent_space", "Left open above the blocks for air").own("\"0\""),
        distance("hold_up", "How far the sheets reach up past the plate").own("\"0\""),
    ],
};

/// The kinds of top.
pub(super) const TOPS: &[Variant] = &[
    Variant {
        word: "flat",
        record: &FLAT,
    },
    Variant {
        word: "rake",
        record: &RAKE,
    },
    Variant {
        word: "gable_truss",
        record: &GABLE_TRUSS,
    },
    Variant {
        word: "eave_trusses",
        record: &EAVE_TRUSSES,
    },
];
