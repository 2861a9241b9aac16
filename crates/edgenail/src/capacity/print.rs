//! A derivation for people: plain text, Markdown, HTML. Its JSON is its serialization.

use super::derivation::{Derivation, Input, Step};
use std::fmt::Write as _;

/// A number in its shortest form that reads back the same, with its unit.
fn quantity(value: f64, unit: &str) -> String {
    if unit.is_empty() {
        format!("{value}")
    } else {
        format!("{value} {unit}")
    }
}

fn input(input: &Input) -> String {
    let mut text = format!("{} = {}", input.symbol, quantity(input.value, input.unit));
    if !input.source.is_empty() {
        let _ = write!(text, " [{}]", input.source);
    }
    text
}

impl Derivation {
    /// One block of lines a step, each line once said:
    ///
    /// ```text
    /// v_ASD: ASD unit shear
    ///   = v_n / Omega
    ///   v_n = 480 plf
    ///   Omega = 2 [SDPWS 2015 4.3.3]
    ///   = 240 plf
    ///   source: SDPWS 2015 4.3.3 (two sources)
    /// ```
    ///
    /// The first line under the name is the formula, the last value line the result.
    pub fn text(&self) -> String {
        let mut text = String::new();
        for step in &self.steps {
            let _ = writeln!(text, "{}: {}\n  = {}", step.symbol, step.meaning, step.formula);
            for input in &step.inputs {
                let _ = writeln!(text, "  {}", self::input(input));
            }
            let _ = writeln!(text, "  = {}", quantity(step.value, step.unit));
            let _ = writeln!(text, "  source: {}", source(step));
        }
        text
    }

    /// A table in Markdown, a row for each step.
    pub fn markdown(&self) -> String {
        let mut text = String::from(
            "| symbol | what | formula | with | value | source |\n| --- | --- | --- | --- | --- | --- |\n",
        );
        for step in &self.steps {
            let inputs: Vec<String> = step.inputs.iter().map(input).collect();
            let _ = writeln!(
                text,
                "| {} | {} | `{}` | {} | {} | {} |",
                cell(&step.symbol),
                cell(&step.meaning),
                step.formula,
                cell(&inputs.join("; ")),
                quantity(step.value, step.unit),
                cell(&source(step)),
            );
        }
        text
    }

    /// A table in HTML, a row for each step.
    pub fn html(&self) -> String {
        let mut text = String::from(
            "<table><thead><tr><th>symbol</th><th>what</th><th>formula</th><th>with</th><th>value</th><th>source</th></tr></thead><tbody>",
        );
        for step in &self.steps {
            let inputs: Vec<String> = step.inputs.iter().map(|one| escaped(&input(one))).collect();
            let _ = write!(
                text,
                "<tr><td>{}</td><td>{}</td><td><code>{}</code></td><td>{}</td><td>{}</td><td>{}</td></tr>",
                escaped(&step.symbol),
                escaped(&step.meaning),
                escaped(&step.formula),
                inputs.join("<br>"),
                escaped(&quantity(step.value, step.unit)),
                escaped(&source(step)),
            );
        }
        text.push_str("</tbody></table>");
        text
    }
}

fn source(step: &Step) -> String {
    format!("{} ({})", step.source, step.confidence.note())
}

fn cell(text: &str) -> String {
    text.replace('|', "\\|")
}

fn escaped(text: &str) -> String {
    text.replace('&', "&amp;")
        .replace('<', "&lt;")
        .replace('>', "&gt;")
}
