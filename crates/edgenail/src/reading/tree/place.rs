//! Places in a document: JSON pointers (RFC 6901), and lines with columns.

use std::fmt::Display;

/// The pointer to an entry of what `path` points to.
pub(crate) fn within(path: &str, entry: impl Display) -> String {
    let entry = entry.to_string().replace('~', "~0").replace('/', "~1");
    format!("{path}/{entry}")
}

/// A pointer of several steps.
pub(crate) fn pointer(steps: &[String]) -> String {
    steps.iter().fold(String::new(), |path, step| within(&path, step))
}

/// Line and column of a byte, both from 1; the column counts characters.
pub(super) fn line_and_column(bytes: &[u8], offset: usize) -> (usize, usize) {
    let before = bytes.get(..offset).unwrap_or(bytes);
    let start = before
        .iter()
        .rposition(|byte| *byte == b'\n')
        .map_or(0, |last| last + 1);
    #[expect(clippy::naive_bytecount, reason = "only faults count lines")]
    let line = 1 + before.iter().filter(|byte| **byte == b'\n').count();
    // Bytes that continue a character of UTF-8 begin with the bits 10.
    let column = before
        .iter()
        .skip(start)
        .filter(|byte| **byte & 0xC0 != 0x80)
        .count();
    (line, column + 1)
}
