//! The known name nearest to a mistyped one.

/// The known name that the fewest edits turn the text into, if they are few; of equals, the first.
pub(super) fn nearest<'a>(text: &str, known: impl Iterator<Item = &'a str>) -> Option<&'a str> {
    let text: Vec<char> = text.chars().take(LONGEST + 1).collect();
    if text.len() > LONGEST {
        return None;
    }
    known
        .map(|name| (distance(&text, &name.chars().collect::<Vec<_>>()), name))
        .filter(|(edits, name)| *edits <= 2.max(name.chars().count() / 3))
        .min_by_key(|(edits, _)| *edits)
        .map(|(_, name)| name)
}

/// No known name is longer, so that a longer text is near to none.
const LONGEST: usize = 200;

/// Fewest insertions, removals, replacements and swaps of neighbours (restricted edit distance).
fn distance(a: &[char], b: &[char]) -> usize {
    let mut before = vec![0; b.len() + 1];
    let mut last: Vec<usize> = (0..=b.len()).collect();
    let mut last_character = None;
    for (i, character) in a.iter().enumerate() {
        let mut row = vec![i + 1];
        let mut left = i + 1;
        for (j, other) in b.iter().enumerate() {
            let at = |row: &[usize], index: usize| row.get(index).copied().unwrap_or(usize::MAX / 2);
            let replaced = at(&last, j) + usize::from(character != other);
            let mut best = replaced.min(at(&last, j + 1) + 1).min(left + 1);
            let swapped = j > 0 && last_character == Some(other) && b.get(j - 1) == Some(character);
            if swapped {
                best = best.min(at(&before, j - 1) + 1);
            }
            row.push(best);
            left = best;
        }
        before = std::mem::replace(&mut last, row);
        last_character = Some(character);
    }
    last.last().copied().unwrap_or(0)
}

#[cfg(test)]
mod tests;
