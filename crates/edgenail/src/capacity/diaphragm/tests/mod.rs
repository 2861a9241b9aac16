//! Shares of wall lines against statics. All numbers are own arithmetic.

use super::*;
use crate::capacity::formula::evaluate;
use crate::issue::Code;
use crate::length::Length;
use nalgebra::{Matrix3, Vector3};
use proptest::prelude::*;

fn line(along: PlanAxis, at: i64, stiffness: f64, tributary: i64) -> DiaphragmLine {
    DiaphragmLine {
        name: format!("{along:?} {at}"),
        along,
        at: Length::feet(at),
        stiffness,
        tributary: Length::feet(tributary),
    }
}

fn force(at: i64, accidental: i64) -> StoreyForce {
    StoreyForce {
        size: 6000.0,
        along: PlanAxis::X,
        at: Length::feet(at),
        accidental: Some(Length::feet(accidental)),
    }
}

/// Two lines and nothing else are a beam on two supports, whatever their stiffnesses: V (L - a) / L and V a / L.
#[test]
fn two_lines_are_a_beam() {
    for (first, second) in [(1000.0, 1000.0), (1000.0, 7000.0), (90_000.0, 10.0)] {
        for at in [0, 5, 12, 20, 30] {
            let lines = [line(PlanAxis::X, 0, first, 10), line(PlanAxis::X, 20, second, 10)];
            let found = share_storey_force(&lines, &force(at, 0)).unwrap();
            let rigid: Vec<f64> = found
                .lines
                .iter()
                .map(|line| line.direct + line.turning_beyond)
                .collect();
            let far = f64::from(i32::try_from(at).unwrap()) / 20.0;
            assert!((rigid[0] - 6000.0 * (1.0 - far)).abs() < 1e-6, "{rigid:?}");
            assert!((rigid[1] - 6000.0 * far).abs() < 1e-6);
        }
    }
}

/// A closed box of equal lines, 40 x 20 ft, force a quarter off the middle: by hand, e = 5 ft, J = k (2 10^2 + 2 20^2).
#[test]
fn a_box_by_hand() {
    let lines = [
        line(PlanAxis::X, 0, 5000.0, 15),
        line(PlanAxis::X, 20, 5000.0, 5),
        line(PlanAxis::Y, 0, 5000.0, 20),
        line(PlanAxis::Y, 40, 5000.0, 20),
    ];
    let found = share_storey_force(&lines, &force(15, 1)).unwrap();
    assert!(
        (found.rigidity.eccentricity - 60.0).abs() < 1e-9 && (found.rigidity.centre - 120.0).abs() < 1e-9
    );
    // 6000 x 6 x 10 / 1000 on the parallel lines, 6000 x 6 x 20 / 1000 on the others.
    for (line, beyond, short, envelope) in [
        (0, -360.0, -240.0, 4500.0),
        (1, 360.0, 240.0, 3360.0),
        (2, 720.0, 480.0, 720.0),
        (3, -720.0, -480.0, 720.0),
    ] {
        let line = found.lines[line];
        assert!(
            (line.turning_beyond - beyond).abs() < 1e-9 && (line.turning_short - short).abs() < 1e-9,
            "{line:?}"
        );
        assert!((line.envelope - envelope).abs() < 1e-9, "{line:?}");
    }
    assert!(
        (found.lines[0].flexible - 4500.0).abs() < 1e-9 && (found.lines[1].flexible - 1500.0).abs() < 1e-9
    );
    assert!(found.assumed.is_empty());
    let silent = StoreyForce {
        accidental: None,
        ..force(15, 0)
    };
    let found = share_storey_force(&lines, &silent).unwrap();
    assert_eq!(
        (found.assumed[0].path.as_str(), found.assumed[0].value.as_str()),
        ("/force/accidental", "0")
    );
}

fn any_lines() -> impl Strategy<Value = Vec<DiaphragmLine>> {
    let one = (any::<bool>(), -50_i64..50, 100_u32..50_000, 1_i64..20);
    prop::collection::vec(one, 0..7).prop_map(|rows| {
        let given = rows.into_iter().map(|(along, at, stiffness, tributary)| {
            let along = if along { PlanAxis::X } else { PlanAxis::Y };
            line(along, at, f64::from(stiffness), tributary)
        });
        let two = [
            line(PlanAxis::X, -10, 3000.0, 10),
            line(PlanAxis::X, 15, 4000.0, 8),
        ];
        two.into_iter().chain(given).collect()
    })
}

proptest! {
    #[test]
    fn forces_and_moments_balance(lines in any_lines(), at in -40_i64..40, accidental in 0_i64..6) {
        let force = force(at, accidental);
        let found = share_storey_force(&lines, &force).unwrap();
        let flexible: f64 = found.lines.iter().map(|line| line.flexible).sum();
        prop_assert!((flexible - force.size).abs() < 1e-8);
        for (sign, turning) in [
            (1.0, (|share: &LineShare| share.turning_beyond) as fn(&LineShare) -> f64),
            (-1.0, |share: &LineShare| share.turning_short),
        ] {
            let (mut along, mut across, mut moment) = (0.0, 0.0, 0.0);
            for (line, share) in lines.iter().zip(&found.lines) {
                let (size, at) = (share.direct + turning(share), line.at.as_inches());
                match line.along {
                    PlanAxis::X => { along += size; moment += size * at; }
                    PlanAxis::Y => { across += size; moment -= size * at; }
                }
                prop_assert!(share.envelope >= size.abs() && share.envelope >= share.flexible);
            }
            let place = force.at.as_inches() + sign * 12.0 * f64::from(i32::try_from(accidental).unwrap());
            prop_assert!((along - force.size).abs() < 1e-7 && across.abs() < 1e-7, "{along} {across}");
            prop_assert!((moment - force.size * place).abs() < 1e-5 * force.size, "{moment}");
        }
    }

    /// The movements of the diaphragm from its three equations give the same forces.
    #[test]
    fn from_the_equations_of_a_rigid_body(lines in any_lines(), at in -40_i64..40, along_x in any::<bool>()) {
        let along = if along_x { PlanAxis::X } else { PlanAxis::Y };
        let mut lines = lines;
        lines.push(line(PlanAxis::Y, 3, 2500.0, 4));
        let force = StoreyForce { along, ..force(at, 0) };
        let place = force.at.as_inches();
        let way = |line: &DiaphragmLine| match line.along {
            PlanAxis::X => Vector3::new(1.0, 0.0, -line.at.as_inches()),
            PlanAxis::Y => Vector3::new(0.0, 1.0, line.at.as_inches()),
        };
        let stiffness: Matrix3<f64> = lines.iter().map(|line| way(line) * way(line).transpose() * line.stiffness).sum();
        let load = match along {
            PlanAxis::X => Vector3::new(1.0, 0.0, -place),
            PlanAxis::Y => Vector3::new(0.0, 1.0, place),
        } * force.size;
        let moved = stiffness.lu().solve(&load).unwrap();
        let found = share_storey_force(&lines, &force).unwrap();
        for (line, share) in lines.iter().zip(&found.lines) {
            let own = way(line).dot(&moved) * line.stiffness;
            prop_assert!((own - share.direct - share.turning_beyond).abs() < 1e-4, "{own} {share:?}");
        }
    }

    #[test]
    fn a_symmetric_plan_does_not_turn(half in any_lines(), across in -20_i64..20) {
        let middle = 7;
        let mut lines = Vec::new();
        for one in half {
            let mirrored = if one.along == PlanAxis::X { Length::feet(2 * middle) - one.at } else { one.at };
            lines.push(DiaphragmLine { at: mirrored, ..one.clone() });
            lines.push(one);
        }
        lines.push(line(PlanAxis::Y, across, 3000.0, 1));
        let found = share_storey_force(&lines, &force(middle, 0)).unwrap();
        for share in &found.lines {
            prop_assert!(share.turning_beyond.abs() < 1e-6 && share.turning_short.abs() < 1e-6);
        }
    }

    #[test]
    fn a_stiffer_line_takes_no_less_directly(lines in any_lines(), which in any::<prop::sample::Index>(), more in 1.0..50.0_f64) {
        let which = which.index(lines.len());
        let before = share_storey_force(&lines, &force(5, 0)).unwrap();
        let mut stiffer = lines.clone();
        stiffer[which].stiffness *= more;
        let after = share_storey_force(&stiffer, &force(5, 0)).unwrap();
        prop_assert!(after.lines[which].direct >= before.lines[which].direct * (1.0 - 1e-12));
        for (a, one) in lines.iter().zip(&before.lines) {
            for (b, two) in lines.iter().zip(&before.lines) {
                prop_assert!(a.along != b.along || a.stiffness > b.stiffness || one.direct <= two.direct);
            }
        }
    }

    #[test]
    fn formulas_give_their_values(lines in any_lines(), at in -40_i64..40, accidental in 0_i64..6) {
        let force = force(at, accidental);
        let found = share_storey_force(&lines, &force).unwrap();
        for (number, share) in found.lines.iter().enumerate() {
            let derivation = found.explain(&lines, &force, number).unwrap();
            for step in &derivation.steps {
                let given = evaluate(step).unwrap();
                prop_assert!((given - step.value).abs() <= 1e-9 * step.value.abs().max(1.0), "{} {given} {}", step.formula, step.value);
            }
            prop_assert!((derivation.value().unwrap() - share.envelope).abs() <= 0.0);
        }
    }
}

#[test]
fn what_cannot_be_shared_is_refused() {
    let one = |lines: &[DiaphragmLine], force: &StoreyForce| {
        let issues = share_storey_force(lines, force).unwrap_err();
        (issues[0].code, issues[0].path.clone())
    };
    let alone = [line(PlanAxis::X, 10, 3000.0, 10)];
    // In line with the force a single line is enough; off it nothing keeps the diaphragm from turning.
    assert!((share_storey_force(&alone, &force(10, 0)).unwrap().lines[0].envelope - 6000.0).abs() < 1e-9);
    assert_eq!(
        one(&alone, &force(11, 0)),
        (Code::NothingResists, "/lines".to_owned())
    );
    assert_eq!(
        one(&alone, &force(10, 1)),
        (Code::NothingResists, "/lines".to_owned())
    );
    assert_eq!(
        one(&[line(PlanAxis::Y, 10, 3000.0, 10)], &force(10, 0)),
        (Code::NothingResists, "/lines".to_owned())
    );
    assert_eq!(
        one(&[line(PlanAxis::X, 10, 3000.0, 0)], &force(10, 0)),
        (Code::NothingResists, "/lines".to_owned())
    );
    assert_eq!(
        one(&[line(PlanAxis::X, 10, f64::NAN, 1)], &force(10, 0)).1,
        "/lines/0/stiffness"
    );
    assert_eq!(
        one(&[line(PlanAxis::X, 10, 1.0, -1)], &force(10, 0)).1,
        "/lines/0/tributary"
    );
    assert_eq!(one(&alone, &force(10, -1)).1, "/force/accidental");
    let bad = StoreyForce {
        size: f64::INFINITY,
        ..force(10, 0)
    };
    assert_eq!(one(&alone, &bad).1, "/force/size");
}

/// Every field at its limit, and just past it.
#[test]
fn fields_that_no_diaphragm_has() {
    let refused = |change: &dyn Fn(&mut [DiaphragmLine; 2], &mut StoreyForce)| -> Vec<String> {
        let mut lines = [
            line(PlanAxis::X, 0, 1000.0, 10),
            line(PlanAxis::X, 20, 1000.0, 10),
        ];
        let mut storey = force(10, 0);
        change(&mut lines, &mut storey);
        let issues = share_storey_force(&lines, &storey).err().unwrap_or_default();
        issues.into_iter().map(|issue| issue.path).collect()
    };
    let far = Length::LIMIT + Length::from_units(1);
    assert!(refused(&|_, _| ()).is_empty());
    assert!(refused(&|_, force| force.size = 0.0).is_empty());
    assert!(refused(&|lines, _| lines[0].stiffness = 1e12).is_empty());
    assert!(refused(&|lines, _| lines[0].tributary = Length::LIMIT).is_empty());
    assert!(refused(&|lines, _| lines[0].at = -Length::LIMIT).is_empty());
    for size in [-1.0, f64::NAN, f64::INFINITY] {
        assert_eq!(refused(&|_, force| force.size = size), ["/force/size"]);
    }
    assert_eq!(refused(&|_, force| force.at = far), ["/force/at"]);
    assert_eq!(
        refused(&|_, force| force.accidental = Some(far)),
        ["/force/accidental"]
    );
    assert_eq!(refused(&|lines, _| lines[1].at = far), ["/lines/1/at"]);
    for stiffness in [0.0, 1.1e12, f64::NAN] {
        assert_eq!(
            refused(&|lines, _| lines[1].stiffness = stiffness),
            ["/lines/1/stiffness"]
        );
    }
    assert_eq!(
        refused(&|lines, _| lines[1].tributary = far),
        ["/lines/1/tributary"]
    );
}
