#!/bin/sh
# Builds the C library for Linux and installs it below PREFIX: header, shared and static library, pkg-config file.
# Wants Rust, binutils and a C compiler. DESTDIR, if it is set, is put before every path that is written.
#
#   bindings/c/install.sh [--debug] PREFIX
set -eu

profile=release
if [ "${1:-}" = --debug ]; then
  profile=debug
  shift
fi
if [ $# -ne 1 ]; then
  echo "usage: bindings/c/install.sh [--debug] PREFIX" >&2
  exit 2
fi
case "$1" in
  /*) prefix=$1 ;;
  *) prefix=$PWD/$1 ;;
esac
include=${DESTDIR:-}$prefix/include
lib=${DESTDIR:-}$prefix/lib
cargo=${CARGO:-cargo}

cd "$(dirname "$0")/../.."
case $profile in
  release) "$cargo" build --locked --release --package edgenail-c ;;
  debug) "$cargo" build --locked --package edgenail-c ;;
esac
built=$("$cargo" metadata --locked --no-deps --format-version 1 |
  sed 's/.*"target_directory":"\([^"]*\)".*/\1/')/$profile
version=$("$cargo" pkgid --locked --package edgenail-c | sed 's/.*[#@]//')
# The name that the loader looks for carries the number of the ABI; build.rs gives it.
soname=$(objdump -p "$built/libedgenail.so" | sed -n 's/^ *SONAME *//p')

mkdir -p "$include" "$lib/pkgconfig"
install -m 644 bindings/c/include/edgenail.h "$include"
install -m 755 "$built/libedgenail.so" "$lib/$soname"
ln -sf "$soname" "$lib/libedgenail.so"

# In the archive as Rust makes it every function of every dependency is global. As one object whose only global symbols
# are those of the header, it meets no other library of the program; the compiler's intermediate code is of no use in it.
object=$(mktemp -d)
trap 'rm -rf "$object"' EXIT
roots=$(nm -D --defined-only "$built/libedgenail.so" | sed 's/.* /-u /')
# Names without spaces: the list is meant to be split.
# shellcheck disable=SC2086
ld -r --gc-sections $roots "$built/libedgenail.a" -o "$object/whole.o"
objcopy --wildcard --keep-global-symbol='edgenail_*' --strip-debug \
  --remove-section=.llvmbc --remove-section=.llvmcmd "$object/whole.o" "$object/edgenail.o"
rm -f "$lib/libedgenail.a"
ar rcs "$lib/libedgenail.a" "$object/edgenail.o"

cat >"$lib/pkgconfig/edgenail.pc" <<END
prefix=$prefix
includedir=\${prefix}/include
libdir=\${prefix}/lib

Name: edgenail
Description: Plans the structural sheathing of wood-frame walls
Version: $version
Cflags: -I\${includedir}
Libs: -L\${libdir} -ledgenail
Libs.private: -lpthread -ldl -lm
END
