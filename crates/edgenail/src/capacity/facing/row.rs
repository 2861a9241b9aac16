//! The row of a face, or what its tables list instead.

use super::input::{Facing, FacingEdition, FacingQuery};
use crate::capacity::fault::{fault, inches};
use crate::issue::{Code, Issue};
use crate::length::Length;
use crate::published::{FACING_ROWS, FacingRow, FacingTable};

/// The row that answers: every word as asked, studs at most as wide as it lists.
///
/// Where several rows differ in their studs, the narrowest that is wide enough.
pub(super) fn find(query: &FacingQuery) -> Result<&'static FacingRow, Vec<Issue>> {
    let facing = &query.facing;
    let mut best: Option<&'static FacingRow> = None;
    for row in &FACING_ROWS {
        let narrower = best.is_none_or(|best| row.stud_spacing < best.stud_spacing);
        if row.material == facing.material && in_edition(query, row) && is(row, facing) && narrower {
            best = Some(row);
        }
    }
    best.ok_or_else(|| vec![missing(query)])
}

/// Whether a row's table belongs to the edition that was asked.
fn in_edition(query: &FacingQuery, row: &FacingRow) -> bool {
    match query.edition {
        FacingEdition::Sdpws2008 | FacingEdition::Sdpws2015 => row.table != FacingTable::Cmr23063,
        FacingEdition::Cmr780 => row.table == FacingTable::Cmr23063,
        FacingEdition::Sdpws2021 => false,
    }
}

/// Whether a row of the material is the one that was asked for.
fn is(row: &FacingRow, facing: &Facing) -> bool {
    row.thickness == facing.thickness
        && row.fastener == facing.fastener
        && row.edge_spacing == facing.edge_spacing
        && row.blocked == facing.blocked
        && field_fits(row, facing)
        && studs_fit(row, facing)
}

/// A panel's row leaves the field to the standard, which was checked before.
fn field_fits(row: &FacingRow, facing: &Facing) -> bool {
    super::check::is_panel(row.material) || row.field_spacing == facing.field_spacing
}

fn studs_fit(row: &FacingRow, facing: &Facing) -> bool {
    row.stud_spacing.is_none_or(|studs| facing.stud_spacing <= studs)
}

/// The cell that was asked for and is not there, by the first of its words that no row has; the rest is listed.
fn missing(query: &FacingQuery) -> Issue {
    let facing = &query.facing;
    let mut rows: Vec<&FacingRow> = FACING_ROWS
        .iter()
        .filter(|row| row.material == facing.material)
        .collect();
    let name = named(facing);
    let absent = |field: &str, found: &str, allowed: &[String], rows: &[&FacingRow]| {
        let table = rows.first().map_or("", |row| row.table.name());
        fault(
            Code::UnlistedValue,
            field,
            found,
            &allowed.join(", "),
            &format!("{name}: no such cell of {table} was collected, and it may not be interpolated"),
        )
    };
    let editions = |row: &FacingRow| match row.table {
        FacingTable::Cmr23063 => "780 CMR".to_owned(),
        _ => "SDPWS 2008, SDPWS 2015".to_owned(),
    };
    if !rows.iter().any(|row| in_edition(query, row)) {
        let allowed = listed(&rows, editions);
        return absent("edition", query.edition.name(), &allowed, &rows);
    }
    let steps: [Narrowing; 6] = [
        (
            "facing/thickness",
            |row, facing| row.thickness == facing.thickness,
            |row| inches(row.thickness),
            |facing| inches(facing.thickness),
        ),
        (
            "facing/fastener",
            |row, facing| row.fastener == facing.fastener,
            |row| fastener(row.fastener),
            |facing| fastener(facing.fastener),
        ),
        (
            "facing/edge_spacing",
            |row, facing| row.edge_spacing == facing.edge_spacing,
            |row| inches(row.edge_spacing),
            |facing| inches(facing.edge_spacing),
        ),
        (
            "facing/field_spacing",
            field_fits,
            |row| row.field_spacing.map_or_else(|| "null".to_owned(), inches),
            |facing| facing.field_spacing.map_or_else(|| "null".to_owned(), inches),
        ),
        (
            "facing/blocked",
            |row, facing| row.blocked == facing.blocked,
            |row| row.blocked.to_string(),
            |facing| facing.blocked.to_string(),
        ),
        (
            "facing/stud_spacing",
            studs_fit,
            |row| row.stud_spacing.map_or_else(String::new, at_most),
            |facing| inches(facing.stud_spacing),
        ),
    ];
    for (field, fits, shown, found) in steps {
        let allowed = listed(&rows, shown);
        let left: Vec<&FacingRow> = rows.iter().copied().filter(|row| fits(row, facing)).collect();
        if left.is_empty() || field == "facing/stud_spacing" {
            return absent(field, &found(facing), &allowed, &rows);
        }
        rows = left;
    }
    absent("facing", &name, &[], &rows)
}

/// A field, whether a row has it as asked, and how both are shown.
type Narrowing = (
    &'static str,
    fn(&FacingRow, &Facing) -> bool,
    fn(&FacingRow) -> String,
    fn(&Facing) -> String,
);

/// What the rows list, each once, in their order.
fn listed(rows: &[&FacingRow], shown: impl Fn(&FacingRow) -> String) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for row in rows {
        let shown = shown(row);
        if !all.contains(&shown) {
            all.push(shown);
        }
    }
    all
}

fn fastener(fastener: Option<crate::published::Fastener>) -> String {
    fastener.map_or_else(|| "null".to_owned(), |fastener| fastener.name().to_owned())
}

fn at_most(length: Length) -> String {
    format!("at most {}", inches(length))
}

/// The cell in words.
fn named(facing: &Facing) -> String {
    let field = facing
        .field_spacing
        .map_or_else(String::new, |field| format!(", {} between", inches(field)));
    format!(
        "{} of {}, {}, {} along edges{field}, {}, studs {}",
        facing.material.name(),
        inches(facing.thickness),
        facing
            .fastener
            .map_or("no fastener said", crate::published::Fastener::name),
        inches(facing.edge_spacing),
        if facing.blocked { "blocked" } else { "unblocked" },
        inches(facing.stud_spacing)
    )
}

/// The column for wind was not collected.
pub(super) fn no_wind(row: &FacingRow) -> Issue {
    fault(
        Code::UnlistedValue,
        "load",
        "wind",
        "seismic",
        &format!(
            "the column of {} for wind was not collected: `{}`",
            row.table.name(),
            row.seismic.cell.key
        ),
    )
}

/// Allowable values have no factored ones.
pub(super) fn no_lrfd() -> Issue {
    fault(
        Code::UnlistedValue,
        "method",
        "lrfd",
        "asd",
        "780 CMR Table 2306.3 lists allowable values; no nominal ones were collected for staples",
    )
}
