//! The text of a length as tokens: numbers, units and marks, whichever characters they were written with.

use super::{LengthFault, Unit};

/// One part of a length as it was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Token {
    /// One or more spaces of any width.
    Space,
    /// Digits alone.
    Whole(i128),
    /// Digits with a point or an exponent: a numerator over a power of ten.
    Decimal(i128, i128),
    /// A fraction in one character, such as ⅛.
    Vulgar(i128, i128),
    /// The bar of a fraction.
    Slash,
    /// A hyphen or dash: a sign or a joint.
    Dash,
    /// A character that is only ever a sign.
    Sign {
        /// The minus sign, as against the plus sign.
        minus: bool,
    },
    /// The mark of a rounded figure.
    About,
    /// The name or mark of a unit.
    Unit(Unit),
}

/// As many digits as are read in one number; products of two such numbers fit `i128`.
const DIGITS: usize = 18;

/// The tokens of a text.
pub(super) fn tokens(text: &str) -> Result<Vec<Token>, LengthFault> {
    let characters: Vec<char> = text.chars().collect();
    let mut rest = characters.as_slice();
    let mut found = Vec::new();
    while let Some((first, after)) = rest.split_first() {
        let (token, left) = match first {
            c if c.is_ascii_digit() || *c == '.' => number(rest)?,
            c if c.is_ascii_alphabetic() => word(rest)?,
            c if is_foot_mark(*c) => match after.split_first() {
                // Two single marks are how a double one is often typed.
                Some((second, left)) if is_foot_mark(*second) => (Token::Unit(Unit::Inch), left),
                _ => (Token::Unit(Unit::Foot), after),
            },
            c => (single(*c)?, after),
        };
        rest = left;
        if token != Token::Space || found.last() != Some(&Token::Space) {
            found.push(token);
        }
    }
    Ok(found)
}

fn is_foot_mark(c: char) -> bool {
    // Apostrophe, prime, right single quotation mark.
    matches!(c, '\'' | '\u{2032}' | '\u{2019}')
}

fn single(c: char) -> Result<Token, LengthFault> {
    Ok(match c {
        // Space, tab, no-break, figure, thin, hair, narrow no-break.
        ' ' | '\t' | '\u{a0}' | '\u{2007}' | '\u{2009}' | '\u{200a}' | '\u{202f}' => Token::Space,
        // Hyphen-minus, hyphen, no-break hyphen, figure dash, en dash.
        '-' | '\u{2010}' | '\u{2011}' | '\u{2012}' | '\u{2013}' => Token::Dash,
        '\u{2212}' => Token::Sign { minus: true },
        '+' => Token::Sign { minus: false },
        // Solidus, fraction slash, division slash.
        '/' | '\u{2044}' | '\u{2215}' => Token::Slash,
        // Quotation mark, double prime, right double quotation mark.
        '"' | '\u{2033}' | '\u{201d}' => Token::Unit(Unit::Inch),
        '\u{2248}' | '~' => Token::About,
        ',' => return Err(LengthFault::Comma),
        _ => {
            let (numerator, denominator) = vulgar(c).ok_or(LengthFault::UnknownCharacter)?;
            Token::Vulgar(numerator, denominator)
        }
    })
}

fn vulgar(c: char) -> Option<(i128, i128)> {
    Some(match c {
        '½' => (1, 2),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅐' => (1, 7),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '⅑' => (1, 9),
        '⅒' => (1, 10),
        _ => return None,
    })
}

fn number(text: &[char]) -> Result<(Token, &[char]), LengthFault> {
    let (whole, rest) = digits(text);
    let (fraction, rest) = match rest {
        ['.', after @ ..] => match digits(after) {
            ([], _) => return Err(LengthFault::Malformed),
            parts => parts,
        },
        _ => (&[][..], rest),
    };
    let (exponent, rest) = exponent(rest)?;
    if text.get(whole.len()) != Some(&'.') && exponent == 0 {
        return Ok((Token::Whole(value(whole)?), rest));
    }
    // Zeros at the end say nothing, so a long text of them is still exact.
    let zeros = fraction.iter().rev().take_while(|c| **c == '0').count();
    let (kept, _) = fraction.split_at(fraction.len() - zeros);
    let all: Vec<char> = whole.iter().chain(kept).copied().collect();
    let places = i64::try_from(kept.len()).map_err(|_| LengthFault::TooManyDigits)? - exponent;
    let numerator = value(&all)?.checked_mul(power_of_ten(-places)?);
    Ok((
        Token::Decimal(
            numerator.ok_or(LengthFault::TooManyDigits)?,
            power_of_ten(places)?,
        ),
        rest,
    ))
}

/// The exponent of a number as JSON allows it, such as `e-5`; zero where there is none.
fn exponent(text: &[char]) -> Result<(i64, &[char]), LengthFault> {
    let (negative, figures) = match text {
        ['e' | 'E', '-', rest @ ..] => (true, rest),
        ['e' | 'E', '+', rest @ ..] | ['e' | 'E', rest @ ..] => (false, rest),
        _ => return Ok((0, text)),
    };
    let (figures, rest) = digits(figures);
    if figures.is_empty() {
        return Err(LengthFault::UnknownUnit);
    }
    let size = i64::try_from(value(figures)?).map_err(|_| LengthFault::TooManyDigits)?;
    Ok((if negative { -size } else { size }, rest))
}

/// 10 to an exponent; 1 for one below zero.
fn power_of_ten(exponent: i64) -> Result<i128, LengthFault> {
    let exponent = usize::try_from(exponent).unwrap_or(0);
    if exponent > DIGITS {
        return Err(LengthFault::TooManyDigits);
    }
    Ok((0..exponent).fold(1, |power, _| power * 10))
}

fn digits(text: &[char]) -> (&[char], &[char]) {
    text.split_at(text.iter().take_while(|c| c.is_ascii_digit()).count())
}

fn value(digits: &[char]) -> Result<i128, LengthFault> {
    let leading = digits.iter().take_while(|c| **c == '0').count();
    if digits.len() - leading > DIGITS {
        return Err(LengthFault::TooManyDigits);
    }
    let figures = digits.iter().filter_map(|c| c.to_digit(10));
    Ok(figures.fold(0, |sum, figure| sum * 10 + i128::from(figure)))
}

fn word(text: &[char]) -> Result<(Token, &[char]), LengthFault> {
    let (letters, rest) = text.split_at(text.iter().take_while(|c| c.is_ascii_alphabetic()).count());
    let name: String = letters.iter().map(char::to_ascii_lowercase).collect();
    let unit = Unit::named(&name).ok_or(LengthFault::UnknownUnit)?;
    // The point of an abbreviation.
    let rest = match rest.split_first() {
        Some(('.', after)) => after,
        _ => rest,
    };
    Ok((Token::Unit(unit), rest))
}
