//! Gives the shared library its name for the loader, with the ABI's number.

fn main() {
    println!("cargo:rerun-if-changed=build.rs");
    if std::env::var("CARGO_CFG_TARGET_OS").is_ok_and(|system| system == "linux") {
        println!("cargo:rustc-cdylib-link-arg=-Wl,-soname,libedgenail.so.1");
    }
}
