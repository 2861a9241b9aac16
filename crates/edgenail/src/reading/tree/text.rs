//! JSON strings: escapes and surrogates (RFC 8259, section 7).

use super::parse::Fault;
use crate::issue::Code;
use std::borrow::Cow;

/// The string whose opening quote is just before `start`, and the offset after its closing quote.
pub(super) fn string(text: &str, start: usize) -> Result<(Cow<'_, str>, usize), Fault> {
    let bytes = text.as_bytes();
    let mut resolved: Option<String> = None;
    // From here on, what was read is not yet in `resolved`.
    let mut kept = start;
    let mut at = start;
    loop {
        match bytes.get(at) {
            None => return Err(Fault::new(at, Code::Syntax, "a closing quote")),
            Some(b'"') => {
                let rest = text.get(kept..at).unwrap_or_default();
                let whole = match resolved {
                    None => Cow::Borrowed(rest),
                    Some(resolved) => Cow::Owned(resolved + rest),
                };
                return Ok((whole, at + 1));
            }
            Some(b'\\') => {
                let resolved = resolved.get_or_insert_default();
                resolved.push_str(text.get(kept..at).unwrap_or_default());
                let (character, after) = escape(bytes, at)?;
                resolved.push(character);
                kept = after;
                at = after;
            }
            Some(byte) if *byte < 0x20 => {
                return Err(Fault::new(
                    at,
                    Code::Syntax,
                    "an escape such as \\n in place of a control character",
                ));
            }
            Some(_) => at += 1,
        }
    }
}

/// The character of the escape whose backslash is at `at`, and the offset after it.
fn escape(bytes: &[u8], at: usize) -> Result<(char, usize), Fault> {
    let plain = match bytes.get(at + 1) {
        Some(b'"') => '"',
        Some(b'\\') => '\\',
        Some(b'/') => '/',
        Some(b'b') => '\u{8}',
        Some(b'f') => '\u{c}',
        Some(b'n') => '\n',
        Some(b'r') => '\r',
        Some(b't') => '\t',
        Some(b'u') => return unicode(bytes, at),
        _ => {
            return Err(Fault::new(
                at,
                Code::Syntax,
                "one of the escapes \\\" \\\\ \\/ \\b \\f \\n \\r \\t \\u",
            ));
        }
    };
    Ok((plain, at + 2))
}

fn unicode(bytes: &[u8], at: usize) -> Result<(char, usize), Fault> {
    let fault = || {
        Fault::new(
            at,
            Code::Syntax,
            "\\u and four hexadecimal digits, surrogates in pairs",
        )
    };
    let first = hexadecimal(bytes, at).ok_or_else(fault)?;
    let (code, after) = match first {
        0xD800..=0xDBFF => {
            let second = hexadecimal(bytes, at + 6)
                .filter(|low| (0xDC00..=0xDFFF).contains(low))
                .ok_or_else(fault)?;
            (0x1_0000 + ((first - 0xD800) << 10) + (second - 0xDC00), at + 12)
        }
        _ => (first, at + 6),
    };
    Ok((char::from_u32(code).ok_or_else(fault)?, after))
}

/// The number in the `\uXXXX` at `at`.
fn hexadecimal(bytes: &[u8], at: usize) -> Option<u32> {
    let (mark, digits) = bytes.get(at..at + 6)?.split_at(2);
    if mark != b"\\u" {
        return None;
    }
    digits.iter().try_fold(0, |value, digit| {
        Some(value * 16 + char::from(*digit).to_digit(16)?)
    })
}
