//! The kinds of fault.

use serde::Serialize;

/// Kinds of fault, with numbers that never change: 1xx the text, 2xx a single field, 3xx fields that disagree.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
#[serde(rename_all = "snake_case")]
#[non_exhaustive]
pub enum Code {
    /// The text is not JSON.
    Syntax = 100,
    /// The bytes are not UTF-8.
    Encoding = 101,
    /// An object has a key twice.
    DuplicateKey = 102,
    /// Objects and lists lie too deep in each other.
    TooDeep = 103,
    /// The document is too long.
    DocumentTooLong = 104,
    /// There are more faults than are listed.
    MoreFaults = 105,
    /// A field that the object does not have.
    UnknownField = 200,
    /// A field without a default is absent.
    MissingField = 201,
    /// A value of another kind, such as a list for a text.
    WrongKind = 202,
    /// A text or number that is no length.
    NotALength = 203,
    /// A text or number that is not such a number.
    NotANumber = 204,
    /// A value below the least or above the most.
    OutOfRange = 205,
    /// A word that is not among the choices.
    UnknownChoice = 206,
    /// A text without characters or with too many.
    TextLength = 207,
    /// A list without entries or with too many.
    ListLength = 208,
    /// A name that was given before.
    DuplicateName = 300,
    /// A name that nothing has.
    UnknownName = 301,
    /// Openings, segments or patches that overlap.
    Overlap = 302,
    /// Something reaches past the wall, section or storey that it belongs to.
    OffTheWall = 303,
    /// Sections leave a gap or overlap.
    SectionsDoNotTile = 304,
    /// Corners that contradict each other or themselves.
    CornerContradiction = 305,
    /// Fields whose values cannot hold together.
    Contradiction = 306,
}

impl Code {
    /// Every kind of fault.
    pub const ALL: [Self; 22] = [
        Self::Syntax,
        Self::Encoding,
        Self::DuplicateKey,
        Self::TooDeep,
        Self::DocumentTooLong,
        Self::MoreFaults,
        Self::UnknownField,
        Self::MissingField,
        Self::WrongKind,
        Self::NotALength,
        Self::NotANumber,
        Self::OutOfRange,
        Self::UnknownChoice,
        Self::TextLength,
        Self::ListLength,
        Self::DuplicateName,
        Self::UnknownName,
        Self::Overlap,
        Self::OffTheWall,
        Self::SectionsDoNotTile,
        Self::CornerContradiction,
        Self::Contradiction,
    ];

    /// The number of this kind of fault, for languages without names.
    ///
    /// ```
    /// use edgenail::issue::Code;
    /// assert_eq!(Code::Syntax.number(), 100);
    /// ```
    pub const fn number(self) -> i32 {
        self as i32
    }
}
