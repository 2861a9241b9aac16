//! A sheet that is being cut.

use super::pack::place;
use super::{CutNode, Source};
use crate::length::Length;

/// A rectangle of a sheet that is being cut.
#[derive(Clone, Copy, Debug)]
pub(super) enum Node {
    Split {
        across: bool,
        at: Length,
        first: usize,
        second: usize,
    },
    Piece {
        blank: usize,
        turned: bool,
    },
    Free {
        width: Length,
        length: Length,
    },
}

/// A sheet that is being cut. Its first node is the whole of it.
#[derive(Clone, Debug)]
pub(super) struct Open {
    pub(super) source: Source,
    pub(super) sheet: usize,
    pub(super) width: Length,
    pub(super) length: Length,
    /// Only blanks of a later order may come from it.
    pub(super) born: Option<u32>,
    pub(super) nodes: Vec<Node>,
    /// The earliest order of a blank that comes from it; the largest number if none does.
    pub(super) first_order: u32,
}

impl Open {
    /// The tree of its cuts. `keep` gives a free part its place among the leftovers, if it is kept.
    pub(super) fn tree(&self, keep: &mut impl FnMut(Length, Length) -> Option<u32>) -> CutNode {
        self.tree_at(0, keep)
    }

    fn tree_at(&self, node: usize, keep: &mut impl FnMut(Length, Length) -> Option<u32>) -> CutNode {
        match self.nodes.get(node) {
            Some(Node::Split {
                across,
                at,
                first,
                second,
            }) => CutNode::Split {
                across: *across,
                at: *at,
                first: Box::new(self.tree_at(*first, keep)),
                second: Box::new(self.tree_at(*second, keep)),
            },
            Some(Node::Piece { blank, turned }) => CutNode::Piece {
                blank: place(*blank),
                turned: *turned,
            },
            Some(Node::Free { width, length }) => {
                keep(*width, *length).map_or(CutNode::Waste, |leftover| CutNode::Offcut { leftover })
            }
            None => CutNode::Waste,
        }
    }

    /// The nodes of its tree.
    pub(super) fn live(&self) -> Vec<Node> {
        let mut open = vec![0];
        let mut found = Vec::new();
        while let Some(node) = open.pop().and_then(|node| self.nodes.get(node)) {
            if let Node::Split { first, second, .. } = node {
                open.extend([second, first]);
            }
            found.push(*node);
        }
        found
    }

    /// How far blanks reach along its width and its length.
    pub(super) fn extent(&self, kerf: Length) -> (Length, Length) {
        self.reach(0, (self.width, self.length), kerf).unwrap_or_default()
    }

    /// As [`Open::extent`], within a node of this size; nothing where it holds no blank.
    fn reach(&self, node: usize, size: (Length, Length), kerf: Length) -> Option<(Length, Length)> {
        match *self.nodes.get(node)? {
            Node::Piece { .. } => Some(size),
            Node::Free { .. } => None,
            Node::Split {
                across,
                at,
                first,
                second,
            } => {
                let (near, beyond) = parted(size, across, at, kerf);
                let near = self.reach(first, near, kerf);
                let far = self.reach(second, beyond, kerf);
                let far = far.map(|(w, l)| {
                    if across {
                        (w, at + kerf + l)
                    } else {
                        (at + kerf + w, l)
                    }
                });
                match (near, far) {
                    (Some(a), Some(b)) => Some((a.0.max(b.0), a.1.max(b.1))),
                    (some, none) => some.or(none),
                }
            }
        }
    }

    /// Makes the sheet smaller, down to its extent at most; cuts beyond its new edge are left out.
    pub(super) fn refit(&mut self, width: Length, length: Length, kerf: Length) {
        (self.width, self.length) = (width, length);
        self.refit_at(0, (width, length), kerf);
    }

    fn refit_at(&mut self, node: usize, size: (Length, Length), kerf: Length) {
        let Some(found) = self.nodes.get(node).copied() else {
            return;
        };
        let becomes = match found {
            Node::Piece { .. } => found,
            Node::Free { .. } => Node::Free {
                width: size.0,
                length: size.1,
            },
            Node::Split {
                across,
                at,
                first,
                second,
            } => {
                if at >= if across { size.1 } else { size.0 } {
                    self.refit_at(first, size, kerf);
                    self.nodes.get(first).copied().unwrap_or(found)
                } else {
                    let (near, beyond) = parted(size, across, at, kerf);
                    self.refit_at(first, near, kerf);
                    self.refit_at(second, beyond, kerf);
                    found
                }
            }
        };
        if let Some(node) = self.nodes.get_mut(node) {
            *node = becomes;
        }
    }
}

/// The sizes of the two parts of a cut: across the length or along it.
fn parted(
    size: (Length, Length),
    across: bool,
    at: Length,
    kerf: Length,
) -> ((Length, Length), (Length, Length)) {
    let beyond = |whole: Length| (whole - at - kerf).max(Length::ZERO);
    if across {
        ((size.0, at), (size.0, beyond(size.1)))
    } else {
        ((at, size.1), (beyond(size.0), size.1))
    }
}
