//! Closed forms. All numbers are own arithmetic on the stated formulas.

use super::*;
use crate::capacity::formula::evaluate;
use nalgebra::{Matrix4, Vector4};

fn close(found: f64, own: f64, within: f64) {
    assert!((found - own).abs() <= within, "{found} {own}");
}

/// 4 x 8 ft, nails at 6 in. on the outline, inner lines 8 in. to both sides of the middle, 12 in. field.
#[test]
fn a_sheet_with_two_inner_lines() {
    let wall = wall(vec![sheet(48, 96, 6, &[16, 32])], 1.0);
    let found = rack(&wall).unwrap();
    let one = &found.sheets[0];
    assert_eq!(one.nails.len(), 62);
    close(one.elastic.across, 22_496.0, 1e-6);
    close(one.elastic.upright, 69_696.0, 1e-6);
    close(one.worst, 0.121_905, 5e-7);
    close(found.first_nail, 8.203, 5e-4);
    close(found.movement, 0.541_90, 5e-6);
    let at = wall.sheets[0].nails[one.governing.unwrap()].at;
    assert!(
        [0, 48].contains(&(at.x.units() / Length::PER_INCH))
            && [0, 96].contains(&(at.y.units() / Length::PER_INCH))
    );
}

#[test]
fn a_sheet_with_one_inner_line() {
    let found = rack(&wall(vec![sheet(48, 96, 6, &[24])], 1.0)).unwrap();
    assert_eq!(found.sheets[0].nails.len(), 55);
    close(found.sheets[0].elastic.across, 21_600.0, 1e-6);
    close(found.sheets[0].elastic.upright, 65_664.0, 1e-6);
    close(found.first_nail, 7.832, 5e-4);
}

/// Shear flow along whole edges (Design of Timber Structures vol. 1, 2016, after Kallsner and Girhammar): strength over
/// spacing times length, whatever stands in the field.
#[test]
fn whole_edges_carry_strength_over_spacing() {
    for (spacing, per_nail) in [(6, 8.0), (4, 12.0), (3, 16.0)] {
        for inner in [&[][..], &[24], &[16, 32]] {
            let found = rack(&wall(vec![sheet(48, 96, spacing, inner)], 1.0)).unwrap();
            close(found.plastic_force, per_nail, 1e-9);
        }
    }
    // Two courses of lying sheets carry the same as upright ones.
    let low = sheet(48, 48, 6, &[]);
    let found = rack(&wall(vec![low.clone(), low], 1.0)).unwrap();
    close(found.plastic_force, 8.0, 1e-9);
}

#[test]
fn length_that_counts_without_hold_down() {
    for (length, counted) in [(1200, 0.2833), (2400, 0.9941), (3600, 1.9267), (4800, 2.9666)] {
        let (height, length) = (Length::mm(2400), Length::mm(length));
        let found = unanchored_length(height, length);
        close(found * 0.0254, counted, 5e-5);
        let mut derivation = crate::capacity::Derivation::default();
        explain_unanchored_length(height, length, &mut derivation);
        close(evaluate(&derivation.steps[0]).unwrap(), found, 1e-12);
    }
}

/// The general case from nothing but equilibrium: movements of the sheet and the angle of the frame from four equations,
/// for nails in no order with stiffnesses that differ.
#[test]
fn any_pattern_from_its_equations() {
    let mut sheet = sheet(48, 96, 6, &[16, 32]);
    for (number, nail) in (0_i64..).zip(&mut sheet.nails) {
        nail.stiffness = 1000.0 + 137.0 * f64::from(u32::try_from(number * 29 % 11).unwrap());
        nail.strength = 80.0 + f64::from(u32::try_from(number * 7 % 13).unwrap());
    }
    sheet
        .nails
        .retain(|nail| nail.at.x.units() + nail.at.y.units() / 2 > Length::inches(40).units());
    let (height, force) = (96.0, 500.0);
    let (mut matrix, mut load) = (Matrix4::zeros(), Vector4::zeros());
    load[3] = force * height;
    for nail in &sheet.nails {
        let (x, y) = (nail.at.x.as_inches(), nail.at.y.as_inches());
        // Slip along plates and posts for: right, up, turn of the sheet, angle of the frame (all sheet less frame).
        for slip in [Vector4::new(1.0, 0.0, -y, -y), Vector4::new(0.0, 1.0, x, 0.0)] {
            matrix += slip * slip.transpose() * nail.stiffness;
        }
    }
    let moved = matrix.lu().solve(&load).unwrap();
    let wall = wall(vec![sheet], force);
    let found = rack(&wall).unwrap();
    close(found.movement / (moved[3] * height), 1.0, 1e-9);
    for (nail, force) in wall.sheets[0].nails.iter().zip(&found.sheets[0].nails) {
        let (x, y) = (nail.at.x.as_inches(), nail.at.y.as_inches());
        close(
            force.along_plates,
            -nail.stiffness * (moved[0] - y * (moved[2] + moved[3])),
            1e-7,
        );
        close(
            force.along_posts,
            -nail.stiffness * (moved[1] + x * moved[2]),
            1e-7,
        );
    }
}

/// Four corner nails on 36 x 48 in. by hand: all equally loaded, so the first nail's force is the limit, 2 F b / diagonal;
/// forces along plates and posts only reach 2 F b / (b + h).
#[test]
fn four_corner_nails() {
    let sheet = RackingSheet {
        piece: 0,
        outline: outline(36, 48),
        nails: vec![
            nail(0, 0, true),
            nail(36, 0, true),
            nail(36, 48, true),
            nail(0, 48, true),
        ],
    };
    let mut wall = wall(vec![sheet], 1.0);
    wall.height = Length::inches(48);
    let found = rack(&wall).unwrap();
    close(found.first_nail, 2.0 * 36.0 / 60.0, 1e-12);
    close(found.limit_force, 2.0 * 36.0 / 60.0, 1e-9);
    close(found.sheets[0].limit_force_most, 2.0 * 36.0 / 60.0, 1e-9);
    close(found.plastic_force, 2.0 * 36.0 / 84.0, 1e-12);
}

#[test]
fn formulas_give_their_values() {
    let mut sheet = sheet(48, 96, 6, &[16, 32]);
    sheet.nails.truncate(50);
    sheet.nails.swap_remove(7);
    let wall = wall(vec![sheet], 100.0);
    let found = rack(&wall).unwrap();
    let one = &found.sheets[0];
    for (derivation, value) in [
        (one.explain_first_nail(&wall, &wall.sheets[0]), one.first_nail),
        (one.explain_plastic(&wall, &wall.sheets[0]), one.plastic_force),
    ] {
        for step in &derivation.steps {
            let given = evaluate(step).unwrap();
            close(given, step.value, 1e-9 * step.value.abs().max(1.0));
        }
        close(derivation.value().unwrap(), value, 0.0);
    }
}

/// Three nails at (0, 0), (12, 0) and (0, 30) in. about their centre (4, 10): `S_xx` = 2 x 16 + 64, `S_yy` = 2 x 100 + 400.
/// Where in its sheet the pattern stands changes neither.
#[test]
fn nails_off_the_middle_of_their_sheet() {
    for (dx, dy) in [(0, 0), (7, 20), (36, 66)] {
        let nails = [(0, 0), (12, 0), (0, 30)]
            .map(|(x, y)| nail(x + dx, y + dy, true))
            .to_vec();
        let sheet = RackingSheet {
            piece: 0,
            outline: outline(48, 96),
            nails,
        };
        let found = Elastic::of(&sheet);
        let inches = |whole: i64| f64::from(i32::try_from(whole).unwrap());
        close(found.centre_x, 4.0 + inches(dx) - 24.0, 1e-9);
        close(found.centre_y, 10.0 + inches(dy) - 48.0, 1e-9);
        close(found.across, 96.0, 1e-9);
        close(found.upright, 600.0, 1e-9);
        assert!(found.holds());
    }
}

/// Nails on one level or plumb line let the frame rack freely.
#[test]
fn a_line_of_nails_holds_nothing() {
    for places in [[(10, 5), (10, 50), (10, 90)], [(5, 7), (20, 7), (41, 7)]] {
        let sheet = RackingSheet {
            piece: 0,
            outline: outline(48, 96),
            nails: places.map(|(x, y)| nail(x, y, true)).to_vec(),
        };
        let found = Elastic::of(&sheet);
        assert!(!found.holds() && found.rigidity() == 0.0, "{found:?}");
    }
}

/// Every field of a wall at its limit, and just past it.
#[test]
fn walls_that_cannot_be_racked() {
    let good = || wall(vec![sheet(48, 96, 6, &[24])], 0.0);
    let refused = |change: &dyn Fn(&mut RackingWall)| -> Vec<String> {
        let mut wall = good();
        change(&mut wall);
        let issues = rack(&wall).err().unwrap_or_default();
        issues.into_iter().map(|issue| issue.path).collect()
    };
    assert!(refused(&|_| ()).is_empty());
    assert!(refused(&|wall| wall.height = Length::feet(1000)).is_empty());
    assert!(refused(&|wall| wall.sheets[0].nails[3].strength = 1e9).is_empty());
    assert_eq!(refused(&|wall| wall.height = Length::ZERO), ["/height"]);
    assert_eq!(refused(&|wall| wall.height = Length::feet(1001)), ["/height"]);
    assert_eq!(refused(&|wall| wall.force = -1.0), ["/force"]);
    assert_eq!(refused(&|wall| wall.force = f64::NAN), ["/force"]);
    for strength in [0.0, 1.1e9, f64::NAN] {
        assert_eq!(
            refused(&|wall| wall.sheets[0].nails[3].strength = strength),
            ["/sheets/0/nails/3/strength"]
        );
        assert_eq!(
            refused(&|wall| wall.sheets[0].nails[3].stiffness = strength),
            ["/sheets/0/nails/3/stiffness"]
        );
    }
    let far = Length::LIMIT + Length::inches(1);
    let moved: [&dyn Fn(&mut Rect); 2] = [&|outline| outline.x1 = far, &|outline| outline.y1 = far];
    for change in moved {
        assert_eq!(
            refused(&|wall| change(&mut wall.sheets[0].outline)),
            ["/sheets/0/outline"]
        );
    }
    assert_eq!(
        refused(&|wall| wall.sheets[0].nails[0].at = place(49, 5)),
        ["/sheets/0/nails/0/at"]
    );
}
