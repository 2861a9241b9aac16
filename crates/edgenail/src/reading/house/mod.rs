//! The document's tree to the structures of a house, one file for each part.

mod band;
mod corner;
mod given;
mod measured;
mod opening;
mod practice;
mod rates;
mod section;
mod segment;
mod stock;
mod storey;
mod top;
mod wall;

use super::object::Object;
use crate::house::House;
use crate::length::Unit;

/// The house that a document describes.
pub(super) fn house(object: &Object<'_>) -> House {
    units(object);
    // Practice is read by itself once, so that its faults belong to no wall; walls then list what they assume of it.
    quietly(object, |object| {
        object.object_or_null("practice", practice::practice)
    });
    let shared = object
        .given("practice")
        .filter(|(_, node)| node.field("").is_none());
    House {
        name: object.text("name"),
        walls: object.list("walls", |wall| wall::wall(wall, shared)),
        corners: object.list("corners", corner::corner),
        stock: object.object("stock", stock::stock),
        building_order: object.texts("building_order"),
        rates: object.object("rates", rates::rates),
    }
}

/// Takes over how the document writes lengths.
fn units(object: &Object<'_>) {
    let counts_units = object
        .object_or_null("length_unit", |unit| unit.count("per_inch"))
        .is_some();
    // A document in units of the library has no use for another.
    let named = [
        Unit::Inch,
        Unit::Foot,
        Unit::Millimetre,
        Unit::Centimetre,
        Unit::Metre,
    ];
    let read = |object: &Object<'_>| object.choice("unit", named);
    let unit = if counts_units {
        quietly(object, read)
    } else {
        read(object)
    };
    let mut notes = object.notes.borrow_mut();
    (notes.unit, notes.counts_units) = (unit, counts_units);
}

/// Reads without listing what is assumed.
fn quietly<T>(object: &Object<'_>, read: impl Fn(&Object<'_>) -> T) -> T {
    let before = std::mem::replace(&mut object.notes.borrow_mut().quiet, true);
    let value = read(object);
    object.notes.borrow_mut().quiet = before;
    value
}
