//! Nails found missing or too deep.

use super::super::document::{EXACT, UNIT};
use super::super::{Kind, Object, list, name, nullable, required, whole};
use super::assembly::SPACING;
use super::number;

pub(in crate::reading) static NAIL_INSPECTION: Object = Object {
    name: "nail_inspection",
    tag: Some("nail_inspection"),
    meaning: "The nails along the edges of one panel as somebody counted them: what to mend, and what of the nailing is there. \
              Judgement, never a pass.",
    fields: &[
        UNIT,
        EXACT,
        required("edges", list(&Kind::Object(&EDGE), 1, 100), "The panel's edges."),
        required("edge_spacing", SPACING, "Specified spacing of edge nails."),
        required(
            "dry",
            Kind::Flag,
            "Panels and framing were dry, below 16 %, when they were nailed: else heads up to 1/16 in. deep are too deep.",
        ),
        nullable(
            "design_shear",
            &number(0, 100_000),
            "Design unit shear of the wall as specified, from its table, in pounds per foot; null asks for nothing of it.",
        ),
    ],
};

static EDGE: Object = Object {
    name: "inspected_edge",
    tag: None,
    meaning: "One edge of the panel, its nails by how deep their heads stand below the face.",
    fields: &[
        required("name", name(), "What it is called."),
        required("flush", whole(0, 100_000), "Nails that are flush."),
        required("to_16th", whole(0, 100_000), "Nails up to 1/16 in. deep."),
        required(
            "to_8th",
            whole(0, 100_000),
            "Nails deeper than that, up to 1/8 in.",
        ),
        required("deeper", whole(0, 100_000), "Nails deeper than 1/8 in."),
        required(
            "missing",
            whole(0, 100_000),
            "Nails that are specified and not there, or stand beside the framing.",
        ),
    ],
};
