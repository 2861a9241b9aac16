//! A cell of a published table.

use super::super::{Kind, Object, required};
use super::ACCEPT;

pub(super) static CELL: Object = Object {
    name: "cell",
    tag: Some("cell"),
    meaning: "A cell of a table that is no table of unit shears of wood structural panels, as it was collected.",
    fields: &[
        required("table", WORDS, "Name of the table."),
        required("key", WORDS, "Row and column."),
        ACCEPT,
    ],
};

const WORDS: Kind = Kind::Text {
    most: 1_000,
    blank: false,
};
