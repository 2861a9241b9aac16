#![no_main]
libfuzzer_sys::fuzz_target!(|bytes: &[u8]| edgenail_cases::attack::read(bytes));
