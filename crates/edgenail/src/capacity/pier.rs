//! One full-height segment: its proportion, what of it counts, what its ends have to hold.

pub use crate::house::Sharing;

use super::assembly::{Edition, LoadKind};
use super::derivation::Derivation;
use crate::length::Length;
use crate::published::Confidence;
use serde::Serialize;

/// A full-height segment between outer faces of its end posts.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Pier {
    /// From the outer face of one end post to that of the other, in feet.
    pub length: f64,
    /// From the underside of the bottom plate to the top of the top plates, in feet.
    pub height: f64,
}

/// The slenderest blocked segment of wood structural panels that counts.
pub const RATIO_MOST: f64 = 3.5;
/// The slenderest unblocked one; recalled.
pub const RATIO_MOST_UNBLOCKED: f64 = 2.0;
/// Up to here nothing is lost.
pub const RATIO_FULL: f64 = 2.0;

/// The factor on a segment's strength, with the rule that gives it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AspectFactor {
    /// Height over length.
    pub ratio: f64,
    /// The factor; nothing where the segment is too slender to count.
    pub factor: Option<f64>,
    /// The formula over `h` and `b`.
    pub formula: &'static str,
    /// Where it stands.
    pub source: &'static str,
    /// How far it may be trusted.
    pub confidence: Confidence,
}

impl AspectFactor {
    /// The step to the factor of a segment, 0 where it is too slender to count.
    pub(crate) fn explain(&self, name: &str, pier: &Pier, derivation: &mut Derivation) -> f64 {
        let mut step = derivation.step(name, "what counts of a segment for its proportion", self.formula);
        if self.formula.contains('b') {
            step = step.given("b", pier.length, "ft").given("h", pier.height, "ft");
        }
        step.rule(self.source, self.confidence)
            .gives(self.factor.unwrap_or(0.0), "")
    }
}

impl Pier {
    /// A segment of these sizes.
    pub fn new(length: Length, height: Length) -> Self {
        Self {
            length: length.as_inches() / 12.0,
            height: height.as_inches() / 12.0,
        }
    }

    /// Height over length.
    pub fn ratio(&self) -> f64 {
        self.height / self.length
    }

    /// What of the segment's strength counts for its proportion.
    ///
    /// ```
    /// use edgenail::capacity::{Edition, LoadKind, Pier, Sharing};
    /// // A published example: 32 in. wide, 96 in. tall, reduction 0.666.
    /// let pier = Pier { length: 32.0 / 12.0, height: 8.0 };
    /// let factor = pier.aspect_factor(Edition::Sdpws2008, LoadKind::Seismic, Sharing::ReducedStrength, true);
    /// assert!((factor.factor.unwrap() - 0.6667).abs() < 0.0001);
    /// // 18 in. of 96 in. is 5.3:1 and does not count.
    /// let slender = Pier { length: 1.5, height: 8.0 };
    /// assert_eq!(slender.aspect_factor(Edition::Sdpws2008, LoadKind::Wind, Sharing::ReducedStrength, true).factor, None);
    /// ```
    pub fn aspect_factor(
        &self,
        edition: Edition,
        load: LoadKind,
        sharing: Sharing,
        blocked: bool,
    ) -> AspectFactor {
        let ratio = self.ratio();
        let most = if blocked { RATIO_MOST } else { RATIO_MOST_UNBLOCKED };
        let found = |factor, formula, source, confidence| AspectFactor {
            ratio,
            factor,
            formula,
            source,
            confidence,
        };
        if ratio > most {
            let (source, confidence) = if blocked {
                (
                    "SDPWS Table 4.3.4, blocked wood structural panels 3.5:1",
                    Confidence::TwoSources,
                )
            } else {
                (
                    "SDPWS Table 4.3.4, unblocked wood structural panels 2:1",
                    Confidence::Memory,
                )
            };
            return found(None, "0", source, confidence);
        }
        let old_wind = edition == Edition::Sdpws2008 && load == LoadKind::Wind;
        if ratio <= RATIO_FULL || old_wind {
            return found(
                Some(1.0),
                "1",
                "SDPWS Table 4.3.4: full value up to 2:1; in 2008 for wind up to the limit",
                Confidence::TwoSources,
            );
        }
        match (edition, sharing) {
            (Edition::Sdpws2008, _) => found(
                Some(2.0 / ratio),
                "2 * b / h",
                "SDPWS 2008 Table 4.3.4 footnote, seismic; IBC 2006",
                Confidence::TwoSources,
            ),
            (_, Sharing::ReducedStrength) => found(
                Some(2.0 / ratio),
                "2 * b / h",
                "SDPWS 2015 4.3.3.4.1, permitted alternative to equal deflection",
                Confidence::Source,
            ),
            (_, Sharing::EqualDeflection) => found(
                Some(1.25 - 0.125 * ratio),
                "1.25 - 0.125 * h / b",
                "SDPWS 2015 4.3.4.2",
                Confidence::Memory,
            ),
        }
    }
}

/// What pulls and pushes at the ends of a segment, in pounds.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Overturning {
    /// Tension and compression of the ends by the nominal formula, unit shear times height, without dead load.
    pub chord: f64,
    /// The real distance between hold-down and compression post in feet.
    pub arm: f64,
    /// Tension by the real arm, dead load taken off, with what comes from above; below zero nothing pulls.
    pub tension: f64,
}

/// What acts on the ends of a segment beside its own shear.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct EndLoads {
    /// Factored dead load along its top in pounds per foot.
    pub dead: f64,
    /// From the outer faces to the hold-down's rod and to the middle of the compression post, together, in feet.
    pub inset: f64,
    /// Depth of the floor above in feet, times the part of the shear that comes through it.
    pub floor: f64,
    /// Tension that comes down on its end in pounds; below zero nothing pulls.
    pub above: f64,
}

/// The ends of a segment under unit shear in pounds per foot.
pub fn overturning(pier: &Pier, shear: f64, loads: &EndLoads) -> Overturning {
    let chord = shear * pier.height;
    let arm = pier.length - loads.inset;
    let moment = shear * pier.length * (pier.height + loads.floor);
    let rights = loads.dead * pier.length * pier.length / 2.0;
    Overturning {
        chord,
        arm,
        tension: (moment - rights) / arm + loads.above.max(0.0),
    }
}

/// The steps to the hold-down tension.
pub fn explain_overturning(pier: &Pier, shear: f64, loads: &EndLoads, derivation: &mut Derivation) -> f64 {
    let found = overturning(pier, shear, loads);
    derivation
        .step("C", "nominal chord force, without dead load", "v * h")
        .from("v", shear, "plf")
        .given("h", pier.height, "ft")
        .rule("statics", Confidence::TwoSources)
        .gives(found.chord, "lb");
    derivation
        .step("d", "arm between hold-down and compression post", "b - e")
        .given("b", pier.length, "ft")
        .given("e", loads.inset, "ft")
        .rule("statics", Confidence::TwoSources)
        .gives(found.arm, "ft");
    let (floor, above) = (loads.floor > 0.0, loads.above > 0.0);
    let height = if floor { "(h + h_up)" } else { "h" };
    let down = if above { " + T_up" } else { "" };
    let formula = format!("(v * b * {height} - w * b^2 / 2) / d{down}");
    let mut step = derivation
        .step("T", "hold-down tension with the real arm", &formula)
        .from("v", shear, "plf")
        .given("b", pier.length, "ft")
        .given("h", pier.height, "ft")
        .given("w", loads.dead, "plf")
        .from("d", found.arm, "ft");
    if floor {
        step = step.from("h_up", loads.floor, "ft");
    }
    if above {
        step = step.given("T_up", loads.above, "lb");
    }
    step.rule(
        "statics: moments about the compression post's outer face, dead load as given",
        Confidence::TwoSources,
    )
    .gives(found.tension, "lb")
}
