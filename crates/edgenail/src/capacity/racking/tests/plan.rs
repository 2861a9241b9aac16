//! Walls of plans.

use super::*;
use crate::issue::Code;
use crate::nailing::Zone;
use crate::plan_json;

const WALL: &str = r#"{"name": "h", "walls": [{"name": "w", "length": "30'", "sections": [{"bottom": {"bears": "concrete"},
  "stack": [{"kind": "storey", "name": "first", "openings": [OPENINGS]}], "top": {"kind": "flat"}}],
  "segments": [{"storey": "first", "mark": "SW1", "from": "0", "to": "8'", "method": "segmented"}]}]}"#;
const WINDOW: &str =
    r#"{"name": "a", "kind": "window", "left": "156", "sill": "36", "width": "48", "height": "46"}"#;

fn planned(openings: &str) -> crate::evaluate::Evaluated {
    let plan = plan_json(&WALL.replace("OPENINGS", openings)).unwrap();
    plan.walls()[0].built.clone()
}

fn nails(count: usize) -> Vec<Option<NailResistance>> {
    let nail = NailResistance {
        strength: 72.8,
        stiffness: 5000.0,
    };
    vec![Some(nail); count]
}

#[test]
fn every_nail_of_a_plan() {
    let built = planned("");
    let taken = racking_of_storey(&built, 0, &nails(20), AtOpenings::LeftOut, 3000.0).unwrap();
    let count: usize = taken.wall.sheets.iter().map(|sheet| sheet.nails.len()).sum();
    assert_eq!(count as u64 + taken.other_nails, built.nailing.count());
    assert_eq!(taken.wall.sheets.len(), built.layout.pieces.len());
    let fields: u32 = built
        .nailing
        .rows
        .iter()
        .filter(|row| row.zone == Zone::Field)
        .map(crate::nailing::NailRow::count)
        .sum();
    let inner = taken
        .wall
        .sheets
        .iter()
        .flat_map(|sheet| &sheet.nails)
        .filter(|nail| !nail.edge)
        .count();
    assert_eq!(inner, fields as usize);
    let found = rack(&taken.wall).unwrap();
    assert!(found.first_nail < found.plastic_force && found.plastic_force < found.limit_force);
    // Own arithmetic: 30 ft at 6 in. are 60 spaces of 72.8 lb; seams, edges and plates take a little of it.
    assert!(
        found.plastic_force > 0.9 * 60.0 * 72.8 && found.plastic_force < 1.05 * 60.0 * 72.8,
        "{}",
        found.plastic_force
    );
}

/// Every third nail of one edge forgotten: that sheet and the wall lose, the other sheets are what they were.
#[test]
fn missing_nails_show() {
    let built = planned("");
    let taken = racking_of_storey(&built, 0, &nails(20), AtOpenings::LeftOut, 3000.0).unwrap();
    let before = rack(&taken.wall).unwrap();
    let mut short = taken.wall;
    let left = short.sheets[2].outline.x0 + Length::inches(1);
    let mut count = 0;
    short.sheets[2].nails.retain(|nail| {
        count += i32::from(nail.at.x < left);
        nail.at.x >= left || count % 3 != 0
    });
    assert!(count > 9);
    let after = rack(&short).unwrap();
    assert!(after.plastic_force < before.plastic_force - 10.0 && after.limit_force < before.limit_force);
    assert!(after.stiffness < before.stiffness);
    for (number, (after, before)) in after.sheets.iter().zip(&before.sheets).enumerate() {
        assert_eq!(number != 2, after.plastic == before.plastic, "{number}");
    }
}

#[test]
fn pieces_over_openings_are_named() {
    let built = planned(WINDOW);
    let without = racking_of_storey(&built, 0, &nails(20), AtOpenings::LeftOut, 1.0).unwrap();
    let with = racking_of_storey(&built, 0, &nails(20), AtOpenings::Counted, 1.0).unwrap();
    assert!(!without.at_openings.is_empty() && with.at_openings.is_empty());
    assert_eq!(
        without.wall.sheets.len() + without.at_openings.len(),
        with.wall.sheets.len()
    );
    assert!(rack(&without.wall).unwrap().plastic_force < rack(&with.wall).unwrap().plastic_force);
}

#[test]
fn what_is_missing_is_named() {
    let built = planned("");
    let issues = racking_of_storey(&built, 1, &nails(20), AtOpenings::LeftOut, 1.0).unwrap_err();
    assert_eq!(
        (issues[0].code, issues[0].path.as_str()),
        (Code::UnknownName, "/storey")
    );
    let issues = racking_of_storey(&built, 0, &[], AtOpenings::LeftOut, 1.0).unwrap_err();
    assert!(
        issues
            .iter()
            .all(|issue| issue.code == Code::MissingField && issue.path.starts_with("/resistances/"))
    );
}

#[test]
fn a_raked_wall_is_no_rectangle() {
    let pitch = r#"{"rise": "4", "run": "12"}"#;
    let plan = plan_json(&format!(
        r#"{{"name": "h", "walls": [{{"name": "w", "length": "12'", "sections": [{{"bottom": {{"bears": "floor"}},
        "stack": [{{"kind": "storey", "name": "first", "stud": {{"width": "1 1/2", "depth": "5 1/2", "length": "92 5/8"}}}}],
        "top": {{"kind": "rake", "ridge_x": "0", "peak": "50", "left": {pitch}, "right": {pitch}, "build": "raked_plates"}}}}]}}]}}"#
    ))
    .unwrap();
    let issues =
        racking_of_storey(&plan.walls()[0].built, 0, &nails(20), AtOpenings::LeftOut, 1.0).unwrap_err();
    assert_eq!(
        (issues[0].code, issues[0].path.as_str()),
        (Code::OutOfRange, "/storey")
    );
}

/// Every storey of the demo house: each nail counts in at most one storey, bounds lie in their order, and what cannot be
/// racked says why.
#[test]
fn every_storey_of_the_demo_house() {
    let plan = plan_json(crate::demo::HOUSE_JSON).unwrap();
    let (mut racked, mut refused) = (0, 0);
    for wall in plan.walls() {
        let built = &wall.built;
        let mut counted = 0;
        for storey in 0..u32::try_from(built.backed.storeys.len()).unwrap() {
            let taken = match racking_of_storey(built, storey, &nails(50), AtOpenings::Counted, 1000.0) {
                Ok(taken) => taken,
                Err(issues) => {
                    assert!(issues[0].path == "/storey" && issues[0].code == Code::OutOfRange);
                    refused += 1;
                    continue;
                }
            };
            counted += taken
                .wall
                .sheets
                .iter()
                .map(|sheet| sheet.nails.len() as u64)
                .sum::<u64>();
            let found = rack(&taken.wall).unwrap();
            racked += 1;
            for sheet in &found.sheets {
                assert!(
                    sheet.plastic_force <= sheet.limit_force_most * (1.0 + 1e-9),
                    "{}",
                    wall.name
                );
                assert!(sheet.limit_force_most - sheet.limit_force <= 1e-4 * sheet.limit_force_most + 1e-3);
                assert!(sheet.worst <= found.worst * (1.0 + 1e-12));
            }
            assert!((found.sheets.iter().map(|sheet| sheet.force).sum::<f64>() - 1000.0).abs() < 1e-6);
        }
        assert!(counted <= built.nailing.count());
    }
    assert!(racked >= 6 && refused >= 1, "{racked} {refused}");
}

/// Own arithmetic: nails that keep half of all that they hold halve the stiffness, the first nail's force and the bounds.
/// Missing nails lower the stiffness; a place without nails is no finding.
#[test]
fn nails_as_they_were_found() {
    let plan = crate::plan_json(crate::demo::HOUSE_JSON).unwrap();
    let built = &plan.wall("garage back").unwrap().built;
    let resistance = NailResistance {
        strength: 72.8,
        stiffness: 5000.0,
    };
    let all = vec![Some(resistance); plan.house().stock.nails.len()];
    let wall = racking_of_storey(built, 0, &all, AtOpenings::LeftOut, 1000.0)
        .unwrap()
        .wall;
    let place = |x: i64, width: i64, holds: f64| FoundNails {
        place: Rect::new(
            Length::inches(x),
            Length::ZERO,
            Length::inches(x + width),
            Length::inches(120),
        ),
        holds,
    };
    let whole = rack(&wall).unwrap();
    let half = rack(&wall.clone().as_found(&[place(-12, 400, 0.5)]).unwrap()).unwrap();
    let near = |found: f64, expected: f64| {
        assert!(
            (found - expected).abs() < 1e-6 * expected.abs(),
            "{found} {expected}"
        );
    };
    near(half.stiffness, whole.stiffness / 2.0);
    near(half.first_nail, whole.first_nail / 2.0);
    near(half.plastic_force, whole.plastic_force / 2.0);
    let left = wall.sheets[0].nails[0].at;
    let missing = FoundNails {
        place: Rect::new(left.x, left.y, left.x, left.y),
        holds: 0.0,
    };
    let gone = wall.clone().as_found(&[missing]).unwrap();
    assert!(rack(&gone).unwrap().stiffness < whole.stiffness);
    let issues = wall.clone().as_found(&[place(2000, 2, 0.0)]).unwrap_err();
    assert_eq!(issues[0].path, "/found/0");
    let issues = wall.as_found(&[place(0, 2, f64::NAN)]).unwrap_err();
    assert_eq!(issues[0].path, "/found/0/holds");
}
