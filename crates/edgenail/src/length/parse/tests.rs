//! Every accepted form is read exactly, every ambiguous one is refused with its reason, and no text stops reading.

use crate::length::{Length, LengthFault, Unit};
use proptest::prelude::*;

fn exact(text: &str, unit: Unit) -> Length {
    Length::parse_exact(text, unit).unwrap_or_else(|error| panic!("{error}"))
}

fn fault(text: &str, unit: Unit) -> LengthFault {
    match Length::parse(text, unit) {
        Err(error) => {
            assert_eq!(error.text, text);
            error.fault
        }
        Ok(parsed) => panic!("`{text}` was read as {}", parsed.length),
    }
}

#[test]
fn one_length_in_many_notations() {
    let wall = Length::inches(97) + Length::sixteenths(2);
    let notations = [
        "97 1/8",
        "97-1/8",
        "97-1/8\"",
        "97 1/8 in",
        "97 1/8 in.",
        "97 1/8 Inches",
        "97.125",
        "97.1250000000000000000000000",
        "+97.125\"",
        " 97  1/8 ",
        "777/8",
        "000000000000000000097 1/8",
        "9.7125e1",
        "97125E-3 in",
        "0.0097125e+4",
        "97⅛",
        "97 ⅛",
        "97-⅛\"",
        "97\u{a0}1\u{2044}8\u{2009}in.",
        "97\u{2013}1/8″",
        "97 1/8''",
        "97 1/8\u{2032}\u{2032}",
        "97 1/8\u{201d}",
        "8' 1 1/8\"",
        "8' 1 1/8",
        "8'1.125",
        "8'-1-1/8\"",
        "8'-1 1/8\"",
        "8' - 1 1/8\"",
        "8'- 1⅛\"",
        "8\u{2032}\u{2013}1⅛\u{2033}",
        "8\u{2019}1⅛\u{201d}",
        "8ft 1.125in",
        "8ft1.125in.",
        "8 feet 1 1/8 inches",
        "8 ft. 1 1/8 in.",
        "7' 13 1/8\"",
        "8.09375 ft",
        "8 3/32 ft",
        "2466.975 mm",
        "2466.975mm",
        "246.6975 cm",
        "2.466975 m",
        "2.466975 metres",
        "3947160/40640 in.",
    ];
    for text in notations {
        assert_eq!(exact(text, Unit::Inch), wall, "{text}");
    }
    for text in notations.iter().filter(|text| !text.starts_with("8'")) {
        let front = text.trim_start().trim_start_matches('+');
        for sign in ["-", "- ", "\u{2212}", "\u{2013}"] {
            assert_eq!(
                exact(&format!("{sign}{front}"), Unit::Inch),
                -wall,
                "{sign}{front}"
            );
        }
    }
    assert_eq!(exact("-8'-1-1/8\"", Unit::Inch), -wall);
}

#[test]
fn a_bare_number_is_in_the_declared_unit() {
    assert_eq!(exact("3", Unit::Inch), Length::inches(3));
    assert_eq!(exact("3", Unit::Foot), Length::feet(3));
    assert_eq!(exact("8 1/2", Unit::Foot), Length::inches(102));
    assert_eq!(
        exact("2464.6", Unit::Millimetre),
        Length::from_units(24_646 * 160)
    );
    assert_eq!(exact(".5", Unit::Centimetre), Length::mm(5));
    assert_eq!(exact("1.2", Unit::Metre), Length::mm(1200));
    // Inches follow feet whatever the file's unit is.
    assert_eq!(exact("8' 1", Unit::Millimetre), Length::inches(97));
}

#[test]
fn what_is_ambiguous_or_no_length_is_refused_with_its_reason() {
    use LengthFault::*;
    let cases = [
        ("", Empty),
        ("   ", Empty),
        ("-", Empty),
        ("97,125", Comma),
        ("1,100 ft", Comma),
        ("8 ft, 1 in", Comma),
        ("8-1/2'", DashedFeet),
        ("8-½ ft", DashedFeet),
        ("8-1/2' 3\"", DashedFeet),
        ("8-1", TwoNumbers),
        ("8 1", TwoNumbers),
        ("8-1.5", TwoNumbers),
        ("8-1\"", TwoNumbers),
        ("8 1\"", TwoNumbers),
        ("1.5 1/2", TwoNumbers),
        ("1/2 1/2", TwoNumbers),
        ("--3", SignInside),
        ("+-3", SignInside),
        ("-\u{2212}3", SignInside),
        ("-8' -1\"", SignInside),
        ("8' -1\"", SignInside),
        ("8'--1\"", SignInside),
        ("8'\u{2212}1\"", SignInside),
        ("97 -1/8", SignInside),
        ("97 - 1/8", SignInside),
        ("97\u{2212}1/8", SignInside),
        ("97+1/8", SignInside),
        ("1\" 8'", FeetAfterInches),
        ("1 1/8 in 8 ft", FeetAfterInches),
        ("1\"-8'", FeetAfterInches),
        ("8.5' 3\"", BrokenFeet),
        ("8½' 3\"", BrokenFeet),
        ("97 9/8", ImproperFraction),
        ("97 8/8\"", ImproperFraction),
        ("1/0", ZeroDenominator),
        ("97 1/0", ZeroDenominator),
        ("5.", Malformed),
        (".", Malformed),
        ("1.5/2", Malformed),
        ("1//2", Malformed),
        ("/2", Malformed),
        ("in", Malformed),
        ("'", Malformed),
        ("8' 1' 2\"", Malformed),
        ("8' 1 mm", Malformed),
        ("1 m 20 cm", Malformed),
        ("1 mm 8 ft", Malformed),
        ("8\" 2\"", Malformed),
        ("3 in in", Malformed),
        ("~~3", Malformed),
        ("3 yards", UnknownUnit),
        ("1e", UnknownUnit),
        ("1e-", UnknownUnit),
        ("1 e3", UnknownUnit),
        ("1e1/2", Malformed),
        ("1e1.5", TwoNumbers),
        ("1e19", TooManyDigits),
        ("1e-19", TooManyDigits),
        ("1e9999999999999999999", TooManyDigits),
        ("1e999999999999999999", TooManyDigits),
        ("999999999999999999e18", OutOfRange),
        ("3 in.x", UnknownUnit),
        ("3;", UnknownCharacter),
        ("\u{ff13}", UnknownCharacter),
        ("3\n", UnknownCharacter),
        ("3\0", UnknownCharacter),
        ("1234567890123456789", TooManyDigits),
        ("0.1234567890123456789", TooManyDigits),
        ("999999999999999999 mm", OutOfRange),
        ("999999999999999999 1/999999999999999999 m", OutOfRange),
        ("999999999999999999' 1/999999999999999999\"", OutOfRange),
        ("1101 ft", OutOfRange),
        ("-1101 ft", OutOfRange),
    ];
    for (text, expected) in cases {
        assert_eq!(fault(text, Unit::Inch), expected, "{text}");
    }
    assert_eq!(fault("8-1/2", Unit::Foot), DashedFeet);
}

#[test]
fn the_coordinate_limit_is_the_last_length_that_is_read() {
    assert_eq!(exact("536870912/40640", Unit::Inch), Length::LIMIT);
    assert_eq!(exact("-536870912/40640", Unit::Inch), -Length::LIMIT);
    assert_eq!(fault("536870913/40640", Unit::Inch), LengthFault::OutOfRange);
    assert_eq!(fault("-536870913/40640", Unit::Inch), LengthFault::OutOfRange);
}

#[test]
fn text_is_read_up_to_200_characters() {
    let text = format!("{}1⅛\"", " ".repeat(197));
    assert_eq!(exact(&text, Unit::Inch), Length::sixteenths(18));
    let error = Length::parse(&"9".repeat(1_000_000), Unit::Inch).unwrap_err();
    assert_eq!((error.fault, error.text.len()), (LengthFault::TooLong, 200));
}

#[test]
fn a_mark_of_rounding_is_read_and_is_not_exact() {
    for text in ["≈97 1/8\"", "≈ 97 1/8", "~97.125"] {
        let parsed = Length::parse(text, Unit::Inch).unwrap();
        assert_eq!(
            (parsed.length, parsed.exact),
            (Length::sixteenths(97 * 16 + 2), false)
        );
        assert_eq!(
            Length::parse_exact(text, Unit::Inch).unwrap_err().fault,
            LengthFault::NotExact
        );
    }
}

#[test]
fn ties_round_away_from_zero() {
    let cases = [
        ("1/81280", 1, false),
        ("-1/81280", -1, false),
        ("3/81280", 2, false),
        ("-3/81280", -2, false),
        ("2/81280", 1, true),
        ("1/81281", 0, false),
        ("1/3", 13_547, false),
        ("-1/3", -13_547, false),
    ];
    for (text, units, exact) in cases {
        let parsed = Length::parse(text, Unit::Inch).unwrap();
        assert_eq!((parsed.length.units(), parsed.exact), (units, exact), "{text}");
    }
}

#[test]
fn every_vulgar_fraction_is_its_plain_one() {
    let fractions = [
        ("½", "1/2"),
        ("⅓", "1/3"),
        ("⅔", "2/3"),
        ("¼", "1/4"),
        ("¾", "3/4"),
        ("⅕", "1/5"),
        ("⅖", "2/5"),
        ("⅗", "3/5"),
        ("⅘", "4/5"),
        ("⅙", "1/6"),
        ("⅚", "5/6"),
        ("⅐", "1/7"),
        ("⅛", "1/8"),
        ("⅜", "3/8"),
        ("⅝", "5/8"),
        ("⅞", "7/8"),
        ("⅑", "1/9"),
        ("⅒", "1/10"),
    ];
    for (vulgar, plain) in fractions {
        assert_eq!(
            Length::parse(vulgar, Unit::Foot),
            Length::parse(plain, Unit::Foot)
        );
    }
}

/// Parts of which lengths are made, and what looks like them.
const PARTS: &str =
    "8 1 97 0 16 999999999999999999 1.125 .5 / 1/8 - – − + ' \" ′ ″ ft in in. mm m cm ⅛ ½ e e-1 , . ≈ é";

/// A part, or a space.
fn part() -> impl Strategy<Value = &'static str> {
    let parts: Vec<&str> = PARTS.split(' ').chain([" ", "\u{a0}"]).collect();
    prop::sample::select(parts)
}

fn any_unit() -> impl Strategy<Value = Unit> {
    prop::sample::select(&Unit::ALL[..])
}

fn check(text: &str, unit: Unit) -> Result<(), TestCaseError> {
    match Length::parse(text, unit) {
        Ok(parsed) => {
            prop_assert!(parsed.length.abs() <= Length::LIMIT);
            prop_assert_eq!(Length::parse_exact(text, unit).is_ok(), parsed.exact);
        }
        Err(error) => prop_assert!(error.to_string().contains("; allowed: ")),
    }
    Ok(())
}

proptest! {
    #[test]
    fn no_text_stops_reading(text in any::<String>(), unit in any_unit()) {
        check(&text, unit)?;
    }

    #[test]
    fn nothing_made_of_the_parts_of_a_length_stops_reading(
        parts in prop::collection::vec(part(), 0..12),
        unit in any_unit(),
    ) {
        check(&parts.concat(), unit)?;
    }

    #[test]
    fn an_inch_is_25_4_mm(count in -1_000_000_i64..=1_000_000) {
        // International inch: NIST SP 811, appendix B; from memory, not checked against print.
        let inches = format!("{count}/100 in.").replace("--", "-");
        let tenths = count * 254;
        let mm = format!("{tenths}/1000 mm");
        prop_assert_eq!(Length::parse(&inches, Unit::Metre), Length::parse(&mm, Unit::Metre));
        prop_assert_eq!(exact(&format!("{}", count / 100), Unit::Inch), exact(&format!("{}/10", count / 100 * 254), Unit::Millimetre));
    }

    #[test]
    fn decimals_agree_with_the_standard_library(
        text in "-?[0-9]{1,3}([.][0-9]{1,9})?(e-?[0-2])?",
        unit in prop::sample::select(&[Unit::Inch, Unit::Millimetre, Unit::Centimetre][..]),
    ) {
        let read = Length::parse(&text, unit);
        let double = Length::from_double(text.parse::<f64>().unwrap(), unit);
        match (read, double) {
            (Ok(read), Ok(double)) => {
                prop_assert!((read.length - double.length).abs() <= Length::from_units(1));
                // A double's noise may hide a ten-thousandth of a unit, never the reverse.
                prop_assert!(double.exact || !read.exact);
            }
            (read, double) => prop_assert!(read.is_err() && double.is_err()),
        }
    }

    #[test]
    fn feet_inches_and_a_fraction_add_up(
        feet in 0_i64..=1000,
        inches in 0_i64..12,
        sixteenths in 0_i64..16,
        joint in prop::sample::select(&["' ", "'-", "' - ", " ft ", "ft. ", "′–"][..]),
        bridge in prop::sample::select(&[" ", "-", "\u{2009}"][..]),
        mark in prop::sample::select(&["", "\"", " in.", "″", "''"][..]),
        negative: bool,
    ) {
        let length = Length::feet(feet) + Length::inches(inches) + Length::sixteenths(sixteenths);
        let sign = if negative { "-" } else { "" };
        let text = format!("{sign}{feet}{joint}{inches}{bridge}{sixteenths}/16{mark}");
        prop_assert_eq!(exact(&text, Unit::Millimetre), if negative { -length } else { length });
    }

    #[test]
    fn rounding_is_to_the_nearest_unit(
        numerator in -300_000_000_i64..=300_000_000,
        denominator in prop_oneof![Just(3200_i64), Just(9600), 1_000_i64..=1_000_000],
    ) {
        let parsed = Length::parse(&format!("{numerator}/{denominator}"), Unit::Millimetre).unwrap();
        let error = i128::from(parsed.length.units()) * i128::from(denominator) - i128::from(numerator) * 1600;
        prop_assert!(error.abs() * 2 <= i128::from(denominator));
        prop_assert_eq!(error == 0, parsed.exact);
        if error.abs() * 2 == i128::from(denominator) {
            prop_assert_eq!(error > 0, numerator > 0);
        }
    }
}
