//! Sums: the take-off and the price count what the stages made.

use edgenail::Plan;
use edgenail::evaluate::Evaluated;
use edgenail::house::{House, Nail, NailTool, Objective};
use edgenail::nailing::NailRow;
use edgenail::takeoff::{Part, TakeoffLine, TakeoffWhat};

/// The cost is the sum of its parts, counts what was built, and prices nails as money and minutes ask.
pub fn cost(house: &House, built: &Evaluated) {
    let quantity = |part: Part| {
        built
            .cost
            .parts
            .iter()
            .filter(|one| one.part == part)
            .map(|one| one.quantity)
            .sum::<i64>()
    };
    let sum: i64 = built
        .cost
        .parts
        .iter()
        .map(|part| part.amount.ten_thousandths())
        .sum();
    assert_eq!(
        sum,
        built.cost.total.ten_thousandths(),
        "the cost is not the sum of its parts"
    );
    let in_stock = |sheet: u32| house.stock.sheets.get(sheet as usize).is_some();
    let pieces = built
        .layout
        .pieces
        .iter()
        .filter(|piece| in_stock(piece.sheet))
        .count();
    let (blocks, rows) = (built.blocking.blocks.len(), &built.nailing.rows);
    let wall = house.walls.get(built.backed.wall as usize);
    let ends = blocks * wall.map_or(0, |wall| 2 * wall.practice.block_end_nails as usize);
    let driven = usize::try_from(built.nailing.count()).unwrap_or(usize::MAX);
    let set = [
        Part::Set8,
        Part::Set9,
        Part::Set10,
        Part::SetLonger,
        Part::SetSmall,
    ];
    for (parts, count) in [
        (&[Part::Sheets][..], pieces),
        (&set, pieces),
        (&[Part::FlatBlocks, Part::BlocksOnEdge], blocks),
        (
            &[Part::AddedStuds],
            built.blocking.studs.len() + built.blocking.widened.len(),
        ),
        (&[Part::GunNails, Part::HandNails], driven),
        (&[Part::Nails], driven + ends),
    ] {
        let sum = parts.iter().map(|part| quantity(*part)).sum::<i64>();
        assert_eq!(usize::try_from(sum), Ok(count), "{parts:?} in the cost");
    }
    let of_nails = [Part::Nails, Part::GunNails, Part::HandNails];
    let parts = built.cost.parts.iter().filter(|one| of_nails.contains(&one.part));
    let amount: i64 = parts.map(|one| one.amount.ten_thousandths()).sum();
    let plain = house
        .stock
        .nails
        .iter()
        .find(|nail| !nail.coating.resists_corrosion());
    let exact = rows.iter().map(|row| nails(house, row)).sum::<f64>()
        + plain.map_or(0.0, |nail| bought(house, nail, double(ends)));
    // Minutes and money of a row and of a block are each rounded to a ten-thousandth, and once more in the objective's
    // unit.
    let slack = 3.0 * double(rows.len() + blocks) + exact * 1e-9;
    assert!(
        (exact - double(amount)).abs() <= slack,
        "nails cost {amount}, by their own sum {exact}"
    );
}

/// What a row of nails costs, in ten-thousandths of the objective's unit.
fn nails(house: &House, row: &NailRow) -> f64 {
    let (Some(nail), rates) = (house.stock.nails.get(row.nail as usize), &house.rates) else {
        return 0.0;
    };
    let count = f64::from(row.count());
    let each = match nail.tool {
        NailTool::Gun => rates.nail_gun,
        NailTool::Hand => rates.nail_hand,
    };
    let minutes = count * double(each.ten_thousandths());
    let labour = double(rates.labour.ten_thousandths()) / 10_000.0;
    let worked = match rates.objective {
        Objective::Money => minutes * labour,
        Objective::Minutes => minutes,
    };
    worked + bought(house, nail, count)
}

/// What nails cost to buy, in ten-thousandths of the objective's unit.
fn bought(house: &House, nail: &Nail, count: f64) -> f64 {
    let money = count * double(nail.price.ten_thousandths()) / f64::from(nail.per_box);
    let labour = double(house.rates.labour.ten_thousandths()) / 10_000.0;
    match house.rates.objective {
        Objective::Money => money,
        Objective::Minutes if labour > 0.0 => money / labour,
        Objective::Minutes => 0.0,
    }
}

/// A count as a double; none of these is near 2^53.
fn double(count: impl TryInto<i64>) -> f64 {
    let count: i64 = count.try_into().unwrap_or(i64::MAX);
    #[expect(clippy::cast_precision_loss, reason = "far below 2^53")]
    let double = count as f64;
    double
}

/// The take-off of the house counts the cut plan's sheets, every nail driven and those in block ends, every block; what
/// the walls use sums to what the house uses.
pub fn takeoff(plan: &Plan) {
    let house = plan.house();
    let lines = &plan.takeoff().lines;
    let used = |what: TakeoffWhat, item: &str, of_house: bool| -> i64 {
        let of = |line: &&TakeoffLine| {
            let scope = if of_house {
                line.scope == "house"
            } else {
                line.scope.starts_with("wall: ")
            };
            line.what == what && line.item == item && scope
        };
        lines
            .iter()
            .filter(of)
            .map(|line| line.used.in_units_of(0).unwrap_or(i64::MIN))
            .sum()
    };
    let walls = || plan.walls().iter().map(|wall| &wall.built);
    for (index, sheet) in (0u32..).zip(&house.stock.sheets) {
        let new = i64::from(plan.cutting().new_sheets(index));
        assert_eq!(
            used(TakeoffWhat::Sheets, &sheet.name, true),
            new,
            "sheets {}",
            sheet.name
        );
        let pieces = walls()
            .flat_map(|wall| &wall.layout.pieces)
            .filter(|piece| piece.sheet == index);
        let pieces = i64::try_from(pieces.count());
        assert_eq!(
            Ok(used(TakeoffWhat::Pieces, &sheet.name, false)),
            pieces,
            "pieces of {}",
            sheet.name
        );
    }
    let blocks = walls().map(|wall| wall.blocking.blocks.len()).sum::<usize>();
    let ends = house
        .walls
        .first()
        .map_or(0, |wall| 2 * wall.practice.block_end_nails as usize)
        * blocks;
    let plain = house
        .stock
        .nails
        .iter()
        .position(|nail| !nail.coating.resists_corrosion());
    for (index, nail) in house.stock.nails.iter().enumerate() {
        let rows = walls()
            .flat_map(|wall| &wall.nailing.rows)
            .filter(|row| row.nail as usize == index);
        let driven: i64 = rows.map(|row| i64::from(row.count())).sum();
        let ends = if plain == Some(index) {
            i64::try_from(ends).unwrap_or(i64::MAX)
        } else {
            0
        };
        for of_house in [true, false] {
            assert_eq!(
                used(TakeoffWhat::Nails, &nail.name, of_house),
                driven + ends,
                "nails {}",
                nail.name
            );
        }
    }
    let count: i64 = house
        .stock
        .sticks
        .iter()
        .map(|stick| used(TakeoffWhat::Blocks, &stick.name, true))
        .sum();
    assert_eq!(usize::try_from(count), Ok(blocks), "blocks");
    paid(house, lines);
}

/// What is ordered is at least what is used and is what is paid for.
fn paid(house: &House, lines: &[TakeoffLine]) {
    for line in lines {
        let Some(ordered) = line.ordered.map(i64::from) else {
            continue;
        };
        let stock = &house.stock;
        let sheets = stock
            .sheets
            .iter()
            .map(|one| (TakeoffWhat::Sheets, &one.name, one.price, 1));
        let nails = stock
            .nails
            .iter()
            .map(|one| (TakeoffWhat::Nails, &one.name, one.price, one.per_box));
        let sticks = stock
            .sticks
            .iter()
            .map(|one| (TakeoffWhat::Sticks, &one.name, one.price, 1));
        let mut all = sheets.chain(nails).chain(sticks);
        let Some((.., price, each)) = all.find(|(what, name, ..)| *what == line.what && **name == line.item)
        else {
            panic!("not in stock: {line:?}")
        };
        let gets = ordered.saturating_mul(i64::from(each));
        assert!(
            line.used.in_units_of(0).is_some_and(|used| used <= gets),
            "{line:?}"
        );
        let paid = i128::from(price.ten_thousandths()) * i128::from(ordered);
        assert_eq!(i128::from(line.money.ten_thousandths()), paid, "{line:?}");
    }
}
