//! Segments that share a line's shear by moving alike, and what storeys above bring down, against statics.

use super::lines::line;
use crate::capacity::formula::evaluate;
use crate::capacity::*;
use crate::issue::Code;
use crate::length::Length;
use proptest::prelude::*;

/// A line whose segments move: 4x4 posts of 1,600,000 psi, hold-downs that give 1/8 in. at 3,000 lb (invented).
fn moving(length: i64, openings: &[(i64, i64, i64)]) -> WallLine {
    let mut wall = line(length, openings);
    wall.sharing = Sharing::EqualDeflection;
    wall.posts = Some(EndPosts {
        elasticity: 1.6e6,
        area: 12.25,
    });
    wall.hold_down = Some(HoldDown {
        capacity: 3000.0,
        elongation: 0.125,
    });
    wall.query.accept_unverified = true;
    wall
}

/// Own arithmetic on SDPWS 2008/2015 Eq. 4.3-1 (recalled) for a segment of 4 by 8 ft under 250 plf with 15 kips/in.:
/// `8 x 250 x 512 / (1.6e6 x 12.25 x 4)` = 0.01306 in., `250 x 8 / 15000` = 0.13333, `2 x 0.125 x 2000 / 3000` = 0.16667.
#[test]
fn the_drift_of_one_segment() {
    let found = wall_line(&moving(48, &[])).unwrap();
    let drift = found.piers[0].drift.unwrap().three;
    assert!((drift.bending - 0.013_061).abs() < 1e-6, "{drift:?}");
    assert!((drift.shear - 250.0 * 8.0 / 15_000.0).abs() < 1e-9);
    assert!((drift.anchor - 2.0 * 0.125 * 2.0 / 3.0).abs() < 1e-9);
    // 2,000 lb of 3,000 at the ends, 250 plf of 255 in the sheathing (480 nominal; studs at 16 in. let the 15/32 row serve).
    assert_eq!(found.checks.len(), 2);
    assert_eq!(found.checks[0].check, CheckKind::Shear);
}

/// Nothing says how segments move: refused, not shared by strength.
#[test]
fn what_moves_the_segments_has_to_be_given() {
    let mut wall = moving(144, &[(48, 48, 80)]);
    wall.posts = None;
    let issue = wall_line(&wall).unwrap_err().remove(0);
    assert_eq!(
        (issue.code, issue.path.as_str()),
        (Code::MissingField, "/sharing")
    );
}

/// Statics, own arithmetic: 600 lb of 1,000 lb come through a floor 1 ft deep, and 800 lb of tension stand on the left end.
#[test]
fn the_storey_above_comes_down() {
    let mut wall = line(48, &[]);
    wall.above = Some(FromAbove {
        shear: 600.0,
        floor: Length::feet(1),
        ends: vec![
            EndAbove {
                at: Length::inches(2),
                tension: 800.0,
            },
            EndAbove {
                at: Length::inches(30),
                tension: 500.0,
            },
            EndAbove {
                at: Length::inches(48),
                tension: -900.0,
            },
        ],
    });
    let found = wall_line(&wall).unwrap();
    // (1,000 x 8 + 600 x 1) / 4 + 800 lb; the tension in the middle lands on no post.
    assert!((found.hold_down - (8600.0 / 4.0 + 800.0)).abs() < 1e-9);
    assert_eq!(found.unsupported.len(), 1);
    assert_eq!(found.unsupported[0].at, Length::inches(30));
    wall.above.as_mut().unwrap().shear = 1000.5;
    assert_eq!(wall_line(&wall).unwrap_err()[0].path, "/above/shear");
}

/// IBC 2006 2305.3.11 by an association's quotation: 350 plf on a 2x sill; SDPWS washers from 400 plf nominal (recalled).
#[test]
fn the_plate_is_anchored() {
    let mut wall = line(48, &[]);
    wall.query.accept_unverified = true;
    wall.query.high_seismic = true;
    wall.anchor = Some(PlateAnchor {
        each: 600.0,
        each_uplift: None,
    });
    let anchors = wall_line(&wall).unwrap().anchors.unwrap();
    assert_eq!(
        (anchors.count, anchors.spacing),
        (2, Some(12.0 * 4.0 / (1000.0 / 600.0)))
    );
    assert!(anchors.washer_ratio.unwrap() > 1.0);
    assert_eq!(anchors.sill.unwrap().needs, SillNeeds::TwoInch);
    wall.method = LineMethod::Perforated;
    let issue = wall_line(&wall).unwrap_err().remove(0);
    assert_eq!(
        (issue.code, issue.path.as_str()),
        (Code::MissingField, "/anchor/each_uplift")
    );
}

/// Faces of the like: twice the strength and twice the stiffness (SDPWS 4.3.3.3, recalled).
#[test]
fn a_line_sheathed_on_both_faces() {
    let one = wall_line(&moving(96, &[])).unwrap();
    let mut wall = moving(96, &[]);
    wall.other_face = Some(OtherFace::Panels(wall.query.assembly));
    wall.joints_apart = true;
    let both = wall_line(&wall).unwrap();
    assert!((both.capacity - 2.0 * one.capacity).abs() < 1e-9);
    let shear = |found: &LineCapacity| found.piers[0].drift.unwrap().three.shear;
    assert!((shear(&one) - 2.0 * shear(&both)).abs() < 1e-12);
    assert!(both.piers[0].drift.unwrap().four.is_none());
}

proptest! {
    /// Shares add up to the demand; what is loaded moves alike; at its capacity the
    /// first segment reaches its own and none is beyond; drift rises with the load; steps give what was computed.
    #[test]
    fn segments_move_alike(
        piers in prop::collection::vec(28_i64..160, 2..5),
        demand in 1.0_f64..20_000.0,
        dead in prop::sample::select(vec![0.0, 40.0, 400.0]),
        give in prop::sample::select(vec![0.0, 0.03, 0.3]),
        above in prop::option::of((0.0_f64..1.0, 0_i64..20, -500.0_f64..2000.0)),
    ) {
        let mut at = 0;
        let mut openings = Vec::new();
        for pier in &piers[1..] {
            openings.push((at + piers[0], 36, 80));
            at += piers[0] + 36 + pier - piers[0];
        }
        let length = openings.last().map_or(0, |(left, width, _)| left + width) + 60;
        let mut wall = moving(length, &openings);
        wall.demand = demand;
        wall.dead = dead;
        wall.hold_down.as_mut().unwrap().elongation = give;
        wall.above = above.map(|(share, floor, tension)| FromAbove {
            shear: share * demand,
            floor: Length::inches(floor),
            ends: vec![EndAbove { at: Length::ZERO, tension }],
        });
        let Ok(found) = wall_line(&wall) else { return Ok(()) };
        let shares: f64 = found.piers.iter().map(|pier| pier.shear * pier.pier.length).sum();
        prop_assert!((shares - demand).abs() < 1e-6 * demand.max(1.0));
        let counted: Vec<_> = found.piers.iter().filter(|pier| pier.capacity > 0.0).collect();
        let drift = found.drift.unwrap().three.total;
        for pier in &counted {
            let own = pier.drift.unwrap().three.total;
            if pier.shear > 0.0 {
                prop_assert!((own - drift).abs() < 1e-9 * drift.max(1.0), "{own} {drift}");
            } else {
                // It stands aside: what comes down on it moves it further than the others go.
                prop_assert!(own >= drift - 1e-9);
            }
        }
        for step in &found.derive(&wall).steps {
            let again = evaluate(step).unwrap();
            prop_assert!((again - step.value).abs() <= 1e-9 * step.value.abs().max(1.0), "{step:#?} {again}");
        }
        let mut more = wall.clone();
        more.demand = demand * 1.5;
        if let Some(above) = &mut more.above {
            above.shear *= 1.5;
        }
        prop_assert!(wall_line(&more).unwrap().drift.unwrap().three.total > drift);
        if counted.len() > 1 {
            let mut full = wall.clone();
            full.demand = found.capacity;
            if let Some(above) = &mut full.above {
                above.shear *= found.capacity / demand;
            }
            let at_capacity = wall_line(&full).unwrap();
            let most = at_capacity
                .piers
                .iter()
                .filter(|pier| pier.capacity > 0.0)
                .map(|pier| pier.shear * pier.pier.length / pier.capacity)
                .fold(0.0, f64::max);
            prop_assert!((most - 1.0).abs() < 1e-6, "{most}");
        }
    }
}
