use crate::finding::FindingCode;
use crate::frame::frame_wall;
use crate::generate::house_json;
use crate::geometry::Interval;
use crate::layout::Running;
use crate::length::Length;
use crate::read_house;
use crate::search::courses::Courses;
use crate::search::hunt::{BUILT, Hunt, Until};
use crate::search::positions::positions;
use crate::search::search;
use crate::search::space::Space;

/// A wall of one storey with a window every 15 ft.
fn wall(feet: u32) -> String {
    let openings: Vec<String> = (0..feet / 15)
        .map(|bay| {
            let left = bay * 180 + 60;
            format!(r#"{{"name": "o{bay}", "kind": "window", "left": "{left}", "sill": "36", "width": "48", "height": "46"}}"#)
        })
        .collect();
    format!(
        r#"{{"name": "h", "unit": "in", "practice": {{"effort_most": 1000000000}}, "walls": [{{"name": "w",
        "length": "{feet}'", "sections": [{{"bottom": {{"bears": "floor"}}, "stack": [{{"kind": "storey",
        "name": "first", "openings": [{}]}}], "top": {{"kind": "flat"}}}}]}}]}}"#,
        openings.join(", ")
    )
}

/// Work grows with the wall, not with its square: strips that are priced for the layouts that are likely to be good, and
/// runs of the best of them. To prove that none is better takes more.
#[test]
fn twice_the_wall_is_twice_the_work() {
    let work = |feet: u32| {
        let (house, _) = read_house(wall(feet).as_bytes()).expect("the wall is legal");
        let frame = frame_wall(&house, 0).expect("the house has a wall");
        let space = Space::new(&house, &frame).expect("the house has a wall");
        let mut hunt = Hunt::new(&space);
        hunt.propose(Until::Proven);
        let built = hunt.built.kept.first().map(|(_, built)| built.runs.len() as u64);
        (
            hunt.effort - hunt.built.count() * BUILT,
            built.expect("the wall has a layout"),
        )
    };
    let lengths = [15, 30, 60, 120, 240, 480, 960];
    let works: Vec<(u64, u64)> = lengths.iter().map(|feet| work(*feet)).collect();
    let longest = works[6];
    for (pair, feet) in works.windows(2).zip(lengths) {
        let [(arcs, runs), (twice_arcs, twice_runs)] = [pair[0], pair[1]];
        assert!(
            twice_runs * 10 <= runs * 23,
            "{feet} ft and twice that: {runs} and {twice_runs} runs"
        );
        if feet >= 30 {
            assert!(
                twice_arcs * 10 <= arcs * 23,
                "{feet} ft and twice that: {arcs} and {twice_arcs} strips priced"
            );
        }
        // A wall of a few sheets has fewer strips for its length, since its ends cut them off: it grows faster than
        // a long one, towards the same.
        let most = longest.0 * u64::from(feet) * 23;
        assert!(
            arcs * 960 * 20 <= most,
            "{feet} ft: {arcs} strips priced, for its length more than the longest wall"
        );
    }
}

/// A wall of 13 ft 4 in. may be cut 48, 48, 16, 48 or 48, 16, 48, 48 at one price (common practice, no source: seams
/// keep 24 in. from joints of the topmost plate where it costs nothing).
#[test]
fn seams_keep_clear_of_plate_joints_where_it_costs_nothing() {
    let plan = |joints: &str| {
        let text = format!(
            r#"{{"practice": {{"running": "upright"}}, "walls": [{{"name": "w", "length": "160",
            "sections": [{{"bottom": {{"bears": "floor"}}, "stack": [{{"kind": "storey", "plate_joints": [{joints}]}}]}}]}}]}}"#
        );
        let (house, _) = read_house(text.as_bytes()).expect("the wall is legal");
        let frame = frame_wall(&house, 0).expect("the house has a wall");
        let found = search(&house, &frame).expect("the wall has a layout").chosen;
        let code = FindingCode::SeamNearPlateJoint;
        let near = found
            .findings
            .iter()
            .filter(|finding| finding.code == code)
            .count();
        (
            found.layout.bands.first().expect("one course").seams.clone(),
            found.cost.total,
            near,
        )
    };
    let (plain, cost, none) = plan("");
    let (moved, same, near) = plan(r#""88""#);
    assert!(plain.contains(&Length::inches(96)), "{plain:?}");
    assert_eq!((none, near, cost), (0, 0, same), "{moved:?}");
    assert!(
        moved
            .iter()
            .all(|x| (*x - Length::inches(88)).abs() >= Length::inches(24)),
        "{moved:?}"
    );
    // Every layout of 48 in. sheets has a seam near one of so many joints: it is told, and costs no more.
    let (_, dear, near) = plan(r#""48", "96", "72", "120", "24""#);
    assert!(near > 0 && dear == cost);
}

/// Plywood of three plies on studs 24 in. apart is laid across them, of four as is cheaper (a prescriptive code's rule,
/// from memory, not checked against print).
#[test]
fn plywood_of_three_plies_is_laid_across_wide_studs() {
    let running = |plies: u32| {
        let text = format!(
            r#"{{"walls": [{{"name": "w", "length": "192", "sections": [{{"bottom": {{"bears": "floor"}},
            "stack": [{{"kind": "storey", "spacing": "24"}}]}}]}}], "practice": {{"assembly": {{"category": "15/32"}}}},
            "stock": {{"sheets": [{{"name": "p", "width": "48 1/2", "length": "97 1/8", "category": "15/32", "plies": {plies}}}]}}}}"#
        );
        let (house, _) = read_house(text.as_bytes()).expect("the wall is legal");
        let frame = frame_wall(&house, 0).expect("the house has a wall");
        let found = search(&house, &frame).expect("the wall has a layout").chosen;
        found
            .layout
            .bands
            .iter()
            .map(|band| band.running)
            .collect::<Vec<_>>()
    };
    assert_eq!(running(4), [Running::Upright]);
    assert!(running(3).iter().all(|running| *running == Running::Flat));
}

/// Of walls made from numbers, one with studs beyond the end of its sheathing among them, no seam may stand beyond an end.
#[test]
fn seams_may_stand_between_the_ends_of_the_wall_alone() {
    for seed in (0..60).chain([975_624]) {
        let (house, _) = read_house(house_json(seed).0.as_bytes()).unwrap();
        for frame in (0..house.walls.len()).filter_map(|wall| frame_wall(&house, wall)) {
            let space = Space::new(&house, &frame).unwrap();
            let low = frame.lower.points().iter().map(|point| point.y).min().unwrap();
            for running in [Running::Upright, Running::Flat] {
                let slot = Courses::new(&space).slot(
                    Interval::new(low, space.top),
                    running,
                    true,
                    true,
                    Length::ZERO,
                );
                let stops = positions(&space, &slot);
                let ends = (stops.first().copied(), stops.last().copied());
                assert_eq!(ends, (Some(space.x.lo), Some(space.x.hi)), "{seed}");
            }
        }
    }
}
