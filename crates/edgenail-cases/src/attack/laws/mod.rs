//! Laws that every plan and every refusal keeps, whatever the input. A broken law panics.

mod backing;
mod edges;
mod nails;
mod refusal;
mod sheets;
mod sums;

pub use refusal::{issues, refused};

use edgenail::Plan;
use edgenail::evaluate::Evaluated;
use edgenail::finding::{Finding, Severity};
use edgenail::frame::Frame;
use edgenail::house::House;
use edgenail::layout::Layout;

/// A layout with everything that followed from it and was found, whoever made the layout.
pub fn built(house: &House, frame: &Frame, built: &Evaluated, findings: &[Finding]) {
    edges::go_round(&built.layout, &built.runs);
    edges::are_held(house, &built.backed, &built.runs);
    backing::is_there_or_told(house, frame, built);
    backing::serves(house, frame, built, findings);
    nails::have_wood_and_panel(house, built);
    nails::keep_spacing(house, built);
    sheets::judged(house, built, findings);
    sums::cost(house, built);
    for finding in findings {
        assert!(
            !finding.message.is_empty() && !finding.wall.is_empty(),
            "{finding:?}"
        );
    }
}

/// A whole plan.
pub fn plan(plan: &Plan) {
    let house = plan.house();
    for wall in plan.walls() {
        built(house, &wall.frame, &wall.built, &wall.findings);
        if !wall.given {
            let refused = wall
                .findings
                .iter()
                .find(|finding| finding.severity == Severity::Refuse);
            assert!(
                refused.is_none(),
                "chosen, though it must not be built: {refused:?}"
            );
            sheets::tile(house, wall);
            sheets::fit(house, &wall.built.layout);
        }
    }
    sheets::cut(plan);
    sums::takeoff(plan);
}

/// A piece's mark, for messages.
fn mark(layout: &Layout, piece: u32) -> &str {
    layout.pieces.get(piece as usize).map_or("?", |piece| &piece.mark)
}
