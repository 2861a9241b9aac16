use crate::finding::FindingCode;
use crate::frame::MemberKind;
use crate::length::Length;
use crate::plan_json;

/// A 12 ft wall under one slope; plates cut to it carry the upper edge of every sheet.
fn raked(top: &str) -> String {
    format!(
        r#"{{"name": "h", "walls": [{{"name": "w", "length": "12'", "sections": [{{"bottom": {{"bears": "floor"}},
        "stack": [{{"kind": "storey", "name": "first", "stud": {{"width": "1 1/2", "depth": "5 1/2", "length": "92 5/8"}}}}],
        "top": {top}}}]}}]}}"#
    )
}

/// Edges along a rake are nailed at edge spacing like any other: loss of gable sheathing along the roof edge is the
/// most usual storm failure (JLC, 'Gable-End Retrofits').
#[test]
fn rake_edges_are_nailed_at_edge_spacing() {
    let pitch = r#"{"rise": "4", "run": "12"}"#;
    let tops = [
        (
            format!(
                r#"{{"kind": "rake", "ridge_x": "0", "peak": "50", "left": {pitch}, "right": {pitch}, "build": "raked_plates"}}"#
            ),
            MemberKind::RakedPlate,
        ),
        (
            format!(
                r#"{{"kind": "gable_truss", "ridge_x": "6'", "heel": "5", "pitch": {pitch}, "chord": "3 1/2",
                "web_width": "1 1/2", "web_spacing": "24", "sheathed": true}}"#
            ),
            MemberKind::TrussChord,
        ),
    ];
    for (top, kind) in tops {
        let plan = plan_json(&raked(&top)).expect("the wall has a plan");
        let built = &plan.walls()[0].built;
        let sloped = |piece: &&crate::layout::Piece| {
            piece
                .outline
                .boundary()
                .iter()
                .any(|edge| edge.a.x != edge.b.x && edge.a.y != edge.b.y)
        };
        let mut seen = 0;
        for piece in built.layout.pieces.iter().filter(sloped) {
            let rows = built
                .nailing
                .rows
                .iter()
                .filter(|row| row.piece == piece.id && row.zone == crate::nailing::Zone::Edge);
            let nails = rows.flat_map(|row| row.positions().map(move |at| (at, row.member)));
            let mut along: Vec<_> = nails
                .filter(|(_, member)| {
                    built
                        .backed
                        .member(*member)
                        .is_some_and(|member| member.kind == kind)
                })
                .collect();
            along.sort();
            let (blank, spacing) = (piece.blank(), Length::inches(6));
            let (Some((first, _)), Some((last, _))) = (along.first(), along.last()) else {
                panic!("{kind:?}: {} is not nailed", piece.mark)
            };
            // The toe of a piece that runs out to a point has no room for a nail with 3/8 in. of panel round it.
            let toe = spacing * 2;
            assert!(
                first.x - blank.x0 <= toe && blank.x1 - last.x <= toe,
                "{kind:?}: {} is bare at an end",
                piece.mark
            );
            // At the ridge the nail that serves both slopes moves off the joint of the chords by no more than a
            // quarter space.
            let apart = along.windows(2).all(|pair| {
                let most = if pair[0].1 == pair[1].1 {
                    spacing
                } else {
                    spacing + spacing.half().half()
                };
                pair[0].0.distance(pair[1].0) <= most + Length::from_units(2)
            });
            assert!(apart, "{kind:?}: {} is nailed wider than 6 in.", piece.mark);
            seen += 1;
        }
        assert!(seen >= 2, "{kind:?}: {seen} pieces along the rake");
        let style = plan.house().drawn_in.in_text();
        let blocked = plan
            .findings()
            .iter()
            .filter(|finding| finding.code == FindingCode::NailBlocked);
        assert_eq!(
            blocked
                .filter(|finding| finding.message.written(style).contains("no place"))
                .count(),
            0
        );
    }
}

/// By arithmetic on nailing: 3/8 in. to the panel's edge and 1/4 in. to the plate's edge are 5/8 in. of plate; a sheet
/// that covers less of the topmost plate cannot be nailed to it (97 1/8 in. wall: 95 5/8 in. to the topmost plate).
#[test]
fn a_sheet_covers_five_eighths_of_the_topmost_plate_by_default() {
    for (top, bare) in [("96 1/4", false), ("96 7/32", true)] {
        let house = format!(
            r#"{{"walls": [{{"name": "w", "length": "8'", "sections": [{{"bottom": {{"bears": "floor"}},
            "stack": [{{"kind": "storey", "name": "first", "stud": {{"width": "1 1/2", "depth": "3 1/2", "length": "92 5/8"}}}}]}}],
            "given_layout": {{"kind": "bands", "bands": [{{"bottom": "0", "top": "{top}", "running": "upright",
            "sheet": "4x9", "seams": ["48"]}}]}}}}]}}"#
        );
        let plan = plan_json(&house).expect("a given layout is planned");
        let told = plan
            .findings()
            .iter()
            .any(|finding| finding.code == FindingCode::TopPlateBare);
        assert_eq!(told, bare, "{top}: {:?}", plan.findings());
    }
}
