//! Plans the structural sheathing of wood-frame walls.

#![forbid(unsafe_code)]

pub mod amount;
pub mod answer;
pub mod batch;
pub mod blocking;
pub mod capacity;
pub mod caution;
pub mod changes;
pub mod cutting;
pub mod decimal;
pub mod demo;
pub mod drawing;
pub mod edges;
pub mod error;
pub mod evaluate;
pub mod faces;
pub mod finding;
pub mod frame;
pub mod generate;
pub mod geometry;
pub mod house;
pub mod inspection;
pub mod issue;
pub mod joint;
pub mod layout;
pub mod length;
pub mod nailing;
pub mod plan;
pub mod price;
pub mod proof;
pub mod published;
pub mod reading;
pub mod report;
pub mod search;
pub mod start;
pub mod steps;
pub mod street;
pub mod table;
pub mod takeoff;
pub mod wall_schedule;
pub mod wording;

pub use amount::Amount;
pub use answer::{capacity_bytes, capacity_json};
pub use caution::CAUTION;
pub use decimal::Decimal;
pub use error::Error;
pub use length::{Area, Length};
pub use plan::{Plan, plan_bytes, plan_json};
pub use reading::read_house;
