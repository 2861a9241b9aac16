//! Laws of frames on generated houses of every class: heights, what uprights stand on and carry, openings, and that no
//! two members take one place. Common practice, no source, except where said.

#![expect(clippy::expect_used, reason = "a house that cannot be read fails the test")]

use edgenail::frame::{Frame, Member, MemberKind, StoreyPlace, frame_wall};
use edgenail::generate::house_json;
use edgenail::geometry::{Convex, Interval, Point, Rect};
use edgenail::house::{House, Level, Opening, RakeBuild, Storey, Top, Wall};
use edgenail::{Length, read_house};
use serde_json::{Value, json};
use std::collections::BTreeMap;

const HOUSES: u64 = 220;
/// A law that has not seen so many houses of every class has not been tested.
const ENOUGH: usize = 20;

/// A frame with the words that it was made from.
struct Framed {
    house: House,
    frame: Frame,
}

impl Framed {
    /// The storeys where they are, with their words; `true` where the uppermost studs are cut to a rake.
    fn storeys(&self) -> impl Iterator<Item = (&StoreyPlace, &Storey, bool)> {
        let sections = &self.house.walls[self.frame.wall as usize].sections;
        let said = sections.iter().flat_map(|section| {
            let raked = matches!(section.top, Top::Rake(rake) if rake.build == RakeBuild::RakedPlates);
            let storeys = section.stack.iter().enumerate();
            storeys.filter_map(move |(index, level)| match level {
                Level::Storey(storey) => Some((storey, raked && index + 1 == section.stack.len())),
                Level::FloorBand(_) => None,
            })
        });
        let places = self.frame.storeys.iter().zip(said);
        places.map(|(place, (storey, raked))| (place, storey, raked))
    }

    fn members(&self, kinds: &[MemberKind], storey: usize) -> Vec<&Member> {
        let of = |member: &&Member| {
            member.storey.is_some_and(|at| at as usize == storey) && kinds.contains(&member.kind)
        };
        self.frame.members.iter().filter(of).collect()
    }
}

/// Looks at a law on every wall of many houses, half of them with a second bottom plate, and fails if a class of houses
/// was hardly seen.
fn on_every_class(mut law: impl FnMut(&str, &Framed)) {
    let mut seen: BTreeMap<&str, usize> = BTreeMap::new();
    for seed in 0..HOUSES {
        let (text, mix) = house_json(seed);
        let mut document: Value = serde_json::from_str(&text).expect("generated houses are JSON");
        if seed % 2 == 1 {
            for wall in document["walls"].as_array_mut().into_iter().flatten() {
                let plate = json!({"thickness": "1 1/2", "treated": true});
                wall["sections"][0]["stack"][0]["bottom_plates"] = json!([plate, plate]);
            }
        }
        let (house, _) = read_house(document.to_string().as_bytes()).expect("generated houses are read");
        for wall in 0..house.walls.len() {
            let frame = frame_wall(&house, wall).expect("the house has this wall");
            law(
                &format!("seed {seed}, wall {wall}"),
                &Framed {
                    house: house.clone(),
                    frame,
                },
            );
        }
        for (class, _) in mix.classes().into_iter().filter(|(_, has)| *has) {
            *seen.entry(class).or_default() += 1;
        }
    }
    assert!(
        seen.len() == 10 && seen.values().all(|count| *count >= ENOUGH),
        "{seen:?}"
    );
}

const FULL: [MemberKind; 4] = [
    MemberKind::Stud,
    MemberKind::EndStud,
    MemberKind::KingStud,
    MemberKind::PostStud,
];
const UPRIGHT: [MemberKind; 6] = [
    MemberKind::Stud,
    MemberKind::EndStud,
    MemberKind::KingStud,
    MemberKind::PostStud,
    MemberKind::Trimmer,
    MemberKind::Cripple,
];

/// Precut studs with three plates of 1 1/2 in. give walls of 97 1/8, 109 1/8 and 121 1/8 in. (common practice, no source;
/// arithmetic); each plate more adds its thickness.
#[test]
fn precut_studs_with_their_plates_give_the_usual_heights() {
    let eighths = |inches: i64, eighths: i64| Length::sixteenths(inches * 16 + eighths * 2);
    let usual = [
        (eighths(92, 5), eighths(97, 1)),
        (eighths(104, 5), eighths(109, 1)),
        (eighths(116, 5), eighths(121, 1)),
    ];
    let mut seen: BTreeMap<(Length, usize), usize> = BTreeMap::new();
    on_every_class(|what, framed| {
        for (index, (place, storey, raked)) in framed.storeys().enumerate() {
            let height = usual.iter().find(|(stud, _)| *stud == storey.stud.length);
            let (_, height) = height.expect("generated studs are precut");
            let plates = storey.bottom_plates.len() + storey.top_plates.len();
            let more = Length::sixteenths(24) * i64::try_from(plates - 3).expect("three plates or more");
            assert_eq!(place.top - place.base, *height + more, "{what}");
            if raked {
                continue;
            }
            let faces = framed.members(&[MemberKind::BottomPlate, MemberKind::TopPlate], index);
            let faces: Vec<Rect> = faces.iter().map(|member| member.face.bounds()).collect();
            let (low, high) = (
                faces.iter().map(|face| face.y0).min(),
                faces.iter().map(|face| face.y1).max(),
            );
            assert_eq!(
                high.zip(low).map(|(high, low)| high - low),
                Some(*height + more),
                "{what}"
            );
            *seen.entry((*height, plates)).or_default() += 1;
        }
    });
    assert!(
        seen.len() == 6 && seen.values().all(|count| *count >= 10),
        "{seen:?}"
    );
}

/// Some of these faces lie with this edge at this height over the whole stretch.
fn covered(x: Interval, y: Length, faces: &[Rect], edge: impl Fn(&Rect) -> Length) -> bool {
    let at = faces
        .iter()
        .filter(|face| edge(face) == y)
        .map(Rect::x_span)
        .collect();
    Interval::subtract(x, &Interval::union(at)).is_empty()
}

#[test]
fn every_upright_stands_on_wood_and_carries_wood() {
    let mut count = 0;
    on_every_class(|what, framed| {
        for (index, (place, _, raked)) in framed.storeys().enumerate() {
            let lying = [
                MemberKind::BottomPlate,
                MemberKind::TopPlate,
                MemberKind::Header,
                MemberKind::Sill,
            ];
            let lying: Vec<Rect> = framed
                .members(&lying, index)
                .iter()
                .map(|member| member.face.bounds())
                .collect();
            for member in framed.members(&UPRIGHT, index) {
                let face = member.face.bounds();
                if FULL.contains(&member.kind) {
                    assert_eq!(face.y0, place.studs_from, "{what}: {member:?}");
                    assert!(raked || face.y1 == place.studs_to, "{what}: {member:?}");
                }
                assert!(
                    covered(face.x_span(), face.y0, &lying, |face| face.y1),
                    "{what}: {member:?} stands on nothing"
                );
                let under_roof = raked
                    && face.y1 > place.studs_to - Length::feet(20)
                    && member.kind != MemberKind::Trimmer;
                let carries = covered(face.x_span(), face.y1, &lying, |face| face.y0);
                assert!(carries || under_roof, "{what}: {member:?} carries nothing");
                count += 1;
            }
        }
    });
    assert!(count > 5_000, "{count} uprights");
}

/// The interiors of two convex faces meet: no side of either has the other wholly beyond it.
fn interiors_meet(a: &Convex, b: &Convex) -> bool {
    let beyond = |of: &Convex, other: &Convex| {
        of.edges().any(|(from, to)| {
            let turn = |point: &Point| {
                let wide = |length: Length| i128::from(length.units());
                wide(to.x - from.x) * wide(point.y - from.y) - wide(to.y - from.y) * wide(point.x - from.x)
            };
            other.points().iter().all(|point| turn(point) <= 0)
        })
    };
    a.bounds().overlaps(&b.bounds()) && !beyond(a, b) && !beyond(b, a)
}

/// Heights of a wall's storeys, from below.
fn heights(wall: &Wall) -> Vec<Length> {
    let levels = wall.sections.iter().flat_map(|section| &section.stack);
    let storeys = levels.filter_map(|level| match level {
        Level::Storey(storey) => Some(storey),
        Level::FloorBand(_) => None,
    });
    let plates = |storey: &Storey| {
        let plates = storey.bottom_plates.iter().chain(&storey.top_plates);
        plates.map(|plate| plate.thickness).sum::<Length>()
    };
    storeys
        .map(|storey| plates(storey) + storey.stud.length)
        .collect()
}

/// Sloped sides are rounded to whole units, so that faces are looked at less four units all round.
#[test]
fn no_two_members_take_one_place() {
    on_every_class(|what, framed| {
        let neighbour = |member: &&Member| {
            matches!(
                member.kind,
                MemberKind::NeighbourStud | MemberKind::NeighbourPlate
            )
        };
        // A neighbour of another storey height stands in this wall's floor band: such a corner is not looked at.
        let storeys = framed.house.walls.iter().map(heights);
        let alike = storeys
            .collect::<Vec<_>>()
            .windows(2)
            .all(|pair| pair[0] == pair[1]);
        let members = framed
            .frame
            .members
            .iter()
            .filter(|member| alike || !neighbour(member));
        let faces: Vec<(&Member, Convex)> = members
            .filter_map(|member| Some((member, member.face.inset(Length::from_units(4))?)))
            .collect();
        assert!(faces.len() > framed.frame.members.len() / 2, "{what}");
        for (index, (one, face)) in faces.iter().enumerate() {
            let mut others = faces.iter().skip(index + 1);
            let meets = others.find(|(_, other)| interiors_meet(face, other));
            assert!(
                meets.is_none(),
                "{what}: {one:?} and {:?}",
                meets.map(|(other, _)| other)
            );
        }
    });
}

/// The stretch above a header or below a sill where layout has to go on, and what of an upright has to fill it.
fn cripples(
    framed: &Framed,
    storey: usize,
    opening: &Opening,
    stretch: Interval,
    raked: bool,
    what: &str,
) -> usize {
    let place = &framed.frame.storeys[storey];
    let span = framed.frame.lower.span();
    let half = place.stud_width.half();
    let x = Interval::new(opening.left, opening.left + opening.width);
    let uprights = framed.members(&UPRIGHT, storey);
    let mut count = 0;
    for mark in 0..(span.len().units() / place.spacing.units()) {
        let step = place.spacing * mark;
        let centre = if place.from_right {
            span.hi - step
        } else {
            span.lo + step
        };
        let face = Interval::new(centre - half, centre + half);
        // A trimmer or the end cripple beside the opening's edge takes the place of one that would stand in it.
        if !x.covers(face) || stretch.is_empty() {
            continue;
        }
        count += 1;
        let fills = uprights.iter().map(|member| member.face.bounds()).any(|other| {
            other.x_span() == face && other.y0 == stretch.lo && (raked || other.y1 == stretch.hi)
        });
        assert!(
            fills,
            "{what}: no cripple at {centre} over {stretch:?} of {}",
            opening.name
        );
    }
    count
}

#[test]
fn every_opening_has_kings_trimmers_header_sill_and_cripples_on_layout() {
    let (mut openings, mut on_layout) = (0, 0);
    on_every_class(|what, framed| {
        for (index, (place, storey, raked)) in framed.storeys().enumerate() {
            for opening in &storey.openings {
                openings += 1;
                let what = format!("{what}, {}", opening.name);
                let said = opening.header.expect("generated openings have headers");
                let bottom = place.base + opening.sill;
                let (left, right) = (opening.left, opening.left + opening.width);
                let named = |member: &&&Member| {
                    let of = member
                        .opening
                        .and_then(|at| framed.frame.openings.get(at as usize));
                    of.is_some_and(|of| of.name == opening.name)
                };
                let headers = framed.members(&[MemberKind::Header], index);
                let header = headers
                    .iter()
                    .find(named)
                    .expect("an opening has its header")
                    .face
                    .bounds();
                assert_eq!(header.y0, bottom + opening.height, "{what}");
                assert_eq!(header.height(), said.depth, "{what}");
                let trimmers = framed.members(&[MemberKind::Trimmer], index);
                let kings = framed.members(&[MemberKind::KingStud, MemberKind::EndStud], index);
                for side in [
                    Interval::new(left - place.stud_width, left),
                    Interval::new(right, right + place.stud_width),
                ] {
                    let beside = |member: &&Member| member.face.bounds().x_span() == side;
                    let trimmer = trimmers.iter().copied().find(|member| beside(member));
                    let trimmer = trimmer
                        .expect("an opening has a trimmer on each side")
                        .face
                        .bounds();
                    assert_eq!(
                        trimmer.y_span(),
                        Interval::new(place.studs_from, header.y0),
                        "{what}"
                    );
                    assert!(
                        header.x_span().covers(trimmer.x_span()),
                        "{what}: the header bears on its trimmers"
                    );
                    let outer = if side.hi == left {
                        side.shifted(-place.stud_width)
                    } else {
                        side.shifted(place.stud_width)
                    };
                    let king = |member: &&&Member| {
                        member
                            .face
                            .bounds()
                            .x_span()
                            .overlaps(outer.grown(Length::from_units(1)).unwrap_or(outer))
                    };
                    assert!(
                        kings.iter().any(|member| king(&member)),
                        "{what}: no king beside {side:?}"
                    );
                }
                let sills = framed.members(&[MemberKind::Sill], index);
                let sill = sills.iter().find(named).map(|sill| sill.face.bounds());
                let above = Interval::new(header.y1, place.studs_to.max(header.y1));
                on_layout += cripples(framed, index, opening, above, raked, &what);
                if let Some(sill) = sill {
                    assert_eq!((sill.x0, sill.x1, sill.y1), (left, right, bottom), "{what}");
                    let below = Interval::new(place.studs_from, sill.y0);
                    on_layout += cripples(framed, index, opening, below, false, &what);
                } else {
                    assert!(bottom <= place.studs_from, "{what}: no sill");
                }
            }
        }
    });
    assert!(
        openings > 300 && on_layout > 1_000,
        "{openings} openings, {on_layout} cripples on layout"
    );
}
