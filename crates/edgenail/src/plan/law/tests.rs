use super::*;
use crate::Amount;
use crate::cutting::{blanks, cut};
use crate::evaluate::evaluate;
use crate::frame::frame_wall;
use crate::generate::house_json;
use crate::house::Objective;
use crate::layout::{BandSpec, LayoutSpec, Running};
use crate::length::Length;
use crate::nailing::Nailing;
use crate::search::search;
use crate::takeoff::{BuiltWall, Part, Takeoff, TakeoffWhat, takeoff};
use crate::{Decimal, read_house};
use proptest::prelude::*;
use proptest::test_runner::TestRunner;

/// Rates that divide into nothing evenly, so that every rounding shows.
fn awkward(house: &mut House, seed: i64, objective: Objective) {
    let odd = |amount: &mut Amount, step: i64| {
        *amount = Amount::from_ten_thousandths(amount.ten_thousandths() + (seed * step) % 997);
    };
    house.rates.objective = objective;
    odd(&mut house.rates.labour, 7);
    odd(&mut house.rates.nail_gun, 11);
    odd(&mut house.rates.cross_cut, 13);
    odd(&mut house.rates.set_8, 17);
    odd(&mut house.rates.opening_per_foot, 19);
    odd(&mut house.rates.judgement.uneven_offset, 23);
    for sheet in &mut house.stock.sheets {
        odd(&mut sheet.price, 29);
    }
    for nail in &mut house.stock.nails {
        odd(&mut nail.price, 31);
        nail.per_box = nail.per_box - 300 + u32::try_from(seed % 97).unwrap();
    }
    house.rates.places.standing = Decimal::hundredths(137);
    house.rates.places.upper_storey = Decimal::thousandths(1513);
}

/// Courses and seams anywhere: thrown steps from the left and from below, with sheets taken as they come.
fn thrown(frame: &Frame, house: &House, steps: &[i64]) -> LayoutSpec {
    let mut steps = steps.iter().copied().cycle();
    let mut step = || steps.next().unwrap_or(0);
    let lowest = frame.lower.points().iter().map(|point| point.y).min().unwrap();
    let highest = frame.upper.points().iter().map(|point| point.y).max().unwrap();
    let x = frame.lower.span();
    let sheets = i64::try_from(house.stock.sheets.len()).unwrap();
    let reach = Length::sixteenths(step() % 16 - 8);
    let mut levels = vec![lowest - reach];
    while levels.len() < 4 {
        let next = levels[levels.len() - 1] + Length::inches(24 + step() % 80);
        if next + Length::inches(12) >= highest {
            break;
        }
        levels.push(next);
    }
    levels.push(highest);
    let bands = levels.windows(2).map(|level| {
        let mut seams = Vec::new();
        let mut at = x.lo;
        loop {
            at += Length::sixteenths(16 * 10 + step() % 650);
            if at + Length::inches(4) >= x.hi {
                break;
            }
            seams.push(at);
        }
        let running = if step() % 2 == 0 {
            Running::Upright
        } else {
            Running::Flat
        };
        let sheets = (0..=seams.len()).map(|_| u32::try_from(step() % sheets).unwrap());
        BandSpec {
            y0: level[0],
            y1: level[1],
            running,
            sheets: sheets.collect(),
            seams,
        }
    });
    LayoutSpec::Bands {
        reach,
        bands: bands.collect(),
    }
}

/// The chosen layout with one seam moved to another stud of its course.
fn shifted(frame: &Frame, chosen: &LayoutSpec, steps: &[i64]) -> LayoutSpec {
    let mut spec = chosen.clone();
    if let LayoutSpec::Bands { bands, .. } = &mut spec {
        let at = |step: i64, count: usize| usize::try_from(step).unwrap() % count.max(1);
        let band = at(steps[0], bands.len());
        if let Some(band) = bands.get_mut(band)
            && !band.seams.is_empty()
        {
            let seam = at(steps[1], band.seams.len());
            let by = frame.storeys[0].spacing * [-2, -1, 1, 2][at(steps[2], 4)];
            let x = band.seams[seam] + by;
            let low = if seam == 0 {
                frame.lower.span().lo
            } else {
                band.seams[seam - 1]
            };
            let high = band.seams.get(seam + 1).copied().unwrap_or(frame.lower.span().hi);
            if low < x && x < high {
                band.seams[seam] = x;
            }
        }
    }
    spec
}

/// The take-off of a house of which only this wall is built.
fn alone(house: &House, frame: &Frame, built: &Evaluated) -> Takeoff {
    let wall = BuiltWall {
        wall: frame.wall,
        frame,
        layout: &built.layout,
        blocking: &built.blocking,
        nailing: &built.nailing,
    };
    let practice = &house.walls[frame.wall as usize].practice;
    let cutting = cut(
        &house.stock,
        practice,
        &blanks(house, &[(frame.wall as usize, &built.layout)]),
    );
    takeoff(house, &[wall], &cutting)
}

/// Counts that no kernel makes: nails one by one, pieces, wood.
fn counts_agree(name: &str, built: &Evaluated, read: &Takeoff) {
    let scope = format!("wall: {name}");
    let used = |wanted: &dyn Fn(&crate::takeoff::TakeoffLine) -> bool| -> i64 {
        let own = read
            .lines
            .iter()
            .filter(|line| line.scope == scope && wanted(line));
        own.map(|line| line.used.in_units_of(0).unwrap()).sum()
    };
    let part = |part: Part| used(&|line| line.part == Some(part));
    let nailing: &Nailing = &built.nailing;
    assert_eq!(
        part(Part::GunNails) + part(Part::HandNails),
        i64::try_from(nailing.nails().count()).unwrap()
    );
    let pieces = i64::try_from(built.layout.pieces.len()).unwrap();
    let setting = [
        Part::Set8,
        Part::Set9,
        Part::Set10,
        Part::SetLonger,
        Part::SetSmall,
    ];
    assert_eq!(setting.into_iter().map(part).sum::<i64>(), pieces);
    assert_eq!(used(&|line| line.what == TakeoffWhat::Pieces), pieces);
    let blocks = i64::try_from(built.blocking.blocks.len()).unwrap();
    assert_eq!(part(Part::FlatBlocks) + part(Part::BlocksOnEdge), blocks);
    let studs = i64::try_from(built.blocking.studs.len() + built.blocking.widened.len()).unwrap();
    assert_eq!(part(Part::AddedStuds), studs);
}

/// Of walls made from a number: the law on layouts thrown at them, on the chosen one with a seam moved, and on the
/// chosen one, under rates where every rounding shows, in both units.
#[test]
fn local_prices_add_up_to_what_the_take_off_reads() {
    let cases = ProptestConfig::default().cases.min(64);
    let mut runner = TestRunner::new(ProptestConfig {
        cases,
        ..ProptestConfig::default()
    });
    let input = (
        0u64..1_000_000,
        proptest::collection::vec(0i64..10_000, 48),
        any::<bool>(),
    );
    let seen = std::cell::Cell::new((0, 0));
    runner
        .run(&input, |(seed, steps, minutes)| {
            let (text, _) = house_json(seed);
            let (mut house, _) = read_house(text.as_bytes()).unwrap();
            let objective = if minutes {
                Objective::Minutes
            } else {
                Objective::Money
            };
            awkward(&mut house, steps[3], objective);
            let frame = frame_wall(&house, 0).unwrap();
            let name = house.walls[0].name.clone();
            let mut specs = vec![thrown(&frame, &house, &steps)];
            if let Ok(found) = search(&house, &frame) {
                specs.push(shifted(&frame, &found.chosen.spec, &steps));
                specs.push(found.chosen.spec);
            }
            for spec in specs {
                let built = evaluate(&house, &frame, spec);
                let read = alone(&house, &frame, &built);
                prop_assert!(
                    hold(&house, &name, &frame, &built, &read).is_ok(),
                    "{:?}",
                    hold(&house, &name, &frame, &built, &read)
                );
                counts_agree(&name, &built, &read);
                let (legal, all) = seen.get();
                seen.set((legal + usize::from(built.refusals().next().is_none()), all + 1));
            }
            Ok(())
        })
        .unwrap();
    let (legal, all) = seen.get();
    assert!(legal * 4 >= all, "{legal} of {all} layouts were legal");
}

/// A take-off that is one unit off is an error, not a panic.
#[test]
fn a_take_off_that_disagrees_is_an_internal_error() {
    let (house, _) = read_house(house_json(5).0.as_bytes()).unwrap();
    let frame = frame_wall(&house, 0).unwrap();
    let built = search(&house, &frame).unwrap().chosen;
    let mut read = alone(&house, &frame, &built);
    let name = &house.walls[0].name;
    assert_eq!(hold(&house, name, &frame, &built, &read), Ok(()));
    let line = read
        .lines
        .iter_mut()
        .find(|line| line.scope.starts_with("wall: "))
        .unwrap();
    line.charged += Amount::from_ten_thousandths(1);
    let found = hold(&house, name, &frame, &built, &read);
    assert!(matches!(found, Err(Error::Internal { .. })), "{found:?}");
    // A nail that only one piece's own edges ask for shows too.
    let mut built = built;
    built.nailing.rows.pop();
    let read = alone(&house, &frame, &built);
    assert!(hold(&house, name, &frame, &built, &read).is_err());
}
