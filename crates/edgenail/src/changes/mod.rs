//! What if: a house planned again after something changed, and what is different then.
//!
//! A change is a JSON Patch (RFC 6902) on the house's document: [`patched`] applies it, [`what_if`] plans again,
//! [`Changes::between`] compares two plans. Usual questions, each a patch:
//!
//! * an opening was measured wider:
//!   `[{"op": "replace", "path": "/walls/0/sections/0/stack/0/openings/0/width", "value": "37 1/2"}]`
//! * sheets of 9 ft instead of 8:
//!   `[{"op": "replace", "path": "/stock/sheets/0/length", "value": "107 7/8"}]`
//! * nails 4 in. apart at the edges and 12 in. in the field of the first segment:
//!   `[{"op": "add", "path": "/walls/0/segments/0/edge_spacing", "value": "4"},
//!   {"op": "add", "path": "/walls/0/segments/0/field_spacing", "value": "12"}]`
//!
//! `add` sets a field of an object whether the document says it or not; `replace` wants it said.

mod capacity;
mod count;
mod table;
mod takeoff;
mod wall;

pub use capacity::{CapacityChange, LineFigures};
pub use takeoff::{Quantities, TakeoffChange};
pub use wall::{AddedWood, PieceChange, PieceFigures, PieceWhat, Seam, WallChange, WallState, WoodKind};

use crate::caution::CAUTION;
use crate::error::Error;
use crate::finding::Finding;
use crate::issue::Issue;
use crate::plan::{Figures, Plan, plan_bytes};
use crate::reading::tree::{self, patch::patch};
use crate::table::Table;
use serde::Serialize;

/// What is different between two plans of a house.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Changes {
    /// The caution that holds for every plan.
    caution: &'static str,
    /// The house before.
    pub before: Figures,
    /// The house after.
    pub after: Figures,
    /// Lines of the take-off that are not the same, those of the house, of storeys and of walls.
    pub takeoff: Vec<TakeoffChange>,
    /// Every wall: those of the plan before in their order, then those that came.
    pub walls: Vec<WallChange>,
    /// Findings that came.
    pub came: Vec<Finding>,
    /// Findings that went.
    pub went: Vec<Finding>,
    /// Lines of capacity that are not the same.
    pub capacity: Vec<CapacityChange>,
}

impl Changes {
    /// What is different in the plan after, seen from the one before. Walls are the same by their name, pieces by their
    /// mark.
    ///
    /// ```
    /// use edgenail::changes::{Changes, WallState};
    /// let plan = edgenail::plan_json(edgenail::demo::HOUSE_JSON)?;
    /// let changes = Changes::between(&plan, &plan);
    /// assert!(changes.takeoff.is_empty() && changes.came.is_empty() && changes.went.is_empty());
    /// assert!(changes.walls.iter().all(|wall| wall.state == WallState::Unchanged));
    /// # Ok::<(), edgenail::Error>(())
    /// ```
    pub fn between(before: &Plan, after: &Plan) -> Self {
        let (came, went) = count::apart(before.findings(), after.findings());
        Self {
            caution: CAUTION,
            before: Figures::of(before),
            after: Figures::of(after),
            takeoff: takeoff::changes(before, after),
            walls: wall::changes(before, after),
            came,
            went,
            capacity: capacity::changes(before, after),
        }
    }

    /// The changes as one JSON document, the same in every language.
    pub fn json(&self) -> String {
        // Writing plain data into memory has no way to fail.
        serde_json::to_string(self).unwrap_or_default()
    }
}

/// A house planned again after changes.
#[derive(Clone, Debug)]
pub struct WhatIf {
    /// The document with the changes in it.
    pub house: String,
    /// Its plan.
    pub plan: Plan,
    /// What is different.
    pub changes: Changes,
}

impl WhatIf {
    /// What is different as one table to be read or sorted: a row for everything that changed, and for every wall that did
    /// not.
    pub fn table(&self) -> Table {
        table::table(&self.changes, self.plan.house().drawn_in.in_text())
    }
}

/// Plans a house again after changes: `before` is its plan, `house` the document that was planned.
///
/// # Errors
///
/// [`Error::Issues`] with every change that is none, or the first that the document does not allow, their paths into
/// the changes; or with every fault of the changed house, their paths into it. Otherwise as
/// [`plan_house`](crate::plan::plan_house).
///
/// ```
/// use edgenail::changes::what_if;
/// use edgenail::demo::HOUSE_JSON;
/// let plan = edgenail::plan_json(HOUSE_JSON)?;
/// let dearer = br#"[{"op": "replace", "path": "/stock/sheets/0/price", "value": "17"}]"#;
/// let found = what_if(&plan, HOUSE_JSON.as_bytes(), dearer)?;
/// assert!(found.changes.after.money > found.changes.before.money);
/// // A place that the house does not have is told.
/// let nowhere = br#"[{"op": "replace", "path": "/walls/99/length", "value": "8'"}]"#;
/// let error = what_if(&plan, HOUSE_JSON.as_bytes(), nowhere).unwrap_err();
/// assert_eq!(error.issues()[0].path, "/0/path");
/// # Ok::<(), edgenail::Error>(())
/// ```
pub fn what_if(before: &Plan, house: &[u8], changes: &[u8]) -> Result<WhatIf, Error> {
    let house = patched(house, changes).map_err(|issues| Error::Issues { issues })?;
    let plan = plan_bytes(house.as_bytes())?;
    let changes = Changes::between(before, &plan);
    Ok(WhatIf { house, plan, changes })
}

/// Plans the house of a document before and after changes, and gives what is different as JSON.
///
/// # Errors
///
/// As [`what_if`], and with every fault of the house before.
pub fn what_if_json(house: &str, changes: &str) -> Result<String, Error> {
    let before = plan_bytes(house.as_bytes())?;
    let found = what_if(&before, house.as_bytes(), changes.as_bytes())?;
    Ok(found.changes.json())
}

/// A document with changes in it. What they do not name stays as it was written, numbers to the last digit.
///
/// # Errors
///
/// What is wrong with the document's text, with the changes' text, or with the changes.
///
/// ```
/// use edgenail::changes::patched;
/// let house = br#"{"walls": [{"name": "north", "length": 97.1250}]}"#;
/// let changes = br#"[{"op": "replace", "path": "/walls/0/name", "value": "south"}]"#;
/// assert_eq!(patched(house, changes).unwrap(), r#"{"walls":[{"name":"south","length":97.1250}]}"#);
/// ```
pub fn patched(document: &[u8], changes: &[u8]) -> Result<String, Vec<Issue>> {
    let parse = |bytes| match tree::parse(bytes) {
        Ok((tree, doubles)) if doubles.is_empty() => Ok(tree),
        Ok((_, doubles)) => Err(doubles),
        Err(issue) => Err(vec![*issue]),
    };
    let mut tree = parse(document)?;
    patch(&mut tree, &parse(changes)?)?;
    Ok(tree.json())
}
