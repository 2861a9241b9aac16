//! The drift of a segment.

use super::super::document::{EXACT, UNIT};
use super::super::{Kind, Object, along, required, size};
use super::assembly::{SPACING, THICKNESS};
use super::{ACCEPT, number};
use crate::capacity::PanelMaterial;
use crate::published::{Grade, Pennyweight};
use crate::reading::choice::Choice;

pub(in crate::reading) static DRIFT: Object = Object {
    name: "drift",
    tag: Some("drift"),
    meaning: "How far the top of a segment moves under a unit shear.",
    fields: &[
        UNIT,
        EXACT,
        required("shear", number(0, 100_000), "Unit shear in pounds per foot."),
        required("height", size(), "Height."),
        required("length", size(), "Length."),
        required(
            "elasticity",
            number(1_000, 100_000_000),
            "Modulus of elasticity of the end posts in pounds per square inch.",
        ),
        required(
            "post_area",
            number(1, 10_000),
            "Section of an end post in square inches.",
        ),
        required(
            "anchor",
            along(),
            "Elongation of the hold-down at this load, with all slip.",
        ),
        required(
            "equation",
            Kind::OneOf(&[&EQUATION_THREE, &EQUATION_FOUR]),
            "Which equation is taken.",
        ),
        ACCEPT,
    ],
};

pub(in crate::reading) static EQUATION_THREE: Object = Object {
    name: "three_terms",
    tag: Some("three_terms"),
    meaning: "Panels and nails together in an apparent stiffness.",
    fields: &[required(
        "stiffness",
        number(1, 1_000),
        "Apparent shear stiffness in kips per inch.",
    )],
};

static EQUATION_FOUR: Object = Object {
    name: "four_terms",
    tag: Some("four_terms"),
    meaning: "Panels and nails apart; lumber that was dry when built.",
    fields: &[
        required("nail", Kind::Choice(Pennyweight::NAMES), "The common nail."),
        required("grade", Kind::Choice(Grade::NAMES), "Grade of the panel."),
        required(
            "material",
            Kind::Choice(PanelMaterial::NAMES),
            "What the panel is made of.",
        ),
        required("thickness", THICKNESS, "Nominal thickness of the panel."),
        required("edge_spacing", SPACING, "Spacing of the edge nails."),
    ],
};
