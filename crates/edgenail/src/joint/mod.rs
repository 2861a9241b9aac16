//! Layouts of a house's walls chosen together, by the sheets that the house buys.
//!
//! A search charges every piece with a share of a sheet of its own, since it knows one wall. What a house costs is
//! known once its pieces are cut together: then a layout that seemed dearer may leave one sheet less to buy. From the
//! cheapest layout of every wall, single walls are exchanged for what else was built for them, as long as that makes
//! the house cheaper. Beside its cost stands what the house costs at least, however its walls are laid out and cut.

use crate::amount::Amount;
use crate::cutting::{Blank, CutPlan, CutRules, Source, blanks, cut, cut_by};
use crate::evaluate::Evaluated;
use crate::house::{House, Practice, Sheet};
use crate::layout::Layout;
use crate::length::Length;
use crate::price::Part;
use crate::proof::Proof;
use crate::takeoff::Charge;
use serde::Serialize;

/// What a house's walls cost with the sheets that it buys for them.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct HouseCost {
    /// Work, lumber, nails, judgement and new sheets, in the unit of the objective; not pieces that find no sheet on hand.
    pub total: Amount,
    /// Of that the new sheets of the cut plan, without spare.
    pub sheets: Amount,
    /// What every plan costs at least whose walls have no more to mend.
    pub bound: Amount,
    /// How good the plan is known to be among all.
    pub proof: Proof,
    /// Walls with a layout that is not the cheapest by itself, as places in the house's list.
    pub exchanged: Vec<u32>,
    /// Exchanges whose sheets were cut to see what they cost.
    pub tried: u64,
}

/// The layouts that a wall may have: the cheapest by itself first.
#[derive(Clone, Debug)]
pub struct Options<'a> {
    /// The wall's place in the house's list.
    pub wall: usize,
    /// Layouts that may be built as well as the first.
    pub layouts: Vec<&'a Evaluated>,
    /// What any of its layouts costs at least, whatever its pieces share their sheets with.
    pub bound_by_area: Amount,
    /// The first is known to have no more to mend than any other.
    pub proven: bool,
}

/// Which layouts were chosen, and how they are cut.
#[derive(Clone, Debug)]
pub struct Joint {
    /// For each wall the place of its layout among its options.
    pub chosen: Vec<usize>,
    /// The cut plan of the house.
    pub cutting: CutPlan,
    /// What that costs.
    pub cost: HouseCost,
}

/// A choice of layouts.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Value {
    /// Pieces that no sheet is on hand for.
    uncut: usize,
    total: Amount,
}

struct Joining<'a> {
    house: &'a House,
    options: &'a [Options<'a>],
    /// What is cut from, and by which rules.
    rules: CutRules,
    tried: u64,
}

/// Chooses a layout for every wall and cuts them together; `practice` says how much may be tried.
///
/// The first layouts stand where no exchange makes the house cheaper; the result does not depend on anything but the
/// house and the options.
///
/// ```
/// use edgenail::joint::{Options, choose};
/// let plan = edgenail::plan_json(edgenail::demo::HOUSE_JSON)?;
/// let options: Vec<Options<'_>> = plan
///     .walls()
///     .iter()
///     .map(|wall| Options {
///         wall: wall.index as usize,
///         layouts: vec![&wall.built],
///         bound_by_area: edgenail::Amount::ZERO,
///         proven: false,
///     })
///     .collect();
/// let house = plan.house();
/// let joint = choose(house, &house.walls[0].practice, &options);
/// assert_eq!(joint.cutting, *plan.cutting());
/// # Ok::<(), edgenail::Error>(())
/// ```
pub fn choose(house: &House, practice: &Practice, options: &[Options<'_>]) -> Joint {
    let first = vec![0; options.len()];
    let mut joining = Joining {
        house,
        options,
        // Orders of placing alone: a cheaper plan is looked for once the layouts are chosen.
        rules: CutRules {
            effort_most: 0,
            ..CutRules::of(practice)
        },
        tried: 0,
    };
    let chosen = joining.exchanged(first.clone(), practice.exchanges_most);
    let plain = cut(&house.stock, practice, &joining.blanks(&first));
    let (chosen, cutting) = if chosen == first {
        (first, plain)
    } else {
        let cutting = cut(&house.stock, practice, &joining.blanks(&chosen));
        // Cut exactly, the first layouts may be the cheaper ones after all.
        if joining.value(&chosen, &cutting) < joining.value(&first, &plain) {
            (chosen, cutting)
        } else {
            (first, plain)
        }
    };
    let cost = joining.cost(&chosen, &cutting, practice);
    Joint {
        chosen,
        cutting,
        cost,
    }
}

impl Joining<'_> {
    fn built(&self, chosen: &[usize]) -> impl Iterator<Item = (usize, &Evaluated)> {
        let walls = self.options.iter().zip(chosen);
        walls.filter_map(|(options, place)| Some((options.wall, *options.layouts.get(*place)?)))
    }

    fn blanks(&self, chosen: &[usize]) -> Vec<Blank> {
        let layouts: Vec<(usize, &Layout)> = self
            .built(chosen)
            .map(|(wall, built)| (wall, &built.layout))
            .collect();
        blanks(self.house, &layouts)
    }

    /// All but sheets.
    fn work(&self, chosen: &[usize]) -> Amount {
        self.built(chosen)
            .map(|(_, built)| built.cost.without(Part::Sheets))
            .sum()
    }

    fn value(&self, chosen: &[usize], cutting: &CutPlan) -> Value {
        Value {
            uncut: cutting.uncut.len(),
            total: self.work(chosen) + self.sheets(cutting),
        }
    }

    /// What the new sheets of a cut plan cost, in the unit of the objective.
    fn sheets(&self, cutting: &CutPlan) -> Amount {
        let stock = &self.house.stock;
        let new = cutting.sheets.iter().filter_map(|cut| match cut.source {
            Source::Sheet { sheet } => stock.sheets.get(sheet as usize),
            Source::Offcut { .. } | Source::Drop { .. } => None,
        });
        new.map(|sheet| Charge::buy(Part::Sheets, 1, sheet.price).worth(&self.house.rates))
            .sum()
    }

    /// Exchanges the layout of one wall at a time, what costs least more by itself first, until none makes the house
    /// cheaper or as many were tried as may be.
    fn exchanged(&mut self, mut chosen: Vec<usize>, most: u64) -> Vec<usize> {
        if most == 0 || self.options.iter().all(|options| options.layouts.len() < 2) {
            return chosen;
        }
        let mut best = self.value(
            &chosen,
            &cut_by(&self.house.stock, &self.rules, &self.blanks(&chosen)),
        );
        while let Some((better, value)) = self.better(&chosen, &best, most) {
            chosen = better;
            best = value;
        }
        chosen
    }

    /// The first exchange that makes the house cheaper.
    fn better(&mut self, chosen: &[usize], best: &Value, most: u64) -> Option<(Vec<usize>, Value)> {
        let mut exchanges: Vec<(Amount, usize, usize)> = Vec::new();
        for (at, (options, now)) in self.options.iter().zip(chosen).enumerate() {
            let own = options.layouts.get(*now)?.cost.total;
            for (place, layout) in options.layouts.iter().enumerate() {
                if place != *now {
                    exchanges.push((layout.cost.total - own, at, place));
                }
            }
        }
        exchanges.sort_unstable();
        for (_, at, place) in exchanges {
            if self.tried >= most {
                break;
            }
            let mut next = chosen.to_vec();
            *next.get_mut(at)? = place;
            // Where work alone costs as much as all, no sheet need be cut.
            if self.work(&next) >= best.total && best.uncut == 0 {
                continue;
            }
            self.tried += 1;
            let cutting = cut_by(&self.house.stock, &self.rules, &self.blanks(&next));
            let value = self.value(&next, &cutting);
            if value < *best {
                return Some((next, value));
            }
        }
        None
    }

    fn cost(&self, chosen: &[usize], cutting: &CutPlan, practice: &Practice) -> HouseCost {
        let sheets = self.sheets(cutting);
        let total = self.work(chosen) + sheets;
        let least: Amount = self.options.iter().map(|options| options.bound_by_area).sum();
        let bound = (least - self.offcuts()).max(Amount::ZERO).min(total);
        let gap = total - bound;
        let mended = self.options.iter().all(|options| options.proven);
        let exchanged = self.options.iter().zip(chosen).filter(|(_, place)| **place != 0);
        HouseCost {
            total,
            sheets,
            bound,
            proof: if gap == Amount::ZERO && mended && cutting.uncut.is_empty() {
                Proof::Proven
            } else if self.tried >= practice.exchanges_most {
                Proof::Stopped {
                    gap,
                    effort: self.tried,
                }
            } else {
                Proof::Gap { amount: gap }
            },
            exchanged: exchanged
                .filter_map(|(options, _)| u32::try_from(options.wall).ok())
                .collect(),
            tried: self.tried,
        }
    }

    /// What may be bought less for off-cuts on hand, at most: their area, by the dearest kind.
    fn offcuts(&self) -> Amount {
        let (stock, kerf) = (&self.house.stock, self.rules.kerf);
        let square = |width: Length, length: Length| ((width + kerf) * (length + kerf)).square_units();
        let all: i128 = stock
            .offcuts
            .iter()
            .map(|offcut| square(offcut.width, offcut.length))
            .sum();
        let price = |sheet: &Sheet| {
            let money = sheet.price.scaled(all, square(sheet.width, sheet.length))?;
            Some(Charge::buy(Part::Sheets, 1, money).worth(&self.house.rates))
        };
        stock.sheets.iter().filter_map(price).max().unwrap_or_default()
    }
}

#[cfg(test)]
mod tests;
