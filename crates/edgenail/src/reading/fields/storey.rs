//! Plates and studs.

use super::opening::{OPENING, PATCH};
use super::section::PLATES;
use super::{
    COMMON, Field, Kind, OWN, Object, along, computed, empty, height, inches, list, name, nullable, parts,
    sixteenths, value, whole,
};
use crate::decimal::Decimal;
use crate::house::End;
use crate::length::Length;
use crate::reading::choice::Choice;

pub(super) const END: Kind = Kind::Choice(End::NAMES);

pub(super) static STOREY_FIELDS: &[Field] = &[
    computed(
        "name",
        name(),
        "`first floor`, `second floor` and so on, from below",
        OWN,
        "Storeys of one name in several walls belong together.",
    ),
    parts(
        "bottom_plates",
        list(&PLATES, 1, 4),
        "[{}]",
        COMMON,
        "From the lowest up.",
    ),
    parts("stud", Kind::Object(&STUD), "{}", COMMON, "The studs."),
    parts(
        "top_plates",
        list(&PLATES, 1, 4),
        "[{}, {}]",
        COMMON,
        "From the lowest up.",
    ),
    empty(
        "plate_joints",
        list(&along(), 0, 500),
        "Butt joints of the topmost plate, from the wall's left end; empty where they are not known.",
    ),
    value(
        "spacing",
        inches(4, 96),
        "16",
        COMMON,
        "On-centre spacing of the studs.",
    ),
    parts(
        "origin",
        Kind::Object(&ORIGIN),
        "{}",
        COMMON,
        "Where layout is pulled from.",
    ),
    parts(
        "end_studs",
        Kind::Object(&END_STUDS),
        "{}",
        COMMON,
        "Studs side by side at the ends.",
    ),
    parts("species", Kind::Object(&SPECIES), "{}", OWN, "The lumber."),
    empty(
        "block_rows",
        list(&height(), 0, 20),
        "Heights above the storey's base of the centres of block rows that are framed anyway.",
    ),
    empty(
        "openings",
        list(&Kind::Object(&OPENING), 0, 500),
        "Rough openings.",
    ),
    empty(
        "penetrations",
        list(&Kind::Object(&PATCH), 0, 500),
        "Holes that are cut in place and need no framing of their own.",
    ),
    empty(
        "bare_zones",
        list(&Kind::Object(&PATCH), 0, 100),
        "Places that stay without sheathing: a ledger, a chimney, an abutting roof.",
    ),
    empty(
        "straps",
        list(&Kind::Object(&PATCH), 0, 500),
        "Straps and bolts that no nail may hit.",
    ),
];

pub(super) static PLATE_FIELDS: &[Field] = &[
    value(
        "thickness",
        sixteenths(8, 16 * 12),
        "1 1/2",
        COMMON,
        "Height of its face.",
    ),
    computed(
        "treated",
        Kind::Flag,
        "true for the lowest plate of a section that bears on concrete, else false",
        "IRC R317.1, from memory",
        "Preservative-treated: takes corrosion-resistant nails.",
    ),
];

pub(super) static PLATE: Object = Object {
    name: "plate",
    tag: None,
    meaning: "One horizontal plate.",
    fields: PLATE_FIELDS,
};

static STUD: Object = Object {
    name: "stud",
    tag: None,
    meaning: "A stud's size.",
    fields: &[
        value(
            "width",
            sixteenths(8, 16 * 12),
            "1 1/2",
            COMMON,
            "Width of the face that is nailed.",
        ),
        value("depth", inches(1, 24), "3 1/2", COMMON, "Depth of the wall."),
        value(
            "length",
            inches(3, 1200),
            "92 5/8",
            "common practice, no source: the precut stud of an 8 ft wall",
            "Length between the plates.",
        ),
    ],
};

pub(super) static ORIGIN: Object = Object {
    name: "origin",
    tag: None,
    meaning: "Where on-centre layout is pulled from.",
    fields: &[
        value("end", END, "left", OWN, "The end that the tape is hooked on."),
        computed(
            "offset",
            Kind::Length {
                least: Length::feet(-10),
                most: Length::feet(1000),
            },
            "0, the end of the sheathing",
            COMMON,
            "From that end of the section's sheathing to the zero of the layout, towards the middle of the wall. Where \
             the wall butts at an outside corner, its sheathing ends past the neighbour's studs and sheathing.",
        ),
    ],
};

static END_STUDS: Object = Object {
    name: "end_studs",
    tag: None,
    meaning: "How many studs stand side by side at each end.",
    fields: &[
        value("left", whole(1, 10), "1", COMMON, "At the left end."),
        value("right", whole(1, 10), "1", COMMON, "At the right end."),
    ],
};

static SPECIES: Object = Object {
    name: "species",
    tag: None,
    meaning: "The framing lumber.",
    fields: &[
        value(
            "group",
            name(),
            "spruce-pine-fir",
            OWN,
            "Name of the species group.",
        ),
        value(
            "specific_gravity",
            Kind::Number {
                least: Decimal::tenths(2),
                most: Decimal::whole(1),
            },
            "0.42",
            "NDS table 12.3.3A for spruce-pine-fir, from memory, not checked against print",
            "Specific gravity, oven-dry.",
        ),
        nullable(
            "elasticity",
            &whole(100_000, 5_000_000),
            "Modulus of elasticity along the grain in psi, for drift; null leaves drift out.",
        ),
    ],
};
