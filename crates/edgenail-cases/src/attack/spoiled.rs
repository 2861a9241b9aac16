//! A generated house with one field spoiled.

use super::{Reached, laws, spoil};
use arbitrary::Unstructured;
use edgenail::generate::house_json;
use edgenail::{Error, plan_bytes};
use serde_json::Value;

/// A generated house with one field spoiled: issues that name their fields, a wall that has no layout, or a plan that
/// keeps every law and comes out the same a second time.
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
                let again = plan_bytes(document.as_bytes())
                    .map(|plan| plan.json())
                    .unwrap_or_default();
                assert_eq!(plan.json(), again, "two plans of one house differ");
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
