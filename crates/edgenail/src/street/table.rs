//! Deliveries as a table.

use super::Delivery;
use crate::table::{Field, Schema, Table};

pub(super) fn table(deliveries: &[Delivery]) -> Table {
    let schema = Schema {
        name: "deliveries",
        meaning: "Sheets of one kind for one house of a street.",
        fields: vec![
            Field::int(
                "house",
                "Place of the house in the street, from 0.",
                |row: &Delivery| row.house.into(),
            ),
            Field::text("name", "Name of the house.", |row| row.name.as_str().into()),
            Field::text("sheet", "Name of the sheet.", |row| {
                row.sheet_name.as_str().into()
            }),
            Field::int("alone", "New sheets if the house is cut alone.", |row| {
                row.alone.into()
            }),
            Field::int(
                "delivered",
                "New sheets delivered to it when the street is cut together.",
                |row| row.delivered.into(),
            ),
            Field::int("units", "Whole units among these.", |row| row.units.into()),
            Field::int("loose", "Sheets beyond whole units.", |row| row.loose.into()),
        ],
    };
    schema.table(deliveries)
}
