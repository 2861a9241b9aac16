//! Columns joined into shapes.

use super::Shape;
use super::shape::Trapezoid;

/// Columns that share a stretch of a side become one shape.
pub(super) fn connect(columns: &[Trapezoid]) -> Vec<Shape> {
    let mut group: Vec<usize> = (0..columns.len()).collect();
    let root = |group: &[usize], mut i: usize| {
        while group[i] != i {
            i = group[i];
        }
        i
    };
    for (i, right) in columns.iter().enumerate() {
        for (j, left) in columns[..i].iter().enumerate() {
            if left.x1 == right.x0 && left.right().overlaps(right.left()) {
                let (a, b) = (root(&group, i), root(&group, j));
                group[a.max(b)] = a.min(b);
            }
        }
    }
    let mut shapes: Vec<(usize, Vec<Trapezoid>)> = Vec::new();
    for (i, column) in columns.iter().enumerate() {
        let of = root(&group, i);
        match shapes.iter_mut().find(|(first, _)| *first == of) {
            Some((_, members)) => members.push(*column),
            None => shapes.push((of, vec![*column])),
        }
    }
    shapes
        .into_iter()
        .map(|(_, members)| Shape::from_columns(members))
        .collect()
}
