//! Lists compared as bags.

/// What only the list after has, and what only the list before has, in their orders.
pub(super) fn apart<T: Clone + PartialEq>(before: &[T], after: &[T]) -> (Vec<T>, Vec<T>) {
    let mut went: Vec<&T> = before.iter().collect();
    let mut came = Vec::new();
    for item in after {
        match went.iter().position(|old| *old == item) {
            Some(place) => {
                went.remove(place);
            }
            None => came.push(item.clone()),
        }
    }
    (came, went.into_iter().cloned().collect())
}

/// Items of either list by their keys: those of the list before in their order, then those that came.
pub(super) fn paired<'t, T, K: PartialEq>(
    before: &'t [T],
    after: &'t [T],
    key: impl Fn(&'t T) -> K,
) -> Vec<(Option<&'t T>, Option<&'t T>)> {
    let find = |list: &'t [T], wanted: &K| list.iter().find(|item| key(item) == *wanted);
    let mut pairs: Vec<_> = before
        .iter()
        .map(|item| (Some(item), find(after, &key(item))))
        .collect();
    let came = after.iter().filter(|item| find(before, &key(item)).is_none());
    pairs.extend(came.map(|item| (None, Some(item))));
    pairs
}
