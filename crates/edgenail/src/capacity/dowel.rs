//! One nail in lateral load: the six yield modes of a dowel in single shear.

use super::derivation::Derivation;
use super::rule::Rule;
use crate::published::Confidence;
use serde::Serialize;

/// A nail through a side member into a main member. Inches and pounds per square inch.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Dowel {
    /// Shank diameter.
    pub diameter: f64,
    /// Bending yield strength of the nail.
    pub yield_strength: f64,
    /// Bearing length in the main member, the framing.
    pub main_length: f64,
    /// Bearing strength of the main member.
    pub main_bearing: f64,
    /// Bearing length in the side member, the panel.
    pub side_length: f64,
    /// Bearing strength of the side member.
    pub side_bearing: f64,
}

/// How a nailed joint yields.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub enum YieldMode {
    /// The main member crushes.
    Im,
    /// The side member crushes.
    Is,
    /// The nail turns without bending.
    II,
    /// One hinge; the main member crushes.
    IIIm,
    /// One hinge; the side member crushes.
    IIIs,
    /// Two hinges.
    IV,
}

impl YieldMode {
    /// All modes in the order of [`Lateral::modes`].
    pub const ALL: [Self; 6] = [Self::Im, Self::Is, Self::II, Self::IIIm, Self::IIIs, Self::IV];

    /// As the standard writes it.
    pub const fn name(self) -> &'static str {
        match self {
            Self::Im => "Im",
            Self::Is => "Is",
            Self::II => "II",
            Self::IIIm => "IIIm",
            Self::IIIs => "IIIs",
            Self::IV => "IV",
        }
    }
}

/// Reference lateral values of a nail in pounds, for a load of normal duration.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Lateral {
    /// The value of every mode, in the order of [`YieldMode::ALL`].
    pub modes: [f64; 6],
    /// The mode with the least value.
    pub governs: YieldMode,
    /// That value.
    pub value: f64,
}

const NDS: &str =
    "NDS 2018 12.3.1, as cited in a public source text; reproduces NDS 2005 Table 11N for 16d common";

impl Dowel {
    /// The reduction term of nails thinner than 1/4 in.
    pub fn reduction(&self) -> f64 {
        if self.diameter <= 0.17 {
            2.2
        } else {
            10.0 * self.diameter + 0.5
        }
    }

    /// Values of all modes and the least of them.
    ///
    /// ```
    /// use edgenail::capacity::Dowel;
    /// // NDS 2005 Table 11N: 16d common, side member 1 1/2 in., G = 0.50: 141 lb.
    /// let nail = Dowel { diameter: 0.162, yield_strength: 90_000.0, main_length: 2.0, main_bearing: 4_650.0, side_length: 1.5, side_bearing: 4_650.0 };
    /// assert!((nail.lateral().value - 141.0).abs() < 0.5);
    /// ```
    pub fn lateral(&self) -> Lateral {
        let Self {
            diameter: d,
            yield_strength: fyb,
            main_length: lm,
            main_bearing: fem,
            side_length: ls,
            side_bearing: fes,
        } = *self;
        let rd = self.reduction();
        let (re, rt) = (fem / fes, lm / ls);
        let k1 = ((re + 2.0 * re * re * (1.0 + rt + rt * rt) + rt * rt * re * re * re).sqrt()
            - re * (1.0 + rt))
            / (1.0 + re);
        let k2 =
            (2.0 * (1.0 + re) + 2.0 * fyb * (1.0 + 2.0 * re) * d * d / (3.0 * fem * lm * lm)).sqrt() - 1.0;
        let k3 =
            (2.0 * (1.0 + re) / re + 2.0 * fyb * (2.0 + re) * d * d / (3.0 * fem * ls * ls)).sqrt() - 1.0;
        let modes = [
            d * lm * fem / rd,
            d * ls * fes / rd,
            k1 * d * ls * fes / rd,
            k2 * d * lm * fem / ((1.0 + 2.0 * re) * rd),
            k3 * d * ls * fem / ((2.0 + re) * rd),
            d * d / rd * (2.0 * fem * fyb / (3.0 * (1.0 + re))).sqrt(),
        ];
        let (mut governs, mut value) = (YieldMode::Im, modes[0]);
        for (mode, other) in YieldMode::ALL.into_iter().zip(modes) {
            if other < value {
                (governs, value) = (mode, other);
            }
        }
        Lateral {
            modes,
            governs,
            value,
        }
    }

    /// The steps to the lateral value, after those that gave `F_yb`, `F_em`, `F_es` and `l_m`; `l_s` and `D` are the user's.
    pub fn explain(&self, derivation: &mut Derivation) -> f64 {
        let found = self.lateral();
        let rd = self.reduction();
        let (re, rt) = (
            self.main_bearing / self.side_bearing,
            self.main_length / self.side_length,
        );
        let rule = |step: super::derivation::Writing<'_>, value: f64, unit: &'static str| {
            step.rule(NDS, Confidence::Source).gives(value, unit)
        };
        let step = derivation
            .step("R_e", "ratio of bearing strengths", "F_em / F_es")
            .from("F_em", self.main_bearing, "psi")
            .from("F_es", self.side_bearing, "psi");
        rule(step, re, "");
        let step = derivation
            .step("R_t", "ratio of bearing lengths", "l_m / l_s")
            .from("l_m", self.main_length, "in")
            .given("l_s", self.side_length, "in");
        rule(step, rt, "");
        if self.diameter <= 0.17 {
            let step = derivation
                .step("R_d", "reduction term, D at most 0.17 in", "R_d")
                .cell("R_d", rd, "", NDS, Confidence::Source);
            rule(step, rd, "");
        } else {
            let step = derivation
                .step("R_d", "reduction term, D from 0.17 to 0.25 in", "10 * D + 0.5")
                .given("D", self.diameter, "in");
            rule(step, rd, "");
        }
        for (mode, value) in YieldMode::ALL.into_iter().zip(found.modes) {
            let formula = match mode {
                YieldMode::Im => "D * l_m * F_em / R_d",
                YieldMode::Is => "D * l_s * F_es / R_d",
                YieldMode::II => {
                    "(sqrt(R_e + 2 * R_e^2 * (1 + R_t + R_t^2) + R_t^2 * R_e^3) - R_e * (1 + R_t)) / (1 + R_e) * D * l_s * F_es / R_d"
                }
                YieldMode::IIIm => {
                    "(sqrt(2 * (1 + R_e) + 2 * F_yb * (1 + 2 * R_e) * D^2 / (3 * F_em * l_m^2)) - 1) * D * l_m * F_em / ((1 + 2 * R_e) * R_d)"
                }
                YieldMode::IIIs => {
                    "(sqrt(2 * (1 + R_e) / R_e + 2 * F_yb * (2 + R_e) * D^2 / (3 * F_em * l_s^2)) - 1) * D * l_s * F_em / ((2 + R_e) * R_d)"
                }
                YieldMode::IV => "D^2 / R_d * sqrt(2 * F_em * F_yb / (3 * (1 + R_e)))",
            };
            let symbol = format!("Z_{}", mode.name());
            let mut step = derivation.step(&symbol, "lateral value of one yield mode", formula);
            for (name, value, unit) in [
                ("F_yb", self.yield_strength, "psi"),
                ("F_em", self.main_bearing, "psi"),
                ("F_es", self.side_bearing, "psi"),
                ("l_m", self.main_length, "in"),
            ] {
                if names(formula, name) {
                    step = step.from(name, value, unit);
                }
            }
            for (name, value) in [("l_s", self.side_length), ("D", self.diameter)] {
                if names(formula, name) {
                    step = step.given(name, value, "in");
                }
            }
            for (name, value) in [("R_e", re), ("R_t", rt), ("R_d", rd)] {
                if names(formula, name) {
                    step = step.from(name, value, "");
                }
            }
            rule(step, value, "lb");
        }
        let mut step = derivation.step(
            "Z",
            "reference lateral value of one nail",
            "min(Z_Im, Z_Is, Z_II, Z_IIIm, Z_IIIs, Z_IV)",
        );
        for (mode, value) in YieldMode::ALL.into_iter().zip(found.modes) {
            step = step.from(&format!("Z_{}", mode.name()), value, "lb");
        }
        rule(step, found.value, "lb")
    }
}

/// Whether a formula names a symbol.
fn names(formula: &str, symbol: &str) -> bool {
    formula
        .split(|mark: char| !mark.is_ascii_alphanumeric() && mark != '_')
        .any(|word| word == symbol)
}

/// Bearing strength of wood for nails thinner than 1/4 in., in pounds per square inch, rounded to 50 as the tables do.
///
/// ```
/// use edgenail::capacity::bearing_strength;
/// assert_eq!([0.55, 0.50, 0.43, 0.42, 0.36].map(bearing_strength), [5550.0, 4650.0, 3500.0, 3350.0, 2550.0]);
/// ```
pub fn bearing_strength(specific_gravity: f64) -> f64 {
    (16_600.0 * libm::pow(specific_gravity, 1.84) / 50.0).round() * 50.0
}

/// Bending yield strength of a low-carbon steel nail in pounds per square inch; `None` beyond the listed diameters.
pub fn yield_strength(diameter: f64) -> Option<Rule<f64>> {
    const LISTED: [(f64, f64); 6] = [
        (0.142, 100_000.0),
        (0.177, 90_000.0),
        (0.236, 80_000.0),
        (0.273, 70_000.0),
        (0.344, 60_000.0),
        (0.375, 45_000.0),
    ];
    if diameter < 0.099 {
        return None;
    }
    let listed = LISTED.into_iter().find(|(most, _)| diameter <= *most)?;
    Some(Rule::recalled(
        listed.1,
        "NDS bending yield strength of nails by diameter; the published trend 130.4 - 213.9 D agrees at the upper end of each range",
    ))
}

/// Bearing length of a nail that goes so deep into the main member: all of it from ten diameters on, two diameters
/// less for the tip below that, nothing below six.
pub fn bearing_length(diameter: f64, penetration: f64) -> Option<f64> {
    if penetration >= 10.0 * diameter {
        Some(penetration)
    } else if penetration >= 6.0 * diameter {
        Some(penetration - 2.0 * diameter)
    } else {
        None
    }
}
