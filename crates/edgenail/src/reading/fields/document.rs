//! The house itself.

use super::demand::DEMAND;
use super::practice::PRACTICE;
use super::rates::RATES;
use super::stock::STOCK;
use super::wall::{CORNER, WALL};
use super::{
    COMMON, Field, INVENTED, Kind, OWN, Object, Preset, computed, empty, list, name, nullable, parts,
    required, value, whole,
};
use crate::house::DrawnIn;
use crate::reading::choice::Choice;

/// The document.
pub static HOUSE: Object = Object {
    name: "house",
    tag: None,
    meaning: "A house to be sheathed.",
    fields: &[
        value("name", name(), "house", OWN, "What the house is called."),
        UNIT,
        EXACT,
        required(
            "walls",
            list(&Kind::Object(&WALL), 1, 10_000),
            "The walls, each with a name of its own.",
        ),
        empty(
            "corners",
            list(&Kind::Object(&CORNER), 0, 20_000),
            "Where two walls meet.",
        ),
        STOCK_FIELD,
        parts(
            "practice",
            Kind::Object(&PRACTICE),
            "{}",
            OWN,
            "How every wall is worked that does not say otherwise.",
        ),
        computed(
            "drawn_in",
            Kind::Choice(DrawnIn::NAMES),
            "millimetres where `unit` is metric, else inches",
            OWN,
            "How lengths are written on drawings and in sentences.",
        ),
        empty(
            "building_order",
            list(&name(), 0, 10_000),
            "Names of walls in the order in which they are built; walls not named follow in their own order.",
        ),
        RATES_FIELD,
        nullable(
            "demand",
            &Kind::Object(&DEMAND),
            "What the house has to resist; null asks for no capacity.",
        ),
        empty(
            "assumed",
            list(&Kind::Object(&ASSUMED), 0, 1_000_000),
            "What an earlier reading chose for this house, as a plan writes it. An entry whose field says otherwise by now \
             is left out; take the list out after moving walls or openings.",
        ),
    ],
};

/// What there is to build with.
pub(super) const STOCK_FIELD: Field = parts(
    "stock",
    Kind::Object(&STOCK),
    "{}",
    INVENTED,
    "What can be bought or is on hand.",
);

/// What work costs.
pub(super) const RATES_FIELD: Field = parts(
    "rates",
    Kind::Object(&RATES),
    "{}",
    INVENTED,
    "What the work costs.",
);

/// The unit of bare numbers.
pub(super) const UNIT: Field = Field {
    name: "unit",
    kind: Kind::Maybe(&Kind::Choice(&["in", "ft", "mm", "m"])),
    preset: Preset::Null,
    source: COMMON,
    meaning: "Unit of lengths that are bare numbers; inches where it is not said.",
};

/// Bare numbers as a plan writes them.
pub(super) const EXACT: Field = Field {
    name: "length_unit",
    kind: Kind::Maybe(&Kind::Object(&LENGTH_UNIT)),
    preset: Preset::Null,
    source: "",
    meaning: "Says that lengths that are bare numbers are whole units of 1/40640 in., as a plan writes them.",
};

static ASSUMED: Object = Object {
    name: "assumed",
    tag: None,
    meaning: "A value that a reading of the house chose because nobody said it.",
    fields: &[
        required("path", words(), "JSON pointer to the field."),
        required("value", words(), "The value that was taken."),
        required("why", words(), "Why this value."),
    ],
};

/// What a reading writes: a stock of sheets is one value.
const fn words() -> Kind {
    Kind::Text {
        most: 100_000,
        blank: true,
    }
}

static LENGTH_UNIT: Object = Object {
    name: "length_unit",
    tag: None,
    meaning: "The unit of exact lengths.",
    fields: &[required(
        "per_inch",
        whole(40_640, 40_640),
        "Units in one inch; always 40640.",
    )],
};
