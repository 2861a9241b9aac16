//! The anchors of a bottom plate.

use super::super::document::{EXACT, UNIT};
use super::super::{Kind, OWN, Object, nullable, required, size, value};
use super::{ACCEPT, number};
use crate::capacity::Method;
use crate::decimal::Decimal;
use crate::reading::choice::Choice;

pub(in crate::reading) static ANCHORAGE: Object = Object {
    name: "anchorage",
    tag: Some("anchorage"),
    meaning: "How many anchors a bottom plate takes against sliding and uplift, and whether plate washers have to reach to the \
              sheathed edge. The least number and spacing that a code asks for at any load are not checked, nor how shear and \
              uplift act together on one anchor.",
    fields: &[
        UNIT,
        EXACT,
        required(
            "shear",
            number(0, 100_000),
            "Shear along the plate in pounds per foot, such as `plate_shear_plf` of a wall line.",
        ),
        required("length", size(), "Length of the plate."),
        required(
            "each",
            FORCE,
            "What one anchor carries of the shear in pounds, at the level of the shear.",
        ),
        value(
            "uplift",
            number(0, 100_000),
            "0",
            OWN,
            "Uniform uplift of the plate in pounds per foot; of a perforated wall it is as large as the shear.",
        ),
        nullable(
            "each_uplift",
            &FORCE,
            "What one anchor carries of the uplift in pounds.",
        ),
        nullable(
            "nominal",
            &number(0, 100_000),
            "Nominal unit shear of the wall in pounds per foot; null asks nothing of plate washers.",
        ),
        nullable(
            "sill",
            &Kind::Choice(Method::NAMES),
            "The level of the shear, to ask what the sill has to be by IBC 2006 in seismic design categories D to F; null asks \
             nothing of it.",
        ),
        ACCEPT,
    ],
};

/// What an anchor carries.
pub(super) const FORCE: Kind = Kind::Number {
    least: Decimal::tenths(1),
    most: Decimal::whole(1_000_000),
};
