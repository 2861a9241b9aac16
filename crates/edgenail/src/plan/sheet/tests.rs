use super::{cut_page, frame, wall};
use crate::drawing::legible::{
    dimensions_agree, fits_its_paper, marks_lie_in_their_parts, marks_lie_in_their_pieces, texts_are_apart,
    types_are_readable,
};
use crate::drawing::{Drawing, Form, Layer};
use crate::generate::house_json;
use crate::plan::{Plan, plan_json};
use proptest::prelude::*;

/// Every drawing of a plan keeps the laws of a legible drawing; how many walls there were.
fn all_legible(plan: &Plan) -> Result<usize, TestCaseError> {
    for planned in plan.walls() {
        let sheathing = wall(&plan.house, planned, plan.capacity()).unwrap();
        texts_are_apart(&sheathing)?;
        fits_its_paper(&sheathing)?;
        types_are_readable(&sheathing)?;
        dimensions_agree(&sheathing, plan.house.drawn_in.style())?;
        marks_lie_in_their_pieces(&sheathing, &planned.built.layout)?;
        let bare = frame(&plan.house, planned).unwrap();
        texts_are_apart(&bare)?;
        fits_its_paper(&bare)?;
        types_are_readable(&bare)?;
        dimensions_agree(&bare, plan.house.drawn_in.style())?;
    }
    let kerf = plan.house.walls[0].practice.kerf;
    let mut sheets = plan.cutting.sheets.as_slice();
    for page in 0..plan.cut_sheet_pages() {
        let drawing = cut_page(&plan.house, &plan.walls, &plan.cutting, page).unwrap();
        texts_are_apart(&drawing)?;
        fits_its_paper(&drawing)?;
        types_are_readable(&drawing)?;
        let (here, rest) = sheets.split_at(drawn_sheets(&drawing));
        marks_lie_in_their_parts(&drawing, here, &plan.cutting.blanks, kerf)?;
        sheets = rest;
    }
    prop_assert!(sheets.is_empty(), "{} sheets are on no page", sheets.len());
    prop_assert!(cut_page(&plan.house, &plan.walls, &plan.cutting, plan.cut_sheet_pages()).is_none());
    Ok(plan.walls().len())
}

fn drawn_sheets(drawing: &Drawing) -> usize {
    let whole = |mark: &&crate::drawing::Mark| {
        mark.layer == Layer::Sheet && matches!(mark.form, Form::Polygon { .. })
    };
    drawing.marks.iter().filter(whole).count()
}

/// A generated house; where its sheets are metric it is drawn in millimetres, every fourth of the others in feet.
fn written(seed: u64) -> String {
    let (house, mix) = house_json(seed);
    let style = match (mix.metric, seed % 4) {
        (true, _) => "millimetres",
        (false, 0) => "feet_inches",
        (false, _) => return house,
    };
    house.replacen('{', &format!("{{\"drawn_in\":\"{style}\","), 1)
}

#[test]
fn drawings_of_generated_houses_are_legible() {
    // The generator's least shares of each class leave enough of every one among a hundred.
    let mut seen = [0; 10];
    for seed in 0..100 {
        for (count, (_, has)) in seen.iter_mut().zip(house_json(seed).1.classes()) {
            *count += u32::from(has);
        }
    }
    assert!(seen.iter().all(|&count| count >= 10), "{seen:?}");
    let walls: usize = (0..100)
        .map(|seed| {
            let plan = plan_json(&written(seed)).unwrap();
            all_legible(&plan).unwrap_or_else(|fault| panic!("house {seed}: {fault}"))
        })
        .sum();
    assert!(walls >= 100);
}

#[test]
fn drawings_of_the_demo_house_are_legible() {
    let plan = plan_json(crate::demo::HOUSE_JSON).unwrap();
    assert_eq!(all_legible(&plan).unwrap_or_else(|fault| panic!("{fault}")), 8);
}
