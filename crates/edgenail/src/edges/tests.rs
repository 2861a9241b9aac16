use super::{EdgeRun, Side, Support, edges};
use crate::frame::{Frame, Member};
use crate::geometry::{Interval, Point};
use crate::house::Top;
use crate::layout::foreign::foreign;
use crate::layout::trial::{Trial, inch};
use crate::layout::{BandSpec, Joint, LayoutSpec, Running, lay_out};
use crate::length::Length;
use proptest::prelude::*;

/// A point on the panel's edge, moved into the panel.
fn inside(run: &EdgeRun, at: Point, depth: Length) -> Point {
    match run.side {
        Side::Left => Point::new(at.x + depth, at.y),
        Side::Right => Point::new(at.x - depth, at.y),
        Side::Bottom => Point::new(at.x, at.y + depth),
        Side::Top => Point::new(at.x, at.y - depth),
    }
}

/// The slow way to tell whether a member holds an edge at a place: try every depth and look at points.
fn is_held(trial: &Trial, frame: &Frame, run: &EdgeRun, at: Point, seam: bool) -> bool {
    let practice = &trial.practice;
    let step = Length::from_units(Length::PER_INCH / 80);
    let most = if seam {
        practice.edge_distance_most
    } else {
        practice.free_edge_most
    };
    let near: Vec<_> = frame
        .members
        .iter()
        .filter(|member| member.nailable && member.face.bounds().grown(inch(3, 0)).contains(at))
        .collect();
    let mut depth = practice.edge_distance_least;
    while depth <= most {
        let shallow = inside(run, at, depth - practice.member_edge_least);
        let deep = inside(run, at, depth + practice.member_edge_least);
        if near
            .iter()
            .any(|member| member.face.contains(shallow) && member.face.contains(deep))
        {
            return true;
        }
        depth += step;
    }
    false
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]

    #[test]
    fn points_along_each_edge_agree_with_its_runs((trial, spec) in foreign()) {
        let (house, frame) = (trial.house(), trial.frame());
        let layout = lay_out(&house, &frame, &spec);
        let runs = edges(&house, &frame, &layout);
        // A panel's edge is judged as a seam over its whole length as soon as another panel meets it.
        let seam = |run: &EdgeRun| {
            runs.iter().any(|other| (other.piece, other.edge) == (run.piece, run.edge) && other.partner.is_some())
        };
        let sixteenth = Length::sixteenths(1);
        for run in &runs {
            let seam = seam(run);
            let length = run.from.distance(run.to);
            let sloped = run.from.x != run.to.x && run.from.y != run.to.y;
            let raked = trial.roof != Top::Flat;
            let mut along = sixteenth.half();
            while along < length && !sloped {
                let at = if run.side.is_plumb() {
                    Point::new(run.from.x, run.from.y + along)
                } else {
                    Point::new(run.from.x + along, run.from.y)
                };
                let held = matches!(run.support, Support::Member { .. });
                // Where a plate slopes, the least line may end a little before a deeper one would.
                let slow = is_held(&trial, &frame, run, at, seam);
                prop_assert!(held == slow || (raked && slow), "{:?} at {:?}", run, at);
                along += sixteenth;
            }
        }
    }
}

proptest! {
    #[test]
    fn runs_of_a_piece_sum_to_its_perimeter((trial, spec) in foreign()) {
        let (house, frame) = (trial.house(), trial.frame());
        let layout = lay_out(&house, &frame, &spec);
        let runs = edges(&house, &frame, &layout);
        for piece in &layout.pieces {
            let sum: Length = runs.iter().filter(|run| run.piece == piece.id).map(|run| run.length).sum();
            prop_assert_eq!(sum, piece.outline.perimeter());
        }
    }

    #[test]
    fn panels_across_a_seam_name_each_other((trial, spec) in foreign()) {
        let (house, frame) = (trial.house(), trial.frame());
        let layout = lay_out(&house, &frame, &spec);
        let runs = edges(&house, &frame, &layout);
        for run in runs.iter().filter(|run| run.partner.is_some()) {
            let back = |other: &&EdgeRun| {
                Some(other.piece) == run.partner && other.partner == Some(run.piece) && other.side == run.side.opposite()
            };
            prop_assert!(runs.iter().any(|other| back(&other)), "{:?}", run);
            prop_assert_eq!(run.joint, Joint::Seam);
        }
    }
}

/// Top edge of an uncut 96 in. sheet, flush with the bottom of a wall of 92 5/8 studs under two plates.
fn top_of_a_flush_sheet(trial: &Trial) -> Vec<EdgeRun> {
    let (house, frame) = (trial.house(), trial.frame());
    let band = BandSpec {
        y0: Length::ZERO,
        y1: inch(96, 0),
        running: Running::Upright,
        seams: vec![inch(48, 0)],
        sheets: vec![0, 0],
    };
    let layout = lay_out(
        &house,
        &frame,
        &LayoutSpec::Bands {
            reach: Length::ZERO,
            bands: vec![band],
        },
    );
    edges(&house, &frame, &layout)
        .into_iter()
        .filter(|run| run.side == Side::Top)
        .collect()
}

/// A wall of 97 1/8 has the joint of its top plates at 95 5/8, just where the 3/8 line of a flush 96 in. sheet falls
/// (arithmetic). The line moves in to 5/8, where the lower plate gives it 1/4 in. of wood.
#[test]
fn a_line_on_the_joint_of_the_plates_moves_into_the_lower_one() {
    let mut trial = Trial::new(
        inch(96, 0),
        inch(92, 10),
        inch(16, 0),
        &[(inch(48, 0), inch(96, 0))],
    );
    let frame = trial.frame();
    let lower = |member: &&Member| member.face.bounds().y_span() == Interval::new(inch(94, 2), inch(95, 10));
    let lower_plate = frame.members.iter().find(lower).unwrap().id;
    for run in top_of_a_flush_sheet(&trial) {
        assert_eq!(run.support, Support::Member { member: lower_plate });
        assert_eq!((run.inset, run.wood), (Some(inch(0, 10)), Some(inch(0, 4))));
    }
    // Not allowed to move so far, the line leaves the edge to the middle of the plate that the sheet runs past.
    trial.practice.edge_distance_most = inch(0, 8);
    for run in top_of_a_flush_sheet(&trial) {
        assert_eq!(
            (run.support, run.inset),
            (Support::Member { member: lower_plate }, Some(inch(1, 2)))
        );
    }
    // And where no sheet may hang free, nothing is left.
    trial.practice.free_edge_most = inch(0, 8);
    assert!(
        top_of_a_flush_sheet(&trial)
            .iter()
            .all(|run| run.member().is_none())
    );
}

/// A 2x stud under a seam with a 1/8 gap gives each panel 11/16 of face; 3/8 to the nail and 1/4 of wood beyond it need
/// 5/8, so the seam may stand 1/16 off the middle and no more (arithmetic).
#[test]
fn a_seam_may_stand_a_sixteenth_off_the_middle_of_a_stud() {
    for (off, good) in [(-2, false), (-1, true), (0, true), (1, true), (2, false)] {
        let trial = Trial::new(
            inch(96, 0),
            inch(92, 10),
            inch(16, 0),
            &[(inch(48, 0), inch(120, 0))],
        );
        let (house, frame) = (trial.house(), trial.frame());
        let seam = inch(48, off);
        let band = BandSpec {
            y0: Length::ZERO,
            y1: trial.top(),
            running: Running::Upright,
            seams: vec![seam],
            sheets: vec![0, 0],
        };
        let layout = lay_out(
            &house,
            &frame,
            &LayoutSpec::Bands {
                reach: Length::ZERO,
                bands: vec![band],
            },
        );
        let runs = edges(&house, &frame, &layout);
        let mut at_seam = runs
            .iter()
            .filter(|run| run.side.is_plumb() && run.partner.is_some());
        assert_eq!(at_seam.all(|run| run.member().is_some()), good, "{off}/16 off");
        assert_eq!(runs.iter().any(EdgeRun::lacks_backing), !good, "{off}/16 off");
    }
}

/// A sheet that hangs 1/2 in. below the bottom plate has its row in the middle of the plate, 1 1/4 from its edge.
#[test]
fn an_overhanging_sheet_is_nailed_in_the_middle_of_the_plate() {
    let trial = Trial::new(
        inch(96, 0),
        inch(92, 10),
        inch(16, 0),
        &[(inch(48, 0), inch(120, 0))],
    );
    let (house, frame) = (trial.house(), trial.frame());
    for (overhang, inset) in [
        (inch(0, 8), Some(inch(1, 4))),
        (inch(1, 4), Some(inch(2, 0))),
        (inch(2, 0), None),
    ] {
        let band = BandSpec {
            y0: -overhang,
            y1: trial.top(),
            running: Running::Upright,
            seams: vec![inch(48, 0)],
            sheets: vec![0, 0],
        };
        let layout = lay_out(
            &house,
            &frame,
            &LayoutSpec::Bands {
                reach: overhang,
                bands: vec![band],
            },
        );
        for run in edges(&house, &frame, &layout)
            .iter()
            .filter(|run| run.side == Side::Bottom)
        {
            assert_eq!(run.inset, inset, "{overhang}");
        }
    }
}

/// The clear bay of 16 in. studs is 14 1/2 and passes; that of 24 in. studs is 22 1/2 and does not (common practice, no
/// source).
#[test]
fn a_level_edge_is_backed_where_the_clear_bay_is_wide() {
    for (spacing, backed) in [(16, false), (24, true)] {
        let trial = Trial::new(
            inch(192, 0),
            inch(92, 10),
            inch(spacing, 0),
            &[(inch(48, 0), inch(96, 0))],
        );
        let (house, frame) = (trial.house(), trial.frame());
        let band = |y0, y1, seam: i64| BandSpec {
            y0,
            y1,
            running: Running::Flat,
            seams: vec![inch(seam, 0)],
            sheets: vec![0, 0],
        };
        let bands = vec![
            band(Length::ZERO, inch(48, 0), 96),
            band(inch(48, 0), trial.top(), 48),
        ];
        let layout = lay_out(
            &house,
            &frame,
            &LayoutSpec::Bands {
                reach: Length::ZERO,
                bands,
            },
        );
        let runs = edges(&house, &frame, &layout);
        let bays: Vec<_> = runs
            .iter()
            .filter(|run| run.bay.is_some() && !run.side.is_plumb())
            .collect();
        assert!(!bays.is_empty());
        // The last bay ends at the end stud, which stands 3/4 in. off the layout.
        assert!(bays.iter().all(|run| run.bay <= Some(inch(spacing, -24))));
        assert!(
            bays.iter()
                .filter(|run| run.bay == Some(inch(spacing, -24)))
                .all(|run| run.must_back == backed)
        );
    }
}
