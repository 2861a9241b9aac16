//! A house to try the library on: an invented place, invented prices.

/// The demo house as JSON.
///
/// Two storeys, a garage with a wide door and narrow returns, gable ends on trusses, a 10 ft wall under a rake, a wall
/// whose far end is off layout, a floor band of 19.2 in. trusses without a rim under one wall and rims under others,
/// treated plates on concrete, one opening that was measured out of tolerance. Every price and rate is invented.
pub const HOUSE_JSON: &str = include_str!("house.json");
