//! Text to an exact rational, and the rational to a length.
//!
//! ```text
//! length   = [about] [sign] (feet foot [joint inches [inch]] | quantity [unit])
//! feet     = whole
//! joint    = spaces | spaces "-" spaces | nothing      but not a dash that looks like a sign
//! quantity = whole | decimal | fraction | whole (space | "-") fraction | whole vulgar
//! ```

use super::token::{Token, tokens};
use super::{Length, LengthError, LengthFault, TEXT_LIMIT, Unit};

/// A length as it was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Parsed {
    /// The length, rounded to the nearest unit if need be, ties away from zero.
    pub length: Length,
    /// The length is what was written; otherwise it was rounded, or the text itself marks it as rounded.
    pub exact: bool,
}

impl Length {
    /// Reads a length; a number without a unit is in `unit`.
    ///
    /// Inches may be mixed numbers, fractions or decimals, with or without feet before them. Typographic spaces,
    /// dashes, primes and fractions are read like the plain ones. A leading `≈` or `~`, with which
    /// [`Length::show`] marks a rounded figure, is read as a mark: the length is then not exact.
    ///
    /// # Errors
    /// The text is no length, is ambiguous, or is beyond [`Length::LIMIT`].
    ///
    /// ```
    /// use edgenail::Length;
    /// use edgenail::length::Unit;
    /// let wall = Length::inches(97) + Length::sixteenths(2);
    /// for text in ["97 1/8", "97-1/8\"", "97⅛", "8' 1 1/8\"", "8'-1-1/8\"", "8ft 1.125in", "2466.975 mm"] {
    ///     let parsed = Length::parse(text, Unit::Inch)?;
    ///     assert_eq!((parsed.length, parsed.exact), (wall, true));
    /// }
    /// assert!(!Length::parse("1/3", Unit::Inch)?.exact);
    /// assert!(Length::parse("8-1", Unit::Inch).is_err());
    /// # Ok::<(), edgenail::length::LengthError>(())
    /// ```
    pub fn parse(text: &str, unit: Unit) -> Result<Parsed, LengthError> {
        read(text, unit).map_err(|fault| LengthError::new(fault, text))
    }

    /// Reads a length and refuses one that had to be rounded.
    ///
    /// # Errors
    /// As [`Length::parse`], and the length is not a whole number of 1/40640 in.
    ///
    /// ```
    /// use edgenail::Length;
    /// use edgenail::length::{LengthFault, Unit};
    /// assert_eq!(Length::parse_exact("7/16", Unit::Inch)?, Length::sixteenths(7));
    /// assert_eq!(Length::parse_exact("1/3", Unit::Inch).unwrap_err().fault, LengthFault::NotExact);
    /// # Ok::<(), edgenail::length::LengthError>(())
    /// ```
    pub fn parse_exact(text: &str, unit: Unit) -> Result<Self, LengthError> {
        let parsed = Self::parse(text, unit)?;
        if parsed.exact {
            Ok(parsed.length)
        } else {
            Err(LengthError::new(LengthFault::NotExact, text))
        }
    }
}

/// A quotient of whole numbers; the denominator is above zero.
#[derive(Clone, Copy)]
struct Rational {
    numerator: i128,
    denominator: i128,
}

/// A number as it was written.
struct Quantity {
    value: Rational,
    whole: bool,
    /// A dash joins its whole number and its fraction.
    dashed: bool,
}

fn read(text: &str, default: Unit) -> Result<Parsed, LengthFault> {
    if text.chars().nth(TEXT_LIMIT).is_some() {
        return Err(LengthFault::TooLong);
    }
    let tokens = tokens(text)?;
    let rest = skip_space(&tokens);
    let (about, rest) = match rest {
        [Token::About, rest @ ..] => (true, skip_space(rest)),
        _ => (false, rest),
    };
    let (negative, rest) = sign(rest);
    let (first, rest) = quantity(rest)?;
    let (unit, rest) = unit(rest);
    let units = match unit {
        Some(Unit::Foot) if first.dashed => return Err(LengthFault::DashedFeet),
        None if first.dashed && default == Unit::Foot => return Err(LengthFault::DashedFeet),
        Some(Unit::Foot) if !only_space(rest) => feet_and_inches(&first, rest)?,
        _ => {
            end(rest, unit)?;
            in_units(first.value, unit.unwrap_or(default))?
        }
    };
    let parsed = round(units, negative)?;
    Ok(Parsed {
        exact: parsed.exact && !about,
        ..parsed
    })
}

fn skip_space(tokens: &[Token]) -> &[Token] {
    match tokens {
        [Token::Space, rest @ ..] => rest,
        _ => tokens,
    }
}

fn only_space(tokens: &[Token]) -> bool {
    skip_space(tokens).is_empty()
}

fn sign(tokens: &[Token]) -> (bool, &[Token]) {
    match tokens {
        [Token::Dash, rest @ ..] => (true, skip_space(rest)),
        [Token::Sign { minus }, rest @ ..] => (*minus, skip_space(rest)),
        _ => (false, tokens),
    }
}

fn quantity(tokens: &[Token]) -> Result<(Quantity, &[Token]), LengthFault> {
    let (value, whole, dashed, rest) = match *tokens {
        [Token::Whole(n), Token::Slash, Token::Whole(d), ref rest @ ..]
        | [Token::Vulgar(n, d) | Token::Decimal(n, d), ref rest @ ..] => (ratio(n, d)?, false, false, rest),
        [
            Token::Whole(whole),
            joint @ (Token::Space | Token::Dash),
            Token::Whole(n),
            Token::Slash,
            Token::Whole(d),
            ref rest @ ..,
        ]
        | [
            Token::Whole(whole),
            joint @ (Token::Space | Token::Dash),
            Token::Vulgar(n, d),
            ref rest @ ..,
        ] => (mixed(whole, n, d)?, false, joint == Token::Dash, rest),
        [Token::Whole(whole), Token::Vulgar(n, d), ref rest @ ..] => {
            (mixed(whole, n, d)?, false, false, rest)
        }
        [Token::Whole(n), ref rest @ ..] => (ratio(n, 1)?, true, false, rest),
        [] => return Err(LengthFault::Empty),
        [Token::Dash | Token::Sign { .. }, ..] => return Err(LengthFault::SignInside),
        _ => return Err(LengthFault::Malformed),
    };
    let quantity = Quantity { value, whole, dashed };
    Ok((quantity, rest))
}

fn ratio(numerator: i128, denominator: i128) -> Result<Rational, LengthFault> {
    if denominator == 0 {
        return Err(LengthFault::ZeroDenominator);
    }
    Ok(Rational {
        numerator,
        denominator,
    })
}

fn mixed(whole: i128, numerator: i128, denominator: i128) -> Result<Rational, LengthFault> {
    if denominator != 0 && numerator >= denominator {
        return Err(LengthFault::ImproperFraction);
    }
    let over = whole.checked_mul(denominator).ok_or(LengthFault::OutOfRange)?;
    ratio(
        over.checked_add(numerator).ok_or(LengthFault::OutOfRange)?,
        denominator,
    )
}

fn unit(tokens: &[Token]) -> (Option<Unit>, &[Token]) {
    match skip_space(tokens) {
        [Token::Unit(unit), rest @ ..] => (Some(*unit), rest),
        _ => (None, tokens),
    }
}

/// The units in whole feet and the inches that follow.
fn feet_and_inches(feet: &Quantity, tokens: &[Token]) -> Result<Rational, LengthFault> {
    let (inches, rest) = quantity(joint(tokens)?)?;
    let (unit, rest) = unit(rest);
    if !matches!(unit, None | Some(Unit::Inch)) {
        return Err(LengthFault::Malformed);
    }
    end(rest, Some(Unit::Inch))?;
    if !feet.whole {
        return Err(LengthFault::BrokenFeet);
    }
    let feet = in_units(feet.value, Unit::Foot)?;
    let inches = in_units(inches.value, Unit::Inch)?;
    let over = feet.numerator.checked_mul(inches.denominator);
    let numerator = over.and_then(|over| over.checked_add(inches.numerator));
    ratio(numerator.ok_or(LengthFault::OutOfRange)?, inches.denominator)
}

/// What follows the joint of feet and inches.
fn joint(tokens: &[Token]) -> Result<&[Token], LengthFault> {
    match tokens {
        [Token::Space, Token::Dash, Token::Space, rest @ ..] | [Token::Dash, rest @ ..] => {
            Ok(skip_space(rest))
        }
        // A dash after a space and close to the inches reads as their sign.
        [Token::Space, Token::Dash, ..] => Err(LengthFault::SignInside),
        _ => Ok(skip_space(tokens)),
    }
}

/// Why a length may not go on after its unit, if it does.
fn end(tokens: &[Token], unit: Option<Unit>) -> Result<(), LengthFault> {
    let rest = skip_space(tokens);
    if rest.is_empty() {
        return Ok(());
    }
    let number = |token: &Token| matches!(token, Token::Whole(_) | Token::Decimal(..) | Token::Vulgar(..));
    if unit == Some(Unit::Inch) && rest.contains(&Token::Unit(Unit::Foot)) {
        return Err(LengthFault::FeetAfterInches);
    }
    Err(match rest {
        [Token::Sign { .. }, ..] => LengthFault::SignInside,
        [Token::Dash, ..] if tokens != rest || rest.get(1).is_some_and(|token| !number(token)) => {
            LengthFault::SignInside
        }
        [Token::Dash, next, ..] | [next, ..] if unit.is_none() && number(next) => LengthFault::TwoNumbers,
        _ => LengthFault::Malformed,
    })
}

fn in_units(value: Rational, unit: Unit) -> Result<Rational, LengthFault> {
    let factor = i128::from(unit.length().units());
    let numerator = value
        .numerator
        .checked_mul(factor)
        .ok_or(LengthFault::OutOfRange)?;
    ratio(numerator, value.denominator)
}

/// The nearest whole number of units, ties away from zero; the rational is not below zero.
fn round(units: Rational, negative: bool) -> Result<Parsed, LengthFault> {
    let Rational {
        numerator,
        denominator,
    } = units;
    let whole = numerator / denominator;
    let remainder = numerator % denominator;
    let nearest = whole + i128::from(remainder >= denominator - remainder);
    let size = i64::try_from(nearest).map_err(|_| LengthFault::OutOfRange)?;
    if size > Length::LIMIT.units() {
        return Err(LengthFault::OutOfRange);
    }
    Ok(Parsed {
        length: Length::from_units(if negative { -size } else { size }),
        exact: remainder == 0,
    })
}

#[cfg(test)]
mod tests;
