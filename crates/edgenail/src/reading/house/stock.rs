//! The stock.

use crate::house::{Coating, Nail, NailTool, Offcut, Sheet, Stick, Stock, StrengthAxis};
use crate::reading::object::Object;

/// The words for coatings, in the order of the table of fields.
pub(super) const COATINGS: [Coating; 3] = [Coating::Bright, Coating::HotDipped, Coating::Stainless];

/// The stock.
pub(super) fn stock(object: &Object<'_>) -> Stock {
    Stock {
        sheets: object.list("sheets", sheet),
        nails: object.list("nails", nail),
        sticks: object.list("sticks", stick),
        offcuts: object.list("offcuts", offcut),
    }
}

fn sheet(object: &Object<'_>) -> Sheet {
    Sheet {
        name: object.text("name"),
        width: object.length("width"),
        length: object.length("length"),
        category: object.text("category"),
        grade: object.text("grade"),
        span_rating: object.text("span_rating"),
        strength_axis: object.choice("strength_axis", [StrengthAxis::Length, StrengthAxis::Width]),
        faces_alike: object.flag("faces_alike"),
        may_turn: object.flag("may_turn"),
        gap: object.length_or_null("gap"),
        price: object.amount("price"),
        on_hand: object.count_or_null("on_hand"),
        pounds_per_square_foot: object.decimal("pounds_per_square_foot"),
        unit_count: object.count("unit_count"),
    }
}

fn nail(object: &Object<'_>) -> Nail {
    Nail {
        name: object.text("name"),
        shank: object.decimal("shank"),
        head: object.decimal("head"),
        length: object.length("length"),
        coating: object.choice("coating", COATINGS),
        tool: object.choice("tool", [NailTool::Gun, NailTool::Hand]),
        per_box: object.count("per_box"),
        price: object.amount("price"),
    }
}

fn stick(object: &Object<'_>) -> Stick {
    Stick {
        name: object.text("name"),
        thickness: object.length("thickness"),
        depth: object.length("depth"),
        length: object.length("length"),
        price: object.amount("price"),
    }
}

fn offcut(object: &Object<'_>) -> Offcut {
    Offcut {
        sheet: object.text("sheet"),
        width: object.length("width"),
        length: object.length("length"),
    }
}
