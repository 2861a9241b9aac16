//! Force transfer, two faces and anchors by statics.

use super::{assembly, query};
use crate::capacity::formula::evaluate;
use crate::capacity::*;
use crate::published::{Grade, Pennyweight};
use proptest::prelude::*;

fn walls() -> impl Strategy<Value = TransferWall> {
    let sizes = prop::collection::vec((1.5_f64..12.0, 2.0_f64..10.0), 1..5);
    (
        sizes,
        1.5_f64..12.0,
        0.1_f64..0.9,
        7.0_f64..12.0,
        100.0_f64..20_000.0,
    )
        .prop_map(|(sizes, last, share, height, shear)| TransferWall {
            height,
            piers: sizes.iter().map(|(pier, _)| *pier).chain([last]).collect(),
            openings: sizes.iter().map(|(_, opening)| *opening).collect(),
            above_and_below: share * height,
            shear,
        })
}

proptest! {
    /// Statics: segments together carry the shear; a vertical cut through the first and the last segment, and through
    /// every opening, carries the force at the ends; what is explained is what was computed.
    #[test]
    fn every_cut_is_in_equilibrium(wall in walls()) {
        let found = transfer(&wall).unwrap();
        let beside: f64 = found.beside.iter().zip(&wall.piers).map(|(shear, pier)| shear * pier).sum();
        prop_assert!((beside - wall.shear).abs() < 1e-6 * wall.shear);
        let opening = wall.height - wall.above_and_below;
        let close = |value: f64| (value - found.hold_down).abs() < 1e-6 * found.hold_down;
        prop_assert!(close(found.above_and_below * wall.above_and_below));
        if wall.openings.len() == 1 {
            for index in [0, 1] {
                let cut = found.corners[index] * wall.above_and_below + found.beside[index] * opening;
                prop_assert!(close(cut), "{cut} {}", found.hold_down);
            }
        }
        // Above the openings the shear of the top is handed on by corners and straps: nothing is lost along a level cut.
        let above: f64 = found.corners.iter().zip(&wall.piers).map(|(shear, pier)| shear * pier).sum::<f64>()
            + wall.openings.iter().map(|opening| found.above_and_below * opening).sum::<f64>();
        prop_assert!((above - wall.shear).abs() < 1e-6 * wall.shear);
        let derivation = explain_transfer(&wall).unwrap();
        for step in &derivation.steps {
            let again = evaluate(step).unwrap();
            prop_assert!((again - step.value).abs() <= 1e-9 * step.value.abs().max(1.0), "{step:#?} {again}");
        }
        prop_assert!((derivation.value().unwrap() - found.largest()).abs() < 1e-9);
    }
}

#[test]
fn sizes_that_no_wall_has_are_named() {
    let wall = TransferWall {
        height: f64::NAN,
        piers: vec![4.0],
        openings: vec![-1.0],
        above_and_below: 4.0,
        shear: 1.0,
    };
    let paths: Vec<String> = transfer(&wall)
        .unwrap_err()
        .into_iter()
        .map(|issue| issue.path)
        .collect();
    assert_eq!(paths, ["/height", "/openings/0", "/piers"]);
}

/// Own arithmetic on a recalled rule: like faces carry twice; the stiffer of unlike ones governs.
#[test]
fn faces_add() {
    let of = |edge| assembly(Grade::Sheathing, "7/16", Pennyweight::Eight, edge);
    let both = |other| {
        let asked = FacesQuery {
            one: query(of(6)),
            other,
            joints_apart: false,
        };
        let mut steps = Derivation::default();
        let found = faces(&asked, &mut steps).unwrap();
        assert!((steps.value().unwrap() - found.design).abs() < 1e-9);
        found
    };
    let like = both(OtherFace::Panels(of(6)));
    assert!((like.nominal - 960.0).abs() < 1e-9 && like.stiffness == Some(30.0));
    let unlike = both(OtherFace::Panels(of(4)));
    assert!((unlike.nominal - 37.0 * (700.0_f64 / 22.0).min(480.0 / 15.0)).abs() < 1e-9);
    let material = |nominal| OtherFace::Material {
        material: FaceMaterial::GypsumWallboard,
        nominal,
    };
    assert!((both(material(300.0)).nominal - 600.0).abs() < 1e-9);
    assert!((both(material(100.0)).nominal - 480.0).abs() < 1e-9);
}

/// Statics: 3,500 lb on anchors of 1,000 lb are four; uplift asks for what an anchor holds of it.
#[test]
fn anchors_are_counted() {
    let mut asked = AnchorageQuery {
        shear: 250.0,
        length: 14.0,
        each: 1000.0,
        uplift: 0.0,
        each_uplift: None,
        nominal: Some(400.0),
        sill: None,
        accept_unverified: true,
    };
    let of = |asked: &AnchorageQuery| plate_anchors(asked, &mut Derivation::default());
    let found = of(&asked).unwrap();
    assert_eq!((found.count, found.washer_ratio), (4, Some(1.0)));
    asked.uplift = 300.0;
    assert_eq!(of(&asked).unwrap_err()[0].path, "/each_uplift");
    asked.each_uplift = Some(800.0);
    assert_eq!(of(&asked).unwrap().count, 6);
    asked.shear = 1e15;
    assert_eq!(of(&asked).unwrap_err()[0].path, "/each");
}

/// SDPWS 2015 4.3.3.4.1, from memory: a segment beside the openings that is over twice as high as long counts for
/// 1.25 - 0.125 h / b. 7/16 with 8d at 6 in.: 240 plf for earthquake, ASD (APA B360P Table 29).
#[test]
fn slender_segments_beside_openings_raise_the_ratio() {
    let query = UnitShearQuery {
        accept_unverified: true,
        ..query(assembly(Grade::Sheathing, "7/16", Pennyweight::Eight, 6))
    };
    let mut slender_governs = 0;
    for (first, last) in [(2.0, 2.0), (2.0, 4.0), (3.0, 3.0), (1.75, 6.0), (6.0, 1.75)] {
        let wall = TransferWall {
            height: 12.0,
            piers: vec![first, last],
            openings: vec![4.0],
            above_and_below: 6.0,
            shear: 1500.0,
        };
        let forces = transfer(&wall).unwrap();
        let found = transfer_ratio(&wall, &forces, &query).unwrap();
        let counts = |length: f64| {
            let ratio = 6.0 / length;
            if ratio > 2.0 { 1.25 - 0.125 * ratio } else { 1.0 }
        };
        let beside = forces
            .beside
            .iter()
            .zip([first, last])
            .map(|(shear, length)| shear.abs() / counts(length));
        let beside = beside.fold(0.0, f64::max);
        let others = forces
            .corners
            .iter()
            .map(|shear| shear.abs())
            .fold(forces.above_and_below, f64::max);
        slender_governs += usize::from(beside > others && first.min(last) < 3.0);
        let wanted = beside.max(others) / 240.0;
        assert!(
            (found.ratio - wanted).abs() < 1e-12 * wanted,
            "{} {wanted}",
            found.ratio
        );
        let mut steps = Derivation::default();
        assert!((explain_transfer_ratio(&wall, &forces, &found, &mut steps) - wanted).abs() < 1e-12 * wanted);
        let slender = first.min(last) < 3.0;
        assert_eq!(
            found.confidence == crate::published::Confidence::Memory,
            slender,
            "{first} {last}"
        );
    }
    assert!(slender_governs > 0);
}
