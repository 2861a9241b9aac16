//! Writes and checks generated files.
fn main() {}
