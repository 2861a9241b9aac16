#![no_main]

use edgenail_cases::attack::{Share, foreign};

static SHARE: Share = Share::new();

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| SHARE.count("foreign", foreign(bytes)));
