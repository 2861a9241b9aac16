//! The unit shear of one sheathed face.

use super::super::document::{EXACT, UNIT};
use super::super::{Field, Kind, OWN, Object, required, value};
use super::ACCEPT;
use super::assembly::ASSEMBLY;
use crate::capacity::{Edition, LoadKind, Method};
use crate::reading::choice::Choice;

pub(in crate::reading) static UNIT_SHEAR: Object = Object {
    name: "unit_shear",
    tag: Some("unit_shear"),
    meaning: "Nominal and design unit shear of one sheathed face, and its apparent stiffness.",
    fields: &[
        UNIT,
        EXACT,
        EDITION,
        LOAD,
        METHOD,
        HIGH_SEISMIC,
        WALL,
        ESTIMATE,
        ACCEPT,
    ],
};

/// The same within another question, which says the unit of lengths.
pub(super) static QUERY: Object = Object {
    name: "unit_shear_query",
    tag: None,
    meaning: "What is asked of the tables.",
    fields: &[EDITION, LOAD, METHOD, HIGH_SEISMIC, WALL, ESTIMATE, ACCEPT],
};

pub(super) const EDITION: Field = required(
    "edition",
    Kind::Choice(Edition::NAMES),
    "Edition of the Special Design Provisions for Wind and Seismic.",
);

pub(super) const LOAD: Field = required("load", Kind::Choice(LoadKind::NAMES), "What the load comes from.");

pub(super) const METHOD: Field = required(
    "method",
    Kind::Choice(Method::NAMES),
    "How nominal becomes design: allowable stress or load and resistance factors.",
);

pub(super) const HIGH_SEISMIC: Field = required(
    "high_seismic",
    Kind::Flag,
    "The building is in seismic design category D, E or F.",
);

pub(super) const WALL: Field = required("assembly", Kind::Object(&ASSEMBLY), "The wall.");

pub(super) const ESTIMATE: Field = value(
    "estimate",
    Kind::Flag,
    "false",
    OWN,
    "A nail thinner than the table lists is taken by an engineering estimate, for wind only: the row of the next thicker nail \
     times the ratio of lateral values, never above the row. No value of the standard; the answer says so.",
);
