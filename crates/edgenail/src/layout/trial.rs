//! Walls for tests: one wall of one storey, with what a test changes about it.

use crate::frame::{Frame, frame_wall};
use crate::geometry::Rect;
use crate::house::{
    Assembly, BandLayer, BandMembers, Bearing, BlockedEdges, Bottom, Coating, DatumChoice, Direction, End,
    EndStuds, Face, FloorBand, Header, House, JobRates, Judgement, LayoutOrigin, Level, Limits,
    MemberKindInBand, Method, Nail, NailTool, Objective, Opening, OpeningKind, PlaceFactors, Plate, Practice,
    Rim, RimKind, RimSeam, RunningChoice, Section, Segment, SheathingPlace, Sheet, Species, StartChoice,
    Stick, Stock, Storey, StrengthAxis, Stud, Tolerances, Top, Wall,
};
use crate::length::Length;
use crate::{Amount, Decimal};

/// Inches and sixteenths.
pub(crate) fn inch(whole: i64, sixteenths: i64) -> Length {
    Length::inches(whole) + Length::sixteenths(sixteenths)
}

fn stick(name: &str, depth: Length) -> Stick {
    Stick {
        name: name.into(),
        thickness: inch(1, 8),
        depth,
        length: inch(96, 0),
        price: Amount::ZERO,
    }
}

/// The limits of the table of fields.
fn limits() -> Limits {
    Limits {
        weak_upright_thickness: inch(0, 7),
        weak_upright_studs: inch(24, 0),
        few_plies_most: 3,
        few_plies_studs: inch(16, 0),
        field_close_thickness: inch(0, 7),
        field_close_studs: inch(24, 0),
        field_close_spacing: inch(6, 0),
        wide_member: inch(2, 8),
        wide_member_spacing: inch(2, 0),
        wide_member_deep_spacing: inch(3, 0),
        wide_member_shank: Decimal::thousandths(148),
        wide_member_penetration: inch(1, 8),
        both_faces_spacing: inch(6, 0),
        segment_slenderness_most: Decimal::tenths(35),
        plate_joint_clear: inch(24, 0),
        portal_seam_within: inch(24, 0),
        ground_clear: inch(6, 0),
        corner_lap_most: inch(24, 0),
        header_room_least: inch(3, 0),
        one_person_most: inch(98, 0),
    }
}

pub(crate) fn practice() -> Practice {
    Practice {
        running: RunningChoice::Either,
        starting_end: StartChoice::Left,
        sheathed: SheathingPlace::Deck,
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
        limits: limits(),
        line_pull_most: Length::feet(35),
        offcut_width_least: inch(16, 0),
        offcut_length_least: inch(24, 0),
        spare_percent: Decimal::ZERO,
        area_method_deducts: false,
        area_method_opening_least: Decimal::ZERO,
        gun_loss_percent: Decimal::whole(5),
        hand_loss_percent: Decimal::whole(20),
        effort_most: 1_000_000,
        cutting_effort_most: 1_000_000,
        exchanges_most: 0,
        stacks_most: 4,
        end_parts_most: 3,
        seam_off_wood_most: inch(0, 1),
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
        plies: None,
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
        small_under: Decimal::whole(16),
        length_allowance: inch(1, 2),
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
        places: PlaceFactors {
            standing: Decimal::ONE,
            ladder: Decimal::ONE,
            upper_storey: Decimal::ONE,
            high: Decimal::ONE,
            ladder_above: inch(108, 0),
            high_above: inch(120, 0),
        },
        judgement: Judgement {
            seam_at_corner: none,
            seam_on_joint_per_4_ft: none,
            narrow_piece: none,
            very_narrow_piece: none,
            narrow_under: inch(24, 0),
            very_narrow_under: inch(12, 0),
            uneven_offset: none,
            unlike_length: none,
        },
    }
}

/// A treated mudsill, joists of 11 1/4 in. across the wall at 16 in., a floor of 3/4 in.
fn band(rim: Option<RimKind>) -> FloorBand {
    let members = BandMembers {
        direction: Direction::Across,
        member: MemberKindInBand::SawnJoist,
        width: inch(1, 8),
        depth: inch(11, 4),
        chord: inch(1, 8),
        spacing: inch(16, 0),
        origin: LayoutOrigin {
            end: End::Left,
            offset: Length::ZERO,
        },
        rim: rim.map(|kind| Rim {
            kind,
            thickness: inch(1, 8),
        }),
        blocking_between: false,
    };
    FloorBand {
        name: "floor".into(),
        layers: vec![
            BandLayer::Plate(Plate {
                thickness: inch(1, 8),
                treated: true,
            }),
            BandLayer::Members(members),
            BandLayer::Subfloor {
                thickness: inch(0, 12),
            },
        ],
    }
}

/// What lies under the storey.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Under {
    Nothing,
    OpenBand,
    BandWithRim(RimKind),
}

impl Under {
    fn band(self) -> Option<FloorBand> {
        match self {
            Self::Nothing => None,
            Self::OpenBand => Some(band(None)),
            Self::BandWithRim(kind) => Some(band(Some(kind))),
        }
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
    /// Joists across the wall under the storey, with a rim or without.
    pub(crate) band: Under,
    pub(crate) roof: Top,
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
            band: Under::Nothing,
            roof: Top::Flat,
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
            hold_down: None,
        });
    }

    /// Underside of the storey's bottom plate.
    pub(crate) fn base(&self) -> Length {
        if self.band == Under::Nothing {
            Length::ZERO
        } else {
            inch(13, 8)
        }
    }

    /// Upper face of the uppermost plate of a flat wall.
    pub(crate) fn top(&self) -> Length {
        let plates = i64::try_from(1 + self.top_plates).unwrap();
        self.base() + self.stud + inch(1, 8) * plates
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
            header: Some(Header {
                from: rect.x0 - inch(1, 8),
                to: rect.x1 + inch(1, 8),
                plies: 2,
                depth: inch(5, 8),
                y: rect.y1,
                setback: Length::ZERO,
            }),
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
                elasticity: None,
            },
            block_rows: Vec::new(),
            plate_joints: Vec::new(),
            openings: self.openings.iter().enumerate().map(opening).collect(),
            penetrations: Vec::new(),
            bare_zones: Vec::new(),
            straps: Vec::new(),
        };
        let wall = Wall {
            name: "north".into(),
            length: self.length,
            face: Face::Exterior,
            other_face: None,
            sections: vec![Section {
                from: Length::ZERO,
                to: self.length,
                base: Length::ZERO,
                bottom: Bottom {
                    bears: Bearing::Concrete,
                    reach: None,
                    above_grade: None,
                },
                stack: self
                    .band
                    .band()
                    .into_iter()
                    .map(Level::FloorBand)
                    .chain([Level::Storey(storey)])
                    .collect(),
                top: self.roof,
            }],
            segments: self.segments.clone(),
            measured: None,
            given_layout: None,
            practice: self.practice.clone(),
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
            drawn_in: crate::house::DrawnIn::Inches,
            demand: None,
        }
    }

    pub(crate) fn frame(&self) -> Frame {
        frame_wall(&self.house(), 0).unwrap()
    }
}
