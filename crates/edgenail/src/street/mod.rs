//! Houses of one street cut together: what is left of a sheet at one house serves the next.
//!
//! Houses are built in the order in which they are given. Any sheet cut from edge to edge can be cut in that order, so
//! that it is delivered to the first house that it serves, and what the later ones need of it is carried on.

mod joined;
mod table;

use crate::amount::Amount;
use crate::caution::CAUTION;
use crate::cutting::{Blank, CutPlan, CutRules, Part, Source, cut_by, replay};
use crate::error::Error;
use crate::house::Stock;
use crate::issue::{Code, Issue};
use crate::length::Length;
use crate::plan::Plan;
use crate::table::Table;
use serde::Serialize;

/// Sheets of one kind for one house.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Delivery {
    /// The house, as a place in the street.
    pub house: u32,
    /// Its name.
    pub name: String,
    /// The kind of sheet, as a place in the stock's list.
    pub sheet: u32,
    /// Its name.
    pub sheet_name: String,
    /// New sheets if the house is cut alone.
    pub alone: u32,
    /// New sheets that are delivered to it: those whose first piece is its own.
    pub delivered: u32,
    /// Whole units among these, as sheets are delivered.
    pub units: u32,
    /// Sheets beyond whole units.
    pub loose: u32,
}

/// A piece that is cut from what is left at an earlier house.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Carried {
    /// The blank, as a place in the list of the cut plan.
    pub blank: u32,
    /// The house that its sheet is delivered to.
    pub from: u32,
    /// The house that it belongs to.
    pub to: u32,
    /// The wall, as a place in that house's list.
    pub wall: u32,
    /// The piece, as a place in that wall's layout.
    pub piece: u32,
}

/// Houses cut together.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Street {
    /// The caution that holds for every plan.
    caution: &'static str,
    /// For each house and kind of sheet that it takes, alone or on the street.
    pub deliveries: Vec<Delivery>,
    /// Pieces that are carried to a later house.
    pub carried: Vec<Carried>,
    /// Price of the new sheets if each house is cut alone.
    pub alone: Amount,
    /// Price of the new sheets together, never more unless houses that are cut alone use one off-cut twice.
    pub together: Amount,
    /// The sheets. Walls of its blanks are counted through the street.
    pub cutting: CutPlan,
    /// For each wall of the street its house and its place there.
    pub walls: Vec<(u32, u32)>,
}

impl Street {
    /// Cuts the sheets of these houses together. `effort_most` is what may be spent, in parts of sheets looked at.
    ///
    /// # Errors
    ///
    /// [`Error::Issues`] where a house has other sheets, off-cuts or rules of cutting than the first; paths begin with
    /// the place of the house.
    ///
    /// ```
    /// use edgenail::street::Street;
    /// let plan = edgenail::plan_json(edgenail::demo::HOUSE_JSON)?;
    /// let street = Street::of(&[&plan, &plan], 1_000_000)?;
    /// assert!(street.together <= street.alone);
    /// assert_eq!(street.cutting.blanks.len(), 2 * plan.cutting().blanks.len());
    /// # Ok::<(), edgenail::Error>(())
    /// ```
    pub fn of(plans: &[&Plan], effort_most: u64) -> Result<Self, Error> {
        let Some((first, rules)) = plans.first().and_then(|plan| Some((plan, rules(plan)?))) else {
            return Ok(Self::empty());
        };
        let issues = unlike(plans, first, &rules);
        if !issues.is_empty() {
            return Err(Error::Issues { issues });
        }
        let stock = &first.house().stock;
        let rules = CutRules { effort_most, ..rules };
        let blanks = joined::blanks(plans);
        let walls = walls(plans);
        let cutting = joined::cheaper(
            stock,
            &rules,
            cut_by(stock, &rules, &blanks),
            joined::alone(plans),
        );
        let alone = plans.iter().map(|plan| price(plan.cutting(), stock)).sum();
        let mut street = Self {
            caution: CAUTION,
            deliveries: Vec::new(),
            carried: Vec::new(),
            alone,
            together: price(&cutting, stock),
            cutting,
            walls,
        };
        let delivered = street.trace(rules.kerf);
        street.deliveries = deliveries(plans, stock, &delivered);
        Ok(street)
    }

    fn empty() -> Self {
        Self {
            caution: CAUTION,
            deliveries: Vec::new(),
            carried: Vec::new(),
            alone: Amount::ZERO,
            together: Amount::ZERO,
            cutting: joined::alone(&[]),
            walls: Vec::new(),
        }
    }

    /// The house of a blank.
    fn house_of(&self, blank: &Blank) -> u32 {
        self.walls.get(blank.wall as usize).map_or(0, |(house, _)| *house)
    }

    /// Finds where each sheet is delivered and what is carried on; for each new sheet its house and kind.
    fn trace(&mut self, kerf: Length) -> Vec<(u32, u32)> {
        let (mut delivered, mut carried) = (Vec::new(), Vec::new());
        for cut in &self.cutting.sheets {
            let parts = replay(cut, &self.cutting.blanks, kerf).unwrap_or_default();
            let blanks = parts.iter().filter_map(|part| match part.part {
                Part::Blank { blank, .. } => Some((blank, self.cutting.blanks.get(blank as usize)?)),
                _ => None,
            });
            let blanks: Vec<(u32, &Blank)> = blanks.collect();
            let Some(from) = blanks.iter().map(|(_, blank)| self.house_of(blank)).min() else {
                continue;
            };
            if let Source::Sheet { sheet } = cut.source {
                delivered.push((from, sheet));
            }
            // A drop falls out of a piece: its sheet was delivered where that piece hangs.
            let from = match cut.source {
                Source::Drop { blank, .. } => {
                    let born = self.cutting.blanks.get(blank as usize);
                    born.map_or(from, |born| self.house_of(born))
                }
                _ => from,
            };
            carried.extend(blanks.iter().filter_map(|(index, blank)| {
                let (to, wall) = self.walls.get(blank.wall as usize).copied()?;
                (to != from).then_some(Carried {
                    blank: *index,
                    from,
                    to,
                    wall,
                    piece: blank.piece,
                })
            }));
        }
        carried.sort_by_key(|carried| carried.blank);
        self.carried = carried;
        delivered
    }

    /// The street as one JSON document, the same in every language.
    pub fn json(&self) -> String {
        // Writing plain data into memory has no way to fail.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// The deliveries as a table.
    pub fn table(&self) -> Table {
        table::table(&self.deliveries)
    }
}

/// The rules that a house is cut by: those of its first wall.
fn rules(plan: &Plan) -> Option<CutRules> {
    plan.house()
        .walls
        .first()
        .map(|wall| CutRules::of(&wall.practice))
}

/// For each wall of the street its house and its place there.
fn walls(plans: &[&Plan]) -> Vec<(u32, u32)> {
    let houses = (0_u32..).zip(plans);
    houses
        .flat_map(|(house, plan)| {
            (0_u32..)
                .zip(&plan.house().walls)
                .map(move |(wall, _)| (house, wall))
        })
        .collect()
}

/// What keeps houses from being cut together.
fn unlike(plans: &[&Plan], first: &Plan, own: &CutRules) -> Vec<Issue> {
    let mut issues = Vec::new();
    for (place, plan) in plans.iter().enumerate() {
        let (stock, wanted) = (&plan.house().stock, &first.house().stock);
        let other = rules(plan).unwrap_or(*own);
        let same_rules = (other.kerf, other.offcut_width_least, other.offcut_length_least)
            == (own.kerf, own.offcut_width_least, own.offcut_length_least);
        let parts = [
            ("stock/sheets", stock.sheets == wanted.sheets),
            ("stock/offcuts", stock.offcuts == wanted.offcuts),
            ("practice", same_rules),
        ];
        for (field, _) in parts.into_iter().filter(|(_, same)| !same) {
            issues.push(Issue {
                code: Code::StreetUnlike,
                path: format!("/{place}/{field}"),
                wall: String::new(),
                found: plan.house().name.clone(),
                allowed: format!("as {}", first.house().name),
                message: format!(
                    "houses of one street are cut from one stock by one saw: {field} of this house must be as of the first"
                ),
            });
        }
    }
    issues
}

/// What the new sheets of a plan cost.
fn price(cutting: &CutPlan, stock: &Stock) -> Amount {
    let price = |source: &Source| match source {
        Source::Sheet { sheet } => stock.sheets.get(*sheet as usize).map(|sheet| sheet.price),
        _ => None,
    };
    cutting.sheets.iter().filter_map(|cut| price(&cut.source)).sum()
}

fn deliveries(plans: &[&Plan], stock: &Stock, delivered: &[(u32, u32)]) -> Vec<Delivery> {
    let mut rows = Vec::new();
    for (house, plan) in (0_u32..).zip(plans) {
        for (kind, sheet) in (0_u32..).zip(&stock.sheets) {
            let alone = plan.cutting().new_sheets(kind);
            let own = delivered.iter().filter(|found| **found == (house, kind)).count();
            let own = u32::try_from(own).unwrap_or(u32::MAX);
            if alone > 0 || own > 0 {
                rows.push(Delivery {
                    house,
                    name: plan.house().name.clone(),
                    sheet: kind,
                    sheet_name: sheet.name.clone(),
                    alone,
                    delivered: own,
                    units: own / sheet.unit_count.max(1),
                    loose: own % sheet.unit_count.max(1),
                });
            }
        }
    }
    rows
}

#[cfg(test)]
mod tests;
