//! Nails: each has wood and panel round it, fits its member, and keeps to its spacing.

use super::mark;
use edgenail::evaluate::Evaluated;
use edgenail::geometry::Point;
use edgenail::house::House;
use edgenail::length::Length;
use edgenail::nailing::NailRow;

/// Every nail stands in a member that takes nails, clear of its edges and of the panel's, and may go into its wood.
pub fn have_wood_and_panel(house: &House, built: &Evaluated) {
    let Some(wall) = house.walls.get(built.backed.wall as usize) else {
        return;
    };
    let (practice, layout) = (&wall.practice, &built.layout);
    let resists = house
        .stock
        .nails
        .iter()
        .any(|nail| practice.treated_coatings.contains(&nail.coating));
    for row in &built.nailing.rows {
        assert!(
            row.spaces >= 1 && row.first <= row.last && row.last <= row.spaces,
            "{row:?}"
        );
        let Some(member) = built.backed.member(row.member).filter(|member| member.nailable) else {
            panic!("nailed into nothing: {row:?}")
        };
        let Some(piece) = layout.pieces.get(row.piece as usize) else {
            panic!("nails no piece: {row:?}")
        };
        let Some(nail) = house.stock.nails.get(row.nail as usize) else {
            panic!("not in stock: {row:?}")
        };
        let fits = !member.treated || !resists || practice.treated_coatings.contains(&nail.coating);
        assert!(fits, "{} goes into treated wood: {row:?}", nail.name);
        for at in row.positions() {
            let wood = clearance(member.face.edges(), member.face.contains(at), at);
            assert!(
                wood >= practice.member_edge_least - ROUNDED,
                "{}: {at:?} stands {wood} from the edge of its member: {row:?} {member:?}",
                piece.mark
            );
            let panel = piece.outline.boundary().iter().map(|edge| (edge.a, edge.b));
            let panel = clearance(panel, piece.outline.contains(at), at);
            assert!(
                panel >= practice.edge_distance_least - ROUNDED,
                "{}: {at:?} stands {panel} from the edge of the panel: {row:?}",
                piece.mark
            );
        }
    }
}

/// A corner on a slope and a nail are each rounded to a whole unit.
const ROUNDED: Length = Length::from_units(2);

/// How far a place lies from the nearest of these edges; below zero where it is outside of them.
fn clearance(edges: impl Iterator<Item = (Point, Point)>, inside: bool, at: Point) -> Length {
    let nearest = edges
        .map(|(a, b)| at.distance(foot(a, b, at)))
        .min()
        .unwrap_or_default();
    if inside { nearest } else { -nearest }
}

/// The place on a line from `a` to `b` that is nearest to another, to the nearest unit.
fn foot(a: Point, b: Point, at: Point) -> Point {
    let wide = |length: Length| i128::from(length.units());
    let (x, y) = (wide(b.x - a.x), wide(b.y - a.y));
    let along = wide(at.x - a.x) * x + wide(at.y - a.y) * y;
    let whole = (x * x + y * y).max(1);
    let part = |way: i128| {
        let way = (2 * way * along.clamp(0, whole) + whole).div_euclid(2 * whole);
        Length::from_units(i64::try_from(way).unwrap_or(i64::MAX))
    };
    Point::new(a.x + part(x), a.y + part(y))
}

/// No row is nailed wider than the widest spacing that is asked for anywhere on the wall, and no nail of a piece stands
/// where another does.
pub fn keep_spacing(house: &House, built: &Evaluated) {
    let Some(wall) = house.walls.get(built.backed.wall as usize) else {
        return;
    };
    let asked = &wall.practice.assembly;
    let segments = wall
        .segments
        .iter()
        .flat_map(|one| [one.edge_spacing, one.field_spacing]);
    let widest = segments.fold(asked.edge_spacing.max(asked.field_spacing), Length::max);
    for row in built
        .nailing
        .rows
        .iter()
        .filter(|row| !row.moved && row.spaces > 1)
    {
        let apart = row.from.distance(row.to).units() / i64::from(row.spaces);
        assert!(
            apart <= widest.units() + 1,
            "{} is nailed too wide: {row:?}",
            mark(&built.layout, row.piece)
        );
    }
    let mut places: Vec<(u32, Point, &NailRow)> = Vec::new();
    for row in &built.nailing.rows {
        places.extend(row.positions().map(|at| (row.piece, at, row)));
    }
    places.sort_unstable_by_key(|(piece, at, _)| (*piece, *at));
    for pair in places.windows(2) {
        let [(piece, at, row), (other, there, second)] = pair else {
            continue;
        };
        assert!(
            (piece, at) != (other, there),
            "{} has two nails at {at:?}: {row:?} {second:?}",
            mark(&built.layout, *piece)
        );
    }
}
