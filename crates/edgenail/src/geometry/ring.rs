//! Edges linked into closed rings.

use super::Point;
use super::boundary::RawEdge;
use super::point::{ring_area2, turn};

/// Links edges into rings, outlines before holes, each from its least point; parts of one slope become one
/// edge. Where rings touch at a corner they stay apart.
pub(super) fn link(mut edges: Vec<RawEdge>) -> Vec<Vec<RawEdge>> {
    edges.sort_unstable();
    let mut used = vec![false; edges.len()];
    let mut rings: Vec<(bool, Vec<RawEdge>)> = Vec::new();
    for start in 0..edges.len() {
        if used[start] {
            continue;
        }
        let mut ring = Vec::new();
        let mut index = start;
        loop {
            used[index] = true;
            ring.push(edges[index]);
            match onward(&edges, &used, start, edges[index]) {
                Some(next) if next != start => index = next,
                _ => break,
            }
        }
        // Before anything else: inner corners of a slope are rounded, and may seem to go on straight elsewhere.
        join(&mut ring, |a, b| a.line == b.line && a.line != 0);
        let corners: Vec<Point> = ring.iter().map(|e| e.edge.a).collect();
        rings.push((ring_area2(&corners) < 0, ring));
    }
    rings.retain(|(_, ring)| ring.len() > 2);
    rings.sort_by_key(|(hole, ring)| (*hole, ring.first().map(|e| e.edge)));
    rings.into_iter().map(|(_, ring)| ring).collect()
}

/// The edge that leaves where `current` ends, the one most to the right where there are several. Edges in use
/// are passed over, except the ring's first.
fn onward(edges: &[RawEdge], used: &[bool], start: usize, current: RawEdge) -> Option<usize> {
    let at = current.edge.b;
    let first = edges.partition_point(|e| e.edge.a < at);
    let leaving = (first..edges.len()).take_while(|&i| edges[i].edge.a == at);
    leaving.filter(|&i| i == start || !used[i]).reduce(|best, i| {
        if sharper_right(current.edge.a, at, edges[i].edge.b, edges[best].edge.b) {
            i
        } else {
            best
        }
    })
}

/// On the way from `from` to `at`, going on to `b` turns further right than going on to `c`.
fn sharper_right(from: Point, at: Point, b: Point, c: Point) -> bool {
    // Half-planes first: a turn to the right beats straight on, and that beats a turn to the left.
    let side = |p| turn(from, at, p).signum();
    match (side(b), side(c)) {
        (x, y) if x == y => turn(at, b, c) > 0,
        (x, y) => x < y,
    }
}

/// A ring with edges that go on straight joined.
pub(super) fn straightened(mut ring: Vec<RawEdge>) -> Vec<RawEdge> {
    join(&mut ring, |a, b| turn(a.edge.a, a.edge.b, b.edge.b) == 0);
    ring
}

/// Joins neighbouring edges of a ring that face the same way and are `one`.
fn join(ring: &mut Vec<RawEdge>, one: impl Fn(RawEdge, RawEdge) -> bool) {
    let goes_on = |a: RawEdge, b: RawEdge| a.edge.facing == b.edge.facing && one(a, b);
    ring.dedup_by(|next, kept| {
        let joins = goes_on(*kept, *next);
        if joins {
            kept.edge.b = next.edge.b;
        }
        joins
    });
    if let [first, .., last] = &mut ring[..]
        && goes_on(*last, *first)
    {
        first.edge.a = last.edge.a;
        ring.pop();
    }
    let least = (0..ring.len()).min_by_key(|&i| ring[i].edge.a).unwrap_or(0);
    ring.rotate_left(least);
}

#[cfg(test)]
mod tests;
