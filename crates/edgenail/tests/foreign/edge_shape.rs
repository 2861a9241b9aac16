//! A run of panel edge in its own coordinates: along the edge, and from it into the panel.

use edgenail::Length;
use edgenail::edges::{EdgeRun, Side};
use edgenail::geometry::Rect;
use edgenail::house::Practice;

pub fn is_sloped(run: &EdgeRun) -> bool {
    run.from.x != run.to.x && run.from.y != run.to.y
}

/// Where the run begins and ends, along itself.
pub fn ends(run: &EdgeRun) -> (Length, Length) {
    if run.side.is_plumb() {
        (run.from.y, run.to.y)
    } else {
        (run.from.x, run.to.x)
    }
}

/// Where a face begins and ends, along the edge.
pub fn along(run: &EdgeRun, face: &Rect) -> (Length, Length) {
    if run.side.is_plumb() {
        (face.y0, face.y1)
    } else {
        (face.x0, face.x1)
    }
}

/// How deep a face begins and ends, from the edge into the panel.
pub fn depths(run: &EdgeRun, face: &Rect) -> (Length, Length) {
    match run.side {
        Side::Left => (face.x0 - run.from.x, face.x1 - run.from.x),
        Side::Right => (run.from.x - face.x1, run.from.x - face.x0),
        Side::Bottom => (face.y0 - run.from.y, face.y1 - run.from.y),
        Side::Top => (run.from.y - face.y1, run.from.y - face.y0),
    }
}

/// Some nail line keeps its distances from the panel's edge and has wood of this face on both sides of it.
pub fn holds(practice: &Practice, run: &EdgeRun, face: &Rect) -> bool {
    let (near, far) = depths(run, face);
    let wood = practice.member_edge_least;
    (near + wood).max(practice.edge_distance_least) <= (far - wood).min(practice.edge_distance_most)
}
