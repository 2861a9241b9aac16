//! The plan as one JSON document.

use super::demand::ResistanceDocument;
use super::{Plan, WallPlan};
use crate::amount::Amount;
use crate::caution::CAUTION;
use crate::cutting::{Bounds, CutPlan, CutSheet, Leftover, Uncut, offcuts_left};
use crate::house::{House, Offcut, Stock};
use crate::joint::HouseCost;
use crate::length::Length;
use crate::price::Cost;
use crate::proof::Proof;
use crate::reading::Assumed;
use crate::report::{Results, Tables};
use crate::search::Alternative;
use crate::start::Start;
use crate::steps::Step;
use crate::table::Table;
use serde::Serialize;

/// The version of the document; a reader refuses a major number that it does not know.
#[derive(Serialize)]
struct Version {
    major: u32,
    minor: u32,
}

/// The unit of every length.
#[derive(Serialize)]
struct LengthUnit {
    per_inch: i64,
}

const UNIT: LengthUnit = LengthUnit {
    per_inch: Length::PER_INCH,
};

/// A house that can be planned again: it says its unit, and what was chosen for it.
#[derive(Serialize)]
struct Understood<'a> {
    length_unit: LengthUnit,
    #[serde(flatten)]
    house: &'a House,
    assumed: &'a [Assumed],
}

#[derive(Serialize)]
struct WallDocument<'a> {
    name: &'a str,
    given: bool,
    reach: Length,
    levels: Vec<Length>,
    start: Option<&'a Start>,
    steps: &'a [Step],
    cost: &'a Cost,
    bound: Amount,
    proof: Option<&'a Proof>,
    effort: u64,
    layouts_built: u64,
    alternatives: &'a [Alternative],
}

#[derive(Serialize)]
struct CuttingDocument<'a> {
    bounds: &'a Bounds,
    proof: &'a Proof,
    sheets: &'a [CutSheet],
    leftovers: &'a [Leftover],
    /// As a stock lists them, for the next house.
    offcuts_left: Vec<Offcut>,
    uncut: &'a [Uncut],
}

#[derive(Serialize)]
struct Document<'a> {
    version: Version,
    length_unit: LengthUnit,
    caution: &'static str,
    house: Understood<'a>,
    walls: Vec<WallDocument<'a>>,
    cost: &'a HouseCost,
    cutting: CuttingDocument<'a>,
    capacity: Option<ResistanceDocument<'a>>,
    tables: Tables<'a>,
}

/// The document. Writing plain data into memory has no way to fail.
pub(super) fn write(plan: &Plan) -> String {
    plan.results(|results| text(plan, results))
}

fn text(plan: &Plan, results: &Results<'_>) -> String {
    let document = Document {
        version: Version { major: 1, minor: 0 },
        length_unit: UNIT,
        caution: CAUTION,
        house: Understood {
            length_unit: UNIT,
            house: &plan.house,
            assumed: &plan.assumed,
        },
        walls: plan.walls.iter().map(wall).collect(),
        cost: &plan.cost,
        cutting: cutting(&plan.house.stock, &plan.cutting),
        capacity: ResistanceDocument::of(plan),
        tables: Tables(results),
    };
    serde_json::to_string(&document).unwrap_or_default()
}

#[derive(Serialize)]
struct FramedDocument<'a> {
    version: Version,
    length_unit: LengthUnit,
    caution: &'static str,
    house: Understood<'a>,
    members: &'a Table,
}

/// A house before its sheets.
pub(super) fn framed(house: &House, assumed: &[Assumed], members: &Table) -> String {
    let document = FramedDocument {
        version: Version { major: 1, minor: 0 },
        length_unit: UNIT,
        caution: CAUTION,
        house: Understood {
            length_unit: UNIT,
            house,
            assumed,
        },
        members,
    };
    serde_json::to_string(&document).unwrap_or_default()
}

fn wall(wall: &WallPlan) -> WallDocument<'_> {
    let bands = &wall.built.layout.bands;
    let mut levels: Vec<Length> = bands.first().map(|band| band.y0).into_iter().collect();
    levels.extend(bands.iter().map(|band| band.y1));
    WallDocument {
        name: &wall.name,
        given: wall.given,
        reach: wall.built.layout.reach,
        levels,
        start: wall.start.as_ref(),
        steps: &wall.steps,
        cost: &wall.built.cost,
        bound: wall.bound,
        proof: wall.proof.as_ref(),
        effort: wall.effort,
        layouts_built: wall.layouts_built,
        alternatives: &wall.alternatives,
    }
}

fn cutting<'a>(stock: &Stock, cutting: &'a CutPlan) -> CuttingDocument<'a> {
    CuttingDocument {
        bounds: &cutting.bounds,
        proof: &cutting.proof,
        sheets: &cutting.sheets,
        leftovers: &cutting.leftovers,
        offcuts_left: offcuts_left(stock, cutting),
        uncut: &cutting.uncut,
    }
}
