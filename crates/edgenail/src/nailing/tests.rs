use super::{Nailing, nail_all, nailing};
use crate::edges::{PanelEdge, Site, edges};
use crate::frame::{Frame, MemberKind};
use crate::geometry::Point;
use crate::house::House;
use crate::layout::foreign::foreign;
use crate::layout::trial::{Trial, inch};
use crate::layout::{BandSpec, Layout, LayoutSpec, Running, Side, lay_out};
use crate::length::Length;
use proptest::prelude::*;

/// One course of a wall, from its base to its top, with seams every so often.
fn course(trial: &Trial, running: Running, module: Length) -> LayoutSpec {
    let mut seams = Vec::new();
    let mut x = module;
    while x < trial.length {
        seams.push(x);
        x += module;
    }
    let sheets = vec![0; seams.len() + 1];
    LayoutSpec::Bands {
        reach: Length::ZERO,
        bands: vec![BandSpec {
            y0: Length::ZERO,
            y1: trial.top(),
            running,
            seams,
            sheets,
        }],
    }
}

fn through(house: &House, frame: &Frame, spec: &LayoutSpec) -> (Frame, Layout, Nailing) {
    let layout = lay_out(house, frame, spec);
    let runs = edges(house, frame, &layout);
    let added = crate::blocking::blocking(house, frame, &layout, &runs);
    let frame = frame.with(&added);
    let runs = edges(house, &frame, &layout);
    let nailing = nailing(house, &frame, &layout, &runs);
    (frame, layout, nailing)
}

fn nails_of(nailing: &Nailing, piece: u32) -> u32 {
    nailing
        .rows
        .iter()
        .filter(|row| row.piece == piece)
        .map(super::NailRow::count)
        .sum()
}

/// Nails of the first sheet of a wall, all its edges on framing: perimeter over edge spacing, and on each inner stud
/// its length over the field spacing less one (arithmetic from the spacing rule; corner nails are shared). The sheets
/// after it have one nail more where rows on a shared stud are staggered.
#[test]
fn upright_sheets_take_the_nails_that_spacing_asks_for() {
    let table = [
        (96, 16, [62, 86, 110, 158]),
        (96, 24, [55, 79, 103, 151]),
        (108, 16, [68, 94, 120, 172]),
        (108, 24, [60, 86, 112, 164]),
        (120, 16, [74, 102, 130, 186]),
        (120, 24, [65, 93, 121, 177]),
    ];
    for (height, spacing, counts) in table {
        for (edge, count) in [6, 4, 3, 2].into_iter().zip(counts) {
            let sheet = (inch(47, 14), inch(height, 0) - inch(0, 2));
            let mut trial = Trial::new(
                Length::feet(20),
                inch(height, 0) - inch(4, 8),
                inch(spacing, 0),
                &[sheet],
            );
            trial.practice.assembly.edge_spacing = inch(edge, 0);
            let (house, frame) = (trial.house(), trial.frame());
            let (_, _, nailing) = through(&house, &frame, &course(&trial, Running::Upright, inch(48, 0)));
            assert_eq!(
                nails_of(&nailing, 0),
                count,
                "{height} in. sheet, {spacing} in. studs, nails at {edge} in."
            );
        }
    }
}

#[test]
fn flat_sheets_take_the_nails_that_spacing_asks_for() {
    for (spacing, counts) in [(16, [63, 87, 111, 159]), (24, [57, 81, 105, 153])] {
        for (edge, count) in [6, 4, 3, 2].into_iter().zip(counts) {
            let sheet = (inch(47, 14), inch(95, 14));
            let mut trial = Trial::new(Length::feet(32), inch(43, 8), inch(spacing, 0), &[sheet]);
            trial.practice.assembly.edge_spacing = inch(edge, 0);
            let (house, frame) = (trial.house(), trial.frame());
            let (_, _, nailing) = through(&house, &frame, &course(&trial, Running::Flat, inch(96, 0)));
            assert_eq!(
                nails_of(&nailing, 0),
                count,
                "{spacing} in. studs, nails at {edge} in."
            );
        }
    }
}

/// In a shear segment the plates that a sheet crosses away from its own edges are nailed at edge spacing, and so is the
/// member at the segment's end over its full height.
#[test]
fn a_segment_has_rows_on_its_boundary() {
    let mut trial = Trial::new(
        Length::feet(8),
        inch(92, 10),
        inch(16, 0),
        &[(inch(47, 14), inch(108, 0))],
    );
    trial.segment(Length::ZERO, Length::feet(8), inch(4, 0), inch(12, 0));
    let (house, frame) = (trial.house(), trial.frame());
    let (frame, _, nailing) = through(&house, &frame, &course(&trial, Running::Upright, inch(48, 0)));
    let widest = |kind: MemberKind| {
        let rows = nailing
            .rows
            .iter()
            .filter(|row| frame.member(row.member).unwrap().kind == kind);
        rows.map(|row| row.from.distance(row.to).units() / i64::from(row.spaces))
            .max()
            .unwrap()
    };
    for kind in [MemberKind::BottomPlate, MemberKind::TopPlate, MemberKind::EndStud] {
        assert!(widest(kind) <= inch(4, 0).units(), "{kind:?}");
    }
}

proptest! {
    #[test]
    fn every_nail_has_wood_round_it_and_panel_round_it((trial, spec) in foreign()) {
        let (house, frame) = (trial.house(), trial.frame());
        let (frame, layout, nailing) = through(&house, &frame, &spec);
        for nail in nailing.nails() {
            let row = &nailing.rows[nail.row as usize];
            let face = &frame.member(row.member).unwrap().face;
            let wood = face.inset(trial.practice.member_edge_least).unwrap();
            prop_assert!(wood.contains(nail.at), "{:?} in {:?}", row, face.bounds());
            let outline = &layout.pieces[row.piece as usize].outline;
            let least = trial.practice.edge_distance_least;
            let clear = [(-least, -least), (least, -least), (-least, least), (least, least)];
            for (right, up) in clear {
                let corner = Point::new(nail.at.x + right, nail.at.y + up);
                prop_assert!(outline.contains(corner), "{:?} in {:?}", row, outline.bounds());
            }
        }
    }

    #[test]
    fn no_nail_is_driven_twice((trial, spec) in foreign()) {
        let (house, frame) = (trial.house(), trial.frame());
        let (_, _, nailing) = through(&house, &frame, &spec);
        let mut places: Vec<(u32, Point)> =
            nailing.nails().map(|nail| (nailing.rows[nail.row as usize].piece, nail.at)).collect();
        places.sort_unstable();
        for pair in places.windows(2) {
            let rows = || nailing.rows.iter().filter(|row| row.piece == pair[0].0 && row.positions().any(|at| at == pair[0].1));
            prop_assert!(pair[0] != pair[1], "{:?} {:?}", pair[0], rows().collect::<Vec<_>>());
        }
    }

    /// Between two neighbouring nails of an edge that is held all the way there is no more than its spacing, or a
    /// quarter more where one of them had to move.
    #[test]
    fn nails_of_a_held_edge_keep_their_spacing((trial, spec) in foreign()) {
        let (house, frame) = (trial.house(), trial.frame());
        let (frame, layout, nailing) = through(&house, &frame, &spec);
        let site = Site::new(&house, &frame).unwrap();
        let runs = edges(&house, &frame, &layout);
        let (_, snags) = nail_all(&site, &layout, &runs);
        for edge in runs.chunk_by(|a, b| (a.piece, a.edge) == (b.piece, b.edge)) {
            let plumb = edge[0].side.is_plumb();
            let spacing = edge.iter().map(|run| site.edge_spacing(run.area())).min().unwrap();
            for held in edge.chunk_by(|a, b| a.inset.is_some() && b.inset.is_some()) {
                let place = |at: Point| if plumb { at.y } else { at.x };
                let across = |at: Point| if plumb { at.x } else { at.y };
                let (lo, hi) = (place(held[0].from), place(held[held.len() - 1].to));
                if held[0].inset.is_none() || hi - lo < spacing {
                    continue;
                }
                // A strip of panel too thin for a nail holds none.
                let inward = |along: Length| {
                    let edge = PanelEdge { side: held[0].side, from: held[0].from, to: held[held.len() - 1].to };
                    edge.point(along, trial.practice.edge_distance_least + inch(0, 14))
                };
                let outline = &layout.pieces[held[0].piece as usize].outline;
                if [lo, (lo + hi).half(), hi].into_iter().any(|along| !outline.contains(inward(along))) {
                    continue;
                }
                let lines: Vec<Length> = held.iter().filter_map(|run| {
                    let inset = run.inset?;
                    Some(match run.side {
                        Side::Left | Side::Bottom => across(run.from) + inset,
                        Side::Right | Side::Top => across(run.from) - inset,
                    })
                }).collect();
                let on_line: Vec<_> = nailing.rows.iter().filter(|row| row.piece == held[0].piece).collect();
                // A nail that serves a corner and had to move along the crossing row stands a little off this line.
                let off = |moved: bool| if moved { trial.practice.edge_distance_least } else { Length::ZERO };
                let mut at: Vec<(Length, bool)> = on_line.iter()
                    .flat_map(|row| row.positions().map(move |at| (at, row.moved)))
                    .filter(|(at, moved)| lines.iter().any(|line| (*line - across(*at)).abs() <= off(*moved)) && lo <= place(*at) && place(*at) <= hi)
                    .map(|(at, moved)| (place(at), moved))
                    .collect();
                // A nail that found no wood is reported instead.
                at.extend(
                    snags
                        .iter()
                        .filter(|snag| snag.piece == held[0].piece && lo <= place(snag.at) && place(snag.at) <= hi)
                        .filter(|snag| (across(snag.at) - across(held[0].from)).abs() < inch(1, 0))
                        .map(|snag| (place(snag.at), true)),
                );
                at.sort_unstable();
                prop_assert!(!at.is_empty(), "{:?}", held);
                let quarter = Length::from_units(spacing.units() / 4);
                for pair in at.windows(2) {
                    let most = if pair[0].1 || pair[1].1 { spacing + quarter + quarter } else { spacing };
                    prop_assert!(pair[1].0 - pair[0].0 <= most + Length::from_units(1), "{:?} {:?}", pair, held);
                }
                let most = |moved: bool| if moved { spacing + quarter } else { spacing };
                let (first, last) = (at[0], at[at.len() - 1]);
                prop_assert!(first.0 - lo <= most(first.1) && hi - last.0 <= most(last.1), "{lo:?} {hi:?} {at:?} {held:?}");
            }
        }
    }
}
