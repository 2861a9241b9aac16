//! The tables of a plan: one definition each, for JSON, CSV, C and Python.

mod blocks;
mod edges;
mod findings;
mod members;
mod nails;
mod panels;

use super::WallPlan;
use crate::house::House;
use crate::length::Length;
use crate::table::{Field, LENGTH_UNIT, Read, Table};
use serde::Serialize;

pub(super) use findings::findings;

/// The tables of the walls, in the order in which they are listed everywhere.
pub(super) fn of_walls(house: &House, walls: &[WallPlan]) -> Vec<Table> {
    vec![
        panels::table(house, walls),
        edges::table(walls),
        members::table(walls),
        blocks::table(house, walls),
        nails::rows(house, walls),
    ]
}

/// Every single nail: the rows expanded.
pub(super) fn nails(house: &House, walls: &[WallPlan]) -> Table {
    nails::nails(house, walls)
}

/// One thing of one wall.
pub(super) struct Row<'a, T: ?Sized> {
    pub house: &'a House,
    pub wall: &'a WallPlan,
    pub item: &'a T,
}

/// The columns that every row of a wall begins with.
fn wall<'a, T>() -> Field<Row<'a, T>> {
    Field { name: "wall", unit: None, meaning: "Name of the wall.", read: Read::Text(|row| row.wall.name.clone()) }
}

fn length<T>(name: &'static str, meaning: &'static str, read: fn(&T) -> i64) -> Field<T> {
    Field { name, unit: Some(LENGTH_UNIT), meaning, read: Read::Int(read) }
}

fn count<T>(name: &'static str, meaning: &'static str, read: fn(&T) -> i64) -> Field<T> {
    Field { name, unit: None, meaning, read: Read::Int(read) }
}

fn text<T>(name: &'static str, meaning: &'static str, read: fn(&T) -> String) -> Field<T> {
    Field { name, unit: None, meaning, read: Read::Text(read) }
}

/// The name of an enumeration's value, as it stands in JSON.
fn named(value: &impl Serialize) -> String {
    match serde_json::to_value(value) {
        Ok(serde_json::Value::String(name)) => name,
        Ok(serde_json::Value::Object(fields)) => {
            fields.get("kind").and_then(|kind| kind.as_str()).unwrap_or_default().to_owned()
        }
        _ => String::new(),
    }
}

/// A length that may be absent; −1 where it is.
fn or_none(length: Option<Length>) -> i64 {
    length.map_or(-1, Length::units)
}

/// An index that may be absent; −1 where it is.
fn index_or_none(index: Option<u32>) -> i64 {
    index.map_or(-1, i64::from)
}
