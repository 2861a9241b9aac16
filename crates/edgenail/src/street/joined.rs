//! The cut plans of several houses as one.

use crate::amount::Amount;
use crate::cutting::{Blank, Bounds, CutNode, CutPlan, CutRules, Proof, Source, check};
use crate::house::Stock;
use crate::plan::Plan;

/// The blanks of all houses, in building order; walls are counted through the street.
pub(super) fn blanks(plans: &[&Plan]) -> Vec<Blank> {
    let (mut all, mut walls) = (Vec::new(), 0);
    for plan in plans {
        let before = count(all.len());
        all.extend(plan.cutting().blanks.iter().map(|blank| Blank {
            wall: walls + blank.wall,
            order: before + blank.order,
            ..blank.clone()
        }));
        walls += count(plan.house().walls.len());
    }
    all
}

/// Each house cut alone, written as one plan.
pub(super) fn alone(plans: &[&Plan]) -> CutPlan {
    let mut all = CutPlan {
        blanks: blanks(plans),
        sheets: Vec::new(),
        leftovers: Vec::new(),
        uncut: Vec::new(),
        bounds: Bounds {
            area: 0,
            dual: 0,
            least: Amount::ZERO,
            patterns: Amount::ZERO,
        },
        proof: Proof::Proven,
    };
    let mut before = 0;
    for plan in plans {
        let own = plan.cutting();
        let (sheets, leftovers) = (count(all.sheets.len()), count(all.leftovers.len()));
        for cut in &own.sheets {
            let mut cut = cut.clone();
            if let Source::Drop { blank, .. } = &mut cut.source {
                *blank += before;
            }
            shift(&mut cut.tree, before, leftovers);
            all.sheets.push(cut);
        }
        all.leftovers
            .extend(own.leftovers.iter().cloned().map(|mut left| {
                left.cut_sheet += sheets;
                left
            }));
        all.uncut.extend(own.uncut.iter().copied().map(|mut uncut| {
            uncut.blank += before;
            uncut
        }));
        before += count(own.blanks.len());
    }
    all
}

/// The plan together, or the houses alone where that is legal and costs less.
pub(super) fn cheaper(stock: &Stock, rules: &CutRules, together: CutPlan, alone: CutPlan) -> CutPlan {
    let rank = |plan: &CutPlan| (plan.uncut.len(), super::price(plan, stock), plan.sheets.len());
    if rank(&alone) >= rank(&together) || check(&alone, stock, rules.kerf).is_err() {
        return together;
    }
    // Both plans have the same bounds; the gap shrinks by what is saved.
    let less = |gap: Amount| {
        let saved = super::price(&together, stock) - super::price(&alone, stock);
        (gap - saved).max(Amount::ZERO)
    };
    let proof = match together.proof {
        Proof::Stopped { gap, effort } if less(gap) > Amount::ZERO => Proof::Stopped {
            gap: less(gap),
            effort,
        },
        Proof::Gap { amount } if less(amount) > Amount::ZERO => Proof::Gap { amount: less(amount) },
        _ => Proof::Proven,
    };
    CutPlan {
        bounds: together.bounds,
        proof,
        ..alone
    }
}

/// Moves the places of blanks and leftovers in a tree.
fn shift(node: &mut CutNode, blanks: u32, leftovers: u32) {
    match node {
        CutNode::Split { first, second, .. } => {
            shift(first, blanks, leftovers);
            shift(second, blanks, leftovers);
        }
        CutNode::Piece { blank, .. } => *blank += blanks,
        CutNode::Offcut { leftover } => *leftover += leftovers,
        CutNode::Waste => {}
    }
}

fn count(number: usize) -> u32 {
    u32::try_from(number).unwrap_or(u32::MAX)
}
