//! Limits of the standard, at the value and just past it.

use super::{assembly, inch, query};
use crate::capacity::*;
use crate::decimal::Decimal;
use crate::issue::Code;
use crate::length::Length;
use crate::published::{Grade, Pennyweight};

/// SDPWS Table 4.3.4 and 4.3.3.4.1: blocked segments count up to 3.5:1; above 2:1, 2 b / h of them, in 2008 for earthquake
/// only; from memory, of 2015: by equal deflection 1.25 - 0.125 h / b.
#[test]
fn slender_segments_count_for_less() {
    let factor = |edition, load, sharing, ratio: f64| {
        let pier = Pier {
            length: 4.0,
            height: 4.0 * ratio,
        };
        pier.aspect_factor(edition, load, sharing, true).factor
    };
    let (reduced, equal) = (Sharing::ReducedStrength, Sharing::EqualDeflection);
    let (old, new) = (Edition::Sdpws2008, Edition::Sdpws2015);
    let (wind, seismic) = (LoadKind::Wind, LoadKind::Seismic);
    for load in [wind, seismic] {
        assert_eq!(factor(new, load, reduced, 2.0), Some(1.0));
        assert_eq!(factor(new, load, reduced, 2.5), Some(0.8));
        assert_eq!(factor(new, load, equal, 2.5), Some(0.9375));
        assert_eq!(factor(new, load, equal, 3.5), Some(0.8125));
        assert_eq!(factor(new, load, equal, 3.51), None);
    }
    assert_eq!(factor(old, wind, reduced, 2.5), Some(1.0));
    assert_eq!(factor(old, seismic, reduced, 2.5), Some(0.8));
    assert_eq!(factor(old, seismic, equal, 2.5), Some(0.8));
    assert_eq!(factor(old, wind, reduced, 3.5), Some(1.0));
}

fn refused(change: impl Fn(&mut Assembly), of: Assembly) -> Vec<(Code, String)> {
    let mut assembly = of;
    change(&mut assembly);
    let asked = UnitShearQuery {
        accept_unverified: true,
        ..query(assembly)
    };
    let issues = unit_shear(&asked).err().unwrap_or_default();
    issues.into_iter().map(|issue| (issue.code, issue.path)).collect()
}

/// Own range: no framing lumber is lighter than 0.3 or heavier than water.
#[test]
fn framing_has_a_specific_gravity_of_wood() {
    let eight = assembly(Grade::Sheathing, "7/16", Pennyweight::Eight, 6);
    let of = |hundredths| {
        refused(
            |one| one.specific_gravity = Decimal::hundredths(hundredths),
            eight,
        )
    };
    assert!(of(30).is_empty() && of(100).is_empty());
    for beyond in [29, 101] {
        assert_eq!(
            of(beyond),
            [(Code::OutOfRange, "/assembly/specific_gravity".to_owned())]
        );
    }
}

/// SDPWS 4.3.7.1, from memory: members at adjoining panel edges are 3x under edge nails at 2 in., and under 10d nails that
/// go deeper than 1 1/2 in. at 3 in.
#[test]
fn close_nails_want_wider_members() {
    let narrow = |one: &mut Assembly| one.seam_member = inch("1 1/2");
    let ten = |edge| assembly(Grade::Sheathing, "15/32", Pennyweight::Ten, edge);
    let eight = |edge| assembly(Grade::Sheathing, "7/16", Pennyweight::Eight, edge);
    let told = [(Code::MemberTooNarrow, "/assembly/seam_member".to_owned())];
    assert_eq!(refused(narrow, eight(2)), told);
    assert!(refused(narrow, eight(3)).is_empty());
    assert_eq!(refused(narrow, ten(3)), told);
    assert!(refused(narrow, ten(4)).is_empty());
    // 1 31/32 in. through 15/32 goes 1 1/2 in. deep, no deeper.
    let shallow = |one: &mut Assembly| {
        narrow(one);
        one.nail.length = inch("1 31/32");
    };
    assert!(refused(shallow, ten(3)).is_empty());
    // A 3x is 2 1/2 in. wide.
    assert!(refused(|one| one.seam_member = Length::sixteenths(40), ten(2)).is_empty());
}
