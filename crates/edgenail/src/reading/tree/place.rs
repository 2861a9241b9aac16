//! Lines and columns of a document.

use std::fmt;

/// A line and column, counted from one; columns in characters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Place {
    /// The line.
    pub line: usize,
    /// The column.
    pub column: usize,
}

impl Place {
    /// The place of this byte offset.
    pub fn of(bytes: &[u8], offset: usize) -> Self {
        let mut cursor = Cursor::default();
        cursor.move_to(bytes, offset);
        cursor.place()
    }

    /// The places of offsets that do not decrease, in one pass.
    pub(super) fn of_all(bytes: &[u8], offsets: impl Iterator<Item = usize>) -> Vec<Self> {
        let mut cursor = Cursor::default();
        let mut places = Vec::new();
        for offset in offsets {
            cursor.move_to(bytes, offset);
            places.push(cursor.place());
        }
        places
    }
}

/// Counts lines and columns on the way through a document.
#[derive(Default)]
struct Cursor {
    at: usize,
    lines: usize,
    columns: usize,
}

impl Cursor {
    fn move_to(&mut self, bytes: &[u8], offset: usize) {
        for byte in bytes.get(self.at..offset).unwrap_or_default() {
            if *byte == b'\n' {
                self.lines += 1;
                self.columns = 0;
            } else {
                // A byte that continues a character of UTF-8 begins with the bits 10.
                self.columns += usize::from(*byte & 0xC0 != 0x80);
            }
        }
        self.at = offset;
    }

    const fn place(&self) -> Place {
        Place {
            line: self.lines + 1,
            column: self.columns + 1,
        }
    }
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}, column {}", self.line, self.column)
    }
}
