//! The bottom plate held against sliding and against uplift.

use super::assembly::Method;
use super::derivation::Derivation;
use super::fault::fault;
use super::question::AnchorageQuery;
use super::rule::Rule;
use crate::issue::{Code, Issue};
use crate::published::Confidence;
use serde::Serialize;

/// Anchors of a bottom plate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlateAnchors {
    /// Shear of the whole plate in pounds.
    pub shear: f64,
    /// Anchors that the shear takes before rounding up.
    pub for_shear: f64,
    /// Uplift of the whole plate in pounds.
    pub uplift: f64,
    /// Anchors that the uplift takes before rounding up; none without uplift.
    pub for_uplift: Option<f64>,
    /// Anchors at least: the larger of both, rounded up. How shear and uplift act together on one anchor is not checked.
    pub count: u32,
    /// The widest even spacing in inches at which each anchor takes its share; none where nothing acts.
    pub spacing: Option<f64>,
    /// Nominal unit shear over [`WASHER_SHEAR`]; above 1 plate washers reach to within 1/2 in. of the sheathed edge. None
    /// where no nominal unit shear was given.
    pub washer_ratio: Option<f64>,
    /// What the sill has to be in seismic design categories D to F; none where it was not asked.
    pub sill: Option<Sill>,
}

/// A sill of a shear wall in seismic design categories D to F.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sill {
    /// Unit shear over the most that a 2x sill takes.
    pub ratio: f64,
    /// Unit shear over the most that a 2x sill takes with twice the bolts and plate washers.
    pub doubled_ratio: f64,
    /// What follows.
    pub needs: SillNeeds,
}

/// What a sill has to be.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum SillNeeds {
    /// A 2x sill.
    TwoInch,
    /// A 3x sill, or a 2x sill with twice the bolts and plate washers.
    ThreeInchOrTwiceTheBolts,
    /// A 3x sill.
    ThreeInch,
}

/// The most that a 2x sill takes, alone and with twice the bolts and plate washers, in pounds per foot.
const fn sill_limits(method: Method) -> Rule<(f64, f64)> {
    let source = "IBC 2006 2305.3.11, sills in seismic design categories D to F, as an engineers' association quotes it";
    match method {
        Method::Asd => Rule::seen((350.0, 600.0), source, Confidence::Source),
        Method::Lrfd => Rule::seen((490.0, 840.0), source, Confidence::Source),
    }
}

/// Nominal unit shear above which plate washers reach to within 1/2 in. of the sheathed edge, in pounds per foot.
pub const WASHER_SHEAR: Rule<f64> = Rule::recalled(
    400.0,
    "SDPWS 2008/2015 4.3.6.4.3, plate washers to within 1/2 in. of the sheathed edge",
);

const STATICS: &str = "statics; what an anchor carries is the caller's";

/// Anchors for the shear and the uplift along a plate; what an anchor carries is the caller's, at the level of the forces.
///
/// # Errors
/// Uplift without what an anchor carries of it; more anchors than can be counted.
///
/// ```
/// use edgenail::capacity::{AnchorageQuery, Derivation, plate_anchors};
/// let query = AnchorageQuery {
///     shear: 250.0, length: 14.0, each: 1000.0, uplift: 0.0, each_uplift: None, nominal: Some(480.0), sill: None,
///     accept_unverified: true,
/// };
/// let mut steps = Derivation::default();
/// let found = plate_anchors(&query, &mut steps).map_err(|issues| issues[0].message.clone())?;
/// // Own arithmetic: 3,500 lb on anchors of 1,000 lb are four, 48 in. apart.
/// assert_eq!((found.count, found.spacing), (4, Some(48.0)));
/// # Ok::<(), String>(())
/// ```
pub fn plate_anchors(query: &AnchorageQuery, steps: &mut Derivation) -> Result<PlateAnchors, Vec<Issue>> {
    let (shear, for_shear) = along("V", "Z", "shear", query.shear, query.length, query.each, steps);
    let (uplift, for_uplift) = match query.each_uplift {
        Some(each) => {
            let (force, anchors) = along("U", "W", "uplift", query.uplift, query.length, each, steps);
            (force, Some(anchors))
        }
        None if query.uplift > 0.0 => {
            return Err(vec![fault(
                Code::MissingField,
                "each_uplift",
                "null",
                "what one anchor carries of the uplift",
                "the plate is lifted and nothing says what an anchor holds of that",
            )]);
        }
        None => (0.0, None),
    };
    let most = for_uplift.map_or(for_shear, |uplift| uplift.max(for_shear));
    if most > f64::from(u32::MAX) {
        return Err(vec![fault(
            Code::OutOfRange,
            "each",
            &query.each.to_string(),
            "an anchor that carries a share of the forces",
            "more anchors than can be counted",
        )]);
    }
    let spacing = (most > 0.0).then(|| {
        let formula = if for_uplift.is_some() {
            "12 * L / max(n_V, n_U)"
        } else {
            "12 * L / n_V"
        };
        let mut step = steps
            .step("s", "widest even spacing of the anchors", formula)
            .given("L", query.length, "ft")
            .from("n_V", for_shear, "");
        if let Some(anchors) = for_uplift {
            step = step.from("n_U", anchors, "");
        }
        step.rule(STATICS, Confidence::TwoSources)
            .gives(12.0 * query.length / most, "in")
    });
    let washer_ratio = query.nominal.map(|nominal| {
        steps
            .step(
                "r_w",
                "nominal unit shear over that above which plate washers are asked for",
                "v_n / v_w",
            )
            .given("v_n", nominal, "plf")
            .cell(
                "v_w",
                WASHER_SHEAR.value,
                "plf",
                WASHER_SHEAR.source,
                WASHER_SHEAR.confidence,
            )
            .rule(WASHER_SHEAR.source, WASHER_SHEAR.confidence)
            .gives(nominal / WASHER_SHEAR.value, "")
    });
    let sill = query.sill.map(|method| sill(query.shear, method, steps));
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a whole number from 0 up to u32::MAX"
    )]
    let count = most.ceil() as u32;
    Ok(PlateAnchors {
        shear,
        for_shear,
        uplift,
        for_uplift,
        count,
        spacing,
        washer_ratio,
        sill,
    })
}

/// What the sill has to be, with the steps to it.
fn sill(shear: f64, method: Method, steps: &mut Derivation) -> Sill {
    let rule = sill_limits(method);
    let (alone, doubled) = rule.value;
    let mut over = |symbol: &str, meaning: &str, limit: f64| {
        steps
            .step(symbol, meaning, "v / v_sill")
            .given("v", shear, "plf")
            .cell("v_sill", limit, "plf", rule.source, rule.confidence)
            .rule(rule.source, rule.confidence)
            .gives(shear / limit, "")
    };
    let ratio = over("r_s", "unit shear over the most of a 2x sill", alone);
    let doubled_ratio = over(
        "r_d",
        "unit shear over the most of a 2x sill with twice the bolts and plate washers",
        doubled,
    );
    let needs = if ratio <= 1.0 {
        SillNeeds::TwoInch
    } else if doubled_ratio <= 1.0 {
        SillNeeds::ThreeInchOrTwiceTheBolts
    } else {
        SillNeeds::ThreeInch
    };
    Sill {
        ratio,
        doubled_ratio,
        needs,
    }
}

/// The steps to a force along the plate and to the anchors that it takes, both returned.
fn along(
    force: &str,
    each: &str,
    name: &str,
    unit: f64,
    length: f64,
    carries: f64,
    steps: &mut Derivation,
) -> (f64, f64) {
    let small = force.to_lowercase();
    let total = steps
        .step(
            force,
            &format!("{name} of the whole plate"),
            &format!("{small} * L"),
        )
        .given(&small, unit, "plf")
        .given("L", length, "ft")
        .rule(STATICS, Confidence::TwoSources)
        .gives(unit * length, "lb");
    let anchors = steps
        .step(
            &format!("n_{force}"),
            &format!("anchors that the {name} takes, to be rounded up"),
            &format!("{force} / {each}_anchor"),
        )
        .from(force, total, "lb")
        .given(&format!("{each}_anchor"), carries, "lb")
        .rule(STATICS, Confidence::TwoSources)
        .gives(total / carries, "");
    (total, anchors)
}
