//! Cutting against published instances.

use super::*;

/// One line of a table of numbers and words, by column.
fn table(text: &'static str) -> Vec<Vec<&'static str>> {
    text.lines()
        .skip(1)
        .map(|line| line.split(',').collect())
        .collect()
}

fn number(text: &str) -> i64 {
    text.parse().unwrap()
}

/// Instances of OR-Library (Christofides and Whitlock 1977, Beasley 1985) with their least numbers of sheets: no plan
/// takes fewer, no bound asks for more, every tree can be cut without a kerf.
#[test]
fn published_instances() {
    let items = table(include_str!(
        "../../../../../tests/reference/cutting/bpp_instances.csv"
    ));
    let optima = table(include_str!(
        "../../../../../tests/reference/cutting/optima_sheet_counts.csv"
    ));
    let mut seen = 0;
    for optimum in optima.iter().filter(|row| row[5] == "yes") {
        let (name, turns) = (optimum[0], optimum[4] == "yes");
        let own: Vec<_> = items.iter().filter(|row| row[0] == name).collect();
        let unit = Length::from_units;
        let stock = stock(vec![sheet(
            name,
            unit(number(optimum[2])),
            unit(number(optimum[3])),
            0,
        )]);
        let mut blanks = Vec::new();
        for row in own {
            for _ in 0..number(row[5]) {
                let order = u32::try_from(blanks.len()).unwrap();
                let size = (unit(number(row[3])), unit(number(row[4])));
                blanks.push(Blank {
                    may_turn: turns,
                    ..blank(order, size.0, size.1)
                });
            }
        }
        assert_eq!(
            blanks.len(),
            usize::try_from(number(optimum[1])).unwrap(),
            "{name}"
        );
        let plan = plan(&stock, Length::ZERO, &blanks);
        let sheets = i64::try_from(plan.sheets.len()).unwrap();
        let (lower, known) = (number(optimum[6]), number(optimum[7]));
        assert!(plan.uncut.is_empty());
        assert!(sheets >= lower, "{name}: {sheets} sheets, at least {lower}");
        assert!(
            i64::from(plan.bounds.dual) <= known,
            "{name}: bound {} over {known}",
            plan.bounds.dual
        );
        assert!(plan.bounds.area <= plan.bounds.dual);
        assert!(
            sheets <= known + 1,
            "{name} turning {turns}: {sheets} sheets, known {known}"
        );
        seen += 1;
    }
    assert_eq!(seen, 10);
}

/// Christofides and Whitlock's third instance without turning: the area asks for 16 sheets, dual feasible functions
/// for 23, which is the least number.
#[test]
fn dual_functions_prove_cgcut3() {
    let items = table(include_str!(
        "../../../../../tests/reference/cutting/bpp_instances.csv"
    ));
    let mut blanks = Vec::new();
    for row in items.iter().filter(|row| row[0] == "cgcut3") {
        for _ in 0..number(row[5]) {
            let order = u32::try_from(blanks.len()).unwrap();
            blanks.push(blank(
                order,
                Length::from_units(number(row[3])),
                Length::from_units(number(row[4])),
            ));
        }
    }
    let stock = stock(vec![sheet(
        "cgcut3",
        Length::from_units(40),
        Length::from_units(70),
        0,
    )]);
    let bounds = cut_by(&stock, &rules(Length::ZERO), &blanks).bounds;
    assert_eq!((bounds.area, bounds.dual), (16, 23));
}
