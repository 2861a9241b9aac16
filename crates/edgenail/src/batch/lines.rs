//! Houses from a stream of lines, each the JSON of one.

use crate::reading::tree::BYTES_MOST;
use std::io::{BufRead, Error, Read};

/// The lines of a reader that are not blank, as bytes without their line end.
///
/// It ends where reading fails; [`Lines::failure`] then says why.
#[derive(Debug)]
pub struct Lines<R> {
    reader: R,
    /// Bytes of the longest line.
    most: usize,
    failure: Option<Error>,
}

/// Houses from a reader of JSON lines: each line is the document of one house.
///
/// A line that is longer than a document may be is cut off past that length and told as too large: memory stays bounded
/// whatever comes in.
///
/// ```
/// use edgenail::batch::{Batch, json_lines};
/// let text = format!("{}\n\n{{}}\n", edgenail::generate::house_json(1).0);
/// let mut houses = json_lines(text.as_bytes());
/// let outcomes: Vec<_> = Batch::of(&mut houses).collect();
/// assert_eq!(outcomes.len(), 2);
/// assert!(houses.failure().is_none());
/// ```
pub const fn json_lines<R: BufRead>(reader: R) -> Lines<R> {
    Lines {
        reader,
        most: BYTES_MOST,
        failure: None,
    }
}

impl<R> Lines<R> {
    /// Why reading ended before the end.
    pub const fn failure(&self) -> Option<&Error> {
        self.failure.as_ref()
    }
}

impl<R: BufRead> Lines<R> {
    /// The next line; empty only at the end.
    fn line(&mut self) -> Result<Vec<u8>, Error> {
        // One byte more tells that the line is too long.
        let most = u64::try_from(self.most).unwrap_or(u64::MAX).saturating_add(1);
        let mut line = Vec::new();
        self.reader.by_ref().take(most).read_until(b'\n', &mut line)?;
        if line.len() > self.most && !line.ends_with(b"\n") {
            self.reader.skip_until(b'\n')?;
        }
        Ok(line)
    }
}

impl<R: BufRead> Iterator for Lines<R> {
    type Item = Vec<u8>;

    fn next(&mut self) -> Option<Vec<u8>> {
        while self.failure.is_none() {
            match self.line() {
                Ok(line) if line.is_empty() => return None,
                Ok(line) if line.iter().all(u8::is_ascii_whitespace) => {}
                Ok(mut line) => {
                    while line.last().is_some_and(|byte| matches!(byte, b'\n' | b'\r')) {
                        line.pop();
                    }
                    return Some(line);
                }
                Err(failure) => self.failure = Some(failure),
            }
        }
        None
    }
}

#[cfg(test)]
mod tests;
