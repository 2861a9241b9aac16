//! A right plan spoiled in one way at a time: the check names what was spoiled.

mod cut_ground;

use cut_ground::{blank, inch, sheet};
use edgenail::Length;
use edgenail::cutting::{
    Blank, CutFault, CutNode, CutPlan, CutRules, Drop, PlanFault, Source, Uncut, WhyUncut, check, cut_by,
};
use edgenail::house::{Offcut, Sheet, Stock};

const KERF: Length = Length::sixteenths(2);

/// Three new sheets of which four are on hand, the off-cut and a drop are cut; the fifth blank is too large.
fn right() -> (CutPlan, Stock) {
    let other = Sheet {
        name: "other".into(),
        category: "15/32".into(),
        ..sheet(inch(48), inch(96))
    };
    let own = Sheet {
        on_hand: Some(4),
        ..sheet(inch(48), inch(96))
    };
    let stock = Stock {
        sheets: vec![own, other],
        nails: vec![],
        sticks: vec![],
        offcuts: vec![Offcut {
            sheet: "sheet".into(),
            width: inch(20),
            length: inch(50),
        }],
    };
    let holed = Blank {
        drops: vec![Drop {
            width: inch(30),
            length: inch(40),
        }],
        ..blank(0, 48, 96)
    };
    let blanks = [
        holed,
        blank(1, 20, 50),
        blank(2, 30, 40),
        blank(3, 48, 60),
        blank(4, 48, 96),
        blank(5, 50, 96),
    ];
    let rules = CutRules {
        kerf: KERF,
        offcut_width_least: inch(16),
        offcut_length_least: inch(24),
        effort_most: 1_000_000,
    };
    let plan = cut_by(&stock, &rules, &blanks);
    assert_eq!(check(&plan, &stock, KERF), Ok(()));
    assert_eq!(
        (plan.sheets.len(), plan.new_sheets(0), plan.leftovers.len()),
        (5, 3, 1)
    );
    (plan, stock)
}

/// The cut sheet that comes from such a source.
fn from(plan: &CutPlan, is: impl Fn(Source) -> bool) -> usize {
    plan.sheets
        .iter()
        .position(|cut| is(cut.source))
        .unwrap_or(usize::MAX)
}

fn is_offcut(source: Source) -> bool {
    matches!(source, Source::Offcut { .. })
}

fn is_drop(source: Source) -> bool {
    matches!(source, Source::Drop { .. })
}

fn spoiled(spoil: impl Fn(&mut CutPlan, &mut Stock)) -> Result<(), PlanFault> {
    let (mut plan, mut stock) = right();
    spoil(&mut plan, &mut stock);
    check(&plan, &stock, KERF)
}

fn number(index: usize) -> u32 {
    u32::try_from(index).unwrap_or(u32::MAX)
}

#[test]
fn a_source_is_what_it_says() {
    let (plan, _) = right();
    let (offcut, drop) = (from(&plan, is_offcut), from(&plan, is_drop));
    let source = |sheet: usize| Err(PlanFault::Source { sheet: number(sheet) });
    for of in [offcut, drop, 0] {
        assert_eq!(spoiled(|plan, _| plan.sheets[of].sheet = 1), source(of));
        assert_eq!(spoiled(|plan, _| plan.sheets[of].sheet = 2), source(of));
        assert_eq!(spoiled(|plan, _| plan.sheets[of].width += KERF), source(of));
        assert_eq!(spoiled(|plan, _| plan.sheets[of].length -= KERF), source(of));
    }
    assert_eq!(
        spoiled(|_, stock| stock.offcuts[0].sheet = "other".into()),
        source(offcut)
    );
    assert_eq!(spoiled(|_, stock| stock.offcuts.clear()), source(offcut));
    assert_eq!(spoiled(|plan, _| plan.blanks[0].drops.clear()), source(drop));
    let missing =
        |plan: &mut CutPlan, _: &mut Stock| plan.sheets[drop].source = Source::Drop { blank: 9, drop: 0 };
    assert_eq!(spoiled(missing), source(drop));
}

#[test]
fn a_part_that_there_is_one_of_is_cut_once() {
    let (plan, _) = right();
    for of in [from(&plan, is_offcut), from(&plan, is_drop)] {
        let again = spoiled(|plan, _| plan.sheets.push(plan.sheets[of].clone()));
        assert_eq!(again, Err(PlanFault::SourceTwice { sheet: 5 }));
    }
}

#[test]
fn sheets_on_hand_are_counted() {
    let on_hand = |most| spoiled(move |_, stock| stock.sheets[0].on_hand = most);
    assert_eq!(on_hand(Some(3)), Ok(()));
    assert_eq!(on_hand(None), Ok(()));
    assert_eq!(on_hand(Some(2)), Err(PlanFault::TooMany { sheet: 0 }));
}

#[test]
fn every_blank_is_cut_or_listed_once() {
    let uncut = |blank| Uncut {
        blank,
        why: WhyUncut::NoneLeft,
    };
    let not_once = |blank| Err(PlanFault::NotOnce { blank });
    assert_eq!(spoiled(|plan, _| plan.uncut.push(uncut(3))), not_once(3));
    assert_eq!(spoiled(|plan, _| plan.uncut.push(uncut(5))), not_once(5));
    assert_eq!(spoiled(|plan, _| plan.uncut.clear()), not_once(5));
    assert_eq!(spoiled(|plan, _| plan.blanks.push(blank(6, 9, 9))), not_once(6));
    let last = spoiled(|plan, _| {
        plan.sheets.pop();
    });
    assert!(matches!(last, Err(PlanFault::NotOnce { .. })), "{last:?}");
}

#[test]
fn a_blank_is_cut_from_its_material_and_in_time() {
    assert_eq!(
        spoiled(|plan, _| plan.blanks[3].sheet = 1),
        Err(PlanFault::Material { blank: 3 })
    );
    assert_eq!(
        spoiled(|plan, _| plan.blanks[3].sheet = 7),
        Err(PlanFault::Material { blank: 3 })
    );
    for early in [2, 3] {
        let hung = spoiled(|plan, _| plan.blanks[0].order = early);
        assert_eq!(hung, Err(PlanFault::TooEarly { blank: 2 }));
    }
    assert_eq!(spoiled(|plan, _| plan.blanks[0].order = 1), Ok(()));
}

#[test]
fn a_leftover_is_a_part_of_its_tree() {
    let leftover = |leftover| Err(PlanFault::Leftover { leftover });
    assert_eq!(spoiled(|plan, _| plan.leftovers[0].cut_sheet += 1), leftover(0));
    assert_eq!(spoiled(|plan, _| plan.leftovers[0].sheet = 1), leftover(0));
    assert_eq!(spoiled(|plan, _| plan.leftovers[0].width += KERF), leftover(0));
    assert_eq!(spoiled(|plan, _| plan.leftovers[0].length -= KERF), leftover(0));
    assert_eq!(
        spoiled(|plan, _| plan.leftovers.push(plan.leftovers[0].clone())),
        leftover(1)
    );
    assert_eq!(spoiled(|plan, _| plan.leftovers.clear()), leftover(0));
}

#[test]
fn a_tree_is_sawn() {
    let (plan, _) = right();
    let split = plan
        .sheets
        .iter()
        .position(|cut| matches!(cut.tree, CutNode::Split { .. }));
    let split = split.unwrap_or(usize::MAX);
    let spoil = |plan: &mut CutPlan, _: &mut Stock| {
        if let CutNode::Split { at, .. } = &mut plan.sheets[split].tree {
            *at = inch(1000);
        }
    };
    let fault = CutFault::CutOutside {
        at: inch(1000),
        size: inch(96),
    };
    assert_eq!(
        spoiled(spoil),
        Err(PlanFault::Tree {
            sheet: number(split),
            fault
        })
    );
}

/// What is wrong is said with its figures.
#[test]
fn faults_tell_their_figures() {
    let fault = CutFault::Turned { blank: 1234 };
    let (sheet, blank, leftover) = (4321, 4321, 4321);
    let tree = PlanFault::Tree { sheet, fault }.to_string();
    assert!(tree.contains(&fault.to_string()), "{tree}");
    for (fault, told) in [
        (PlanFault::Tree { sheet, fault }, "cut sheet 4321"),
        (PlanFault::Source { sheet }, "cut sheet 4321"),
        (PlanFault::SourceTwice { sheet }, "cut sheet 4321"),
        (PlanFault::TooMany { sheet }, "sheet 4321"),
        (PlanFault::NotOnce { blank }, "blank 4321"),
        (PlanFault::Material { blank }, "blank 4321"),
        (PlanFault::TooEarly { blank }, "blank 4321"),
        (PlanFault::Leftover { leftover }, "leftover 4321"),
    ] {
        assert!(fault.to_string().contains(told), "{fault}");
    }
}
