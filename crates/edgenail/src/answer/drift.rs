//! The answer of a drift.

use super::{Answer, refuse_recalled};
use crate::capacity::{
    Derivation, Drift, DriftEquation, DriftQuery, Skin, drift_four_terms, drift_three_terms,
    explain_four_terms, explain_three_terms, rigidity, slip_curve,
};
use crate::issue::{Code, Issue};
use crate::length::{Finest, Rounding, Style};
use serde::Serialize;

/// Numbers of a drift.
#[expect(clippy::struct_field_names, reason = "names end with their unit")]
#[derive(Debug, Serialize)]
pub(super) struct Numbers {
    bending_in: f64,
    shear_in: f64,
    /// Of the four-term equation only.
    slip_in: Option<f64>,
    anchor_in: f64,
    drift_in: f64,
}

pub(super) fn answer(query: &DriftQuery) -> Result<Answer<Numbers>, Vec<Issue>> {
    let mut derivation = Derivation::default();
    let (edition, drift, slip) = match query.equation {
        DriftEquation::ThreeTerms { stiffness } => {
            explain_three_terms(&query.wall, stiffness, &mut derivation);
            let drift = drift_three_terms(&query.wall, stiffness);
            ("SDPWS 2008/2015", drift, None)
        }
        DriftEquation::FourTerms { .. } => {
            let skin = skin(query)?;
            explain_four_terms(&query.wall, &skin, &mut derivation);
            let drift = drift_four_terms(&query.wall, &skin);
            ("APA TT-053A (2007)", drift, Some(drift.slip))
        }
    };
    refuse_recalled(&derivation, query.accept_unverified)?;
    let Drift {
        bending,
        shear,
        anchor,
        total,
        ..
    } = drift;
    let numbers = Numbers {
        bending_in: bending,
        shear_in: shear,
        slip_in: slip,
        anchor_in: anchor,
        drift_in: total,
    };
    Ok(Answer::new("drift", Some(edition), numbers, derivation))
}

/// Nails and panel, where they are listed and the nails' curve holds.
fn skin(query: &DriftQuery) -> Result<Skin, Vec<Issue>> {
    let DriftEquation::FourTerms {
        nail,
        grade,
        material,
        thickness,
        edge_spacing,
    } = query.equation
    else {
        return Err(Vec::new());
    };
    let fault = |code, path: &str, found: String, allowed: String, message: &str| {
        vec![Issue {
            code,
            path: path.to_owned(),
            wall: String::new(),
            found,
            allowed,
            message: message.to_owned(),
        }]
    };
    let Some(rigidity) = rigidity(material, grade, thickness) else {
        return Err(fault(
            Code::UnlistedValue,
            "/equation/thickness",
            thickness
                .show(Style::Inches(Finest::SixtyFourth), Rounding::Nearest)
                .text,
            "5/16, 3/8, 7/16, 15/32 or 19/32 in., of plywood as far as its rigidity was collected".to_owned(),
            "the rigidity of this panel was not collected",
        ));
    };
    let edge_spacing = edge_spacing.as_inches();
    let most = slip_curve(nail).value.most;
    if query.wall.shear * edge_spacing / 12.0 > most {
        return Err(fault(
            Code::OutOfRange,
            "/shear",
            query.wall.shear.to_string(),
            format!("at most {} plf with these nails", most * 12.0 / edge_spacing),
            "the slip of these nails is not known under so large a load",
        ));
    }
    Ok(Skin {
        nail,
        grade,
        edge_spacing,
        rigidity: rigidity.value,
    })
}
