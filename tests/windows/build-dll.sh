#!/usr/bin/env bash
# Builds edgenail.dll for 64-bit Windows on Debian, below target/windows. Debian has no compiled standard library of Rust for
# Windows, but a compiler with the library's sources; both are unpacked there, out of the way of the machine's own Rust.
# Wants x86_64-w64-mingw32-gcc and cargo. In CI the lists of packages are made new first.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/../.."
folder=$PWD/target/windows
mkdir -p "$folder"

# The names of packages that a package depends on.
needs() {
  apt-cache depends "$@" | sed -n 's/^ *Depends: *//p'
}

if [[ ! -x $folder/rust/usr/bin/rustc ]]; then
  [[ ${CI:-} != true || $EUID -ne 0 ]] || apt-get update
  standard=$(needs libstd-rust-web-dev | grep '^libstd-rust-web-')
  # shellcheck disable=SC2086
  llvm=$(needs rustc-web $standard | grep '^libllvm' | sort -u)
  rm -rf "$folder/packages" "$folder/unpacked"
  mkdir -p "$folder/packages"
  # Lists of names, one package each.
  # shellcheck disable=SC2086
  (cd "$folder/packages" && apt-get download rustc-web rust-web-src libstd-rust-web-dev $standard $llvm)
  for package in "$folder"/packages/*.deb; do
    dpkg -x "$package" "$folder/unpacked"
  done
  rm -rf "$folder/rust" "$folder/packages"
  mv "$folder/unpacked" "$folder/rust"
fi

export RUSTC=$folder/rust/usr/bin/rustc RUSTC_BOOTSTRAP=1 LD_LIBRARY_PATH=$folder/rust/usr/lib/x86_64-linux-gnu
export CARGO_TARGET_X86_64_PC_WINDOWS_GNU_LINKER=x86_64-w64-mingw32-gcc
"$RUSTC" --version
cargo build --locked --release --package edgenail-c -Zbuild-std=std,panic_unwind --target x86_64-pc-windows-gnu \
  --target-dir "$folder/build"
cp "$folder"/build/x86_64-pc-windows-gnu/release/{edgenail.dll,libedgenail.dll.a} "$folder"
ls -l "$folder/edgenail.dll"
