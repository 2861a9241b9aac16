//! Laws of every pattern of nails.

use super::*;
use crate::issue::Code;
use proptest::prelude::*;

fn any_nail() -> impl Strategy<Value = RackingNail> {
    (0_i64..=48, 0_i64..=96, 50_u32..150, 1_u32..20, any::<bool>()).prop_map(
        |(x, y, strength, stiffness, edge)| RackingNail {
            at: place(x, y),
            strength: f64::from(strength),
            stiffness: 500.0 * f64::from(stiffness),
            edge,
        },
    )
}

fn any_sheet() -> impl Strategy<Value = RackingSheet> {
    prop::collection::vec(any_nail(), 5..60).prop_map(|nails| RackingSheet {
        piece: 0,
        outline: outline(48, 96),
        nails,
    })
}

/// Nobody pulls the sheet away or turns it, and it takes its share of the frame's moment both ways.
fn balanced(sheet: &RackingSheet, forces: &[NailForce], moment: f64) -> Result<(), TestCaseError> {
    let (mut right, mut up, mut plates, mut posts) = (0.0, 0.0, 0.0, 0.0);
    for (nail, force) in sheet.nails.iter().zip(forces) {
        right += force.along_plates;
        up += force.along_posts;
        plates += force.along_plates * nail.at.y.as_inches();
        posts += force.along_posts * nail.at.x.as_inches();
    }
    let scale = 1e-9 * (1.0 + moment.abs());
    prop_assert!(right.abs() < scale && up.abs() < scale, "{right} {up}");
    prop_assert!(
        (plates - moment).abs() < 10.0 * scale && (posts - moment).abs() < 10.0 * scale,
        "{plates} {posts} {moment}"
    );
    Ok(())
}

fn within_strength(sheet: &RackingSheet, forces: &[NailForce]) -> Result<(), TestCaseError> {
    for (nail, force) in sheet.nails.iter().zip(forces) {
        prop_assert!(force.size() <= nail.strength * (1.0 + 1e-12));
    }
    Ok(())
}

proptest! {
    #[test]
    fn forces_balance(sheet in any_sheet(), force in 1.0..5000.0_f64) {
        let Ok(found) = rack(&wall(vec![sheet.clone()], force)) else { return Ok(()); };
        let one = &found.sheets[0];
        balanced(&sheet, &one.nails, force * 96.0)?;
        let plastic = one.plastic.forces(&sheet);
        balanced(&sheet, &plastic, one.plastic_force * 96.0)?;
        within_strength(&sheet, &plastic)?;
        balanced(&sheet, &one.limit_nails, one.limit_force * 96.0)?;
        within_strength(&sheet, &one.limit_nails)?;
        // At the first nail's force no nail is above its strength, and the bounds lie in their order.
        let worst = one.nails.iter().zip(&sheet.nails).map(|(force, nail)| force.size() / nail.strength).fold(0.0, f64::max);
        prop_assert!((worst - one.worst).abs() < 1e-12 && (one.worst * one.first_nail / force - 1.0).abs() < 1e-9);
        prop_assert!(one.first_nail <= one.limit_force_most * (1.0 + 1e-9));
        prop_assert!(one.plastic_force <= one.limit_force_most * (1.0 + 1e-9));
        prop_assert!(one.limit_force <= one.limit_force_most * (1.0 + 1e-12));
        prop_assert!(one.limit_force >= one.limit_force_most * (1.0 - 1e-4), "{} {}", one.limit_force, one.limit_force_most);
    }

    #[test]
    fn a_nail_less_never_raises_the_plastic_forces(sheet in any_sheet(), which in any::<prop::sample::Index>()) {
        let Ok(before) = rack(&wall(vec![sheet.clone()], 1.0)) else { return Ok(()); };
        let mut less = sheet;
        less.nails.remove(which.index(less.nails.len()));
        let Ok(after) = rack(&wall(vec![less], 1.0)) else { return Ok(()); };
        prop_assert!(after.plastic_force <= before.plastic_force * (1.0 + 1e-12));
        prop_assert!(after.sheets[0].limit_force <= before.sheets[0].limit_force_most * (1.0 + 1e-12));
        prop_assert!(after.stiffness <= before.stiffness * (1.0 + 1e-12));
    }

    #[test]
    fn twice_as_stiff_moves_half_as_far(sheet in any_sheet()) {
        let Ok(before) = rack(&wall(vec![sheet.clone()], 300.0)) else { return Ok(()); };
        let mut stiff = sheet;
        for nail in &mut stiff.nails {
            nail.stiffness *= 2.0;
        }
        let after = rack(&wall(vec![stiff], 300.0)).unwrap();
        prop_assert!((after.movement * 2.0 / before.movement - 1.0).abs() < 1e-12);
        prop_assert!((after.first_nail / before.first_nail - 1.0).abs() < 1e-12);
    }

    #[test]
    fn the_mirrored_sheet_is_the_same(sheet in any_sheet()) {
        let Ok(before) = rack(&wall(vec![sheet.clone()], 300.0)) else { return Ok(()); };
        let mut mirrored = sheet;
        for nail in &mut mirrored.nails {
            nail.at.x = Length::inches(48) - nail.at.x;
        }
        let after = rack(&wall(vec![mirrored], 300.0)).unwrap();
        for (after, before) in [
            (after.stiffness, before.stiffness),
            (after.first_nail, before.first_nail),
            (after.plastic_force, before.plastic_force),
        ] {
            prop_assert!((after - before).abs() <= 1e-9 * before.abs(), "{after} {before}");
        }
        for (after, before) in after.sheets[0].nails.iter().zip(&before.sheets[0].nails) {
            prop_assert!((after.along_plates - before.along_plates).abs() < 1e-6);
            prop_assert!((after.along_posts + before.along_posts).abs() < 1e-6);
        }
    }

    #[test]
    fn sheets_share_the_angle(first in any_sheet(), second in any_sheet()) {
        let alone = |sheet: &RackingSheet| rack(&wall(vec![sheet.clone()], 700.0));
        let (Ok(one), Ok(two)) = (alone(&first), alone(&second)) else { return Ok(()); };
        let both = rack(&wall(vec![first, second], 700.0)).unwrap();
        prop_assert!((both.stiffness / (one.stiffness + two.stiffness) - 1.0).abs() < 1e-12);
        prop_assert!((both.plastic_force - one.plastic_force - two.plastic_force).abs() < 1e-9);
        let shares: f64 = both.sheets.iter().map(|sheet| sheet.force).sum();
        prop_assert!((shares - 700.0).abs() < 1e-9);
        for sheet in &both.sheets {
            prop_assert!((sheet.force / sheet.stiffness - both.movement).abs() < 1e-9 * both.movement);
            prop_assert!(sheet.worst <= both.worst * (1.0 + 1e-12));
        }
    }
}

#[test]
fn nails_on_one_line_resist_nothing() {
    for line in [
        (0..10).map(|up| nail(24, 6 * up, true)).collect::<Vec<_>>(),
        (0..8).map(|along| nail(6 * along, 90, true)).collect(),
        Vec::new(),
    ] {
        let sheet = RackingSheet {
            piece: 0,
            outline: outline(48, 96),
            nails: line,
        };
        let issues = rack(&wall(vec![sheet.clone()], 1.0)).unwrap_err();
        assert_eq!(issues[0].code, Code::NothingResists);
        // Beside a sheet that holds, it adds nothing.
        let found = rack(&wall(vec![super::sheet(48, 96, 6, &[]), sheet], 1.0)).unwrap();
        assert!(found.sheets[1].stiffness.abs() <= 0.0 && found.sheets[1].governing.is_none());
        assert!((found.plastic_force - 8.0).abs() < 1e-9 && found.sheets[1].limit_force < 1e-3);
    }
}

#[test]
fn what_no_wall_has_is_refused() {
    let sheet = super::sheet(48, 96, 6, &[]);
    let mut bad = wall(vec![sheet], f64::NAN);
    bad.height = Length::ZERO;
    bad.sheets[0].nails[3].strength = f64::INFINITY;
    bad.sheets[0].nails[4].stiffness = -1.0;
    bad.sheets[0].nails[5].at = place(-1, 0);
    let issues = rack(&bad).unwrap_err();
    let paths: Vec<&str> = issues.iter().map(|issue| issue.path.as_str()).collect();
    assert_eq!(
        paths,
        [
            "/height",
            "/force",
            "/sheets/0/nails/3/strength",
            "/sheets/0/nails/4/stiffness",
            "/sheets/0/nails/5/at"
        ]
    );
}
