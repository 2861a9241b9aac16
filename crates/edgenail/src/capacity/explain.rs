//! The derivation of a unit shear.

use super::assembly::{LoadKind, Method, PanelMaterial};
use super::derivation::Derivation;
use super::rule;
use super::unit_shear::UnitShear;
use crate::decimal::Decimal;
use crate::published::{Confidence, PanelRow, RowEdition};

impl UnitShear {
    /// The steps to the design unit shear; the last of them gives it.
    pub fn explain(&self, derivation: &mut Derivation) -> f64 {
        let query = &self.query;
        let row = self.shear_row;
        let load = match query.load {
            LoadKind::Wind => "wind",
            LoadKind::Seismic => "seismic",
        };
        let mut source = row_name(query.edition.name(), row);
        let mut confidence = row.confidence;
        if row.thickness != self.row.thickness {
            let footnote = rule::THICKER_ROW_STUDS;
            source = format!("{source}; {}", footnote.source);
            confidence = confidence.max(footnote.confidence);
        }
        let symbol = match (query.load, row.edition) {
            (_, RowEdition::Of2021) => "v_table",
            (LoadKind::Wind, RowEdition::To2015) => "v_w",
            (LoadKind::Seismic, RowEdition::To2015) => "v_s",
        };
        derivation
            .step(symbol, &format!("tabulated nominal unit shear, {load}"), symbol)
            .cell(symbol, self.cell, "plf", &source, confidence)
            .rule(&source, confidence)
            .gives(self.cell, "plf");
        explain_species(query.assembly.specific_gravity, self.species, derivation);
        if let Some(unblocked) = self.unblocked {
            let source = rule::UNBLOCKED;
            derivation
                .step("C_ub", "factor of an unblocked wall", "C_ub")
                .cell("C_ub", unblocked, "", source.source, source.confidence)
                .rule(source.source, source.confidence)
                .gives(unblocked, "");
        }
        if let Some(inside) = self.inside_hold_downs {
            let source = rule::INSIDE_HOLD_DOWNS;
            derivation
                .step(
                    "C_h",
                    "factor for hold-downs on the inside faces of end posts",
                    "C_h",
                )
                .cell("C_h", inside, "", source.source, source.confidence)
                .rule(source.source, source.confidence)
                .gives(inside, "");
        }
        if let Some(estimate) = &self.estimate {
            estimate.explain(query, self.row, derivation);
        }
        let mut formula = format!("{symbol} * C_G");
        if self.unblocked.is_some() {
            formula.push_str(" * C_ub");
        }
        if self.inside_hold_downs.is_some() {
            formula.push_str(" * C_h");
        }
        if self.estimate.is_some() {
            formula.push_str(" * C_est");
        }
        let mut step = derivation
            .step("v_n", "nominal unit shear", &formula)
            .from(symbol, self.cell, "plf")
            .from("C_G", self.species, "");
        if let Some(unblocked) = self.unblocked {
            step = step.from("C_ub", unblocked, "");
        }
        if let Some(inside) = self.inside_hold_downs {
            step = step.from("C_h", inside, "");
        }
        if let Some(estimate) = &self.estimate {
            step = step.from("C_est", estimate.factor, "");
        }
        step.rule(query.edition.name(), Confidence::TwoSources)
            .gives(self.nominal, "plf");
        let factor = self.factor;
        let (symbol, name, formula, factor_name) = match query.method {
            Method::Asd => ("v_ASD", "allowable unit shear (ASD)", "v_n / Omega", "Omega"),
            Method::Lrfd => ("v_LRFD", "factored unit shear (LRFD)", "v_n * phi", "phi"),
        };
        derivation
            .step(symbol, name, formula)
            .from("v_n", self.nominal, "plf")
            .cell(factor_name, factor.value, "", factor.source, factor.confidence)
            .rule(factor.source, factor.confidence)
            .gives(self.design, "plf")
    }

    /// The step to the apparent shear stiffness of the panel as built; none of an estimate.
    pub fn explain_stiffness(&self, derivation: &mut Derivation) -> Option<f64> {
        let stiffness = self.stiffness?;
        let assembly = &self.query.assembly;
        let source = row_name(self.query.edition.name(), self.row);
        let (cell, plies) = match assembly.material {
            PanelMaterial::Osb => (self.row.stiffness_osb, false),
            PanelMaterial::Plywood3 => (self.row.stiffness_plywood, false),
            PanelMaterial::Plywood4 => (self.row.stiffness_plywood, true),
        };
        let mut formula = String::from("G_table");
        if plies {
            formula.push_str(" * C_plies");
        }
        if assembly.wet_framing {
            formula.push_str(" * C_wet");
        }
        let mut step = derivation
            .step("G_a", "apparent shear stiffness of the panel as built", &formula)
            .cell("G_table", cell.as_f64(), "kips/in", &source, self.row.confidence);
        if plies {
            let rule = rule::MORE_PLIES;
            step = step.cell("C_plies", rule.value, "", rule.source, rule.confidence);
        }
        if assembly.wet_framing {
            let rule = rule::WET;
            step = step.cell("C_wet", rule.value, "", rule.source, rule.confidence);
        }
        let value = step
            .rule(&source, self.row.confidence)
            .gives(stiffness, "kips/in");
        Some(value)
    }
}

/// The step to the factor for the framing's specific gravity.
pub(super) fn explain_species(gravity: Decimal, factor: f64, derivation: &mut Derivation) {
    let confidence = if factor < 1.0 {
        rule::SPECIES.confidence
    } else {
        Confidence::TwoSources
    };
    derivation
        .step(
            "C_G",
            "factor for the lightest framing nailed",
            "min(1, 1 - (0.5 - G))",
        )
        .given("G", gravity.as_f64(), "")
        .rule(rule::SPECIES.source, confidence)
        .gives(factor, "");
}

/// A row in words: edition, table, row.
fn row_name(edition: &str, row: &PanelRow) -> String {
    use super::fault::inches;
    format!(
        "{edition} Table 4.3A, {} {}, {} nails, {} into framing, {} edges; seen in {}",
        row.grade.name(),
        inches(row.thickness),
        row.nail.name(),
        inches(row.penetration),
        inches(row.edge_spacing),
        row.source
    )
}
