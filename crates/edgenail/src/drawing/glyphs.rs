//! How much room text takes.
//!
//! A reader's type is not known. The widths are upper bounds, rounded up to 1/100 of the type's height, measured
//! on a wide sans-serif face, so that text set in a narrower one fills less than its box.

use super::Micron;

/// Widths of the characters from space to tilde in plain type, in 1/100 of the height.
const PLAIN: [u8; 95] = [
    32, 41, 46, 84, 64, 96, 78, 28, 40, 40, 50, 84, 32, 37, 32, 34, 64, 64, 64, 64, 64, 64, 64, 64, 64, 64,
    34, 34, 84, 84, 84, 54, 101, 69, 69, 70, 78, 64, 58, 78, 76, 30, 30, 66, 56, 87, 75, 79, 61, 79, 70, 64,
    62, 74, 69, 99, 69, 62, 69, 40, 34, 40, 84, 51, 51, 62, 64, 55, 64, 62, 36, 64, 64, 28, 28, 58, 28, 98,
    64, 62, 64, 64, 42, 53, 40, 64, 60, 82, 60, 60, 53, 64, 34, 64, 84,
];

/// The same in bold type.
const BOLD: [u8; 95] = [
    35, 46, 53, 84, 70, 101, 88, 31, 46, 46, 53, 84, 38, 42, 38, 37, 70, 70, 70, 70, 70, 70, 70, 70, 70, 70,
    40, 40, 84, 84, 84, 59, 101, 78, 77, 74, 84, 69, 69, 83, 84, 38, 38, 78, 64, 100, 84, 86, 74, 86, 78, 73,
    69, 82, 78, 111, 78, 73, 73, 46, 37, 46, 84, 51, 51, 68, 72, 60, 72, 68, 44, 72, 72, 35, 35, 67, 35, 105,
    72, 69, 72, 72, 50, 60, 48, 72, 66, 93, 65, 66, 59, 72, 37, 72, 84,
];

/// The most that a line of text of this height fills, from left to right.
pub(super) fn width(text: &str, size: Micron, bold: bool) -> Micron {
    let table = if bold { &BOLD } else { &PLAIN };
    filled(text.chars().map(|c| glyph(c, table)).sum(), size)
}

/// What so many 1/100 of the height fill.
const fn filled(hundredths: Micron, size: Micron) -> Micron {
    (hundredths * size).div_euclid(100) + 1
}

fn glyph(c: char, table: &[u8; 95]) -> Micron {
    let ascii = u32::from(c)
        .checked_sub(0x20)
        .and_then(|index| table.get(index as usize));
    match (ascii, c) {
        (Some(&width), _) => width.into(),
        (None, '×' | '≈' | '–' | '±' | '·') => 84,
        (None, '\u{a0}'..='\u{17f}') => 117,
        // Wide letters, ideographs, pictures.
        (None, _) => 202,
    }
}

/// From the upper side of a line's box to its base line.
pub(super) const fn ascent(size: Micron) -> Micron {
    size * 95 / 100
}

/// Height of a line's box.
pub(super) const fn line(size: Micron) -> Micron {
    size * 120 / 100
}

/// As much of a text as fits a width, with an ellipsis where something is left out.
pub(super) fn fitted(text: &str, room: Micron, size: Micron, bold: bool) -> String {
    if width(text, size, bold) <= room {
        return text.to_owned();
    }
    let mut kept = String::new();
    for c in text.chars() {
        kept.push(c);
        if width(&format!("{kept}..."), size, bold) > room {
            kept.pop();
            break;
        }
    }
    format!("{}...", kept.trim_end())
}

/// A text in lines no wider than the room, broken at spaces, and inside words only where one is too long.
pub(super) fn wrapped(text: &str, room: Micron, size: Micron) -> Vec<String> {
    let fits = |hundredths: Micron| filled(hundredths, size) <= room;
    let mut lines: Vec<String> = Vec::new();
    // The line that is being filled, with its width in 1/100 of the height.
    let (mut line, mut taken) = (String::new(), 0);
    for word in text.split_whitespace() {
        let own: Micron = word.chars().map(|c| glyph(c, &PLAIN)).sum();
        let space = if line.is_empty() { 0 } else { glyph(' ', &PLAIN) };
        if fits(taken + space + own) {
            if !line.is_empty() {
                line.push(' ');
            }
            line.push_str(word);
            taken += space + own;
            continue;
        }
        if !line.is_empty() {
            lines.push(std::mem::take(&mut line));
            taken = 0;
        }
        for c in word.chars() {
            let more = glyph(c, &PLAIN);
            if !line.is_empty() && !fits(taken + more) {
                lines.push(std::mem::take(&mut line));
                taken = 0;
            }
            line.push(c);
            taken += more;
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

#[cfg(test)]
mod tests;
