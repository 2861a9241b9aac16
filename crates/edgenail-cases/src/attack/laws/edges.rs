//! Edges: their runs go round each piece, and what holds them can hold a nail.

use edgenail::edges::{EdgeRun, PanelEdge, Support};
use edgenail::frame::Frame;
use edgenail::house::House;
use edgenail::layout::Layout;
use edgenail::length::Length;

/// The runs of a piece sum to its perimeter, and each begins where the one before it on the same edge ends.
pub fn go_round(layout: &Layout, runs: &[EdgeRun]) {
    for piece in &layout.pieces {
        let own: Vec<&EdgeRun> = runs.iter().filter(|run| run.piece == piece.id).collect();
        let around: Length = own.iter().map(|run| run.length).sum();
        assert_eq!(
            around,
            piece.outline.perimeter(),
            "runs do not go round {}",
            piece.mark
        );
        for pair in own.windows(2).filter(|pair| pair[0].edge == pair[1].edge) {
            assert_eq!(pair[0].to, pair[1].from, "{} has a hole between runs", piece.mark);
        }
    }
}

/// A member that holds an edge takes nails, and the nail line keeps its distance from panel edge and member edge.
pub fn are_held(house: &House, backed: &Frame, runs: &[EdgeRun]) {
    let Some(wall) = house.walls.get(backed.wall as usize) else {
        return;
    };
    let practice = &wall.practice;
    for run in runs {
        let Support::Member { member } = run.support else {
            assert!(run.inset.is_none() && run.wood.is_none(), "{run:?}");
            continue;
        };
        assert!(
            backed.member(member).is_some_and(|member| member.nailable),
            "held by what takes no nail: {run:?}"
        );
        assert!(run.inset >= Some(practice.edge_distance_least), "{run:?}");
        assert!(run.wood >= Some(practice.member_edge_least), "{run:?}");
        let most = practice.edge_distance_most.max(practice.free_edge_most);
        let edge = PanelEdge::new(run.from, run.to);
        assert!(edge.is_sloped() || run.inset <= Some(most), "{run:?}");
        assert!(!run.must_back, "held and to be backed: {run:?}");
    }
}
