//! The C interface with hostile arguments: NULL, sizes that no buffer has, bytes of every kind, numbers of every kind.
//!
//! What is written into a buffer fits; a call that fails leaves its outputs as they were; no call says that the library
//! failed. Pointers that dangle are the caller's fault and are not tried.

#![no_main]

use edgenail_c_face::{capacity, cells, choice, derivation, error, length, plan, table, wall_cells, wall_line, wall_schedule};
use libfuzzer_sys::arbitrary::{Result, Unstructured};
use libfuzzer_sys::fuzz_target;
use std::ffi::c_char;
use std::ptr;

const UNTOUCHED: i64 = -7;
/// No result is this.
const UNTOUCHED_DOUBLE: f64 = -7.25e-77;
const INTERNAL: i32 = 250;
const ROOM: usize = 64;

/// Words that get a call past its first checks.
const WORDS: [&str; 14] = [
    "",
    "load",
    "seismic",
    "walls",
    "nails",
    "x0",
    "wall",
    "upright",
    "flat blocked 4/12",
    "36,40,48,36",
    "8' 1 1/8",
    "{}",
    r#"{"kind":"hold_down","shear":250,"length":"4 ft","height":"8 ft","inset":0}"#,
    r#"{"walls":[{"name":"a","length":"8'"}],"practice":{"effort_most":1000}}"#,
];

/// A text argument: its bytes, and the pointer and length that are passed, which may deny them.
struct Text {
    bytes: Vec<u8>,
    null: bool,
    length: i64,
}

impl Text {
    fn new(data: &mut Unstructured<'_>) -> Result<Self> {
        let bytes = if data.ratio(3, 4)? {
            data.choose(&WORDS)?.as_bytes().to_vec()
        } else {
            let count = data.int_in_range(0..=40)?;
            data.bytes(count)?.to_vec()
        };
        let length = if data.ratio(1, 12)? {
            -data.int_in_range(1..=i64::MAX)?
        } else {
            i64::try_from(bytes.len()).unwrap_or(0)
        };
        Ok(Self {
            bytes,
            null: data.ratio(1, 12)?,
            length,
        })
    }

    fn pointer(&self) -> *const c_char {
        if self.null {
            ptr::null()
        } else {
            self.bytes.as_ptr().cast()
        }
    }
}

/// A buffer for text that comes out.
struct Room {
    bytes: [u8; ROOM],
    needed: i64,
}

impl Room {
    fn new() -> Self {
        Self {
            bytes: [0xaa; ROOM],
            needed: UNTOUCHED,
        }
    }

    fn buffer(&mut self) -> *mut c_char {
        self.bytes.as_mut_ptr().cast()
    }

    /// All or nothing was written.
    fn check(&self, status: i32, capacity: i64) {
        assert_ne!(status, INTERNAL);
        if status == 0 {
            assert!((0..=capacity).contains(&self.needed));
        } else {
            assert!(self.bytes.iter().all(|byte| *byte == 0xaa));
        }
    }
}

fn double(data: &mut Unstructured<'_>) -> Result<f64> {
    if data.ratio(1, 3)? {
        return data.arbitrary();
    }
    Ok(*data.choose(&[0.0, 1.0, 8.0, 16.0, 97.125, 144.0, -1.0, f64::NAN, f64::INFINITY, 1e300])?)
}

fn number(data: &mut Unstructured<'_>) -> Result<i32> {
    if data.ratio(1, 6)? { data.arbitrary() } else { data.int_in_range(0..=3) }
}

fn numbers_are_whole_or_untouched(status: i32, outputs: &[f64]) {
    assert_ne!(status, INTERNAL);
    let untouched = |value: &f64| value.to_bits() == UNTOUCHED_DOUBLE.to_bits();
    assert!(outputs.iter().all(|value| untouched(value) != (status == 0) && !value.is_nan()));
}

#[expect(clippy::too_many_lines, reason = "one arm a function")]
fn call(data: &mut Unstructured<'_>, made: &mut Vec<*mut plan::edgenail_plan>) -> Result<()> {
    let [one, two, three, four] = [Text::new(data)?, Text::new(data)?, Text::new(data)?, Text::new(data)?];
    let capacity = data.int_in_range(-1..=ROOM as i64)?;
    let mut room = Room::new();
    let [mut a, mut b, mut c] = [UNTOUCHED_DOUBLE; 3];
    let mut count = UNTOUCHED;
    let [x, y, z, u, v] = [double(data)?, double(data)?, double(data)?, double(data)?, double(data)?];
    let [k, l, m] = [number(data)?, number(data)?, number(data)?];
    // SAFETY: every pointer is NULL or points at what its length says, unless the length is below zero.
    unsafe {
        match data.int_in_range(0..=14)? {
            0 => {
                let status = cells::edgenail_hold_down(x, y, z, u, v, &raw mut a);
                numbers_are_whole_or_untouched(status, &[a]);
            }
            1 => {
                let status = cells::edgenail_drift(x, y, z, u, v, x, y, k, &raw mut a);
                numbers_are_whole_or_untouched(status, &[a]);
            }
            2 => {
                let status = wall_line::edgenail_unit_shear(
                    2015, k, l, m, 1, x, 0.131, 0.281, y, 1, z, u, 16.0, 1, 0, v, 1.5, 0, 0, l,
                    &raw mut a, &raw mut b, &raw mut c,
                );
                numbers_are_whole_or_untouched(status, &[a, b, c]);
            }
            3 => {
                let status = wall_line::edgenail_wall_line(
                    one.pointer(), one.length, k, l, two.pointer(), two.length, three.pointer(), three.length,
                    four.pointer(), four.length, x, y, two.pointer(), two.length, &raw mut a, &raw mut b, &raw mut c,
                );
                numbers_are_whole_or_untouched(status, &[a, b, c]);
            }
            4 => {
                let status = capacity::edgenail_capacity_json(
                    one.pointer(), one.length, room.buffer(), capacity, &raw mut room.needed,
                );
                room.check(status, capacity);
            }
            5 => {
                let status = derivation::edgenail_capacity_derivation(
                    one.pointer(), one.length, k, room.buffer(), capacity, &raw mut room.needed,
                );
                room.check(status, capacity);
            }
            6 => {
                let mut chosen = 0;
                let status = choice::edgenail_choice_number(
                    one.pointer(), one.length, two.pointer(), two.length, &raw mut chosen,
                );
                assert!((chosen > 0) == (status == 0) && status != INTERNAL);
            }
            7 => {
                let status = choice::edgenail_choice_word(
                    one.pointer(), one.length, k, room.buffer(), capacity, &raw mut room.needed,
                );
                room.check(status, capacity);
            }
            8 => {
                let mut exact = -7;
                let status = length::edgenail_length_parse(one.pointer(), one.length, k, &raw mut count, &raw mut exact);
                assert!((exact == -7) == (status != 0) && status != INTERNAL);
            }
            9 => {
                let mut rounded = -7;
                let status = length::edgenail_length_show(
                    data.arbitrary()?, k, l, &raw mut rounded, room.buffer(), capacity, &raw mut room.needed,
                );
                room.check(status, capacity);
            }
            10 => {
                let status = wall_cells::edgenail_wall_sheets(
                    x.min(200.0), y, z, one.pointer(), one.length, two.pointer(), two.length, &raw mut count,
                );
                assert!((count >= 0) == (status == 0) && status != INTERNAL);
            }
            11 => {
                let mut schedule = ptr::null_mut();
                let edition = *data.choose(&[0, 2008, 2015, 2021, k])?;
                let status = wall_schedule::edgenail_wall_schedule_new(
                    one.pointer(), one.length, edition, k, l, m, k, l, &raw mut schedule,
                );
                assert!(schedule.is_null() == (status != 0) && status != INTERNAL);
                let added = wall_schedule::edgenail_wall_schedule_add(
                    schedule, two.pointer(), two.length, x, y, z, three.pointer(), three.length, four.pointer(),
                    four.length, one.pointer(), one.length, u, v,
                );
                assert_ne!(added, INTERNAL);
                if wall_schedule::edgenail_wall_schedule_count(schedule, &raw mut count) == 0 {
                    assert_eq!(count == 1, added == 0);
                }
                wall_schedule::edgenail_wall_schedule_free(schedule);
            }
            12 if made.len() < 2 => {
                let mut made_here = ptr::null_mut();
                let status = plan::edgenail_plan_new_json(one.pointer(), one.length, &raw mut made_here);
                assert!(made_here.is_null() == (status != 0) && status != INTERNAL);
                made.extend((!made_here.is_null()).then_some(made_here));
            }
            13 => {
                let plan = made.last().copied().unwrap_or(ptr::null_mut());
                let status = table::edgenail_plan_text(
                    plan, one.pointer(), one.length, two.pointer(), two.length, data.arbitrary()?, room.buffer(), capacity,
                    &raw mut room.needed,
                );
                room.check(status, capacity);
            }
            _ => {
                let before = error::edgenail_error_count();
                let status =
                    error::edgenail_error_text(data.arbitrary()?, k, room.buffer(), capacity, &raw mut room.needed);
                room.check(status, capacity);
                assert_eq!(before, error::edgenail_error_count());
            }
        }
    }
    Ok(())
}

fuzz_target!(|bytes: &[u8]| {
    let mut data = Unstructured::new(bytes);
    let mut made = Vec::new();
    while !data.is_empty() && call(&mut data, &mut made).is_ok() {}
    for plan in made {
        // SAFETY: each came from the library, and is given back once.
        unsafe { plan::edgenail_plan_free(plan) };
    }
});
