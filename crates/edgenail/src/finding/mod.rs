//! What a check of a layout, a frame or a measurement finds.

use crate::length::Length;
use crate::wording::{Say, Wording};
use serde::Serialize;

/// How much a finding matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Severity {
    /// It must not be built so.
    Refuse,
    /// It is to be mended before sheathing goes on.
    Mend,
    /// It is worth a thought.
    Advise,
}

/// What was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
#[non_exhaustive]
pub enum FindingCode {
    /// A vertical seam has no member behind it.
    SeamOffFraming,
    /// An edge that wants backing has none.
    EdgeUnsupported,
    /// An edge stays unbacked, as practice allows.
    EdgeUnblocked,
    /// A piece is narrower than the least strip.
    Sliver,
    /// Seams of neighbouring courses stand too near each other over an unblocked edge.
    SeamsNotStaggered,
    /// A seam stands at the corner of an opening.
    SeamAtOpeningCorner,
    /// A panel is larger than its sheet.
    PanelTooLarge,
    /// A part of the wall is not covered.
    NotCovered,
    /// Two panels lie over each other.
    PanelsOverlap,
    /// Two panels stand closer than the gap.
    GapTooSmall,
    /// The topmost plate is not nailed.
    TopPlateBare,
    /// The bottom plate is not nailed.
    BottomPlateBare,
    /// A sheet reaches too far below its plate or bears on concrete.
    Overhang,
    /// A floor band has neither rim nor blocking by a segment.
    BandOpen,
    /// A seam has drifted off its stud's centre: trim a sheet or move a stud.
    SeamDrift,
    /// A nail had to move, or has no place.
    NailBlocked,
    /// No nail in stock may go into treated lumber.
    NoCorrosionResistantNail,
    /// A seam stands where members meet.
    SeamOnJoint,
    /// A member that two panels share is too narrow for the nailing.
    MemberTooNarrow,
    /// Field nails are spaced wider than the panel and studs allow.
    FieldSpacing,
    /// An opening was measured out of tolerance.
    OpeningOutOfTolerance,
    /// Diagonals differ.
    OutOfSquare,
    /// The wall leans.
    OutOfPlumb,
    /// A plate or stud line bows.
    Bow,
    /// The first layout stud is off its place.
    LayoutOff,
    /// The wall's length was found to differ.
    LengthOff,
    /// Wood too near to the ground.
    NearGrade,
    /// A leg is too narrow to count.
    LegTooNarrow,
    /// Required length is not checked.
    LengthNotChecked,
    /// An untreated plate stands on concrete.
    PlateNotTreated,
    /// Sheets of this kind should not run this way.
    RunningDirection,
    /// A joint of plates or members cannot be nailed as wanted.
    JointOnNailLine,
    /// Joints of both faces fall on one member that is too narrow for them.
    JointsOfBothFaces,
    /// The two faces of a wall are described with unlike framing.
    FacesUnlike,
    /// A seam stands near a butt joint of the topmost plate.
    SeamNearPlateJoint,
    /// A storey's line does not carry its demand.
    NotCarried,
    /// What resists a demand could not be told.
    CapacityUnknown,
    /// Fewer sheets are on hand than are cut.
    SheetsShort,
}

/// One finding: what, how much it matters, where, and what is allowed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Finding {
    /// What was found.
    pub code: FindingCode,
    /// How much it matters.
    pub severity: Severity,
    /// The wall's name.
    pub wall: String,
    /// The piece's mark, empty where there is none.
    pub piece: String,
    /// Where, in wall coordinates.
    pub at: Option<(Length, Length)>,
    /// What was found.
    pub found: Wording,
    /// What is allowed.
    pub allowed: Wording,
    /// A sentence for a person, with the remedy.
    pub message: Wording,
}

/// How many of these have to be mended before sheathing goes on. A nail that has no place is no fault of a layout.
pub fn to_mend(findings: &[Finding]) -> usize {
    let mend = findings
        .iter()
        .filter(|finding| finding.severity == Severity::Mend);
    mend.filter(|finding| finding.code != FindingCode::NailBlocked)
        .count()
}

impl Finding {
    /// A finding about a wall, without particulars.
    pub(crate) fn of(wall: &str, code: FindingCode, severity: Severity) -> Self {
        Self {
            code,
            severity,
            wall: wall.into(),
            piece: String::new(),
            at: None,
            found: Wording::default(),
            allowed: Wording::default(),
            message: Wording::default(),
        }
    }

    /// The piece that it is about.
    pub(crate) fn on(mut self, mark: &str) -> Self {
        self.piece = mark.into();
        self
    }

    /// Where it is.
    pub(crate) fn at(mut self, x: Length, y: Length) -> Self {
        self.at = Some((x, y));
        self
    }

    /// What was found against what is allowed.
    pub(crate) fn against(mut self, found: impl Say, allowed: impl Say) -> Self {
        self.found = Wording::of(&found);
        self.allowed = Wording::of(&allowed);
        self
    }

    /// The sentence for a person.
    pub(crate) fn says(mut self, message: impl Say) -> Self {
        self.message = Wording::of(&message);
        self
    }
}
