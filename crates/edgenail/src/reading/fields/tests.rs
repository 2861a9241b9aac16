//! The table of fields is consistent.

use super::{COMMON, Field, HOUSE, INVENTED, Kind, OWN, Object, Preset, objects};

fn object(name: &str) -> &'static Object {
    let mut all = objects(&[&HOUSE]).into_iter();
    all.find(|object| object.name == name)
        .expect("the input has such an object")
}

/// Nobody's figure passes for somebody's: every weight and rate of the objective, and every price, says that it is common
/// practice without a source, the library's own or made up.
#[test]
fn every_weight_of_the_objective_says_that_it_has_no_source() {
    let marks = [COMMON, OWN, INVENTED];
    let mut seen = 0;
    for name in ["rates", "places", "judgement"] {
        for field in object(name).fields {
            assert!(
                marks.contains(&field.source),
                "{name}.{}: {:?}",
                field.name,
                field.source
            );
            assert!(
                !matches!(field.preset, Preset::Required),
                "{name}.{} has no default",
                field.name
            );
            seen += 1;
        }
    }
    assert_eq!(seen, 24 + 6 + 8);
}

/// A default that the library fills in without the user has a source or says that it has none.
#[test]
fn no_default_is_without_a_source() {
    let filled = |field: &&Field| {
        matches!(
            field.preset,
            Preset::Value(_) | Preset::Whole(_) | Preset::Computed(_) | Preset::From(..)
        )
    };
    for object in objects(&[&HOUSE]) {
        for field in object.fields.iter().filter(filled) {
            assert!(!field.source.is_empty(), "{}.{}", object.name, field.name);
        }
    }
}

/// Every amount of the input is a price or a weight of the objective; nothing else is measured in money or minutes.
#[test]
fn amounts_are_prices_or_rates() {
    for object in objects(&[&HOUSE]) {
        for field in object.fields {
            if matches!(field.kind, Kind::Amount { .. }) {
                let known = ["rates", "judgement"].contains(&object.name) || field.name == "price";
                assert!(known, "{}.{}", object.name, field.name);
            }
        }
    }
}
