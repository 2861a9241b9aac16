//! Fields of the stock: what can be bought or is on hand.

use super::{size, text};
use crate::reading::field::{Field, Kind, Lengths, Numbers, Record};

const PRICE: Kind = Kind::Amount(Numbers::new(0, 10_000_000));
const COUNT: Numbers = Numbers::new(1, 1_000_000);

static SHEET: Record = Record {
    name: "sheet",
    meaning: "A sheet as it is delivered: true sizes",
    fields: &[
        text("name", "Unique among the sheets"),
        Field::new("width", Kind::Length(Lengths::inches(1, 1200)), "True width"),
        Field::new("length", Kind::Length(Lengths::inches(1, 1200)), "True length"),
        text(
            "category",
            "Performance category, such as `7/16`; a name, not a length",
        ),
        text("grade", "Grade").usually("\"sheathing\""),
        Field::new(
            "span_rating",
            Kind::Note,
            "Span rating; empty where none is stamped",
        )
        .own("\"\""),
        Field::new(
            "strength_axis",
            Kind::Choice(&["length", "width"]),
            "Along which side it is strong",
        )
        .usually("\"length\""),
        Field::new(
            "faces_alike",
            Kind::Flag,
            "Both faces may show: the sheet may be turned over",
        )
        .own("false"),
        Field::new(
            "may_turn",
            Kind::Flag,
            "A piece may be cut with its strength axis either way",
        )
        .usually("true"),
        Field::new(
            "gap",
            Kind::Length(Lengths::up_to(1)),
            "The joint gap that its maker asks for",
        )
        .or_null(),
        Field::new("price", PRICE, "Price of one sheet"),
        Field::new(
            "on_hand",
            Kind::Integer(Numbers::new(0, 1_000_000)),
            "How many there are; null for as many as are wanted",
        )
        .or_null(),
        Field::new(
            "pounds_per_square_foot",
            Kind::Decimal(Numbers::new(0, 100)),
            "Pounds a square foot",
        )
        .usually("1.4"),
        Field::new("unit_count", Kind::Integer(COUNT), "Sheets in a delivered unit").own("1"),
    ],
};

static NAIL: Record = Record {
    name: "nail",
    meaning: "A nail as it is sold",
    fields: &[
        text("name", "Unique among the nails"),
        Field::new(
            "shank",
            Kind::Decimal(Numbers::new(0, 1)),
            "Shank diameter, inches",
        ),
        Field::new("head", Kind::Decimal(Numbers::new(0, 2)), "Head diameter, inches"),
        Field::new("length", Kind::Length(Lengths::size(12)), "Length"),
        Field::new(
            "coating",
            Kind::Choice(&["bright", "hot_dipped", "stainless"]),
            "Protection",
        )
        .own("\"bright\""),
        Field::new("tool", Kind::Choice(&["gun", "hand"]), "What drives it").usually("\"gun\""),
        Field::new("per_box", Kind::Integer(COUNT), "Nails in a box"),
        Field::new("price", PRICE, "Price of a box"),
    ],
};

static STICK: Record = Record {
    name: "stick",
    meaning: "Lumber for blocks and added studs, by the stick",
    fields: &[
        text("name", "Unique among the sticks"),
        Field::new(
            "thickness",
            Kind::Length(Lengths::size(24)),
            "The narrow side of the cross-section",
        ),
        Field::new(
            "depth",
            Kind::Length(Lengths::size(24)),
            "The wide side of the cross-section",
        ),
        size("length", "Length of the stick"),
        Field::new("price", PRICE, "Price of one stick"),
    ],
};

static OFFCUT: Record = Record {
    name: "off-cut",
    meaning: "A piece left from an earlier job",
    fields: &[
        text("sheet", "Name of the sheet that it came from"),
        size("width", "Along the sheet's width"),
        size("length", "Along the sheet's length"),
    ],
};

const fn entries(of: &'static Kind) -> Kind {
    Kind::List {
        of,
        least: 1,
        most: 1000,
    }
}

/// The stock.
pub(super) static STOCK: Record = Record {
    name: "stock",
    meaning: "What can be bought or is on hand",
    fields: &[
        Field::new("sheets", entries(&Kind::Object(&SHEET)), "Sheets"),
        Field::new("nails", entries(&Kind::Object(&NAIL)), "Nails"),
        Field::new("sticks", entries(&Kind::Object(&STICK)), "Lumber"),
        Field::new(
            "offcuts",
            Kind::list(&Kind::Object(&OFFCUT), 100_000),
            "Pieces left from earlier jobs",
        )
        .optional(),
    ],
};

/// The stock of a house that has none: invented, so that a wall can be planned at all.
pub(super) const STOCK_DEFAULT: &str = r#"{
  "sheets": [
    {"name": "4x8", "width": "47 7/8", "length": "95 7/8", "category": "7/16", "grade": "sheathing", "span_rating": "24/16", "price": "16"},
    {"name": "4x9", "width": "47 7/8", "length": "107 7/8", "category": "7/16", "grade": "sheathing", "span_rating": "24/16", "price": "20"},
    {"name": "4x10", "width": "47 7/8", "length": "119 7/8", "category": "7/16", "grade": "sheathing", "span_rating": "24/16", "price": "24"}
  ],
  "nails": [
    {"name": "8d bright", "shank": "0.131", "head": "0.281", "length": "2 1/2", "per_box": 2500, "price": "52"},
    {"name": "8d hot-dipped", "shank": "0.131", "head": "0.281", "length": "2 1/2", "coating": "hot_dipped", "per_box": 2000, "price": "68"}
  ],
  "sticks": [{"name": "2x4 8 ft", "thickness": "1 1/2", "depth": "3 1/2", "length": "8'", "price": "4.10"}]
}"#;
