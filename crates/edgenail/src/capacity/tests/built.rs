//! Segments as they were built, of the demo house.

use crate::capacity::*;
use crate::decimal::Decimal;
use crate::length::Length;
use crate::published::Grade;

/// What the demo house's designer asks for is what is read off the nails: 7/16 sheathing, 8d at 4 in.
#[test]
fn segments_of_the_demo_house() {
    let plan = crate::plan_json(crate::demo::HOUSE_JSON).unwrap();
    let mut count = 0;
    for wall in plan.walls() {
        for segment in &wall.frame.segments {
            let asked = &plan.house().walls[wall.index as usize].segments[segment.segment as usize];
            let built = built_segment(plan.house(), &wall.built, segment)
                .unwrap_or_else(|issues| panic!("{}: {issues:#?}", segment.mark));
            let assembly = built.assembly;
            assert_eq!(assembly.edge_spacing, asked.edge_spacing, "{built:#?}");
            assert!(
                assembly.field_spacing <= asked.field_spacing.max(Length::inches(6)),
                "{built:#?}"
            );
            assert_eq!(assembly.blocked, asked.blocked, "{built:#?}");
            assert_eq!(
                (assembly.grade, assembly.thickness),
                (Grade::Sheathing, Length::sixteenths(7))
            );
            assert_eq!(assembly.nail.shank, Decimal::thousandths(131));
            count += 1;
        }
    }
    assert!(count >= 4, "{count}");
}

/// Every third nail out of one row, or one block: the wall is no longer what was asked for, or the edge is named.
#[test]
fn missing_nails_show() {
    let plan = crate::plan_json(crate::demo::HOUSE_JSON).unwrap();
    let wall = plan
        .walls()
        .iter()
        .find(|wall| !wall.frame.segments.is_empty())
        .unwrap();
    let segment = &wall.frame.segments[0];
    let whole = built_segment(plan.house(), &wall.built, segment).unwrap();
    let inside = |at: crate::geometry::Point| segment.rect.contains(at);
    let mut tried = 0;
    for index in 0..wall.built.nailing.rows.len() {
        let row = &wall.built.nailing.rows[index];
        let edge = row.zone != crate::nailing::Zone::Field && row.count() > 6;
        if !edge || !row.positions().all(inside) {
            continue;
        }
        let mut less = wall.built.clone();
        // The middle third of the row is missing.
        let (first, last) = (row.first, row.last);
        let third = (last - first) / 3;
        let mut rest = row.clone();
        less.nailing.rows[index].last = first + third;
        rest.first = last - third;
        less.nailing.rows.push(rest);
        match built_segment(plan.house(), &less, segment) {
            Ok(built) => assert!(
                built.widest_gap > whole.widest_gap
                    || built.assembly.field_spacing > whole.assembly.field_spacing,
                "{index}: {row:?}"
            ),
            Err(issues) => assert!(!issues[0].found.is_empty()),
        }
        tried += 1;
    }
    assert!(tried > 5, "{tried}");
}

/// The chosen assembly carries the demand for the least; every other says why not.
#[test]
fn the_cheapest_schedule_that_carries() {
    let (house, _) = crate::read_house(crate::demo::HOUSE_JSON.as_bytes()).unwrap();
    let of = |unit_shear: f64| {
        let query = ScheduleQuery {
            stock: house.stock.clone(),
            rates: house.rates,
            demand: Demand {
                unit_shear,
                height: Length::feet(8),
            },
            edition: Edition::Sdpws2015,
            load: LoadKind::Seismic,
            method: Method::Asd,
            high_seismic: false,
            framing: Framing {
                field_spacing: Length::inches(6),
                stud_spacing: Length::inches(24),
                across_studs: false,
                specific_gravity: Decimal::hundredths(50),
                seam_member: Length::sixteenths(40),
                wet_framing: false,
            },
            accept_unverified: false,
        };
        schedule(&query).unwrap()
    };
    let mut last = crate::Amount::ZERO;
    // 7/16 with 8d at 6, 4, 3 in. allows 240, 350, 450 plf (APA B360P Table 29).
    for (unit_shear, edge) in [(200.0, 6), (241.0, 4), (351.0, 3)] {
        let all = of(unit_shear);
        let chosen = &all[0];
        assert_eq!(chosen.assembly.edge_spacing, Length::inches(edge));
        assert!(chosen.why_not.is_empty() && chosen.cost > last);
        last = chosen.cost;
        assert!(all[1..].iter().all(|other| !other.why_not.is_empty()));
        let carries = |candidate: &&Candidate| candidate.ratio.is_some_and(|ratio| ratio <= 1.0);
        assert!(all.iter().filter(carries).all(|other| other.cost >= chosen.cost));
    }
    assert!(of(5_000.0).iter().all(|candidate| !candidate.why_not.is_empty()));
}
