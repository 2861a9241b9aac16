//! A house under its demand: loads come down, lines resist as they were built. Statics is own arithmetic; loads and
//! hold-downs are invented.

#![expect(clippy::unwrap_used, reason = "a test fails where something is missing")]
#![allow(missing_docs, reason = "a test")]

use edgenail::capacity::{Carrier, Resists, StoreyLine, formula::evaluate};
use edgenail::house::{Interface, LoadKind};
use edgenail::{Error, Plan, plan_json};

/// A wall of two storeys over a rim, 24 ft long, with a window in the middle of each storey.
fn house(segments: &str, demand: &str) -> String {
    format!(
        r#"{{"name": "trial", "stock": {{"nails": [
            {{"name": "8d", "shank": "0.131", "head": "0.281", "length": "2 1/2", "coating": "bright"}},
            {{"name": "8d galvanized", "shank": "0.131", "head": "0.281", "length": "2 1/2", "coating": "hot_dipped"}}]}},
        "walls": [{{"name": "long", "length": "24'", "sections": [{{
            "bottom": {{"bears": "concrete"}},
            "stack": [
                {{"kind": "storey", "name": "lower", "bottom_plates": [{{"thickness": "1 1/2", "treated": true}}],
                  "species": {{"specific_gravity": "0.5", "elasticity": 1600000}},
                  "openings": [{{"name": "w1", "kind": "window", "left": "10'", "sill": "36", "width": "48", "height": "48"}}]}},
                {{"kind": "floor_band", "name": "band", "layers": [
                    {{"kind": "members", "direction": "across", "member": "i_joist", "width": "2 1/2", "depth": "11 1/4",
                      "rim": {{"kind": "engineered", "thickness": "1 1/8"}}}},
                    {{"kind": "subfloor", "thickness": "3/4"}}]}},
                {{"kind": "storey", "name": "upper",
                  "species": {{"specific_gravity": "0.5", "elasticity": 1600000}},
                  "openings": [{{"name": "w2", "kind": "window", "left": "10'", "sill": "40", "width": "48", "height": "36"}}]}}]
        }}], "segments": [{segments}]}}],
        "demand": {{"edition": "2015", "high_seismic": false, "accept_unverified": true, {demand}}}}}"#
    )
}

fn segment(storey: &str, mark: &str, method: &str, from: &str, to: &str) -> String {
    format!(
        r#"{{"storey": "{storey}", "mark": "{mark}", "method": "{method}", "from": "{from}", "to": "{to}", "edge_spacing": "6",
            "field_spacing": "12", "hold_down": {{"name": "held", "capacity": 4000, "elongation": "1/8"}}}}"#
    )
}

/// Segments at both ends of both storeys.
fn ends(method: &str) -> String {
    let of = |storey, left, right| {
        let one = segment(storey, left, method, "0", "10'");
        let other = segment(storey, right, method, "14'", "24'");
        format!("{one}, {other}")
    };
    format!("{}, {}", of("upper", "A", "B"), of("lower", "C", "D"))
}

const WIND: &str = r#""method": "asd", "sharing": "reduced_strength", "loads": [
    {"kind": "wind", "level": "strength", "wall": "long", "storey": "upper", "amount": 2000},
    {"kind": "wind", "level": "asd", "wall": "long", "storey": "lower", "amount": 900}]"#;

fn plan(segments: &str, demand: &str) -> Plan {
    plan_json(&house(segments, demand)).unwrap()
}

fn line<'p>(plan: &'p Plan, storey: &str) -> &'p StoreyLine {
    plan.capacity().iter().find(|line| line.storey == storey).unwrap()
}

fn near(found: f64, expected: f64) {
    assert!(
        (found - expected).abs() < 1e-6 * expected.abs().max(1.0),
        "{found} {expected}"
    );
}

/// Every step gives its value when its formula is worked out from its text.
fn steps_hold(plan: &Plan) {
    assert!(!plan.capacity().is_empty());
    for step in plan.capacity().iter().flat_map(|line| &line.derivation.steps) {
        let again = evaluate(step).unwrap();
        assert!(
            (again - step.value).abs() <= 1e-9 * step.value.abs().max(1.0),
            "{step:#?} {again}"
        );
    }
}

/// 0.6 x 2,000 lb above; 900 lb at its own level is not converted; the lower storey carries both.
#[test]
fn forces_come_down() {
    let plan = plan(&ends("segmented"), WIND);
    let (upper, lower) = (line(&plan, "upper"), line(&plan, "lower"));
    near(upper.demand, 1200.0);
    near(lower.demand, 2100.0);
    assert_eq!(plan.capacity().len(), 2, "no earthquake was given");
    assert!(
        plan.capacity()
            .iter()
            .all(|line| line.load == LoadKind::Wind && line.faults.is_empty())
    );
    // Two segments of 10 ft, 97 1/8 in. high: 60 plf above, 105 below; posts of two studs, the rod 1 1/2 in. further in.
    let (height, arm) = (97.125 / 12.0, 10.0 - 6.0 / 12.0);
    let above = 60.0 * 10.0 * height / arm;
    near(upper.hold_down().unwrap(), above);
    // 1,200 of 2,100 lb come through a floor 12 in. deep.
    near(
        lower.hold_down().unwrap(),
        (105.0 * 10.0 * height + 60.0 * 10.0 * 1.0) / arm + above,
    );
    steps_hold(&plan);
}

/// 7/16 with 8d at 6 in. on studs at 16 in., 730 plf nominal wind by the thicker row (SDPWS 2015 Table 4.3A, its footnote
/// recalled): 365 plf on 20 ft.
#[test]
fn it_resists_as_it_was_built() {
    let plan = plan(&ends("segmented"), WIND);
    near(line(&plan, "upper").capacity().unwrap(), 365.0 * 20.0);
    near(line(&plan, "upper").ratio().unwrap(), 1200.0 / 7300.0);
    let Some(Resists::Line { found, .. }) = &line(&plan, "lower").resists else {
        panic!("a line by its segments");
    };
    assert!(found.drift.unwrap().three.total > 0.0);
}

#[test]
fn interfaces_say_what_carries_them() {
    let fasteners = r#", "fasteners": [{"wall": "long", "storey": "lower", "interface": "sill_to_concrete", "name": "bolts",
        "each": 1000, "spacing": "60"}]"#;
    let plan = plan(&ends("segmented"), &format!("{WIND}{fasteners}"));
    let of = |storey: &str| -> Vec<Interface> {
        line(&plan, storey)
            .interfaces
            .iter()
            .map(|at| at.interface)
            .collect()
    };
    assert_eq!(of("upper"), [Interface::RoofToPlate, Interface::PlateToRim]);
    assert_eq!(of("lower"), [Interface::RimToPlate, Interface::SillToConcrete]);
    let carrier = |storey: &str, index: usize| &line(&plan, storey).interfaces[index].carrier;
    assert_eq!(*carrier("upper", 0), Carrier::Nothing, "the designer has to say");
    // 2,100 lb on 24 ft against 1,000 lb every 5 ft.
    let Carrier::Fasteners {
        capacity_plf, ratio, ..
    } = carrier("lower", 1)
    else {
        panic!("bolts");
    };
    near(*capacity_plf, 200.0);
    near(*ratio, 87.5 / 200.0);
    assert!(
        matches!(carrier("lower", 0), Carrier::Sheathing { nails_above, nails_below, .. } if *nails_above > 0 && *nails_below > 0),
        "{:?}",
        carrier("lower", 0)
    );
}

/// One wall with a window half its height: the factor with true areas, by both published forms (SDPWS 2015 Eq. 4.3-5).
#[test]
fn a_perforated_wall_of_the_plan() {
    let plan = plan(&ends("perforated"), WIND);
    let (height, feet) = (97.125 / 12.0, 20.0);
    let factor = |opening: f64| height * 24.0 / (3.0 * 4.0 * opening + height * feet);
    near(
        line(&plan, "upper").capacity().unwrap(),
        365.0 * feet * factor(3.0),
    );
    near(
        line(&plan, "lower").capacity().unwrap(),
        365.0 * feet * factor(4.0),
    );
    near(
        line(&plan, "upper").plate().unwrap(),
        1200.0 / (factor(3.0) * feet),
    );
    near(
        line(&plan, "upper").hold_down().unwrap(),
        1200.0 * height / (factor(3.0) * feet),
    );
    steps_hold(&plan);
}

/// Free bodies around one window (common textbook method): V h / L at the ends; the storey above adds its own.
#[test]
fn a_strapped_wall_of_the_plan() {
    let strapped = |storey, mark| segment(storey, mark, "force_transfer", "0", "24'");
    let plan = plan(
        &format!("{}, {}", strapped("upper", "A"), strapped("lower", "B")),
        WIND,
    );
    let height = 97.125 / 12.0;
    let (upper, lower) = (line(&plan, "upper"), line(&plan, "lower"));
    assert!(upper.faults.is_empty(), "{:?}", upper.faults);
    near(upper.hold_down().unwrap(), 1200.0 * height / 24.0);
    near(
        lower.hold_down().unwrap(),
        (2100.0 * height + 1200.0 * 1.0) / 24.0 + 1200.0 * height / 24.0,
    );
    let Some(Resists::Transfer { forces, .. }) = &upper.resists else {
        panic!("strapped");
    };
    // Equilibrium at a cut through the window: what the ends pull is what the sheathing above and below carries.
    near(forces.above_and_below * (height - 3.0), 1200.0 * height / 24.0);
    steps_hold(&plan);
}

/// Dead load rights a wall: 0.6 of it under wind; 0.6 - 0.14 `S_DS` under earthquake (ASCE 7-16 2.4, recalled).
#[test]
fn dead_load_rights_what_its_combination_leaves() {
    let demand = |kind: &str| {
        format!(
            r#""method": "asd", "sharing": "reduced_strength", "spectral_acceleration": "1.0", "loads": [
            {{"kind": "{kind}", "level": "asd", "wall": "long", "storey": "upper", "amount": 1200}},
            {{"kind": "dead", "wall": "long", "storey": "upper", "amount": 100}}]"#
        )
    };
    let (height, arm): (f64, f64) = (97.125 / 12.0, 9.5);
    for (kind, left) in [("wind", 60.0), ("seismic", 46.0)] {
        let plan = plan(&ends("segmented"), &demand(kind));
        near(
            line(&plan, "upper").hold_down().unwrap(),
            (60.0 * 10.0 * height - left * 50.0) / arm,
        );
        steps_hold(&plan);
    }
}

/// What resists nothing is told: no segment, unlike methods, a braced panel whose length is not checked.
#[test]
fn what_is_not_known_is_a_finding() {
    let none = plan(&segment("upper", "A", "segmented", "0", "10'"), WIND);
    assert!(line(&none, "lower").resists.is_none());
    let told = |plan: &Plan, code: &str| {
        let findings = plan.findings().iter();
        let codes = findings.map(|finding| serde_json::to_string(&finding.code).unwrap());
        codes.filter(|found| found.contains(code)).count()
    };
    assert_eq!(told(&none, "capacity_unknown"), 1);
    let unlike = format!(
        "{}, {}",
        segment("upper", "A", "segmented", "0", "10'"),
        segment("upper", "B", "perforated", "14'", "24'")
    );
    assert_eq!(line(&plan(&unlike, WIND), "upper").faults.len(), 1);
    let braced = plan(&ends("braced_panel"), WIND);
    assert!(line(&braced, "upper").resists.is_none());
    assert!(line(&braced, "upper").notes[0].contains("required length is not checked"));
    // More than it carries.
    let heavy = WIND.replace("2000", "20000");
    assert!(told(&plan(&ends("segmented"), &heavy), "not_carried") >= 2);
}

/// Recalled values are refused until they are accepted; the refusal is the line's, and its numbers are gone.
#[test]
fn what_was_recalled_is_refused() {
    let text = house(&ends("segmented"), WIND)
        .replace(r#""accept_unverified": true"#, r#""accept_unverified": false"#);
    let plan = plan_json(&text).unwrap();
    for line in plan.capacity() {
        assert!(line.resists.is_none() && line.derivation.steps.is_empty());
        assert!(
            line.faults
                .iter()
                .any(|fault| fault.path.contains("accept_unverified")),
            "{:?}",
            line.faults
        );
    }
}

/// More load is never less: every ratio, tension and drift rises with each load.
#[test]
fn more_load_is_never_less() {
    let base = plan(&ends("segmented"), WIND);
    for (from, to) in [("2000", "2600"), ("900", "1300")] {
        let more = plan(&ends("segmented"), &WIND.replace(from, to));
        for (one, other) in base.capacity().iter().zip(more.capacity()) {
            assert!(other.ratio().unwrap() >= one.ratio().unwrap());
            assert!(other.hold_down().unwrap() >= one.hold_down().unwrap());
        }
        assert!(line(&more, "lower").ratio().unwrap() > line(&base, "lower").ratio().unwrap());
    }
}

#[test]
fn loads_that_belong_nowhere_are_named() {
    let paths = |demand: &str| -> Vec<String> {
        match plan_json(&house(&ends("segmented"), demand)) {
            Err(Error::Issues { issues }) => issues.into_iter().map(|issue| issue.path).collect(),
            _ => Vec::new(),
        }
    };
    let one = |load: &str| format!(r#""method": "lrfd", "sharing": "reduced_strength", "loads": [{load}]"#);
    let load = |kind: &str, level: &str, wall: &str, storey: &str, amount: &str| {
        one(&format!(
            r#"{{"kind": "{kind}", "level": {level}, "wall": "{wall}", "storey": "{storey}", "amount": {amount}}}"#
        ))
    };
    let strength = r#""strength""#;
    assert_eq!(
        paths(&load("wind", strength, "short", "upper", "1")),
        ["/demand/loads/0/wall"]
    );
    assert_eq!(
        paths(&load("wind", strength, "long", "attic", "1")),
        ["/demand/loads/0/storey"]
    );
    assert_eq!(
        paths(&load("wind", "null", "long", "upper", "1")),
        ["/demand/loads/0/level"]
    );
    assert_eq!(
        paths(&load("wind", r#""asd""#, "long", "upper", "1")),
        ["/demand/loads/0/level"]
    );
    assert_eq!(
        paths(&load("dead", strength, "long", "upper", "1")),
        ["/demand/loads/0/level"]
    );
    assert_eq!(
        paths(&load("wind", strength, "long", "upper", "-1")),
        ["/demand/loads/0/amount"]
    );
    let both = r#"{"kind": "seismic", "level": "strength", "wall": "long", "storey": "upper", "amount": 1},
        {"kind": "dead", "wall": "long", "storey": "upper", "amount": 1}"#;
    assert_eq!(paths(&one(both)), ["/demand/spectral_acceleration"]);
}

/// Three sheets and two nails on offer; prices are invented.
const STOCK: &str = r#""stock": {"sheets": [
    {"name": "thin", "width": "47 7/8", "length": "109 1/8", "category": "3/8", "price": "15"},
    {"name": "usual", "width": "47 7/8", "length": "109 1/8", "category": "7/16", "price": "19"},
    {"name": "thick", "width": "47 7/8", "length": "109 1/8", "category": "15/32", "price": "23"},
    {"name": "thin 8", "width": "47 7/8", "length": "95 7/8", "category": "3/8", "price": "13"},
    {"name": "usual 8", "width": "47 7/8", "length": "95 7/8", "category": "7/16", "price": "16"},
    {"name": "thick 8", "width": "47 7/8", "length": "95 7/8", "category": "15/32", "price": "20"}],
  "nails": ["#;

fn scheduled(load: u32) -> Plan {
    let demand = format!(
        r#""method": "asd", "sharing": "reduced_strength", "schedule": "cheapest", "loads": [
        {{"kind": "wind", "level": "asd", "wall": "long", "storey": "upper", "amount": {load}}},
        {{"kind": "seismic", "level": "asd", "wall": "long", "storey": "upper", "amount": 100}}]"#
    );
    let text = house(&ends("segmented"), &demand).replace(r#""stock": {"nails": ["#, STOCK);
    plan_json(&text).unwrap()
}

/// What is chosen is put into the segments before they are framed, and what was built then carries the demand; every other
/// one that carries it costs no less, and every loser says why it fails.
#[test]
fn the_cheapest_that_carries_the_demand_is_built() {
    let mut built = Vec::new();
    for load in [2_000, 8_000, 10_000] {
        let plan = scheduled(load);
        assert_eq!(plan.schedules().len(), 2);
        for schedule in plan.schedules() {
            let chosen = schedule.chosen().unwrap();
            assert!(chosen.ratio.unwrap() <= 1.0);
            for other in &schedule.candidates[1..] {
                assert!(!other.why_not.is_empty());
                assert!(
                    other.ratio.is_none_or(|ratio| ratio > 1.0)
                        || other.cost_per_foot >= chosen.cost_per_foot
                );
            }
            let wall = &plan.house().walls[0];
            for segment in wall
                .segments
                .iter()
                .filter(|segment| segment.storey == schedule.storey)
            {
                assert_eq!(segment.category.as_ref(), Some(&chosen.category));
                assert_eq!(segment.edge_spacing, chosen.edge_spacing);
            }
            for line in plan
                .capacity()
                .iter()
                .filter(|line| line.storey == schedule.storey)
            {
                assert!(line.faults.is_empty(), "{:?}", line.faults);
                assert!(line.ratio().unwrap() <= 1.0, "{load}: {:?}", line.ratio());
            }
            for step in &schedule.derivation.steps {
                assert!((evaluate(step).unwrap() - step.value).abs() <= 1e-9 * step.value.abs().max(1.0));
            }
            built.push((chosen.category.clone(), chosen.edge_spacing));
        }
        // Planned again, the plan's own house gives the same bytes.
        let again: serde_json::Value = serde_json::from_str(&plan.json()).unwrap();
        assert_eq!(
            plan_json(&again["house"].to_string()).unwrap().json(),
            plan.json()
        );
    }
    built.dedup();
    assert!(built.len() > 1, "more load asks for more: {built:?}");
}

/// More than anything in stock carries: the segments stay as they were given, and that is a finding.
#[test]
fn what_nothing_in_stock_carries_stays_as_given() {
    let plan = scheduled(60_000);
    assert!(
        plan.schedules()
            .iter()
            .all(|schedule| schedule.chosen().is_none())
    );
    let wall = &plan.house().walls[0];
    assert!(wall.segments.iter().all(|segment| segment.category.is_none()));
    assert!(plan.findings().iter().any(|finding| {
        finding
            .message
            .written(plan.house().drawn_in.style())
            .contains("no sheet category")
    }));
}
