//! The demands of a wall's practice and stock that a layout may fail at.

use super::lift::{Lift, Range, To, exact};
use crate::house::{
    BandLayer, BlockedEdges, DatumChoice, DrawnIn, House, Level, Practice, RimKind, RimSeam, RunningChoice,
    Sheet, Wall,
};
use crate::length::{Length, Style};
use crate::reading::read_house;
use crate::report::word;
use serde::Serialize;
use serde_json::Value;

/// Sheets are not made longer (common practice, no source).
const LONGEST_SHEET: Length = Length::feet(12);

/// A wall of which nothing is said but its length: its practice is the usual one.
const UNSAID: &str = r#"{"walls": [{"name": "wall", "length": "8'"}]}"#;

/// Every demand that could be lifted, in the order in which a remedy is best told.
pub(super) fn lifts(house: &House, index: usize) -> Vec<Lift> {
    let Some(wall) = house.walls.get(index) else {
        return Vec::new();
    };
    let asked = Asked {
        wall,
        index,
        style: house.drawn_in.in_text(),
        step: match house.drawn_in {
            DrawnIn::Millimetres => Length::mm(1),
            DrawnIn::Inches | DrawnIn::FeetInches => Length::sixteenths(2),
        },
    };
    let mut lifts = none_on_hand(house, wall);
    lifts.extend(asked.longer_sheet(house));
    lifts.extend(asked.choices());
    lifts.extend(asked.unblocked_segments());
    lifts.extend(asked.stagger());
    lifts.extend(asked.unusual());
    lifts
}

/// Sheets of the category that is asked for, by their place in stock.
fn sheets<'a>(house: &'a House, wall: &'a Wall) -> impl Iterator<Item = (usize, &'a Sheet)> {
    let category = wall.sheet_category();
    let sheets = house.stock.sheets.iter().enumerate();
    sheets.filter(move |(_, sheet)| sheet.category == category)
}

/// Sheets of which there are none.
fn none_on_hand(house: &House, wall: &Wall) -> Vec<Lift> {
    let none = sheets(house, wall).filter(|(_, sheet)| sheet.on_hand == Some(0));
    none.map(|(place, sheet)| Lift {
        path: format!("/stock/sheets/{place}/on_hand"),
        found: Value::from(0),
        demand: format!("no sheet {} is on hand", sheet.name),
        to: To::Value(Value::Null, format!("sheets {} to be bought", sheet.name)),
        set: Box::new(move |house, _| {
            if let Some(sheet) = house.stock.sheets.get_mut(place) {
                sheet.on_hand = None;
            }
        }),
    })
    .collect()
}

/// The wall whose demands are listed.
#[derive(Clone, Copy)]
struct Asked<'a> {
    wall: &'a Wall,
    index: usize,
    style: Style,
    /// Lengths are tried in these steps.
    step: Length,
}

impl Asked<'_> {
    /// A demand of practice whose place something else takes.
    fn practice(
        self,
        field: &str,
        found: &impl Serialize,
        wanted: Value,
        words: (String, &str),
        set: impl Fn(&mut Practice) + 'static,
    ) -> Lift {
        let index = self.index;
        Lift {
            path: format!("/walls/{index}/practice/{field}"),
            found: serde_json::to_value(found).unwrap_or_default(),
            demand: words.0,
            to: To::Value(wanted, words.1.to_owned()),
            set: Box::new(move |house, _| {
                if let Some(wall) = house.walls.get_mut(index) {
                    set(&mut wall.practice);
                }
            }),
        }
    }

    /// The longest sheet made longer.
    fn longer_sheet(self, house: &House) -> Option<Lift> {
        let on_hand = sheets(house, self.wall).filter(|(_, sheet)| sheet.on_hand != Some(0));
        let (place, sheet) = on_hand.max_by_key(|(place, sheet)| (sheet.length, usize::MAX - place))?;
        let length = exact(sheet.length, self.style);
        (sheet.length < LONGEST_SHEET).then(|| Lift {
            path: format!("/stock/sheets/{place}/length"),
            demand: format!("no sheet of {} is longer than {length}", sheet.category),
            found: Value::from(length),
            to: To::Length(Range {
                from: sheet.length,
                loosest: LONGEST_SHEET,
                step: self.step,
                words: (format!("sheets {} of ", sheet.name), ""),
                style: self.style,
            }),
            set: Box::new(move |house, to| {
                if let Some(sheet) = house.stock.sheets.get_mut(place) {
                    sheet.length = to;
                }
            }),
        })
    }

    /// Choices of practice that leave less to choose than others.
    fn choices(self) -> Vec<Lift> {
        let practice = &self.wall.practice;
        let mut lifts = Vec::new();
        if !practice.breaks.is_empty() {
            let levels: Vec<String> = practice.breaks.iter().map(|y| exact(*y, self.style)).collect();
            let demand = format!("courses break at {} alone", levels.join(", "));
            let words = (demand, "breaks left to the search");
            lifts.push(self.practice(
                "breaks",
                &levels,
                Value::from(Vec::<Value>::new()),
                words,
                |practice| {
                    practice.breaks.clear();
                },
            ));
        }
        if practice.running != RunningChoice::Either {
            let demand = format!("every sheet runs {}", word(&practice.running));
            let words = (demand, "sheets that run either way");
            lifts.push(
                self.practice("running", &practice.running, "either".into(), words, |practice| {
                    practice.running = RunningChoice::Either;
                }),
            );
        }
        if practice.blocked_edges != BlockedEdges::All {
            let demand = match practice.blocked_edges {
                BlockedEdges::WideBays => "level edges over narrow bays stay unblocked",
                BlockedEdges::SegmentsOnly | BlockedEdges::All => {
                    "level edges outside segments stay unblocked"
                }
            };
            let (found, words) = (&practice.blocked_edges, (demand.to_owned(), "every edge blocked"));
            lifts.push(
                self.practice("blocked_edges", found, "all".into(), words, |practice| {
                    practice.blocked_edges = BlockedEdges::All;
                }),
            );
        }
        let datums = [
            DatumChoice::Flush,
            DatumChoice::HeldUp,
            DatumChoice::Overhang,
            DatumChoice::HalfPlate,
            DatumChoice::TopFlush,
        ];
        if datums.iter().any(|datum| !practice.datums.contains(datum)) {
            let words = (
                "only these bottom lines may be used".to_owned(),
                "any bottom line",
            );
            let all = serde_json::to_value(datums).unwrap_or_default();
            lifts.push(
                self.practice("datums", &practice.datums, all, words, move |practice| {
                    practice.datums = datums.to_vec();
                }),
            );
        }
        lifts.extend(self.fixed_reach());
        if !practice.bare_top_plate {
            let words = ("the topmost plate is nailed".to_owned(), "a bare topmost plate");
            lifts.push(
                self.practice("bare_top_plate", &false, true.into(), words, |practice| {
                    practice.bare_top_plate = true;
                }),
            );
        }
        if practice.rim_seam == RimSeam::Seam && self.has_sawn_rim() {
            let words = (
                "sheathing is parted at a sawn rim".to_owned(),
                "sheets that run past sawn rims",
            );
            lifts.push(self.practice(
                "rim_seam",
                &practice.rim_seam,
                "run_past".into(),
                words,
                |practice| {
                    practice.rim_seam = RimSeam::RunPast;
                },
            ));
        }
        lifts
    }

    fn has_sawn_rim(self) -> bool {
        let levels = self.wall.sections.iter().flat_map(|section| &section.stack);
        let layers = levels.flat_map(|level| match level {
            Level::FloorBand(band) => band.layers.as_slice(),
            Level::Storey(_) => &[],
        });
        let mut rims = layers.filter_map(|layer| match layer {
            BandLayer::Members(members) => members.rim.as_ref(),
            _ => None,
        });
        rims.any(|rim| rim.kind == RimKind::Sawn)
    }

    /// How far the sheathing reaches below the lowest plate, where the user fixed it.
    fn fixed_reach(self) -> Option<Lift> {
        let sections = self.wall.sections.iter().enumerate();
        let fixed = sections.filter_map(|(place, section)| Some((place, section.bottom.reach?)));
        let (place, reach) = fixed.min_by_key(|(place, _)| *place)?;
        let (index, length) = (self.index, exact(reach, self.style));
        Some(Lift {
            path: format!("/walls/{index}/sections/{place}/bottom/reach"),
            demand: format!("the sheathing reaches {length} below the lowest plate"),
            found: Value::from(length),
            to: To::Value(Value::Null, "a bottom line left to the search".to_owned()),
            set: Box::new(move |house, _| {
                let section = house
                    .walls
                    .get_mut(index)
                    .and_then(|wall| wall.sections.get_mut(place));
                if let Some(section) = section {
                    section.bottom.reach = None;
                }
            }),
        })
    }

    /// Segments whose edges stay unblocked.
    fn unblocked_segments(self) -> Vec<Lift> {
        let segments = self.wall.segments.iter().enumerate();
        let unblocked = segments.filter(|(_, segment)| !segment.blocked);
        let index = self.index;
        unblocked
            .map(|(place, segment)| Lift {
                path: format!("/walls/{index}/segments/{place}/blocked"),
                found: Value::from(false),
                demand: format!("level edges of segment {} stay unblocked", segment.mark),
                to: To::Value(true.into(), format!("segment {} blocked", segment.mark)),
                set: Box::new(move |house, _| {
                    let segment = house
                        .walls
                        .get_mut(index)
                        .and_then(|wall| wall.segments.get_mut(place));
                    if let Some(segment) = segment {
                        segment.blocked = true;
                    }
                }),
            })
            .collect()
    }

    /// How far apart seams stand over an unblocked edge.
    fn stagger(self) -> Option<Lift> {
        let (from, index) = (self.wall.practice.stagger_least, self.index);
        let length = exact(from, self.style);
        (from > Length::ZERO).then(|| Lift {
            path: format!("/walls/{index}/practice/stagger_least"),
            demand: format!("seams stand {length} apart over an unblocked edge"),
            found: Value::from(length),
            to: To::Length(Range {
                from,
                loosest: Length::ZERO,
                step: Length::inches(1),
                words: ("seams ".to_owned(), " apart over an unblocked edge"),
                style: self.style,
            }),
            set: Box::new(move |house, to| {
                if let Some(wall) = house.walls.get_mut(index) {
                    wall.practice.stagger_least = to;
                }
            }),
        })
    }

    /// Limits of practice that are not the usual ones.
    fn unusual(self) -> Vec<Lift> {
        type Limit = (&'static str, fn(&mut Practice) -> &mut Length);
        const LIMITS: [Limit; 7] = [
            ("held_up", |practice| &mut practice.held_up),
            ("overhang", |practice| &mut practice.overhang),
            ("overhang_most", |practice| &mut practice.overhang_most),
            ("plate_cover_least", |practice| &mut practice.plate_cover_least),
            ("strip_least", |practice| &mut practice.strip_least),
            ("strip_allowance", |practice| &mut practice.strip_allowance),
            ("filler_least", |practice| &mut practice.filler_least),
        ];
        let Some(mut usual) = usual() else {
            return Vec::new();
        };
        let mut practice = self.wall.practice.clone();
        let mut lifts = Vec::new();
        for (field, limit) in LIMITS {
            let (here, there) = (*limit(&mut practice), *limit(&mut usual));
            if here != there {
                let (found, wanted) = (exact(here, self.style), exact(there, self.style));
                let words = (
                    format!("{field} is {found}"),
                    format!("the usual {field} of {wanted}"),
                );
                let words = (words.0, words.1.as_str());
                lifts.push(
                    self.practice(field, &found, wanted.clone().into(), words, move |practice| {
                        *limit(practice) = there;
                    }),
                );
            }
        }
        let (here, there) = (practice.effort_most, usual.effort_most);
        if here < there {
            let words = (
                format!("the search may take {here} steps"),
                "the usual limit of effort",
            );
            lifts.push(
                self.practice("effort_most", &here, there.into(), words, move |practice| {
                    practice.effort_most = there;
                }),
            );
        }
        lifts
    }
}

/// The practice of a user who says nothing of it.
fn usual() -> Option<Practice> {
    let (house, _) = read_house(UNSAID.as_bytes()).ok()?;
    Some(house.walls.into_iter().next()?.practice)
}
