use super::{Nailing, nailing};
use crate::edges::edges;
use crate::frame::{Frame, MemberKind};
use crate::house::House;
use crate::layout::trial::{Trial, backed, inch};
use crate::layout::{BandSpec, Layout, LayoutSpec, Running, lay_out};
use crate::length::Length;

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
    let frame = backed(frame, &added);
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
