#![no_main]

use edgenail_cases::attack::{Share, read};

static SHARE: Share = Share::new();

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| SHARE.count("read", read(bytes)));
