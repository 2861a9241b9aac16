//! What became of one house.

use crate::error::Error;
use crate::plan::{Figures, Plan, plan_house_on};
use crate::reading::{name_of, read_house};
use serde::Serialize;
use std::num::NonZeroUsize;
use std::panic::{AssertUnwindSafe, catch_unwind};

/// What became of one house of a batch.
#[derive(Clone, Debug)]
pub struct Outcome {
    /// Its place among the houses, from 0.
    pub index: u64,
    /// Its name, empty where its document does not say one.
    pub house: String,
    /// Its figures, or why it has no plan.
    pub result: Result<Figures, Error>,
    /// Its plan; only in a batch that hands on plans.
    pub plan: Option<Plan>,
}

impl Outcome {
    /// The outcome as one line of JSON, the same in every language; a plan that it holds is not in it.
    pub fn json(&self) -> String {
        #[derive(Serialize)]
        struct Written<'a> {
            index: u64,
            house: &'a str,
            figures: Option<&'a Figures>,
            error: Option<&'a Error>,
        }
        let written = Written {
            index: self.index,
            house: &self.house,
            figures: self.result.as_ref().ok(),
            error: self.result.as_ref().err(),
        };
        // Writing plain data into memory has no way to fail.
        serde_json::to_string(&written).unwrap_or_default()
    }

    /// Plans one house on the calling thread. A panic is a fault of the library, and that of one house alone.
    pub(super) fn of(index: u64, document: &[u8], plans: bool) -> Self {
        let planned = catch_unwind(|| {
            let (house, assumed) = read_house(document).map_err(|issues| Error::Issues { issues })?;
            let plan = plan_house_on(NonZeroUsize::MIN, house, assumed)?;
            Ok((Figures::of(&plan), plan))
        });
        let planned = planned.unwrap_or_else(|_| {
            Err(Error::Internal {
                message: "the library failed; please report the house that led here".to_owned(),
            })
        });
        match planned {
            Ok((figures, plan)) => Self {
                index,
                house: plan.house().name.clone(),
                result: Ok(figures),
                plan: plans.then_some(plan),
            },
            Err(error) => Self {
                index,
                house: catch_unwind(AssertUnwindSafe(|| name_of(document))).unwrap_or_default(),
                result: Err(error),
                plan: None,
            },
        }
    }
}
