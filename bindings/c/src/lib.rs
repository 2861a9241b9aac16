//! C interface.
