//! What can be bought or is on hand.

use super::{
    COMMON, Field, INVENTED, Kind, OWN, Object, Preset, amount, empty, from, inches, list, name, nullable,
    required, sixteenths, value, whole,
};
use crate::decimal::Decimal;
use crate::house::{Coating, NailTool, StrengthAxis};
use crate::length::Length;
use crate::reading::choice::Choice;

const PRICED: &str = "invented prices; sizes are common practice, no source";

pub(super) static STOCK: Object = Object {
    name: "stock",
    tag: None,
    meaning: "What can be bought or is on hand.",
    fields: &[
        whole_list(
            "sheets",
            &Kind::Object(&SHEET),
            include_str!("stock_sheets.json"),
            "Sheets.",
        ),
        whole_list(
            "nails",
            &Kind::Object(&NAIL),
            include_str!("stock_nails.json"),
            "Nails.",
        ),
        whole_list(
            "sticks",
            &Kind::Object(&STICK),
            include_str!("stock_sticks.json"),
            "Lumber for blocks and added studs.",
        ),
        empty(
            "offcuts",
            list(&Kind::Object(&OFFCUT), 0, 1_000),
            "Pieces left from earlier jobs.",
        ),
    ],
};

const fn whole_list(
    name: &'static str,
    of: &'static Kind,
    json: &'static str,
    meaning: &'static str,
) -> Field {
    Field {
        name,
        kind: list(of, 1, 200),
        preset: Preset::Whole(json),
        source: PRICED,
        meaning,
    }
}

static SHEET: Object = Object {
    name: "sheet",
    tag: None,
    meaning: "A sheet as it is delivered: true sizes.",
    fields: &[
        required("name", name(), "Unique in the stock."),
        required("width", inches(6, 144), "True width."),
        required(
            "length",
            Kind::Length {
                least: Length::inches(6),
                most: Length::feet(40),
            },
            "True length.",
        ),
        required(
            "category",
            name(),
            "Performance category, such as `7/16`. A name, not a length.",
        ),
        value("grade", name(), "sheathing", COMMON, "Grade."),
        value(
            "span_rating",
            Kind::Text {
                most: 40,
                blank: true,
            },
            "",
            OWN,
            "Span rating, such as `24/16`; empty where none is stamped.",
        ),
        value(
            "strength_axis",
            Kind::Choice(StrengthAxis::NAMES),
            "length",
            COMMON,
            "Along which side it is strong.",
        ),
        nullable(
            "plies",
            &whole(1, 30),
            "Plies of plywood; null for panels without plies, or where they are not known.",
        ),
        value(
            "faces_alike",
            Kind::Flag,
            "false",
            "own value: printed nail lines face out",
            "Both faces may show: the sheet may be turned over.",
        ),
        value(
            "may_turn",
            Kind::Flag,
            "false",
            "own value: the careful case",
            "A piece may be cut with its strength axis either way.",
        ),
        nullable(
            "gap",
            &sixteenths(0, 16),
            "The joint gap that its maker asks for, where it differs from practice.",
        ),
        from(
            "price",
            amount(),
            "0.50",
            "a square foot",
            INVENTED,
            "Price of one sheet.",
        ),
        nullable(
            "on_hand",
            &whole(0, 1_000_000),
            "How many there are; null for as many as are wanted.",
        ),
        value(
            "pounds_per_square_foot",
            Kind::Number {
                least: Decimal::tenths(1),
                most: Decimal::whole(20),
            },
            "1.4",
            "a trade list for 7/16 panels, of low weight",
            "Pounds a square foot.",
        ),
        value(
            "unit_count",
            whole(1, 1_000),
            "66",
            "from memory, varies by maker",
            "Sheets in a delivered unit.",
        ),
    ],
};

static NAIL: Object = Object {
    name: "nail",
    tag: None,
    meaning: "A nail as it is sold.",
    fields: &[
        required("name", name(), "Unique in the stock."),
        required(
            "shank",
            Kind::Number {
                least: Decimal::hundredths(5),
                most: Decimal::tenths(5),
            },
            "Shank diameter, inches.",
        ),
        required(
            "head",
            Kind::Number {
                least: Decimal::tenths(1),
                most: Decimal::ONE,
            },
            "Head diameter, inches.",
        ),
        required("length", sixteenths(8, 16 * 12), "Length."),
        value(
            "coating",
            Kind::Choice(Coating::NAMES),
            "bright",
            COMMON,
            "Protection against corrosion.",
        ),
        value(
            "tool",
            Kind::Choice(NailTool::NAMES),
            "gun",
            COMMON,
            "What drives it.",
        ),
        value(
            "per_box",
            whole(1, 1_000_000),
            "2500",
            "from memory, varies by maker",
            "Nails in a box.",
        ),
        value("price", amount(), "50", INVENTED, "Price of a box."),
    ],
};

static STICK: Object = Object {
    name: "stick",
    tag: None,
    meaning: "Lumber for blocks and added studs, by the stick.",
    fields: &[
        required("name", name(), "Unique in the stock."),
        value(
            "thickness",
            sixteenths(8, 16 * 12),
            "1 1/2",
            COMMON,
            "The narrow side of the cross-section.",
        ),
        value(
            "depth",
            sixteenths(8, 16 * 24),
            "3 1/2",
            COMMON,
            "The wide side of the cross-section.",
        ),
        required(
            "length",
            Kind::Length {
                least: Length::feet(1),
                most: Length::feet(60),
            },
            "Length of the stick.",
        ),
        from(
            "price",
            amount(),
            "0.50",
            "a foot",
            INVENTED,
            "Price of one stick.",
        ),
    ],
};

static OFFCUT: Object = Object {
    name: "offcut",
    tag: None,
    meaning: "A piece left from an earlier job.",
    fields: &[
        required("sheet", name(), "Name of the sheet that it came from."),
        required("width", inches(1, 144), "Along the sheet's width."),
        required(
            "length",
            Kind::Length {
                least: Length::inches(1),
                most: Length::feet(40),
            },
            "Along the sheet's length.",
        ),
    ],
};
