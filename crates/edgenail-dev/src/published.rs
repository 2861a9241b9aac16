//! The collected values of published standards, as rows of Rust.

use crate::file::Generated;
use edgenail::Length;
use edgenail::length::Unit;
use std::fmt::Write as _;
use std::path::Path;

const FOLDER: &str = "crates/edgenail/src/published";

/// The rows of both files.
pub(crate) fn rows(root: &Path) -> Result<Generated, String> {
    let mut text = String::from(
        "//! Values of published standards. Generated from the files beside it by `cargo dev generate`; do not edit.\n\n\
         use super::facing::{FacingMaterial, FacingRow, FacingTable, FacingValue, Fastener};\n\
         use super::{Cell, Confidence, Grade, PanelRow, Pennyweight, RowEdition};\n\
         use crate::decimal::Decimal;\nuse crate::length::Length;\n\n",
    );
    let panels = read(root, "sdpws_table_4_3a.csv")?;
    let _ = writeln!(
        text,
        "/// Nominal unit shears of wood structural panels, SDPWS Table 4.3A.\n#[rustfmt::skip]\npub static PANEL_ROWS: [PanelRow; {}] = [",
        panels.len()
    );
    for row in &panels {
        text.push_str(&panel(row)?);
    }
    text.push_str("];\n\n");
    let cells = read(root, "sdpws_other_tables.csv")?;
    let _ = writeln!(
        text,
        "/// Cells of the other tables.\n#[rustfmt::skip]\npub static CELLS: [Cell; {}] = [",
        cells.len()
    );
    for row in &cells {
        let [table, key, value, source, confidence] = row.as_slice() else {
            return Err(format!("five columns are wanted: {row:?}"));
        };
        let _ = writeln!(
            text,
            "    Cell {{ table: {table:?}, key: {key:?}, value: {value:?}, source: {source:?}, confidence: {} }},",
            self::confidence(confidence)?
        );
    }
    text.push_str("];\n\n");
    text.push_str(&crate::facings::rows(&cells)?);
    Ok(Generated {
        path: "crates/edgenail/src/published/rows.rs",
        text,
    })
}

/// The records of a file without its head.
fn read(root: &Path, name: &str) -> Result<Vec<Vec<String>>, String> {
    let path = root.join(FOLDER).join(name);
    let fault = |error: csv::Error| format!("{}: {error}", path.display());
    let mut reader = csv::Reader::from_path(&path).map_err(fault)?;
    reader
        .records()
        .map(|record| Ok(record.map_err(fault)?.iter().map(str::to_owned).collect()))
        .collect()
}

fn panel(row: &[String]) -> Result<String, String> {
    let [
        edition,
        grade,
        thickness,
        nail,
        penetration,
        edge,
        seismic,
        osb,
        plywood,
        wind,
        source,
        confidence,
    ] = row
    else {
        return Err(format!("twelve columns are wanted: {row:?}"));
    };
    let edition = match edition.as_str() {
        "2008/2015" => "To2015",
        "2021" => "Of2021",
        other => return Err(format!("unknown edition {other}")),
    };
    let grade = match grade.as_str() {
        "Structural I" => "StructuralI",
        "Sheathing" => "Sheathing",
        other => return Err(format!("unknown grade {other}")),
    };
    let nail = match nail.split(' ').next() {
        Some("6d") => "Six",
        Some("8d") => "Eight",
        Some("10d") => "Ten",
        other => return Err(format!("unknown nail {other:?}")),
    };
    let seismic = if seismic.is_empty() {
        "None".to_owned()
    } else {
        format!("Some({})", whole(seismic)?)
    };
    Ok(format!(
        "    PanelRow {{ edition: RowEdition::{edition}, grade: Grade::{grade}, thickness: {}, nail: Pennyweight::{nail}, \
         penetration: {}, edge_spacing: {}, seismic: {seismic}, wind: {}, stiffness_osb: {}, stiffness_plywood: {}, \
         source: {source:?}, confidence: {} }},\n",
        length(thickness)?,
        length(penetration)?,
        length(edge)?,
        whole(wind)?,
        tenths(osb)?,
        tenths(plywood)?,
        self::confidence(confidence)?
    ))
}

fn confidence(word: &str) -> Result<&'static str, String> {
    match word {
        "two-sources" => Ok("Confidence::TwoSources"),
        "source" => Ok("Confidence::Source"),
        "memory" => Ok("Confidence::Memory"),
        other => Err(format!("unknown confidence {other}")),
    }
}

pub(crate) fn length(text: &str) -> Result<String, String> {
    let length =
        Length::parse_exact(&text.replace('-', " "), Unit::Inch).map_err(|error| error.to_string())?;
    Ok(format!("Length::from_units({})", grouped(length.units())))
}

fn whole(text: &str) -> Result<u32, String> {
    text.parse().map_err(|error| format!("{text}: {error}"))
}

/// A number with at most one digit after the point.
pub(crate) fn tenths(text: &str) -> Result<String, String> {
    let (whole, fraction) = text.split_once('.').unwrap_or((text, "0"));
    if fraction.len() != 1 {
        return Err(format!("{text}: one digit after the point is wanted"));
    }
    let count: i32 = format!("{whole}{fraction}")
        .parse()
        .map_err(|error| format!("{text}: {error}"))?;
    Ok(format!("Decimal::tenths({count})"))
}

/// Digits in groups of three.
fn grouped(number: i64) -> String {
    let digits = number.to_string();
    let mut text = String::new();
    for (index, digit) in digits.chars().enumerate() {
        if index > 0 && (digits.len() - index).is_multiple_of(3) {
            text.push('_');
        }
        text.push(digit);
    }
    text
}
