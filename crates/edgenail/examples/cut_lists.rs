//! Cuts lists of pieces, one JSON document a line, and tells sheets, bound and time of each as a line of JSON.
//!
//! `cut_lists < lists.jsonl`, each such as
//! `{"sheet": [768, 1536], "kerf": 2, "turn": false, "pieces": [[382, 1536], [382, 1536]]}`; sizes in sixteenths of an inch,
//! along the sheet's width first. Only the cutting is timed, on one thread.

use edgenail::cutting::{Blank, CutPlan, CutRules, Proof, cut_by};
use edgenail::house::Stock;
use edgenail::{Amount, Length, read_house};
use serde_json::{Value, json};
use std::error::Error;
use std::io::{self, BufRead, Write};
use std::time::Instant;

/// A house for what cutting needs and a list does not say.
const HOUSE: &[u8] = br#"{"walls": [{"name": "any", "length": "8'"}], "stock": {"sheets": [
    {"name": "any", "width": "48", "length": "96", "category": "7/16", "price": "1"}]}}"#;

fn main() -> Result<(), Box<dyn Error>> {
    let mut out = io::stdout().lock();
    for line in io::stdin().lock().lines() {
        writeln!(out, "{}", told(&serde_json::from_str(&line?)?)?)?;
    }
    Ok(())
}

/// What the library makes of one list.
fn told(list: &Value) -> Result<Value, Box<dyn Error>> {
    let (mut house, _) = read_house(HOUSE).map_err(|issues| format!("{issues:?}"))?;
    let turn = list["turn"].as_bool().ok_or("`turn` is missing")?;
    let (width, length) = size(&list["sheet"])?;
    for sheet in &mut house.stock.sheets {
        (sheet.width, sheet.length, sheet.may_turn) = (width, length, turn);
    }
    let wall = house.walls.first().ok_or("no wall")?;
    let mut rules = CutRules::of(&wall.practice);
    rules.kerf = sixteenths(&list["kerf"])?;
    let pieces = list["pieces"].as_array().ok_or("`pieces` is no list")?;
    let blanks: Vec<Blank> = (0..)
        .zip(pieces)
        .map(|(order, piece)| {
            let (width, length) = size(piece)?;
            Ok(Blank {
                wall: 0,
                piece: order,
                order,
                sheet: 0,
                width,
                length,
                may_turn: turn,
                drops: Vec::new(),
            })
        })
        .collect::<Result<_, Box<dyn Error>>>()?;
    let stock: &Stock = &house.stock;
    let start = Instant::now();
    let plan = cut_by(stock, &rules, &blanks);
    let seconds = start.elapsed().as_secs_f64();
    let sheets = plan.uncut.is_empty().then_some(plan.sheets.len());
    Ok(
        json!({"sheets": sheets, "bound": sheets.map(|sheets| bound(&plan, sheets)),
        "proven": plan.proof == Proof::Proven, "seconds": seconds}),
    )
}

/// Sheets that every plan needs: every sheet has the price of one.
fn bound(plan: &CutPlan, sheets: usize) -> i64 {
    let gap = match plan.proof {
        Proof::Proven => Amount::ZERO,
        Proof::Gap { amount } | Proof::Stopped { gap: amount, .. } => amount,
    };
    let whole = Amount::whole(1).ten_thousandths();
    i64::try_from(sheets).unwrap_or(i64::MAX) - gap.ten_thousandths().div_euclid(whole)
}

fn size(pair: &Value) -> Result<(Length, Length), Box<dyn Error>> {
    Ok((sixteenths(&pair[0])?, sixteenths(&pair[1])?))
}

fn sixteenths(count: &Value) -> Result<Length, Box<dyn Error>> {
    let count = count
        .as_i64()
        .ok_or_else(|| format!("{count} is no whole number"))?;
    Ok(Length::sixteenths(count))
}
