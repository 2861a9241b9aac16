//! Wall lines against published factors and statics.

use super::{assembly, inch, query};
use crate::capacity::formula::evaluate;
use crate::capacity::*;
use crate::issue::Code;
use crate::length::Length;
use crate::published::{CELLS, Grade, Pennyweight};
use proptest::prelude::*;

pub(super) fn line(length: i64, openings: &[(i64, i64, i64)]) -> WallLine {
    WallLine {
        length: Length::inches(length),
        height: Length::feet(8),
        openings: openings
            .iter()
            .map(|(left, width, height)| LineOpening {
                left: Length::inches(*left),
                width: Length::inches(*width),
                height: Length::inches(*height),
            })
            .collect(),
        method: LineMethod::Segmented,
        sharing: Sharing::ReducedStrength,
        query: query(assembly(Grade::Sheathing, "7/16", Pennyweight::Eight, 6)),
        other_face: None,
        joints_apart: false,
        demand: 1000.0,
        dead: 0.0,
        inset: Length::ZERO,
        posts: None,
        hold_down: None,
        anchor: None,
        above: None,
    }
}

/// Statics, own arithmetic: 1,000 lb on 4 ft of 8 ft wall are 250 plf and 2,000 lb at either end.
#[test]
fn one_segment() {
    let found = wall_line(&line(48, &[])).unwrap();
    assert!((found.piers[0].shear - 250.0).abs() < 1e-9);
    assert!((found.piers[0].ends.chord - 2000.0).abs() < 1e-9 && (found.hold_down - 2000.0).abs() < 1e-9);
    assert!((found.ratio - 250.0 / 240.0).abs() < 1e-9);
}

/// A published page on aspect ratios: the narrowest 8 ft wall at 3.5:1 is 27.5 in. wide.
#[test]
fn the_narrowest_segment() {
    let factor = |inches: f64| {
        let pier = Pier {
            length: inches / 12.0,
            height: 8.0,
        };
        pier.aspect_factor(Edition::Sdpws2015, LoadKind::Wind, Sharing::ReducedStrength, true)
            .factor
    };
    assert_eq!(factor(27.4), None);
    assert!(factor(27.5).is_some());
    let issues = wall_line(&line(24, &[])).unwrap_err();
    assert_eq!(issues[0].code, Code::NothingResists);
}

/// SDPWS 2008/2015 Table 4.3.3.5, collected cells: the equation with all openings as high as the highest gives each.
#[test]
fn every_cell_of_the_perforated_table() {
    let mut count = 0;
    for cell in CELLS
        .iter()
        .filter(|cell| cell.table.starts_with("C_o (2008/2015"))
    {
        let (share, height) = cell.key.split_once(";max opening height=").unwrap();
        let share: f64 = share.strip_prefix("pct full-height=").unwrap().parse().unwrap();
        let fraction = match height.split(' ').next().unwrap() {
            "h/3" => 1.0 / 3.0,
            "h/2" => 0.5,
            "2h/3" => 2.0 / 3.0,
            "5h/6" => 5.0 / 6.0,
            "h" => 1.0,
            other => panic!("{other}"),
        };
        let wall = Perforation {
            height: 8.0,
            full_height: share / 100.0 * 40.0,
            length: 40.0,
            opening_area: (1.0 - share / 100.0) * 40.0 * 8.0 * fraction,
        };
        let printed: f64 = cell.value.parse().unwrap();
        let found = perforated_factor(&wall).value;
        assert!((found - printed).abs() <= 0.005 + 1e-9, "{}: {found}", cell.key);
        count += 1;
    }
    assert_eq!(count, 50);
}

/// Own arithmetic on the published equations: 8 x 8 ft, two 2x4 posts, 7/16 board with 8d at 6 in.
#[test]
fn drift_of_both_equations() {
    let at = |shear: f64| Racked {
        shear,
        height: 8.0,
        length: 8.0,
        elasticity: 1.6e6,
        post_area: 10.5,
        anchor: 0.125,
    };
    let skin = Skin {
        nail: Pennyweight::Eight,
        grade: Grade::Sheathing,
        edge_spacing: 6.0,
        rigidity: 83_500.0,
    };
    let close = |found: f64, own: f64| assert!((found - own).abs() < 0.00006, "{found} {own}");
    let low = drift_four_terms(&at(240.0), &skin);
    for (found, own) in [
        (low.bending, 0.00731),
        (low.shear, 0.02299),
        (low.slip, 0.05168),
        (low.anchor, 0.125),
        (low.total, 0.2070),
    ] {
        close(found, own);
    }
    // Apparent stiffness is a secant at 1.4 times ASD: there both agree, below it the three-term drift is larger.
    let stiffness =
        336.0 / (336.0 / 83_500.0 + 0.75 * slip(Pennyweight::Eight, Grade::Sheathing, 168.0)) / 1000.0;
    assert!(
        (drift_three_terms(&at(336.0), stiffness).total - drift_four_terms(&at(336.0), &skin).total).abs()
            < 1e-12
    );
    assert!(drift_three_terms(&at(240.0), stiffness).total > low.total);
    close(drift_three_terms(&at(240.0), 15.0).total, 0.2603);
}

fn openings() -> impl Strategy<Value = Vec<(i64, i64, i64)>> {
    prop::collection::vec((24_i64..120, 12_i64..96, 12_i64..97), 0..4).prop_map(|gaps| {
        let mut at = 0;
        gaps.into_iter()
            .map(|(gap, width, height)| {
                let left = at + gap;
                at = left + width;
                (left, width, height)
            })
            .collect()
    })
}

proptest! {
    /// A perforated wall carries at most what its segments carry one by one; the shares of the segments are the demand;
    /// what is explained is what was computed.
    #[test]
    fn lines_keep_their_laws(openings in openings(), last in 30_i64..200, demand in 1.0_f64..20_000.0, dead in 0.0_f64..200.0) {
        let length = openings.last().map_or(0, |(left, width, _)| left + width) + last;
        let mut wall = line(length, &openings);
        wall.demand = demand;
        wall.dead = dead;
        wall.query.accept_unverified = true;
        let Ok(segmented) = wall_line(&wall) else { return Ok(()) };
        let shares: f64 = segmented.piers.iter().map(|pier| pier.shear * pier.pier.length).sum();
        prop_assert!((shares - demand).abs() < 1e-6 * demand);
        wall.method = LineMethod::Perforated;
        let perforated = wall_line(&wall);
        for found in [Ok(&segmented), perforated.as_ref()].into_iter().flatten() {
            let mut of = wall.clone();
            of.method = if found.openings.is_some() { LineMethod::Perforated } else { LineMethod::Segmented };
            for step in &found.derive(&of).steps {
                let again = evaluate(step).unwrap();
                prop_assert!((again - step.value).abs() <= 1e-9 * step.value.abs().max(1.0), "{step:#?} {again}");
            }
        }
        if let Ok(perforated) = perforated {
            prop_assert!(perforated.capacity <= segmented.capacity + 1e-9);
        }
    }

    /// Closer nails, a thicker panel: never less.
    #[test]
    fn more_is_never_less(edge in 0_usize..3, thick in 0_usize..2, studs in 0_usize..2) {
        let spacings = [6, 4, 3, 2];
        let thicknesses = ["3/8", "7/16", "15/32"];
        let of = |thick: usize, edge: usize| {
            let mut wall = line(96, &[]);
            wall.query.assembly = assembly(Grade::Sheathing, thicknesses[thick], Pennyweight::Eight, spacings[edge]);
            wall.query.assembly.stud_spacing = inch(["16", "24"][studs]);
            wall.query.accept_unverified = true;
            wall_line(&wall).unwrap().capacity
        };
        prop_assert!(of(thick, edge + 1) >= of(thick, edge));
        prop_assert!(of(thick + 1, edge) >= of(thick, edge));
    }
}

#[test]
fn loads_and_sizes_that_no_line_has_are_named() {
    let of = |change: &dyn Fn(&mut WallLine)| {
        let mut wall = line(96, &[(30, 20, 40)]);
        change(&mut wall);
        wall_line(&wall)
            .unwrap_err()
            .into_iter()
            .map(|issue| issue.path)
            .collect::<Vec<_>>()
    };
    assert_eq!(of(&|wall| wall.demand = f64::NAN), ["/demand"]);
    assert_eq!(of(&|wall| wall.demand = -1.0), ["/demand"]);
    assert_eq!(
        of(&|wall| wall.length = Length::ZERO),
        ["/length", "/inset", "/openings/0/left"]
    );
    assert_eq!(
        of(&|wall| wall.openings[0].height = Length::feet(9)),
        ["/openings/0/height"]
    );
    assert_eq!(
        of(&|wall| wall.query.assembly.thickness = inch("1/2")),
        ["/query/assembly/thickness"]
    );
}

/// Forces at the ends of a perforated wall were recalled: they are refused until that is accepted.
#[test]
fn a_perforated_wall_is_refused_until_accepted() {
    let mut wall = line(240, &[(96, 48, 48)]);
    wall.method = LineMethod::Perforated;
    assert_eq!(wall_line(&wall).unwrap_err()[0].code, Code::Unverified);
    wall.query.accept_unverified = true;
    let found = wall_line(&wall).unwrap();
    // Own arithmetic: 48 of 240 in. are open half the height: A_o = 16 sq ft, sum L = 16 ft, C_o = 20 x 8 / (3 x 16 + 8 x 16).
    assert!((found.openings.unwrap() - 160.0 / 176.0).abs() < 1e-9);
    assert!((found.hold_down - 1000.0 * 8.0 / (160.0 / 176.0 * 16.0)).abs() < 1e-6);
    wall.height = Length::feet(21);
    assert_eq!(wall_line(&wall).unwrap_err()[0].path, "/height");
}

/// What 2021 changed and was not collected is refused, whatever is accepted.
#[test]
fn what_was_not_collected_of_2021_is_refused() {
    let mut wall = line(240, &[(96, 48, 48)]);
    wall.method = LineMethod::Perforated;
    wall.query.accept_unverified = true;
    wall.query.edition = Edition::Sdpws2021;
    let issue = wall_line(&wall).unwrap_err().remove(0);
    assert_eq!(
        (issue.code, issue.path.as_str()),
        (Code::UnlistedValue, "/query/edition")
    );
    wall.method = LineMethod::Segmented;
    wall.query.assembly.blocked = false;
    let issue = wall_line(&wall).unwrap_err().remove(0);
    assert_eq!(
        (issue.code, issue.path.as_str()),
        (Code::UnlistedValue, "/query/edition")
    );
}
