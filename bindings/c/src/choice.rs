//! Names as numbers, and numbers as names: what functions for cells take in place of words.

use crate::guard::{Fault, guard};
use crate::handle::{check, put};
use crate::status::edgenail_status as Status;
use crate::text::{put_utf8, put_utf16, utf8, utf16};
use std::ffi::c_char;

/// What a load comes from.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_load {
    /// Wind.
    Wind = 1,
    /// Earthquake.
    Seismic = 2,
}

/// How a nominal value becomes a design value.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_method {
    /// Allowable stress design.
    Asd = 1,
    /// Load and resistance factor design.
    Lrfd = 2,
}

/// Sheathing grade.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_grade {
    /// Sheathing.
    Sheathing = 1,
    /// Structural I.
    StructuralI = 2,
}

/// What panels are made of.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_panel_material {
    /// Oriented strand board.
    Osb = 1,
    /// Plywood of three plies.
    Plywood3 = 2,
    /// Plywood of four or more plies.
    Plywood4 = 3,
}

/// Coating of a nail.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_coating {
    /// Bright.
    Bright = 1,
    /// Hot-dipped galvanized.
    HotDipped = 2,
    /// Stainless.
    Stainless = 3,
}

/// How a wall line is taken.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_line_method {
    /// By its full-height segments, each with hold-downs of its own.
    Segmented = 1,
    /// As a perforated wall, held down at its ends.
    Perforated = 2,
}

/// At which level loads are given.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_level {
    /// Strength level.
    Strength = 1,
    /// Level of allowable stress design.
    Asd = 2,
}

/// How segments share a shear.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_sharing {
    /// By length; slender ones count for less.
    ReducedStrength = 1,
    /// So that all move equally.
    EqualDeflection = 2,
}

/// What a panel under pressure is made of.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_plies {
    /// Plywood of three plies.
    Three = 1,
    /// Plywood of four plies.
    Four = 2,
    /// Plywood of five plies.
    Five = 3,
    /// Oriented strand board.
    Osb = 4,
}

/// Which way the strength axis of a panel runs.
#[repr(C)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum edgenail_axis {
    /// Across the studs.
    AcrossStuds = 1,
    /// Along the studs.
    AlongStuds = 2,
}

/// Words by their numbers from 1, in the order of the enums.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Choice {
    name: &'static str,
    words: &'static [&'static str],
}

pub(crate) const LOAD: Choice = choice("load", &["wind", "seismic"]);
pub(crate) const METHOD: Choice = choice("method", &["asd", "lrfd"]);
pub(crate) const GRADE: Choice = choice("grade", &["sheathing", "structural_i"]);
pub(crate) const MATERIAL: Choice = choice("panel_material", &["osb", "plywood3", "plywood4"]);
pub(crate) const COATING: Choice = choice("coating", &["bright", "hot_dipped", "stainless"]);
pub(crate) const LINE_METHOD: Choice = choice("line_method", &["segmented", "perforated"]);
pub(crate) const LEVEL: Choice = choice("level", &["strength", "asd"]);
pub(crate) const SHARING: Choice = choice("sharing", &["reduced_strength", "equal_deflection"]);
pub(crate) const FORM: Choice = choice("form", &["text", "markdown", "html"]);
pub(crate) const PLIES: Choice = choice("plies", &["three", "four", "five", "osb"]);
pub(crate) const AXIS: Choice = choice("axis", &["across_studs", "along_studs"]);

const CHOICES: [Choice; 11] = [
    LOAD,
    METHOD,
    GRADE,
    MATERIAL,
    COATING,
    LINE_METHOD,
    LEVEL,
    SHARING,
    PLIES,
    AXIS,
    FORM,
];

const fn choice(name: &'static str, words: &'static [&'static str]) -> Choice {
    Choice { name, words }
}

impl Choice {
    /// The word of a number.
    pub(crate) fn word(self, number: i32, argument: &str) -> Result<&'static str, Fault> {
        self.at(number).ok_or_else(|| {
            Fault::argument(
                Status::BadChoice,
                argument,
                &format!("is none of {}", self.known()),
            )
        })
    }

    /// The value of a number; `values` stand in the order of the words.
    pub(crate) fn pick<T: Copy, const N: usize>(
        self,
        number: i32,
        argument: &str,
        values: [T; N],
    ) -> Result<T, Fault> {
        self.word(number, argument)?;
        let index = usize::try_from(number)
            .ok()
            .and_then(|number| number.checked_sub(1));
        let value = index.and_then(|index| values.get(index).copied());
        value.ok_or_else(|| Fault::argument(Status::BadChoice, argument, "has no meaning here"))
    }

    fn at(self, number: i32) -> Option<&'static str> {
        let index = usize::try_from(number).ok()?.checked_sub(1)?;
        self.words.get(index).copied()
    }

    /// The number of a word as a person may write it.
    fn number(self, written: &str) -> Result<i32, Fault> {
        let plain = plain(written);
        let index = self.words.iter().position(|word| *word == plain);
        let number = index.and_then(|index| i32::try_from(index + 1).ok());
        number.ok_or_else(|| {
            Fault::argument(Status::BadChoice, "word", &format!("is none of {}", self.known()))
        })
    }

    fn known(self) -> String {
        let known = self
            .words
            .iter()
            .zip(1..)
            .map(|(word, number)| format!("{number} {word}"));
        known.collect::<Vec<_>>().join(", ")
    }
}

/// Small letters, with `_` in place of spaces and hyphens.
fn plain(written: &str) -> String {
    written.trim().to_ascii_lowercase().replace([' ', '-'], "_")
}

fn choice_named(set: &str) -> Result<Choice, Fault> {
    let plain = plain(set);
    let found = CHOICES.into_iter().find(|choice| choice.name == plain);
    found.ok_or_else(|| {
        let known = CHOICES.map(|choice| choice.name).join(", ");
        Fault::argument(Status::NotFound, "set", &format!("is none of {known}"))
    })
}

/// The number of a word, for functions that take one in place of a name: `seismic` of the set `load` is
/// `EDGENAIL_LOAD_SEISMIC`.
///
/// `set` is the name of an enum without `edgenail_`: `load`, `method`, `grade`, `panel_material`, `coating`, `line_method`,
/// `level`, `sharing`, `plies`, `axis` or `form`. `word` is one of its names; capital letters are read as small ones, a space or a hyphen
/// as `_`: `Structural I`. Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_NOT_FOUND` for an unknown set, or
/// `EDGENAIL_STATUS_BAD_CHOICE` for a word that is not in it, with the known ones in the error list.
///
/// # Safety
///
/// `set` points at `set_length` bytes, `word` at `word_length`; `out_number` points at an `int32_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_choice_number(
    set: *const c_char,
    set_length: i64,
    word: *const c_char,
    word_length: i64,
    out_number: *mut i32,
) -> i32 {
    guard(|| {
        check(out_number, "out_number")?;
        // SAFETY: the caller's promise is the same as ours.
        let (set, word) = unsafe { (utf8(set, set_length, "set")?, utf8(word, word_length, "word")?) };
        let number = choice_named(set)?.number(word)?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe { put(out_number, number, "out_number") }
    })
}

/// As `edgenail_choice_number`, from UTF-16; lengths count code units.
///
/// # Safety
///
/// `set` points at `set_length` code units, `word` at `word_length`; `out_number` points at an `int32_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_choice_number_utf16(
    set: *const u16,
    set_length: i64,
    word: *const u16,
    word_length: i64,
    out_number: *mut i32,
) -> i32 {
    guard(|| {
        check(out_number, "out_number")?;
        // SAFETY: the caller's promise is the same as ours.
        let (set, word) = unsafe { (utf16(set, set_length, "set")?, utf16(word, word_length, "word")?) };
        let number = choice_named(&set)?.number(&word)?;
        // SAFETY: not NULL, and the caller's promise is the same as ours.
        unsafe { put(out_number, number, "out_number") }
    })
}

/// The word of a number of a set, such as to fill a list to choose from; numbers go from 1 without a gap.
///
/// `set` is as `edgenail_choice_number` takes it. Returns `EDGENAIL_STATUS_OK`, `EDGENAIL_STATUS_NOT_FOUND` for an unknown
/// set, `EDGENAIL_STATUS_BAD_CHOICE` past the last number, or `EDGENAIL_STATUS_BUFFER_TOO_SMALL` with the size needed in
/// `out_needed`.
///
/// # Safety
///
/// `set` points at `set_length` bytes; `buffer` has room for `capacity` bytes; `out_needed` points at an `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_choice_word(
    set: *const c_char,
    set_length: i64,
    number: i32,
    buffer: *mut c_char,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        check(out_needed, "out_needed")?;
        // SAFETY: the caller's promise is the same as ours.
        let word = choice_named(unsafe { utf8(set, set_length, "set") }?)?.word(number, "number")?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf8(word, buffer, capacity, out_needed) }
    })
}

/// As `edgenail_choice_word`, in UTF-16; lengths, capacity and size count code units.
///
/// # Safety
///
/// `set` points at `set_length` code units; `buffer` has room for `capacity` code units; `out_needed` points at an
/// `int64_t`.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn edgenail_choice_word_utf16(
    set: *const u16,
    set_length: i64,
    number: i32,
    buffer: *mut u16,
    capacity: i64,
    out_needed: *mut i64,
) -> i32 {
    guard(|| {
        check(out_needed, "out_needed")?;
        // SAFETY: the caller's promise is the same as ours.
        let word = choice_named(&unsafe { utf16(set, set_length, "set") }?)?.word(number, "number")?;
        // SAFETY: the caller's promise is the same as ours.
        unsafe { put_utf16(word, buffer, capacity, out_needed) }
    })
}

/// A number that stands for yes or no.
pub(crate) fn flag(number: i32, argument: &str) -> Result<bool, Fault> {
    match number {
        0 => Ok(false),
        1 => Ok(true),
        _ => Err(Fault::argument(Status::BadChoice, argument, "is neither 0 nor 1")),
    }
}
