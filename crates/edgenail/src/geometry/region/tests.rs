use super::*;
use crate::geometry::point::ring_area2;
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

/// A line over the whole wall with up to four straight parts, level or no steeper than so many units in one,
/// and steps.
fn any_limit(heights: std::ops::Range<i64>, steepest: i64) -> impl Strategy<Value = Profile> {
    let part = (
        1i64..400,
        heights.clone(),
        heights.clone(),
        any::<bool>(),
        any::<bool>(),
    );
    (heights, prop::collection::vec(part, 1..5)).prop_map(move |(first, mut parts)| {
        parts.sort_unstable();
        parts.dedup_by_key(|part| part.0);
        let mut points = vec![(0, first)];
        let last = parts.len() - 1;
        for (i, (x, y, step, level, steps)) in parts.into_iter().enumerate() {
            let x = if i == last { 400 } else { x };
            let (before, from) = points[points.len() - 1];
            let y = if level || (y - from).abs() > steepest * (x - before) {
                from
            } else {
                y
            };
            points.push((x, y));
            if steps && i < last {
                points.push((x, step));
            }
        }
        profile(&points)
    })
}

fn region_between(
    lower: impl Strategy<Value = Profile>,
    upper: impl Strategy<Value = Profile>,
) -> impl Strategy<Value = Region> {
    let hole = (0i64..380, 0i64..300, 1i64..150, 1i64..150).prop_map(|(x, y, w, h)| rect(x, y, x + w, y + h));
    (lower, upper, prop::collection::vec(hole, 0..5)).prop_map(|(lower, upper, holes)| Region {
        lower,
        upper,
        holes,
    })
}

/// Limits as steep as the numbers allow, which may cross; holes anywhere.
fn any_region() -> impl Strategy<Value = Region> {
    region_between(any_limit(0..90, 400), any_limit(60..300, 400))
}

/// Limits no steeper than 24 in 12, which may touch; holes anywhere.
fn roofed_region() -> impl Strategy<Value = Region> {
    region_between(any_limit(0..61, 2), any_limit(60..300, 2))
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

fn scaled(region: &Region, scale: i64) -> Region {
    let line = |p: &Profile| {
        Profile::new(
            p.points()
                .iter()
                .map(|p| Point::new(p.x * scale, p.y * scale))
                .collect(),
        )
        .unwrap()
    };
    Region {
        lower: line(&region.lower),
        upper: line(&region.upper),
        holes: scaled_rects(&region.holes, scale),
    }
}

fn scaled_rects(rects: &[Rect], scale: i64) -> Vec<Rect> {
    let by = |r: &Rect| Rect::new(r.x0 * scale, r.y0 * scale, r.x1 * scale, r.y1 * scale);
    rects.iter().map(by).collect()
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
            let rings: i128 = a.rings().iter().map(|r| ring_area2(r)).sum();
            prop_assert_eq!(rings, a.area2());
            for b in &pieces[..i] {
                prop_assert_eq!(a.overlap_area2(b), 0);
            }
        }
    }

    /// On a slope, cells cover the region that has their corners, to the last unit. Coordinates are multiples
    /// of some dozen thousandths of an inch at least: what does not meet is then apart by more than rounding.
    #[test]
    fn cells_cover_a_raked_region(region in roofed_region(), cells in any_cells(), scale in 500i64..50_000) {
        let (region, cells) = (scaled(&region, scale), scaled_rects(&cells, scale));
        let sum: i128 = cells.iter().flat_map(|&cell| region.pieces_in(cell)).map(|p| p.area2()).sum();
        prop_assert_eq!(sum, region.with_cells(&cells).area2());
    }

    /// Corners stray from the limits by less than a unit, so the sum hardly differs from the plain area.
    #[test]
    fn rounding_stays_small(region in any_region(), cells in any_cells()) {
        let (region, cells) = (scaled(&region, 4_000), scaled_rects(&cells, 4_000));
        let sum: i128 = cells.iter().flat_map(|&cell| region.pieces_in(cell)).map(|p| p.area2()).sum();
        // Two limits, 400 by at most 400 by scale of edge on each, a unit on either hand, doubled.
        prop_assert!((sum - region.area2()).abs() <= 2 * 2 * 800 * 4_000);
    }

    /// A point well inside lies in one piece, a point well outside in none.
    #[test]
    fn points_lie_where_they_should(
        region in any_region(), cells in any_cells(), x in 5i64..395, y in -8i64..305
    ) {
        let point = Point::new(unit(x), unit(y));
        let near = rect(x - 4, y - 4, x + 4, y + 4);
        let over = |limit: &Profile| limit.y_over(near.x_span()).unwrap();
        let (lower, upper) = (over(&region.lower), over(&region.upper));
        let clear = !region.holes.iter().any(|h| h.overlaps(&near));
        let inside = lower.hi < near.y0 && near.y1 < upper.lo && clear;
        let outside = near.y1 < lower.lo || upper.hi < near.y0 || region.holes.iter().any(|h| h.covers(&near));
        let at_home = cells.iter().any(|cell| cell.covers(&near));
        let pieces = cells.iter().flat_map(|&cell| region.pieces_in(cell));
        let holding = pieces.filter(|p| p.contains(point)).count();
        prop_assert!(!(inside && at_home) || holding == 1);
        prop_assert!(!outside || holding == 0);
    }

    /// Left and right of a plumb seam that no level seam meets, both neighbours name the same heights.
    #[test]
    fn neighbours_share_their_seam(region in any_region(), seam in 1i64..400) {
        let sides = |cell: Rect, toward| -> Vec<Interval> {
            let pieces = region.pieces_in(cell);
            let spans = pieces.iter().flat_map(|p| p.span_at_x(unit(seam), toward));
            Interval::union(spans.collect())
        };
        let level = region.holes.iter().all(|hole| hole.x0 != unit(seam) && hole.x1 != unit(seam));
        let smooth = region.lower.y_at(unit(seam), Toward::Left) == region.lower.y_at(unit(seam), Toward::Right)
            && region.upper.y_at(unit(seam), Toward::Left) == region.upper.y_at(unit(seam), Toward::Right);
        let left = sides(rect(0, -10, seam, 310), Toward::Left);
        let right = sides(rect(seam, -10, 400, 310), Toward::Right);
        prop_assert!(!(level && smooth) || left == right);
    }

    /// The same question gives the same answer, and pieces rise from left to right, then from bottom to top.
    #[test]
    fn pieces_are_in_order(region in any_region(), cells in any_cells()) {
        for &cell in &cells {
            let pieces = region.pieces_in(cell);
            prop_assert_eq!(&pieces, &region.pieces_in(cell));
            prop_assert!(pieces.is_sorted_by_key(|p| (p.columns()[0].x0, p.columns()[0].bottom.0)));
            for piece in &pieces {
                prop_assert!(cell.covers(&piece.bounds()));
                prop_assert!(piece.columns().is_sorted_by_key(|c| (c.x0, c.bottom.0)));
                prop_assert_eq!(piece.rings().iter().filter(|ring| ring_area2(ring) > 0).count(), 1);
            }
        }
    }
}

#[test]
fn an_empty_rectangle_has_no_pieces() {
    let wall = |y| Profile::level(Interval::new(unit(0), unit(9)), unit(y)).unwrap();
    let region = Region {
        lower: wall(0),
        upper: wall(9),
        holes: vec![rect(5, 5, 5, 5), rect(9, 9, 2, 2)],
    };
    assert_eq!(region.pieces_in(rect(3, 3, 3, 8)), []);
    assert_eq!(region.pieces_in(rect(8, 8, 3, 3)), []);
    assert_eq!(region.pieces_in(rect(20, 0, 30, 9)), []);
    assert_eq!(region.area2(), 2 * 81);
    let upside_down = Region {
        lower: wall(9),
        upper: wall(0),
        holes: vec![],
    };
    assert_eq!(
        (upside_down.pieces(), upside_down.bounds(), upside_down.area2()),
        (vec![], None, 0)
    );
}

/// 4 in 12: at each seam both sheets of a gable wall end at the same sixteenth, and the rake stays one edge
/// over an opening below it.
#[test]
fn sheets_under_a_rake() {
    let inch = Length::inches;
    let at = |x, y| Point::new(inch(x), inch(y));
    let region = Region {
        lower: Profile::new(vec![at(0, 0), at(288, 0)]).unwrap(),
        upper: Profile::new(vec![at(0, 97), at(144, 145), at(288, 97)]).unwrap(),
        holes: vec![Rect::new(inch(60), inch(36), inch(84), inch(84))],
    };
    let piece = &region.pieces_in(Rect::new(inch(48), inch(0), inch(96), inch(160)))[0];
    assert_eq!(piece.rings()[0], [at(48, 0), at(96, 0), at(96, 129), at(48, 113)]);
    let (top, holes) = (piece.boundary()[2], piece.rings().len() - 1);
    assert_eq!((top.facing, holes), (crate::geometry::Facing::Top, 1));
    assert_eq!(
        region.pieces_in(Rect::new(inch(0), inch(0), inch(144), inch(121)))[0].rings()[0].len(),
        5
    );
}
