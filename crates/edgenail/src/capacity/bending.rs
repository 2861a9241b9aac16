//! Panels as the skin of a wall under wind: bending and deflection between studs.

use super::rule::Rule;
use crate::published::Confidence;
use serde::Serialize;

/// Which way the strength axis runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum StrengthAxis {
    /// Across the studs: panels run flat.
    AcrossStuds,
    /// Along the studs: panels stand upright.
    AlongStuds,
}

/// Plies, as the stiffness table tells panels apart.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Plies {
    /// Plywood of three plies.
    Three,
    /// Plywood of four plies.
    Four,
    /// Plywood of five plies.
    Five,
    /// Oriented strand board.
    Osb,
}

/// A span rating with its panel bending capacities.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SpanRating {
    /// As stamped.
    pub name: &'static str,
    /// Stiffness along the strength axis in lb-in²/ft, by [`Plies`].
    pub stiffness_along: [f64; 4],
    /// Stiffness across it.
    pub stiffness_across: [f64; 4],
    /// Bending strength along it in lb-in/ft.
    pub strength_along: [f64; 4],
    /// Bending strength across it.
    pub strength_across: [f64; 4],
}

/// Where the ratings were seen.
pub const RATINGS_SOURCE: &str = "AWC ASD/LRFD Manual, Table M9.2-1";

/// Ratings of wall and roof sheathing.
pub const RATINGS: [SpanRating; 5] = [
    SpanRating {
        name: "24/0",
        stiffness_along: [66_000.0, 66_000.0, 66_000.0, 60_000.0],
        stiffness_across: [3_600.0, 7_900.0, 11_000.0, 11_000.0],
        strength_along: [250.0, 275.0, 300.0, 300.0],
        strength_across: [54.0, 65.0, 97.0, 97.0],
    },
    SpanRating {
        name: "24/16",
        stiffness_along: [86_000.0, 86_000.0, 86_000.0, 78_000.0],
        stiffness_across: [5_200.0, 11_500.0, 16_000.0, 16_000.0],
        strength_along: [320.0, 350.0, 385.0, 385.0],
        strength_across: [64.0, 77.0, 115.0, 115.0],
    },
    SpanRating {
        name: "32/16",
        stiffness_along: [125_000.0, 125_000.0, 125_000.0, 115_000.0],
        stiffness_across: [8_100.0, 18_000.0, 25_000.0, 25_000.0],
        strength_along: [370.0, 405.0, 445.0, 445.0],
        strength_across: [92.0, 110.0, 165.0, 165.0],
    },
    SpanRating {
        name: "40/20",
        stiffness_along: [250_000.0, 250_000.0, 250_000.0, 225_000.0],
        stiffness_across: [18_000.0, 39_500.0, 56_000.0, 56_000.0],
        strength_along: [625.0, 690.0, 750.0, 750.0],
        strength_across: [150.0, 180.0, 270.0, 270.0],
    },
    SpanRating {
        name: "48/24",
        stiffness_along: [440_000.0, 440_000.0, 440_000.0, 400_000.0],
        stiffness_across: [29_500.0, 65_000.0, 91_500.0, 91_500.0],
        strength_along: [845.0, 930.0, 1_000.0, 1_000.0],
        strength_across: [225.0, 270.0, 405.0, 405.0],
    },
];

/// A panel over equal spans.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PanelSpans {
    /// Its rating.
    pub rating: &'static SpanRating,
    /// What it is made of.
    pub plies: Plies,
    /// Which way it runs.
    pub axis: StrengthAxis,
    /// Centre distance of the studs in inches.
    pub studs: f64,
    /// Spans that one panel covers: 1, 2, or 3 for three and more.
    pub spans: u32,
}

impl PanelSpans {
    /// Bending strength the way it spans, in lb-in/ft.
    pub const fn strength(&self) -> f64 {
        let all = match self.axis {
            StrengthAxis::AcrossStuds => self.rating.strength_along,
            StrengthAxis::AlongStuds => self.rating.strength_across,
        };
        all[self.plies as usize]
    }

    /// Stiffness the way it spans, in lb-in²/ft.
    pub const fn stiffness(&self) -> f64 {
        let all = match self.axis {
            StrengthAxis::AcrossStuds => self.rating.stiffness_along,
            StrengthAxis::AlongStuds => self.rating.stiffness_across,
        };
        all[self.plies as usize]
    }

    /// Constant of bending: 96 over one and two spans, 120 over more, in in/ft.
    pub const fn bending_constant(&self) -> f64 {
        if self.spans >= 3 { 120.0 } else { 96.0 }
    }

    /// Constant of deflection by spans, in in/ft.
    pub const fn deflection_constant(&self) -> f64 {
        match self.spans {
            0 | 1 => 921.6,
            2 => 2220.0,
            _ => 1743.0,
        }
    }

    /// Span that deflects: clear between 2x studs and a quarter inch more, in inches.
    pub const fn deflection_span(&self) -> f64 {
        self.studs - 1.5 + 0.25
    }
}

/// The uniform pressure in psf that bending resists for a load of normal duration.
pub fn bending_pressure(panel: &PanelSpans) -> f64 {
    panel.bending_constant() * panel.strength() / (panel.studs * panel.studs)
}

/// The pressure in psf at which the panel deflects its span divided by `ratio`.
pub fn stiffness_pressure(panel: &PanelSpans, ratio: f64) -> f64 {
    panel.studs / ratio / deflection(panel, 1.0)
}

/// Deflection in inches under a pressure in psf.
pub fn deflection(panel: &PanelSpans, pressure: f64) -> f64 {
    let span = panel.deflection_span();
    pressure * span * span * span * span / (panel.deflection_constant() * panel.stiffness())
}

/// What a load of wind's duration adds to bending strength.
pub const WIND_DURATION: Rule<f64> = Rule {
    value: 1.6,
    source: "NDS load duration factor for wind",
    confidence: Confidence::Source,
};
