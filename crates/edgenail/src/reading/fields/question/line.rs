//! A wall line under its demand.

use super::super::document::{EXACT, UNIT};
use super::super::{Kind, Object, along, empty, height, list, nullable, required, size};
use super::anchorage::FORCE;
use super::faces::{JOINTS_APART, OTHER_FACE};
use super::unit_shear::QUERY;
use super::{DEAD, INSET, number};
use crate::capacity::{LineMethod, Sharing};
use crate::decimal::Decimal;
use crate::length::Length;
use crate::reading::choice::Choice;

pub(in crate::reading) static WALL_LINE: Object = Object {
    name: "wall_line",
    tag: Some("wall_line"),
    meaning: "What a wall line carries, by its full-height segments or as a perforated wall.",
    fields: &[
        UNIT,
        EXACT,
        required(
            "length",
            size(),
            "Length between the outer faces of its end posts.",
        ),
        required(
            "height",
            size(),
            "From the underside of the bottom plate to the top of the top plates.",
        ),
        required(
            "openings",
            list(&Kind::Object(&OPENING), 0, 500),
            "Openings from left to right.",
        ),
        required("method", Kind::Choice(LineMethod::NAMES), "How it is taken."),
        required(
            "sharing",
            Kind::Choice(Sharing::NAMES),
            "How segments share the shear, which decides what slender ones lose.",
        ),
        required(
            "query",
            Kind::Object(&QUERY),
            "What is asked of the tables for its one construction.",
        ),
        required(
            "demand",
            number(0, 100_000_000),
            "Shear at its top in pounds, with all that comes from above, at the level of the method: nothing is converted.",
        ),
        DEAD,
        INSET,
        nullable(
            "other_face",
            &OTHER_FACE,
            "What its other face is sheathed with; null leaves it bare.",
        ),
        JOINTS_APART,
        nullable(
            "posts",
            &Kind::Object(&POSTS),
            "The posts at the ends of its segments; null, or no hold-down, leaves the drift out.",
        ),
        nullable(
            "hold_down",
            &Kind::Object(&HOLD_DOWN_OF_LINE),
            "The hold-down at each end that is pulled; null leaves its check out.",
        ),
        nullable(
            "anchor",
            &Kind::Object(&ANCHOR),
            "One anchor of its bottom plate; null leaves anchors, washers and sill out.",
        ),
        nullable(
            "above",
            &Kind::Object(&ABOVE),
            "What the storeys above bring down; null for a single storey.",
        ),
    ],
};

static POSTS: Object = Object {
    name: "end_posts",
    tag: None,
    meaning: "The posts at the ends of the segments.",
    fields: &[
        required(
            "elasticity",
            number(100_000, 5_000_000),
            "Modulus of elasticity in psi.",
        ),
        required(
            "area",
            Kind::Number {
                least: Decimal::tenths(1),
                most: Decimal::whole(10_000),
            },
            "Section of one post in square inches.",
        ),
    ],
};

static HOLD_DOWN_OF_LINE: Object = Object {
    name: "line_hold_down",
    tag: None,
    meaning: "A hold-down by its maker's figures, at the level of the method.",
    fields: &[
        required("capacity", FORCE, "What it holds in pounds."),
        required(
            "elongation",
            Kind::Length {
                least: Length::ZERO,
                most: Length::inches(12),
            },
            "How far it gives under that, with all slip; in proportion under less.",
        ),
    ],
};

static ANCHOR: Object = Object {
    name: "plate_anchor",
    tag: None,
    meaning: "One anchor of a bottom plate, at the level of the method.",
    fields: &[
        required("each", FORCE, "What it carries of the shear in pounds."),
        nullable(
            "each_uplift",
            &FORCE,
            "What it carries of the uplift in pounds; a perforated wall asks for it.",
        ),
    ],
};

static ABOVE: Object = Object {
    name: "from_above",
    tag: None,
    meaning: "What the storeys above bring down.",
    fields: &[
        required(
            "shear",
            number(0, 100_000_000),
            "Shear that comes through the floor above in pounds: part of the line's demand.",
        ),
        required(
            "floor",
            along(),
            "From the top of the line's plates to the underside of the bottom plate above.",
        ),
        empty(
            "ends",
            list(&Kind::Object(&END_ABOVE), 0, 500),
            "Tensions at the ends of segments above.",
        ),
    ],
};

static END_ABOVE: Object = Object {
    name: "end_above",
    tag: None,
    meaning: "A tension at the end of a segment above; it is carried by an end post within 6 in. of it.",
    fields: &[
        required(
            "at",
            height(),
            "Outer face of its post, from the left end of the line below.",
        ),
        required(
            "tension",
            number(-100_000_000, 100_000_000),
            "In pounds; below zero nothing pulls.",
        ),
    ],
};

static OPENING: Object = Object {
    name: "line_opening",
    tag: None,
    meaning: "An opening of a line.",
    fields: &[
        required("left", along(), "From the left end of the line."),
        required("width", size(), "Width."),
        required(
            "height",
            size(),
            "Height; the whole wall's where nothing is sheathed above or below.",
        ),
    ],
};
