//! A rated panel under pressure across its face, with its steps.

use super::bending::{
    PanelSpans, Plies, RATINGS_SOURCE, StrengthAxis, bending_pressure, deflection, stiffness_pressure,
};
use super::derivation::{Derivation, Writing};
use super::question::PanelQuery;
use super::recalled::refuse_recalled;
use crate::issue::Issue;
use crate::published::Confidence;

/// What a panel resists and how far it gives; pounds per square foot and inches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PanelValues {
    /// Pressure that bending resists for a load of normal duration.
    pub bending: f64,
    /// Pressure that bending resists for the load's duration.
    pub bending_design: f64,
    /// Pressure at the deflection that is allowed.
    pub stiffness: Option<f64>,
    /// Deflection under the pressure.
    pub deflection: Option<f64>,
}

const STRENGTH: &str = "beam theory: w l^2 / 8 over one and two spans, w l^2 / 10 over three";
const STIFFNESS: &str = "beam theory: 5/384, 1/185 and 1/145 of w l^4 / E I over one, two and three spans";
const SPAN: &str = "clear span between 2x supports and 1/4 in.";

/// Takes a panel under pressure, with its steps.
///
/// # Errors
/// A rule that was recalled and is not accepted: the span of deflections is one.
///
/// ```
/// use edgenail::capacity::{PanelQuery, PanelSpans, Plies, RATINGS, StrengthAxis, panel};
/// let spans = PanelSpans { rating: &RATINGS[1], plies: Plies::Osb, axis: StrengthAxis::AcrossStuds, studs: 16.0, spans: 3 };
/// let query = PanelQuery { panel: spans, deflection_ratio: None, pressure: None, load_duration: 1.6, accept_unverified: false };
/// let (values, _) = panel(&query).map_err(|issues| issues[0].message.clone())?;
/// // 24/16 at 16 in.: 120 x 385 / 16^2 x 1.6 (own arithmetic on the published strength).
/// assert!((values.bending_design - 288.75).abs() < 1e-9);
/// # Ok::<(), String>(())
/// ```
pub fn panel(query: &PanelQuery) -> Result<(PanelValues, Derivation), Vec<Issue>> {
    let source = source(&query.panel);
    let mut steps = Derivation::default();
    let (bending, bending_design) = explain_bending(query, &source, &mut steps);
    if query.deflection_ratio.is_some() || query.pressure.is_some() {
        steps
            .step("l_3", "span of deflections", "l - 1.5 + 0.25")
            .given("l", query.panel.studs, "in")
            .rule(SPAN, Confidence::Memory)
            .gives(query.panel.studs - 1.5 + 0.25, "in");
    }
    let stiffness = query
        .deflection_ratio
        .map(|ratio| explain_ratio(&query.panel, ratio, &source, &mut steps));
    let deflection = query
        .pressure
        .map(|pressure| explain_pressure(&query.panel, pressure, &source, &mut steps));
    refuse_recalled(&steps, query.accept_unverified)?;
    let values = PanelValues {
        bending,
        bending_design,
        stiffness,
        deflection,
    };
    Ok((values, steps))
}

fn source(panel: &PanelSpans) -> String {
    let plies = match panel.plies {
        Plies::Three => "plywood of three plies",
        Plies::Four => "plywood of four plies",
        Plies::Five => "plywood of five plies",
        Plies::Osb => "oriented strand board",
    };
    let way = match panel.axis {
        StrengthAxis::AcrossStuds => "strength axis across the studs",
        StrengthAxis::AlongStuds => "strength axis along the studs",
    };
    format!("{RATINGS_SOURCE}, {}, {plies}, {way}", panel.rating.name)
}

fn explain_bending(query: &PanelQuery, source: &str, steps: &mut Derivation) -> (f64, f64) {
    let panel = &query.panel;
    let bending = steps
        .step(
            "w_b",
            "pressure that bending resists, normal duration",
            "K_b * F_bS / l^2",
        )
        .cell(
            "K_b",
            panel.bending_constant(),
            "in/ft",
            STRENGTH,
            Confidence::TwoSources,
        )
        .cell("F_bS", panel.strength(), "lb-in/ft", source, Confidence::Source)
        .given("l", panel.studs, "in")
        .rule(STRENGTH, Confidence::TwoSources)
        .gives(bending_pressure(panel), "psf");
    let design = steps
        .step(
            "w_D",
            "pressure that bending resists for the load's duration",
            "w_b * C_D",
        )
        .from("w_b", bending, "psf")
        .given("C_D", query.load_duration, "")
        .rule("NDS load duration factor", Confidence::Source)
        .gives(bending * query.load_duration, "psf");
    (bending, design)
}

fn explain_ratio(panel: &PanelSpans, ratio: f64, source: &str, steps: &mut Derivation) -> f64 {
    let step = steps.step(
        "w_d",
        "pressure at the deflection that is allowed",
        "l / n * K_d * EI / l_3^4",
    );
    stiff(step, panel, source)
        .given("l", panel.studs, "in")
        .given("n", ratio, "")
        .gives(stiffness_pressure(panel, ratio), "psf")
}

fn explain_pressure(panel: &PanelSpans, pressure: f64, source: &str, steps: &mut Derivation) -> f64 {
    let step = steps.step("delta", "deflection under the pressure", "w * l_3^4 / (K_d * EI)");
    stiff(step, panel, source)
        .given("w", pressure, "psf")
        .gives(deflection(panel, pressure), "in")
}

/// What both steps of deflection take.
fn stiff<'d>(step: Writing<'d>, panel: &PanelSpans, source: &str) -> Writing<'d> {
    step.from("l_3", panel.deflection_span(), "in")
        .cell(
            "K_d",
            panel.deflection_constant(),
            "in/ft",
            STIFFNESS,
            Confidence::TwoSources,
        )
        .cell("EI", panel.stiffness(), "lb-in2/ft", source, Confidence::Source)
        .rule(STIFFNESS, Confidence::TwoSources)
}
