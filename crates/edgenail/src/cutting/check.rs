//! Whether a whole cut plan is legal.

use super::replay::{CutFault, Part, replay};
use super::sheet::interchangeable;
use super::{CutPlan, CutSheet, Source};
use crate::house::{Sheet, Stock};
use crate::length::Length;
use std::fmt;

/// What is wrong with a cut plan.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PlanFault {
    /// A tree cannot be cut.
    Tree {
        /// The cut sheet.
        sheet: u32,
        /// Why.
        fault: CutFault,
    },
    /// A cut sheet is not what its source is, or its source does not exist.
    Source {
        /// The cut sheet.
        sheet: u32,
    },
    /// A source is cut twice.
    SourceTwice {
        /// The cut sheet.
        sheet: u32,
    },
    /// More sheets are cut than are on hand.
    TooMany {
        /// The sheet, as a place in the stock's list.
        sheet: u32,
    },
    /// A blank is not cut exactly once or listed as uncut exactly once.
    NotOnce {
        /// The blank.
        blank: u32,
    },
    /// A blank comes from another material than it asks for.
    Material {
        /// The blank.
        blank: u32,
    },
    /// A blank comes from a drop that does not exist when it is cut.
    TooEarly {
        /// The blank.
        blank: u32,
    },
    /// A leftover is not the part that it is said to be.
    Leftover {
        /// The leftover.
        leftover: u32,
    },
}

impl fmt::Display for PlanFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Tree { sheet, fault } => write!(f, "cut sheet {sheet}: {fault}"),
            Self::Source { sheet } => write!(f, "cut sheet {sheet} is not what its source is"),
            Self::SourceTwice { sheet } => write!(f, "the source of cut sheet {sheet} is cut twice"),
            Self::TooMany { sheet } => write!(f, "more of sheet {sheet} is cut than there is"),
            Self::NotOnce { blank } => write!(f, "blank {blank} is not accounted for exactly once"),
            Self::Material { blank } => write!(f, "blank {blank} comes from another material"),
            Self::TooEarly { blank } => {
                write!(f, "blank {blank} comes from a drop that is still on the wall")
            }
            Self::Leftover { leftover } => write!(f, "leftover {leftover} is not what the tree leaves"),
        }
    }
}

impl std::error::Error for PlanFault {}

/// Replays every tree of a plan and checks that sources exist and suffice, that each blank is accounted for once and
/// comes from its material, and that drops are used only by pieces that are hung later.
///
/// # Errors
/// The first [`PlanFault`].
pub fn check(plan: &CutPlan, stock: &Stock, kerf: Length) -> Result<(), PlanFault> {
    let mut times = vec![0_u32; plan.blanks.len()];
    let mut kept = vec![0_u32; plan.leftovers.len()];
    let mut sources: Vec<Source> = Vec::new();
    for (number, sheet) in (0_u32..).zip(&plan.sheets) {
        let found = source(plan, stock, sheet).ok_or(PlanFault::Source { sheet: number })?;
        if found.1 {
            if sources.contains(&sheet.source) {
                return Err(PlanFault::SourceTwice { sheet: number });
            }
            sources.push(sheet.source);
        }
        let parts =
            replay(sheet, &plan.blanks, kerf).map_err(|fault| PlanFault::Tree { sheet: number, fault })?;
        for part in parts {
            match part.part {
                Part::Blank { blank, .. } => {
                    cut_from(plan, stock, sheet, found.0, blank)?;
                    count(&mut times, blank);
                }
                Part::Offcut { leftover } => {
                    let kind = plan.leftovers.get(leftover as usize).filter(|left| {
                        (left.cut_sheet, left.sheet, left.width, left.length)
                            == (number, sheet.sheet, part.width, part.length)
                    });
                    kind.ok_or(PlanFault::Leftover { leftover })?;
                    count(&mut kept, leftover);
                }
                Part::Waste => {}
            }
        }
    }
    for (sheet, kind) in (0_u32..).zip(&stock.sheets) {
        if kind.on_hand.is_some_and(|most| plan.new_sheets(sheet) > most) {
            return Err(PlanFault::TooMany { sheet });
        }
    }
    for uncut in &plan.uncut {
        count(&mut times, uncut.blank);
    }
    let not_once = |counts: &[u32]| {
        (0_u32..)
            .zip(counts)
            .find(|(_, times)| **times != 1)
            .map(|(index, _)| index)
    };
    if let Some(blank) = not_once(&times) {
        return Err(PlanFault::NotOnce { blank });
    }
    not_once(&kept).map_or(Ok(()), |leftover| Err(PlanFault::Leftover { leftover }))
}

fn count(times: &mut [u32], index: u32) {
    if let Some(times) = times.get_mut(index as usize) {
        *times += 1;
    }
}

/// The kind of sheet that a cut sheet is, if it is what its source says, and whether there is only one of it.
fn source<'a>(plan: &CutPlan, stock: &'a Stock, cut: &CutSheet) -> Option<(&'a Sheet, bool)> {
    let kind = stock.sheets.get(cut.sheet as usize)?;
    let (size, single, agrees) = match cut.source {
        Source::Sheet { sheet } => ((kind.width, kind.length), false, sheet == cut.sheet),
        Source::Offcut { offcut } => {
            let offcut = stock.offcuts.get(offcut as usize)?;
            ((offcut.width, offcut.length), true, offcut.sheet == kind.name)
        }
        Source::Drop { blank, drop } => {
            let blank = plan.blanks.get(blank as usize)?;
            let drop = blank.drops.get(drop as usize)?;
            ((drop.width, drop.length), true, blank.sheet == cut.sheet)
        }
    };
    (agrees && size == (cut.width, cut.length)).then_some((kind, single))
}

fn cut_from(
    plan: &CutPlan,
    stock: &Stock,
    sheet: &CutSheet,
    kind: &Sheet,
    index: u32,
) -> Result<(), PlanFault> {
    let blank = plan
        .blanks
        .get(index as usize)
        .ok_or(PlanFault::NotOnce { blank: index })?;
    let wanted = stock.sheets.get(blank.sheet as usize);
    if !wanted.is_some_and(|wanted| interchangeable(wanted, kind)) {
        return Err(PlanFault::Material { blank: index });
    }
    if let Source::Drop { blank: from, .. } = sheet.source {
        let born = plan.blanks.get(from as usize).map(|from| from.order);
        if born.is_none_or(|born| blank.order <= born) {
            return Err(PlanFault::TooEarly { blank: index });
        }
    }
    Ok(())
}
