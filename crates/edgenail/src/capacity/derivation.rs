//! How a structural number came about: steps that anybody can recompute.

use crate::published::Confidence;
use serde::Serialize;

/// A value that goes into a step.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Input {
    /// Its symbol in the formula.
    pub symbol: String,
    /// The number.
    pub value: f64,
    /// Its unit, empty for a bare number.
    pub unit: &'static str,
    /// Where it comes from: a published cell or the user. Empty where an earlier step gave it.
    pub source: String,
}

/// One step: a formula, what goes in, what comes out.
///
/// A formula is made of numbers, symbols, `+ - * / ^`, parentheses, `sqrt(a)`, `min(a, b, …)` and `max(a, b, …)`, with
/// the usual order of operations; `^` binds from the right.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Step {
    /// The symbol of what comes out.
    pub symbol: String,
    /// What it is, in a few words.
    pub meaning: String,
    /// The formula over the symbols of the inputs; a single symbol where a value is looked up.
    pub formula: String,
    /// Everything that the formula names.
    pub inputs: Vec<Input>,
    /// What comes out.
    pub value: f64,
    /// Its unit, empty for a bare number.
    pub unit: &'static str,
    /// The rule or the table: standard, edition, section, footnote.
    pub source: String,
    /// How far the rule and every value that it takes from a table may be trusted; the least of them.
    pub confidence: Confidence,
}

/// The steps of a result, in order; the value of the last is the result.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct Derivation {
    /// The steps.
    pub steps: Vec<Step>,
}

impl Derivation {
    /// The result.
    pub fn value(&self) -> Option<f64> {
        self.steps.last().map(|step| step.value)
    }

    /// The least confidence of all steps; none without steps.
    pub fn confidence(&self) -> Option<Confidence> {
        self.steps.iter().map(|step| step.confidence).max()
    }

    /// Begins a step; [`Writing::gives`] ends it.
    pub fn step(&mut self, symbol: &str, meaning: &str, formula: &str) -> Writing<'_> {
        Writing {
            derivation: self,
            step: Step {
                symbol: symbol.to_owned(),
                meaning: meaning.to_owned(),
                formula: formula.to_owned(),
                inputs: Vec::new(),
                value: 0.0,
                unit: "",
                source: String::new(),
                confidence: Confidence::TwoSources,
            },
        }
    }
}

/// A step being written.
#[derive(Debug)]
#[must_use = "a step is kept only when it is told what it gives"]
pub struct Writing<'d> {
    derivation: &'d mut Derivation,
    step: Step,
}

impl Writing<'_> {
    /// A value that an earlier step gave.
    pub fn from(mut self, symbol: &str, value: f64, unit: &'static str) -> Self {
        self.input(symbol, value, unit, "");
        self
    }

    /// A value that the user gave.
    pub fn given(mut self, symbol: &str, value: f64, unit: &'static str) -> Self {
        self.input(symbol, value, unit, "given");
        self
    }

    /// A published value.
    pub fn cell(
        mut self,
        symbol: &str,
        value: f64,
        unit: &'static str,
        source: &str,
        confidence: Confidence,
    ) -> Self {
        self.input(symbol, value, unit, source);
        self.step.confidence = self.step.confidence.max(confidence);
        self
    }

    /// The rule that the formula states.
    pub fn rule(mut self, source: &str, confidence: Confidence) -> Self {
        source.clone_into(&mut self.step.source);
        self.step.confidence = self.step.confidence.max(confidence);
        self
    }

    /// Ends the step with what comes out.
    pub fn gives(mut self, value: f64, unit: &'static str) -> f64 {
        self.step.value = value;
        self.step.unit = unit;
        self.derivation.steps.push(self.step);
        value
    }

    fn input(&mut self, symbol: &str, value: f64, unit: &'static str, source: &str) {
        self.step.inputs.push(Input {
            symbol: symbol.to_owned(),
            value,
            unit,
            source: source.to_owned(),
        });
    }
}
