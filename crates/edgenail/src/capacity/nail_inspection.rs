//! Nails found missing or driven too deep: what to mend, and what of the nailing is there.

use super::derivation::Derivation;
use super::fault::{fault, inches};
use super::rule::Rule;
use crate::issue::{Code, Issue};
use crate::length::Length;
use crate::published::Confidence;
use serde::Serialize;

/// The nails along the edges of one panel, as somebody counted them.
#[derive(Clone, Debug, PartialEq)]
pub struct NailInspectionQuery {
    /// Its edges.
    pub edges: Vec<InspectedEdge>,
    /// Specified spacing of edge nails.
    pub edge_spacing: Length,
    /// Panels and framing were dry, below 16 %, when they were nailed.
    pub dry: bool,
    /// Design unit shear of the wall as specified, from its table, in pounds per foot; none asks for nothing of it.
    pub design_shear: Option<f64>,
}

/// One edge, its nails by how deep their heads stand below the face.
#[derive(Clone, Debug, PartialEq)]
pub struct InspectedEdge {
    /// What it is called.
    pub name: String,
    /// Flush.
    pub flush: u32,
    /// Up to 1/16 in. deep.
    pub to_16th: u32,
    /// Above 1/16 up to 1/8 in. deep.
    pub to_8th: u32,
    /// Deeper than 1/8 in.
    pub deeper: u32,
    /// Specified and not there, or beside the framing.
    pub missing: u32,
}

/// What to do, in order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum NailRemedy {
    /// Missing nails are driven first.
    DriveMissing,
    /// Nails are added, one for every two that are too deep; three approved staples stand for a nail where there is no room.
    AddNails,
    /// Edge nails stand so close that more may split the wood: a design professional decides.
    AskDesigner,
}

/// What was found of one edge.
#[derive(Clone, Debug, PartialEq)]
pub struct EdgeNails {
    /// Its name.
    pub name: String,
    /// Nails specified.
    pub specified: u32,
    /// Nails driven too deep.
    pub overdriven: u32,
    /// Nails missing.
    pub missing: u32,
    /// What is there over what was specified.
    pub ratio: f64,
}

/// What was found of a panel.
#[derive(Clone, Debug, PartialEq)]
pub struct NailInspection {
    /// Its edges, in order.
    pub edges: Vec<EdgeNails>,
    /// Nails too deep over nails driven, along all edges.
    pub share: f64,
    /// The share that costs nothing, as long as none is deeper than 1/8 in.
    pub share_most: f64,
    /// What to do, each with a number of nails.
    pub mend: Vec<(NailRemedy, u32)>,
    /// The least of the edges' ratios: what of the nailing is there as long as nothing is mended. Never above 1.
    pub ratio: f64,
    /// The design unit shear times the ratio, in pounds per foot.
    pub at_most: Option<f64>,
}

/// What the result of an inspection is.
pub const INSPECTION_NATURE: &str = "judgement of what was built by counts of nails: no capacity of the standard, never above its table, and never a pass";

const BANDS: &str = "APA TT-012 on overdriven nails, as a retrofit contractor tells of it";

/// The share of nails too deep that costs nothing, as long as none is deeper than 1/8 in.
pub const SHARE_MOST: Rule<f64> = Rule::seen(0.20, BANDS, Confidence::Source);
/// What a nail that is too deep counts for beyond that share: one is added for every two.
pub const OVERDRIVEN_COUNTS: Rule<f64> = Rule::seen(
    0.5,
    "APA TT-012 on overdriven nails, as a retrofit contractor tells of it: one nail is added for every two, so that two count for one",
    Confidence::Source,
);
/// At this spacing or closer nails are not simply added.
pub const ADDED_SPACING: Rule<Length> = Rule::seen(
    Length::inches(4),
    "APA TT-012A on overdriven nails, as an engineering firm's note tells of it: more nails may split the wood",
    Confidence::Source,
);

/// Judges the nails along the edges of a panel, with the steps.
///
/// # Errors
/// An edge without nails; nails that are all missing; two edges of one name.
///
/// ```
/// use edgenail::capacity::{Derivation, InspectedEdge, NailInspectionQuery, NailRemedy, inspect_nails};
/// use edgenail::Length;
/// let edge = InspectedEdge { name: "left".into(), flush: 12, to_16th: 0, to_8th: 4, deeper: 0, missing: 1 };
/// let query = NailInspectionQuery { edges: vec![edge], edge_spacing: Length::inches(6), dry: true, design_shear: None };
/// let mut steps = Derivation::default();
/// let found = inspect_nails(&query, &mut steps).map_err(|issues| issues[0].message.clone())?;
/// // Four of sixteen are too deep, which is above a fifth.
/// assert_eq!(found.mend, [(NailRemedy::DriveMissing, 1), (NailRemedy::AddNails, 2)]);
/// assert_eq!(found.ratio, 14.0 / 17.0);
/// # Ok::<(), String>(())
/// ```
pub fn inspect_nails(
    query: &NailInspectionQuery,
    steps: &mut Derivation,
) -> Result<NailInspection, Vec<Issue>> {
    check(query)?;
    let counts: Vec<Counts> = query
        .edges
        .iter()
        .map(|edge| Counts::of(edge, query.dry))
        .collect();
    let sum = |of: fn(&Counts) -> u32| counts.iter().map(of).fold(0, u32::saturating_add);
    let (driven, overdriven) = (sum(Counts::driven), sum(|counts| counts.overdriven));
    let (deeper, missing) = (sum(|counts| counts.deeper), sum(|counts| counts.missing));
    let share = steps
        .step(
            "p",
            "share of the panel's nails that are too deep",
            "n_over / n_driven",
        )
        .given("n_over", f64::from(overdriven), "")
        .given("n_driven", f64::from(driven), "")
        .rule(BANDS, Confidence::Source)
        .gives(f64::from(overdriven) / f64::from(driven), "");
    // A quotient of whole numbers that is a fifth is rounded as the share that is written here.
    let tolerated = deeper == 0 && share <= SHARE_MOST.value;
    let worth = if tolerated { 1.0 } else { OVERDRIVEN_COUNTS.value };
    let edges: Vec<EdgeNails> = (1..)
        .zip(query.edges.iter().zip(&counts))
        .map(|(number, (edge, counts))| explain_edge(number, edge, counts, worth, steps))
        .collect();
    let ratio = edges.iter().map(|edge| edge.ratio).fold(1.0, f64::min);
    let symbols: Vec<String> = (1..=edges.len()).map(|number| format!("r_{number}")).collect();
    let mut step = steps.step(
        "r",
        "what of the nailing is there along the worst edge",
        &format!("min(1, {})", symbols.join(", ")),
    );
    for (symbol, edge) in symbols.iter().zip(&edges) {
        step = step.from(symbol, edge.ratio, "");
    }
    step.rule("own judgement: the worst edge governs", Confidence::TwoSources)
        .gives(ratio, "");
    let at_most = query.design_shear.map(|shear| {
        steps
            .step(
                "v_r",
                "design unit shear times what of the nailing is there",
                "v * r",
            )
            .given("v", shear, "plf")
            .from("r", ratio, "")
            .rule(
                "own judgement by counts of nails: no capacity of the standard",
                Confidence::TwoSources,
            )
            .gives(shear * ratio, "plf")
    });
    let added = if tolerated { 0 } else { overdriven.div_ceil(2) };
    let mut mend = Vec::new();
    if missing > 0 {
        mend.push((NailRemedy::DriveMissing, missing));
    }
    if added > 0 {
        let close = query.edge_spacing <= ADDED_SPACING.value;
        let remedy = if close {
            NailRemedy::AskDesigner
        } else {
            NailRemedy::AddNails
        };
        mend.push((remedy, added));
    }
    Ok(NailInspection {
        edges,
        share,
        share_most: SHARE_MOST.value,
        mend,
        ratio,
        at_most,
    })
}

/// Counts of one edge as the rule tells nails apart.
struct Counts {
    sound: u32,
    overdriven: u32,
    deeper: u32,
    missing: u32,
}

impl Counts {
    /// Heads that stand a little deep count as flush in dry wood only.
    const fn of(edge: &InspectedEdge, dry: bool) -> Self {
        let deep = edge.to_8th.saturating_add(edge.deeper);
        let (sound, overdriven) = if dry {
            (edge.flush.saturating_add(edge.to_16th), deep)
        } else {
            (edge.flush, deep.saturating_add(edge.to_16th))
        };
        Self {
            sound,
            overdriven,
            deeper: edge.deeper,
            missing: edge.missing,
        }
    }

    const fn driven(&self) -> u32 {
        self.sound.saturating_add(self.overdriven)
    }
}

/// The step to an edge's ratio.
fn explain_edge(
    number: usize,
    edge: &InspectedEdge,
    counts: &Counts,
    worth: f64,
    steps: &mut Derivation,
) -> EdgeNails {
    let (sound, overdriven) = (f64::from(counts.sound), f64::from(counts.overdriven));
    let specified = counts.driven().saturating_add(counts.missing);
    let ratio = (sound + worth * overdriven) / f64::from(specified);
    let (source, confidence) = if worth < 1.0 {
        (OVERDRIVEN_COUNTS.source, OVERDRIVEN_COUNTS.confidence)
    } else {
        (SHARE_MOST.source, SHARE_MOST.confidence)
    };
    steps
        .step(
            &format!("r_{number}"),
            &format!("what of the nailing is there along edge {number}"),
            "(n_sound + c * n_over) / (n_sound + n_over + n_missing)",
        )
        .given("n_sound", sound, "")
        .cell("c", worth, "", source, confidence)
        .given("n_over", overdriven, "")
        .given("n_missing", f64::from(counts.missing), "")
        .rule(source, confidence)
        .gives(ratio, "");
    EdgeNails {
        name: edge.name.clone(),
        specified,
        overdriven: counts.overdriven,
        missing: counts.missing,
        ratio,
    }
}

/// What counts have to be.
fn check(query: &NailInspectionQuery) -> Result<(), Vec<Issue>> {
    let mut issues = Vec::new();
    if query.edge_spacing <= Length::ZERO {
        issues.push(fault(
            Code::OutOfRange,
            "edge_spacing",
            &inches(query.edge_spacing),
            "above 0",
            "nails have to stand some way apart",
        ));
    }
    let mut driven = 0_u64;
    for (index, edge) in query.edges.iter().enumerate() {
        let counts = Counts::of(edge, query.dry);
        driven += u64::from(counts.driven());
        if counts.driven() == 0 && counts.missing == 0 {
            issues.push(fault(
                Code::OutOfRange,
                &format!("edges/{index}"),
                "0 nails",
                "1 or more, driven or missing",
                "an edge without nails says nothing",
            ));
        }
        if query
            .edges
            .iter()
            .take(index)
            .any(|other| other.name == edge.name)
        {
            issues.push(fault(
                Code::DuplicateName,
                &format!("edges/{index}/name"),
                &edge.name,
                "a name of its own",
                "two edges have the same name",
            ));
        }
    }
    if driven == 0 && issues.is_empty() {
        issues.push(fault(
            Code::OutOfRange,
            "edges",
            "no nail driven",
            "a nail or more",
            "a panel without edge nails resists nothing",
        ));
    }
    if issues.is_empty() { Ok(()) } else { Err(issues) }
}
