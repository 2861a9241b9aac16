//! The one table of codes: number, name, meaning.

use serde::Serialize;

/// Makes the enum and its table out of the same rows.
macro_rules! codes {
    ($($number:literal $variant:ident $name:literal $meaning:literal;)*) => {
        /// Kinds of fault. A number never changes and is never used again for something else.
        ///
        /// 100 to 119 are faults of the document's shape, 120 to 139 of a value, 140 to 199 of values that do not
        /// go together; 200 says that there is no result, 900 that the library failed.
        ///
        /// ```
        /// use edgenail::issue::Code;
        /// assert_eq!(Code::OpeningsOverlap.name(), "openings_overlap");
        /// assert_eq!(Code::OpeningsOverlap.number(), 145);
        /// assert!(Code::ALL.iter().all(|code| !code.meaning().is_empty()));
        /// ```
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
        #[serde(rename_all = "snake_case")]
        #[non_exhaustive]
        pub enum Code {
            $(#[doc = $meaning] $variant = $number,)*
        }

        impl Code {
            /// Every code, in the order of their numbers.
            pub const ALL: &[Self] = &[$(Self::$variant,)*];

            /// The name that JSON, C and Python show.
            pub const fn name(self) -> &'static str {
                match self {
                    $(Self::$variant => $name,)*
                }
            }

            /// What is wrong.
            pub const fn meaning(self) -> &'static str {
                match self {
                    $(Self::$variant => $meaning,)*
                }
            }
        }
    };
}

codes! {
    100 Syntax "syntax" "The text is not JSON.";
    101 NotUtf8 "not_utf8" "The bytes are not UTF-8.";
    102 DuplicateKey "duplicate_key" "An object has a key twice; the first is read.";
    103 TooDeep "too_deep" "Lists and objects stand in each other more than 32 deep.";
    104 TooLarge "too_large" "The document is larger than 64 MiB or has more than 8 million values.";
    105 UnknownField "unknown_field" "The object has no such field.";
    106 MissingField "missing_field" "A field is missing that has no default.";
    107 WrongKind "wrong_kind" "A value of another kind stands there, such as a list in place of a length.";
    108 TooFewItems "too_few_items" "The list is too short.";
    109 TooManyItems "too_many_items" "The list is too long.";
    110 TooManyIssues "too_many_issues" "There are more faults than are listed.";
    111 NotAPointer "not_a_pointer" "The text is not a JSON pointer.";
    112 NothingThere "nothing_there" "A change names a place that the document does not have.";
    113 TestFailed "test_failed" "The document does not say what a change tests for.";
    114 StreetUnlike "street_unlike" "Houses that are cut together have unlike stocks or rules of cutting.";

    120 NotALength "not_a_length" "The text is not a length.";
    121 AmbiguousLength "ambiguous_length" "The text may be read as more than one length.";
    122 NotANumber "not_a_number" "The text is not a decimal number.";
    123 NotWhole "not_whole" "The number is not whole, or is finer than the field holds.";
    124 OutOfRange "out_of_range" "The value is smaller or larger than is allowed.";
    125 NotAChoice "not_a_choice" "The text is none of the field's choices.";
    126 EmptyText "empty_text" "The text is empty or blank.";
    127 TextTooLong "text_too_long" "The text has too many characters.";
    128 ControlCharacter "control_character" "The text has a control character, such as a line break.";

    140 DuplicateName "duplicate_name" "Two things have the same name.";
    141 UnknownName "unknown_name" "Nothing has this name.";
    142 NotInStock "not_in_stock" "Nothing in stock serves what is asked for.";
    143 LimitsReversed "limits_reversed" "The least is more than the most.";
    144 OpeningOffWall "opening_off_wall" "An opening reaches past its section.";
    145 OpeningsOverlap "openings_overlap" "Two openings lie over each other.";
    146 OpeningsTooClose "openings_too_close" "There is no room between two openings for the studs that both need.";
    147 OpeningAbovePlate "opening_above_plate" "An opening reaches above the studs.";
    148 HeaderAbovePlate "header_above_plate" "A header reaches above the studs.";
    149 HeaderOffOpening "header_off_opening" "A header does not span its opening, or hangs into it.";
    150 HeaderOffWall "header_off_wall" "A header reaches past its section.";
    151 SectionsLeaveGap "sections_leave_gap" "The sections do not fill the wall from its left end to its right.";
    152 SectionWithoutStorey "section_without_storey" "A section has no storey.";
    153 SegmentOffWall "segment_off_wall" "A segment reaches past the wall or past its storey.";
    154 SegmentsOverlap "segments_overlap" "Two segments of a storey lie over each other.";
    155 SegmentOverOpening "segment_over_opening" "An opening lies in a segment of full height.";
    156 FieldUnderEdge "field_under_edge" "Nails are asked for closer in the field than at the edges.";
    157 CornerOfOneWall "corner_of_one_wall" "A corner joins a wall to itself.";
    158 CornerEndTaken "corner_end_taken" "A wall end is already at another corner.";
    159 CornersDisagree "corners_disagree" "Two corners say different things of the same two wall ends.";
    160 RidgeOffSection "ridge_off_section" "The ridge stands outside its section.";
    161 RoofTooLow "roof_too_low" "The roof comes down below the bottom of the studs or of the truss.";
    162 PatchOffWall "patch_off_wall" "A penetration, bare zone or strap reaches past its section.";
    163 BlockRowOffStuds "block_row_off_studs" "A block row is not between the plates.";
    164 GivenOffWall "given_off_wall" "A given course, seam or panel reaches past the wall.";
    165 GivenOutOfOrder "given_out_of_order" "Given courses or seams do not follow each other.";
    166 OffcutTooLarge "offcut_too_large" "An off-cut is larger than its sheet.";
    167 MeasuredAlone "measured_alone" "A measurement is given without the one that gives it meaning.";
    168 BandTooThin "band_too_thin" "A floor band has no members.";
    169 BreakOffWall "break_off_wall" "A course break lies above or below the wall.";
    170 FacesDisagree "faces_disagree" "Two walls are not the two faces of one frame.";
    171 PlateJointOffSection "plate_joint_off_section" "A joint of the topmost plate is not between the ends of its section.";

    180 UnlistedValue "unlisted_value" "A table of a standard has no such row or column, or its cell was not collected.";
    181 NailNotListed "nail_not_listed" "No row of the table accepts the nail.";
    182 MemberTooNarrow "member_too_narrow" "A member that two panels share is too narrow for its nails.";
    183 Unverified "unverified" "The result would rest on values that were recalled and not checked against print.";
    184 NothingResists "nothing_resists" "No part of the wall may be counted to resist the load.";

    200 NoLayout "no_layout" "No layout satisfies the rules that may not be broken.";
    900 Internal "internal" "The library contradicted itself; a fault of the library, never of the input.";
}

impl Code {
    /// The number.
    pub const fn number(self) -> u16 {
        self as u16
    }

    /// The code of this name.
    ///
    /// ```
    /// use edgenail::issue::Code;
    /// assert_eq!(Code::named("missing_field"), Some(Code::MissingField));
    /// ```
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|code| code.name() == name)
    }
}

#[cfg(test)]
mod tests;
