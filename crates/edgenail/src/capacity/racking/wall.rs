//! Sheets that share the shear angle of one frame.

use super::check::faults;
use super::elastic::{Elastic, NailForce};
use super::input::RackingWall;
use super::limit::Limit;
use super::plastic::Plastic;
use crate::capacity::fault::fault;
use crate::issue::{Code, Issue};

/// What every result of the racking model is.
pub const NATURE: &str = "analysis, not code capacity";

/// One sheet of a racked wall. Forces are those along the top of the frame, in pounds.
#[derive(Clone, Debug, PartialEq)]
pub struct SheetRacking {
    /// The user's number for it.
    pub piece: u32,
    /// Its nails as linear springs.
    pub elastic: Elastic,
    /// Force for one inch of movement of the frame's top, in pounds per inch; 0 where its nails do not hold it.
    pub stiffness: f64,
    /// Its share of the wall's force while nails are linear.
    pub force: f64,
    /// What its nails do to it then, in the order of its nails.
    pub nails: Vec<NailForce>,
    /// The nail nearest to its strength, as a place in the list of its nails; none where nothing holds the sheet.
    pub governing: Option<usize>,
    /// Force over strength of that nail.
    pub worst: f64,
    /// The force on this sheet at which that nail reaches its strength.
    pub first_nail: f64,
    /// The field of forces along plates and posts; its moment over the height is `plastic_force`.
    pub plastic: Plastic,
    /// The force that the sheet carries at least where nails keep their strength: a statically admissible field.
    pub plastic_force: f64,
    /// The largest force at which forces of all its nails can be in equilibrium: at least this.
    pub limit_force: f64,
    /// The largest force at which forces of all its nails can be in equilibrium: at most this.
    pub limit_force_most: f64,
    /// The field that proves `limit_force`, in the order of its nails.
    pub limit_nails: Vec<NailForce>,
}

/// A racked wall. Forces are those along the top of the frame, in pounds.
#[derive(Clone, Debug, PartialEq)]
pub struct Racking {
    /// What it is: [`NATURE`].
    pub nature: &'static str,
    /// Its sheets, in the order given.
    pub sheets: Vec<SheetRacking>,
    /// Force for one inch of movement of its top while nails are linear, in pounds per inch. Only nails give: posts,
    /// sheets and hold-downs are stiff here.
    pub stiffness: f64,
    /// Movement of its top under its force, in inches.
    pub movement: f64,
    /// The sheet with the nail nearest to its strength, as a place in the list.
    pub governing: usize,
    /// Force over strength of that nail.
    pub worst: f64,
    /// The force at which that nail reaches its strength.
    pub first_nail: f64,
    /// The force that the wall carries at least where nails keep their strength and its ends are held down.
    pub plastic_force: f64,
    /// The largest force at which forces of all nails can be in equilibrium: at least this.
    pub limit_force: f64,
}

/// Racks a wall, nail by nail.
///
/// # Errors
/// Every field that no wall has; and where no sheet's nails hold it, that nothing resists.
///
/// ```
/// use edgenail::Length;
/// use edgenail::capacity::{RackingNail, RackingSheet, RackingWall, rack};
/// use edgenail::geometry::{Point, Rect};
/// // A 4 x 8 ft sheet with nails of 100 lb at 6 in. along its outline.
/// let outline = Rect::new(Length::ZERO, Length::ZERO, Length::feet(4), Length::feet(8));
/// let mut places: Vec<(i64, i64)> = (0..=8).flat_map(|x| [(6 * x, 0), (6 * x, 96)]).collect();
/// places.extend((1..16).flat_map(|y| [(0, 6 * y), (48, 6 * y)]));
/// let nail = |(x, y): (i64, i64)| RackingNail {
///     at: Point::new(Length::inches(x), Length::inches(y)),
///     strength: 100.0,
///     stiffness: 5000.0,
///     edge: true,
/// };
/// let nails = places.into_iter().map(nail).collect();
/// let wall = RackingWall { height: Length::feet(8), sheets: vec![RackingSheet { piece: 0, outline, nails }], force: 500.0 };
/// let racked = rack(&wall).unwrap();
/// // Shear flow: strength over spacing times length, 100 / 6 * 48 lb.
/// assert!((racked.plastic_force - 800.0).abs() < 1e-6);
/// assert!(racked.first_nail < racked.plastic_force && racked.worst > 0.6);
/// assert_eq!(racked.nature, "analysis, not code capacity");
/// ```
pub fn rack(wall: &RackingWall) -> Result<Racking, Vec<Issue>> {
    let issues = faults(wall);
    if !issues.is_empty() {
        return Err(issues);
    }
    let height = wall.height.as_inches();
    let elastic: Vec<Elastic> = wall.sheets.iter().map(Elastic::of).collect();
    let rigidity: f64 = elastic.iter().map(Elastic::rigidity).sum();
    if rigidity <= 0.0 {
        return Err(vec![fault(
            Code::NothingResists,
            "sheets",
            &wall.sheets.len().to_string(),
            "a sheet with nails that are not all on one level or plumb line",
            "no sheet is held by its nails",
        )]);
    }
    let sheets: Vec<SheetRacking> = wall
        .sheets
        .iter()
        .zip(elastic)
        .map(|(sheet, elastic)| {
            let share = elastic.rigidity() / rigidity;
            let force = wall.force * share;
            let unit = elastic.forces(sheet, height);
            let ratios = unit
                .iter()
                .zip(&sheet.nails)
                .map(|(force, nail)| force.size() / nail.strength);
            let mut worst: Option<(usize, f64)> = None;
            for (number, ratio) in ratios.enumerate() {
                if worst.is_none_or(|(_, most)| ratio > most) {
                    worst = Some((number, ratio));
                }
            }
            let worst = worst.filter(|(_, ratio)| *ratio > 0.0);
            let plastic = Plastic::of(sheet);
            let limit = Limit::of(sheet);
            SheetRacking {
                piece: sheet.piece,
                stiffness: elastic.rigidity() / (height * height),
                force,
                nails: unit
                    .iter()
                    .map(|nail| NailForce {
                        along_plates: nail.along_plates * force,
                        along_posts: nail.along_posts * force,
                    })
                    .collect(),
                governing: worst.map(|(number, _)| number),
                worst: worst.map_or(0.0, |(_, ratio)| ratio * force),
                first_nail: worst.map_or(0.0, |(_, ratio)| 1.0 / ratio),
                elastic,
                plastic_force: plastic.moment / height,
                plastic,
                limit_force: limit.moment / height,
                limit_force_most: limit.work / height,
                limit_nails: limit.forces,
            }
        })
        .collect();
    let stiffness: f64 = sheets.iter().map(|sheet| sheet.stiffness).sum();
    // The wall's force at which a sheet's first nail is at its strength: the sheets keep their shares.
    let (mut governing, mut first_nail) = (0, f64::INFINITY);
    for (number, sheet) in sheets
        .iter()
        .enumerate()
        .filter(|(_, sheet)| sheet.stiffness > 0.0)
    {
        let reached = sheet.first_nail * stiffness / sheet.stiffness;
        if reached < first_nail {
            (governing, first_nail) = (number, reached);
        }
    }
    Ok(Racking {
        nature: NATURE,
        stiffness,
        movement: wall.force / stiffness,
        governing,
        worst: wall.force / first_nail,
        first_nail,
        plastic_force: sheets.iter().map(|sheet| sheet.plastic_force).sum(),
        limit_force: sheets.iter().map(|sheet| sheet.limit_force).sum(),
        sheets,
    })
}
