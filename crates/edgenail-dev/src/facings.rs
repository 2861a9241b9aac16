//! The collected cells of faces that are no wood structural panels nailed to the framing, as rows of Rust.

use crate::published::{length, tenths};
use std::fmt::Write as _;

const SIDING: [&str; 3] = [
    "4.3A 2008/2015 vs plf",
    "4.3A 2008/2015 vw plf",
    "4.3A 2008/2015 Ga kips/in",
];
const BOARDS: &str = "4.3A 2008/2015 vs|Ga|vw";
const OVER_GYPSUM: &str = "ASD seismic plf panels over 1/2 or 5/8 gypsum (SDPWS 4.3B nominal = 2x)";
const STAPLED: &str = "780 CMR Table 2306.3 ASD staples direct to framing plf";
const STAPLED_OVER_GYPSUM: &str = "780 CMR Table 2306.3 ASD staples over gypsum plf";
const GYPSUM: [&str; 2] = [
    "4.3C 2008/2015 v_s = v_w nominal plf",
    "4.3C 2008/2015 Ga kips/in",
];

/// A cell's place among all, with what of it a row needs.
struct Found<'c> {
    place: usize,
    key: &'c str,
    value: &'c str,
}

/// Everything that a row is made of, in the words of Rust.
struct Row<'c> {
    table: &'static str,
    material: &'static str,
    thickness: &'c str,
    fastener: Option<&'static str>,
    edge: &'c str,
    field: Option<&'c str>,
    studs: Option<&'c str>,
    blocked: bool,
    seismic: (&'c str, usize),
    wind: Option<(&'c str, usize)>,
    stiffness: Option<(&'c str, usize)>,
}

/// The rows, as a static of Rust.
pub(crate) fn rows(cells: &[Vec<String>]) -> Result<String, String> {
    let mut all = Vec::new();
    for cell in of(cells, SIDING[0]) {
        all.push(siding(cells, &cell)?);
    }
    for cell in of(cells, BOARDS) {
        all.push(board(&cell)?);
    }
    for (table, stapled, over) in [
        (OVER_GYPSUM, false, true),
        (STAPLED, true, false),
        (STAPLED_OVER_GYPSUM, true, true),
    ] {
        for cell in of(cells, table) {
            panels(&cell, stapled, over, &mut all)?;
        }
    }
    for cell in of(cells, GYPSUM[0]) {
        all.push(gypsum(cells, &cell)?);
    }
    let mut text = format!(
        "/// Rows of faces that are no wood structural panels nailed to the framing.\n#[rustfmt::skip]\n\
         pub static FACING_ROWS: [FacingRow; {}] = [\n",
        all.len()
    );
    for row in &all {
        let _ = writeln!(text, "    {},", written(row)?);
    }
    text.push_str("];\n");
    Ok(text)
}

/// The cells of a table.
fn of<'c>(cells: &'c [Vec<String>], table: &str) -> Vec<Found<'c>> {
    let places = cells.iter().enumerate();
    places
        .filter(|(_, cell)| cell.first().is_some_and(|name| name == table))
        .filter_map(|(place, cell)| {
            Some(Found {
                place,
                key: cell.get(1)?,
                value: cell.get(2)?,
            })
        })
        .collect()
}

/// The cell of a table with this key.
fn other<'c>(cells: &'c [Vec<String>], table: &str, key: &str) -> Option<(&'c str, usize)> {
    let found = of(cells, table).into_iter().find(|cell| cell.key == key)?;
    Some((found.value, found.place))
}

/// What a key says after `name=`.
fn said<'k>(key: &'k str, name: &str) -> Result<&'k str, String> {
    key.split(';')
        .find_map(|part| part.strip_prefix(name)?.strip_prefix('='))
        .ok_or_else(|| format!("{key}: no {name}"))
}

fn siding<'c>(cells: &'c [Vec<String>], cell: &Found<'c>) -> Result<Row<'c>, String> {
    if said(cell.key, "material")? != "plywood siding" {
        return Err(format!("{}: plywood siding is wanted", cell.key));
    }
    Ok(Row {
        table: "Sdpws43A",
        material: "PlywoodSiding",
        thickness: said(cell.key, "thickness")?,
        fastener: Some(nail(said(cell.key, "nail")?)?),
        edge: said(cell.key, "edge")?,
        field: None,
        studs: None,
        blocked: true,
        seismic: (cell.value, cell.place),
        wind: other(cells, SIDING[1], cell.key),
        stiffness: other(cells, SIDING[2], cell.key),
    })
}

fn board<'c>(cell: &Found<'c>) -> Result<Row<'c>, String> {
    let [seismic, stiffness, wind] = cell.value.split('|').collect::<Vec<_>>()[..] else {
        return Err(format!("{}: three values are wanted", cell.key));
    };
    let material = match said(cell.key, "material")? {
        "particleboard M-S/M-2" => "Particleboard",
        "structural fiberboard" => "StructuralFiberboard",
        other => return Err(format!("unknown material {other}")),
    };
    Ok(Row {
        table: "Sdpws43A",
        material,
        thickness: said(cell.key, "thickness")?,
        fastener: Some(nail(said(cell.key, "nail")?)?),
        edge: said(cell.key, "edge")?,
        field: None,
        studs: None,
        blocked: true,
        seismic: (seismic, cell.place),
        wind: Some((wind, cell.place)),
        stiffness: Some((stiffness, cell.place)),
    })
}

/// A row for each thickness that the cell lists.
fn panels<'c>(cell: &Found<'c>, stapled: bool, over: bool, all: &mut Vec<Row<'c>>) -> Result<(), String> {
    let material = match (said(cell.key, "grade")?, stapled, over) {
        ("Structural I", false, true) => "StructuralIOverGypsum",
        ("Sheathing", false, true) => "SheathingOverGypsum",
        ("Plywood siding", false, true) => "PlywoodSidingOverGypsum",
        ("Structural I", true, false) => "StapledStructuralI",
        ("Structural I", true, true) => "StapledStructuralIOverGypsum",
        other => return Err(format!("unknown panels {other:?}")),
    };
    let fastener = if stapled {
        if !said(cell.key, "staple")?.starts_with("16 ga ") {
            return Err(format!("{}: a staple of 16 gauge is wanted", cell.key));
        }
        "Staple16Gauge"
    } else {
        nail(said(cell.key, "nail")?)?
    };
    for thickness in said(cell.key, "thickness")?.split(", ") {
        all.push(Row {
            table: if stapled { "Cmr23063" } else { "Sdpws43B" },
            material,
            thickness,
            fastener: Some(fastener),
            edge: said(cell.key, "edge")?,
            field: None,
            studs: None,
            blocked: true,
            seismic: (cell.value, cell.place),
            wind: None,
            stiffness: None,
        });
    }
    Ok(())
}

/// A row of the table of gypsum and plaster, whose keys are words: material, fastener, spacings, studs, blocked or not.
fn gypsum<'c>(cells: &'c [Vec<String>], cell: &Found<'c>) -> Result<Row<'c>, String> {
    let (first, rest) = cell
        .key
        .split_once(';')
        .ok_or("a key of several parts is wanted")?;
    let (thickness, material) = match first {
        "1/2 x 2 ft x 8 ft gypsum sheathing" => ("1/2", "GypsumSheathing2Ft"),
        "1/2 x 4 ft gypsum sheathing" => ("1/2", "GypsumSheathing4Ft"),
        "3/8 gypsum lath + 1/2 plaster" => ("3/8", "GypsumLathAndPlaster"),
        "7/8 portland cement plaster on wire lath" => ("7/8", "PortlandCementPlaster"),
        "5/8 gypsum wallboard two-ply" => ("5/8", "TwoPlyGypsumWallboard"),
        other => match other.split_once(' ') {
            Some((thickness, "gypsum wallboard")) => (thickness, "GypsumWallboard"),
            _ => return Err(format!("unknown material {other}")),
        },
    };
    let mut row = Row {
        table: "Sdpws43C",
        material,
        thickness,
        fastener: None,
        edge: "",
        field: None,
        studs: None,
        blocked: cell.key.ends_with(";blocked"),
        seismic: (cell.value, cell.place),
        wind: Some((cell.value, cell.place)),
        stiffness: other(cells, GYPSUM[1], cell.key),
    };
    for part in rest.split(';') {
        if let Some(edge) = part.strip_prefix("edge ") {
            row.edge = edge;
        } else if part == "stud 24 (S19 says 16)" {
            // Of two readings the one that was seen, which is the safer too.
            row.studs = Some("16");
        } else if let Some(studs) = part.strip_prefix("stud ") {
            row.studs = Some(studs);
        } else if part == "base 6d cooler at 9, face 8d cooler at 7" {
            (row.fastener, row.edge) = (Some("Cooler8dOver6d"), "7");
        } else if let Some((edge, field)) = part.split_once('/').filter(|_| spacings(part)) {
            row.edge = edge.trim_end_matches(" edge");
            row.field = Some(field.trim_end_matches(" field"));
        } else if part != "blocked" && part != "unblocked" {
            row.fastener = Some(nail(part)?);
        }
    }
    Ok(row)
}

/// Whether a part of a key is two spacings, such as `8/12` or `8 edge/12 field`.
fn spacings(part: &str) -> bool {
    part.starts_with(|mark: char| mark.is_ascii_digit()) && (part.ends_with(" field") || part.len() <= 4)
}

/// The fastener of these words.
fn nail(words: &str) -> Result<&'static str, String> {
    let known = [
        ("6d galvanized casing", "Casing6d"),
        ("8d galvanized casing", "Casing8d"),
        ("10d galvanized casing", "Casing10d"),
        ("6d common or galvanized box", "Common6d"),
        ("8d common or galvanized box", "Common8d"),
        ("10d common or galvanized box", "Common10d"),
        ("11 ga galvanized roofing 0.120x1-1/2", "Roofing11Gauge"),
        ("11 ga galvanized roofing 0.120x1-3/4", "Roofing11Gauge"),
        ("0.120x1-3/4 roofing nail", "Roofing11Gauge"),
        ("0.092x1-1/8 nail", "LathNail"),
        ("0.120x1-1/2, 7/16 head", "WireLathNail"),
        ("5d cooler", "Cooler5d"),
        ("5d cooler 0.086x1-5/8 or equivalent", "Cooler5d"),
        ("6d cooler", "Cooler6d"),
        ("6d cooler 0.092x1-7/8", "Cooler6d"),
        ("No.6 screw", "ScrewNo6"),
        ("No.6 type S or W screw 1-1/4", "ScrewNo6"),
        ("8d", "Common8d"),
        ("10d", "Common10d"),
    ];
    let found = known.iter().find(|(name, _)| *name == words);
    found
        .map(|(_, variant)| *variant)
        .ok_or_else(|| format!("unknown fastener {words}"))
}

fn written(row: &Row<'_>) -> Result<String, String> {
    let maybe =
        |value: Option<String>| value.map_or_else(|| "None".to_owned(), |value| format!("Some({value})"));
    let spacing = |text: Option<&str>| text.map(length).transpose().map(maybe);
    let value = |(text, place): (&str, usize)| {
        Ok::<String, String>(format!(
            "FacingValue {{ value: {}, cell: &CELLS[{place}] }}",
            tenths(text)?
        ))
    };
    Ok(format!(
        "FacingRow {{ table: FacingTable::{}, material: FacingMaterial::{}, thickness: {}, fastener: {}, edge_spacing: {}, \
         field_spacing: {}, stud_spacing: {}, blocked: {}, seismic: {}, wind: {}, stiffness: {} }}",
        row.table,
        row.material,
        length(row.thickness)?,
        maybe(row.fastener.map(|fastener| format!("Fastener::{fastener}"))),
        length(row.edge)?,
        spacing(row.field)?,
        spacing(row.studs)?,
        row.blocked,
        value(row.seismic)?,
        maybe(row.wind.map(value).transpose()?),
        maybe(row.stiffness.map(value).transpose()?),
    ))
}
