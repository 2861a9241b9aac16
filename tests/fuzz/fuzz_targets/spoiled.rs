#![no_main]

use edgenail_cases::attack::{Share, spoiled};

static SHARE: Share = Share::new();

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| SHARE.count("spoiled", spoiled(bytes)));
