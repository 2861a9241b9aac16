//! What is above the uppermost plate.

use super::storey::ORIGIN;
use super::{COMMON, Kind, OWN, Object, along, computed, height, inches, parts, required, sixteenths, value};
use crate::house::RakeBuild;
use crate::length::Length;
use crate::reading::choice::Choice;

pub(super) static TOP_FLAT: Object = Object {
    name: "flat",
    tag: Some("flat"),
    meaning: "Nothing that concerns the sheathing.",
    fields: &[],
};

pub(in crate::reading) static TOP_RAKE: Object = Object {
    name: "rake",
    tag: Some("rake"),
    meaning: "The wall follows the roof. Its highest point is the base point of both slopes.",
    fields: &[
        computed(
            "ridge_x",
            along(),
            "the middle of the section",
            OWN,
            "Where the highest point stands, from the wall's left end; at an end of the section for a single slope.",
        ),
        required(
            "peak",
            height(),
            "Height of the highest point above where a flat wall of these studs would end.",
        ),
        required("left", Kind::Object(&PITCH), "Slope to the left of the ridge."),
        computed(
            "right",
            Kind::Object(&PITCH),
            "as to the left",
            OWN,
            "Slope to the right of the ridge.",
        ),
        value(
            "build",
            Kind::Choice(RakeBuild::NAMES),
            "raked_plates",
            COMMON,
            "How it is framed.",
        ),
    ],
};

pub(super) static PITCH: Object = Object {
    name: "pitch",
    tag: None,
    meaning: "A slope, rise over run.",
    fields: &[
        required(
            "rise",
            Kind::Length {
                least: Length::ZERO,
                most: Length::feet(100),
            },
            "Rise.",
        ),
        value("run", sixteenths(1, 16 * 1200), "12", COMMON, "Run, above zero."),
    ],
};

pub(in crate::reading) static TOP_GABLE: Object = Object {
    name: "gable_truss",
    tag: Some("gable_truss"),
    meaning: "A gable truss standing on the uppermost plate.",
    fields: &[
        computed(
            "ridge_x",
            along(),
            "the middle of the section",
            OWN,
            "Where its peak stands, from the wall's left end.",
        ),
        value(
            "heel",
            inches(0, 120),
            "3 1/2",
            OWN,
            "Height at the ends, above the plate.",
        ),
        required("pitch", Kind::Object(&PITCH), "Slope on both sides."),
        value(
            "chord",
            sixteenths(8, 16 * 24),
            "3 1/2",
            COMMON,
            "Face height of its chords.",
        ),
        value(
            "web_width",
            sixteenths(8, 16 * 24),
            "3 1/2",
            COMMON,
            "Face width of its webs.",
        ),
        value(
            "web_spacing",
            inches(4, 96),
            "16",
            COMMON,
            "On-centre spacing of its upright webs.",
        ),
        value(
            "setback",
            sixteenths(0, 16 * 24),
            "0",
            COMMON,
            "How far its face lies behind the sheathing plane; above zero it holds no nail.",
        ),
        value(
            "sheathed",
            Kind::Flag,
            "true",
            COMMON,
            "The triangle is sheathed too.",
        ),
        value(
            "hold_up",
            sixteenths(0, 16 * 48),
            "3",
            OWN,
            "How far the wall's sheets stick up past the plate to hold the truss, where the triangle is not sheathed.",
        ),
    ],
};

pub(in crate::reading) static TOP_EAVES: Object = Object {
    name: "eave_trusses",
    tag: Some("eave_trusses"),
    meaning: "The heels of roof trusses or rafters.",
    fields: &[
        value("spacing", inches(4, 120), "24", COMMON, "On-centre spacing."),
        parts(
            "origin",
            Kind::Object(&ORIGIN),
            "{}",
            COMMON,
            "Where their layout is pulled from.",
        ),
        value(
            "width",
            sixteenths(8, 16 * 12),
            "1 1/2",
            COMMON,
            "Face width of a heel.",
        ),
        required("heel", inches(0, 120), "Height of the heels above the plate."),
        value(
            "blocked",
            Kind::Flag,
            "true",
            COMMON,
            "Blocks stand between the heels.",
        ),
        value(
            "vent_space",
            inches(0, 48),
            "2",
            OWN,
            "Left open above the blocks for air.",
        ),
        value(
            "hold_up",
            inches(0, 120),
            "0",
            OWN,
            "How far the sheets reach up past the plate.",
        ),
    ],
};
