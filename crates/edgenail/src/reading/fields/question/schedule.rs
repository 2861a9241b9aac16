//! What of a stock carries a demand for the least.

use super::super::document::{EXACT, RATES_FIELD, STOCK_FIELD, UNIT};
use super::super::{Kind, Object, required, size};
use super::assembly::FRAMING;
use super::unit_shear::{EDITION, HIGH_SEISMIC, LOAD, METHOD};
use super::{ACCEPT, number};

pub(in crate::reading) static SCHEDULE: Object = Object {
    name: "schedule",
    tag: Some("schedule"),
    meaning: "Every combination of the stock's sheets and nails with the listed edge nailings under a demand, by cost; with why \
              each that is not chosen is not.",
    fields: &[
        UNIT,
        EXACT,
        STOCK_FIELD,
        RATES_FIELD,
        required("demand", Kind::Object(&DEMAND), "What has to be carried."),
        EDITION,
        LOAD,
        METHOD,
        HIGH_SEISMIC,
        required(
            "framing",
            Kind::Object(&FRAMING),
            "The framing that every combination has; all panel edges are backed.",
        ),
        ACCEPT,
    ],
};

static DEMAND: Object = Object {
    name: "schedule_demand",
    tag: None,
    meaning: "A demand on a wall.",
    fields: &[
        required(
            "unit_shear",
            number(0, 100_000),
            "Unit shear in pounds per foot, at the level of the method: nothing is converted.",
        ),
        required("height", size(), "Height of the wall, for its cost."),
    ],
};
