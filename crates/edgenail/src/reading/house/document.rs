//! The whole document.

use super::demand::demand;
use super::practice::practice;
use super::rates::rates;
use super::stock::stock;
use super::wall::{corner, wall};
use crate::house::{DrawnIn, House};
use crate::length::Unit;
use crate::reading::Assumed;
use crate::reading::record::Record;

/// The house that this record describes, and what an earlier reading chose for it.
pub(in crate::reading) fn document(record: &Record<'_, '_>) -> (House, Vec<Assumed>) {
    // How bare numbers are read was settled before; here faults of these two fields are found.
    let unit: Option<Unit> = record.get("unit");
    let _: Option<u64> = record.maybe("length_unit", |record| record.get("per_inch"));
    let general = record.object("practice", |record| practice(record, None));
    let corners = record.list("corners", corner);
    let house = House {
        name: record.get("name"),
        walls: record.list("walls", |record| wall(record, &general)),
        corners,
        stock: record.object("stock", stock),
        building_order: record.get("building_order"),
        rates: record.object("rates", rates),
        drawn_in: record.or("drawn_in", || match unit {
            Some(Unit::Millimetre | Unit::Centimetre | Unit::Metre) => DrawnIn::Millimetres,
            Some(Unit::Inch | Unit::Foot) | None => DrawnIn::Inches,
        }),
        demand: record.maybe("demand", demand),
    };
    let assumed = record.list("assumed", |record| Assumed {
        path: record.get("path"),
        value: record.get("value"),
        why: record.get("why"),
    });
    (house, assumed)
}
