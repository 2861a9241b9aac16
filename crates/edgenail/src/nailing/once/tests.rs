use super::drive_once;
use crate::frame::MemberId;
use crate::geometry::Point;
use crate::length::Length;
use crate::nailing::{NailRow, Zone};
use proptest::prelude::*;
use std::collections::BTreeSet;

/// A row that starts on a grid of 60 units and goes right, up, or along a slope either way; with places on the grid
/// where its spaces divide it, off the grid where they do not.
fn row() -> impl Strategy<Value = NailRow> {
    let start = (0i64..5, 0i64..5);
    let way = (0i64..5, -4i64..5);
    let part = (1u32..6, 0u32..6, 0u32..6);
    (start, way, part).prop_map(|((x, y), (right, up), (spaces, a, b))| {
        let place = |x: i64, y: i64| Point::new(Length::from_units(x * 60), Length::from_units(y * 60));
        let (first, last) = (a.min(b).min(spaces), a.max(b).min(spaces));
        NailRow {
            piece: 0,
            member: MemberId(0),
            zone: Zone::Edge,
            nail: 0,
            from: place(x, y),
            to: place(x + right, y + up),
            spaces,
            first,
            last,
            moved: false,
        }
    })
}

/// Every nail with the row that it is of, told by where the row begins and ends; of nails in one place only the first
/// of an earlier row, the slow way.
fn once(rows: &[NailRow]) -> Vec<(Point, Point, Point)> {
    let mut taken = BTreeSet::new();
    let mut left = Vec::new();
    for row in rows {
        let own: Vec<Point> = row.positions().collect();
        left.extend(
            own.iter()
                .filter(|at| !taken.contains(*at))
                .map(|at| (row.from, row.to, *at)),
        );
        taken.extend(own);
    }
    left
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(1024))]

    #[test]
    fn a_nail_stands_in_each_place_once(before in row(), rows in proptest::collection::vec(row(), 0..5)) {
        let mut driven = vec![before.clone()];
        driven.extend(rows.clone());
        drive_once(&mut driven, 1);
        // Rows from another piece stay as they are.
        prop_assert_eq!(&driven[0], &before);
        let nails: Vec<(Point, Point, Point)> =
            driven[1..].iter().flat_map(|row| row.positions().map(|at| (row.from, row.to, at))).collect();
        prop_assert_eq!(nails, once(&rows));
    }
}
