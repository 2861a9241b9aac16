//! Pieces for which no sheet is on hand, told with the other findings of their wall.

use super::WallPlan;
use crate::cutting::{CutPlan, WhyUncut, cut};
use crate::finding::{Finding, FindingCode, Severity};
use crate::house::{House, Practice};
use crate::wording::{counted, wording};
use std::collections::{BTreeMap, BTreeSet};

/// A finding for each wall and kind of sheet whose pieces find none on hand, with the wall's place in the house.
pub(super) fn findings(
    house: &House,
    practice: &Practice,
    walls: &[WallPlan],
    cutting: &CutPlan,
) -> Vec<(u32, Finding)> {
    let mut short: BTreeMap<(u32, u32), Vec<&str>> = BTreeMap::new();
    for uncut in cutting
        .uncut
        .iter()
        .filter(|uncut| uncut.why == WhyUncut::NoneLeft)
    {
        let Some(blank) = cutting.blanks.get(uncut.blank as usize) else {
            continue;
        };
        let wall = walls.iter().find(|wall| wall.index == blank.wall);
        let piece = wall.and_then(|wall| wall.built.layout.pieces.get(blank.piece as usize));
        let pieces = short.entry((blank.wall, blank.sheet)).or_default();
        pieces.extend(piece.map(|piece| piece.mark.as_str()));
    }
    if short.is_empty() {
        return Vec::new();
    }
    let kinds: BTreeSet<u32> = short.keys().map(|(_, sheet)| *sheet).collect();
    let mut stock = house.stock.clone();
    for (sheet, kind) in (0..).zip(&mut stock.sheets) {
        if kinds.contains(&sheet) {
            kind.on_hand = None;
        }
    }
    // What would be cut if there were enough.
    let enough = cut(&stock, practice, &cutting.blanks);
    let told = short.into_iter().filter_map(|((wall, sheet), pieces)| {
        let name = &walls.iter().find(|other| other.index == wall)?.name;
        let kind = house.stock.sheets.get(sheet as usize)?;
        let on_hand = kind.on_hand.unwrap_or_default();
        let wanted = enough.new_sheets(sheet);
        let finding = Finding::of(name, FindingCode::SheetsShort, Severity::Mend)
            .against(
                format!("{on_hand} of {} on hand", kind.name),
                format!("{wanted} for the house"),
            )
            .says(wording![
                counted(pieces.len(), "piece has", "pieces have"),
                " no sheet: of ",
                kind.name,
                format!(" {on_hand} are on hand, and the house takes {wanted}. Not cut: "),
                pieces.join(", "),
                "."
            ]);
        Some((wall, finding))
    });
    told.collect()
}
