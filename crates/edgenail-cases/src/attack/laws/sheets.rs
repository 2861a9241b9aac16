//! Pieces and sheets: cells tile the wall, what is wrong is told, and every piece comes out of a sheet.

use edgenail::Plan;
use edgenail::cutting::{Part, Placed, check, replay};
use edgenail::evaluate::Evaluated;
use edgenail::finding::{Finding, FindingCode};
use edgenail::geometry::{Point, Rect, Toward};
use edgenail::house::{House, Sheet};
use edgenail::layout::{Layout, Piece, Running};
use edgenail::length::Length;
use edgenail::plan::WallPlan;

/// Between two lines on which any cell or hole ends, each place of the wall lies in exactly one cell, and each place
/// outside it in none.
pub fn tile(house: &House, wall: &WallPlan) {
    let (frame, layout) = (&wall.frame, &wall.built.layout);
    let (holes, span) = (frame.holes(), frame.lower.span());
    let corners = || {
        layout
            .pieces
            .iter()
            .flat_map(|piece| piece.cell.rings())
            .flatten()
    };
    let sides = holes
        .iter()
        .flat_map(|hole| [Point::new(hole.x0, hole.y0), Point::new(hole.x1, hole.y1)]);
    let points: Vec<Point> = corners().chain(sides).collect();
    let xs = between(points.iter().map(|at| at.x).chain([span.lo, span.hi]));
    let ys = between(points.iter().map(|at| at.y));
    let top = layout.bands.last().map_or(Length::ZERO, |band| band.y1);
    let near = Length::from_units(2);
    for x in xs {
        let (Some(low), Some(high)) = (
            frame.lower.y_at(x, Toward::Right),
            frame.upper.y_at(x, Toward::Right),
        ) else {
            continue;
        };
        let (low, high) = (low - layout.reach, high.min(top));
        // On a slope a corner is rounded.
        for at in ys
            .iter()
            .map(|y| Point::new(x, *y))
            .filter(|at| (at.y - low).abs() > near && (at.y - high).abs() > near)
        {
            let open = holes.iter().any(|hole| hole.contains(at));
            let wanted = usize::from(low < at.y && at.y < high && !open);
            let covered = layout
                .pieces
                .iter()
                .filter(|piece| piece.cell.contains(at))
                .count();
            assert_eq!(covered, wanted, "{}, {}: cells at {at:?}", house.name, wall.name);
        }
    }
}

/// The middles between neighbouring ones of these, where there is room.
fn between(all: impl Iterator<Item = Length>) -> Vec<Length> {
    let mut all: Vec<Length> = all.collect();
    all.sort_unstable();
    all.dedup();
    let wide = all
        .windows(2)
        .filter(|pair| pair[1] - pair[0] > Length::from_units(8));
    wide.map(|pair| (pair[0] + pair[1]).half()).collect()
}

/// Each piece comes out of its sheet and lies within its cell.
pub fn fit(house: &House, layout: &Layout) {
    for piece in &layout.pieces {
        assert!(
            is_in_sheet(house, piece),
            "{} is larger than its sheet",
            piece.mark
        );
        // On a slope corners are rounded.
        if let (Some(cell), Some(outline)) = (piece.cell.is_rect(), piece.outline.is_rect()) {
            assert!(cell.covers(&outline), "{} reaches out of its cell", piece.mark);
        }
    }
}

fn is_in_sheet(house: &House, piece: &Piece) -> bool {
    let blank = piece.blank();
    let holds = |sheet: &Sheet| match piece.running {
        Running::Upright => blank.width() <= sheet.width && blank.height() <= sheet.length,
        Running::Flat => blank.width() <= sheet.length && blank.height() <= sheet.width,
    };
    house.stock.sheets.get(piece.sheet as usize).is_some_and(holds)
}

/// Of any layout it is told which panels lie over each other and which are larger than their sheet.
pub fn judged(house: &House, built: &Evaluated, findings: &[Finding]) {
    let pieces = &built.layout.pieces;
    let style = house.drawn_in.in_text();
    let told = |code: FindingCode, piece: &Piece| {
        findings
            .iter()
            .any(|finding| finding.code == code && finding.message.written(style).contains(&piece.mark))
    };
    for (index, piece) in pieces.iter().enumerate() {
        assert!(
            is_in_sheet(house, piece) || told(FindingCode::PanelTooLarge, piece),
            "not told that {} is larger than its sheet",
            piece.mark
        );
        for other in pieces
            .iter()
            .skip(index + 1)
            .filter(|other| other.blank().overlaps(&piece.blank()))
        {
            assert!(
                piece.outline.overlap_area2(&other.outline) <= 0
                    || (told(FindingCode::PanelsOverlap, piece) && told(FindingCode::PanelsOverlap, other)),
                "not told that {} and {} lie over each other",
                piece.mark,
                other.mark
            );
        }
    }
}

/// The cut plan can be cut: every piece has its blank, every tree can be sawn, parts lie a kerf apart in their sheet,
/// and no fewer sheets are used than the bounds say.
pub fn cut(plan: &Plan) {
    let (house, cutting) = (plan.house(), plan.cutting());
    let kerf = house
        .walls
        .first()
        .map_or(Length::ZERO, |wall| wall.practice.kerf);
    let fault = check(cutting, &house.stock, kerf);
    assert!(fault.is_ok(), "{fault:?}");
    let pieces: usize = plan
        .walls()
        .iter()
        .map(|wall| wall.built.layout.pieces.len())
        .sum();
    assert_eq!(cutting.blanks.len(), pieces, "blanks and pieces");
    for blank in &cutting.blanks {
        let walls = plan.walls().iter().filter(|wall| wall.index == blank.wall);
        let mut pieces = walls
            .flat_map(|wall| &wall.built.layout.pieces)
            .filter(|piece| piece.id == blank.piece);
        let size = pieces.next().map(|piece| match piece.running {
            Running::Upright => (piece.blank().width(), piece.blank().height()),
            Running::Flat => (piece.blank().height(), piece.blank().width()),
        });
        assert_eq!(Some((blank.width, blank.length)), size, "{blank:?}");
    }
    for sheet in &cutting.sheets {
        let parts = replay(sheet, &cutting.blanks, kerf).unwrap_or_default();
        assert!(
            parts.iter().any(|part| part.part != Part::Waste),
            "nothing comes out of {sheet:?}"
        );
        for (index, part) in parts.iter().map(lie).enumerate() {
            let whole = Rect::from_size(Length::ZERO, Length::ZERO, sheet.width, sheet.length);
            assert!(whole.covers(&part), "{part:?} reaches out of {sheet:?}");
            for other in parts.iter().skip(index + 1).map(lie) {
                assert!(
                    !part.grown(kerf).overlaps(&other),
                    "less than a kerf between {part:?} and {other:?}"
                );
            }
        }
    }
    let new: u32 = (0u32..)
        .zip(&house.stock.sheets)
        .map(|(sheet, _)| cutting.new_sheets(sheet))
        .sum();
    let least = cutting.bounds.area.max(cutting.bounds.dual);
    assert!(
        new >= least || !cutting.uncut.is_empty(),
        "{new} sheets, bound {least}"
    );
}

fn lie(part: &Placed) -> Rect {
    Rect::from_size(part.x, part.y, part.width, part.length)
}
