//! Shared cases.
