//! The derivation of the unit shear of a face.

use super::{FacingShear, NOMINAL_43B};
use crate::capacity::assembly::{LoadKind, Method};
use crate::capacity::derivation::Derivation;
use crate::capacity::explain::explain_species;
use crate::published::{Confidence, FacingTable, FacingValue};

impl FacingShear {
    /// The steps to the design unit shear; the last of them gives it.
    pub fn explain(&self, derivation: &mut Derivation) -> f64 {
        let load = match self.query.load {
            LoadKind::Wind => "wind",
            LoadKind::Seismic => "seismic",
        };
        let nature = match self.row.table {
            FacingTable::Sdpws43A | FacingTable::Sdpws43C => "nominal",
            FacingTable::Sdpws43B | FacingTable::Cmr23063 => "allowable",
        };
        let source = self.source(self.cell);
        let confidence = self.cell.cell.confidence;
        let tabulated = derivation
            .step(
                "v_table",
                &format!("tabulated {nature} unit shear, {load}"),
                "v_table",
            )
            .cell("v_table", self.cell.value.as_f64(), "plf", &source, confidence)
            .rule(&source, confidence)
            .gives(self.cell.value.as_f64(), "plf");
        if let (Some(species), Some(gravity)) = (self.species, self.query.facing.specific_gravity) {
            explain_species(gravity, species, derivation);
        }
        match self.nominal {
            Some(nominal) => self.explain_nominal(tabulated, nominal, derivation),
            None => self.explain_allowable(tabulated, derivation),
        }
    }

    fn explain_nominal(&self, tabulated: f64, nominal: f64, derivation: &mut Derivation) -> f64 {
        let doubled = self.row.table == FacingTable::Sdpws43B;
        let mut formula = String::from("v_table");
        if doubled {
            formula.push_str(" * n");
        }
        if self.species.is_some() {
            formula.push_str(" * C_G");
        }
        let mut step = derivation
            .step("v_n", "nominal unit shear", &formula)
            .from("v_table", tabulated, "plf");
        if doubled {
            let rule = NOMINAL_43B;
            step = step.cell("n", rule.value, "", rule.source, rule.confidence);
        }
        if let Some(species) = self.species {
            step = step.from("C_G", species, "");
        }
        step.rule(self.query.edition.name(), Confidence::TwoSources)
            .gives(nominal, "plf");
        let Some(factor) = self.factor else {
            return nominal;
        };
        let (symbol, name, formula, factor_name) = match self.query.method {
            Method::Asd => ("v_ASD", "allowable unit shear (ASD)", "v_n / Omega", "Omega"),
            Method::Lrfd => ("v_LRFD", "factored unit shear (LRFD)", "v_n * phi", "phi"),
        };
        derivation
            .step(symbol, name, formula)
            .from("v_n", nominal, "plf")
            .cell(factor_name, factor.value, "", factor.source, factor.confidence)
            .rule(factor.source, factor.confidence)
            .gives(self.design, "plf")
    }

    fn explain_allowable(&self, tabulated: f64, derivation: &mut Derivation) -> f64 {
        let (formula, source) = match self.factor {
            Some(factor) => ("v_table * C_w", factor.source),
            None => ("v_table", self.row.table.name()),
        };
        let mut step = derivation
            .step(
                "v_ASD",
                "allowable unit shear (ASD), which has no nominal one",
                formula,
            )
            .from("v_table", tabulated, "plf");
        if let Some(factor) = self.factor {
            step = step.cell("C_w", factor.value, "", factor.source, factor.confidence);
        }
        step.rule(source, Confidence::TwoSources)
            .gives(self.design, "plf")
    }

    /// The step to the apparent shear stiffness; none where there is none.
    pub fn explain_stiffness(&self, derivation: &mut Derivation) -> Option<f64> {
        let (stiffness, found) = (self.stiffness?, self.row.stiffness?);
        let source = self.source(found);
        let confidence = found.cell.confidence;
        let value = derivation
            .step("G_a", "apparent shear stiffness of the face", "G_a")
            .cell("G_a", stiffness, "kips/in", &source, confidence)
            .rule(&source, confidence)
            .gives(stiffness, "kips/in");
        Some(value)
    }

    /// A cell in words: edition, table, row, where it was seen.
    fn source(&self, value: FacingValue) -> String {
        format!(
            "{}, {}; seen in {}",
            self.row.table.name(),
            value.cell.key,
            value.cell.source
        )
    }
}
