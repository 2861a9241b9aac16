//! Backing: it is where it is wanted, or the plan says why not; nothing is added that serves nothing.

use super::mark;
use edgenail::blocking::Blocking;
use edgenail::edges::{EdgeRun, edges};
use edgenail::evaluate::Evaluated;
use edgenail::finding::{Finding, FindingCode};
use edgenail::frame::Frame;
use edgenail::geometry::Rect;
use edgenail::house::House;
use edgenail::length::Length;

/// No edge lacks the backing that it wants unless the plan lists it as impossible to back.
pub fn is_there_or_told(house: &House, frame: &Frame, built: &Evaluated) {
    let bare = edges(house, frame, &built.layout);
    let listed: Vec<&EdgeRun> = built
        .blocking
        .impossible
        .iter()
        .filter_map(|one| bare.get(one.run as usize))
        .collect();
    assert_eq!(
        listed.len(),
        built.blocking.impossible.len(),
        "an edge is listed that does not exist"
    );
    for run in built.runs.iter().filter(|run| run.lacks_backing()) {
        let told = listed.iter().any(|other| {
            (other.piece, other.edge) == (run.piece, run.edge) && other.from <= run.to && run.from <= other.to
        });
        assert!(
            told,
            "{} has an edge without backing, and no word of it: {run:?}",
            mark(&built.layout, run.piece)
        );
    }
}

/// Every block and added stud serves an edge, can be cut, and stands clear of the frame; without the first block, or
/// without the last, an edge is bare.
pub fn serves(house: &House, frame: &Frame, built: &Evaluated, findings: &[Finding]) {
    let Some(wall) = house.walls.get(frame.wall as usize) else {
        return;
    };
    let Blocking { blocks, studs, .. } = &built.blocking;
    for block in blocks {
        assert!(!block.serves.is_empty(), "{block:?}");
        assert_eq!(
            block.length,
            block.rect.width() - wall.practice.block_clearance,
            "{block:?}"
        );
        let stick = house.stock.sticks.get(block.stick as usize);
        assert!(
            stick.is_some_and(|stick| block.length <= stick.length),
            "{block:?}"
        );
    }
    for stud in studs {
        assert!(!stud.serves.is_empty(), "{stud:?}");
    }
    let added: Vec<Rect> = blocks
        .iter()
        .map(|one| one.rect)
        .chain(studs.iter().map(|one| one.rect))
        .collect();
    for (index, rect) in added.iter().enumerate() {
        assert!(
            !added[..index].iter().any(|other| other.overlaps(rect)),
            "{rect:?} is taken twice"
        );
        let mut faces = frame.members.iter().filter_map(|member| member.face.is_rect());
        assert!(
            !faces.any(|face| face.overlaps(rect)),
            "{rect:?} stands in the frame"
        );
    }
    let bare = |blocking: &Blocking| -> Length {
        let runs = edges(house, &frame.with(blocking), &built.layout);
        runs.iter()
            .filter(|run| run.lacks_backing())
            .map(|run| run.length)
            .sum()
    };
    // Panels that lie over each other or stand too close share what was meant for one of them.
    if findings
        .iter()
        .any(|one| matches!(one.code, FindingCode::PanelsOverlap | FindingCode::GapTooSmall))
    {
        return;
    }
    for left_out in [0, blocks.len().saturating_sub(1)] {
        let mut fewer = built.blocking.clone();
        if left_out < fewer.blocks.len() {
            let block = fewer.blocks.remove(left_out);
            assert!(bare(&fewer) > bare(&built.blocking), "nothing needs {block:?}");
        }
    }
}
