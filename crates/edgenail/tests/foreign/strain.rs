//! Houses worked in ways that their documents do not say.

use crate::ground::Numbers;
use edgenail::house::{
    BandLayer, BlockedEdges, Coating, Direction, House, Level, Method, Patch, Plate, Practice, Segment,
    Stick, Wall,
};
use edgenail::{Decimal, Length};

/// Other lumber and nails in stock, close nails, other edges that are backed, straps and vents, designer's segments.
pub fn strain(house: &mut House, numbers: &mut Numbers) {
    strain_stock(house, numbers);
    for wall in &mut house.walls {
        strain_practice(&mut wall.practice, numbers);
        strain_storeys(wall, numbers);
        strain_segments(wall, numbers);
    }
}

fn strain_stock(house: &mut House, numbers: &mut Numbers) {
    let mut one_of = |count: i64| numbers.below(count);
    let stick = |name: &str, thickness: i64, depth: i64, length: i64| Stick {
        name: name.into(),
        thickness: Length::sixteenths(thickness),
        depth: Length::sixteenths(depth),
        length: Length::inches(length),
        price: house.stock.sticks[0].price,
    };
    let sticks = [
        Vec::new(),
        vec![stick("short", 24, 56, 21)],
        vec![
            stick("2x4", 24, 56, 96),
            stick("4x4", 56, 56, 192),
            stick("2x6", 24, 88, 144),
        ],
        vec![
            stick("2x6", 24, 88, 60),
            stick("2x4", 24, 56, 92),
            stick("2x4 long", 24, 56, 240),
        ],
        vec![stick("3x4", 40, 56, 120)],
        // As long as a block between studs 16 in. apart that is cut 1/8 in. short, to the hair.
        vec![Stick {
            length: Length::sixteenths(14 * 16 + 6),
            ..stick("2x4", 24, 56, 0)
        }],
        // As long as a precut stud.
        vec![Stick {
            length: Length::sixteenths(92 * 16 + 10),
            ..stick("2x4", 24, 56, 0)
        }],
    ];
    let mut thick = house.stock.nails[0].clone();
    thick.name = "10d".into();
    thick.shank = Decimal::thousandths(148);
    // 3 in.; and so short that it goes exactly 1 1/2 in., or less, behind 7/16.
    thick.length = Length::sixteenths([48, 31, 28][one_of(3)]);
    house.stock.nails.push(thick.clone());
    thick.name = "10d hot-dipped".into();
    thick.coating = Coating::HotDipped;
    house.stock.nails.push(thick);
    if one_of(8) == 0 {
        house.stock.nails.retain(|nail| nail.coating == Coating::Bright);
    }
    house
        .stock
        .sticks
        .clone_from(&sticks[[0, 1, 2, 3, 4, 2, 3, 4, 5, 6][one_of(10)]]);
}

fn strain_practice(practice: &mut Practice, numbers: &mut Numbers) {
    let mut one_of = |count: i64| numbers.below(count);
    practice.assembly.edge_spacing = Length::inches([6, 4, 3, 2][one_of(4)]);
    practice.assembly.field_spacing = Length::inches([12, 6][one_of(2)]);
    practice
        .assembly
        .nail
        .clone_from(&[None, Some("10d".into())][one_of(2)]);
    practice.blocks_flat = one_of(2) == 0;
    practice
        .block_stick
        .clone_from(&[None, Some("2x6".into())][one_of(2)]);
    practice.block_clearance = Length::sixteenths([0, 1, 2][one_of(3)]);
    practice.staggered_rows = one_of(2) == 0;
    practice.blocked_edges = [
        BlockedEdges::All,
        BlockedEdges::WideBays,
        BlockedEdges::SegmentsOnly,
    ][one_of(3)];
}

fn strain_storeys(wall: &mut Wall, numbers: &mut Numbers) {
    let mut one_of = |count: i64| numbers.below(count);
    for level in wall.sections.iter_mut().flat_map(|section| &mut section.stack) {
        if let Level::FloorBand(band) = level {
            for layer in &mut band.layers {
                if let BandLayer::Members(members) = layer {
                    members.blocking_between |= members.direction == Direction::Across && one_of(3) == 0;
                }
            }
        }
        if let Level::Storey(storey) = level {
            storey.stud.depth = Length::sixteenths([56, 88][one_of(2)]);
            // A second bottom plate, untreated.
            let second = Plate {
                thickness: Length::sixteenths(24),
                treated: false,
            };
            storey.bottom_plates.extend((one_of(5) == 0).then_some(second));
            let left = Length::inches([1, 10, 31][one_of(3)]);
            let bottom = Length::inches([-4, 2, 40, 80][one_of(4)]);
            let patch = |name: &str, width: i64, height: i64| Patch {
                name: name.into(),
                left,
                bottom,
                width: Length::inches(width),
                height: Length::inches(height),
            };
            storey
                .straps
                .extend((one_of(3) == 0).then(|| patch("strap", 2, 24)));
            storey
                .penetrations
                .extend((one_of(3) == 0).then(|| patch("vent", 5, 5)));
        }
    }
}

fn strain_segments(wall: &mut Wall, numbers: &mut Numbers) {
    let mut one_of = |count: i64| numbers.below(count);
    let storeys = wall.sections.iter().flat_map(|section| &section.stack);
    let names: Vec<(String, Option<(Length, Length)>)> = storeys
        .filter_map(|level| match level {
            Level::Storey(storey) => {
                let opening = storey.openings.first();
                let opening = opening.map(|opening| (opening.left, opening.left + opening.width));
                Some((storey.name.clone(), opening))
            }
            Level::FloorBand(_) => None,
        })
        .collect();
    for (storey, opening) in names {
        // 16 3/4 in. is the right side of a stud 16 in. along.
        let mut from = Length::sixteenths([0, 112, 320, 268][one_of(4)]);
        let mut to = (from + Length::inches([30, 48, 70][one_of(3)])).min(wall.length);
        let method = [
            Method::Segmented,
            Method::Perforated,
            Method::Portal,
            Method::BracedPanel,
        ][one_of(4)];
        // A portal stands round its opening.
        if let Some((left, right)) = opening.filter(|_| method == Method::Portal) {
            from = (left - Length::inches(20)).max(Length::ZERO);
            to = (right + Length::inches(20)).min(wall.length);
        }
        wall.segments.extend((one_of(2) == 0).then_some(Segment {
            mark: format!("SW {storey}"),
            storey,
            from,
            to,
            method,
            category: None,
            nail:
                [None, Some("10d"), Some("8d hot-dipped"), Some("10d hot-dipped")][one_of(4)].map(Into::into),
            edge_spacing: Length::inches([6, 4, 3, 2][one_of(4)]),
            field_spacing: Length::inches([12, 6][one_of(2)]),
            blocked: one_of(2) == 0,
            seam_member_width: [None, Some(Length::sixteenths(40)), Some(Length::sixteenths(24))][one_of(3)],
            end_posts: [0, 2][one_of(2)],
            hold_down: None,
        }));
    }
}
