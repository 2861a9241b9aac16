//! A nail that the table does not know: a listed row scaled by the ratio of lateral values. An engineering estimate, no
//! value of the standard.

use super::assembly::{DrivenNail, LoadKind, PanelMaterial};
use super::derivation::Derivation;
use super::dowel::Dowel;
use super::fault::{self, fault, within};
use super::fit::{listed, penetration};
use super::nail::dowel;
use super::question::{NailEdition, NailQuery};
use super::rule::{LISTED_NAILS, ListedNail};
use super::unit_shear::UnitShearQuery;
use crate::decimal::Decimal;
use crate::issue::{Code, Issue};
use crate::length::Length;
use crate::published::{Confidence, Grade, PanelRow};

/// What a nail makes of a row that does not list it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Estimate {
    /// Lateral value of the row's common nail in pounds.
    pub listed: f64,
    /// Lateral value of the wall's nail in pounds.
    pub nail: f64,
    /// The second over the first, at most 1.
    pub factor: f64,
}

const SOURCE: &str = "engineering estimate, no value of the standard: lateral values by the yield limit equations of the NDS, six modes";

/// The row with the nearest thicker nail, and what of it the wall's nail makes.
///
/// # Errors
/// An earthquake, for which no estimate is made; a nail that is not thinner than a listed one, has a smaller head than a listed
/// nail as thick, or goes less deep than the row asks for.
pub(super) fn estimate(
    query: &UnitShearQuery,
    rows: &[&'static PanelRow],
) -> Result<(&'static PanelRow, Estimate), Vec<Issue>> {
    if query.load == LoadKind::Seismic {
        return Err(vec![fault(
            Code::OutOfRange,
            "load",
            "seismic",
            "wind",
            "an estimate for a nail that the table does not list is for wind or for judging what was built, not for earthquakes",
        )]);
    }
    let assembly = &query.assembly;
    let nail = &assembly.nail;
    let whole = nail.head >= least_head(nail.shank);
    let thicker = rows.iter().filter(|row| {
        row.edge_spacing == assembly.edge_spacing
            && listed(row).common.value > nail.shank
            && penetration(nail, row.thickness) >= row.penetration
    });
    let nearest = thicker.min_by_key(|row| listed(row).common.value);
    let Some(row) = nearest.copied().filter(|_| whole) else {
        return Err(vec![fault::nail(rows, assembly)]);
    };
    let [listed, nail] = nails(query, row);
    let value = |nail: &NailQuery| {
        let dowel = lateral(nail, &mut Derivation::default())?;
        Ok::<f64, Vec<Issue>>(dowel.lateral().value)
    };
    let (listed, nail) = (value(&listed)?, value(&nail)?);
    let factor = (nail / listed).min(1.0);
    Ok((row, Estimate { listed, nail, factor }))
}

/// The row's common nail and the wall's, through the wall's panel into its framing.
fn nails(query: &UnitShearQuery, row: &PanelRow) -> [NailQuery; 2] {
    let of_row = listed(row);
    let nail = &query.assembly.nail;
    let common = DrivenNail {
        shank: of_row.common.value,
        length: of_row.length.value,
        ..*nail
    };
    [asked(query, &common), asked(query, nail)]
}

/// The head of the thickest listed nail that is no thicker; of the thinnest for thinner ones.
fn least_head(shank: Decimal) -> Decimal {
    let [thinnest, ..] = &LISTED_NAILS;
    let thinner = |nail: &&ListedNail| nail.common.value <= shank;
    LISTED_NAILS.iter().rfind(thinner).unwrap_or(thinnest).head.value
}

/// A nail through the wall's panel into its framing.
fn asked(query: &UnitShearQuery, nail: &DrivenNail) -> NailQuery {
    let assembly = &query.assembly;
    let strong = assembly.material == PanelMaterial::Osb || assembly.grade == Grade::StructuralI;
    NailQuery {
        edition: NailEdition::Nds2018,
        shank: nail.shank.as_f64(),
        length: nail.length,
        head: None,
        bending_yield: None,
        side_thickness: assembly.thickness,
        // Recalled: boards and Structural I plywood 0.50, other plywood 0.42.
        side_gravity: if strong { 0.50 } else { 0.42 },
        between: Length::ZERO,
        main_gravity: assembly.specific_gravity.as_f64(),
        main_depth: None,
        load_duration: 1.0,
        accept_unverified: query.accept_unverified,
    }
}

fn lateral(nail: &NailQuery, steps: &mut Derivation) -> Result<Dowel, Vec<Issue>> {
    let found = dowel(nail, steps).map_err(|issues| within("assembly/nail", issues))?;
    Ok(found.0)
}

impl Estimate {
    /// The steps to the factor of the estimate.
    pub(super) fn explain(&self, query: &UnitShearQuery, row: &PanelRow, steps: &mut Derivation) -> f64 {
        let [listed, nail] = nails(query, row);
        for (symbol, meaning, nail, value) in [
            (
                "Z_row",
                "lateral value of the row's common nail",
                listed,
                self.listed,
            ),
            ("Z_nail", "lateral value of the wall's nail", nail, self.nail),
        ] {
            // It was taken before: it can be taken again.
            if let Ok(dowel) = lateral(&nail, steps) {
                dowel.explain(steps);
            }
            steps
                .step(symbol, meaning, "Z")
                .from("Z", value, "lb")
                .rule(SOURCE, Confidence::Memory)
                .gives(value, "lb");
        }
        steps
            .step(
                "C_est",
                "estimate for a nail that the table does not list",
                "min(1, Z_nail / Z_row)",
            )
            .from("Z_nail", self.nail, "lb")
            .from("Z_row", self.listed, "lb")
            .rule(SOURCE, Confidence::Memory)
            .gives(self.factor, "")
    }
}
