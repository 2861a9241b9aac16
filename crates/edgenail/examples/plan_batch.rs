//! Plans the houses that come in, a JSON document on each line, and writes what becomes of each as a line of JSON.
//!
//! `plan_batch < houses.jsonl > outcomes.jsonl` — on all cores, in the order of the lines, with progress told beside; memory
//! does not grow with the number of houses. `plan_batch 100` plans so many generated houses.

use edgenail::batch::{Batch, json_lines};
use edgenail::generate::house_json;
use std::error::Error;
use std::io::{self, Write};
use std::ops::ControlFlow;

fn main() -> Result<(), Box<dyn Error>> {
    if let Some(count) = std::env::args().nth(1) {
        let count: u64 = count.parse()?;
        write_all((0..count).map(|seed| house_json(seed).0))?;
        return Ok(());
    }
    let mut houses = json_lines(io::stdin().lock());
    write_all(&mut houses)?;
    houses
        .failure()
        .map_or(Ok(()), |failure| Err(failure.to_string().into()))
}

/// Writes an outcome for each house as soon as it is its turn.
fn write_all<I: Iterator<Item: AsRef<[u8]> + Sync>>(houses: I) -> io::Result<()> {
    let mut out = io::stdout().lock();
    let batch = Batch::of(houses).watched_by(|progress| {
        // What cannot be told does not stop the work.
        let _ = write!(io::stderr(), "\r{} houses", progress.finished);
        ControlFlow::Continue(())
    });
    for outcome in batch {
        writeln!(out, "{}", outcome.json())?;
    }
    let _ = writeln!(io::stderr());
    Ok(())
}
