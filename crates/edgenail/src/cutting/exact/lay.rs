//! From patterns to sheets with their cuts.

use super::columns::POINTS;
use super::dive::Chosen;
use super::part::{Made, Part};
use super::patterns::{Room, Wanted, patterns};
use super::problem::{Origin, Problem};
use crate::cutting::open::{Node, Open};
use crate::length::Length;
use std::cmp::Reverse;

/// Blanks for one origin: for each its place in the list, its order and its item.
type Load = Vec<(usize, u32, u16)>;

/// A node and its width and length.
type Spot = (usize, (Length, Length));

/// Gives every blank a place in a pattern; nothing if a drop would be cut before it is born.
///
/// The last pieces to be hung go to the drops that are born last, the first to sheets.
pub(super) fn loads(problem: &Problem, chosen: &Chosen) -> Option<Vec<(usize, Load)>> {
    let mut left = problem.blanks.clone();
    let mut by_birth: Vec<usize> = (0..chosen.len()).collect();
    by_birth.sort_by_key(|place| {
        Reverse(
            chosen
                .get(*place)
                .map(|(origin, _)| problem.origins[*origin].born),
        )
    });
    let mut loads: Vec<(usize, Load)> = chosen.iter().map(|(origin, _)| (*origin, Load::new())).collect();
    for place in by_birth {
        let (origin, items) = &chosen[place];
        let born = problem.origins[*origin].born;
        for item in items {
            let left = &mut left[usize::from(*item)];
            match born {
                Some(born) => {
                    if let Some((blank, order)) = left.pop_if(|(_, order)| *order > born) {
                        loads[place].1.push((blank, order, *item));
                    }
                }
                None if !left.is_empty() => {
                    let (blank, order) = left.remove(0);
                    loads[place].1.push((blank, order, *item));
                }
                None => {}
            }
        }
    }
    left.iter().all(Vec::is_empty).then_some(loads)
}

/// The plan without what its patterns have more than is asked for.
pub(super) fn cut(problem: &Problem, chosen: &Chosen) -> Option<Chosen> {
    let items = |(origin, load): (usize, Load)| {
        let mut items: Vec<u16> = load.iter().map(|(_, _, item)| *item).collect();
        items.sort_unstable();
        (origin, items.into_boxed_slice())
    };
    Some(loads(problem, chosen)?.into_iter().map(items).collect())
}

/// The sheet of an origin with the cuts that free its load.
pub(super) fn lay(problem: &Problem, origin: usize, load: &Load) -> Option<Open> {
    let origin = &problem.origins[origin];
    let mut most = vec![0; problem.items.len()];
    for (_, _, item) in load {
        most[usize::from(*item)] += 1;
    }
    let values = vec![1; problem.items.len()];
    let room = Room {
        size: origin.size,
        items: &problem.items,
        most: &most,
    };
    let all = i64::try_from(load.len()).ok()?;
    let mut work = u64::MAX;
    let outcome = patterns(&room, &values, Wanted::Best { above: all - 1 }, POINTS, &mut work);
    let root = *outcome.found.first()?;
    let mut laying = Laying {
        kerf: Length::from_units(problem.kerf),
        parts: &outcome.parts,
        load: load.clone(),
        open: open(origin, load, problem.kerf),
    };
    let whole = (laying.open.width, laying.open.length);
    laying.part(root, 0, whole);
    Some(laying.open)
}

fn open(origin: &Origin, load: &Load, kerf: i64) -> Open {
    let (width, length) = (
        Length::from_units(origin.size.0 - kerf),
        Length::from_units(origin.size.1 - kerf),
    );
    Open {
        source: origin.source,
        sheet: origin.sheet,
        width,
        length,
        born: origin.born,
        nodes: vec![Node::Free { width, length }],
        first_order: load.iter().map(|(_, order, _)| *order).min().unwrap_or(u32::MAX),
    }
}

struct Laying<'a> {
    kerf: Length,
    parts: &'a [Part],
    load: Load,
    open: Open,
}

impl Laying<'_> {
    /// Cuts a part out of a node of this size, then what it is made of.
    fn part(&mut self, part: u32, node: usize, size: (Length, Length)) {
        let Some(part) = self.parts.get(part as usize) else {
            return;
        };
        let made = part.made;
        let own = (
            Length::from_units(part.w) - self.kerf,
            Length::from_units(part.l) - self.kerf,
        );
        let (node, size) = self.trim(node, size, own);
        match made {
            Made::Piece { item, turned } => {
                let place = self.load.iter().position(|(_, _, other)| *other == item);
                if let Some(place) = place {
                    let (blank, _, _) = self.load.remove(place);
                    self.open.nodes[node] = Node::Piece { blank, turned };
                }
            }
            Made::Join {
                across,
                first,
                second,
            } => {
                let near = self
                    .parts
                    .get(first as usize)
                    .map_or((0, 0), |part| (part.w, part.l));
                let at = Length::from_units(if across { near.1 } else { near.0 }) - self.kerf;
                let (near, far) = self.split(node, size, across, at);
                self.part(first, near.0, near.1);
                self.part(second, far.0, far.1);
            }
        }
    }

    /// Cuts off what lies beyond a part, so that the larger rest stays whole.
    fn trim(&mut self, node: usize, size: (Length, Length), own: (Length, Length)) -> Spot {
        let beside = (size.0 - own.0).max(Length::ZERO) * size.1;
        let beyond = (size.1 - own.1).max(Length::ZERO) * size.0;
        let first_across = beyond > beside;
        let (mut node, mut size) = (node, size);
        for across in [first_across, !first_across] {
            let (at, whole) = if across { (own.1, size.1) } else { (own.0, size.0) };
            if at < whole {
                let (near, _) = self.split(node, size, across, at);
                (node, size) = near;
            }
        }
        (node, size)
    }

    /// Parts a node; its near and its far part with their sizes.
    fn split(
        &mut self,
        node: usize,
        (width, length): (Length, Length),
        across: bool,
        at: Length,
    ) -> (Spot, Spot) {
        let rest = |whole: Length| (whole - at - self.kerf).max(Length::ZERO);
        let (near, far) = if across {
            ((width, at), (width, rest(length)))
        } else {
            ((at, length), (rest(width), length))
        };
        let first = self.open.nodes.len();
        for (width, length) in [near, far] {
            self.open.nodes.push(Node::Free { width, length });
        }
        self.open.nodes[node] = Node::Split {
            across,
            at,
            first,
            second: first + 1,
        };
        ((first, near), (first + 1, far))
    }
}
