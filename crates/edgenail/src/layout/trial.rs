//! Plain walls for tests, made by hand: a house, and the members of one wall as its face shows them.

use crate::frame::{
    Axis, EndCondition, Frame, Member, MemberId, MemberKind, OpeningPlace, Origin, SectionPlace,
    SegmentPlace, StoreyPlace,
};
use crate::geometry::{Convex, Interval, Profile, Rect};
use crate::house::{
    Assembly, Bearing, BlockedEdges, Bottom, Coating, DatumChoice, End, EndStuds, Face, House, JobRates,
    Judgement, LayoutOrigin, Level, Method, Nail, NailTool, Objective, Opening, OpeningKind, Plate, Practice,
    RimSeam, RunningChoice, Section, Segment, Sheet, Species, StartChoice, Stick, Stock, Storey,
    StrengthAxis, Stud, Tolerances, Top, Wall,
};
use crate::length::Length;
use crate::{Amount, Decimal};

/// Inches and sixteenths.
pub(crate) fn inch(whole: i64, sixteenths: i64) -> Length {
    Length::inches(whole) + Length::sixteenths(sixteenths)
}

pub(crate) fn practice() -> Practice {
    Practice {
        running: RunningChoice::Either,
        starting_end: StartChoice::Left,
        datums: vec![DatumChoice::Flush],
        held_up: inch(0, 8),
        overhang: inch(1, 0),
        overhang_most: inch(1, 0),
        breaks: Vec::new(),
        blocked_edges: BlockedEdges::WideBays,
        clear_bay_most: inch(14, 8),
        stagger_least: inch(16, 0),
        gap: inch(0, 2),
        rim_gap: inch(0, 8),
        rim_seam: RimSeam::Seam,
        end_short: inch(0, 2),
        opening_cut_back: Length::ZERO,
        kerf: inch(0, 2),
        edge_distance_least: inch(0, 6),
        edge_distance_most: inch(0, 12),
        member_edge_least: inch(0, 4),
        free_edge_most: inch(2, 0),
        plate_cover_least: inch(0, 10),
        bare_top_plate: false,
        strip_least: inch(24, 0),
        strip_allowance: inch(0, 4),
        filler_least: inch(3, 0),
        corner_clear: inch(6, 0),
        gable_seam_clear: inch(16, 0),
        block_clearance: inch(0, 1),
        block_stick: None,
        blocks_flat: true,
        block_end_nails: 2,
        staggered_rows: false,
        assembly: Assembly {
            category: "7/16".into(),
            nail: None,
            treated_nail: None,
            edge_spacing: inch(6, 0),
            field_spacing: inch(12, 0),
        },
        treated_coatings: vec![Coating::HotDipped, Coating::Stainless],
        tolerances: Tolerances {
            opening_under: inch(0, 2),
            opening_over: inch(0, 4),
            diagonals: inch(0, 4),
            plumb: inch(0, 4),
            plumb_height: inch(96, 0),
            bow: inch(0, 4),
            layout: inch(0, 2),
        },
        line_pull_most: Length::feet(35),
        offcut_width_least: inch(16, 0),
        offcut_length_least: inch(24, 0),
        spare_percent: Decimal::ZERO,
        area_method_deducts: false,
        gun_loss_percent: Decimal::whole(5),
        hand_loss_percent: Decimal::whole(20),
        effort_most: 1_000_000,
        alternatives: 0,
    }
}

pub(crate) fn sheet(name: &str, width: Length, length: Length) -> Sheet {
    Sheet {
        name: name.into(),
        width,
        length,
        category: "7/16".into(),
        grade: "sheathing".into(),
        span_rating: "24/16".into(),
        strength_axis: StrengthAxis::Length,
        faces_alike: true,
        may_turn: true,
        gap: None,
        price: Amount::ZERO,
        on_hand: None,
        pounds_per_square_foot: Decimal::tenths(14),
        unit_count: 80,
    }
}

fn nail(name: &str, coating: Coating) -> Nail {
    Nail {
        name: name.into(),
        shank: Decimal::thousandths(131),
        head: Decimal::thousandths(281),
        length: inch(2, 8),
        coating,
        tool: NailTool::Gun,
        per_box: 2000,
        price: Amount::ZERO,
    }
}

fn rates() -> JobRates {
    let none = Amount::ZERO;
    JobRates {
        objective: Objective::Minutes,
        set_8: none,
        set_9: none,
        set_10: none,
        set_longer: none,
        set_small: none,
        nail_gun: none,
        nail_hand: none,
        cross_cut: none,
        rip: none,
        notch: none,
        rake_cut: none,
        opening: none,
        opening_per_foot: none,
        block_flat: none,
        block_on_edge: none,
        added_stud: none,
        chalk_line: none,
        fetch_offcut: none,
        labour: none,
        judgement: Judgement {
            seam_at_corner: none,
            seam_on_joint_per_4_ft: none,
            piece_under_24: none,
            piece_under_12: none,
            uneven_offset: none,
            unlike_length: none,
        },
    }
}

/// A wall of one storey, and what a test changes about it.
#[derive(Clone, Debug)]
pub(crate) struct Trial {
    pub(crate) length: Length,
    pub(crate) stud: Length,
    pub(crate) spacing: Length,
    pub(crate) top_plates: usize,
    pub(crate) sheets: Vec<Sheet>,
    pub(crate) openings: Vec<Rect>,
    pub(crate) segments: Vec<Segment>,
    pub(crate) treated: bool,
    pub(crate) practice: Practice,
}

impl Trial {
    /// A wall of studs so long under two top plates, with sheets of these true sizes.
    pub(crate) fn new(length: Length, stud: Length, spacing: Length, sheets: &[(Length, Length)]) -> Self {
        Self {
            length,
            stud,
            spacing,
            top_plates: 2,
            sheets: sheets
                .iter()
                .enumerate()
                .map(|(i, (w, l))| sheet(&format!("sheet {i}"), *w, *l))
                .collect(),
            openings: Vec::new(),
            segments: Vec::new(),
            treated: false,
            practice: practice(),
        }
    }

    pub(crate) fn segment(&mut self, from: Length, to: Length, edge: Length, field: Length) {
        self.segments.push(Segment {
            storey: "first".into(),
            from,
            to,
            mark: format!("SW{}", self.segments.len() + 1),
            method: Method::Segmented,
            category: None,
            nail: None,
            edge_spacing: edge,
            field_spacing: field,
            blocked: true,
            seam_member_width: None,
            end_posts: 1,
        });
    }

    pub(crate) fn top(&self) -> Length {
        let plates = i64::try_from(1 + self.top_plates).unwrap();
        self.stud + inch(1, 8) * plates
    }

    pub(crate) fn house(&self) -> House {
        let plate = |treated| Plate {
            thickness: inch(1, 8),
            treated,
        };
        let opening = |(index, rect): (usize, &Rect)| Opening {
            name: format!("opening {index}"),
            kind: OpeningKind::Window,
            left: rect.x0,
            sill: rect.y0,
            width: rect.width(),
            height: rect.height(),
            header: None,
            trimmers: 1,
            kings: 1,
            sills: 1,
        };
        let storey = Storey {
            name: "first".into(),
            bottom_plates: vec![plate(self.treated)],
            stud: Stud {
                width: inch(1, 8),
                depth: inch(3, 8),
                length: self.stud,
            },
            top_plates: vec![plate(false); self.top_plates],
            spacing: self.spacing,
            origin: LayoutOrigin {
                end: End::Left,
                offset: Length::ZERO,
            },
            end_studs: EndStuds { left: 1, right: 1 },
            species: Species {
                group: "DF-L".into(),
                specific_gravity: Decimal::hundredths(50),
            },
            block_rows: Vec::new(),
            openings: self.openings.iter().enumerate().map(opening).collect(),
            penetrations: Vec::new(),
            bare_zones: Vec::new(),
            straps: Vec::new(),
        };
        let wall = Wall {
            name: "north".into(),
            length: self.length,
            face: Face::Exterior,
            sections: vec![Section {
                from: Length::ZERO,
                to: self.length,
                base: Length::ZERO,
                bottom: Bottom {
                    bears: Bearing::Concrete,
                    reach: None,
                    above_grade: None,
                },
                stack: vec![Level::Storey(storey)],
                top: Top::Flat,
            }],
            segments: self.segments.clone(),
            measured: None,
            given_layout: None,
            practice: self.practice.clone(),
        };
        let stick = |name: &str, depth| Stick {
            name: name.into(),
            thickness: inch(1, 8),
            depth,
            length: inch(96, 0),
            price: Amount::ZERO,
        };
        House {
            name: "trial".into(),
            walls: vec![wall],
            corners: Vec::new(),
            stock: Stock {
                sheets: self.sheets.clone(),
                nails: vec![
                    nail("8d", Coating::Bright),
                    nail("8d galvanized", Coating::HotDipped),
                ],
                sticks: vec![stick("2x4", inch(3, 8)), stick("2x6", inch(5, 8))],
                offcuts: Vec::new(),
            },
            building_order: Vec::new(),
            rates: rates(),
        }
    }

    fn members(&self) -> Vec<Member> {
        let mut members = Members {
            treated: self.treated,
            list: Vec::new(),
        };
        let (end, two) = (self.length, inch(1, 8));
        members.add(
            MemberKind::BottomPlate,
            Axis::Horizontal,
            Rect::new(Length::ZERO, Length::ZERO, end, two),
        );
        for plate in 0..i64::try_from(self.top_plates).unwrap() {
            let y = two + self.stud + two * plate;
            members.add(
                MemberKind::TopPlate,
                Axis::Horizontal,
                Rect::new(Length::ZERO, y, end, y + two),
            );
        }
        let (from, to) = (two, two + self.stud);
        let mut plumb: Vec<(MemberKind, Rect)> = Vec::new();
        let stud = |kind, x0| (kind, Rect::new(x0, from, x0 + two, to));
        plumb.push(stud(MemberKind::EndStud, Length::ZERO));
        plumb.push(stud(MemberKind::EndStud, end - two));
        for hole in &self.openings {
            let head = Rect::new(hole.x0 - two, hole.y1, hole.x1 + two, hole.y1 + inch(5, 8));
            members.add(MemberKind::Header, Axis::Horizontal, head);
            members.add(
                MemberKind::Sill,
                Axis::Horizontal,
                Rect::new(hole.x0, hole.y0 - two, hole.x1, hole.y0),
            );
            plumb.push(stud(MemberKind::KingStud, hole.x0 - two * 2));
            plumb.push(stud(MemberKind::KingStud, hole.x1 + two));
            for x in [hole.x0 - two, hole.x1] {
                plumb.push((MemberKind::Trimmer, Rect::new(x, from, x + two, hole.y1)));
            }
        }
        let mut centre = self.spacing;
        while centre < end {
            let x0 = centre - two.half();
            let in_opening = self
                .openings
                .iter()
                .find(|hole| hole.x0 < x0 + two && x0 < hole.x1);
            let candidates = match in_opening {
                None => vec![stud(MemberKind::Stud, x0)],
                Some(hole) => vec![
                    (MemberKind::Cripple, Rect::new(x0, from, x0 + two, hole.y0 - two)),
                    (
                        MemberKind::Cripple,
                        Rect::new(x0, hole.y1 + inch(5, 8), x0 + two, to),
                    ),
                ],
            };
            for (kind, rect) in candidates {
                if plumb.iter().all(|(_, other)| !other.overlaps(&rect)) {
                    plumb.push((kind, rect));
                }
            }
            centre += self.spacing;
        }
        for (kind, rect) in plumb {
            members.add(kind, Axis::Vertical, rect);
        }
        members.list
    }

    pub(crate) fn frame(&self) -> Frame {
        let (top, two) = (self.top(), inch(1, 8));
        let x = Interval::new(Length::ZERO, self.length);
        let openings = self
            .openings
            .iter()
            .enumerate()
            .map(|(index, rect)| OpeningPlace {
                name: format!("opening {index}"),
                kind: OpeningKind::Window,
                rect: *rect,
                storey: 0,
            });
        let segments = (0u32..).zip(&self.segments).map(|(index, segment)| SegmentPlace {
            mark: segment.mark.clone(),
            method: segment.method,
            rect: Rect::new(segment.from, Length::ZERO, segment.to, top),
            storey: 0,
            segment: index,
        });
        Frame {
            wall: 0,
            lower: Profile::level(x, Length::ZERO).unwrap(),
            upper: Profile::level(x, top).unwrap(),
            sections: vec![SectionPlace {
                x,
                base: Length::ZERO,
                top,
                sheathing_top: top,
                bears: Bearing::Concrete,
                reach: None,
                gable: false,
            }],
            storeys: vec![StoreyPlace {
                name: "first".into(),
                section: 0,
                base: Length::ZERO,
                studs_from: two,
                studs_to: two + self.stud,
                top,
                topmost_from: top - two,
                stud_width: two,
                stud_depth: inch(3, 8),
                spacing: self.spacing,
                zero: Length::ZERO,
                from_right: false,
            }],
            bands: Vec::new(),
            openings: openings.collect(),
            penetrations: Vec::new(),
            bare_zones: Vec::new(),
            straps: Vec::new(),
            segments: segments.collect(),
            left: EndCondition::Free,
            right: EndCondition::Free,
            members: self.members(),
        }
    }
}

/// Members numbered as they are added.
pub(crate) struct Members {
    pub(crate) treated: bool,
    pub(crate) list: Vec<Member>,
}

impl Members {
    pub(crate) fn add(&mut self, kind: MemberKind, axis: Axis, rect: Rect) {
        let Some(face) = Convex::from_rect(rect) else {
            return;
        };
        self.list.push(Member {
            id: MemberId(u32::try_from(self.list.len()).unwrap()),
            kind,
            face,
            axis,
            nailable: true,
            setback: Length::ZERO,
            depth: inch(3, 8),
            treated: self.treated && kind == MemberKind::BottomPlate,
            specific_gravity: Decimal::hundredths(50),
            origin: Origin::Said,
            storey: Some(0),
            opening: None,
        });
    }
}

/// The frame with everything that was added to it, for tests of what follows.
pub(crate) fn backed(frame: &Frame, blocking: &crate::blocking::Blocking) -> Frame {
    let mut members = Members {
        treated: false,
        list: frame.members.clone(),
    };
    let before = members.list.len();
    for block in &blocking.blocks {
        members.add(MemberKind::Block, Axis::Horizontal, block.rect);
    }
    for stud in &blocking.studs {
        members.add(MemberKind::AddedStud, Axis::Vertical, stud.rect);
    }
    for wide in &blocking.widened {
        members.add(MemberKind::AddedStud, Axis::Vertical, wide.rect);
    }
    members
        .list
        .iter_mut()
        .skip(before)
        .for_each(|member| member.origin = Origin::Added);
    Frame {
        members: members.list,
        ..frame.clone()
    }
}
