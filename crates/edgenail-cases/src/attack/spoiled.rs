//! A generated house with one field spoiled.

use super::{Reached, laws, spoil};
use arbitrary::Unstructured;
use edgenail::generate::house_json;
use edgenail::{Error, plan_bytes};
use serde_json::Value;

/// A generated house with one field spoiled: issues that name their fields, a wall that has no layout, or a plan that
/// keeps every law and whose house, planned again, gives the same document.
pub fn spoiled(bytes: &[u8]) -> Reached {
    let Some(house) = spoiled_house(bytes) else {
        return Reached::Nothing;
    };
    let document = house.to_string();
    match plan_bytes(document.as_bytes()) {
        Ok(plan) => {
            laws::plan(&plan);
            // The whole document costs as much as the plan: one house in four.
            if bytes.first().is_some_and(|byte| byte % 4 == 0) {
                let written = plan.json();
                assert_eq!(
                    written,
                    again(&written),
                    "a plan's house, planned again, gives another plan"
                );
            }
            Reached::Nailing
        }
        Err(error) => {
            laws::refused(document.as_bytes(), &error);
            if matches!(error, Error::NoLayout { .. }) {
                Reached::NoLayout
            } else {
                Reached::Refused
            }
        }
    }
}

/// The document of the plan of the house in a plan's document.
fn again(document: &str) -> String {
    let document: Value = serde_json::from_str(document).unwrap_or_default();
    plan_bytes(document["house"].to_string().as_bytes())
        .map(|plan| plan.json())
        .unwrap_or_default()
}

/// The house that these bytes make; `None` where they are too few.
pub fn spoiled_house(bytes: &[u8]) -> Option<Value> {
    let mut bytes = Unstructured::new(bytes);
    let seed: u16 = bytes.arbitrary().ok()?;
    let mut house = serde_json::from_str(&house_json(u64::from(seed)).0).ok()?;
    if bytes.is_empty() {
        return None;
    }
    spoil(&mut house, &mut bytes).ok()?;
    Some(house)
}
