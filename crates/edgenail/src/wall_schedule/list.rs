//! Lists as one cell holds them: `left,sill,width,height; left,sill,width,height`.

use crate::issue::{Code, Issue};

/// The parts of each entry, as they are written, in the order that `form` names them. A semicolon after the last entry is
/// read as its end; a blank cell has no entries.
///
/// # Errors
/// Every entry with more or fewer parts, at a path such as `/openings/1` with the name of the field.
///
/// ```
/// use edgenail::wall_schedule::entries;
/// let openings = entries("36,48, 82 1/2; 10',5',6';", "openings", ["left", "width", "height"]).unwrap();
/// assert_eq!(openings, [["36", "48", "82 1/2"], ["10'", "5'", "6'"]]);
/// assert_eq!(entries("0,48,2", "segments", ["left", "right"]).unwrap_err()[0].path, "/segments/0");
/// ```
pub fn entries<'t, const N: usize>(
    text: &'t str,
    field: &str,
    form: [&str; N],
) -> Result<Vec<[&'t str; N]>, Vec<Issue>> {
    let text = text.trim();
    let text = text.strip_suffix(';').unwrap_or(text);
    if text.is_empty() {
        return Ok(Vec::new());
    }
    let mut issues = Vec::new();
    let mut entries = Vec::new();
    for (index, entry) in text.split(';').enumerate() {
        let parts: Vec<&str> = entry.split(',').map(str::trim).collect();
        match <[&str; N]>::try_from(parts) {
            Ok(parts) => entries.push(parts),
            Err(parts) => issues.push(miscounted(entry, &format!("/{field}/{index}"), parts.len(), form)),
        }
    }
    if issues.is_empty() {
        Ok(entries)
    } else {
        Err(issues)
    }
}

fn miscounted<const N: usize>(entry: &str, path: &str, count: usize, form: [&str; N]) -> Issue {
    let allowed = format!("{}; entries are parted by semicolons", form.join(","));
    Issue {
        code: if count < N {
            Code::TooFewItems
        } else {
            Code::TooManyItems
        },
        path: path.to_owned(),
        wall: String::new(),
        found: entry.trim().to_owned(),
        message: format!(
            "`{}` has {count} parts, not {N}: write {}",
            entry.trim(),
            form.join(",")
        ),
        allowed,
    }
}
