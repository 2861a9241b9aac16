//! Notches against the outline that leaves them out, point by point.

mod cut_ground;

use cut_ground::{Face, HEIGHT, Place, WIDTH, any_face, holds, inch, places, points};
use edgenail::Length;
use edgenail::cutting::{Notch, NotchCut, notches};
use edgenail::geometry::{Point, Rect, Shape};
use proptest::prelude::*;

/// Every point of the blank is on the piece, beyond a slope, or in one notch.
fn notches_fill_what_is_left_out(outline: &Shape) -> Result<(), TestCaseError> {
    let found = notches(outline);
    let place = places(outline);
    for point in points(&outline.bounds()) {
        let holding = found.iter().filter(|notch| holds(&notch.rect, point)).count();
        let wanted = usize::from(place(point) == Place::LeftOut);
        prop_assert_eq!(
            holding,
            wanted,
            "{:?} {:?} {:?}",
            point,
            place(point),
            outline.rings()
        );
    }
    Ok(())
}

/// From the left, then from the bottom; none could be one with its neighbour.
fn notches_are_few_and_in_order(found: &[Notch]) -> Result<(), TestCaseError> {
    for pair in found.windows(2) {
        let start = |rect: &Rect| (rect.x0, rect.y0);
        prop_assert!(start(&pair[0].rect) < start(&pair[1].rect));
    }
    for (a, b) in found.iter().flat_map(|a| found.iter().map(move |b| (a, b))) {
        prop_assert!(a.rect.x1 != b.rect.x0 || a.rect.y_span() != b.rect.y_span());
    }
    Ok(())
}

/// A saw on a bench reaches a rectangle that has a corner of the blank, and no other.
fn corners_are_cut_on_the_bench(found: &[Notch], blank: &Rect) -> Result<(), TestCaseError> {
    let corners = [
        (blank.x0, blank.y0),
        (blank.x1, blank.y0),
        (blank.x0, blank.y1),
        (blank.x1, blank.y1),
    ];
    for notch in found {
        let r = &notch.rect;
        let own = [(r.x0, r.y0), (r.x1, r.y0), (r.x0, r.y1), (r.x1, r.y1)];
        let at_corner = own.iter().any(|corner| corners.contains(corner));
        prop_assert_eq!(notch.cut == NotchCut::Bench, at_corner);
    }
    Ok(())
}

fn touch(a: &Rect, b: &Rect) -> bool {
    a.x0 <= b.x1 && b.x0 <= a.x1 && a.y0 <= b.y1 && b.y0 <= a.y1
}

/// Of a piece without slopes whose notches are apart, the notches' cut edges are the outline's edges inside the blank.
fn cut_edges_are_the_outline(outline: &Shape, found: &[Notch]) -> Result<bool, TestCaseError> {
    let blank = outline.bounds();
    let apart = (0..found.len()).all(|a| (0..a).all(|b| !touch(&found[a].rect, &found[b].rect)));
    let edges = outline.boundary();
    if !apart
        || edges
            .iter()
            .any(|edge| edge.a.x != edge.b.x && edge.a.y != edge.b.y)
    {
        return Ok(false);
    }
    let on_side = |x| x == blank.x0 || x == blank.x1;
    let on_end = |y| y == blank.y0 || y == blank.y1;
    let inside = edges.iter().filter(|edge| {
        let plumb = edge.a.x == edge.b.x;
        if plumb {
            !on_side(edge.a.x)
        } else {
            !on_end(edge.a.y)
        }
    });
    let inside: Length = inside.map(edgenail::geometry::BoundaryEdge::length).sum();
    let cut: Length = found.iter().map(|notch| notch.edge(&blank)).sum();
    prop_assert_eq!(cut, inside);
    Ok(!found.is_empty())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn notches_are_what_the_outline_leaves_out(face in any_face()) {
        for outline in face.outlines() {
            notches_fill_what_is_left_out(&outline)?;
            let found = notches(&outline);
            notches_are_few_and_in_order(&found)?;
            corners_are_cut_on_the_bench(&found, &outline.bounds())?;
            cut_edges_are_the_outline(&outline, &found)?;
        }
    }
}

/// A panel under a roof that rises one in one to its top edge, with a window at its other corner: the window is cut out
/// of it, what the roof takes off is not. What lies over a level stretch at the low end comes off with the roof.
#[test]
fn a_window_beside_a_rake_is_a_notch() {
    let face = |upper, holes| Face {
        lower: vec![(-4, 0), (WIDTH + 4, 0)],
        upper,
        holes,
        corner: Point::default(),
        shrunk: Length::ZERO,
    };
    let window = Rect::new(inch(28), inch(60), inch(48), inch(100));
    let under_roof = face(vec![(-4, 84), (WIDTH + 4, 140)], vec![window]).outlines();
    let cut = Notch {
        rect: Rect::new(inch(28), inch(60), inch(48), inch(HEIGHT)),
        cut: NotchCut::Bench,
    };
    assert_eq!(notches(&under_roof[0]), [cut]);
    let heel = face(vec![(-4, 60), (20, 60), (WIDTH + 4, 90)], vec![]).outlines();
    assert!(notches(&heel[0]).is_empty());
}
