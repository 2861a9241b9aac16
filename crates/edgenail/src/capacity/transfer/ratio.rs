//! What the sheathing around openings resists of its unit shears.

use super::{Transfer, TransferWall};
use crate::capacity::derivation::Derivation;
use crate::capacity::fault::fault;
use crate::capacity::pier::{AspectFactor, Pier, RATIO_FULL, RATIO_MOST, Sharing};
use crate::capacity::unit_shear::{UnitShear, UnitShearQuery, unit_shear};
use crate::capacity::{Method, within};
use crate::issue::{Code, Issue};
use crate::published::Confidence;

/// The unit shears of a strapped wall over what its one construction resists.
#[derive(Clone, Debug)]
pub struct TransferRatio {
    /// The unit shear of its construction.
    pub unit: UnitShear,
    /// For each segment, what counts for its proportion beside the tallest opening.
    pub aspects: Vec<AspectFactor>,
    /// The largest unit shear anywhere over what resists it there.
    pub ratio: f64,
    /// The least confidence of all that was used.
    pub confidence: Confidence,
}

const BESIDE: &str = "proportion of the segment beside the opening (APA T555, 2018)";

/// A segment beside the tallest opening.
fn beside(wall: &TransferWall, length: f64) -> Pier {
    Pier {
        length,
        height: wall.height - wall.above_and_below,
    }
}

/// Sets the unit shears around openings against the construction that carries them.
///
/// # Errors
/// What the tables do not list; a wall that is not blocked; a segment too slender to count.
pub fn transfer_ratio(
    wall: &TransferWall,
    forces: &Transfer,
    query: &UnitShearQuery,
) -> Result<TransferRatio, Vec<Issue>> {
    if !query.assembly.blocked {
        return Err(vec![fault(
            Code::OutOfRange,
            "query/assembly/blocked",
            "false",
            "true",
            "force is handed on around openings by blocking behind every panel edge",
        )]);
    }
    let unit = unit_shear(query).map_err(|issues| within("query", issues))?;
    let aspects: Vec<AspectFactor> = wall
        .piers
        .iter()
        .map(|length| {
            let pier = beside(wall, *length);
            pier.aspect_factor(query.edition, query.load, Sharing::EqualDeflection, true)
        })
        .collect();
    let mut issues = Vec::new();
    let mut confidence = unit.confidence;
    let mut largest = forces.above_and_below;
    for (index, (aspect, length)) in aspects.iter().zip(&wall.piers).enumerate() {
        let Some(factor) = aspect.factor else {
            issues.push(fault(
                Code::OutOfRange,
                &format!("piers/{index}"),
                &format!(
                    "{length} ft, {:.2} times as high beside the opening",
                    aspect.ratio
                ),
                &format!("at most {RATIO_MOST} times as high as long"),
                "the segment is too slender to count",
            ));
            continue;
        };
        if aspect.ratio > RATIO_FULL {
            confidence = confidence.max(aspect.confidence);
        }
        largest = largest
            .max(forces.beside[index].abs() / factor)
            .max(forces.corners[index].abs());
    }
    if !issues.is_empty() {
        return Err(issues);
    }
    Ok(TransferRatio {
        ratio: largest / unit.design,
        unit,
        aspects,
        confidence,
    })
}

/// The steps to the ratio, after those of [`explain_transfer`](super::explain_transfer).
pub fn explain_transfer_ratio(
    wall: &TransferWall,
    forces: &Transfer,
    found: &TransferRatio,
    derivation: &mut Derivation,
) -> f64 {
    found.unit.explain(derivation);
    let height = wall.height - wall.above_and_below;
    derivation
        .step(
            "h",
            "height of the segments beside the tallest opening",
            "h_w - h_ab",
        )
        .given("h_w", wall.height, "ft")
        .given("h_ab", wall.above_and_below, "ft")
        .rule(BESIDE, Confidence::Source)
        .gives(height, "ft");
    let unit = match found.unit.query.method {
        Method::Asd => "v_ASD",
        Method::Lrfd => "v_LRFD",
    };
    let mut terms = vec!["v_ab".to_owned()];
    let mut inputs = vec![("v_ab".to_owned(), forces.above_and_below, "plf")];
    for (index, (aspect, length)) in found.aspects.iter().zip(&wall.piers).enumerate() {
        let number = index + 1;
        let name = format!("C_ar{number}");
        let factor = aspect.factor.unwrap_or(0.0);
        let mut step = derivation.step(
            &name,
            "what counts of a segment for its proportion",
            aspect.formula,
        );
        if aspect.formula.contains('b') {
            step = step.given("b", *length, "ft").from("h", height, "ft");
        }
        step.rule(aspect.source, aspect.confidence).gives(factor, "");
        terms.push(format!("max(v{number}, -v{number}) / {name}"));
        terms.push(format!("max(vc{number}, -vc{number})"));
        inputs.push((format!("v{number}"), forces.beside[index], "plf"));
        inputs.push((format!("vc{number}"), forces.corners[index], "plf"));
        inputs.push((name, factor, ""));
    }
    let formula = format!("max({}) / {unit}", terms.join(", "));
    let mut step = derivation.step("ratio", "demand over capacity", &formula);
    for (symbol, value, of) in inputs {
        step = step.from(&symbol, value, of);
    }
    step.from(unit, found.unit.design, "plf")
        .rule("at most 1", Confidence::TwoSources)
        .gives(found.ratio, "")
}
