//! Slip of nails and rigidity of panels: what a wall's stiffness is made of.

use super::assembly::PanelMaterial;
use super::rule::Rule;
use crate::length::Length;
use crate::published::{Confidence, Grade, Pennyweight};

/// Constants of the slip of a nail in dry lumber: (load / a)^b inches, and the load up to which it holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SlipCurve {
    /// Pounds.
    pub a: f64,
    /// Exponent.
    pub b: f64,
    /// The most pounds that the curve was made for.
    pub most: f64,
}

const COMMENTARY: &str = "SDPWS commentary Table C4.2.2D; with C4.2.2A it gives 94 of the 96 stiffness cells of Table 4.3A as printed";

/// The curve of a common nail in lumber that was dry when built.
pub const fn slip_curve(nail: Pennyweight) -> Rule<SlipCurve> {
    let value = match nail {
        Pennyweight::Six => SlipCurve {
            a: 456.0,
            b: 3.144,
            most: 180.0,
        },
        Pennyweight::Eight => SlipCurve {
            a: 616.0,
            b: 3.018,
            most: 220.0,
        },
        Pennyweight::Ten => SlipCurve {
            a: 769.0,
            b: 3.276,
            most: 260.0,
        },
    };
    Rule {
        value,
        source: COMMENTARY,
        confidence: Confidence::Memory,
    }
}

/// Slip of one nail in inches; 1.2 times as much in panels that are not Structural I.
pub fn slip(nail: Pennyweight, grade: Grade, load: f64) -> f64 {
    let SlipCurve { a, b, .. } = slip_curve(nail).value;
    grade_factor(grade) * libm::pow(load / a, b)
}

/// What slip is multiplied by for the panel's grade.
pub const fn grade_factor(grade: Grade) -> f64 {
    match grade {
        Grade::StructuralI => 1.0,
        Grade::Sheathing => 1.2,
    }
}

/// Rigidity of a panel through its thickness in pounds per inch; `None` where it was not collected.
pub fn rigidity(material: PanelMaterial, grade: Grade, thickness: Length) -> Option<Rule<f64>> {
    let thirty_seconds = |count: i64| Length::from_units(Length::PER_INCH * count / 32);
    let step = if thickness == thirty_seconds(10) || thickness == thirty_seconds(12) {
        0
    } else if thickness == thirty_seconds(14) || thickness == thirty_seconds(15) {
        1
    } else if thickness == thirty_seconds(19) {
        2
    } else {
        return None;
    };
    let listed: [Option<f64>; 3] = match (material, grade) {
        (PanelMaterial::Osb, _) => [Some(77_500.0), Some(83_500.0), Some(88_500.0)],
        (PanelMaterial::Plywood3, Grade::Sheathing) => [Some(25_000.0), Some(27_000.0), Some(28_500.0)],
        (PanelMaterial::Plywood3 | PanelMaterial::Plywood4, Grade::StructuralI) => {
            [Some(32_500.0), Some(35_000.0), None]
        }
        (PanelMaterial::Plywood4, Grade::Sheathing) => [Some(32_500.0), Some(35_000.0), None],
    };
    Some(Rule {
        value: listed[step]?,
        source: "SDPWS commentary Table C4.2.2A",
        confidence: Confidence::Memory,
    })
}
