//! Wind across a wall's sheathing, looked up in the table of the standard.

use super::assembly::{Edition, Method};
use super::bending::{SpanRating, StrengthAxis};
use super::derivation::Derivation;
use super::fault::{fault, inches};
use super::recalled::refuse_recalled;
use crate::issue::{Code, Issue};
use crate::length::{Length, Unit};
use crate::published::{CELLS, Cell, cell};
use serde::Serialize;

/// Sheathing across which wind blows, and the studs behind it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UniformLoadQuery {
    /// The edition.
    pub edition: Edition,
    /// How nominal becomes design.
    pub method: Method,
    /// What the wall is sheathed with.
    pub sheathing: UniformSheathing,
    /// The largest centre distance of the studs.
    pub stud_spacing: Length,
    /// Values that were recalled may be used: all of this table were.
    pub accept_unverified: bool,
}

/// Sheathing, as the table of uniform loads tells it apart.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum UniformSheathing {
    /// A rated wood structural panel.
    Panel {
        /// Its rating.
        rating: &'static SpanRating,
        /// Which way its strength axis runs.
        axis: StrengthAxis,
    },
    /// Another board.
    Board {
        /// Which.
        material: BoardMaterial,
        /// Its nominal thickness, as the table lists it.
        thickness: Length,
    },
}

/// A board that is no wood structural panel.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum BoardMaterial {
    /// Regular fiberboard sheathing.
    RegularFiberboard,
    /// Structural fiberboard sheathing.
    StructuralFiberboard,
    /// Hardboard siding.
    HardboardSiding,
    /// Hardboard panel siding.
    HardboardPanelSiding,
}

impl BoardMaterial {
    /// As the table prints it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::RegularFiberboard => "regular fiberboard",
            Self::StructuralFiberboard => "structural fiberboard",
            Self::HardboardSiding => "hardboard siding",
            Self::HardboardPanelSiding => "hardboard panel siding",
        }
    }
}

/// What sheathing resists of wind across it, in pounds per square foot.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct UniformLoad {
    /// The widest stud spacing that the row is listed for, in inches.
    pub listed_studs: f64,
    /// Nominal pressure.
    pub nominal: f64,
    /// Design pressure.
    pub design: f64,
}

const TABLE: &str = "out-of-plane wind nominal psf (2008/2015 Table 3.2.1)";
const FACTORS: (&str, &str) = ("out-of-plane factors", "ASD divisor|LRFD phi");

/// What the collection says of a cell that is not to be used before the printed table was seen.
const UNUSABLE: &str = "MISMATCH";

/// Looks up the pressure that sheathing resists across its face, with its steps. Studs between two listed spacings take the
/// wider one.
///
/// # Errors
/// A row that was not collected, which is named with those that were; a cell that disagrees with a recalculation; recalled
/// values that are not accepted.
///
/// ```
/// use edgenail::capacity::{Edition, Method, RATINGS, StrengthAxis, UniformLoadQuery, UniformSheathing, uniform_load};
/// use edgenail::Length;
/// let query = UniformLoadQuery {
///     edition: Edition::Sdpws2015, method: Method::Asd, stud_spacing: Length::inches(16), accept_unverified: true,
///     sheathing: UniformSheathing::Panel { rating: &RATINGS[1], axis: StrengthAxis::AcrossStuds },
/// };
/// let (found, _) = uniform_load(&query).map_err(|issues| issues[0].message.clone())?;
/// assert_eq!((found.nominal, found.design), (305.0, 305.0 / 1.6));
/// # Ok::<(), String>(())
/// ```
pub fn uniform_load(query: &UniformLoadQuery) -> Result<(UniformLoad, Derivation), Vec<Issue>> {
    if query.edition == Edition::Sdpws2021 {
        return Err(vec![fault(
            Code::UnlistedValue,
            "edition",
            query.edition.name(),
            "SDPWS 2008 or SDPWS 2015",
            "the tables of 2021 for wind across sheathing were not collected",
        )]);
    }
    let (studs, found) = row(query)?;
    if found.source.contains(UNUSABLE) {
        return Err(vec![fault(
            Code::UnlistedValue,
            "stud_spacing",
            &inches(query.stud_spacing),
            &listed(&query.sheathing, false),
            &format!(
                "the collected cell `{}` disagrees with a recalculation and is not to be used, accepted or not: {}",
                found.key, found.source
            ),
        )]);
    }
    let nominal = number(found, found.value)?;
    let mut steps = Derivation::default();
    let source = format!(
        "{} Table 3.2.1, {}; {}",
        query.edition.name(),
        found.key,
        found.source
    );
    steps
        .step("w_n", "tabulated nominal pressure across the sheathing", "w_n")
        .cell("w_n", nominal, "psf", &source, found.confidence)
        .rule(&source, found.confidence)
        .gives(nominal, "psf");
    let design = explain_design(query.method, nominal, &mut steps)?;
    refuse_recalled(&steps, query.accept_unverified)?;
    let values = UniformLoad {
        listed_studs: studs.as_inches(),
        nominal,
        design,
    };
    Ok((values, steps))
}

/// The step to the design pressure.
fn explain_design(method: Method, nominal: f64, steps: &mut Derivation) -> Result<f64, Vec<Issue>> {
    let factors = cell(FACTORS.0, FACTORS.1).ok_or_else(|| vec![unread(FACTORS.1)])?;
    let (divisor, resistance) = factors
        .value
        .split_once('|')
        .ok_or_else(|| vec![unread(factors.key)])?;
    let (symbol, meaning, formula, name, value) = match method {
        Method::Asd => (
            "w_ASD",
            "allowable pressure (ASD)",
            "w_n / Omega",
            "Omega",
            divisor,
        ),
        Method::Lrfd => (
            "w_LRFD",
            "factored pressure (LRFD)",
            "w_n * phi",
            "phi",
            resistance,
        ),
    };
    let factor = number(factors, value)?;
    let design = match method {
        Method::Asd => nominal / factor,
        Method::Lrfd => nominal * factor,
    };
    let source = format!("SDPWS 2008/2015 3.2.1; {}", factors.source);
    Ok(steps
        .step(symbol, meaning, formula)
        .from("w_n", nominal, "psf")
        .cell(name, factor, "", &source, factors.confidence)
        .rule(&source, factors.confidence)
        .gives(design, "psf"))
}

/// A number of a cell.
fn number(found: &Cell, text: &str) -> Result<f64, Vec<Issue>> {
    text.parse().map_err(|_| vec![unread(found.key)])
}

/// A collected cell is no number.
fn unread(key: &str) -> Issue {
    fault(
        Code::UnlistedValue,
        "edition",
        key,
        "a number",
        "the collected cell is no number",
    )
}

/// The row of the next listed stud spacing.
fn row(query: &UniformLoadQuery) -> Result<(Length, &'static Cell), Vec<Issue>> {
    let of_sheathing = || rows(&query.sheathing);
    if let UniformSheathing::Board { material, thickness } = query.sheathing
        && of_sheathing().next().is_none()
    {
        let mut all: Vec<&str> = Vec::new();
        for (first, _) in listed_cells() {
            let thickness = first.strip_prefix(material.name()).map(str::trim);
            all.extend(thickness.filter(|thickness| length(thickness).is_some() && !all.contains(thickness)));
        }
        return Err(vec![fault(
            Code::UnlistedValue,
            "sheathing/thickness",
            &inches(thickness),
            &all.join(", "),
            &format!(
                "the table has no {} of this thickness that was collected",
                material.name()
            ),
        )]);
    }
    let wide = of_sheathing().filter(|(studs, _)| query.stud_spacing <= *studs);
    let found = wide
        .min_by_key(|(studs, _)| *studs)
        .filter(|_| query.stud_spacing > Length::ZERO);
    found.ok_or_else(|| {
        vec![fault(
            Code::UnlistedValue,
            "stud_spacing",
            &inches(query.stud_spacing),
            &listed(&query.sheathing, true),
            "the table has no row for studs so far apart that was collected",
        )]
    })
}

/// The stud spacings that are listed for a sheathing, and of them those that may be used.
fn listed(sheathing: &UniformSheathing, all: bool) -> String {
    let usable = rows(sheathing).filter(|(_, found)| all || !found.source.contains(UNUSABLE));
    let shown: Vec<String> = usable.map(|(studs, _)| inches(studs)).collect();
    format!("at most {}", shown.join(", "))
}

/// Every cell of the table, with the first part of its key.
fn listed_cells() -> impl Iterator<Item = (&'static str, &'static Cell)> {
    let of_table = CELLS.iter().filter(|cell| cell.table == TABLE);
    of_table.filter_map(|cell| Some((cell.key.split(';').next()?, cell)))
}

/// The cells of a sheathing, each with its stud spacing.
fn rows(sheathing: &UniformSheathing) -> impl Iterator<Item = (Length, &'static Cell)> {
    listed_cells().filter_map(|(first, cell)| {
        let rest = cell.key.strip_prefix(first)?.strip_prefix(';')?;
        let rest = match sheathing {
            UniformSheathing::Panel { rating, axis } => {
                let row = first.strip_prefix("span rating/thickness=")?;
                row.strip_prefix(rating.name)?.strip_prefix(' ')?;
                let way = match axis {
                    StrengthAxis::AcrossStuds => "strength axis=perpendicular to studs;",
                    StrengthAxis::AlongStuds => "strength axis=parallel to studs;",
                };
                rest.strip_prefix(way)?
            }
            UniformSheathing::Board { material, thickness } => {
                let listed = first.strip_prefix(material.name())?.strip_prefix(' ')?;
                (length(listed)? == *thickness).then_some(rest)?
            }
        };
        Some((length(rest.strip_prefix("stud=")?)?, cell))
    })
}

fn length(text: &str) -> Option<Length> {
    Length::parse_exact(text, Unit::Inch).ok()
}
