//! The parts that a cost is made of.

use serde::Serialize;

/// What a part of a cost pays for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum PartKind {
    /// Something that is bought.
    Material,
    /// Work.
    Labour,
    /// Nothing: what a framer would rather not do.
    Judgement,
}

/// Defines the parts, each with its kind, what its quantity counts and its name.
macro_rules! parts {
    ($($(#[$meaning:meta])* $part:ident $kind:ident $counts:literal as $name:literal,)*) => {
        /// A part of a cost.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
        pub enum Part {
            $($(#[$meaning])* #[serde(rename = $name)] $part,)*
        }

        impl Part {
            /// All parts, in the order in which they are listed.
            pub const ALL: [Self; [$(Self::$part),*].len()] = [$(Self::$part),*];

            /// Its name in documents and tables.
            pub const fn name(self) -> &'static str {
                match self {
                    $(Self::$part => $name,)*
                }
            }

            /// What it pays for.
            pub const fn kind(self) -> PartKind {
                match self {
                    $(Self::$part => PartKind::$kind,)*
                }
            }

            /// Setting pieces, or what their place adds to it.
            pub fn is_setting(self) -> bool {
                (Self::Set8..=Self::High).contains(&self)
            }

            /// What its quantity counts.
            pub const fn counts(self) -> &'static str {
                match self {
                    $(Self::$part => $counts,)*
                }
            }
        }
    };
}

parts! {
    /// Sheets: of each piece, one of as many equal blanks as its sheet gives.
    Sheets Material "pieces" as "sheets",
    /// Setting pieces of a sheet up to 4 × 8 ft.
    Set8 Labour "pieces" as "set_8",
    /// Setting pieces of a sheet up to 4 × 9 ft.
    Set9 Labour "pieces" as "set_9",
    /// Setting pieces of a sheet up to 4 × 10 ft.
    Set10 Labour "pieces" as "set_10",
    /// Setting longer pieces.
    SetLonger Labour "pieces" as "set_longer",
    /// Setting small pieces.
    SetSmall Labour "pieces" as "set_small",
    /// What setting against a standing wall takes beyond the deck.
    Standing Labour "pieces" as "standing",
    /// What setting from a ladder takes beyond the deck.
    Ladder Labour "pieces" as "ladder",
    /// What setting in an upper storey takes beyond the deck.
    UpperStorey Labour "pieces" as "upper_storey",
    /// What setting high up takes beyond the deck.
    High Labour "pieces" as "high",
    /// Cuts across sheets.
    CrossCuts Labour "cuts" as "cross_cuts",
    /// Rips.
    Rips Labour "cuts" as "rips",
    /// Notches cut on the bench.
    Notches Labour "notches" as "notches",
    /// Cuts along rakes.
    RakeCuts Labour "cuts" as "rake_cuts",
    /// Openings cut in place, without their length.
    Openings Labour "openings" as "openings",
    /// Edges of openings cut in place; each piece's rounded up to whole inches in the quantity only.
    OpeningEdges Labour "inches" as "opening_edges",
    /// Sheathing and block nails.
    Nails Material "nails" as "nails",
    /// Nails driven with a gun.
    GunNails Labour "nails" as "gun_nails",
    /// Nails driven by hand.
    HandNails Labour "nails" as "hand_nails",
    /// Lumber for blocks, by its share of the stick.
    BlockLumber Material "blocks" as "block_lumber",
    /// Setting flat blocks, their end nails driven.
    FlatBlocks Labour "blocks" as "flat_blocks",
    /// Setting blocks on edge, their end nails driven.
    BlocksOnEdge Labour "blocks" as "blocks_on_edge",
    /// Lumber for added studs, by its share of the stick.
    StudLumber Material "studs" as "stud_lumber",
    /// Setting added studs and what widens members.
    AddedStuds Labour "studs" as "added_studs",
    /// Snapping chalk lines.
    ChalkLines Labour "pulls" as "chalk_lines",
    /// Fetching off-cuts and drops; known only when the whole house is cut.
    FetchedOffcuts Labour "off-cuts" as "fetched_offcuts",
    /// Seams at corners of openings.
    SeamsAtCorners Judgement "corners" as "seams_at_corners",
    /// Seams where members meet.
    SeamsOnJoints Judgement "stretches of 4 ft" as "seams_on_joints",
    /// Narrow pieces.
    NarrowPieces Judgement "pieces" as "narrow_pieces",
    /// Very narrow pieces.
    VeryNarrowPieces Judgement "pieces" as "very_narrow_pieces",
    /// Seams offset from the course below by other than half a sheet.
    UnevenOffsets Judgement "seams" as "uneven_offsets",
    /// Sheets of unlike length in one course.
    UnlikeLengths Judgement "sheets" as "unlike_lengths",
}
