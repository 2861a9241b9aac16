//! What no single field can say: values that do not go together.

use super::context::Context;
use crate::house::House;

pub(super) fn relations(_house: &House, _context: &Context) {}
