//! What is asked for is in stock.

use super::{Place, names};
use crate::house::{GivenLayout, Stock, Wall};
use crate::issue::Code;
use crate::wording::wording;

pub(super) fn check(place: &Place<'_>, stock: &Stock) {
    names(
        place,
        stock.sheets.iter().map(|sheet| sheet.name.as_str()),
        "/stock/sheets",
        "/name",
    );
    names(
        place,
        stock.nails.iter().map(|nail| nail.name.as_str()),
        "/stock/nails",
        "/name",
    );
    names(
        place,
        stock.sticks.iter().map(|stick| stick.name.as_str()),
        "/stock/sticks",
        "/name",
    );
    for (index, offcut) in stock.offcuts.iter().enumerate() {
        let path = format!("/stock/offcuts/{index}");
        if !place.sound("/stock/sheets") || !place.sound(&path) {
            continue;
        }
        match stock.sheets.iter().find(|sheet| sheet.name == offcut.sheet) {
            None => place.fault(
                &format!("{path}/sheet"),
                Code::UnknownName,
                &offcut.sheet,
                "the name of a sheet in stock",
            ),
            Some(sheet) if offcut.width > sheet.width || offcut.length > sheet.length => {
                let found = wording![offcut.width, " × ", offcut.length];
                place.fault(
                    &path,
                    Code::OffcutTooLarge,
                    found,
                    wording!["at most ", sheet.width, " × ", sheet.length],
                );
            }
            Some(_) => {}
        }
    }
}

pub(super) fn check_wall(place: &Place<'_>, wall: &Wall, stock: &Stock) {
    let whole = Place { path: "", ..*place };
    let category = |field: &str, category: &str| {
        let sound = place.sound(field) && whole.sound("/stock/sheets");
        if sound && !stock.sheets.iter().any(|sheet| sheet.category == category) {
            place.fault(
                field,
                Code::NotInStock,
                category,
                "the category of a sheet in stock",
            );
        }
    };
    let nail = |field: &str, name: Option<&String>| {
        if let Some(name) = name
            && place.sound(field)
            && whole.sound("/stock/nails")
            && !stock.nails.iter().any(|nail| nail.name == *name)
        {
            place.fault(field, Code::UnknownName, name, "the name of a nail in stock");
        }
    };
    let assembly = &wall.practice.assembly;
    if whole.sound("/practice") {
        category("/practice/assembly/category", &assembly.category);
        nail("/practice/assembly/nail", assembly.nail.as_ref());
        nail("/practice/assembly/treated_nail", assembly.treated_nail.as_ref());
        if let Some(name) = &wall.practice.block_stick
            && place.sound("/practice/block_stick")
            && whole.sound("/stock/sticks")
            && !stock.sticks.iter().any(|stick| stick.name == *name)
        {
            place.fault(
                "/practice/block_stick",
                Code::UnknownName,
                name,
                "the name of a stick in stock",
            );
        }
    }
    for (index, segment) in wall.segments.iter().enumerate() {
        if let Some(wanted) = &segment.category {
            category(&format!("/segments/{index}/category"), wanted);
        }
        nail(&format!("/segments/{index}/nail"), segment.nail.as_ref());
    }
    let sheets: Vec<(String, &str)> = match &wall.given_layout {
        None => Vec::new(),
        Some(GivenLayout::Bands { bands }) => bands
            .iter()
            .enumerate()
            .map(|(i, band)| (format!("bands/{i}"), band.sheet.as_str()))
            .collect(),
        Some(GivenLayout::Pieces { pieces }) => pieces
            .iter()
            .enumerate()
            .map(|(i, piece)| (format!("pieces/{i}"), piece.sheet.as_str()))
            .collect(),
    };
    for (field, name) in sheets {
        let field = format!("/given_layout/{field}/sheet");
        let sound = place.sound(&field) && whole.sound("/stock/sheets");
        if sound && !stock.sheets.iter().any(|sheet| sheet.name == name) {
            place.fault(&field, Code::UnknownName, name, "the name of a sheet in stock");
        }
    }
}
