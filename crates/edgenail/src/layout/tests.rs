use super::trial::{Trial, inch};
use super::{BandSpec, Layout, LayoutSpec, Running, lay_out};
use crate::geometry::Rect;
use crate::house::StartChoice;
use crate::length::Length;

fn of(trial: &Trial, seams: &[Length]) -> Layout {
    let sheets = vec![0; seams.len() + 1];
    let band = BandSpec {
        y0: Length::ZERO,
        y1: trial.top(),
        running: Running::Upright,
        seams: seams.to_vec(),
        sheets,
    };
    lay_out(
        &trial.house(),
        &trial.frame(),
        &LayoutSpec::Bands {
            reach: Length::ZERO,
            bands: vec![band],
        },
    )
}

/// Sheets sized for spacing, 47 7/8 wide, hold the 48 in. module with gaps of 1/8: at a wall end the cell is 48 and the
/// seam takes 1/16, so the sheet stays 1/16 short of the end (arithmetic).
#[test]
fn a_sheet_sized_for_spacing_stays_a_sixteenth_short_of_the_wall_end() {
    let trial = Trial::new(
        inch(144, 0),
        inch(92, 10),
        inch(16, 0),
        &[(inch(47, 14), inch(97, 2))],
    );
    let layout = of(&trial, &[inch(48, 0), inch(96, 0)]);
    let spans: Vec<_> = layout
        .pieces
        .iter()
        .map(|piece| piece.outline.bounds().x_span())
        .collect();
    let expected = [(1, 47, 15), (769, 95, 15), (1537, 143, 15)];
    for (span, (from, whole, sixteenths)) in spans.iter().zip(expected) {
        assert_eq!(
            (span.lo, span.hi),
            (Length::sixteenths(from), inch(whole, sixteenths))
        );
    }
}

/// A piece that is narrower than its sheet anyway reaches the wall's end.
#[test]
fn a_cut_piece_reaches_the_wall_end() {
    let trial = Trial::new(
        inch(80, 0),
        inch(92, 10),
        inch(16, 0),
        &[(inch(47, 14), inch(97, 2))],
    );
    let layout = of(&trial, &[inch(48, 0)]);
    assert_eq!(layout.pieces[1].outline.bounds().x_span().hi, inch(80, 0));
}

/// More than practice lets a sheet stay short, and the sheet does not fit: nothing is hidden.
#[test]
fn a_sheet_that_cannot_fit_is_left_too_large() {
    let trial = Trial::new(
        inch(96, 0),
        inch(92, 10),
        inch(16, 0),
        &[(inch(47, 0), inch(97, 2))],
    );
    let layout = of(&trial, &[inch(48, 0)]);
    assert_eq!(layout.pieces[0].outline.bounds().width(), inch(47, 15));
}

#[test]
fn an_opening_inside_a_panel_is_cut_back_and_splits_what_it_parts() {
    let mut trial = Trial::new(
        inch(96, 0),
        inch(92, 10),
        inch(16, 0),
        &[(inch(96, 0), inch(97, 2))],
    );
    trial.practice.opening_cut_back = inch(0, 2);
    trial.openings = vec![Rect::new(inch(20, 0), inch(30, 0), inch(50, 0), inch(70, 0))];
    let layout = of(&trial, &[]);
    assert_eq!(layout.pieces.len(), 1);
    let outline = &layout.pieces[0].outline;
    let hole = inch(30, 4) * 2 + inch(40, 4) * 2;
    assert_eq!(outline.perimeter(), inch(96, 0) * 2 + trial.top() * 2 + hole);
    // A seam through its middle leaves one C-shaped panel on each side.
    let halves = of(&trial, &[inch(35, 0)]);
    assert_eq!(
        halves
            .pieces
            .iter()
            .map(|piece| piece.mark.as_str())
            .collect::<Vec<_>>(),
        ["A1", "A2"]
    );
    assert!(
        halves
            .pieces
            .iter()
            .all(|piece| piece.outline.rings()[0].len() == 8)
    );
}

#[test]
fn sheets_are_hung_from_the_starting_end_the_lowest_course_first() {
    let mut trial = Trial::new(
        inch(144, 0),
        inch(92, 10),
        inch(16, 0),
        &[(inch(48, 0), inch(97, 2))],
    );
    let seams = vec![inch(48, 0), inch(96, 0)];
    let band = |y0, y1| BandSpec {
        y0,
        y1,
        running: Running::Upright,
        seams: seams.clone(),
        sheets: vec![0; 3],
    };
    let bands = vec![band(Length::ZERO, inch(48, 0)), band(inch(48, 0), trial.top())];
    let spec = LayoutSpec::Bands {
        reach: Length::ZERO,
        bands,
    };
    let order = |trial: &Trial| {
        let mut pieces = lay_out(&trial.house(), &trial.frame(), &spec).pieces;
        pieces.sort_by_key(|piece| piece.hang_order);
        pieces.into_iter().map(|piece| piece.mark).collect::<Vec<_>>()
    };
    assert_eq!(order(&trial), ["A1", "A2", "A3", "B1", "B2", "B3"]);
    trial.practice.starting_end = StartChoice::Right;
    assert_eq!(order(&trial), ["A3", "A2", "A1", "B3", "B2", "B1"]);
}

/// A strip whose gap ends at the side of a window keeps a piece under the window and one over it, each with its side of the
/// gap (arithmetic: the outlines fill the strip but for gap and window).
#[test]
fn a_gap_beside_an_opening_parts_what_it_parts() {
    let mut trial = Trial::new(
        inch(144, 0),
        inch(92, 10),
        inch(16, 0),
        &[(inch(48, 0), inch(97, 2))],
    );
    let window = Rect::new(inch(48, 1), inch(36, 0), inch(110, 0), inch(80, 0));
    trial.openings.push(window);
    let layout = of(&trial, &[inch(48, 0), inch(96, 2)]);
    let middle: Vec<_> = layout.pieces.iter().filter(|piece| piece.strip == 1).collect();
    assert_eq!(middle.len(), 2, "one piece under the window, one over it");
    let strip = Rect::new(inch(48, 0), Length::ZERO, inch(96, 2), trial.top());
    let cells: i128 = middle.iter().map(|piece| piece.cell.area2()).sum();
    let hole = window.intersect(&strip).map_or(0, |shared| shared.area());
    assert_eq!(cells, 2 * (strip.area() - hole), "the cells fill the strip");
    for piece in middle {
        let bounds = piece.outline.bounds();
        assert_eq!(bounds.x0, inch(48, 1));
        assert!(bounds.y1 <= window.y0 || window.y1 <= bounds.y0);
    }
}
