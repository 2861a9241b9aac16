//! The table of fields is consistent.
