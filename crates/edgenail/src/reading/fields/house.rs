//! Fields of the house.

use super::corner::CORNER;
use super::practice::PRACTICE;
use super::rates::RATES;
use super::stock::{STOCK, STOCK_DEFAULT};
use super::wall::WALL;
use super::{TEXT, text};
use crate::reading::field::{Field, Kind, Numbers, Record};

static LENGTH_UNIT: Record = Record {
    name: "length unit",
    meaning: "Says that numbers for lengths count units of the library",
    fields: &[Field::new(
        "per_inch",
        Kind::Integer(Numbers::new(40_640, 40_640)),
        "Units in an inch",
    )],
};

/// A house.
pub(crate) static HOUSE: Record = Record {
    name: "house",
    meaning: "A house to be sheathed",
    fields: &[
        text("name", "What the house is called").own("\"house\""),
        Field::new(
            "unit",
            Kind::Choice(&["in", "ft", "mm", "cm", "m"]),
            "Unit of lengths that are written without one",
        )
        .own("\"in\""),
        Field::new(
            "length_unit",
            Kind::Object(&LENGTH_UNIT),
            "Numbers for lengths count units of the library",
        )
        .or_null(),
        Field::new(
            "walls",
            Kind::List {
                of: &Kind::Object(&WALL),
                least: 1,
                most: 10_000,
            },
            "The walls",
        ),
        Field::new(
            "corners",
            Kind::list(&Kind::Object(&CORNER), 20_000),
            "Where two walls meet",
        )
        .optional(),
        Field::new("stock", Kind::Object(&STOCK), "What can be bought or is on hand").invented(STOCK_DEFAULT),
        Field::new(
            "building_order",
            Kind::list(TEXT, 10_000),
            "Names of walls in the order in which they are built",
        )
        .optional(),
        Field::new("practice", Kind::Object(&PRACTICE), "How the crew works")
            .computed("the defaults of each field"),
        Field::new("rates", Kind::Object(&RATES), "What the work costs").invented("{}"),
    ],
};
