use super::*;
use proptest::prelude::*;

/// Whole units, from plain numbers.
fn unit(n: i64) -> Length {
    Length::from_units(n)
}

fn rect(x0: i64, y0: i64, x1: i64, y1: i64) -> Rect {
    Rect::new(unit(x0), unit(y0), unit(x1), unit(y1))
}

fn profile(points: &[(i64, i64)]) -> Profile {
    Profile::new(
        points
            .iter()
            .map(|&(x, y)| Point::new(unit(x), unit(y)))
            .collect(),
    )
    .unwrap()
}

/// A stepped base, a rake in one to three straight parts, holes anywhere.
fn any_region() -> impl Strategy<Value = Region> {
    let base = (0i64..40, 0i64..40, 20i64..380).prop_map(|(left, right, step)| {
        if left == right {
            profile(&[(0, left), (400, left)])
        } else {
            profile(&[(0, left), (step, left), (step, right), (400, right)])
        }
    });
    let rake = prop::collection::vec((1i64..400, 60i64..300), 0..4).prop_flat_map(|mut inner| {
        inner.sort_unstable();
        inner.dedup_by_key(|p| p.0);
        (60i64..300, 60i64..300).prop_map(move |(first, last)| {
            let mut points = vec![(0, first)];
            points.extend(&inner);
            points.push((400, last));
            profile(&points)
        })
    });
    let hole = (0i64..380, 0i64..300, 1i64..150, 1i64..150).prop_map(|(x, y, w, h)| rect(x, y, x + w, y + h));
    (base, rake, prop::collection::vec(hole, 0..5)).prop_map(|(lower, upper, holes)| Region {
        lower,
        upper,
        holes,
    })
}

/// Courses with seams of their own that cover the whole region.
fn any_cells() -> impl Strategy<Value = Vec<Rect>> {
    let seams = || prop::collection::btree_set(1i64..400, 0..6);
    let courses = prop::collection::btree_set(1i64..300, 0..4);
    (courses, prop::collection::vec(seams(), 5)).prop_map(|(courses, seams)| {
        let levels: Vec<i64> = [-10].into_iter().chain(courses).chain([310]).collect();
        let mut cells = Vec::new();
        for (level, seams) in levels.windows(2).zip(&seams) {
            let xs: Vec<i64> = [0]
                .into_iter()
                .chain(seams.iter().copied())
                .chain([400])
                .collect();
            cells.extend(xs.windows(2).map(|x| rect(x[0], level[0], x[1], level[1])));
        }
        cells
    })
}

fn flat(region: &Region) -> Region {
    let level = |p: &Profile| {
        let steps: Vec<Point> = p
            .segments()
            .flat_map(|(a, b)| [a, Point::new(b.x, a.y)])
            .collect();
        Profile::new(steps).unwrap()
    };
    Region {
        lower: level(&region.lower),
        upper: level(&region.upper),
        holes: region.holes.clone(),
    }
}

proptest! {
    /// With level and plumb lines only, cells cover the region exactly.
    #[test]
    fn cells_cover_a_rectilinear_region(region in any_region(), cells in any_cells()) {
        let region = flat(&region);
        let pieces: Vec<Shape> = cells.iter().flat_map(|&cell| region.pieces_in(cell)).collect();
        let sum: i128 = pieces.iter().map(Shape::area2).sum();
        prop_assert_eq!(sum, region.area2());
        for (i, a) in pieces.iter().enumerate() {
            let rings: i128 = a.rings().iter().map(|r| super::super::point::ring_area2(r)).sum();
            prop_assert_eq!(rings, a.area2());
            for b in &pieces[..i] {
                prop_assert_eq!(a.overlap_area2(b), 0);
            }
        }
    }

    /// On a slope, cells cover the region that has their corners.
    #[test]
    fn cells_cover_a_raked_region(region in any_region(), cells in any_cells()) {
        let sum: i128 = cells.iter().flat_map(|&cell| region.pieces_in(cell)).map(|p| p.area2()).sum();
        prop_assert_eq!(sum, region.with_cells(&cells).area2());
    }
}
