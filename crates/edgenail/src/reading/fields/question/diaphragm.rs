//! A storey's force on its lines.

use super::super::document::{EXACT, UNIT};
use super::super::{Kind, LONGEST, OWN, Object, along, list, name, required, value};
use super::number;
use crate::capacity::PlanAxis;
use crate::decimal::Decimal;
use crate::length::Length;
use crate::reading::choice::Choice;

pub(in crate::reading) static DIAPHRAGM: Object = Object {
    name: "diaphragm",
    tag: Some("diaphragm"),
    meaning: "A storey's force on its wall lines: by a flexible diaphragm, by a rigid one that turns, and the larger of both.",
    fields: &[
        UNIT,
        EXACT,
        required(
            "lines",
            list(&Kind::Object(&LINE), 1, 1_000),
            "The wall lines, in both directions.",
        ),
        required(
            "force",
            Kind::Object(&FORCE),
            "The force on the storey: all that comes down from above with its own.",
        ),
    ],
};

static LINE: Object = Object {
    name: "diaphragm_line",
    tag: None,
    meaning: "A wall line in plan.",
    fields: &[
        required("name", name(), "What it is called."),
        required(
            "along",
            Kind::Choice(PlanAxis::NAMES),
            "Which way it runs, and resists.",
        ),
        required(
            "at",
            PLACE,
            "Where it is: y of a line along x, x of a line along y.",
        ),
        required(
            "stiffness",
            Kind::Number {
                least: Decimal::thousandths(1),
                most: Decimal::whole(1_000_000_000),
            },
            "Force for one inch of movement of its top in pounds per inch, at the level of the force.",
        ),
        required(
            "tributary",
            along(),
            "Width of the diaphragm whose force comes to it where the diaphragm is flexible.",
        ),
    ],
};

static FORCE: Object = Object {
    name: "storey_force",
    tag: None,
    meaning: "A force on a storey.",
    fields: &[
        required(
            "size",
            number(0, 100_000_000),
            "Pounds, at the level that answers are wanted at: nothing is converted.",
        ),
        required("along", Kind::Choice(PlanAxis::NAMES), "Which way it acts."),
        required(
            "at",
            PLACE,
            "Where its resultant acts: y of a force along x, x of a force along y. A flexible diaphragm takes the tributary \
             widths in its place.",
        ),
        value(
            "accidental",
            along(),
            "0",
            OWN,
            "How far it may act to either side of that by accident; codes ask for some under a rigid diaphragm.",
        ),
    ],
};

/// A place in plan.
const PLACE: Kind = Kind::Length {
    least: Length::feet(-1000),
    most: LONGEST,
};
