//! A tree of cuts, gone through as a saw would.

use super::{Blank, CutNode, CutSheet};
use crate::length::Length;
use serde::Serialize;
use std::fmt;

/// What lies in a part of a cut sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
pub enum Part {
    /// A blank.
    Blank {
        /// Its place in the plan's list.
        blank: u32,
        /// It lies with its sides exchanged.
        turned: bool,
    },
    /// A part that is kept.
    Offcut {
        /// Its place in the plan's list of leftovers.
        leftover: u32,
    },
    /// A part that is not kept.
    Waste,
}

/// A part of a cut sheet and where it lies, from the sheet's corner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
pub struct Placed {
    /// What it is.
    pub part: Part,
    /// Along the sheet's width.
    pub x: Length,
    /// Along the sheet's length.
    pub y: Length,
    /// Size along the sheet's width.
    pub width: Length,
    /// Size along the sheet's length.
    pub length: Length,
}

/// Why a tree cannot be cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CutFault {
    /// A cut does not lie within the part that it parts.
    CutOutside {
        /// Where it was to be.
        at: Length,
        /// Size of the part.
        size: Length,
    },
    /// A part has another size than the blank that it is said to be.
    WrongSize {
        /// The blank.
        blank: u32,
    },
    /// A blank is turned that may not be.
    Turned {
        /// The blank.
        blank: u32,
    },
    /// The list of blanks has no such place.
    NoSuchBlank {
        /// The place.
        blank: u32,
    },
    /// The saw took all of a part that something was to come from.
    NothingLeft,
}

impl fmt::Display for CutFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::CutOutside { at, size } => write!(f, "a cut at {at} does not lie within {size}"),
            Self::WrongSize { blank } => write!(f, "blank {blank} does not have the size of its part"),
            Self::Turned { blank } => write!(f, "blank {blank} is turned and may not be"),
            Self::NoSuchBlank { blank } => write!(f, "there is no blank {blank}"),
            Self::NothingLeft => write!(f, "the saw leaves nothing of a part that is wanted"),
        }
    }
}

impl std::error::Error for CutFault {}

/// Cuts a sheet as its tree says and gives the parts, in the order of the tree.
///
/// This is what makes a tree legal: every cut runs across the whole of one part and lies within it; it takes a kerf
/// from what lies beyond it; a blank comes out in its own size, turned only if it may be. Where less than a kerf
/// lies beyond a cut, the saw takes all of it.
///
/// # Errors
/// The first [`CutFault`] on the way.
///
/// ```
/// use edgenail::Length;
/// use edgenail::cutting::{CutNode, CutSheet, Part, Source, replay};
/// let sheet = CutSheet {
///     source: Source::Sheet { sheet: 0 },
///     sheet: 0,
///     width: Length::inches(48),
///     length: Length::inches(96),
///     tree: CutNode::Split {
///         across: true,
///         at: Length::inches(60),
///         first: Box::new(CutNode::Waste),
///         second: Box::new(CutNode::Offcut { leftover: 0 }),
///     },
/// };
/// let parts = replay(&sheet, &[], Length::sixteenths(2))?;
/// assert_eq!(parts[1].part, Part::Offcut { leftover: 0 });
/// assert_eq!(parts[1].length, Length::inches(36) - Length::sixteenths(2));
/// # Ok::<(), edgenail::cutting::CutFault>(())
/// ```
pub fn replay(sheet: &CutSheet, blanks: &[Blank], kerf: Length) -> Result<Vec<Placed>, CutFault> {
    let whole = Placed {
        part: Part::Waste,
        x: Length::ZERO,
        y: Length::ZERO,
        width: sheet.width,
        length: sheet.length,
    };
    let mut parts = Vec::new();
    // Depth first with a list of its own, so that a deep tree takes no deep stack.
    let mut open = vec![(&sheet.tree, whole)];
    while let Some((node, room)) = open.pop() {
        match node {
            CutNode::Split {
                across,
                at,
                first,
                second,
            } => {
                let (near, far) = split(room, *across, *at, kerf)?;
                open.push((second, far));
                open.push((first, near));
            }
            CutNode::Piece { blank, turned } => {
                lay(*blank, *turned, &room, blanks)?;
                parts.push(Placed {
                    part: Part::Blank {
                        blank: *blank,
                        turned: *turned,
                    },
                    ..room
                });
            }
            CutNode::Offcut { leftover } => {
                if is_empty(&room) {
                    return Err(CutFault::NothingLeft);
                }
                parts.push(Placed {
                    part: Part::Offcut { leftover: *leftover },
                    ..room
                });
            }
            CutNode::Waste if is_empty(&room) => {}
            CutNode::Waste => parts.push(room),
        }
    }
    Ok(parts)
}

fn is_empty(room: &Placed) -> bool {
    room.width <= Length::ZERO || room.length <= Length::ZERO
}

fn split(room: Placed, across: bool, at: Length, kerf: Length) -> Result<(Placed, Placed), CutFault> {
    let size = if across { room.length } else { room.width };
    if at <= Length::ZERO || at >= size {
        return Err(CutFault::CutOutside { at, size });
    }
    let beyond = (size - at - kerf).max(Length::ZERO);
    Ok(if across {
        (
            Placed { length: at, ..room },
            Placed {
                y: room.y + at + kerf,
                length: beyond,
                ..room
            },
        )
    } else {
        (
            Placed { width: at, ..room },
            Placed {
                x: room.x + at + kerf,
                width: beyond,
                ..room
            },
        )
    })
}

fn lay(index: u32, turned: bool, room: &Placed, blanks: &[Blank]) -> Result<(), CutFault> {
    let blank = blanks
        .get(index as usize)
        .ok_or(CutFault::NoSuchBlank { blank: index })?;
    if turned && !blank.may_turn {
        return Err(CutFault::Turned { blank: index });
    }
    let (width, length) = if turned {
        (blank.length, blank.width)
    } else {
        (blank.width, blank.length)
    };
    if (width, length) == (room.width, room.length) {
        Ok(())
    } else {
        Err(CutFault::WrongSize { blank: index })
    }
}
