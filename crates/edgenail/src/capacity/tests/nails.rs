//! Single nails against published values.

use crate::capacity::formula::evaluate;
use crate::capacity::*;
use proptest::prelude::*;

/// NDS 2005 Table 11N, 16d common at G = 0.50: 141 lb; the other modes are own arithmetic.
#[test]
fn yield_modes_of_a_nail() {
    let nail = Dowel {
        diameter: 0.162,
        yield_strength: 90_000.0,
        main_length: 1.62,
        main_bearing: 4_650.0,
        side_length: 1.5,
        side_bearing: 4_650.0,
    };
    let found = nail.lateral();
    assert!((found.value - 141.0).abs() < 0.5);
    for (mode, own) in found
        .modes
        .into_iter()
        .zip([554.7, 513.6, 221.5, 202.4, 190.0, 140.9])
    {
        assert!((mode - own).abs() < 0.1, "{mode} {own}");
    }
    assert_eq!(found.governs, YieldMode::IV);
}

/// APA TT-045B (2007): an 8d nail loses nothing from 1 1/2 to 1 3/8 in. of penetration.
#[test]
fn shallower_penetration_costs_nothing() {
    let value = |main_length: f64| {
        let nail = Dowel {
            diameter: 0.131,
            yield_strength: 100_000.0,
            main_length,
            main_bearing: bearing_strength(0.50),
            side_length: 0.4375,
            side_bearing: 4_650.0,
        };
        nail.lateral().value
    };
    assert!((value(1.5) - value(1.375)).abs() < 0.01);
    // Own arithmetic.
    assert!((value(2.0625) - 72.80).abs() < 0.05);
}

proptest! {
    /// What a derivation prints is what was computed: every formula, evaluated from its text, gives its value.
    #[test]
    fn formulas_of_a_nail_give_their_values(
        diameter in 0.099_f64..0.24, lm in 0.6_f64..3.0, ls in 0.25_f64..1.5, main in 2_000.0_f64..6_000.0, side in 2_000.0_f64..6_000.0,
    ) {
        let nail = Dowel { diameter, yield_strength: 90_000.0, main_length: lm, main_bearing: main, side_length: ls, side_bearing: side };
        let mut derivation = Derivation::default();
        let value = nail.explain(&mut derivation);
        prop_assert!((value - nail.lateral().value).abs() < 1e-9);
        for step in &derivation.steps {
            let again = evaluate(step).unwrap();
            prop_assert!((again - step.value).abs() <= 1e-9 * step.value.abs(), "{step:#?} {again}");
        }
    }
}

/// NDS 2005: below ten diameters of penetration, to six, lateral values are taken times p / 10 D; NDS 2018 has the shorter
/// bearing length instead. Below six diameters a nail does not count in either.
#[test]
fn short_penetration_costs_by_edition() {
    let of = |edition, diameters: f64| {
        let side = crate::length::Length::sixteenths(7);
        // 0.15 in. in a panel of 7/16: lengths that go so many diameters into the stud.
        let length = crate::length::Length::from_double(0.4375 + 0.15 * diameters, crate::length::Unit::Inch);
        nail(&NailQuery {
            edition,
            shank: 0.15,
            length: length.unwrap().length,
            head: None,
            bending_yield: Some(90_000.0),
            side_thickness: side,
            side_gravity: 0.5,
            between: crate::length::Length::ZERO,
            main_gravity: 0.5,
            main_depth: None,
            load_duration: 1.0,
            accept_unverified: true,
        })
        .map(|(values, _)| values.lateral_design / values.lateral.value)
    };
    let close = |found: f64, wanted: f64| assert!((found - wanted).abs() < 1e-9, "{found} {wanted}");
    for (diameters, factor) in [(6.0, 0.6), (8.0, 0.8), (10.0, 1.0), (12.0, 1.0)] {
        close(of(NailEdition::Nds2005, diameters).unwrap(), factor);
        close(of(NailEdition::Nds2018, diameters).unwrap(), 1.0);
    }
    for edition in [NailEdition::Nds2005, NailEdition::Nds2018] {
        for diameters in [5.9, 0.0, -1.0] {
            assert_eq!(of(edition, diameters).unwrap_err()[0].path, "/length");
        }
    }
}

/// NDS, bending yield strengths by diameter, from memory: listed from 0.099 in. on.
#[test]
fn thinner_nails_have_no_listed_yield_strength() {
    assert!(yield_strength(0.0989).is_none());
    for (diameter, listed) in [
        (0.099, 100_000.0),
        (0.142, 100_000.0),
        (0.1421, 90_000.0),
        (0.177, 90_000.0),
    ] {
        let found = yield_strength(diameter).unwrap().value;
        assert!((found - listed).abs() < 0.5, "{diameter}: {found}");
    }
}
