use super::{Options, choose};
use crate::amount::Amount;
use crate::cutting::{CutRules, blanks, cut_by};
use crate::evaluate::{Evaluated, evaluate};
use crate::generate::house_json;
use crate::house::House;
use crate::layout::Layout;
use crate::plan::{Plan, plan_json};
use crate::price::Part;
use crate::proof::Proof;

fn plan(seed: u64, exchanges: u64) -> Option<Plan> {
    let (text, _) = house_json(seed);
    let mut value: serde_json::Value = serde_json::from_str(&text).unwrap();
    value["practice"]["exchanges_most"] = exchanges.into();
    value["practice"]["effort_most"] = 5_000.into();
    plan_json(&value.to_string()).ok()
}

/// Every layout that a wall may have: the chosen one and its alternatives that are as good.
fn layouts(plan: &Plan) -> Vec<Vec<Evaluated>> {
    let of = |wall: &crate::plan::WallPlan| {
        let others = wall
            .alternatives
            .iter()
            .filter(|other| other.breaks.is_empty() && other.more_to_mend == 0);
        let others = others.map(|other| evaluate(plan.house(), &wall.frame, other.spec.clone()));
        std::iter::once(wall.built.clone()).chain(others).collect()
    };
    plan.walls().iter().map(of).collect()
}

/// What a choice of layouts costs with the sheets that a cut plan of its own buys, added up here.
fn cost(house: &House, choice: &[&Evaluated]) -> Option<Amount> {
    let layouts: Vec<(usize, &Layout)> = choice.iter().map(|built| &built.layout).enumerate().collect();
    let rules = CutRules::of(&house.walls[0].practice);
    let cutting = cut_by(&house.stock, &rules, &blanks(house, &layouts));
    let new = (0..).zip(&house.stock.sheets);
    let sheets: Amount = new
        .map(|(kind, sheet)| sheet.price.times(cutting.new_sheets(kind).into()).unwrap())
        .sum();
    let parts = choice.iter().flat_map(|built| &built.cost.parts);
    let work: Amount = parts
        .filter(|part| part.part != Part::Sheets)
        .map(|part| part.amount)
        .sum();
    cutting.uncut.is_empty().then_some(work + sheets)
}

/// All choices of one layout for each wall.
fn choices(layouts: &[Vec<Evaluated>]) -> Vec<Vec<&Evaluated>> {
    layouts.iter().fold(vec![Vec::new()], |before, own| {
        let with = |choice: Vec<_>| {
            own.iter().map(move |built| {
                let mut choice = choice.clone();
                choice.push(built);
                choice
            })
        };
        before.into_iter().flat_map(with).collect()
    })
}

/// Enumeration: no choice of layouts costs less than the bound; the chosen one never more than the first layouts, and
/// an exchange that is taken saves what it says.
#[test]
fn no_choice_of_layouts_costs_less_than_the_bound() {
    let (mut compared, mut exchanged) = (0, 0);
    for seed in 0..40 {
        let (Some(plan), Some(alone)) = (plan(seed, 24), plan(seed, 0)) else {
            continue;
        };
        let chosen: Vec<&Evaluated> = plan.walls().iter().map(|wall| &wall.built).collect();
        let joint = plan.cost();
        if let Some(cost) = cost(plan.house(), &chosen) {
            assert_eq!(joint.total, cost, "{seed}");
        }
        assert!(joint.total <= alone.cost().total, "{seed}");
        assert_eq!(
            joint.exchanged.is_empty(),
            plan.walls()
                .iter()
                .zip(alone.walls())
                .all(|(a, b)| a.built.spec == b.built.spec),
            "{seed}"
        );
        assert!(alone.cost().exchanged.is_empty() && alone.cost().tried == 0);
        exchanged += joint.exchanged.len();
        let layouts = layouts(&plan);
        for choice in choices(&layouts).iter().take(64) {
            if let Some(cost) = cost(plan.house(), choice) {
                assert!(
                    joint.bound <= cost,
                    "{seed}: {} is no bound of {cost}",
                    joint.bound
                );
                compared += 1;
            }
        }
    }
    assert!(compared > 100 && exchanged > 0, "{compared}, {exchanged}");
}

/// A wall with one layout leaves nothing to choose.
#[test]
fn what_leaves_no_choice_is_cut_as_it_is() {
    let plan = plan(0, 24).unwrap();
    let options: Vec<Options<'_>> = plan
        .walls()
        .iter()
        .map(|wall| Options {
            wall: wall.index as usize,
            layouts: vec![&wall.built],
            bound_by_area: plan.cost().total,
            proven: true,
        })
        .collect();
    let joint = choose(plan.house(), &plan.house().walls[0].practice, &options);
    assert_eq!((joint.cost.tried, joint.cost.exchanged.len()), (0, 0));
    assert_eq!(joint.cutting, *plan.cutting());
    // A bound that is as high as the cost proves it, unless a wall may have less to mend.
    assert_eq!(joint.cost.proof, Proof::Proven);
    let doubtful: Vec<Options<'_>> = options
        .iter()
        .map(|options| Options {
            proven: false,
            ..options.clone()
        })
        .collect();
    let joint = choose(plan.house(), &plan.house().walls[0].practice, &doubtful);
    assert_ne!(joint.cost.proof, Proof::Proven);
}
