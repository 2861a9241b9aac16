//! The order of work: common practice, no source, where a test does not say otherwise.

use super::{Event, OpenReason, Reach, Step, StepKind, steps};
use crate::evaluate::{Evaluated, evaluate};
use crate::frame::{EndCondition, Frame};
use crate::house::{End, House, SheathingPlace};
use crate::layout::Side;
use crate::layout::foreign::foreign;
use crate::layout::trial::inch;
use crate::start::start;
use crate::{Plan, plan_json};
use proptest::prelude::*;
use std::collections::BTreeSet;

fn of_kind(steps: &[Step], kind: StepKind) -> impl Iterator<Item = &Step> {
    steps.iter().filter(move |step| step.kind == kind)
}

fn kinds(steps: &[Step]) -> Vec<StepKind> {
    steps.iter().map(|step| step.kind).collect()
}

/// The number of the only step of this kind that names a panel.
fn number(steps: &[Step], kind: StepKind, mark: &str) -> u32 {
    let named: Vec<u32> = of_kind(steps, kind)
        .filter(|step| step.panels.iter().any(|panel| panel == mark))
        .map(|step| step.number)
        .collect();
    assert_eq!(named.len(), 1, "{mark}: {kind:?} in {named:?}");
    named[0]
}

/// What has to be true of the steps of any wall.
fn hold(frame: &Frame, built: &Evaluated, steps: &[Step]) {
    let pieces = &built.layout.pieces;
    for (number, step) in (1..).zip(steps) {
        assert_eq!(step.number, number);
        assert!(step.after.iter().all(|before| *before < number), "{step:?}");
        assert!(number == 1 || !step.after.is_empty(), "{step:?}");
        assert_eq!(step.hold_point, step.kind.is_hold_point());
        assert!(
            step.text.ends_with('.') && !step.text.contains("  "),
            "{}",
            step.text
        );
    }
    // Every piece is hung once, and nailed once after it.
    for piece in pieces {
        let hung = number(steps, StepKind::HangPanels, &piece.mark);
        assert!(hung < number(steps, StepKind::Nail, &piece.mark));
        let of_wood = of_kind(steps, StepKind::SetBlocks).filter(|step| {
            let holds = |id| step.blocks.contains(&id) || step.studs.contains(&id);
            let mut runs = built.runs.iter().filter(|run| run.piece == piece.id);
            runs.any(|run| run.member().is_some_and(holds))
        });
        let anchors = of_kind(steps, StepKind::CheckAnchors).filter(|step| {
            let mut segments = frame
                .segments
                .iter()
                .filter(|segment| step.concerns.contains(&segment.mark));
            segments.any(|segment| segment.rect.overlaps(&piece.blank()))
        });
        let straps = of_kind(steps, StepKind::SetStraps).filter(|step| {
            let mut straps = frame
                .straps
                .iter()
                .filter(|strap| step.concerns.contains(&strap.name));
            straps.any(|strap| strap.rect.overlaps(&piece.blank()))
        });
        let hanging = &steps[hung as usize - 1];
        for before in of_wood.chain(anchors).chain(straps) {
            assert!(
                hanging.after.contains(&before.number),
                "{} {before:?}",
                piece.mark
            );
        }
    }
    // Hung in the order that the panels' own turns say.
    let hung: Vec<&String> = of_kind(steps, StepKind::HangPanels)
        .flat_map(|step| &step.panels)
        .collect();
    let mut turns: Vec<_> = pieces.iter().collect();
    turns.sort_by_key(|piece| piece.hang_order);
    assert_eq!(hung, turns.iter().map(|piece| &piece.mark).collect::<Vec<_>>());
    // Everything that is added is set once, and named as what it is.
    let count = built.blocking.blocks.len();
    let first =
        built.backed.members.len() - count - built.blocking.studs.len() - built.blocking.widened.len();
    let mut set: Vec<usize> = Vec::new();
    for step in of_kind(steps, StepKind::SetBlocks) {
        assert!(step.blocks.iter().all(|id| id.index() < first + count));
        assert!(step.studs.iter().all(|id| id.index() >= first + count));
        set.extend(step.blocks.iter().chain(&step.studs).map(|id| id.index()));
    }
    set.sort_unstable();
    assert_eq!(set, (first..built.backed.members.len()).collect::<Vec<_>>());
    // What is left open is taken up once, later.
    let left: Vec<_> = steps
        .iter()
        .flat_map(|step| step.leaves.iter().map(|edge| (edge, step.number)))
        .collect();
    let taken: Vec<_> = steps
        .iter()
        .flat_map(|step| step.takes_up.iter().map(|edge| (edge, step.number)))
        .collect();
    assert_eq!(left.len(), taken.len());
    for (edge, number) in left {
        let later: Vec<_> = taken.iter().filter(|(other, _)| *other == edge).collect();
        assert_eq!(later.len(), 1, "{edge:?}");
        assert!(number < later[0].1, "{edge:?}");
    }
    // Hold points come before what covers them; every segment has its own.
    let shown = of_kind(steps, StepKind::ShowNailing)
        .next()
        .expect("nailing is shown");
    let work = |step: &&Step| !matches!(step.kind, StepKind::ShowNailing | StepKind::TightenNuts);
    assert!(steps.iter().filter(work).all(|step| step.number < shown.number));
    assert_eq!(shown.panels.len(), pieces.len());
    let covered = frame
        .segments
        .iter()
        .filter(|segment| pieces.iter().any(|piece| piece.blank().overlaps(&segment.rect)));
    let covered: BTreeSet<&String> = covered.map(|segment| &segment.mark).collect();
    let checked: BTreeSet<&String> = of_kind(steps, StepKind::CheckAnchors)
        .flat_map(|step| &step.concerns)
        .collect();
    assert_eq!(checked, covered);
    assert_eq!(
        of_kind(steps, StepKind::TightenNuts).count(),
        usize::from(!frame.segments.is_empty())
    );
    deck(steps);
}

/// On the deck is only what comes before its storey is raised.
fn deck(steps: &[Step]) {
    for raised in of_kind(steps, StepKind::Raise) {
        let own = |step: &&Step| step.storey == raised.storey;
        assert!(
            steps
                .iter()
                .filter(own)
                .all(|step| (step.reach == Reach::Deck) == (step.number < raised.number))
        );
    }
    let storeys: BTreeSet<&String> = of_kind(steps, StepKind::Raise).map(|step| &step.storey).collect();
    let lying = steps.iter().filter(|step| step.reach == Reach::Deck);
    assert!(lying.clone().all(|step| storeys.contains(&step.storey)));
}

fn stepped(house: &House, frame: &Frame, built: &Evaluated) -> Vec<Step> {
    start(house, frame, built, End::Left).map_or_else(Vec::new, |start| steps(house, frame, built, &start))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]
    #[test]
    fn steps_of_any_layout_keep_their_promises(
        (mut trial, spec) in foreign(),
        standing in any::<bool>(),
        strap in proptest::option::of((0i64..90, 0i64..90, 1i64..30, 1i64..30)),
    ) {
        if standing {
            trial.practice.sheathed = SheathingPlace::Standing;
        }
        let (house, mut frame) = (trial.house(), trial.frame());
        frame.straps.extend(strap.map(|(left, bottom, width, height)| crate::frame::PatchPlace {
            name: "strap".into(),
            rect: crate::geometry::Rect::from_size(inch(left, 0), inch(bottom, 0), inch(width, 0), inch(height, 0)),
        }));
        let built = evaluate(&house, &frame, spec);
        let steps = stepped(&house, &frame, &built);
        prop_assert_eq!(steps.is_empty(), built.layout.pieces.is_empty());
        if !steps.is_empty() {
            hold(&frame, &built, &steps);
        }
        if standing {
            prop_assert!(steps.iter().all(|step| step.reach != Reach::Deck && step.kind != StepKind::Raise));
        }
    }
}

#[test]
fn steps_of_the_demo_house_keep_their_promises() {
    let plan = plan_json(crate::demo::HOUSE_JSON).unwrap();
    let mut seen = BTreeSet::new();
    for wall in plan.walls() {
        hold(&wall.frame, &wall.built, &wall.steps);
        seen.extend(kinds(&wall.steps));
        // What reaches past the frame's end is hung once the wall stands, and nailed to the neighbour once that stands.
        let lapping = wall.built.layout.pieces.iter().filter(|piece| {
            let blank = piece.blank();
            let past = |end, past| matches!(end, EndCondition::Laps { .. }) && past;
            let (first, last) = (
                wall.frame.sections.first().unwrap(),
                wall.frame.sections.last().unwrap(),
            );
            past(wall.frame.left, blank.x0 < first.x.lo) || past(wall.frame.right, last.x.hi < blank.x1)
        });
        for piece in lapping {
            let hung = &wall.steps[number(&wall.steps, StepKind::HangPanels, &piece.mark) as usize - 1];
            assert_ne!(hung.reach, Reach::Deck);
            let lap = &wall.steps[number(&wall.steps, StepKind::Lap, &piece.mark) as usize - 1];
            assert!(matches!(lap.waits_for[..], [Event::WallStands { .. }]));
        }
    }
    // All but straps, which the demo house has none of.
    assert_eq!(seen.len(), 12, "{seen:?}");
}

fn wall(extra: &str, storeys: &str, layout: &str) -> String {
    format!(
        r#"{{"name": "w", "length": "8'", {extra} "sections": [{{"bottom": {{"bears": "floor"}}, "stack": [{storeys}]}}],
            "given_layout": {{"kind": "bands", "bands": [{layout}]}}}}"#
    )
}

fn storey(name: &str, extra: &str) -> String {
    format!(
        r#"{{"kind": "storey", "name": "{name}", "stud": {{"length": "91 1/2"}}, "spacing": 16 {extra}}}"#
    )
}

fn course(bottom: &str, top: &str, sheet: &str) -> String {
    format!(
        r#"{{"bottom": "{bottom}", "top": "{top}", "running": "upright", "sheet": "{sheet}", "seams": [48]}}"#
    )
}

fn plan(sheathed: &str, walls: &str) -> Plan {
    let sheet = |length: &str| {
        format!(r#"{{"name": "{length}", "width": "47 7/8", "length": "{length}", "category": "7/16"}}"#)
    };
    let sheets: Vec<String> = ["95 7/8", "107 7/8", "119 7/8"].into_iter().map(sheet).collect();
    let house = format!(
        r#"{{"name": "h", "walls": [{walls}], "stock": {{"sheets": [{}]}}, "practice": {{"sheathed": "{sheathed}"}}}}"#,
        sheets.join(", ")
    );
    plan_json(&house).unwrap()
}

const BAND: &str = r#"{"kind": "floor_band", "name": "band", "layers": [{"kind": "members", "direction": "across",
    "member": "truss", "width": "2 1/2", "depth": "11 1/4", "spacing": "16"}, {"kind": "subfloor", "thickness": "3/4"}]}"#;

/// Two storeys of 96 in. with a band of 12 in. between.
fn two_storeys(sheathed: &str) -> Plan {
    let stack = format!("{}, {BAND}, {}", storey("first", ""), storey("second", ""));
    let courses = [
        course("0", "94 1/2", "95 7/8"),
        course("94 1/2", "109 1/2", "95 7/8"),
        course("109 1/2", "204", "95 7/8"),
    ];
    plan(sheathed, &wall("", &stack, &courses.join(", ")))
}

#[test]
fn what_ties_two_storeys_waits_until_both_stand() {
    let plan = two_storeys("deck");
    let steps = &plan.walls()[0].steps;
    assert_eq!(
        kinds(steps),
        [
            StepKind::Check,
            StepKind::SnapLine,
            StepKind::HangPanels,
            StepKind::Nail,
            StepKind::Raise,
            StepKind::NailLeftEdges, // the first storey
            StepKind::Check,
            StepKind::HangPanels,
            StepKind::Nail,
            StepKind::Raise,
            StepKind::NailLeftEdges, // the second
            StepKind::HangPanels,
            StepKind::Nail, // the strip between
            StepKind::ShowNailing
        ]
    );
    assert_eq!(steps[2].panels, ["A1", "A2"]);
    assert_eq!(steps[7].panels, ["C1", "C2"]);
    assert_eq!(steps[11].panels, ["B1", "B2"]);
    assert_eq!(steps[6].waits_for, [Event::FloorFramed { over: "first".into() }]);
    assert_eq!(
        steps[6].text,
        "When the floor over the first storey is framed: check the frame of the second storey as it lies: diagonals, straightness, openings, \
         the first stud's mark; mend what is out of tolerance."
    );
}

#[test]
fn plate_lines_stay_open_on_the_deck_until_the_wall_is_plumbed() {
    let plan = two_storeys("deck");
    let steps = &plan.walls()[0].steps;
    let left: Vec<_> = steps[3]
        .leaves
        .iter()
        .map(|edge| (edge.panel.as_str(), edge.side, edge.reason))
        .collect();
    assert_eq!(
        left,
        [
            ("A1", Side::Bottom, OpenReason::PlateLine),
            ("A1", Side::Top, OpenReason::PlateLine),
            ("A2", Side::Bottom, OpenReason::PlateLine),
            ("A2", Side::Top, OpenReason::PlateLine),
        ]
    );
    assert_eq!(steps[5].takes_up, steps[3].leaves);
    // A wall that stands plumbed leaves none.
    let plan = two_storeys("standing");
    assert!(plan.walls()[0].steps.iter().all(|step| step.leaves.is_empty()));
}

#[test]
fn a_standing_wall_is_sheathed_from_below_and_waits_for_its_frame() {
    let plan = two_storeys("standing");
    let steps = &plan.walls()[0].steps;
    assert_eq!(
        kinds(steps),
        [
            StepKind::Check,
            StepKind::SnapLine,
            StepKind::HangPanels,
            StepKind::Nail,
            StepKind::Check,
            StepKind::HangPanels,
            StepKind::HangPanels,
            StepKind::Nail,
            StepKind::ShowNailing
        ]
    );
    let stands = |storey: &str| Event::StoreyStands {
        storey: storey.into(),
    };
    assert_eq!(steps[0].waits_for, [stands("first")]);
    assert_eq!(
        steps[4].waits_for,
        [Event::FloorFramed { over: "first".into() }, stands("second")]
    );
    // Nothing is set from the deck; what is over 108 in. takes a ladder, the second storey a lift or its own floor.
    let reach: Vec<Reach> = of_kind(steps, StepKind::HangPanels)
        .map(|step| step.reach)
        .collect();
    assert_eq!(reach, [Reach::Ground, Reach::Ladder, Reach::Lift]);
}

/// Two people set a 4 × 10 ft sheet, one a 4 × 8 ft sheet: common practice, no source.
#[test]
fn a_sheet_of_ten_feet_takes_two_people() {
    for (stud, top, sheet, people) in [("91 1/2", "96", "95 7/8", 1), ("115 1/2", "120", "119 7/8", 2)] {
        let stack = format!(
            r#"{{"kind": "storey", "name": "first", "stud": {{"length": "{stud}"}}, "spacing": 16}}"#
        );
        let plan = plan("deck", &wall("", &stack, &course("0", top, sheet)));
        let hung = of_kind(&plan.walls()[0].steps, StepKind::HangPanels);
        let hung: Vec<u32> = hung.map(|step| step.people).collect();
        assert_eq!(hung, [people], "{sheet}");
    }
}

#[test]
fn straps_and_hold_downs_are_set_before_the_panels_over_them() {
    let stack = storey(
        "first",
        r#", "straps": [{"name": "strap at the corner", "left": 0, "bottom": 0, "width": 2, "height": 20}]"#,
    );
    let segment = r#""segments": [{"storey": "first", "from": 48, "to": 96, "mark": "SW1", "method": "segmented",
        "edge_spacing": 6, "field_spacing": 6, "end_posts": 2}],"#;
    let plan = plan("deck", &wall(segment, &stack, &course("0", "96", "95 7/8")));
    let steps = &plan.walls()[0].steps;
    let strap = of_kind(steps, StepKind::SetStraps).next().unwrap();
    assert_eq!(strap.text, "Set strap at the corner before A1 is hung.");
    let anchors = of_kind(steps, StepKind::CheckAnchors).next().unwrap();
    assert!(anchors.hold_point);
    assert_eq!(
        anchors.text,
        "Check anchors and hold-down posts of SW1 before A2 is hung."
    );
    let nailed = of_kind(steps, StepKind::Nail).next().unwrap();
    let crossed = nailed
        .leaves
        .iter()
        .filter(|edge| edge.reason == OpenReason::StrapLine);
    let crossed: Vec<_> = crossed.map(|edge| (edge.panel.as_str(), edge.side)).collect();
    assert_eq!(crossed, [("A1", Side::Bottom), ("A1", Side::Left)]);
    let last = &steps[steps.len() - 2..];
    assert_eq!(kinds(last), [StepKind::ShowNailing, StepKind::TightenNuts]);
    assert_eq!(
        last[1].text,
        "Tighten the hold-down nuts of SW1 before the inside is covered."
    );
}

#[test]
fn sheets_that_hang_over_the_floor_below_are_nailed_to_its_rim_once_the_wall_stands() {
    let rim = BAND.replace(
        r#""spacing": "16"}"#,
        r#""spacing": "16", "rim": {"kind": "engineered", "thickness": "1 1/8"}}"#,
    );
    let stack = format!("{rim}, {}", storey("first", ""));
    let plan = plan("deck", &wall("", &stack, &course("3", "108", "107 7/8")));
    let nailed = of_kind(&plan.walls()[0].steps, StepKind::Nail).next().unwrap();
    let below = nailed
        .leaves
        .iter()
        .filter(|edge| edge.reason == OpenReason::BelowWall && edge.side == Side::Bottom);
    assert_eq!(
        below.map(|edge| edge.panel.as_str()).collect::<Vec<_>>(),
        ["A1", "A2"]
    );
}
