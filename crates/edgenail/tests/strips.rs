//! Heights that whole sheets do not fill: the sheet beside a strip that would be too narrow is cut down for it.

use edgenail::Length;
use edgenail::layout::Running;

/// A wall of 8 ft studs, three plates of 1 1/2 in. (common practice, no source): two sheets of 48 in. across the studs leave
/// 4 1/2 in., under the least strip of 12 in. less 1/4 in. that practice asks for.
fn wall(least: &str) -> String {
    format!(
        r#"{{"walls": [{{"name": "wall", "length": "12'", "practice": {{"running": "flat", "strip_least": "{least}"}},
            "sections": [{{"stack": [{{"kind": "storey", "stud": {{"length": "96"}}}}]}}]}}]}}"#
    )
}

#[test]
fn a_sheet_is_cut_down_so_that_the_strip_above_it_is_wide_enough() {
    for (least, wanted) in [("12", 12), ("16", 16)] {
        let plan = edgenail::plan_json(&wall(least)).unwrap();
        let layout = &plan.walls()[0].built.layout;
        let heights: Vec<Length> = layout
            .pieces
            .iter()
            .map(|piece| {
                assert_eq!(piece.running, Running::Flat);
                piece.outline.bounds().height()
            })
            .collect();
        let allowed = Length::inches(wanted) - Length::sixteenths(4);
        assert!(heights.iter().all(|height| *height >= allowed), "{heights:?}");
        assert!(
            heights.iter().any(|height| *height > Length::inches(40)),
            "{heights:?}"
        );
        let refused = plan
            .findings()
            .iter()
            .filter(|finding| finding.severity == edgenail::finding::Severity::Refuse);
        assert_eq!(refused.count(), 0);
    }
}
