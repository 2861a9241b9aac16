use super::rules;
use crate::finding::{Finding, FindingCode, Severity};
use crate::geometry::Rect;
use crate::house::{GableTruss, Method, Pitch, RimKind, Top};
use crate::layout::foreign::foreign;
use crate::layout::trial::{Trial, Under, inch, sheet};
use crate::layout::{BandSpec, LayoutSpec, PieceSpec, Running, lay_out};
use crate::length::Length;
use crate::wording::Wording;
use proptest::prelude::*;

fn band(y0: Length, y1: Length, seams: &[i64]) -> BandSpec {
    BandSpec {
        y0,
        y1,
        running: Running::Upright,
        seams: seams.iter().map(|x| inch(*x, 0)).collect(),
        sheets: vec![0; seams.len() + 1],
    }
}

fn judged(trial: &Trial, reach: Length, bands: Vec<BandSpec>) -> Vec<Finding> {
    let (house, frame) = (trial.house(), trial.frame());
    rules(
        &house,
        &frame,
        &lay_out(&house, &frame, &LayoutSpec::Bands { reach, bands }),
    )
}

fn codes(findings: &[Finding]) -> Vec<(FindingCode, Severity)> {
    let mut codes: Vec<_> = findings
        .iter()
        .map(|finding| (finding.code, finding.severity))
        .collect();
    codes.dedup();
    codes
}

/// 16 ft of treated plate on concrete, sheets 10 ft long that overhang it by 1 in.
fn plain() -> Trial {
    let mut trial = Trial::new(
        inch(192, 0),
        inch(92, 10),
        inch(16, 0),
        &[(inch(47, 14), inch(120, 0))],
    );
    trial.treated = true;
    trial
}

#[test]
fn a_plain_wall_has_nothing_wrong() {
    let trial = plain();
    assert_eq!(
        judged(
            &trial,
            inch(1, 0),
            vec![band(-inch(1, 0), trial.top(), &[48, 96, 144])]
        ),
        []
    );
}

/// A sheet held up 1/2 in. on 97 1/8 ends 3/4 in. onto the upper plate: 5/8 is enough, 1/16 less than that is not.
#[test]
fn the_outermost_plate_is_covered_by_five_eighths() {
    let trial = plain();
    for (short, good) in [(inch(0, 12), true), (inch(0, 14), true), (inch(0, 15), false)] {
        let found = judged(
            &trial,
            -inch(0, 8),
            vec![band(inch(0, 8), trial.top() - short, &[48, 96, 144])],
        );
        let expected = [(FindingCode::TopPlateBare, Severity::Refuse)];
        assert_eq!(codes(&found), if good { &[][..] } else { &expected }, "{short}");
    }
    for (held_up, good) in [(inch(0, 8), true), (inch(0, 14), true), (inch(0, 15), false)] {
        let found = judged(&trial, -held_up, vec![band(held_up, trial.top(), &[48, 96, 144])]);
        let expected = [(FindingCode::BottomPlateBare, Severity::Refuse)];
        assert_eq!(codes(&found), if good { &[][..] } else { &expected }, "{held_up}");
    }
}

#[test]
fn what_no_panel_covers_is_found() {
    let trial = plain();
    let (house, frame) = (trial.house(), trial.frame());
    let piece = |x0: Length, x1: Length| PieceSpec {
        rect: Rect::new(x0, -inch(1, 0), x1, trial.top()),
        running: Running::Upright,
        sheet: 0,
    };
    let (eighth, next) = (inch(0, 2), inch(48, 0));
    let mut pieces: Vec<PieceSpec> = (0..4).map(|k| piece(next * k, next * (k + 1) - eighth)).collect();
    let good = rules(
        &house,
        &frame,
        &lay_out(&house, &frame, &LayoutSpec::Pieces(pieces.clone())),
    );
    assert_eq!(good, []);
    // One panel too far to the right lies over its neighbour and leaves a strip bare.
    pieces[1] = piece(next + inch(1, 0), next * 2 + inch(0, 14));
    let bad = rules(
        &house,
        &frame,
        &lay_out(&house, &frame, &LayoutSpec::Pieces(pieces.clone())),
    );
    assert!(
        codes(&bad).contains(&(FindingCode::NotCovered, Severity::Refuse)),
        "{bad:?}"
    );
    assert!(
        codes(&bad).contains(&(FindingCode::PanelsOverlap, Severity::Refuse)),
        "{bad:?}"
    );
    // A sixteenth instead of an eighth between two panels.
    pieces[1] = piece(next - inch(0, 1), next * 2 - inch(0, 4));
    let tight = rules(
        &house,
        &frame,
        &lay_out(&house, &frame, &LayoutSpec::Pieces(pieces)),
    );
    assert_eq!(codes(&tight), [(FindingCode::GapTooSmall, Severity::Refuse)]);
}

#[test]
fn a_panel_must_come_out_of_its_sheet() {
    let mut trial = plain();
    trial.sheets = vec![sheet("96", inch(47, 14), inch(95, 14))];
    let found = judged(
        &trial,
        inch(1, 0),
        vec![band(-inch(1, 0), trial.top(), &[48, 96, 144])],
    );
    assert_eq!(codes(&found), [(FindingCode::PanelTooLarge, Severity::Refuse)]);
    assert_eq!(found.len(), 4);
}

#[test]
fn narrow_strips_are_found_except_where_they_may_be() {
    let trial = plain();
    let course = |seams: &[i64]| {
        codes(&judged(
            &trial,
            inch(1, 0),
            vec![band(-inch(1, 0), trial.top(), seams)],
        ))
    };
    assert_eq!(
        course(&[48, 70, 96, 144]),
        [(FindingCode::Sliver, Severity::Mend)]
    );
    // The last piece may be narrow; under half the least strip the last two should share.
    assert_eq!(course(&[48, 96, 144, 176]), []);
    assert_eq!(
        course(&[48, 96, 144, 184]),
        [(FindingCode::Sliver, Severity::Advise)]
    );
    // A filler under 3 in. never.
    assert_eq!(
        course(&[48, 96, 144, 190]),
        [(FindingCode::Sliver, Severity::Refuse)]
    );
}

#[test]
fn a_seam_keeps_a_bay_from_an_opening_corner() {
    let mut trial = plain();
    trial.openings = vec![Rect::new(inch(66, 0), inch(30, 0), inch(102, 0), inch(80, 0))];
    trial.sheets = vec![sheet("wide", inch(120, 0), inch(120, 0))];
    let at = |seam: i64| {
        codes(&judged(
            &trial,
            inch(1, 0),
            vec![band(-inch(1, 0), trial.top(), &[seam, 144])],
        ))
    };
    assert!(at(48).is_empty());
    assert!(at(84).is_empty());
    assert!(at(64).contains(&(FindingCode::SeamAtOpeningCorner, Severity::Advise)));
    // On the king stud, where the header ends.
    assert!(at(65).contains(&(FindingCode::SeamOnJoint, Severity::Advise)));
}

#[test]
fn sheets_keep_off_concrete_and_overhang_it_by_an_inch_at_most() {
    let trial = plain();
    let reach = |reach: Length| {
        codes(&judged(
            &trial,
            reach,
            vec![band(-reach, trial.top(), &[48, 96, 144])],
        ))
    };
    assert_eq!(reach(Length::ZERO), [(FindingCode::Overhang, Severity::Mend)]);
    assert_eq!(reach(inch(1, 0)), []);
    assert_eq!(reach(inch(1, 1)), [(FindingCode::Overhang, Severity::Refuse)]);
}

#[test]
fn a_plate_on_concrete_is_treated() {
    let mut trial = plain();
    trial.treated = false;
    let found = judged(
        &trial,
        inch(1, 0),
        vec![band(-inch(1, 0), trial.top(), &[48, 96, 144])],
    );
    assert_eq!(codes(&found), [(FindingCode::PlateNotTreated, Severity::Mend)]);
}

/// 24 in. of a wall of 97 1/8 is 4.05 to 1 (arithmetic), past the 3.5 that counts; 28 in. is 3.47 to 1.
#[test]
fn a_narrow_leg_contributes_nothing_and_says_so() {
    for (width, narrow) in [(24, true), (28, false)] {
        let mut trial = plain();
        trial.segment(Length::ZERO, inch(width, 0), inch(6, 0), inch(12, 0));
        let found = judged(
            &trial,
            inch(1, 0),
            vec![band(-inch(1, 0), trial.top(), &[48, 96, 144])],
        );
        assert_eq!(
            found
                .iter()
                .any(|finding| finding.code == FindingCode::LegTooNarrow),
            narrow
        );
        if narrow {
            assert_eq!(found[0].found, Wording::of("4.05 : 1"));
        }
    }
}

#[test]
fn a_portal_leg_is_one_sheet() {
    let mut trial = plain();
    trial.segment(Length::ZERO, inch(24, 0), inch(3, 0), inch(3, 0));
    trial.segments[0].method = Method::Portal;
    let middle = inch(48, 0);
    let refused = |bands: Vec<BandSpec>| {
        judged(&trial, inch(1, 0), bands)
            .iter()
            .any(|finding| finding.severity == Severity::Refuse && finding.code == FindingCode::SeamOnJoint)
    };
    let (low, high) = (-inch(1, 0), trial.top());
    assert!(!refused(vec![band(low, high, &[48, 96, 144])]));
    assert!(refused(vec![band(low, high, &[16, 48, 96, 144])]));
    assert!(!refused(vec![
        band(low, middle, &[48, 96, 144]),
        band(middle, high, &[48, 96, 144])
    ]));
    let off = inch(30, 0);
    assert!(refused(vec![
        band(low, off, &[48, 96, 144]),
        band(off, high, &[48, 96, 144])
    ]));
}

#[test]
fn an_open_band_below_a_segment_is_refused() {
    for (under, severity) in [
        (Under::BandWithRim(RimKind::Sawn), None),
        (Under::OpenBand, Some(Severity::Refuse)),
    ] {
        let mut trial = plain();
        trial.band = under;
        trial.segment(Length::ZERO, inch(48, 0), inch(6, 0), inch(12, 0));
        let found = judged(
            &trial,
            inch(1, 0),
            vec![band(-inch(1, 0), trial.top(), &[48, 96, 144])],
        );
        let open = found.iter().find(|finding| finding.code == FindingCode::BandOpen);
        assert_eq!(open.map(|finding| finding.severity), severity);
    }
}

#[test]
fn a_seam_keeps_sixteen_inches_from_the_plate_line_under_a_gable_truss() {
    for (below, near) in [(15, true), (16, false)] {
        let mut trial = plain();
        trial.roof = Top::GableTruss(GableTruss {
            ridge_x: inch(96, 0),
            heel: inch(4, 0),
            pitch: Pitch {
                rise: inch(4, 0),
                run: inch(12, 0),
            },
            chord: inch(3, 8),
            web_width: inch(1, 8),
            web_spacing: inch(24, 0),
            setback: Length::ZERO,
            sheathed: true,
            hold_up: Length::ZERO,
        });
        let seam = trial.top() - inch(below, 0);
        let bands = vec![
            band(-inch(1, 0), seam, &[48, 96, 144]),
            band(seam, trial.top() + inch(40, 0), &[48, 96, 144]),
        ];
        let found = judged(&trial, inch(1, 0), bands);
        assert_eq!(
            found
                .iter()
                .any(|finding| finding.code == FindingCode::SeamOnJoint),
            near
        );
    }
}

#[test]
fn thin_panels_upright_on_wide_studs_are_warned_of() {
    for (spacing, warned) in [(16, false), (24, true)] {
        let mut trial = plain();
        trial.spacing = inch(spacing, 0);
        let found = judged(
            &trial,
            inch(1, 0),
            vec![band(-inch(1, 0), trial.top(), &[48, 96, 144])],
        );
        assert_eq!(
            found
                .iter()
                .any(|finding| finding.code == FindingCode::RunningDirection),
            warned
        );
    }
}

proptest! {
    /// Cells tile the sheathed region: together they have its area, and no two share any.
    #[test]
    fn cells_tile_the_region((trial, spec) in foreign()) {
        let (house, frame) = (trial.house(), trial.frame());
        let layout = lay_out(&house, &frame, &spec);
        let LayoutSpec::Bands { reach, bands } = &spec else { unreachable!() };
        let top = bands.last().unwrap().y1;
        let region = crate::geometry::Region {
            lower: frame.lower.shifted(-*reach),
            upper: frame.upper.clone(),
            holes: frame.holes(),
        };
        let bounds = region.bounds().unwrap();
        let strips: Vec<Rect> = bands.iter().enumerate().flat_map(|(index, band)| {
            let y0 = if index == 0 { bounds.y0 } else { band.y0 };
            let xs: Vec<Length> =
                std::iter::once(bounds.x0).chain(band.seams.iter().copied()).chain([bounds.x1]).collect();
            xs.windows(2).map(|x| Rect::new(x[0], y0, x[1], band.y1)).collect::<Vec<_>>()
        }).collect();
        let covered = Rect::new(bounds.x0, bounds.y0, bounds.x1, top);
        let whole: i128 =
            region.with_cells(&strips).pieces_in(covered).iter().map(crate::geometry::Shape::area2).sum();
        let cells: i128 = layout.pieces.iter().map(|piece| piece.cell.area2()).sum();
        // A part too thin to be left between its gaps is no piece.
        let thin: i128 = strips.iter().flat_map(|strip| region.pieces_in(*strip)).filter(|shape| {
            layout.pieces.iter().all(|piece| piece.cell != *shape)
        }).map(|shape| shape.area2()).sum();
        prop_assert_eq!(cells + thin, whole);
        for (index, one) in layout.pieces.iter().enumerate() {
            for other in layout.pieces.iter().skip(index + 1) {
                prop_assert_eq!(one.cell.overlap_area2(&other.cell), 0);
            }
        }
    }

    /// Outlines keep the gap: no panel comes nearer to another than practice's gap.
    #[test]
    fn outlines_keep_their_gaps((trial, spec) in foreign()) {
        let (house, frame) = (trial.house(), trial.frame());
        let layout = lay_out(&house, &frame, &spec);
        let found = rules(&house, &frame, &layout);
        let near = |finding: &Finding| {
            matches!(finding.code, FindingCode::GapTooSmall | FindingCode::PanelsOverlap)
        };
        prop_assert!(!found.iter().any(near), "{:?}", found);
    }
}
