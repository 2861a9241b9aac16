//! The mirror law: mirror a house left to right, and its frames, edges, blocks, nails and plans are mirrored.
//!
//! A law of the plane, no source: neither the trade nor gravity knows left from right. It holds exactly, member by
//! member and edge by edge, for costs and for the layouts that the search chooses. Nails are counted by panel: one
//! that stands halfway between two members, or at a ridge, goes by the left.

#![expect(clippy::expect_used, reason = "a house that cannot be read fails the test")]

use edgenail::Length;
use edgenail::evaluate::{Evaluated, evaluate};
use edgenail::frame::{Frame, frame_wall};
use edgenail::generate::{Mix, house_json};
use edgenail::house::{End, House};
use edgenail::plan::{WallPlan, plan_house};
use edgenail::read_house;
use edgenail_cases::mirror::image::{
    View, of_blocking, of_edges, of_findings, of_frame, of_nails, of_panels,
};
use edgenail_cases::mirror::{Mirror, mirror_house};
use serde_json::{Value, json};
use std::collections::BTreeMap;

const HOUSES: u64 = 200;

/// What generated houses lack and has a left and a right: uneven end studs, straps, holes, bare zones, a segment.
fn furnish(seed: u64, house: &mut Value) {
    let patch = |name: &str, left: &str, bottom: &str| json!([{"name": name, "left": left, "bottom": bottom, "width": "2 1/2", "height": "3"}]);
    for wall in house["walls"].as_array_mut().into_iter().flatten() {
        let storey = &mut wall["sections"][0]["stack"][0];
        storey["end_studs"] = json!({"left": 1 + seed % 3, "right": 1 + seed % 2});
        storey["block_rows"] = json!(if seed.is_multiple_of(3) {
            vec!["48"]
        } else {
            vec![]
        });
        storey["straps"] = patch("strap", "15", "42");
        storey["penetrations"] = patch("pipe", "3", "9");
        if seed.is_multiple_of(4) {
            storey["bare_zones"] = patch("ledger", "5", "84");
        }
        if seed.is_multiple_of(5) {
            wall["segments"] = json!([{
                "storey": "first", "from": "0", "to": "32", "mark": "S1", "method": "segmented",
                "edge_spacing": "4", "field_spacing": "6", "blocked": true, "end_posts": 2,
            }]);
        }
    }
}

fn house(seed: u64) -> (House, Mix) {
    let (text, mix) = house_json(seed);
    let mut document: Value = serde_json::from_str(&text).expect("generated houses are JSON");
    if seed % 2 == 1 {
        furnish(seed, &mut document);
    }
    let furnished = read_house(document.to_string().as_bytes());
    // Where an opening leaves no room for them, the house stays as it is.
    let read = furnished.or_else(|_| read_house(text.as_bytes()));
    (read.expect("generated houses are read").0, mix)
}

/// Looks at many houses with their mirrored ones, and fails if a class of houses was hardly seen.
fn on_every_class(count: u64, mut law: impl FnMut(u64, &House, &House)) {
    let mut seen: BTreeMap<&str, usize> = BTreeMap::new();
    for seed in 0..count {
        let (house, mix) = house(seed);
        let mirrored = mirror_house(&house);
        assert_eq!(
            mirror_house(&mirrored),
            house,
            "seed {seed}: mirrored twice is as before"
        );
        law(seed, &house, &mirrored);
        for (class, _) in mix.classes().into_iter().filter(|(_, has)| *has) {
            *seen.entry(class).or_default() += 1;
        }
    }
    assert!(
        seen.len() == 10 && seen.values().all(|count| *count >= 10),
        "{seen:?}"
    );
}

fn same(what: &str, wanted: &[String], found: &[String]) {
    let missing = |from: &[String], other: &[String]| -> Vec<String> {
        from.iter()
            .filter(|line| !other.contains(line))
            .take(3)
            .cloned()
            .collect()
    };
    assert!(
        wanted == found,
        "{what}:\nnot there {:#?}\ninstead {:#?}",
        missing(wanted, found),
        missing(found, wanted)
    );
}

#[test]
fn the_frame_of_a_mirrored_wall_is_the_mirrored_frame() {
    on_every_class(HOUSES, |seed, house, mirrored| {
        for (wall, said) in house.walls.iter().enumerate() {
            let view = View::Mirrored(Mirror { length: said.length });
            let frame = |house| frame_wall(house, wall).expect("the house has this wall");
            let what = format!("seed {seed}, wall {wall}");
            same(
                &what,
                &of_frame(view, &frame(house)),
                &of_frame(View::Straight, &frame(mirrored)),
            );
        }
    });
}

/// A panel's side stands less than two nail lines beside the ridge in its upper edge: which of the three rows that meet
/// there has the nail at their corner goes by the order of edges.
fn side_beside_ridge(frame: &Frame, built: &Evaluated) -> bool {
    let near = Length::sixteenths(2 * 6);
    let ridges = frame.upper.points();
    built.layout.pieces.iter().any(|piece| {
        let bounds = piece.outline.bounds();
        let beside = |x: Length| {
            [bounds.x0, bounds.x1]
                .iter()
                .any(|side| (*side - x).abs() < near && *side != x)
        };
        let corners = piece.outline.rings().into_iter().flatten();
        corners.into_iter().any(|corner| {
            ridges.contains(&corner) && bounds.x0 < corner.x && corner.x < bounds.x1 && beside(corner.x)
        })
    })
}

fn other(end: End) -> End {
    match end {
        End::Left => End::Right,
        End::Right => End::Left,
    }
}

/// The mirrored house is planned as its mirror.
fn planned_in_the_mirror(what: &str, mirror: Mirror, before: &WallPlan, after: &WallPlan) {
    assert_eq!(
        after.built.spec,
        mirror.spec(&before.built.spec),
        "{what}: the layout"
    );
    assert_eq!(after.built.cost, before.built.cost, "{what}: the cost");
    let end = |plan: &WallPlan| plan.start.as_ref().map(|start| start.end);
    assert_eq!(end(after), end(before).map(other), "{what}: the starting end");
}

#[test]
fn plan_and_given_layout_of_a_mirrored_house_are_mirrored() {
    let (mut planned, mut beside_ridge) = (0, 0);
    on_every_class(HOUSES, |seed, house, mirrored| {
        let plan = |house: &House| plan_house(house.clone(), Vec::new());
        let (before, after) = match (plan(house), plan(mirrored)) {
            (Ok(before), Ok(after)) => (before, after),
            (before, after) => {
                assert_eq!(
                    before.is_ok(),
                    after.is_ok(),
                    "seed {seed}: planned on one hand only"
                );
                return;
            }
        };
        for (wall, (before, after)) in before.walls().iter().zip(after.walls()).enumerate() {
            planned += 1;
            let what = format!("seed {seed}, wall {wall}");
            let mirror = Mirror {
                length: house.walls[wall].length,
            };
            let spec = before.built.spec.clone();
            // The plan's own layout, given to both.
            let given = evaluate(mirrored, &after.frame, mirror.spec(&spec));
            let own = evaluate(house, &before.frame, spec);
            let (view, straight) = (View::Mirrored(mirror), View::Straight);
            same(&what, &of_panels(view, &own), &of_panels(straight, &given));
            same(&what, &of_edges(view, &own), &of_edges(straight, &given));
            same(&what, &of_blocking(view, &own), &of_blocking(straight, &given));
            if side_beside_ridge(&before.frame, &own) {
                beside_ridge += 1;
                continue;
            }
            same(&what, &of_nails(view, &own), &of_nails(straight, &given));
            same(&what, &of_findings(&own), &of_findings(&given));
            assert_eq!(own.cost, given.cost, "{what}");
            planned_in_the_mirror(&what, mirror, before, after);
        }
    });
    assert!(planned > 200, "only {planned} walls were planned");
    assert!(
        beside_ridge <= 5,
        "{beside_ridge} walls with a side beside a ridge"
    );
}
