//! What can be bought or is on hand.

use crate::amount::Amount;
use crate::house::{Nail, Offcut, Sheet, Stick, Stock};
use crate::length::Length;
use crate::reading::record::Record;

pub(in crate::reading) fn stock(record: &Record<'_, '_>) -> Stock {
    Stock {
        sheets: record.list("sheets", sheet),
        nails: record.list("nails", nail),
        sticks: record.list("sticks", stick),
        offcuts: record.list("offcuts", |record| Offcut {
            sheet: record.get("sheet"),
            width: record.get("width"),
            length: record.get("length"),
        }),
    }
}

fn sheet(record: &Record<'_, '_>) -> Sheet {
    let width: Length = record.get("width");
    let length: Length = record.get("length");
    let area = i128::from(width.units()) * i128::from(length.units());
    let foot = i128::from(Length::feet(1).units());
    Sheet {
        name: record.get("name"),
        width,
        length,
        category: record.get("category"),
        grade: record.get("grade"),
        span_rating: record.get("span_rating"),
        strength_axis: record.get("strength_axis"),
        plies: record.get("plies"),
        faces_alike: record.get("faces_alike"),
        may_turn: record.get("may_turn"),
        gap: record.get("gap"),
        price: record.from("price", |rate: Amount| {
            rate.scaled(area, foot * foot).unwrap_or(rate)
        }),
        on_hand: record.get("on_hand"),
        pounds_per_square_foot: record.get("pounds_per_square_foot"),
        unit_count: record.get("unit_count"),
    }
}

fn nail(record: &Record<'_, '_>) -> Nail {
    Nail {
        name: record.get("name"),
        shank: record.get("shank"),
        head: record.get("head"),
        length: record.get("length"),
        coating: record.get("coating"),
        tool: record.get("tool"),
        per_box: record.get("per_box"),
        price: record.get("price"),
    }
}

fn stick(record: &Record<'_, '_>) -> Stick {
    let length: Length = record.get("length");
    let (units, foot) = (i128::from(length.units()), i128::from(Length::feet(1).units()));
    Stick {
        name: record.get("name"),
        thickness: record.get("thickness"),
        depth: record.get("depth"),
        length,
        price: record.from("price", |rate: Amount| rate.scaled(units, foot).unwrap_or(rate)),
    }
}
