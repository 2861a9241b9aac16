//! Questions of capacity: what is asked, told apart by `kind`.

mod anchorage;
mod assembly;
mod built;
mod cell;
mod diaphragm;
mod drift;
mod faces;
mod facing;
mod hold_down;
mod line;
mod nail;
mod nail_inspection;
mod panel;
mod schedule;
mod transfer;
mod uniform_load;
mod unit_shear;

pub(in crate::reading) use anchorage::ANCHORAGE;
pub(in crate::reading) use built::{BUILT, RACKING};
pub(in crate::reading) use diaphragm::DIAPHRAGM;
pub(in crate::reading) use drift::{DRIFT, EQUATION_THREE};
pub(in crate::reading) use faces::{FACE_FACING, FACE_PANELS, FACES};
pub(in crate::reading) use facing::FACING;
pub(in crate::reading) use hold_down::HOLD_DOWN;
pub(in crate::reading) use line::WALL_LINE;
pub(in crate::reading) use nail::NAIL;
pub(in crate::reading) use nail_inspection::NAIL_INSPECTION;
pub(in crate::reading) use panel::PANEL;
pub(in crate::reading) use schedule::SCHEDULE;
pub(in crate::reading) use transfer::TRANSFER;
pub(in crate::reading) use uniform_load::{RATED_PANEL, UNIFORM_LOAD};
pub(in crate::reading) use unit_shear::UNIT_SHEAR;

use super::{Field, Kind, OWN, Object, along, required, value};
use crate::decimal::Decimal;

/// Every question.
pub(in crate::reading) static QUESTIONS: [&Object; 17] = [
    &UNIT_SHEAR,
    &FACING,
    &FACES,
    &WALL_LINE,
    &TRANSFER,
    &HOLD_DOWN,
    &ANCHORAGE,
    &DIAPHRAGM,
    &SCHEDULE,
    &BUILT,
    &RACKING,
    &NAIL_INSPECTION,
    &NAIL,
    &PANEL,
    &UNIFORM_LOAD,
    &DRIFT,
    &cell::CELL,
];

/// A number from the first to the second.
const fn number(least: i32, most: i32) -> Kind {
    Kind::Number {
        least: Decimal::whole(least),
        most: Decimal::whole(most),
    }
}

/// Specific gravity.
const GRAVITY: Kind = Kind::Number {
    least: Decimal::tenths(3),
    most: Decimal::ONE,
};

/// Shank of a nail in inches.
const SHANK: Kind = Kind::Number {
    least: Decimal::hundredths(5),
    most: Decimal::hundredths(25),
};

/// Head of a nail in inches.
const HEAD: Kind = Kind::Number {
    least: Decimal::hundredths(5),
    most: Decimal::ONE,
};

/// What rights a segment.
const DEAD: Field = value(
    "dead",
    number(0, 1_000_000),
    "0",
    OWN,
    "Factored dead load along its top that rights it, in pounds per foot.",
);

/// What a segment's length is shortened by to the arm of its hold-down.
const INSET: Field = required(
    "inset",
    along(),
    "From the outer faces to the hold-down's rod and to the middle of the compression post, together.",
);

const ACCEPT: Field = value(
    "accept_unverified",
    Kind::Flag,
    "false",
    super::OWN,
    "Values that were recalled and not checked against the printed standard may be used; the answer says so.",
);

const DURATION: Field = required(
    "load_duration",
    Kind::Number {
        least: Decimal::tenths(9),
        most: Decimal::whole(2),
    },
    "Load duration factor of the standard: 1 for a load of normal duration, 1.6 for wind or earthquake.",
);
